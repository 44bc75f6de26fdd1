/** Holds beyond chuck, collet and threaded mandrel: each on a small part where it applies, and on one where it is refused, with figures. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import { type Compiled, compile } from '../../src/compile.ts';
import type { Grip, Operation, PlannedPart } from '../../src/model/plan.ts';
import { prove } from '../../src/phases/prove.ts';
import { shop } from '../fixtures/shop.ts';

const BENCH = readFileSync(new URL('../../specs/workshops/bench-lathe.yaml', import.meta.url), 'utf8');
type Change = readonly [from: string, to: string];
/** The bench lathe with lines changed; a change that changes nothing would show nothing. */
const workshop = (changes: readonly Change[]): string =>
  changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`no '${from}' in the workshop`);
    return text.replace(from, to);
  }, BENCH);
const NO_SOFT_JAWS: Change = ['soft-jaws: yes', 'soft-jaws: no'];

const planned = (lines: readonly string[], changes: readonly Change[]): Compiled =>
  compile(
    { fitting: { name: 'part.yaml', text: ['fitting: turned-part', 'title: Part', 'name: part', 'material: PB102', ...lines].join('\n') } },
    { workshop: { name: 'workshop.yaml', text: workshop(changes) } },
  );
function partOf(compiled: Compiled): PlannedPart {
  const part = compiled.plan?.parts[0];
  if (!part) throw new Error(JSON.stringify(compiled.found));
  return part;
}
const kinds = (compiled: Compiled): readonly string[] => partOf(compiled).route.setUps.map((s) => s.grip.kind);
/** What was refused by that rule: has, and wants or has at most, in mm. */
const refusals = (compiled: Compiled, rule: string): readonly (readonly number[])[] => {
  const refused = compiled.plan ? partOf(compiled).candidates.refused : (compiled.noRoutes ?? []).flatMap((none) => none.refused);
  return refused.flatMap((r) =>
    r.because.rule === rule ? [[r.has, r.wants ?? r.most].flatMap((l) => (l === undefined ? [] : [toMm(l)]))] : [],
  );
};

// ---- stub mandrel --------------------------------------------------------------------------------------------------------
const ring = (long: number, bore: string, rim = 22): readonly string[] => [
  'first: { letter: A, role: register }',
  'second: { letter: B, role: register }',
  `outside: [{ name: rim, diameter: ${rim} mm, length: ${long} mm }]`,
  `inside: [{ name: bore, diameter: ${bore}, from: first, depth: through, role: running }]`,
  `lengths: [{ from: A, to: B, size: ${long} ±0.05 }]`,
];

describe('a stub mandrel in the bore', () => {
  it('holds a thin ring for its second face where no jaws may, on a spigot made right before', () => {
    const compiled = planned(ring(5, '19 H8'), [NO_SOFT_JAWS]);
    expect(kinds(compiled)).toEqual(['bar', 'stub-mandrel']);
    expect(partOf(compiled).proof.holds).toBe(true);
    const [part, mandrel] = compiled.plan?.parts ?? [];
    expect(mandrel?.part.use).toBe('tooling made in place');
    expect(mandrel?.proof.holds).toBe(true);
    expect(compiled.plan?.sequence.map((s) => `${s.part} ${s.setUp}`)).toEqual([
      `${part?.part.id} 0`,
      `${mandrel?.part.id} 0`,
      `${part?.part.id} 1`,
    ]);
  });
  it('is turned within the limits of the bore that it serves', () => {
    const [part, mandrel] = planned(ring(5, '19 H8'), [NO_SOFT_JAWS]).plan?.parts ?? [];
    const size = (p: PlannedPart | undefined, id: string) =>
      p?.part.surfaces.flatMap((s) => (s.id === id && 'size' in s ? [s.size] : []))[0];
    const [bore, spigot] = [size(part, 'part/bore'), size(mandrel, `${mandrel?.part.id}/spigot`)];
    expect([spigot?.lo, spigot?.hi]).toEqual([bore?.lo, bore?.hi]);
  });
  it('is not made where soft jaws bored in place do as well', () =>
    expect(kinds(planned(ring(5, '19 H8'), []))).toEqual(['bar', 'bored-jaws']));
  it.each<readonly [string, readonly string[], string, readonly number[]]>([
    ['a bore of wide limits', ring(5, '19 mm'), 'bore-loose', [0.4, 0.06]],
    ['a bore that is small for its rim', ring(5, '8 H8', 24), 'spigot-slight', [8, 12]],
    ['a ring that is too short', ring(3, '19 H8'), 'spigot-short', [2.5, 3]],
  ])('is refused in %s, with the figures', (_what, lines, rule, figures) => {
    const [has = 0, wants = 0] = refusals(planned(lines, [NO_SOFT_JAWS]), rule)[0] ?? [];
    expect(has).toBeCloseTo(figures[0] ?? 0, 1);
    expect(wants).toBe(figures[1]);
  });
  it.each<readonly [string, Partial<Grip>, string]>([
    ['on a shorter spigot', { to: mm(2) }, 'short'],
    ['on a spigot of another size', { diameter: mm(17) }, 'nothing'],
    ['with a heavy cut', {}, 'heavy'],
  ])('is refused by the proof %s', (_what, change, reason) => {
    const { part, route, chart, figures } = partOf(planned(ring(5, '19 H8'), [NO_SOFT_JAWS]));
    const heavy = (o: Operation): Operation => (reason === 'heavy' ? { ...o, light: false } : o);
    const damaged = {
      ...route,
      setUps: route.setUps.map((s) => (s.grip.kind === 'stub-mandrel' ? { ...s, grip: { ...s.grip, ...change } } : s)),
      chosen: route.chosen.map((m) => ({ ...m, operations: m.operations.map(heavy) })),
    };
    const failing = prove({ part, route: damaged, chart, workshop: shop, figures }).claims.filter((c) => !c.holds);
    expect(failing.map((c) => [c.kind, c.grounds.reason])).toContainEqual(['grip', reason]);
  });
  it('is named as what would help where mandrels are not made', () => {
    const { noRoutes } = planned(ring(5, '19 H8'), [NO_SOFT_JAWS, ['mandrels: yes', 'mandrels: no']]);
    expect(noRoutes?.flatMap((none) => none.wouldHelp.map((r) => r.because.rule))).toContain('stub-mandrels-not-made');
  });
});

