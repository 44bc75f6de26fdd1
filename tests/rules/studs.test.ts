/**
 * Work that is threaded right along, or at both ends, and has nothing else to hold by: made on the bar past its end, cut off, and held by its
 * thread in a split threaded sleeve. Where that is offered and where refused, and what the proof says to a spoilt one.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { len, mm, toMm } from '../../src/base/units.ts';
import { reliefWidth } from '../../src/handbook/practice.ts';
import type { Grip, PlannedPart, Route, SetUp } from '../../src/model/plan.ts';
import { prove } from '../../src/phases/prove.ts';
import { type Change, holdsOf, ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';
import { shop } from '../fixtures/shop.ts';

type Ends = { readonly first?: string; readonly second?: string; readonly inside?: string; readonly side?: string };
const part = (outside: readonly string[], { first = '', second = '', inside, side }: Ends = {}): readonly string[] => [
  `first: { letter: A${first} }`,
  `second: { letter: B${second} }`,
  'outside:',
  ...outside.map((line) => `  - { ${line} }`),
  ...(inside ? [`inside: [{ ${inside} }]`] : []),
  ...(side ? [`side: [{ ${side} }]`] : []),
];
const stud = (thread = 'M6', long = 25): readonly string[] => [`name: thread, thread: ${thread}, length: ${long} mm, starts: first`];
const COLLAR: readonly string[] = [
  'name: metal-end, thread: M6, length: 11 mm, starts: first, shoulder: { letter: C, role: register }',
  'name: collar, diameter: 9 mm, length: 2.5 mm, shoulder: { letter: D }',
  'name: nut-end, thread: M5, length: 16 mm, starts: second',
];
const NO_SLEEVES: Change = ['  sleeves: yes', '  sleeves: no'];
const sleeveOf = (planned: PlannedPart): Grip | undefined => planned.route.setUps.find((s) => s.grip.kind === 'threaded-sleeve')?.grip;

describe('work without a plain diameter', () => {
  it.each<readonly [string, readonly string[], readonly string[]]>([
    ['threaded right along', part(stud()), ['bar', 'threaded-sleeve']],
    ['of a thread that no tap cuts, but a threading tool', part(stud('M16x1', 30)), ['bar', 'threaded-sleeve']],
    ['with a collar and two threads', part(COLLAR), ['bar', 'threaded-sleeve']],
    [
      'with two threads that meet',
      part(['name: coarse, thread: M8, length: 12 mm, starts: first', 'name: fine, thread: M6, length: 14 mm, starts: second']),
      ['bar', 'threaded-sleeve'],
    ],
    [
      'waisted, one thread across the waist',
      part([
        'name: one, thread: M6, length: 9 mm, starts: first',
        'name: waist, diameter: 4.4 mm, length: 6 mm, groove: yes',
        'name: two, thread: M6, length: 10 mm, starts: first',
      ]),
      ['bar', 'threaded-sleeve'],
    ],
    [
      'with a dog',
      part(['name: thread, thread: M6, length: 12 mm, starts: first', 'name: dog, diameter: 4 mm, length: 3 mm']),
      ['bar', 'threaded-sleeve'],
    ],
    [
      'with a drilled end',
      part(stud('M6', 12), { inside: 'name: socket, diameter: 3 mm, from: second, depth: 3 mm, role: clearance' }),
      ['bar', 'threaded-sleeve'],
    ],
    [
      'bored through',
      part(stud('M10x1', 20), { inside: 'name: bore, diameter: 5 mm, from: first, depth: through, role: clearance' }),
      ['bar', 'threaded-sleeve'],
    ],
    [
      'long and thin, a centre in its first end',
      part(stud('M6', 70), { first: ', centre: may' }),
      ['bar', 'bar-and-centre', 'threaded-sleeve'],
    ],
    ['with an end that stays as it is cut off', part(stud(), { second: ', role: free' }), ['bar']],
    [
      'with a collar that has flats',
      part(COLLAR, { side: 'name: flats, flats: 7.5 mm, on: collar, at: 1.25 mm, length: 2.5 mm' }),
      ['bar', 'bench', 'threaded-mandrel'],
    ],
  ])('%s', (_what, lines, holds) => {
    const compiled = planOwn(lines);
    expect(holdsOf(compiled)).toEqual(holds);
    expect(compiled.plan?.parts.map((p) => [p.part.id, p.proof.holds])).toEqual(compiled.plan?.parts.map((p) => [p.part.id, true]));
  });
});

describe('a threaded sleeve', () => {
  const compiled = planOwn(part(stud()));
  it('is drilled, tapped and slit, kept, and made before the work', () => {
    const sleeve = compiled.plan?.parts.find((p) => p.part.kind === 'threaded-sleeve');
    expect([sleeve?.part.use, sleeve?.proof.holds]).toEqual(['kept tooling', true]);
    const done = sleeve?.route.setUps.flatMap((s) => s.operations.map((op) => op.slice(op.lastIndexOf('/') + 1)));
    expect(done?.slice(-3)).toEqual(['tap', 'part-off-second', 'slit']);
    const day = compiled.plan?.sequence.map((s) => s.part) ?? [];
    expect(day.lastIndexOf(sleeve?.part.id ?? '')).toBeLessThan(day.indexOf('part'));
  });
  it('holds one and a half diameters of thread, clear of the chamfer that is still to be cut', () => {
    const grip = sleeveOf(ownPart(compiled));
    // 1.5 of 5.9 is 8.85, in whole tenths 8.8; the chamfer is (5.974 - 4.2) / 2 = 0.887 deep at most, and the tool keeps 1 off
    expect(grip && [toMm(len(grip.to - grip.from)), toMm(grip.to) < 25 - 0.887 - 1 + 0.1]).toEqual([8.8, true]);
  });
  it.each<readonly [string, readonly string[], readonly Change[], string]>([
    ['no sleeves are made', part(stud()), [NO_SLEEVES], 'threaded-sleeves-not-made'],
    ['there is no tap, and no threading tool so small', part(stud('M7', 20)), [], 'sleeve-not-tapped'],
    ['no bar is thick enough', part(stud('M24x1', 40)), [], 'sleeve-no-bar'],
    ['there is too little of the thread', part(stud('M6', 4)), [], 'threads-short'],
    [
      'what is thicker stands at either side',
      part([
        ...['name: head, diameter: 12 mm, length: 2 mm', 'name: front, diameter: 4.4 mm, length: 4 mm, groove: yes'],
        ...['name: thread, thread: M6, length: 12 mm, starts: first', 'name: back, diameter: 4.4 mm, length: 4 mm, groove: yes'],
        'name: foot, diameter: 12 mm, length: 2 mm',
      ]),
      [],
      'sleeve-not-on',
    ],
  ])('is refused where %s', (_what, lines, changes, rule) => {
    const rules = refusedOf(planOwn(lines, changes)).map((r) => r.because.rule);
    expect(rules).toContain(rule);
  });
  it('that is refused is told as the change that would help', () => {
    const { noRoutes, plan } = planOwn(part(stud('M7', 20)));
    expect(plan).toBeUndefined();
    expect(noRoutes?.[0]?.wouldHelp.map((r) => [r.because.rule, r.lacks])).toEqual([['sleeve-not-tapped', 'tap-M7']]);
  });
  it('is not offered where a mandrel takes the thread', () => {
    const flats = planOwn(part(COLLAR, { side: 'name: flats, flats: 7.5 mm, on: collar, at: 1.25 mm, length: 2.5 mm' }));
    expect(ownPart(flats).candidates.grips.map((g) => g.kind)).not.toContain('threaded-sleeve');
  });
});

describe('a thread that comes out at the end', () => {
  const planned = ownPart(planOwn(part(stud())));
  it('runs on over what is cut off, on its own diameter, and the bar stands out as far', () => {
    const turn = planned.route.chosen.flatMap((m) => m.operations).find((o) => o.id === 'part/thread/turn');
    const [sweep] = turn?.ways.first?.sweeps ?? [];
    const past = mm(0.4) + reliefWidth(mm(1));
    expect(sweep?.take === 'turn' && sweep.to.beyond).toBe(past);
    expect(planned.route.setUps[0]?.grip.from).toBeGreaterThanOrEqual(mm(25) + past + mm(1));
  });
  it('has that room to stop in', () => {
    const cut = planned.figures.find((f) => f.op === 'part/thread.thread/screw-cut');
    expect(cut?.screw?.stop?.room).toBe(mm(0.4) + reliefWidth(mm(1)));
  });
  it('keeps off what stands higher behind it', () => {
    const close = ownPart(
      planOwn(
        part([
          ...['name: thread, thread: M6, length: 12 mm, starts: first', 'name: neck, diameter: 4.4 mm, length: 3 mm, groove: yes'],
          'name: head, diameter: 10 mm, length: 12 mm',
        ]),
      ),
    );
    const [sweep] = close.route.chosen.flatMap((m) => m.operations).find((o) => o.id === 'part/thread/turn')?.ways.first?.sweeps ?? [];
    expect(sweep?.take === 'turn' && sweep.to.beyond).toBe(mm(3) - mm(1));
    expect(close.proof.holds).toBe(true);
  });
  it('is chamfered there too, after the facing that cuts through its last turn', () => {
    expect(planned.route.setUps.at(-1)?.operations).toEqual(['part/B/face', 'part/thread.far-chamfer/chamfer']);
  });
});

describe('a left-hand thread', () => {
  const TAPS: Change = ['taps: [M3, M4, M5, M6,', 'taps: [M3, M4, M5, M6 LH, M6,'];
  const handed = (side?: string): readonly string[] =>
    part(
      [
        'name: metal-end, thread: M8, length: 12 mm, starts: first, shoulder: { letter: C }',
        'name: collar, diameter: 12 mm, length: 5 mm, shoulder: { letter: D }',
        'name: nut-end, thread: M6 LH, length: 14 mm, starts: second',
      ],
      side ? { side } : {},
    );
  it('at one end, a right-hand one at the other, is planned and proved, and its gauge is left-hand too', () => {
    const compiled = planOwn(handed(), [TAPS]);
    expect(holdsOf(compiled)).toEqual(['bar', 'threaded-sleeve']);
    expect(compiled.plan?.parts.every(({ proof }) => proof.holds)).toBe(true);
    expect(compiled.plan?.parts.map((p) => p.part.id)).toContain('gauge-nut-M6-LH');
    const cut = ownPart(compiled).figures.find((f) => f.op === 'part/nut-end.thread/screw-cut');
    expect([cut?.screw?.toward, cut?.screw?.entry]).toEqual(['tailstock', 'groove']);
  });
  it('right along is held in a left-hand sleeve, and cut from behind its end', () => {
    const compiled = planOwn(part(stud('M6 LH')), [TAPS]);
    const tooling = sleeveOf(ownPart(compiled))?.tooling;
    expect(tooling && 'thread' in tooling && [tooling.thread.name, tooling.thread.hand]).toEqual(['M6 LH', 'left']);
    expect(ownPart(compiled).figures.find((f) => f.screw)?.screw?.entry).toBe('behind');
    expect(compiled.plan?.parts.every(({ proof }) => proof.holds)).toBe(true);
  });
  it('is refused where nothing cuts the gauge for it, and the tap is named', () => {
    const { plan, noRoutes } = planOwn(handed());
    expect(plan).toBeUndefined();
    expect(noRoutes?.flatMap((none) => none.wouldHelp.map((r) => r.lacks))).toContain('tap-M6 LH');
  });
  it('is on no mandrel: the cut would unscrew it, and the proof says so of one that is', () => {
    const compiled = planOwn(handed('name: flats, flats: 10 mm, on: collar, at: 2.5 mm, length: 5 mm'), [TAPS]);
    const planned = ownPart(compiled);
    expect(planned.candidates.refused.map((r) => r.because.rule)).toContain('mandrel-unscrews');
    const right = planned.candidates.grips.find((g) => g.kind === 'threaded-mandrel');
    expect(right?.on).toEqual(['part/metal-end']);
    const sound = ownPart(planOwn(part(stud('M6 LH')), [TAPS]));
    const setUps = sound.route.setUps.map((s) =>
      s.grip.kind === 'threaded-sleeve' ? { ...s, grip: { ...s.grip, kind: 'threaded-mandrel' as const } } : s,
    );
    const { claims } = prove({ part: sound.part, route: { ...sound.route, setUps }, chart: sound.chart, workshop: shop });
    expect(claims.filter((c) => !c.holds).map((c) => c.grounds.reason)).toContain('unscrews');
  });
});

describe('a stud that is spoilt', () => {
  const sound = ownPart(planOwn(part(stud())));
  const failing = (change: (setUps: readonly SetUp[]) => readonly SetUp[], route: Partial<Route> = {}): readonly unknown[] =>
    prove({ part: sound.part, route: { ...sound.route, ...route, setUps: change(sound.route.setUps) }, chart: sound.chart, workshop: shop })
      .claims.filter((c) => !c.holds)
      .map((c) => [c.kind, c.grounds.reason ?? c.about]);
  const without = (id: string) => (setUps: readonly SetUp[]) =>
    setUps.map((s) => ({ ...s, operations: s.operations.filter((op) => op !== id) }));
  const onSleeve = (change: (grip: Grip) => Grip) => (setUps: readonly SetUp[]) =>
    setUps.map((s) => (s.grip.kind === 'threaded-sleeve' ? { ...s, grip: change(s.grip) } : s));

  it('by holding it before its thread is cut', () =>
    expect(failing(without('part/thread.thread/screw-cut'))).toContainEqual(['grip', 'no-thread']));
  it('by a sleeve of another thread', () => {
    const other = onSleeve((grip) =>
      grip.tooling?.kind === 'threaded-sleeve'
        ? { ...grip, tooling: { ...grip.tooling, thread: { ...grip.tooling.thread, name: 'M6x0.75' } } }
        : grip,
    );
    expect(failing(other)).toEqual([['grip', 'no-thread']]);
  });
  it('by a hold on too little of it', () =>
    expect(failing(onSleeve((grip) => ({ ...grip, from: len(grip.to - mm(2)) })))).toEqual([['grip', 'short']]));
  it('by a sleeve over the edge that is to be chamfered', () =>
    expect(failing(onSleeve((grip) => ({ ...grip, to: mm(25) }))).map((one) => (one as readonly string[])[0])).toContain('held'));
  it('by bare jaws on the thread', () =>
    expect(failing(onSleeve(({ tooling: _, ...grip }) => ({ ...grip, kind: 'jaws' })))).toContainEqual(['grip', 'kept']));
  it('by leaving the burr of the facing in the last turn', () =>
    expect(failing(without('part/thread.far-chamfer/chamfer'))).toContainEqual(['kept untouched', 'part/thread.thread']));
  it('by parting off before the thread is cut', () => {
    const order = (setUps: readonly SetUp[]): readonly SetUp[] =>
      setUps.map((s, i) => {
        if (i > 0) return s;
        const [thread, off] = ['part/thread.thread/screw-cut', 'part/bar/part-off-second'];
        return { ...s, operations: s.operations.map((op) => (op === thread ? off : op === off ? thread : op)) };
      });
    expect(failing(order, { befores: [] }).map((one) => (one as readonly string[])[0])).toContain('held');
  });
});

describe('any stud', () => {
  it('is planned and proved, or refused with a reason; turned about, it costs the same', () => {
    let proved = 0;
    const sizes = fc.record({
      thread: fc.constantFrom('M4', 'M5', 'M6', 'M8', 'M10x1'),
      long: fc.integer({ min: 4, max: 45 }),
      collar: fc.option(
        fc.record({ over: fc.integer({ min: 2, max: 6 }), long: fc.integer({ min: 1, max: 8 }), far: fc.integer({ min: 6, max: 20 }) }),
      ),
    });
    const DIAMETERS: Readonly<Record<string, number>> = { M4: 4, M5: 5, M6: 6, M8: 8, M10x1: 10 };
    const named = (
      { thread, long, collar }: { thread: string; long: number; collar: { over: number; long: number; far: number } | null },
      about: boolean,
    ) => {
      const [near, far] = about ? ['second', 'first'] : ['first', 'second'];
      const lines = [
        `name: one, thread: ${thread}, length: ${long} mm, starts: ${near}`,
        ...(collar
          ? [
              `name: collar, diameter: ${(DIAMETERS[thread] ?? 0) + collar.over} mm, length: ${collar.long} mm`,
              `name: two, thread: ${thread}, length: ${collar.far} mm, starts: ${far}`,
            ]
          : []),
      ];
      return part(about ? [...lines].reverse() : lines);
    };
    fc.assert(
      fc.property(sizes, (asked) => {
        const [one, other] = [planOwn(named(asked, false)), planOwn(named(asked, true))];
        expect(one.plan === undefined).toBe(other.plan === undefined);
        if (!one.plan || !other.plan) return one.found.length > 0;
        proved += 1;
        const cost = ({ setUps, tooling, toolChanges, minutes }: PlannedPart['route']['cost']) => [setUps, tooling, toolChanges, minutes];
        expect(cost(ownPart(one).route.cost)).toEqual(cost(ownPart(other).route.cost));
        return [one.plan, other.plan].every((plan) => plan.parts.every(({ proof }) => proof.holds));
      }),
      { numRuns: 12, seed: 7 },
    );
    expect(proved).toBeGreaterThan(5);
  });
});
