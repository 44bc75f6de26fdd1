/** The program in one file, as the build keeps it: it is what runs, it plans as the sources do and prints as the pieces do. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setEngine } from '../../src/cli/engine.ts';
import { KEPT, kept, WHOLE } from '../../src/cli/kept.ts';
import { writeJson } from '../../src/render/json.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { ROOT } from '../house/sources.ts';
import { DEMO, demandFresh, MAIN, runBuilt } from './built.ts';

const PATIENCE = 600_000;
const BUILT = dirname(MAIN);
let folder = '';
beforeAll(() => {
  demandFresh();
  folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
  setEngine();
});
afterAll(() => rmSync(folder, { recursive: true }), PATIENCE);

describe('the program in one file', () => {
  it('is taken back by an engine that is set as the command sets it, where a command plans', () => {
    expect(kept(BUILT, 'sheet')?.start).toBeTypeOf('function');
    expect(kept(BUILT, 'look')).toBeUndefined();
    expect(kept(folder, 'sheet')).toBeUndefined();
  });

  it('holds nothing but ASCII: it is read a byte a letter', () => {
    expect(readFileSync(join(BUILT, WHOLE)).findIndex((byte) => byte > 127)).toBe(-1);
  });

  it('makes the plan of every spec, byte for byte', { timeout: PATIENCE }, () => {
    expect(everyPlan.length).toBeGreaterThan(20);
    const paths = everyPlan.map(({ spec }) => join(ROOT, 'specs/fittings', `${spec}.yaml`));
    const { exit, err } = runBuilt(['sheet', ...paths, '--format', 'json', '--out', 'plans'], folder);
    expect(exit, err).toBe(0);
    for (const { spec, plan } of everyPlan)
      expect(readFileSync(join(folder, 'plans', `${basename(spec)}.json`), 'utf8') === writeJson(plan), spec).toBe(true);
  });
});

describe('what another engine made of it', () => {
  let other = '';
  beforeAll(() => {
    other = join(folder, 'other');
    for (const name of ['dist', 'templates', 'specs', 'package.json']) cpSync(join(ROOT, name), join(other, name), { recursive: true });
    const path = join(other, 'dist', 'cli', KEPT);
    writeFileSync(path, ofAnotherEngine(readFileSync(path)));
  });

  it('is refused', () => expect(kept(join(other, 'dist', 'cli'), 'sheet')).toBeUndefined());

  it.each([
    ['en', DEMO],
    ['de', join(ROOT, 'specs/fittings/parts/taper-plug.yaml')],
  ])('and the pieces then print the same, in %s', { timeout: PATIENCE }, (language, spec) => {
    const printed = (name: string, main?: string): Buffer => {
      const { exit, err } = runBuilt(['sheet', spec, '--language', language, '--out', name], folder, {}, main);
      expect({ exit, err }).toEqual({ exit: 0, err: '' });
      return readFileSync(join(folder, name, basename(spec).replace('.yaml', '.pdf')));
    };
    expect(printed('pieces', join(other, 'dist', 'cli', 'main.js')).equals(printed('whole'))).toBe(true);
  });
});

/** With another mark of its version, which stands in the second word. */
function ofAnotherEngine(bytes: Buffer): Buffer {
  bytes.writeUInt32LE(bytes.readUInt32LE(4) ^ 1, 4);
  return bytes;
}
