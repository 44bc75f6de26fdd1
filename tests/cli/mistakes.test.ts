/**
 * What is said to a mistake on the command line: an example of each, `<code>.command.txt` with what was typed and `<code>.said.txt` with the
 * answer. FOLDER stands in both for a folder in which the files of that mistake were put first.
 */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { consoleOf } from '../../src/cli/console.ts';
import { run } from '../../src/cli/run.ts';
import { compile } from '../../src/compile.ts';
import { loadWords } from '../../src/files.ts';
import { MISTAKEN_FILES } from '../fixtures/mistaken-files.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const FOLDER = join(ROOT, 'tests', 'errors', 'commands');
const END = '.command.txt';
const CODES = readdirSync(FOLDER)
  .filter((name) => name.endsWith(END))
  .map((name) => name.slice(0, -END.length))
  .sort();

/** Nothing that is wrong is written anywhere. */
const out = mkdtempSync(join(tmpdir(), 'valvewright-'));
afterAll(() => rmSync(out, { recursive: true }));

async function saidTo(typed: string): Promise<{ readonly exit: number; readonly said: string }> {
  const texts: string[] = [];
  const stream = { write: (text: string) => texts.push(text) };
  const tools = { compile: async (...all: Parameters<typeof compile>) => compile(...all), print: async () => '' };
  const argv = typed
    .trim()
    .split(' ')
    .map((word) => (word === "''" ? '' : word));
  const exit = await run(argv, tools, consoleOf({ write: () => undefined }, stream, {}));
  return { exit, said: texts.join('') };
}

describe('a mistake on the command line', () => {
  it.each(CODES)('%s', async (code) => {
    const typed = readFileSync(join(FOLDER, `${code}${END}`), 'utf8');
    const folder = join(out, code);
    mkdirSync(folder);
    await MISTAKEN_FILES[code]?.(folder);
    const before = readdirSync(folder, { recursive: true });
    const { exit, said } = await saidTo(typed.replaceAll('FOLDER', folder));
    expect(exit).toBe(1);
    expect(readdirSync(folder, { recursive: true })).toEqual(before);
    await expect(`$ valvewright ${typed}\n${said.replaceAll(folder, 'FOLDER')}`).toMatchFileSnapshot(join(FOLDER, `${code}.said.txt`));
  });
  it('has an example of every kind', () => {
    const known = words(loadWords('en'))
      .ids()
      .flatMap((id) => /^error\.((cli|file|record)\.[a-z-]+)$/.exec(id)?.[1] ?? []);
    expect(known.length).toBeGreaterThan(30);
    expect(known.filter((code) => !CODES.includes(code))).toEqual([]);
  });
});
