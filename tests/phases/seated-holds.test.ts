/**
 * Discs and nuts: short for their diameter, but they stand out no further than they are thick, and lie against the steps of the jaws (common
 * practice, no source).
 */
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import { words } from '../../src/base/words.ts';
import { loadWords } from '../../src/files.ts';
import type { Grip } from '../../src/model/plan.ts';
import { type Proved, prove } from '../../src/phases/prove.ts';
import { dialText, figuresSaid } from '../../src/phases/sheet/dials.ts';
import { wordsIn } from '../../src/phases/sheet/said.ts';
import { type Change, holdsOf, ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';

const nut = (across: string, dome: string): readonly string[] => [
  ...['bar: hexagon 14 mm', 'first: { letter: A, role: register }', 'second: { letter: B }', 'outside:'],
  `  - { name: hexagon, as-bar: yes, length: ${across}, shoulder: { letter: C } }`,
  `  - { name: dome, diameter: 12 mm, length: ${dome} }`,
  'inside: [{ name: thread, thread: M8, from: first, depth: 10 mm, full: 7 mm, bottom: point }]',
];
const BIG: Change = ['across: [6, 8, 10, 12, 14, 16, 18, 20, 22, 25]', 'across: [25, 60]'];
const COVER = [
  ...['first: { letter: A, role: register }', 'second: { letter: B }', 'outside:'],
  '  - { name: spigot, diameter: 38 -0.02 -0.06, length: 3 mm, role: register, shoulder: { letter: C, role: register } }',
  ...['  - { name: flange, diameter: 58 mm, length: 6 mm }', '  - { name: boss, diameter: 16 mm, length: 10 mm }'],
];
const seatedIn = (lines: readonly string[], changes: readonly Change[] = []) => {
  const compiled = planOwn(lines, changes);
  const planned = ownPart(compiled);
  const setUp = planned.route.setUps.find(({ grip }) => grip.seated);
  return { compiled, planned, setUp };
};

describe('a hold that is short for its diameter', () => {
  it('serves where the work lies against the jaws and stands out less than it is thick: a nut on its hexagon', () => {
    const { compiled, planned, setUp } = seatedIn(nut('7 mm', '7 mm'));
    expect(holdsOf(compiled)).toEqual(['bar', 'hexagon']);
    // 7 of hexagon, 1 of it clear of the tool; 0.4 of the 8 that stand out are asked
    expect(setUp && [setUp.grip.to - setUp.grip.from, setUp.grip.datum]).toEqual([mm(6), 'part/A']);
    expect(planned.proof.holds).toBe(true);
  });
  it('serves a cover, whose flange may come out anywhere within its limits', () => {
    const { compiled, planned } = seatedIn(COVER, [BIG]);
    expect(holdsOf(compiled)).toEqual(['bar', 'bored-jaws']);
    expect(planned.proof.holds).toBe(true);
  });
  it('is not offered to what stands out further', () => {
    const grips = ownPart(planOwn(nut('9 mm', '16 mm'))).candidates.grips.filter((grip) => grip.seated);
    expect(grips.map((grip) => grip.out)).not.toContain('second');
  });
  it('is not offered on a sliver', () => {
    const compiled = planOwn(
      COVER.map((line) => line.replace('length: 6 mm', 'length: 3.5 mm')),
      [BIG],
    );
    expect(compiled.noRoutes).toHaveLength(1);
    expect(refusedOf(compiled).map((one) => one.because.rule)).toContain('grip-short');
  });
  it('is taken only where no other hold will do', () => {
    const long = nut('7 mm', '12 mm').map((line) => line.replace('diameter: 12 mm', 'diameter: 10 h9'));
    const { planned, setUp } = seatedIn(long);
    expect(planned.candidates.grips.some((grip) => grip.seated)).toBe(true);
    expect(setUp).toBeUndefined();
  });
  it('is judged by what stands out of it', () => {
    const { compiled, planned, setUp } = seatedIn(nut('7 mm', '7 mm'));
    if (!compiled.plan || !setUp) throw new Error('no plan');
    const { part, route, chart } = planned;
    const held = (change: Partial<Grip>): Proved => ({
      ...{ part, chart, workshop: compiled.plan?.workshop as Proved['workshop'] },
      route: { ...route, setUps: route.setUps.map((s) => (s === setUp ? { ...s, grip: { ...s.grip, ...change } } : s)) },
    });
    const reasons = (asked: Proved) => [...new Set(prove(asked).claims.flatMap((one) => (one.holds ? [] : [one.grounds.reason])))];
    const { seated: _, ...bare } = setUp.grip;
    expect(reasons(held({}))).toEqual([]);
    expect(
      reasons({ ...held({}), route: { ...route, setUps: route.setUps.map((s) => (s === setUp ? { ...s, grip: bare } : s)) } }),
    ).toEqual(['short']);
    expect(reasons(held({ to: mm(3.3) }))).toContain('short');
  });
});

describe('what is cut in such a hold', () => {
  const depth = (lines: readonly string[], changes: readonly Change[], op: string) => {
    const figures = ownPart(planOwn(lines, changes)).figures.find((one) => one.op === op);
    return { deepest: Math.max(0, ...(figures?.passes ?? []).map(toMm)), bound: figures?.bound };
  };
  it('is cut half as deep as usual, and says why', () => {
    const cut = depth(nut('7 mm', '7 mm'), [], 'part/dome/turn');
    expect(cut.bound).toBe('bound.hold');
    // 0.5 is what the table gives for turning this bronze in full depth
    expect(cut.deepest).toBeLessThanOrEqual(0.25);
  });
  it('takes many like cuts, inward and each stopped at one reading, told by their step', () => {
    const { planned } = seatedIn(COVER, [BIG]);
    const operation = planned.route.chosen.flatMap((m) => m.operations).find((o) => o.id === 'part/boss/face-down');
    const figures = planned.figures.find((one) => one.op === 'part/boss/face-down');
    if (!operation || !figures) throw new Error('no boss');
    const w = wordsIn(words(loadWords()), 'mm');
    const said = figuresSaid(operation, figures, w).join(' ');
    expect(said).toMatch(/top slide \d+, and \d+ more for each cut, to \d+t/);
    expect(said.match(/\d+t/g)?.length).toBeLessThan(8);
    expect(dialText(figures, w)).toContain('cross');
  });
});
