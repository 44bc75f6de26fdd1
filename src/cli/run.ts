/** One run of the program: what is asked, the command for it, and the exit code. */
import type { Words } from '../base/words.ts';
import { loadWords, packageVersion } from '../files.ts';
import { type Ask, languageAsked, readAsk } from './ask.ts';
import type { Command } from './commands.ts';
import { tell } from './console.ts';
import { helpOn, helpOverall } from './help.ts';
import type { Console, Exit, Tools } from './tools.ts';

/** `argv`: what stands after the program's own name. Never throws: what goes wrong inside is told and gives 70. */
export async function run(argv: readonly string[], tools: Tools, console: Console): Promise<Exit> {
  try {
    const { value: ask, found } = readAsk(argv);
    if (ask) return await answer(ask, argv, tools, console);
    tell(found, {}, await allWords(argv), console);
    return 1;
  } catch (cause) {
    console.err(await ourFault(cause, argv));
    return 70;
  }
}

async function answer(ask: Ask, argv: readonly string[], tools: Tools, console: Console): Promise<Exit> {
  switch (ask.does) {
    case 'help':
      console.out(await help(ask.of, await allWords(argv)));
      return 0;
    case 'version':
      console.out(`${packageVersion()}\n`);
      return 0;
    case 'sheet':
      return (await import('./sheet.ts')).sheet(ask.words, ask.options, tools, console);
    case 'check':
      return (await import('./check.ts')).check(ask.words, ask.options, tools, console);
    case 'why':
      return (await import('./why.ts')).why(ask.words, ask.options, tools, console);
    case 'size':
      return (await import('./size.ts')).size(ask.words, ask.options, console);
    case 'new':
      return (await import('./new.ts')).makeNew(ask.words, ask.options, console);
    case 'reopen':
      return (await import('./reopen.ts')).reopen(ask.words, ask.options, tools, console);
    case 'exercise':
      return (await import('./exercise.ts')).exercise(ask.words, ask.options, tools, console);
    case 'mark':
      return (await import('./mark.ts')).mark(ask.words, ask.options, tools, console);
    case 'look':
      return (await import('./look.ts')).look(ask.words, ask.options, console);
  }
}

/** What makes sentences is loaded when something is said: a short command may not need it. */
async function allWords(argv: readonly string[]): Promise<Words> {
  const language = languageAsked(argv);
  return (await import('./speech.ts')).speech(loadWords(language), language);
}

async function help(of: Command | undefined, say: Words): Promise<string> {
  if (!of) return helpOverall(say, packageVersion());
  const [{ kindsOfNew }, { SUBJECTS }] = await Promise.all([import('./new-kinds.ts'), import('../handbook/look/answer.ts')]);
  return helpOn(of, say, { kinds: kindsOfNew.join(', '), subjects: SUBJECTS.join(', ') });
}

/** Even when the words themselves cannot be read, something is said. */
async function ourFault(cause: unknown, argv: readonly string[]): Promise<string> {
  const what = cause instanceof Error ? (cause.stack ?? cause.message) : String(cause);
  return `${await introduction(argv)}\n${what}\n`;
}

async function introduction(argv: readonly string[]): Promise<string> {
  try {
    return (await allWords(argv)).say('cli.our-fault');
  } catch {
    return 'valvewright: internal fault';
  }
}
