import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import { words } from '../../src/base/words.ts';
import { loadWords } from '../../src/files.ts';
import { held } from '../../src/handbook/capability.ts';
import { leastCut } from '../../src/handbook/machining.ts';
import { findMaterial } from '../../src/handbook/materials.ts';
import type { Part } from '../../src/model/part.ts';
import type { Chart, Figures, Route } from '../../src/model/plan.ts';
import type { Dial, Workshop } from '../../src/model/workshop.ts';
import { chart } from '../../src/phases/chart.ts';
import { numbers } from '../../src/phases/numbers.ts';
import { cuttingForce, hasSpeed, wattsAt } from '../../src/rules/cutting.ts';
import { fittingFor, routeOf, shop } from '../fixtures/shop.ts';

type Planned = { readonly part: Part; readonly route: Route; readonly chart: Chart };
/** The parts of the demo, as the planner orders them. */
const PARTS: readonly Planned[] = fittingFor().parts.map((part) => {
  const route = routeOf(part.id);
  const { value, found } = chart(part, route, held);
  if (!value) throw new Error(`${part.id}: ${JSON.stringify(found)}`);
  return { part, route, chart: value };
});
const figuresOf = (one: Planned, workshop: Workshop = shop): readonly Figures[] => numbers(one.part, one.route, one.chart, workshop);
const onLathe = (lathe: Partial<Workshop['lathe']>): Workshop => ({ ...shop, lathe: { ...shop.lathe, ...lathe } });
const seatPiece = (): Planned => {
  const found = PARTS.find((one) => one.part.id === 'seat-piece');
  if (!found) throw new Error('no seat piece');
  return found;
};
const at = (op: string, workshop?: Workshop): Figures => {
  const found = figuresOf(seatPiece(), workshop).find((one) => one.op === `seat-piece/${op}`);
  if (!found) throw new Error(`no '${op}'`);
  return found;
};
const sum = (list: readonly number[] = []): number => list.reduce((all, one) => all + one, 0);

