/** Trains of change wheels: published ones with their errors, which fit, and the search against plain enumeration. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { compoundFits, idlerFits, reachOf, USUAL_REACH } from '../../src/handbook/gear-reach.ts';
import {
  allTrains,
  bestTrain,
  bestTrains,
  type Lead,
  leadOf,
  perInch,
  ppmOf,
  type Scored,
  score,
  type Train,
} from '../../src/handbook/trains.ts';

const CHART = 'toolsandmods.com, simplified chart: module 1, leadscrew 1.5 mm';
const PHOTOS = 'softsolder.com 2020-05-12: module 1, leadscrew 16 threads an inch';
const MANUAL = 'a lathe manual, manualsdump.com 276324, p. 72';
const FORUM = 'hobby-machinist.com, cutting metric threads on an imperial lathe, 2019-05-16: 80/63';
const INCH_8 = perInch(8);
const INCH_16 = perInch(16);
const MM_1_5 = leadOf(mm(1.5));
const metric = (pitch: number): Lead => leadOf(mm(pitch));
const idled = (driver: number, driven: number): Train => ({ drivers: [driver], driven: [driven] });
const four = (a: number, b: number, c: number, d: number): Train => ({ drivers: [a, c], driven: [b, d] });

/** What a train cuts, in millionths of the wanted pitch. */
const EXACT: readonly (readonly [train: Train, leadscrew: Lead, pitch: Lead, source: string])[] = [
  [four(40, 80, 30, 60), perInch(6), perInch(24), 'F. D. Jones, Turning and Boring (1914), change gears: 24 from a constant of 6'],
  [idled(90, 127), perInch(6), metric(3), 'F. D. Jones, Turning and Boring (1914), metric pitches: 90 and 127 for 3 mm'],
  [idled(40, 100), perInch(2), perInch(5), 'American Mechanic, chestofbooks.com: 5 threads from 2, 40 to 100'],
  [idled(100, 127), INCH_8, metric(2.5), 'conradhoffman.com, metric threading: 127 and 100 make 2.5 mm of 8 threads'],
  [idled(120, 127), INCH_8, metric(3), 'c-n-c.cz 58970: 120/127 makes 3 mm of 8 threads'],
  [idled(127, 120), metric(3), INCH_8, 'c-n-c.cz 58970: 127/120 makes 8 threads of 3 mm'],
  [idled(40, 30), INCH_16, perInch(12), `${MANUAL}, fig. 101`],
  [four(40, 65, 60, 30), INCH_16, perInch(13), `${MANUAL}, fig. 101`],
  [idled(40, 35), INCH_16, perInch(14), `${MANUAL}, fig. 101`],
  [idled(40, 45), INCH_16, perInch(18), `${MANUAL}, fig. 101`],
  [four(40, 50, 60, 57), INCH_16, perInch(19), `${MANUAL}, fig. 101`],
  [idled(40, 50), INCH_16, perInch(20), `${MANUAL}, fig. 101`],
  [idled(40, 55), INCH_16, perInch(22), `${MANUAL}, fig. 101`],
  [idled(40, 60), INCH_16, perInch(24), `${MANUAL}, fig. 101`],
  [idled(40, 65), INCH_16, perInch(26), `${MANUAL}, fig. 101`],
  [idled(20, 35), INCH_16, perInch(28), `${MANUAL}, fig. 101`],
  [idled(20, 40), INCH_16, perInch(32), `${MANUAL}, fig. 101`],
  [four(20, 50, 60, 57), INCH_16, perInch(38), `${MANUAL}, fig. 101`],
  [idled(20, 50), INCH_16, perInch(40), `${MANUAL}, fig. 101`],
  [idled(20, 55), INCH_16, perInch(44), `${MANUAL}, fig. 101`],
  [idled(20, 65), INCH_16, perInch(52), `${MANUAL}, fig. 101`],
  [four(20, 50, 40, 60), MM_1_5, metric(0.4), `${MANUAL}, fig. 102`],
  [idled(20, 60), MM_1_5, metric(0.5), `${MANUAL}, fig. 102`],
  [four(40, 50, 30, 60), MM_1_5, metric(0.6), `${MANUAL}, fig. 102`],
  [four(40, 50, 35, 60), MM_1_5, metric(0.7), `${MANUAL}, fig. 102`],
  [four(40, 50, 40, 60), MM_1_5, metric(0.8), `${MANUAL}, fig. 102`],
  [idled(20, 30), MM_1_5, metric(1), `${MANUAL}, fig. 102`],
  [idled(50, 60), MM_1_5, metric(1.25), `${MANUAL}, fig. 102`],
  [idled(35, 30), MM_1_5, metric(1.75), `${MANUAL}, fig. 102`],
  [idled(40, 30), MM_1_5, metric(2), `${MANUAL}, fig. 102`],
];
it.each(EXACT)('exact: %j (%s)', (train, leadscrew, pitch, _source) => expect(score(train, { leadscrew, pitch }).off).toBe(0));

