/** The program in one file, as the build keeps it: it is what runs, and it plans as the sources do. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setEngine } from '../../src/cli/engine.ts';
import { kept, WHOLE } from '../../src/cli/kept.ts';
import { writeJson } from '../../src/render/json.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { ROOT } from '../house/sources.ts';
import { demandFresh, MAIN, runBuilt } from './built.ts';

const PATIENCE = 600_000;
let folder = '';
beforeAll(() => {
  demandFresh();
  folder = mkdtempSync(join(tmpdir(), 'valvewright-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('the program in one file', () => {
  it('is taken back by an engine that is set as the command sets it', () => {
    setEngine();
    expect(kept(dirname(MAIN), 'sheet')?.start).toBeTypeOf('function');
    expect(kept(dirname(MAIN), 'look')).toBeUndefined();
  });

  it('holds nothing but ASCII: it is read a byte a letter', () => {
    expect(readFileSync(join(dirname(MAIN), WHOLE)).findIndex((byte) => byte > 127)).toBe(-1);
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
