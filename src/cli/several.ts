/**
 * Several fittings in one run: files, and folders that stand for the descriptions in them. Each is told and written for itself; the exit
 * code is the highest. On a terminal a line says how far it is.
 */
import { basename, extname, resolve } from 'node:path';
import type { Diagnostic } from '../base/diagnostics.ts';
import type { Words } from '../base/words.ts';
import { filesUnder, loadWords } from '../files.ts';
import { tell } from './console.ts';
import { type Options, plainFinding } from './job.ts';
import { speech } from './speech.ts';
import type { Console, Exit } from './tools.ts';

/** What came of one file. `plain`: for a program; `tell`: to a person, and only when it is called. */
export type Told = { readonly exit: Exit; readonly plain: Record<string, unknown>; tell(): Promise<void> };

/** One file that is named answers as it always did; of several each answer goes with its path. */
export async function each(
  command: 'sheet' | 'check',
  asked: readonly string[],
  options: Options,
  console: Console,
  one: (path: string) => Promise<Told>,
): Promise<Exit> {
  const { paths, found } = listed(asked, options, command);
  const [only] = asked;
  if (asked.length === 1 && paths.length === 1 && paths[0] === only) return answerOne(await one(only ?? ''), options, console);
  return answerAll(paths, found, options, console, one);
}

async function answerOne(told: Told, options: Options, console: Console): Promise<Exit> {
  if ('json' in options) console.out(json(told.plain));
  else await told.tell();
  return told.exit;
}

async function answerAll(
  paths: readonly string[],
  found: readonly Diagnostic[],
  options: Options,
  console: Console,
  one: (path: string) => Promise<Told>,
): Promise<Exit> {
  const say = speech(loadWords(options.language), options.language);
  const exits: Exit[] = found.length > 0 ? [1] : [];
  const plain: Record<string, unknown>[] = [];
  if (!('json' in options)) tell(found, {}, say, console);
  for (const [i, path] of paths.entries()) {
    console.progress?.(say.say('cli.progress', { n: i + 1, of: paths.length, path }));
    const told = await one(path);
    console.progress?.('');
    exits.push(told.exit);
    plain.push({ file: path, ...told.plain });
    if (!('json' in options)) await tellOf(path, told, say, console);
  }
  const exit = highest(exits);
  if ('json' in options) console.out(json({ exit, found: found.map((d) => plainFinding(d, say)), files: plain }));
  return exit;
}

async function tellOf(path: string, told: Told, say: Words, console: Console): Promise<void> {
  console.out(`${say.say('cli.file', { path })}\n`);
  await told.tell();
}

const json = (record: unknown): string => `${JSON.stringify(record, null, 2)}\n`;
const highest = (exits: readonly Exit[]): Exit => ([70, 2, 1] as const).find((exit) => exits.includes(exit)) ?? 0;

type Listed = { readonly paths: readonly string[]; readonly found: readonly Diagnostic[] };

/** Each file once, folders in the order of their names. Of two sheets of one name the second would be written over the first. */
function listed(asked: readonly string[], options: Options, command: 'sheet' | 'check'): Listed {
  const found: Diagnostic[] = [];
  const paths = new Map<string, string>();
  for (const word of asked) {
    const under = filesUnder(word, options.workshop);
    found.push(...under.found);
    for (const path of under.value ?? []) if (!paths.has(resolve(path))) paths.set(resolve(path), path);
  }
  const all = [...paths.values()];
  const again = command === 'sheet' ? all.filter((path, i) => all.slice(0, i).some((earlier) => stem(earlier) === stem(path))) : [];
  found.push(...again.map((path) => ({ code: 'file.same-name', severity: 'error', grounds: { path } }) as const));
  return { paths: all.filter((path) => !again.includes(path)), found };
}

/** The name that the sheet takes over. */
const stem = (path: string): string => basename(path, extname(path));
