/** What holds of every number of every spec, on lathes drawn at random: cuts end on size, speeds exist, dials add up, power only helps. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import type { Figures, PlannedPart, Reading } from '../../src/model/plan.ts';
import type { Dial, Workshop } from '../../src/model/workshop.ts';
import { numbers } from '../../src/phases/numbers.ts';
import { hasSpeed } from '../../src/rules/cutting.ts';
import { radialOf } from '../../src/rules/dials.ts';
import { walkRemoval } from '../../src/rules/removal.ts';
import { everyPlan } from '../fixtures/every-plan.ts';

const shop = everyPlan[0]?.plan.workshop;
if (!shop) throw new Error('nothing is planned');
const parts = everyPlan.flatMap(({ spec, plan }) => plan.parts.map((planned) => ({ name: `${spec}: ${planned.part.id}`, planned })));
const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);

const dial = (reads: Dial['reads']): fc.Arbitrary<Dial> =>
  fc
    .constantFrom([0.01, 1], [0.02, 2], [0.025, 2.5], [0.05, 3], [0.0254, 2.54], [0.0508, 5.08])
    .map(([division = 0, turn = 0]) => ({ reads, division: mm(division), turn: mm(turn) }));
const lathes: fc.Arbitrary<Partial<Workshop['lathe']>> = fc.record({
  motor: fc.integer({ min: 60, max: 1500 }),
  speeds: fc.oneof(
    fc.tuple(fc.integer({ min: 40, max: 400 }), fc.integer({ min: 500, max: 3000 })).map(([from, to]) => ({ from, to })),
    fc.array(fc.integer({ min: 60, max: 2500 }), { minLength: 2, maxLength: 8 }).map((steps) => ({ steps })),
  ),
  nose: fc.constantFrom('screwed' as const, 'flanged' as const, 'cam' as const),
  dials: fc.record({
    cross: fc.oneof(dial('diameter'), dial('travel')),
    top: dial('travel'),
    carriage: dial('travel'),
    tailstock: dial('travel'),
  }),
});
const shops: fc.Arbitrary<Workshop> = fc
  .tuple(lathes, fc.constantFrom('sharp' as const, 'rounded' as const), fc.constantFrom('HSS' as const, 'carbide' as const))
  .map(([lathe, threadingTip, material]) => ({
    ...shop,
    lathe: { ...shop.lathe, ...lathe },
    tools: { ...shop.tools, threadingTip, material },
  }));
const figuresOf = ({ part, route, chart }: PlannedPart, workshop: Workshop): readonly Figures[] => numbers(part, route, chart, workshop);

/** Some of the parts each time: all of them are too many for each of the lathes, and over the runs each has its turn. */
const some = fc.uniqueArray(fc.integer({ min: 0, max: parts.length - 1 }), { minLength: 3, maxLength: 3 });
function each(check: (one: (typeof parts)[number], workshop: Workshop) => void, seed: number): void {
  fc.assert(
    fc.property(shops, some, (workshop, picks) => {
      for (const i of picks) {
        const one = parts[i];
        if (one) check(one, workshop);
      }
    }),
    { numRuns: 60, seed },
  );
}

describe(`${parts.length} parts of ${everyPlan.length} specs, on any lathe`, () => {
  it('the passes of each cut add up to what there is to take off, to the last unit', () => {
    let cuts = 0;
    each(({ name, planned }, workshop) => {
      const figures = figuresOf(planned, workshop);
      walkRemoval(planned.part, planned.route, planned.chart).forEach(({ stock, operation, narrow }, i) => {
        const { passes, narrow: opened } = figures[i] ?? {};
        if (narrow && opened) expect(sum(opened.passes), `${name} ${operation.id}, narrow end`).toBe(radialOf(narrow.amount));
        if (!stock || !passes) return;
        cuts += 1;
        expect(sum(passes), `${name} ${operation.id}`).toBe(stock.measures === 'length' ? stock.amount : radialOf(stock.amount));
      });
    }, 31);
    expect(cuts).toBeGreaterThan(500);
  }, 120_000);

  it('no speed that the lathe lacks; every dial and every reading of it adds up to its movement', () => {
    each(({ name, planned }, workshop) => {
      const { dials, speeds } = workshop.lathe;
      const adds = (read: Reading | undefined, op: string): void => {
        if (!read) return;
        const { turn, division } = dials[read.which] ?? { turn: Number.NaN, division: Number.NaN };
        expect(read.turns * turn + read.divisions * division, `${name} ${op}`).toBeCloseTo(read.total, 5);
        expect(Number.isInteger(read.turns) && read.divisions >= 0 && read.divisions * division < turn, `${name} ${op}`).toBe(true);
      };
      for (const { op, rpm, dial: whole, readings = [], along, slide } of figuresOf(planned, workshop)) {
        if (rpm) expect(hasSpeed(speeds, rpm.value), `${name} ${op}`).toBe(true);
        for (const read of [whole, along, slide?.travel, ...readings]) adds(read, op);
        if (readings.length > 0) expect(readings.at(-1), `${name} ${op}`).toEqual(whole);
      }
    }, 32);
  }, 120_000);

  it('a motor twice as strong never asks for more passes', () => {
    each(({ name, planned }, workshop) => {
      const weak = figuresOf(planned, workshop);
      const strong = figuresOf(planned, { ...workshop, lathe: { ...workshop.lathe, motor: workshop.lathe.motor * 2 } });
      weak.forEach((one, i) => {
        expect(strong[i]?.passes?.length ?? 0, `${name} ${one.op}`).toBeLessThanOrEqual(one.passes?.length ?? 0);
      });
    }, 33);
  }, 120_000);

  it('passes of a thread grow no deeper, and each is a whole step of the dial that sets it, a half or a quarter', () => {
    let threads = 0;
    each(({ name, planned }, workshop) => {
      const { cross } = workshop.lathe.dials;
      const unit = cross.reads === 'diameter' ? cross.division / 2 : cross.division;
      for (const { op, screw, passes = [], dial: whole } of figuresOf(planned, workshop)) {
        if (!screw) continue;
        threads += 1;
        expect(
          [...passes].sort((a, b) => b - a),
          `${name} ${op}`,
        ).toEqual(passes);
        for (const pass of passes) expect(Math.abs(pass / (unit / 4) - Math.round(pass / (unit / 4))), `${name} ${op}`).toBeLessThan(0.05);
        expect(whole?.total, `${name} ${op}`).toBe((cross.reads === 'diameter' ? 2 : 1) * sum(passes));
      }
    }, 34);
    expect(threads).toBeGreaterThan(20);
  }, 120_000);
});
