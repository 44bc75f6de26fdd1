/** Tooling that is designed to what asks for it, made first and kept: split sleeves, the filing guide. */
import { describe, expect, it } from 'vitest';
import { toMm } from '../../src/base/units.ts';
import type { Compiled } from '../../src/compile.ts';
import type { PlannedPart } from '../../src/model/plan.ts';
import { prove } from '../../src/phases/prove.ts';
import { type Change, holdsOf, ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';
import { shop } from '../fixtures/shop.ts';

const ENDS = ['first: { letter: A }', 'second: { letter: B }'];
const peg = (diameter: string, head = 17) => [
  ...ENDS,
  'outside:',
  `  - { name: shank, diameter: ${diameter}, length: 14 mm, shoulder: { letter: C } }`,
  // too thin a rim to hold by
  `  - { name: head, diameter: ${head} mm, length: 2.5 mm }`,
  'side: []',
];
const toolingOf = (compiled: Compiled): readonly PlannedPart[] => (compiled.plan?.parts ?? []).slice(1);
const NO_BORING: Change = [/ {2}boring:\n(?: {4}-.*\n)+/, '  boring: []\n'];
const NO_BAR: Change = [/across: \[6, 8, 10, 12, 14, 16, 18, 20, 22, 25\]/, 'across: [18]'];
/** Without the long slim boring tool, the one that enters a hole for 7 mm reaches 8 mm. */
const NO_SLIM: Change = [/ {4}- \{ smallest: 5\.5 mm.*\n/, ''];
const NO_STEEL: Change = [/ {2}- \{ material: 230M07.*\n/, ''];

describe('a split sleeve', () => {
  it('is planned as a part, bored to the largest of close work, and made before it', () => {
    const compiled = planOwn(peg('11 h9'));
    expect(holdsOf(compiled)).toEqual(['bar', 'sleeve']);
    expect(ownPart(compiled).route.cost.tooling).toBe(1);
    const [sleeve, ...others] = toolingOf(compiled);
    expect(others).toEqual([]);
    expect([sleeve?.part.id, sleeve?.part.use, sleeve?.proof.holds]).toEqual(['split-sleeve-11x13', 'kept tooling', true]);
    const bore = sleeve?.part.surfaces.flatMap((s) => (s.shape === 'cylinder' && s.side === 'inside' ? [s.size] : []))[0];
    expect([toMm(bore?.lo ?? (0 as never)), toMm(bore?.hi ?? (0 as never))]).toEqual([11, 11.05]);
    expect(compiled.plan?.sequence.map((s) => s.part)).toEqual(['split-sleeve-11x13', 'split-sleeve-11x13', 'part', 'part']);
  });
  it.each(['11 mm', '11 ±0.1', '11 ±0.5'])('is bored to work of %s as that came out: after the hold in which it is turned', (size) => {
    const compiled = planOwn(peg(size));
    const part = ownPart(compiled);
    const [sleeve] = toolingOf(compiled);
    expect([sleeve?.part.id, sleeve?.part.use, sleeve?.proof.holds]).toEqual(['split-sleeve-11x13-part', 'tooling made to fit', true]);
    const sizesOf = (one: PlannedPart | undefined, side: 'inside' | 'outside', id: string) =>
      one?.part.surfaces.find((s) => s.shape === 'cylinder' && s.side === side && s.id.endsWith(id));
    const [bore, shank] = [sizesOf(sleeve, 'inside', '/bore'), sizesOf(part, 'outside', '/shank')];
    if (bore?.shape !== 'cylinder' || shank?.shape !== 'cylinder') throw new Error('no bore, or no shank');
    // over every shank that the drawing allows, by up to 0.05
    expect([bore.size.lo - shank.size.lo, bore.size.hi - shank.size.hi]).toEqual([0, 500]);
    expect(sleeve?.part.features.find((f) => f.kind === 'hole')).toMatchObject({ madeTo: { clear: { lo: 0, hi: 500 } } });
    const turned = part.route.setUps.findIndex((s) => s.operations.includes('part/shank/turn'));
    const held = part.route.setUps.findIndex((s) => s.grip.kind === 'sleeve');
    const day = compiled.plan?.sequence.map((s) => `${s.part} ${s.setUp}`) ?? [];
    const [first, made, then] = [`part ${turned}`, 'split-sleeve-11x13-part 0', `part ${held}`].map((one) => day.indexOf(one));
    expect([first, made, then]).toEqual([...[first, made, then]].sort((a, b) => Number(a) - Number(b)));
    // bored, however wide: a drill alone could not follow the work
    expect(sleeve?.route.setUps.flatMap((s) => s.operations).map((op) => op.slice(op.lastIndexOf('/') + 1))).toContain('bore');
  });
  it.each<readonly [string, string, number]>([
    ['of that size', 'kept-sleeves: [11]', 0],
    ['a little larger, on which it closes', 'kept-sleeves: [11.1]', 0],
    ['too large to close', 'kept-sleeves: [11.3]', 1],
    ['too small to open', 'kept-sleeves: [10.9]', 1],
  ])('is not made where the drawer has one: %s', (_what, keys, made) => {
    const compiled = planOwn(peg('11 mm'), [['  soft-jaws: yes', `  ${keys}\n  soft-jaws: yes`]]);
    expect(holdsOf(compiled)).toEqual(['bar', 'sleeve']);
    expect(toolingOf(compiled).length).toBe(made);
  });
  it.each<readonly [string, readonly Change[], string]>([
    ['no boring tool goes in', [NO_BORING], 'sleeve-not-bored'],
    ['no bar leaves a wall', [NO_BAR, NO_STEEL], 'sleeve-no-bar'],
  ])('is refused where %s, and soft jaws do instead', (_what, changes, rule) => {
    const compiled = planOwn(peg('16.5 mm'), changes);
    expect(refusedOf(compiled).map((r) => r.because.rule)).toContain(rule);
    expect(holdsOf(compiled)).toEqual(['bar', 'bored-jaws']);
  });
  it('is no longer than its boring tool reaches, and the hold no longer than it', () => {
    const compiled = planOwn(peg('7 mm', 13), [NO_SLIM]);
    const grip = ownPart(compiled).route.setUps[1]?.grip;
    expect(grip && toMm((grip.to - grip.from) as never)).toBe(7.5);
    expect(toolingOf(compiled)[0]?.part.length).toBe(75_000);
  });
  it('slit before it is bored is refused', () => {
    const [sleeve] = toolingOf(planOwn(peg('11 mm')));
    if (!sleeve) throw new Error('no sleeve');
    const { part, route, chart } = sleeve;
    const spoilt = { ...route, setUps: [...route.setUps].reverse() };
    const failing = prove({ part, route: spoilt, chart, workshop: shop }).claims.filter((c) => !c.holds);
    expect(failing.map((c) => [c.kind, c.about])).toContainEqual(['order', 'slit-last']);
  });
});

describe('a filing guide', () => {
  const NO_GUIDE: Change = ['  filing-guide: yes', '  filing-guide: no'];
  const tang = [
    ...ENDS,
    'outside:',
    '  - { name: tang, diameter: 6 mm, length: 9 mm, shoulder: { letter: C } }',
    '  - { name: stem, diameter: 10 mm, length: 20 mm }',
    'side: [{ name: square, square: 4.5 mm, on: tang, at: 4 mm, length: 7 mm }]',
  ];
  it('is two rollers and two pins, made first, hardened and kept', () => {
    const compiled = planOwn(tang, [NO_GUIDE]);
    expect(toolingOf(compiled).map(({ part, proof }) => [part.id, part.quantity, part.use, proof.holds])).toEqual([
      ['guide-roller-8', 2, 'kept tooling', true],
      ['guide-pin-4', 2, 'kept tooling', true],
    ]);
    const verbs = toolingOf(compiled)[0]
      ?.route.chosen.flatMap((m) => m.operations)
      .map((o) => o.verb);
    expect(verbs).toContain('harden');
    expect(compiled.plan?.sequence.at(-1)?.part).toBe('part');
    expect(ownPart(compiled).route.cost.tooling).toBe(1);
  });
  it('is set so far under the top that the square comes to its size', () => {
    const square = ownPart(planOwn(tang))
      .route.chosen.flatMap((m) => m.operations)
      .find((o) => o.verb === 'file-square');
    expect(square?.says.map((b) => [b.rule, b.grounds.depth])).toEqual([['filing-guide-set', '0.75']]);
  });
  it('is not made where it stands there', () => expect(toolingOf(planOwn(tang))).toEqual([]));
});