// ---- four-jaw ------------------------------------------------------------------------------------------------------------
const bush = (second: string): readonly string[] => [
  'first: { letter: A, role: register }',
  'second: { letter: B }',
  'outside: [{ name: barrel, diameter: 18 h9, length: 30 mm, role: register }]',
  'inside:',
  '  - { name: wide, diameter: 12 H8, from: first, depth: 10 mm, bottom: flat, letter: C, role: running }',
  second,
  '  - { name: passage, diameter: 7 mm, from: first, depth: through, role: clearance }',
];
const BORED = '  - { name: narrow, diameter: 9 H8, from: second, depth: 12 mm, bottom: flat, letter: D, role: running }';
const OPEN = '  - { name: narrow, diameter: 9 mm, from: second, depth: 12 mm, bottom: flat, letter: D, role: clearance }';
const FOUR_JAW: Change = ['soft-jaws: yes', 'soft-jaws: no\n  four-jaw: yes'];

describe('a four-jaw chuck with the indicator', () => {
  it.each<readonly [string, readonly string[], readonly Change[], readonly string[]]>([
    ['is used where bores from both ends must agree', bush(BORED), [FOUR_JAW], ['bar', 'four-jaw']],
    ['is used where nothing else holds a finished diameter', bush(OPEN), [FOUR_JAW, ['sleeves: yes', 'sleeves: no']], ['bar', 'four-jaw']],
    ['is not used where a sleeve is true enough', bush(OPEN), [FOUR_JAW], ['bar', 'sleeve']],
    ['comes after jaws bored in place', bush(BORED), [['soft-jaws: yes', 'soft-jaws: yes\n  four-jaw: yes']], ['bar', 'bored-jaws']],
  ])('%s', (_what, lines, changes, holds) => {
    const compiled = planned(lines, changes);
    expect(kinds(compiled)).toEqual(holds);
    expect(partOf(compiled).proof.holds).toBe(true);
  });
  it('is set within 0.02', () => {
    const grip = partOf(planned(bush(BORED), [FOUR_JAW])).route.setUps[1]?.grip;
    expect(grip?.runout).toBe(mm(0.02));
  });
  it('springs a ring as three jaws do: refused, with the wall it has and the one it wants', () => {
    const compiled = planned(ring(5, '19 H8'), [FOUR_JAW, ['sleeves: yes', 'sleeves: no']]);
    expect(kinds(compiled)).toEqual(['bar', 'stub-mandrel']);
    expect(refusals(compiled, 'thin-wall')).toContainEqual([1.49, 2.2]);
  });
});

// ---- vee -----------------------------------------------------------------------------------------------------------------
const crossed = (long: number): readonly string[] => [
  'first: { letter: A }',
  'second: { letter: B }',
  `outside: [{ name: collar, diameter: 20 mm, length: ${long} mm }]`,
  `side: [{ name: hole, cross-hole: 3 mm, on: collar, at: ${long / 2} mm }]`,
];

