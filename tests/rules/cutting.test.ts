import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { len, mm, toMm } from '../../src/base/units.ts';
import { cuttingData } from '../../src/handbook/cutting.ts';
import { materials } from '../../src/handbook/materials.ts';
import { chooseSpeed, cuttingForce, type Drive, deepestCut, hasSpeed, type Speeds, torqueOn, wattsAt } from '../../src/rules/cutting.ts';

const RANGE: Speeds = { from: 100, to: 2500 };
const PULLEYS: Speeds = { steps: [130, 250, 480, 900, 1700] };
/** A stepless drive pulls no harder under a speed; pulleys give the motor's whole power at every step. */
const STEPLESS: Drive['torque'] = [{ to: 2500, fullFrom: 1000 }];

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
    diameter: fc.integer({ min: 2, max: 60 }),
    lathe: fc.constantFrom({ speeds: RANGE, torque: STEPLESS }, { speeds: PULLEYS, torque: [] }),
    give: fc.double({ min: 0, max: 3, noNaN: true }),
    unit: fc.constantFrom(mm(0.01), mm(0.02), mm(0.0254)),
  });
  it('never over tool, power, torque or give, unless the metal bears no less; and no less with a stronger motor', () => {
    fc.assert(
      fc.property(asks, ({ material, operation, motor, diameter, lathe: { speeds, torque: falls }, give, unit }) => {
        const data = cuttingData(material, operation, 'HSS');
        if (!data?.ap || data.feed === undefined) throw new Error(`no data for ${material}`);
        const speed = chooseSpeed({ vc: data.vcNom, diameter: mm(diameter), speeds, bounds: [] });
        const ask = { data, material, speed, unit, gives: [{ most: give, bound: 'bound.work-gives' }] };
        const deep = deepestCut({ ...ask, drive: { motor, torque: falls } });
        if (!deep) throw new Error('no depth');
        const force = toMm(deep.most) * data.feed * (cuttingForce(material, data.feed) ?? 0);
        const watts = (force * speed.vc) / 60;
        const torque = (force * diameter) / 2000;
        const drive = { motor, torque: falls };
        if (deep.bound !== 'bound.least-cut') {
          expect(deep.most).toBeLessThanOrEqual(data.ap);
          expect(toMm(deep.most)).toBeLessThanOrEqual(give + 1e-4);
          expect(watts).toBeLessThanOrEqual(wattsAt(drive, speed.value) * 1.01);
          expect(torque).toBeLessThanOrEqual(torqueOn(drive, speed.value) * 1.01);
        }
        expect(deepestCut({ ...ask, drive: { motor: motor * 2, torque: falls } })?.most).toBeGreaterThanOrEqual(deep.most);
      }),
      { seed: 21, numRuns: 300 },
    );
  });
  it.each([
    ['a strong drive: the tool', '230M07', 750, RANGE, 0.4, 'bound.tool'],
    [
      'under its base speed: 131 W at 1000 is 1.253 N m, 83.6 N on 30; over 0.084 x 2953 N/mm2 that is 0.337',
      '230M07',
      250,
      RANGE,
      0.33,
      'bound.torque',
    ],
    ['pulleys lose nothing at slow speeds', '230M07', 250, PULLEYS, 0.4, 'bound.tool'],
    ['stainless never under a tenth', '316', 20, RANGE, 0.1, 'bound.least-cut'],
  ] as const)('%s', (_what, material, motor, speeds, most, bound) => {
    const data = cuttingData(material, 'bore', 'HSS');
    if (!data) throw new Error('no data');
    const speed = chooseSpeed({ vc: data.vcNom, diameter: mm(30), speeds, bounds: [] });
    const deep = deepestCut({
      data,
      material,
      speed,
      drive: { motor, torque: speeds === RANGE ? STEPLESS : [] },
      gives: [],
      unit: mm(0.01),
    });
    expect([toMm(deep?.most ?? len(0)), deep?.bound]).toEqual([most, bound]);
  });
  it('of a stepless drive the torque is one below its base speed; the power of pulleys is one at every step', () => {
    const stepless = { motor: 400, torque: STEPLESS };
    expect(torqueOn(stepless, 200)).toBeCloseTo(torqueOn(stepless, 800), 9);
    expect(wattsAt(stepless, 500)).toBeCloseTo(wattsAt(stepless, 1000) / 2, 9);
    expect(wattsAt({ motor: 400, torque: [] }, 130)).toBe(wattsAt({ motor: 400, torque: [] }, 1700));
  });
});
