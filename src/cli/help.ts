/** Help, set in two columns from the list of commands and the words `cli.*`. */
import type { Words } from '../base/words.ts';
import { languages } from '../files.ts';
import { ALONE, COMMANDS, type Command, type Option } from './commands.ts';

const WIDE = 96;
const INDENT = 2;
const GAP = 2;

export function helpOverall(words: Words, version: string): string {
  const exits = ['0', '1', '2', '70'];
  return sections([
    [`valvewright ${version}`, ...wrap(words.say('cli.about'), 0)],
    [words.say('cli.title.commands'), ...columns(COMMANDS.map((c) => [usage(c, words), words.say(`cli.${c.name}.in-short`)]))],
    [words.say('cli.title.options'), ...columns(ALONE.map((o) => [shown(o, words), words.say(`cli.option.${o.name}`)]))],
    [words.say('cli.title.exit-codes'), ...columns(exits.map((code) => [code, words.say(`cli.exit.${code}`)]))],
    wrap(words.say('cli.more'), 0),
  ]);
}

/** `lists`: what an argument may be, from the tables that know, for the words that tell of it. */
export function helpOn(command: Command, words: Words, lists: Readonly<Record<string, string>>): string {
  return sections([
    [words.say('cli.usage', { line: `${usage(command, words)} ${words.say('cli.options-here')}` })],
    wrap(words.say(`cli.${command.name}.about`), 0),
    [
      words.say('cli.title.arguments'),
      ...columns(command.wants.map((want) => [words.say(`cli.shown.${want}`), words.say(`cli.argument.${want}`, lists)])),
    ],
    [words.say('cli.title.options'), ...columns(command.options.map((o) => [shown(o, words), words.say(optionId(command, o, words))]))],
    [words.say('cli.title.example'), `${' '.repeat(INDENT)}${words.say(`cli.${command.name}.example`)}`],
  ]);
}

/** An option may be told of in a command's own words. */
function optionId(command: Command, option: Option, words: Words): string {
  const own = `cli.${command.name}.option.${option.name}`;
  return words.has(own) ? own : `cli.option.${option.name}`;
}

function usage(command: Command, words: Words): string {
  const wanted = command.wants.slice(0, command.least).map((want) => words.say(`cli.shown.${want}`));
  const open = command.wants.slice(command.least).map((want) => words.say(`cli.shown.${want}`));
  const tail = open.length > 0 ? [`${open.map((word) => `[${word}`).join(' ')}${']'.repeat(open.length)}`] : [];
  return [command.name, ...wanted, ...tail].join(' ');
}

function shown(option: Option, words: Words): string {
  if (option.takes === 'nothing') return `--${option.name}`;
  if (option.takes === 'language') return `--${option.name} ${languages().join('|')}`;
  return `--${option.name} ${option.any ? option.any.join('|') : words.say(`cli.shown.${option.takes}`)}`;
}

function columns(rows: readonly (readonly [string, string])[]): readonly string[] {
  const left = Math.max(...rows.map(([term]) => term.length)) + INDENT + GAP;
  return rows.flatMap(([term, text]) => {
    const [first = '', ...rest] = wrap(text, left);
    return [`${' '.repeat(INDENT)}${term}`.padEnd(left) + first.trimStart(), ...rest];
  });
}

/** Lines of at most WIDE characters, each set in by `left`. */
export function wrap(text: string, left: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && left + line.length + 1 + word.length > WIDE) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].map((each) => ' '.repeat(left) + each);
}

function sections(all: readonly (readonly string[])[]): string {
  return `${all.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}