describe('a vee under the drill press', () => {
  it.each([20, 30])('holds round work %d mm long for its cross hole, on its turned outside', (long) => {
    const compiled = planned(crossed(long), []);
    const { route, proof } = partOf(compiled);
    const vee = route.setUps.find((s) => s.grip.kind === 'vee-block');
    expect(vee?.operations).toEqual(['part/hole/cross-drill']);
    expect([vee?.no, vee?.grip.on, vee?.grip.ready, toMm(vee?.grip.runout ?? mm(0))]).toEqual([
      0,
      ['part/collar'],
      ['part/collar/turn'],
      0.2,
    ]);
    expect(vee?.grip.because.map((b) => b.rule)).toEqual(['vee-block']);
    expect(proof.holds).toBe(true);
    // it counts as no set-up
    expect(route.cost.setUps).toBe(route.setUps.filter((s) => s.no > 0).length);
  });
  it('refuses a collar shorter than half its diameter, with both lengths, and keeps the hold to be tried', () => {
    const compiled = planned(crossed(8), []);
    expect(compiled.plan).toBeUndefined();
    expect(refusals(compiled, 'vee-short')).toEqual([[8, 10]]);
    const refused = compiled.noRoutes?.flatMap((none) => none.refused.filter((r) => r.because.rule === 'vee-short')) ?? [];
    expect(refused.map((r) => r.would && 'grip' in r.would && r.would.grip.kind)).toEqual(['vee-block']);
  });
  it.each([
    ['a finished thread', '  - { name: collar, thread: M10x1, length: 20 mm, starts: first, shoulder: { letter: C } }'],
    ['a sealing face', '  - { name: collar, diameter: 10 mm, length: 20 mm, role: sealing, shoulder: { letter: C } }'],
  ])('never lies on %s: on the plain piece beside it', (_what, collar) => {
    const lines = [
      'first: { letter: A }',
      'second: { letter: B }',
      'outside:',
      collar,
      '  - { name: plain, diameter: 14 mm, length: 18 mm }',
      'side: [{ name: hole, cross-hole: 3 mm, on: plain, at: 7 mm }]',
    ];
    const vee = partOf(planned(lines, [])).candidates.grips.find((g) => g.kind === 'vee-block');
    expect(vee?.on).toEqual(['part/plain']);
  });
  it('is not asked for where a hexagon lies by its flats', () => {
    const lines = [
      'first: { letter: A }',
      'second: { letter: B }',
      'outside: [{ name: nut, as-bar: yes, length: 16 mm }]',
      'bar: hexagon 14 mm',
      'side: [{ name: hole, cross-hole: 3 mm, on: nut, at: 8 mm }]',
    ];
    const { route } = partOf(planned(lines, []));
    expect(route.setUps.find((s) => s.operations.includes('part/hole/cross-drill'))?.grip.kind).toBe('bench');
  });
});

// ---- filing guide --------------------------------------------------------------------------------------------------------
describe('a square is filed in a guide', () => {
  const square = [
    'first: { letter: A }',
    'second: { letter: B }',
    'outside:',
    '  - { name: tang, diameter: 6 mm, length: 9 mm, shoulder: { letter: C } }',
    '  - { name: stem, diameter: 10 mm, length: 20 mm }',
    'side: [{ name: square, square: 4.5 mm, on: tang, at: 4 mm, length: 7 mm }]',
  ];
  const NO_GUIDE: Change = ['  filing-guide: yes', '  filing-guide: no'];
  it.each<readonly [string, readonly Change[], readonly string[]]>([
    ['set to its depth, where there is one', [], ['filing-guide-set']],
    ['made first and kept, where there is none', [NO_GUIDE], ['filing-guide-rest', 'filing-guide-set']],
    ['and done without where it cannot be hardened', [NO_GUIDE, ['  torch: yes', '  torch: no']], ['filing-guide-missing']],
    [
      'and done without where no rod is thick enough',
      [NO_GUIDE, ['[3, 4, 4.5, 5, 6, 8]   ', '[3, 4, 4.5, 5]   ']],
      ['filing-guide-missing'],
    ],
  ])('%s', (_what, changes, said) => {
    const operations = partOf(planned(square, changes)).route.chosen.flatMap((m) => m.operations);
    expect(operations.filter((o) => o.verb === 'file-square').flatMap((o) => o.says.map((b) => b.rule))).toEqual(said);
  });
});
