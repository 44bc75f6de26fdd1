/** Work that stands far out beyond a hold on a finished section: refused with its figures, held with a centre, and what the proof says without it. */
import { describe, expect, it } from 'vitest';
import { len, mm, toMm } from '../../src/base/units.ts';
import type { Grip, PlannedPart } from '../../src/model/plan.ts';
import { prove } from '../../src/phases/prove.ts';
import { type Change, ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';
import { shop } from '../fixtures/shop.ts';

const screw = ({ long = 56, nose = 8, centre = 'may' } = {}): readonly string[] => [
  'first: { letter: A }',
  `second: { letter: B, centre: ${centre} }`,
  'outside:',
  `  - { name: nose, diameter: ${nose} mm, length: 10 mm, shoulder: { letter: N } }`,
  '  - { name: collar, diameter: 11 mm, length: 4 mm, shoulder: { letter: C } }',
  `  - { name: shank, thread: M6, length: ${long} mm, starts: second }`,
];
const holds = (part: PlannedPart): readonly string[] =>
  part.route.setUps.map(({ grip }) => (grip.centre === undefined ? grip.kind : `${grip.kind} and centre`));
const offered = (part: PlannedPart, id: string): Grip | undefined => part.candidates.grips.find((g) => g.id === `part/${id}`);
const stickOut = (lines: readonly string[], what: string, changes: readonly Change[] = []) => {
  const refused = refusedOf(planOwn(lines, changes)).find((r) => r.what === `part/${what}` && r.because.rule === 'stick-out');
  return refused && [toMm(refused.has ?? len(0)), toMm(refused.most ?? len(0))];
};

describe('work beyond its hold', () => {
  it.each<readonly [string, readonly string[], string, readonly number[] | undefined]>([
    // four of the widest diameter beyond: 4 x 11; common practice, no source
    ['more than four of its widest is refused', screw(), 'nose.collet.second', [61, 44]],
    ['just as much is not', screw({ long: 39 }), 'nose.collet.second', undefined],
    ['more than fifteen is refused with a centre too', screw({ long: 165 }), 'nose.collet.second.and-centre', [170, 165]],
  ])('%s', (_what, lines, grip, figures) => expect(stickOut(lines, grip)).toEqual(figures));

  it('counts as bar while nothing of it has been turned', () => {
    const part = ownPart(planOwn(screw({ long: 41 })));
    expect(offered(part, 'nose.collet.second')).toBeUndefined();
    expect(offered(part, 'nose.collet.second.as-bar')?.gone).toEqual(['part/collar/turn', 'part/shank/turn']);
  });
  it('is held with a centre whose hole is drilled first, the raw blank through the spindle', () => {
    const part = ownPart(planOwn(screw()));
    expect(holds(part)).toEqual(['bar', 'blank', 'collet and centre']);
    expect(part.proof.holds).toBe(true);
    const on = offered(part, 'nose.collet.second.and-centre');
    expect(on?.ready).toContain('part/B.centre/centre');
    expect(on?.hides).toEqual(expect.arrayContaining(['part/B/face', 'part/B.centre/centre']));
  });
  it('has no plan where that end may carry no hole, and a centre is what would help', () => {
    const { noRoutes } = planOwn(screw({ centre: 'must not' }));
    expect(noRoutes?.flatMap((none) => none.refused.map((r) => r.because.rule))).toContain('no-centre-hole');
    expect(noRoutes?.flatMap((none) => none.wouldHelp.map((r) => r.because.rule))).toContain('stick-out');
  });
});

describe('an end that may have a centre, and no centre drill is small enough', () => {
  const lines = [...screw().slice(0, -1), '  - { name: shank, diameter: 6 mm, length: 56 mm }'];
  const largeOnly = (['A0.5/1.06', 'A1/2.12', 'A1.6/3.35'] as const).map((name): Change => [new RegExp(`.*${name}.*\n`), '']);
  const told = (changes: readonly Change[]) => {
    const refused = refusedOf(planOwn(lines, changes));
    return (['stick-out', 'no-centre-hole'] as const).map(
      (rule) => refused.find((r) => r.what.startsWith('part/nose.collet.second') && r.because.rule === rule)?.because.grounds,
    );
  };
  it('is told so, with the mouth that would do', () => {
    // six tenths of the end: 0.6 x 6; common practice, no source
    expect(told(largeOnly)).toEqual([{ bored: false, mouth: '3.6' }, { mouth: '3.6' }]);
  });
  it('is held with a centre as soon as there is one', () => {
    expect(told(largeOnly.slice(0, -1))).toEqual([{ bored: false, mouth: '' }, undefined]);
  });
});

describe('long work on a threaded mandrel', () => {
  const rod = (long: number, centre = 'may'): readonly string[] => [
    'first: { letter: A }',
    `second: { letter: B, centre: ${centre} }`,
    'outside:',
    '  - { name: thread, thread: M10x1, length: 10 mm, starts: first, shoulder: { letter: C, role: register } }',
    '  - { name: collar, diameter: 13 mm, length: 8 mm, shoulder: { letter: D } }',
    `  - { name: rod, diameter: 8 h9, length: ${long} mm, role: sealing }`,
    'side: [{ name: flats, flats: 11 mm, on: collar, at: 4 mm, length: 6 mm }]',
  ];
  it('has a centre in its free end, counted from the shoulder that stands against the mandrel', () => {
    const lines = rod(62);
    expect(holds(ownPart(planOwn(lines)))).toEqual(['bar', 'blank', 'bench', 'threaded-mandrel and centre']);
    // 62 and the collar's 8; four of the collar's 13
    expect(stickOut(lines, 'thread.thread.mandrel.second')).toEqual([70, 52]);
    expect(ownPart(planOwn(lines)).proof.holds).toBe(true);
  });
  it('needs none where it is short', () =>
    expect(offered(ownPart(planOwn(rod(40))), 'thread.thread.mandrel.second.and-centre')).toBeUndefined());
  it('is refused by the proof when the centre is left away', () => {
    const part = ownPart(planOwn(rod(62)));
    const setUps = part.route.setUps.map((s) => {
      const { centre: _, ...grip } = s.grip;
      return { ...s, grip: s.grip.kind === 'threaded-mandrel' ? grip : s.grip };
    });
    const { claims } = prove({ part: part.part, route: { ...part.route, setUps }, chart: part.chart, workshop: shop });
    expect(claims.filter((c) => !c.holds).map((c) => [c.kind, c.grounds.reason])).toEqual([['grip', 'far-out']]);
  });
  it('has no plan where that end may carry no hole', () => expect(planOwn(rod(62, 'must not')).plan).toBeUndefined());
});

describe('a long screw that is spoilt', () => {
  const sound = ownPart(planOwn(screw()));
  const failing = (route: PlannedPart['route']): readonly unknown[] =>
    prove({ part: sound.part, route, chart: sound.chart, workshop: shop })
      .claims.filter((c) => !c.holds)
      .map((c) => [c.kind, c.grounds.reason]);
  const changed = (change: (g: Grip) => Grip): PlannedPart['route'] => ({
    ...sound.route,
    setUps: sound.route.setUps.map((s) => (s.grip.kind === 'collet' ? { ...s, grip: change(s.grip) } : s)),
  });
  it.each<readonly [string, (g: Grip) => Grip, string]>([
    ['by leaving the centre away', ({ centre: _, ...g }) => g, 'far-out'],
    ['by a hold on too little', (g) => ({ ...g, from: g.from, to: len(g.from + mm(2)) }), 'short'],
  ])('%s', (_what, change, reason) => expect(failing(changed(change))).toContainEqual(['grip', reason]));
  it('by an end without its hole', () => {
    const setUps = sound.route.setUps.map((s) => ({ ...s, operations: s.operations.filter((o) => o !== 'part/B.centre/centre') }));
    expect(failing({ ...sound.route, setUps })).toContainEqual(['grip', 'no-centre']);
  });
  it('by facing the end while the centre is in it', () => {
    const face = 'part/B/face';
    const setUps = sound.route.setUps.map((s) => ({
      ...s,
      operations: [...s.operations.filter((o) => o !== face), ...(s.grip.kind === 'collet' ? [face] : [])],
    }));
    expect(failing({ ...sound.route, setUps })).toContainEqual(['held', 'on-the-centre']);
  });
});

describe('a vee under the drill press', () => {
  const pin = (plain: number): readonly string[] => [
    'first: { letter: A }',
    'second: { letter: B }',
    `outside: [{ name: pin, diameter: 12 mm, length: ${plain} mm }]`,
    'side: [{ name: hole, cross-hole: 3 mm, on: pin, at: 8 mm }]',
  ];
  const sound = ownPart(planOwn(pin(24)));
  it('lies on its plain section, and the proof says how much of it there is', () => {
    const said = sound.proof.claims.filter((c) => c.grounds.kind === 'vee-block');
    // half of the diameter lies steady: common practice, no source
    expect(said.map((c) => [c.holds, c.grounds.has, c.grounds.wants])).toEqual([[true, '24.00', '6.00']]);
  });
  it.each<readonly [string, { readonly from: number; readonly to: number }, string]>([
    ['on too little', { from: 0, to: 5 }, 'short'],
    ['beside the work', { from: 60, to: 80 }, 'nothing'],
  ])('is refused by the proof %s', (_what, { from, to }, reason) => {
    const setUps = sound.route.setUps.map((s) =>
      s.grip.kind === 'vee-block' ? { ...s, grip: { ...s.grip, from: mm(from), to: mm(to) } } : s,
    );
    const { claims } = prove({ part: sound.part, route: { ...sound.route, setUps }, chart: sound.chart, workshop: shop });
    expect(claims.filter((c) => !c.holds).map((c) => [c.kind, c.grounds.reason])).toEqual([['grip', reason]]);
  });
});