const NEAR: readonly (readonly [train: Train, leadscrew: Lead, pitch: Lead, ppm: number, within: number, source: string])[] = [
  ...([1, 1.25, 1.5, 1.75, 2, 2.5, 3] as const).map((pitch) => {
    const [driver, driven] = { 1: [30, 75], 1.25: [30, 60], 1.5: [30, 50], 1.75: [35, 50], 2: [40, 50], 2.5: [55, 55], 3: [60, 50] }[pitch];
    return [four(driver ?? 0, 80, 63, driven ?? 0), INCH_8, metric(pitch), 125, 0.1, FORUM] as const;
  }),
  // of threads in a length: of the pitch it is the other way round
  [four(21, 30, 45, 50), INCH_16, metric(1), 125, 1, `${PHOTOS}: -125 of threads`],
  [four(45, 55, 50, 65), INCH_16, metric(1), -874, 2, `${PHOTOS}: +875 of threads`],
  [four(35, 55, 57, 60), MM_1_5, perInch(28), -358, 5, `${CHART}: 28.010`],
  // 1.27 by two wheels: continued fractions
  ...(
    [
      [80, 63, -125],
      [33, 26, -605.7],
      [47, 37, 212.8],
      [61, 48, 656.2],
      [52, 41, -1344.3],
      [14, 11, 2147.5],
    ] as const
  ).map(([over, under, ppm]) => [idled(over, under), metric(1), metric(1.27), ppm, 0.1, 'arithmetic: over / under against 1.27'] as const),
];
it.each(NEAR)('nearly: %j, pitch %j', (train, leadscrew, pitch, ppm, within, _source) =>
  expect(Math.abs(ppmOf(score(train, { leadscrew, pitch })) - ppm)).toBeLessThanOrEqual(within),
);

/** Threads an inch that really come out, as printed. */
it.each([
  [20, 65, 55, 80, 80.048],
  [35, 65, 45, 80, 55.907],
  [30, 60, 55, 65, 40.024],
  [50, 65, 55, 80, 32.019],
  [35, 55, 57, 60, 28.01],
  [50, 60, 55, 65, 24.015],
  [55, 40, 40, 65, 20.012],
  [50, 45, 55, 65, 18.011],
  [50, 40, 55, 65, 16.01],
  [57, 30, 35, 55, 14.005],
  [50, 30, 55, 65, 12.007],
  [50, 30, 60, 65, 11.007],
  [57, 35, 65, 50, 7.998],
] as const)('%i %i %i %i cuts %f threads an inch (the chart)', (a, b, c, d, threads) => {
  const { off, by } = score(four(a, b, c, d), { leadscrew: MM_1_5, pitch: perInch(1) });
  expect(1 / (1 + off / by)).toBeCloseTo(threads, 3);
});

/** A drives B; C, on B's stud, drives D. */
describe('wheels for 191 to 23 (A. Brocot’s example, as told by B. Austin, AMS Feature Column, December 2008; errors by arithmetic)', () => {
  it.each([
    [83, 10, -523.6],
    [108, 13, 402.7],
  ])('%i to %i: %d millionths', (driver, driven, ppm) => {
    const leads = { leadscrew: { units: 23, per: 1 }, pitch: { units: 191, per: 1 } };
    expect(ppmOf(score({ drivers: [driver], driven: [driven] }, leads))).toBeCloseTo(ppm, 1);
  });
});

