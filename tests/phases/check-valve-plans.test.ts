/**
 * Plans of check valves as a turner reads them. A drawer with 3.6 and 3.7 drills and 3.8 silver steel, but no 4.0: a 5 mm ball on a land of
 * 3.8, two diameters long, a wider inlet behind it, finished from the inlet's side (common practice, no source).
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { toMm } from '../../src/base/units.ts';
import { compile } from '../../src/compile.ts';
import type { Cylinder } from '../../src/model/part.ts';

const BENCH = readFileSync(join(import.meta.dirname, '..', '..', 'specs', 'workshops', 'bench-lathe.yaml'), 'utf8');
/** The usual bench with other words in some places; each has to be there. */
function bench(changes: readonly (readonly [is: string, becomes: string])[]) {
  const text = changes.reduce((now, [is, becomes]) => {
    if (!now.includes(is)) throw new Error(`no '${is}' in the bench lathe's file`);
    return now.replace(is, becomes);
  }, BENCH);
  return { name: 'drawer.yaml', text };
}
const SLIM = ['- { smallest: 4 mm, reach: 8 mm }', '- { smallest: 3.2 mm, reach: 8 mm }\n    - { smallest: 4 mm, reach: 8 mm }'] as const;
const RODS = ['silver-steel: [3, 4, 4.5, 5, 6, 8]', 'silver-steel: [3, 3.8, 5, 6, 8]'] as const;
const SHELF = [
  'section: round, across: [3, 4, 4.5, 5, 6, 8], length: 330 mm',
  'section: round, across: [3, 3.8, 5, 6, 8], length: 330 mm',
] as const;
const REAMERS = ['reamers: [3, 4, 5, 6, 8, 10]', 'reamers: [3, 5, 6, 8, 10]'] as const;
const DRILLS = [
  '- { from: 1 mm, to: 10 mm, by: 0.1 mm }',
  '- { from: 1 mm, to: 3 mm, by: 0.1 mm }\n    - 3.6 mm\n    - 3.7 mm\n    - 3.9 mm\n    - { from: 4.2 mm, to: 10 mm, by: 0.1 mm }',
] as const;

const valve = (more = '') => ({
  name: 'valve.yaml',
  text: `fitting: check-valve\ntitle: Injector check\nduty: { serves: injector, pressure: 7 bar }\npipe: { outside: 5 mm, wall: 0.7 mm }\n${more}`,
});
const planned = (changes: readonly (readonly [string, string])[], more = '') => {
  const { plan, found } = compile({ fitting: valve(more) }, { workshop: bench(changes) });
  const seat = plan?.parts.find(({ part }) => part.id === 'seat-piece');
  const across = (name: string) => seat?.part.surfaces.find((s): s is Cylinder => s.shape === 'cylinder' && s.id === `seat-piece/${name}`);
  const steps = (seat?.route.setUps ?? []).map((s) => s.operations.map((op) => op.slice('seat-piece/'.length)));
  const figure = (of: string) => plan?.fitting.derivations.find((d) => d.of === of)?.value;
  return { plan, found, across, steps, figure };
};

describe('a drawer with 3.6 and 3.7 drills and 3.8 silver steel, no 4.0', () => {
  const { plan, across, steps, figure } = planned([SLIM, RODS, SHELF, REAMERS, DRILLS]);
  it('is given a 5 mm ball on 3.8, planned and proved whole', () => {
    expect([figure('ball'), figure('bore')]).toEqual([5, 3.8]);
    expect(plan?.parts.filter(({ proof }) => !proof.holds)).toEqual([]);
    expect(plan?.parts.length).toBeGreaterThan(6);
  });
  it('on a land of two diameters, the inlet behind it wider', () => {
    const [bore, inlet] = [across('bore'), across('inlet')];
    expect(toMm(bore?.to ?? (0 as never))).toBe(8);
    expect(inlet?.from).toBe(bore?.to);
    expect(inlet?.size.target).toBeGreaterThan((bore?.size.target ?? 0) + 4000);
  });
  it('drilled 3.6 or 3.7 from the seat side, finished by a D-bit from the inlet side, the inlet opened last', () => {
    const [first = [], , second = []] = steps;
    expect(steps[1]).toEqual(['flats/file-flats']);
    expect(first).toContain('bore/drill');
    expect(second).not.toContain('bore/drill');
    const bored = plan?.parts.find(({ part }) => part.id === 'seat-piece')?.route.chosen.flatMap((m) => m.operations);
    expect([36_000, 37_000]).toContain(bored?.find((o) => o.id === 'seat-piece/bore/drill')?.tool.size);
    const order = ['bore/bore-start', 'bore/d-bit', 'inlet/drill', 'cone/'].map((op) => second.findIndex((one) => one.startsWith(op)));
    expect(order.every((place) => place >= 0)).toBe(true);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    expect(steps.flat().at(-1)).toBe('bore/stone');
  });
});

describe('a 5 mm ball on the usual bench', () => {
  it('wants a boring tool for the start of its D-bit, and says which', () => {
    const { plan, found } = planned([], 'ball: 5 mm\n');
    expect(plan).toBeUndefined();
    expect(found.map((d) => d.code)).toContain('plan.no-route');
  });
  it('is planned and proved when there is one', () => {
    const { plan, across } = planned([SLIM], 'ball: 5 mm\n');
    expect(plan?.parts.every(({ proof }) => proof.holds)).toBe(true);
    expect(across('inlet')).toBeUndefined();
  });
  it('has its land when it is asked for', () => {
    const { plan, across } = planned([SLIM], 'ball: 5 mm\nland: 9 mm\n');
    expect(plan?.parts.every(({ proof }) => proof.holds)).toBe(true);
    expect(toMm(across('bore')?.to ?? (0 as never))).toBe(9);
  });
});
