/** The ends of a stop valve: what parts go with each, and one of each planned and proved. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';
import type { Part } from '../../src/model/part.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const WORKSHOP = { name: 'bench-lathe.yaml', text: readFileSync(join(ROOT, 'specs', 'workshops', 'bench-lathe.yaml'), 'utf8') };
const SPEC = readFileSync(join(ROOT, 'specs', 'fittings', 'whistle-stop-valve.yaml'), 'utf8');

describe('a stop valve whose inlet is plain and whose outlet has a flange', () => {
  const text = `${SPEC}\nends: { inlet: plain, outlet: flanged }\n`;
  const { plan, found } = compile({ fitting: { name: 'mine.yaml', text } }, { workshop: WORKSHOP });
  const part = (id: string): Part | undefined => plan?.parts.find((one) => one.part.id === id)?.part;
  const named = (one: Part | undefined): readonly string[] => one?.features.map((f) => f.id.slice(one.id.length + 1)) ?? [];
  it('is planned and proved', () => {
    expect(found).toEqual([]);
    expect(plan?.parts.filter(({ proof }) => !proof.holds)).toEqual([]);
  });
  it('has a branch for each, a flange, and no union', () => {
    expect(named(part('inlet-branch'))).toContain('socket');
    expect(named(part('branch'))).toContain('flange-spigot');
    expect(part('pipe-flange')?.quantity).toBe(1);
    expect(part('union-nut') ?? part('nipple')).toBeUndefined();
  });
  it('solders both branches and the flange in one heat, the branches opposite each other', () => {
    const body = plan?.parts.find((one) => one.part.id === 'body');
    const solder = (setUp: { readonly operations: readonly string[] }) => setUp.operations.filter((op) => op.endsWith('/solder'));
    const heats = body?.route.setUps.map(solder).filter((ops) => ops.length > 0) ?? [];
    expect(heats).toHaveLength(1);
    expect(heats[0]).toHaveLength(3);
    const outlet = body?.part.features.find((f) => f.id === 'body/outlet');
    expect(outlet?.kind === 'side' && outlet.facing).toEqual({ other: 'body/inlet', degrees: 180 });
  });
  it('says how it is tested: by the pipe, and by a blank flange', () => {
    const water = plan?.fitting.tests.find((test) => test.id === 'test.stop-water');
    expect(water?.grounds).toMatchObject({ inlet: 'plain', outlet: 'flanged' });
    expect(plan?.fitting.assembly.map((step) => step.id)).toEqual(expect.arrayContaining(['assembly.stop-plain-end', 'assembly.flange']));
  });
});