describe('which four wheels go together', () => {
  it.each([
    [20, 65, 55, 80, true, CHART],
    [40, 55, 21, 65, true, CHART],
    [45, 55, 21, 65, true, CHART],
    [35, 65, 45, 80, true, CHART],
    [60, 55, 21, 65, true, CHART],
    [30, 60, 55, 65, true, CHART],
    [80, 55, 21, 65, true, CHART],
    [50, 65, 55, 80, true, CHART],
    [35, 55, 57, 60, true, CHART],
    [50, 60, 55, 65, true, CHART],
    [55, 40, 40, 65, true, CHART],
    [50, 45, 55, 65, true, CHART],
    [50, 40, 55, 65, true, CHART],
    [57, 30, 35, 55, true, CHART],
    [50, 30, 55, 65, true, CHART],
    [50, 30, 60, 65, true, CHART],
    [57, 35, 65, 50, true, CHART],
    [55, 50, 21, 60, false, CHART],
    [55, 60, 21, 50, false, CHART],
    [20, 45, 80, 21, false, CHART],
    [20, 21, 80, 45, false, CHART],
    [80, 21, 20, 45, false, CHART],
    [45, 57, 50, 21, false, CHART],
    [45, 21, 50, 57, false, CHART],
    [50, 21, 45, 57, false, CHART],
    [21, 30, 45, 50, false, PHOTOS],
    [45, 50, 21, 30, false, PHOTOS],
    [45, 55, 50, 65, true, PHOTOS],
  ] as const)('%i %i %i %i: %s (%s)', (a, b, c, d, fits, _source) => {
    expect(compoundFits(USUAL_REACH, a, b, c, d)).toBe(fits);
    const found = allTrains({ gears: [a, b, c, d], reach: USUAL_REACH }).some(
      (train) =>
        String([train.drivers, train.driven]) ===
        String([
          [a, c],
          [b, d],
        ]),
    );
    expect(found).toBe(fits);
  });
  it('the one that the rule calls wrong was called barely workable', () => expect(compoundFits(USUAL_REACH, 21, 50, 60, 40)).toBe(false));
});

/** The stud where its two circles meet, then every wheel against every shaft in the plane. */
function fitsInThePlane(b: typeof BANJO, [a1, b1, c1, d1]: readonly [number, number, number, number]): boolean {
  const m = b.module;
  const [first, second, span] = [(m * (a1 + b1)) / 2, (m * (c1 + d1)) / 2, b.centres];
  if (second < b.slot.from || second > b.slot.to) return false;
  const x = (span ** 2 + second ** 2 - first ** 2) / (2 * span);
  const high = second ** 2 - x ** 2;
  if (high < -1e-6) return false;
  const stud = { x, y: Math.sqrt(Math.max(0, high)) };
  const [leadscrew, spindle] = [
    { x: 0, y: 0 },
    { x: span, y: 0 },
  ];
  const apart = (p: typeof stud, q: typeof stud): number => Math.hypot(p.x - q.x, p.y - q.y);
  const tip = (teeth: number): number => (m * (teeth + 2)) / 2;
  const passes = (at: typeof stud, teeth: number, shaft: typeof stud): boolean => apart(at, shaft) - tip(teeth) >= b.boss / 2 - 1e-6;
  return passes(stud, c1, spindle) && passes(stud, b1, leadscrew) && passes(spindle, a1, leadscrew) && passes(leadscrew, d1, spindle);
}
const BANJO = { module: mm(1), centres: mm(90), slot: { from: mm(38), to: mm(75) }, boss: mm(14) };

describe('a measured banjo', () => {
  const wheel = fc.integer({ min: 18, max: 90 });
  it('allows four wheels where the circles meet and nothing touches in the plane', () => {
    const reach = reachOf(BANJO);
    let fit = 0;
    fc.assert(
      fc.property(wheel, wheel, wheel, wheel, (a, b, c, d) => {
        const says = compoundFits(reach, a, b, c, d);
        fit += says ? 1 : 0;
        expect(says).toBe(fitsInThePlane(BANJO, [a, b, c, d]));
      }),
      { numRuns: 2000, seed: 6 },
    );
    expect(fit).toBeGreaterThan(100);
  });
  it('two wheels with an idler must not touch each other', () => {
    const reach = reachOf(BANJO);
    expect(idlerFits(reach, 40, 60, 80)).toBe(true);
    expect(idlerFits(reach, 90, 60, 88)).toBe(false);
    expect(idlerFits(reach, 20, 20, 30)).toBe(false);
  });
});

/** All ordered choices of wheels by their place in the box, and the error as a fraction of big whole numbers. */
type Plain = { readonly off: bigint; readonly by: bigint; readonly wheels: number };
function plainBest(gears: readonly number[], leadscrew: Lead, pitch: Lead): Plain | undefined {
  let best: Plain | undefined;
  const offer = (drivers: number, driven: number, wheels: number): void => {
    const by = BigInt(pitch.units) * BigInt(leadscrew.per) * BigInt(driven);
    const signed = BigInt(leadscrew.units) * BigInt(pitch.per) * BigInt(drivers) - by;
    const off = signed < 0n ? -signed : signed;
    if (!best || off * best.by < best.off * by || (off * best.by === best.off * by && wheels < best.wheels)) best = { off, by, wheels };
  };
  gears.forEach((a, i) => {
    gears.forEach((b, j) => {
      gears.forEach((c, k) => {
        if (new Set([i, j, k]).size < 3) return;
        if (a + c >= 80 && c + b >= 85) offer(a, b, 2);
        gears.forEach((d, l) => {
          if (new Set([i, j, k, l]).size < 4) return;
          if (a + b >= 80 && c + d >= 85 && a + b - c >= 15 && c + d - b >= 15) offer(a * c, b * d, 4);
        });
      });
    });
  });
  return best;
}

