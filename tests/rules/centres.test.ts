/** Between centres: where it is asked for, what it asks for, what is refused, and what the proof says to a spoilt plan. */
import { describe, expect, it } from 'vitest';
import { len, mm, toMm } from '../../src/base/units.ts';
import type { Grip, PlannedPart } from '../../src/model/plan.ts';
import { prove } from '../../src/phases/prove.ts';
import { type Change, holdsOf, ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';
import { shop } from '../fixtures/shop.ts';

const shaft = (within: string, { front = '8 h8', long = 70, first = 'may' } = {}): readonly string[] => [
  `first: { letter: A, centre: ${first} }`,
  'second: { letter: B, centre: may }',
  'outside:',
  `  - { name: front, diameter: ${front}, length: 20 mm, role: running, shoulder: { letter: C } }`,
  `  - { name: body, diameter: 9.2 mm, length: ${long} mm, shoulder: { letter: D } }`,
  '  - { name: rear, diameter: 8 h8, length: 20 mm, role: running }',
  ...(within === '' ? [] : [`coaxial: [{ of: rear, to: front, within: ${within} }]`]),
];
const grips = (part: PlannedPart): readonly Grip[] => part.route.setUps.map((s) => s.grip).filter((g) => g.kind === 'between-centres');

describe('between centres', () => {
  it('is where two ends have to agree closer than any chuck puts work back', () => {
    const compiled = planOwn(shaft('0.01 mm'));
    const part = ownPart(compiled);
    expect(holdsOf(compiled)).toEqual(['bar', 'blank', 'between-centres', 'between-centres']);
    expect(part.proof.holds).toBe(true);
    expect(part.chart.truths?.map((t) => [toMm(t.worst), t.met])).toEqual([[0, true]]);
  });
  it.each([
    ['a collet is true enough', '0.05 mm'],
    ['nothing is asked', ''],
  ])('is not where %s', (_what, within) => expect(holdsOf(planOwn(shaft(within)))).not.toContain('between-centres'));
  it('has the dog at the end that is driven, on the raw blank first and then on what is finished', () => {
    const [first, second] = grips(ownPart(planOwn(shaft('0.01 mm'))));
    expect([first?.out, first?.on, toMm(first?.diameter ?? len(0))]).toEqual(['first', [], 10]);
    expect([second?.out, second?.on, toMm(second?.diameter ?? len(0))]).toEqual(['second', ['part/front'], 7.99]);
    expect(grips(ownPart(planOwn(shaft('0.01 mm')))).map((g) => toMm(len(g.to - g.from)))).toEqual([8, 8]);
  });
  it.each<readonly [string, readonly string[], readonly Change[], string, number, number]>([
    ['a lathe too short', shaft('0.01 mm'), [['between-centres: 300 mm', 'between-centres: 120 mm']], 'centres-too-near', 120, 130],
    ['too slender a shaft', shaft('0.01 mm', { long: 90 }), [], 'centres-slender', 130, 119.9],
    ['a blank too thick for the spindle', shaft('0.01 mm'), [['spindle-bore: 20 mm', 'spindle-bore: 8 mm']], 'blank-too-thick', 8, 10],
  ])('is refused for %s, with the figures', (_what, lines, changes, rule, has, wants) => {
    const refused = refusedOf(planOwn(lines, changes)).find((r) => r.because.rule === rule);
    expect(refused && [toMm(refused.has ?? len(0)), Math.round(toMm(refused.wants ?? refused.most ?? len(0)) * 10) / 10]).toEqual([
      has,
      Math.round(wants * 10) / 10,
    ]);
  });
  it('is refused where an end may carry no hole, and then nothing makes it', () => {
    const { noRoutes } = planOwn(shaft('0.01 mm', { first: 'must not' }));
    const rules = noRoutes?.flatMap((none) => none.refused.map((r) => r.because.rule));
    expect(rules).toEqual(expect.arrayContaining(['no-two-centres', 'true-between-centres']));
  });
  it('has no dog on a thread', () => {
    const lines = shaft('', { front: '8 h8' }).map((l) =>
      l.replace('diameter: 8 h8, length: 20 mm, role: running, shoulder', 'thread: M8, length: 20 mm, starts: first, shoulder'),
    );
    const refused = refusedOf(planOwn(lines)).filter((r) => r.what.includes('between-centres'));
    expect(refused.map((r) => r.because.rule)).toEqual(['finished-thread']);
  });
});

describe('a plan between centres that is spoilt', () => {
  const sound = ownPart(planOwn(shaft('0.01 mm')));
  const failing = (route: PlannedPart['route']): readonly unknown[] =>
    prove({ part: sound.part, route, chart: sound.chart, workshop: shop })
      .claims.filter((c) => !c.holds)
      .map((c) => [c.kind, c.grounds.reason]);
  const changed = (change: (g: Grip) => Partial<Grip>): PlannedPart['route'] => ({
    ...sound.route,
    setUps: sound.route.setUps.map((s) => (s.grip.kind === 'between-centres' ? { ...s, grip: { ...s.grip, ...change(s.grip) } } : s)),
  });
  it.each<readonly [string, (g: Grip) => Partial<Grip>, string]>([
    ['the dog on too little', (g) => ({ from: len(Math.max(g.from, g.to - mm(3))), to: g.to }), 'short'],
    ['the dog on another size', (g) => ({ diameter: len(g.diameter + mm(3)) }), 'nothing'],
  ])('by %s', (_what, change, reason) => expect(failing(changed(change))).toContainEqual(['grip', reason]));
  it('by an end that has no centre hole', () => {
    const setUps = sound.route.setUps.map((s) => ({ ...s, operations: s.operations.filter((o) => o !== 'part/B.centre/centre') }));
    expect(failing({ ...sound.route, setUps })).toContainEqual(['grip', 'no-centre']);
  });
  it('by an end that is faced while the centre is in it', () => {
    const face = 'part/B/face';
    const setUps = sound.route.setUps.map((s) => ({
      ...s,
      operations: [
        ...s.operations.filter((o) => o !== face),
        ...(s.grip.kind === 'between-centres' && s.grip.out === 'second' ? [face] : []),
      ],
    }));
    expect(failing({ ...sound.route, setUps })).toContainEqual(['held', 'on-the-centre']);
  });
});
