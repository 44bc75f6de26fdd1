/** `look` on the command line: its table, its JSON, what it says of the unknown, and what it does not load. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { plainWords } from '../../src/base/plain-words.ts';
import { words } from '../../src/base/words.ts';
import { consoleOf } from '../../src/cli/console.ts';
import { run } from '../../src/cli/run.ts';
import type { Tools } from '../../src/cli/tools.ts';
import { loadWordFile, loadWords } from '../../src/files.ts';
import { ballSizes } from '../../src/handbook/balls.ts';
import { SUBJECTS } from '../../src/handbook/look/answer.ts';
import { materials } from '../../src/handbook/materials.ts';
import { threadNames } from '../../src/handbook/threads.ts';
import { ROOT } from '../house/sources.ts';
import { MAIN, runBuilt } from './built.ts';

const NEVER: Tools = {
  compile: () => Promise.reject(new Error('a look-up plans nothing')),
  print: () => Promise.reject(new Error('a look-up prints nothing')),
};
async function look(...argv: readonly string[]): Promise<{ readonly exit: number; readonly out: string; readonly err: string }> {
  const said = { out: '', err: '' };
  const stream = (to: 'out' | 'err') => ({
    write(text: string) {
      said[to] += text;
    },
  });
  return { exit: await run(['look', ...argv], NEVER, consoleOf(stream('out'), stream('err'), {})), ...said };
}
const SHOP = join(ROOT, 'specs', 'workshops', 'bench-lathe.yaml');

const ASKED: readonly (readonly string[])[] = [
  ['thread', 'M10x1'],
  ['thread', 'M10x1', '6H'],
  ['thread', '1/4-40', 'ME'],
  ['drill', '3.8'],
  ['ball', '6', 'mm'],
  ['fit', '10', 'h7'],
  ['speed', 'PB102', '12', 'mm'],
  ['speed', 'silver', 'steel', '6', 'mm', '--tool', 'hss'],
  ['speed', 'CW614N', '20', '--tool', 'carbide'],
  ['steam', '7', 'bar'],
  ['wire', 'M10x1'],
  ['square', '6', 'mm'],
  ['material', 'PB102'],
  ['drill', '3.8', '--workshop', SHOP],
  ['gears', '1.0', 'mm'],
  ['gears', '40', 'tpi'],
  ['gears', 'M10x1'],
  ['gears', 'M12', 'LH', '--workshop', SHOP],
  ['gears', '1/4-40', 'ME'],
];

describe('look', () => {
  it.each(ASKED)('%s %s %s', async (...argv) => {
    const { exit, out, err } = await look(...argv);
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    expect(out).toMatch(/\nSources\n {2}- /);
    expect(out).not.toMatch(/undefined|NaN|\{\{/);
    expect(await look(...argv)).toEqual({ exit, out, err });
  });
  it.each(ASKED)('%s %s %s --json', async (...argv) => {
    const { exit, out } = await look(...argv, '--json');
    expect(exit).toBe(0);
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ subject: argv[0], unit: '0.1 um' });
    expect(
      answer.parts.flatMap((p: { rows: readonly { words: string }[] }) => p.rows).every((r: { words: string }) => r.words !== ''),
    ).toBe(true);
    expect(answer.sources.length).toBeGreaterThan(0);
  });
  it('M10x1 has the figures that are printed of it', async () => {
    const { out } = await look('thread', 'M10x1');
    for (const line of [
      'pitch diameter +9.212 to 9.324 mm',
      'minor diameter +8.917 to 9.153 mm',
      'drill 9.0 mm +92 % +of 5/8 H +77 % +of 3/4 H',
    ])
      expect(out).toMatch(new RegExp(line));
  });
  it("the workshop's name and rack are shown, and a broken workshop is told with its place", async () => {
    expect((await look('drill', '3.8', '--workshop', SHOP)).out).toContain('In the workshop Boathouse');
    const wrong = await look('drill', '3.8', '--workshop', join(ROOT, 'package.json'));
    expect(wrong.exit).toBe(1);
    expect(wrong.err).toContain('package.json:');
    expect((await look('drill', '3.8', '--workshop', 'no-such.yaml')).exit).toBe(1);
  });
  it.each([
    [['thred', 'M10'], "Did you mean 'thread'?"],
    [['thread', 'M10x0.9'], 'M10x1'],
    [['material', 'PB12'], 'PB102'],
    [['thread'], 'wants a name'],
    [[], 'wants what to look up'],
    [['speed', 'PB102', '12', '--tool', 'wood'], 'hss, carbide'],
    [['gears', 'M10x2', '2', 'start'], 'several starts'],
    [['gears', 'M10x0.9'], '40 tpi'],
  ])('%j: %s', async (argv, said) => {
    const { exit, out, err } = await look(...argv);
    expect({ exit, out }).toEqual({ exit: 1, out: '' });
    expect(err).toContain(said);
  });
  it('the unknown as JSON', async () => {
    const { exit, out, err } = await look('thread', 'M10x0.9', '--json');
    expect({ exit, err }).toEqual({ exit: 1, err: '' });
    expect(JSON.parse(out).found[0]).toMatchObject({ code: 'cli.not-found', grounds: { subject: 'thread' } });
  });
});

describe('its words', () => {
  it('are there for every thread, ball and material', async () => {
    for (const name of threadNames) expect((await look('thread', name)).exit, name).toBe(0);
    for (const name of threadNames) expect((await look('gears', name)).exit, name).toBe(0);
    for (const { name } of ballSizes) expect((await look('ball', name)).exit, name).toBe(0);
    for (const { id } of materials) {
      expect((await look('material', id)).exit, id).toBe(0);
      expect((await look('speed', id, '10 mm')).exit, id).toBe(0);
    }
  });
  it('read the same with the template engine and without', () => {
    const [plain, whole] = [plainWords(loadWordFile('look.hbs')), words(loadWords())];
    expect(plain.ids.length).toBeGreaterThan(100);
    const grounds = { about: 'x', from: '1', to: '2', source: 's', standing: 't' };
    for (const id of plain.ids) expect(plain.say(id, grounds)).toBe(whole.say(id, grounds));
  });
  it('every subject has a title', () => {
    const plain = plainWords(loadWordFile('look.hbs'));
    expect(SUBJECTS.filter((s) => !plain.has(`look.title.${s}`))).toEqual([]);
  });
  it.each([
    ['{{#*inline "a"}}b{{/inline}}{{#*inline "a"}}c{{/inline}}', 'twice'],
    ['loose {{#*inline "a"}}b{{/inline}}', 'only inline'],
    ['{{#*inline "a"}}{{#if b}}c{{/if}}{{/inline}}', 'more than plain'],
  ])('%s is refused', (text, why) => expect(() => plainWords(text)).toThrow(why));
  it('a field that was not given, and an id that is not there, are our fault', () => {
    const plain = plainWords('{{#*inline "a"}}{{b}}{{/inline}}');
    expect(() => plain.say('a')).toThrow("asks for 'b'");
    expect(() => plain.say('c')).toThrow("no words for 'c'");
  });
});

describe('the built program', () => {
  it('looks up', () => expect(runBuilt(['look', 'thread', 'M10x1'], ROOT)).toMatchObject({ exit: 0, err: '' }));
  it.each(['ZodError', 'parseDocument', 'HandlebarsEnvironment'])('loads nothing with %s in it, which the package has', (mark) => {
    const all = readdirSync(FOLDER).filter((name) => readFileSync(join(FOLDER, name), 'utf8').includes(mark));
    expect(all.length).toBeGreaterThan(0);
    const seen = loaded();
    expect([...seen].some((name) => name.startsWith('thread-'))).toBe(true);
    expect(all.filter((name) => seen.has(name))).toEqual([]);
  });
});

const FOLDER = dirname(MAIN);
/** Pieces of the bundle that `look thread` loads: those named at the top of a piece, the command's own and the subject's own. */
function loaded(): ReadonlySet<string> {
  const seen = new Set<string>();
  const queue = ['main.js'];
  for (let name = queue.shift(); name !== undefined; name = queue.shift()) {
    if (seen.has(name)) continue;
    seen.add(name);
    const text = readFileSync(join(FOLDER, name), 'utf8');
    for (const [, next = ''] of text.matchAll(/(?:from|import)\s?"\.\/([^"]+)"/g)) queue.push(next);
    for (const [, next = ''] of text.matchAll(/import\("\.\/((?:program|look|thread)-[^"]+)"\)/g)) queue.push(next);
  }
  return seen;
}