const box = fc.array(fc.constantFrom(20, 21, 25, 30, 35, 40, 45, 50, 55, 60, 63, 65, 80, 127), { minLength: 2, maxLength: 8 });
const screw = fc.constantFrom(metric(1.5), metric(2), metric(3), INCH_8, INCH_16, perInch(12));
const wanted = fc.constantFrom(...[0.5, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2].map(metric), ...[40, 32, 26, 24, 19, 14].map(perInch));
const wheels = ({ train }: Scored): readonly number[] => [
  ...train.drivers,
  ...train.driven,
  ...(train.idler === undefined ? [] : [train.idler]),
];

describe('the search', () => {
  it('finds what plain enumeration finds: least error, then fewest wheels', () => {
    let found = 0;
    fc.assert(
      fc.property(box, screw, wanted, (gears, leadscrew, pitch) => {
        const best = plainBest(gears, leadscrew, pitch);
        const got = bestTrain({ gears, reach: USUAL_REACH, leadscrew, pitch });
        expect(got !== undefined).toBe(best !== undefined);
        if (!got || !best) return;
        found += 1;
        expect(got.train.drivers.length + got.train.driven.length).toBe(best.wheels);
        expect(BigInt(Math.abs(got.off)) * best.by).toBe(best.off * BigInt(got.by));
      }),
      { numRuns: 250, seed: 6 },
    );
    expect(found).toBeGreaterThan(100);
  });
  it('a longer list begins with the best, goes by error, and names no set of wheels twice', () => {
    fc.assert(
      fc.property(box, screw, wanted, (gears, leadscrew, pitch) => {
        const ask = { gears, reach: USUAL_REACH, leadscrew, pitch };
        const list = bestTrains(ask, 5);
        expect(list[0]?.train).toEqual(bestTrain(ask)?.train);
        const errors = list.map((one) => Math.abs(ppmOf(one)));
        expect(errors).toEqual([...errors].sort((a, b) => a - b));
      }),
      { numRuns: 100, seed: 7 },
    );
  });
  it('no wheel is used more often than there is, the idler counted', () => {
    fc.assert(
      fc.property(box, screw, wanted, (gears, leadscrew, pitch) => {
        for (const one of bestTrains({ gears, reach: USUAL_REACH, leadscrew, pitch }, 5))
          for (const wheel of wheels(one))
            expect(wheels(one).filter((w) => w === wheel).length).toBeLessThanOrEqual(gears.filter((g) => g === wheel).length);
      }),
      { numRuns: 100, seed: 8 },
    );
  });
  it('the train turned about undoes its error: (1 + e)(1 + e′) = 1', () => {
    fc.assert(
      fc.property(box, screw, wanted, (gears, leadscrew, pitch) => {
        const best = bestTrain({ gears, reach: USUAL_REACH, leadscrew, pitch });
        if (!best) return;
        const back = score({ drivers: best.train.driven, driven: best.train.drivers }, { leadscrew: pitch, pitch: leadscrew });
        expect((1 + best.off / best.by) * (1 + back.off / back.by)).toBeCloseTo(1, 12);
      }),
      { numRuns: 100, seed: 9 },
    );
  });
  it('an idler changes nothing but the way round: tooth by tooth it drives what it is driven', () => {
    fc.assert(
      fc.property(box, screw, wanted, (gears, leadscrew, pitch) => {
        for (const { train, off, by } of bestTrains({ gears, reach: USUAL_REACH, leadscrew, pitch }, 5)) {
          if (train.idler === undefined) continue;
          const [driver = 0, driven = 0] = [train.drivers[0], train.driven[0]];
          const turns = (driver / train.idler) * (train.idler / driven);
          const cut = (leadscrew.units / leadscrew.per) * turns;
          expect(cut / (pitch.units / pitch.per)).toBeCloseTo(1 + off / by, 10);
        }
      }),
      { numRuns: 100, seed: 10 },
    );
  });
  it('nothing from a box that reaches nowhere', () =>
    expect(bestTrain({ gears: [20, 30], reach: USUAL_REACH, leadscrew: metric(2), pitch: metric(1) })).toBeUndefined());
});
