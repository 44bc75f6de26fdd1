/** `reopen`, as a process: a sheet is printed, its inputs come back byte for byte, and nothing is written over. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from '../house/sources.ts';
import { runBuilt } from './built.ts';

const PATIENCE = 120_000;
let folder = '';
const at = (...path: readonly string[]): string => join(folder, ...path);
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
  const { exit, err } = runBuilt(['sheet', join(ROOT, 'specs/fittings/parts/drift.yaml'), '--out', 'printed'], folder);
  expect([exit, err]).toEqual([0, '']);
}, PATIENCE);
afterAll(() => rmSync(folder, { recursive: true }));

describe('reopen', () => {
  it('gives the inputs back and says that the plan is the same', { timeout: PATIENCE }, () => {
    const { exit, out, err } = runBuilt(['reopen', 'printed/drift.pdf', '--out', 'back'], folder);
    expect([exit, err]).toEqual([0, '']);
    expect(out).toMatch(
      /^Wrote back\/drift\.yaml\nWrote back\/bench-lathe\.yaml\nVersion \S+ still makes the same plan, mark [0-9a-f]{8}\.\n$/,
    );
    for (const [name, source] of [
      ['drift.yaml', 'specs/fittings/parts/drift.yaml'],
      ['bench-lathe.yaml', 'specs/workshops/bench-lathe.yaml'],
    ] as const)
      expect(readFileSync(at('back', name))).toEqual(readFileSync(join(ROOT, source)));
  });

  it('the same sheet from the files that it gave back', { timeout: PATIENCE }, () => {
    const { exit } = runBuilt(['sheet', 'back/drift.yaml', '--workshop', 'back/bench-lathe.yaml', '--out', 'again'], folder, {
      TZ: 'Asia/Tokyo',
      LC_ALL: 'de_DE.UTF-8',
    });
    expect(exit).toBe(0);
    expect(readFileSync(at('again', 'drift.pdf'))).toEqual(readFileSync(at('printed', 'drift.pdf')));
  });

  it('writes over nothing that says something else', { timeout: PATIENCE }, () => {
    const mine = mkdtempSync(join(folder, 'mine-'));
    writeFileSync(join(mine, 'drift.yaml'), 'my own\n');
    const { exit, out } = runBuilt(['reopen', 'printed/drift.pdf', '--out', mine, '--json'], folder);
    expect(exit).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ exit: 1, written: [], same: false, found: [{ code: 'record.in-the-way' }] });
    expect(readdirSync(mine)).toEqual(['drift.yaml']);
    expect(readFileSync(join(mine, 'drift.yaml'), 'utf8')).toBe('my own\n');
  });
});
