import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { len, mm, toMm } from '../../src/base/units.ts';
import { cuttingData } from '../../src/handbook/cutting.ts';
import { materials } from '../../src/handbook/materials.ts';
import { chooseSpeed, cuttingForce, deepestCut, hasSpeed, type Speeds } from '../../src/rules/cutting.ts';

const RANGE: Speeds = { from: 100, to: 2500 };
const PULLEYS: Speeds = { steps: [130, 250, 480, 900, 1700] };

describe('a speed that the lathe has', () => {
  it.each([
    ['50 m/min on 15 is 1061 (lzqtool.com, a worked example): down to a fifty', 50, 15, RANGE, [], 1050, 'bound.cutting-speed'],
    ['20 m/min on 20 is 318: down to a twenty-five', 20, 20, RANGE, [], 300, 'bound.cutting-speed'],
    ['the next pulley below', 50, 15, PULLEYS, [], 900, 'bound.cutting-speed'],
    ['a pip of a drill: the lathe ends first', 60, 2, RANGE, [], 2500, 'bound.lathe-fastest'],
    ['held by its thread', 60, 10, RANGE, [{ most: 600, bound: 'bound.thread-held' }], 600, 'bound.thread-held'],
    ['held by its thread, on pulleys', 60, 10, PULLEYS, [{ most: 600, bound: 'bound.thread-held' }], 480, 'bound.thread-held'],
    ['nothing slower is there', 10, 60, PULLEYS, [], 130, 'bound.lathe-slowest'],
    ['a range that begins off the round figure', 20, 20, { from: 310, to: 900 }, [], 310, 'bound.cutting-speed'],
  ] as const)('%s', (_what, vc, diameter, speeds, bounds, value, bound) => {
    const speed = chooseSpeed({ vc, diameter: mm(diameter), speeds, bounds });
    expect([speed.value, speed.bound]).toEqual([value, bound]);
    expect(speed.vc).toBeCloseTo((Math.PI * diameter * value) / 1000, 6);
  });

  const speeds: fc.Arbitrary<Speeds> = fc.oneof(
    fc.tuple(fc.integer({ min: 20, max: 900 }), fc.integer({ min: 0, max: 3000 })).map(([from, more]) => ({ from, to: from + more })),
    fc.array(fc.integer({ min: 30, max: 3000 }), { minLength: 1, maxLength: 8 }).map((steps) => ({ steps })),
  );
  it('always one that there is, and never over a bound unless even the slowest is', () => {
    fc.assert(
      fc.property(
        speeds,
        fc.integer({ min: 3, max: 200 }),
        fc.integer({ min: 1, max: 80 }),
        fc.integer({ min: 60, max: 2000 }),
        (have, vc, diameter, most) => {
          const speed = chooseSpeed({ vc, diameter: mm(diameter), speeds: have, bounds: [{ most, bound: 'bound.branch' }] });
          expect(hasSpeed(have, speed.value)).toBe(true);
          const wanted = Math.min(most, (1000 * vc) / (Math.PI * diameter));
          const least = 'steps' in have ? Math.min(...have.steps) : have.from;
          if (speed.bound === 'bound.lathe-slowest') expect([speed.value, wanted < least]).toEqual([least, true]);
          else expect(speed.value).toBeLessThanOrEqual(wanted);
        },
      ),
      { seed: 20 },
    );
  });
});

/** Without the margin for thin chips. kc1.1 and exponents: ISCAR 2017 p. 558 (VDI 3323); the figures here by plain arithmetic from them. */
it.each([
  ['303', 0.08, 3563],
  ['CW614N', 0.04, 1669],
])('cutting force of %s at %f mm a turn: %f N/mm2', (material, feed, published) => {
  expect((cuttingForce(material, feed) ?? 0) / 1.3 / published).toBeCloseTo(1, 3);
});

describe('how deep', () => {
  const asks = fc.record({
    material: fc.constantFrom(...materials.map((one) => one.id)),
    operation: fc.constantFrom('turn-rough' as const, 'face' as const, 'bore' as const),
    motor: fc.integer({ min: 20, max: 1500 }),
    vc: fc.integer({ min: 5, max: 200 }),
  });
  it('never over the table, never over the motor (but a hundredth is always taken), and no less with a stronger one', () => {
    fc.assert(
      fc.property(asks, ({ material, operation, motor, vc }) => {
        const data = cuttingData(material, operation, 'HSS');
        if (!data?.ap || data.feed === undefined) throw new Error(`no data for ${material}`);
        const deep = deepestCut({ data, material, vc, motor }) ?? len(0);
        expect(deep).toBeLessThanOrEqual(data.ap);
        const watts = (toMm(deep) * data.feed * (cuttingForce(material, data.feed) ?? 0) * vc) / 60;
        expect(watts <= motor * 0.7 * 0.75 + 1e-9 || deep === mm(0.01)).toBe(true);
        expect(deepestCut({ data, material, vc, motor: motor * 2 })).toBeGreaterThanOrEqual(deep);
      }),
      { seed: 21 },
    );
  });
});
