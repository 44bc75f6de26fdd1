/** The commands, in this process, with a planner that gives what each row says. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { consoleOf } from '../../src/cli/console.ts';
import { run } from '../../src/cli/run.ts';
import type { Tools } from '../../src/cli/tools.ts';
import type { Compiled } from '../../src/compile.ts';
import { plan, unproved } from './sample.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
  writeFileSync(join(folder, 'plug.yaml'), 'fitting: turned-part\nball: 60 mm\n');
});
afterEach(() => rmSync(folder, { recursive: true }));

const warning = { code: 'file.not-text', severity: 'warning', grounds: { path: 'a' } } as const;
const error = {
  code: 'file.not-text',
  severity: 'error',
  place: { file: 'plug.yaml', line: 2, col: 1, endCol: 5 },
  grounds: { path: 'a' },
} as const;

type Said = { readonly exit: number; readonly out: string; readonly err: string };
async function said(argv: readonly string[], compiled: Compiled | Error, terminal = {}): Promise<Said> {
  const texts = { out: '', err: '' };
  const stream = (to: 'out' | 'err') => ({
    isTTY: terminal !== undefined && 'isTTY' in terminal,
    write: (text: string) => (texts[to] += text),
  });
  const tools: Tools = {
    compile: async () => {
      if (compiled instanceof Error) throw compiled;
      return compiled;
    },
    print: async ({ plan: { mark, fitting } }, format) => `${format} ${mark} ${fitting.title}\n`,
  };
  const words = argv.map((word) => word.replace('@', `${folder}/`));
  return { exit: await run(words, tools, consoleOf(stream('out'), stream('err'), terminal)), ...texts };
}

describe('exit codes', () => {
  it.each([
    ['help', ['--help'], { found: [] }, 0],
    ['nothing asked', [], { found: [] }, 0],
    ['version', ['--version'], { found: [] }, 0],
    ['a plan that is proved', ['check', '@plug.yaml'], { plan, found: [warning] }, 0],
    ['a sheet', ['sheet', '@plug.yaml', '--out', '@new'], { plan, found: [] }, 0],
    ['an unknown command', ['chek', '@plug.yaml'], { found: [] }, 1],
    ['no file', ['check'], { found: [] }, 1],
    ['a file that is not there', ['check', '@plig.yaml'], { found: [] }, 1],
    ['a mistake in the file', ['check', '@plug.yaml'], { found: [error] }, 1],
    [
      'a part that cannot be planned',
      ['sheet', '@plug.yaml'],
      { found: [], noRoutes: [{ part: 'plug', kind: 'plug', refused: [], wouldHelp: [], stuck: ['plug/hole/bore'] }] },
      1,
    ],
    ['an unknown part', ['why', '@plug.yaml', 'plag'], { plan, found: [] }, 1],
    ['a place that cannot be written to', ['sheet', '@plug.yaml', '--out', '@plug.yaml'], { plan, found: [] }, 1],
    ['a proof that fails', ['check', '@plug.yaml'], { plan: unproved, found: [] }, 2],
    ['no sheet without a proof', ['sheet', '@plug.yaml', '--out', '@new'], { plan: unproved, found: [] }, 2],
    ['a draft without a proof', ['sheet', '@plug.yaml', '--draft', '--out', '@new'], { plan: unproved, found: [] }, 2],
    ['our own fault', ['check', '@plug.yaml'], new Error('a wheel came off'), 70],
  ] as const)('%s', async (_, argv, compiled, exit) => {
    expect((await said(argv, compiled)).exit).toBe(exit);
  });
});

describe('what is written', () => {
  it.each([
    ['a sheet', ['sheet', '@plug.yaml', '--out', '@new'], plan, ['plug.pdf']],
    ['as text', ['sheet', '@plug.yaml', '--out', '@new', '--format=text'], plan, ['plug.txt']],
    ['as JSON', ['sheet', '@plug.yaml', '--out', '@new', '--format', 'json'], plan, ['plug.json']],
    ['a draft', ['sheet', '@plug.yaml', '--out', '@new', '--draft'], unproved, ['plug.pdf']],
    ['nothing without a proof', ['sheet', '@plug.yaml', '--out', '@new'], unproved, undefined],
    ['nothing by check', ['check', '@plug.yaml'], plan, undefined],
  ])('%s', async (_, argv, made, files) => {
    await said(argv, { plan: made, found: [] });
    expect(readdirSync(folder).sort()).toEqual(files ? ['new', 'plug.yaml'] : ['plug.yaml']);
    if (files) expect(readdirSync(join(folder, 'new'))).toEqual(files);
  });
  it('is what the printer gave, and its name is told', async () => {
    const { out, err } = await said(['sheet', '@plug.yaml', '--out', '@'], { plan, found: [] });
    expect(readFileSync(join(folder, 'plug.pdf'), 'utf8')).toBe('pdf 0123abcd Plug\n');
    expect(out).toBe(`Wrote ${join(folder, 'plug.pdf')}\n`);
    expect(err).toBe('');
  });
});

describe('what is said', () => {
  it.each([
    ['the nearest command', ['chek'], { found: [] }, /There is no command 'chek'\.\n.*Did you mean 'check'\?/],
    [
      'the nearest option',
      ['check', '@plug.yaml', '--workshp=a'],
      { found: [] },
      /'check' has no option --workshp\.\n.*Did you mean --workshop\?/,
    ],
    ['the nearest file', ['check', '@plig.yaml'], { found: [] }, /There is no file .*plig\.yaml\.\n.*Did you mean .*plug\.yaml\?/],
    ['the nearest format', ['sheet', '@plug.yaml', '--format', 'txt'], { found: [] }, /--format cannot be 'txt'.\n.*Did you mean text\?/],
    ['the nearest part', ['why', '@plug.yaml', 'plgu'], { plan, found: [] }, /no part 'plgu'.\n.*Did you mean 'plug'\?/],
    [
      'the nearest operation',
      ['why', '@plug.yaml', 'plug', 'hole/bor'],
      { plan, found: [] },
      /no operation 'hole\/bor'.\n.*Did you mean 'hole\/bore'\?/,
    ],
    ['an option without its value', ['sheet', '@plug.yaml', '--out', '--draft'], { found: [] }, /--out stands without its value/],
    ['an option given twice', ['sheet', '@plug.yaml', '--out', 'a', '--out', 'b'], { found: [] }, /--out is given twice/],
    ['a switch with a value', ['check', '@plug.yaml', '--json=yes'], { found: [] }, /--json takes no value/],
    ['a word too many', ['why', '@plug.yaml', 'plug', '50', 'b'], { found: [] }, /does not know what to do with 'b'/],
    ['the line of the mistake', ['check', '@plug.yaml'], { found: [error] }, /plug\.yaml:2:1: error: [\s\S]*ball: 60 mm/],
    [
      'what is stuck',
      ['check', '@plug.yaml'],
      { found: [], noRoutes: [{ part: 'plug', kind: 'plug', refused: [], wouldHelp: [], stuck: ['plug/hole/bore'] }] },
      /No order of work makes 'plug'[\s\S]*hole\/bore/,
    ],
    [
      'the failed claim with its figures',
      ['check', '@plug.yaml'],
      { plan: unproved, found: [] },
      /1 claim fails[\s\S]*plug\/D\.hole\): 4\.40 to 4\.60 mm where 4\.45 to 4\.55 mm is asked/,
    ],
    ['our own fault', ['check', '@plug.yaml'], new Error('a wheel came off'), /fault of the program[\s\S]*a wheel came off/],
  ] as const)('%s', async (_, argv, compiled, expected) => {
    const { out, err } = await said(argv, compiled);
    expect(err).toMatch(expected);
    expect(out).toBe('');
  });
  it('in colour to a terminal, unless that is not wanted', async () => {
    const start = '\u001b[';
    expect((await said(['chek'], { found: [] }, { isTTY: 'yes' })).err).toContain(start);
    expect((await said(['chek'], { found: [] }, { isTTY: 'yes', NO_COLOR: '1' })).err).not.toContain(start);
    expect((await said(['chek'], { found: [] }, {})).err).not.toContain(start);
  });
});

describe('--json', () => {
  it.each([
    [
      'check',
      ['check', '@plug.yaml', '--json'],
      { plan, found: [warning] },
      { exit: 0, mark: '0123abcd', parts: [{ part: 'plug', setUps: 2, holds: true }] },
    ],
    [
      'check with a mistake',
      ['check', '@plug.yaml', '--json'],
      { found: [error] },
      { exit: 1, found: [{ code: 'file.not-text', place: { line: 2, col: 1 } }] },
    ],
    [
      'check without a proof',
      ['check', '@plug.yaml', '--json'],
      { plan: unproved, found: [] },
      { exit: 2, failed: [{ part: 'plug', kind: 'dimension' }] },
    ],
    ['sheet', ['sheet', '@plug.yaml', '--out', '@', '--json'], { plan, found: [] }, { exit: 0, draft: false }],
    ['why', ['why', '@plug.yaml', 'plug', '30', '--json'], { plan, found: [] }, { id: 'plug/hole/bore', number: 30, from: 'second' }],
    ['why without a plan', ['why', '@plug.yaml', '--json'], { found: [error] }, { exit: 1, found: [{ severity: 'error' }] }],
  ] as const)('%s is one record and nothing else', async (_, argv, compiled, expected) => {
    const { out, err } = await said(argv, compiled);
    expect(JSON.parse(out)).toMatchObject(expected);
    expect(err).toBe('');
  });
});

describe('several fittings', () => {
  const pack = (): void => {
    mkdirSync(join(folder, 'pack'));
    writeFileSync(join(folder, 'pack', 'nut.yml'), 'fitting: turned-part\n');
    writeFileSync(join(folder, 'pack', 'cap.yaml'), 'fitting: turned-part\n');
    writeFileSync(join(folder, 'pack', 'lathe.yaml'), 'workshop: Shed\n');
    writeFileSync(join(folder, 'pack', 'notes.txt'), 'not looked at\n');
  };
  it('each has its own sheet: a folder stands for the descriptions in it, a file named twice is made once', async () => {
    pack();
    const { exit, out, err } = await said(['sheet', '@plug.yaml', '@pack', '@plug.yaml', '--out', '@new'], { plan, found: [] });
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    expect(readdirSync(join(folder, 'new'))).toEqual(['cap.pdf', 'nut.pdf', 'plug.pdf']);
    expect(out.match(/Wrote .*\.pdf/g)).toHaveLength(3);
  });
  it.each([
    ['all is well', ['check', '@plug.yaml', '@pack'], { plan, found: [] }, 0],
    ['one is not there', ['check', '@plug.yaml', '@plig.yaml'], { plan, found: [] }, 1],
    ['one is not there, and no proof holds', ['check', '@plug.yaml', '@plig.yaml'], { plan: unproved, found: [] }, 2],
    ['a folder holds none', ['check', '@plug.yaml', '@empty'], { plan, found: [] }, 1],
  ] as const)('the exit code is the highest: %s', async (_, argv, compiled, exit) => {
    pack();
    mkdirSync(join(folder, 'empty'));
    expect((await said(argv, compiled)).exit).toBe(exit);
  });
  it('what is wrong with any of them is told, and the others are written', async () => {
    const { exit, out, err } = await said(['sheet', '@a.yaml', '@plug.yaml', '@b.yaml', '--out', '@new'], { plan, found: [] });
    expect(exit).toBe(1);
    expect(err).toMatch(/a\.yaml[\s\S]*b\.yaml/);
    expect(out).toContain('plug.pdf');
    expect(readdirSync(join(folder, 'new'))).toEqual(['plug.pdf']);
  });
  it('two of one name are not written over each other', async () => {
    mkdirSync(join(folder, 'other'));
    writeFileSync(join(folder, 'other', 'plug.yaml'), 'fitting: turned-part\n');
    const asked = ['@plug.yaml', '@other/plug.yaml'];
    const { exit, err } = await said(['sheet', ...asked, '--out', '@new'], { plan, found: [] });
    expect({ exit, err }).toMatchObject({ exit: 1, err: expect.stringMatching(/other\/plug\.yaml has the name of a file before it/) });
    expect((await said(['check', ...asked], { plan, found: [] })).exit).toBe(0);
  });
  it('as JSON: one record, an answer for each file', async () => {
    pack();
    const { out, err } = await said(['check', '@pack', '@plig.yaml', '--json'], { plan, found: [] });
    expect(err).toBe('');
    const files = JSON.parse(out).files as readonly { file: string; exit: number }[];
    expect(files.map(({ file, exit }) => [file.slice(folder.length + 1), exit])).toEqual([
      ['pack/cap.yaml', 0],
      ['pack/nut.yml', 0],
      ['plig.yaml', 1],
    ]);
  });
  it.each([
    ['to a terminal, and is wiped away again', { isTTY: 'yes' }, true],
    ['not to a pipe', {}, false],
    ['not to a terminal that knows no such thing', { isTTY: 'yes', TERM: 'dumb' }, false],
  ] as const)('how far it is goes %s', async (_, terminal, shown) => {
    pack();
    const { err, out } = await said(['check', '@pack'], { plan, found: [] }, terminal);
    const line = `1 of 2: ${join(folder, 'pack', 'cap.yaml')} …`;
    expect(err.includes(`\r\u001b[K${line}\r\u001b[K`)).toBe(shown);
    expect(err.endsWith('\u001b[K')).toBe(shown);
    expect(out).not.toContain('1 of 2');
  });
});