describe('the seat piece, reckoned by hand from its drawing', () => {
  // bar 18; rim 16; thread 11.9, nose 10.4; relief 10.2; 0.3 left on the seat face for after the drill, 0.4 by the blade
  it.each([
    ['S/rough', 1],
    ['S/finish', 0.3],
    ['flange/turn', (18 - 16) / 2],
    ['seat-thread/turn', (16 - 11.9) / 2],
    ['nose/turn', (11.9 - 10.4) / 2],
    ['seat-thread.relief/groove', (11.9 - 10.2) / 2],
    ['E/face', 0.4],
    ['coupling/turn', (18 - 9.9) / 2],
    ['bore/bore-start', (4.5 - 4.2) / 2],
    ['cone/cone', (7.8 - 4.5) / 2],
  ])('%s takes %f a side, and its passes end on size', (op, stock) => {
    expect(toMm(mm(sum(at(op).passes?.map((pass) => toMm(pass)))))).toBeCloseTo(stock, 4);
  });
  it('the drill: 26 and the 0.3 on the face, 1 past, and its point (0.30 of 4.2), up to the tenth', () => {
    const drill = at('bore/drill');
    expect([drill.depth, sum(drill.pecks)]).toEqual([mm(28.6), mm(27.3)]);
    expect(drill.dial).toEqual({ which: 'tailstock', turns: 14, divisions: 12, total: mm(28.6) });
  });
  it('M12x1: 0.61 deep (published with its passes: Mitsubishi, P 1.0), two wheels, half-nuts anywhere', () => {
    const thread = at('seat-thread.thread/screw-cut');
    expect(sum(thread.passes)).toBe(mm(0.76));
    expect(thread.wheels).toMatchObject({ error: 0, halfNuts: 'anywhere' });
    expect((thread.wheels?.drivers[0] ?? 0) / (thread.wheels?.driven[0] ?? 1)).toBe(1 / 2);
    expect(thread.feed).toBe(1);
  });
  it('600 at most on its thread, and it says so; on a lathe that goes no slower than 700 it says that', () => {
    expect(at('cone/cone').rpm).toMatchObject({ value: 600, bound: 'bound.thread-held' });
    expect(at('cone/cone', onLathe({ speeds: { from: 700, to: 2500 } })).rpm).toMatchObject({ value: 700, bound: 'bound.lathe-slowest' });
  });
  it('a cross dial that reads the slide’s travel counts half', () => {
    const cross: Dial = { reads: 'travel', division: mm(0.02), turn: mm(2) };
    expect(at('flange/turn').dial).toEqual({ which: 'cross', turns: 1, divisions: 0, total: mm(2) });
    expect(at('flange/turn', onLathe({ dials: { ...shop.lathe.dials, cross } })).dial).toEqual({
      which: 'cross',
      turns: 0,
      divisions: 50,
      total: mm(1),
    });
  });
  it('the relief of 2.8 is crossed in the second that opening takes, and in the second until a spindle stands', () => {
    const thread = (lathe: Partial<Workshop['lathe']>) => at('seat-thread.thread/screw-cut', onLathe(lathe));
    const closed = { leadscrew: mm(3.175), leadscrewPerInch: 8, gears: [30, 63, 75, 80], speeds: { from: 50, to: 2500 } };
    // 2.8 / 1 x 60 = 168, so 150 is the speed and not the metal's 250, and it runs on 2.5
    expect(thread({}).rpm).toMatchObject({ value: 150, bound: 'bound.thread-stop' });
    expect(thread(closed).rpm).toMatchObject({ value: 150, bound: 'bound.thread-stop' });
    expect(thread(closed).screw?.stop).toEqual({ runsOn: mm(2.5), room: mm(2.8) });
    const fast = thread({ ...closed, speeds: { from: 400, to: 2500 } }).screw?.stop;
    expect(fast && fast.runsOn > fast.room).toBe(true);
  });
  it.each([
    ['seat-thread.thread/screw-cut', { nose: 'flanged' }, 'power'],
    ['seat-thread.thread/screw-cut', { nose: 'screwed' }, 'slowly'],
    ['seat-thread.thread/screw-cut', { nose: 'flanged', reverse: false }, 'hand'],
    ['coupling.thread/screw-cut', { nose: 'flanged' }, 'hand'],
  ] as const)('%s on %j, half-nuts closed: back by %s (on a threaded mandrel never under power)', (op, lathe, back) => {
    const closed = { leadscrew: mm(3.175), leadscrewPerInch: 8, gears: [30, 63, 75, 80] };
    expect(at(op, onLathe({ ...closed, ...lathe })).screw?.back).toBe(back);
    expect(at(op, onLathe(lathe)).screw?.back).toBeUndefined();
  });
  it('M12x1 is checked over wires of 0.6: d2 + 3 W - 0.866025 P, and a sharp tool goes 7/8 H deep', () => {
    const screw = at('seat-thread.thread/screw-cut').screw;
    expect(screw).toMatchObject({ infeed: 'straight', tip: 'sharp', other: mm(0.61), toward: 'headstock', spring: 2 });
    expect(screw?.wires).toEqual({ wire: mm(0.6), lo: mm(11.206 + 1.8 - 0.866), hi: mm(11.324 + 1.8 - 0.866) });
  });
  it('no wheels for the pitch: none are named', () => {
    expect(at('seat-thread.thread/screw-cut', onLathe({ gears: [60, 65] })).wheels).toBeUndefined();
  });
  it('on the bench nothing turns', () => expect(Object.keys(at('bore/stone'))).toEqual(['op']));
  it('of a metal that the tables do not know no speed is invented', () => {
    const { part, route, chart: made } = seatPiece();
    const strange = { ...part, stock: { ...part.stock, material: 'unobtainium' } } as Part;
    expect(numbers(strange, route, made, shop).filter((one) => one.rpm ?? one.lubricant)).toEqual([]);
  });
});

