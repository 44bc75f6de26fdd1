/** The built program as anybody runs it: exit codes, what goes to which stream, what stands on the disk afterwards. */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands.ts';
import { ROOT } from '../house/sources.ts';
import { DEMO, runBuilt } from './built.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const demoWith = (change: (text: string) => string): string => {
  const path = join(folder, 'changed.yaml');
  writeFileSync(path, change(readFileSync(DEMO, 'utf8')));
  return path;
};

describe('help', () => {
  it.each([[[]], [['--help']], [['help']]])('%j lists every command and exit code', (argv) => {
    const { exit, out, err } = runBuilt(argv, folder);
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    for (const { name } of COMMANDS) expect(out).toContain(`  ${name} `);
    for (const code of ['0 ', '1 ', '2 ', '70 ']) expect(out).toContain(`\n  ${code}`);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(96);
  });
  it.each(COMMANDS.map((c) => [c.name, c] as const))('%s --help names its options', (name, command) => {
    const { exit, out, err } = runBuilt([name, '--help'], folder);
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    for (const option of command.options) expect(out).toContain(`  --${option.name}`);
    expect(runBuilt(['help', name], folder).out).toBe(out);
  });
  it("--version is the package's", () => {
    const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
    expect(runBuilt(['--version'], folder)).toEqual({ exit: 0, out: `${version}\n`, err: '' });
  });
});

describe('the demo', () => {
  it('is printed, and a second time with the same bytes, from elsewhere, in another time and language', () => {
    const first = runBuilt(['sheet', DEMO, '--out', 'a'], folder);
    expect(first).toEqual({ exit: 0, out: `Wrote ${join('a', 'launch-feed-check-valve.pdf')}\n`, err: '' });
    mkdirSync(join(folder, 'other'));
    const environment = { TZ: 'Asia/Tokyo', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' };
    expect(runBuilt(['sheet', DEMO, '--out', '../b'], join(folder, 'other'), environment).exit).toBe(0);
    const [a, b] = ['a', 'b'].map((out) => readFileSync(join(folder, out, 'launch-feed-check-valve.pdf')));
    expect(a?.subarray(0, 5).toString()).toBe('%PDF-');
    expect(a?.equals(b ?? Buffer.alloc(0))).toBe(true);
  });
  it.each([
    ['text', 'launch-feed-check-valve.txt'],
    ['json', 'launch-feed-check-valve.json'],
  ])('is printed as %s', (format, name) => {
    expect(runBuilt(['sheet', DEMO, '--format', format, '--out', '.'], folder).exit).toBe(0);
    expect(readdirSync(folder)).toEqual([name]);
    const text = readFileSync(join(folder, name), 'utf8');
    expect(text).toContain(format === 'json' ? 'seat-piece' : 'Seat piece');
    if (format === 'json')
      expect(JSON.parse(text)).toMatchObject({ fitting: { kind: 'check-valve' }, mark: expect.stringMatching(/^[0-9a-f]{8}$/) });
  });
  it('passes check, and nothing is written', () => {
    const { exit, out } = runBuilt(['check', DEMO, '--json'], folder);
    expect(exit).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ exit: 0, failed: [], noRoutes: [] });
    expect(readdirSync(folder)).toEqual([]);
  });
  it('has its reasons, for all, for a part, for an operation', () => {
    const all = runBuilt(['why', DEMO], folder);
    expect(all).toMatchObject({ exit: 0, err: '' });
    expect(all.out).toContain('seat-piece:');
    const part = runBuilt(['why', DEMO, 'seat-piece'], folder);
    expect(part.out).toContain('Set-up 1');
    const one = JSON.parse(runBuilt(['why', DEMO, 'seat-piece', '10', '--json'], folder).out);
    expect(runBuilt(['why', DEMO, 'seat-piece', one.id], folder).out).toBe(runBuilt(['why', DEMO, 'seat-piece', '10'], folder).out);
  });
});

describe('what goes wrong', () => {
  it.each([
    ['a command that there is none of', ['shet', DEMO], 'There is no command'],
    ['a file that is not there', ['check', 'nothing.yaml'], 'There is no file'],
    ['a folder that holds none', ['check', '.'], 'no description of a fitting in the folder'],
  ])('%s: 1, told on the error stream, nothing written', (_, argv, told) => {
    const { exit, out, err } = runBuilt(argv, folder);
    expect({ exit, out }).toEqual({ exit: 1, out: '' });
    expect(err).toContain(told);
    expect(readdirSync(folder)).toEqual([]);
  });
  it('mistakes in the fitting: all of them, each with its line; nothing written', () => {
    const path = demoWith((text) => text.replace('ball: 6 mm', 'bal: 6 mm').replace('wall: 0.8 mm', 'wall: 0.8 bar'));
    const { exit, out, err } = runBuilt(['sheet', path, '--out', join(folder, 'out')], folder);
    expect({ exit, out }).toEqual({ exit: 1, out: '' });
    const lines = readFileSync(path, 'utf8').split('\n');
    for (const wrong of ['bal: 6 mm', 'wall: 0.8 bar'])
      expect(err).toContain(`${path}:${lines.findIndex((line) => line.includes(wrong)) + 1}:`);
    expect(readdirSync(folder)).toEqual(['changed.yaml']);
  });
  it('a design that cannot work: 1, with a code that begins with design', () => {
    const path = demoWith((text) => text.replace('ball: 6 mm', 'ball: 14 mm'));
    const { exit, out } = runBuilt(['check', path, '--json'], folder);
    expect(exit).toBe(1);
    expect(
      JSON.parse(out)
        .found.map((d: { code: string }) => d.code)
        .join(' '),
    ).toContain('design.');
  });
  it('a package that is not whole: 70', () => {
    const copy = join(folder, 'copy');
    for (const part of ['dist', 'templates', 'specs', 'package.json']) cpSync(join(ROOT, part), join(copy, part), { recursive: true });
    symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
    rmSync(join(copy, 'templates', 'fonts', 'advances.json'));
    const { exit, err } = runBuilt(['check', DEMO], folder, {}, join(copy, 'dist', 'cli', 'main.js'));
    expect(exit).toBe(70);
    expect(err).toContain('a fault of the program');
  });
  it('no colour where nobody looks on', () => {
    expect(runBuilt(['shet'], folder).err).not.toContain('\u001b');
  });
});