describe('any lathe', () => {
  const dial = (reads: Dial['reads']): fc.Arbitrary<Dial> =>
    fc
      .tuple(fc.constantFrom(0.01, 0.02, 0.025, 0.05), fc.constantFrom(1, 1.5, 2, 3))
      .map(([division, turn]) => ({ reads, division: mm(division), turn: mm(turn) }));
  const lathes = fc.record({
    motor: fc.integer({ min: 60, max: 1500 }),
    speeds: fc.oneof(
      fc.tuple(fc.integer({ min: 40, max: 400 }), fc.integer({ min: 500, max: 3000 })).map(([from, to]) => ({ from, to })),
      fc.array(fc.integer({ min: 60, max: 2500 }), { minLength: 2, maxLength: 8 }).map((steps) => ({ steps })),
    ),
    dials: fc.record({ cross: fc.oneof(dial('diameter'), dial('travel')), top: dial('travel'), tailstock: dial('travel') }),
  });

  it('every speed is one that it has; dials add up; passes are half of what the cross slide takes off, to the unit', () => {
    fc.assert(
      fc.property(lathes, fc.constantFrom(...PARTS), (lathe, planned) => {
        const workshop = onLathe(lathe);
        const { dials } = workshop.lathe;
        for (const { rpm, dial: read, passes, op } of figuresOf(planned, workshop)) {
          if (rpm) expect(hasSpeed(lathe.speeds, rpm.value)).toBe(true);
          if (passes) expect(passes.every((pass) => pass > 0 && Number.isInteger(pass))).toBe(true);
          if (!read) continue;
          const { division = Number.NaN, turn = Number.NaN, reads } = dials[read.which] ?? {};
          expect(read.turns * turn + read.divisions * division).toBeCloseTo(read.total, 5);
          if (!passes || op.includes('screw-cut')) continue;
          const total = read.which === 'cross' && reads === 'diameter' ? read.total / 2 : read.total;
          expect(Math.abs(sum(passes) - total)).toBeLessThan(1);
        }
      }),
      { numRuns: 60, seed: 22 },
    );
  });

  it('a motor twice as strong never asks for more passes', () => {
    fc.assert(
      fc.property(lathes, fc.constantFrom(...PARTS), (lathe, planned) => {
        const weak = figuresOf(planned, onLathe(lathe));
        const strong = figuresOf(planned, onLathe({ ...lathe, motor: lathe.motor * 2 }));
        weak.forEach((one, i) => {
          expect(strong[i]?.passes?.length ?? 0).toBeLessThanOrEqual(one.passes?.length ?? 0);
        });
      }),
      { numRuns: 40, seed: 23 },
    );
  });

  it('each part’s figures stand in the order of its route, one an operation', () => {
    for (const planned of PARTS)
      expect(figuresOf(planned).map((one) => one.op)).toEqual(planned.route.setUps.flatMap((setUp) => setUp.operations));
  });

  it('what the dial shows after each pass goes on by that pass; the last is the whole movement; it is measured before the last', () => {
    fc.assert(
      fc.property(lathes, fc.constantFrom(...PARTS), (lathe, planned) => {
        const workshop = onLathe(lathe);
        const reads = workshop.lathe.dials.cross.reads;
        for (const { readings = [], passes = [], dial: whole, measure } of figuresOf(planned, workshop)) {
          if (readings.length === 0) continue;
          expect(readings.length).toBe(passes.length);
          expect(readings.at(-1)).toEqual(whole);
          const each = whole?.which === 'cross' && reads === 'diameter' ? 2 : 1;
          readings.forEach((reading, i) => {
            expect(Math.abs(reading.total - (readings[i - 1]?.total ?? 0) - each * (passes[i] ?? 0))).toBeLessThanOrEqual(1);
          });
          if (measure !== undefined) expect(measure).toBe(passes.length - 1);
        }
      }),
      { numRuns: 40, seed: 24 },
    );
  });

  it('no turning cut asks for more power or torque than the drive has, unless the metal bears no lighter one', () => {
    fc.assert(
      fc.property(lathes, fc.constantFrom(...PARTS), (lathe, planned) => {
        const workshop = onLathe(lathe);
        const material = planned.part.stock.material ?? '';
        const group = findMaterial(material)?.cutting ?? 'brass';
        for (const figures of figuresOf(planned, workshop)) {
          const { rpm, feed, passes, bound, op, zero, faster = [] } = figures;
          if (!rpm || feed === undefined || !passes || bound === undefined || bound === 'bound.least-cut') continue;
          if (!/\/(turn|turn-to-size|face-down|finish|rough|face|bore)$/.test(op)) continue;
          let across = op.includes('/turn') && zero?.at === 'diameter' ? zero.diameter / 10_000 : (rpm.vc * 1000) / Math.PI / rpm.value;
          for (const [i, pass] of passes.entries()) {
            const turns = faster.findLast(({ after }) => after <= i)?.rpm ?? rpm.value;
            const force = (pass / 10_000) * feed * (cuttingForce(material, feed) ?? 0);
            // the metal's least cut is taken at the end, whatever the drive bears
            if (pass <= leastCut(group).depth * 10_000) continue;
            expect((force * Math.PI * across * turns) / 1000 / 60).toBeLessThanOrEqual(wattsAt(workshop.lathe, turns) * 1.01);
            if (op.includes('/turn')) across -= (2 * pass) / 10_000;
          }
        }
      }),
      { numRuns: 40, seed: 25 },
    );
  });

  it('in stainless no cut is under a tenth, unless there is no more to take', () => {
    for (const planned of PARTS) {
      const steel = { ...planned, part: { ...planned.part, stock: { ...planned.part.stock, material: '316' } } as Part };
      for (const { passes = [], readings } of figuresOf(steel)) {
        if (!readings || passes.length < 2) continue;
        expect(Math.min(...passes)).toBeGreaterThanOrEqual(mm(0.1) - 1);
      }
    }
  });

  it('every bound that binds, and every line, has its words', () => {
    const known = words(loadWords('en'));
    const all = PARTS.flatMap((planned) => [figuresOf(planned), figuresOf(planned, onLathe({ motor: 40 }))].flat());
    const ids = new Set(all.flatMap(({ bound, rpm, says = [] }) => [bound ?? '', rpm?.bound ?? '', ...says.map((say) => say.id)]));
    expect([...ids].filter((id) => id !== '' && !known.has(id))).toEqual([]);
    expect([...ids].filter((id) => id.startsWith('bound.')).length).toBeGreaterThan(4);
  });
});
