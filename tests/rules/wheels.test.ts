import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import { findWheels, halfNuts, trainsOf } from '../../src/rules/wheels.ts';

const CHART = 'published chart of trains for a small lathe with a 1.5 mm leadscrew';
const PHOTOS = 'softsolder.com 2020-05-12';

/** Pitches of whole threads an inch are given as so many threads, so that they are whole numbers. */
describe('published trains', () => {
  it.each([
    ['F. D. Jones, Turning and Boring (1914), change gears: 24 threads from a constant of 6', [30, 40, 60, 80], 24, 6, 0, 0],
    [`${CHART}: 28 threads an inch, 28.010 comes out`, [35, 55, 57, 60], 15_000 * 28, 254_000, -0.000_358, 0.000_005],
    [
      `${PHOTOS}: 1 mm from 16 threads an inch, its +875 of threads is -874 of the pitch`,
      [45, 50, 55, 65],
      254_000,
      160_000,
      -0.000_874,
      0.000_002,
    ],
  ])('%s', (_source, gears, leadscrew, pitch, error, within) => {
    const wheels = findWheels(gears, len(leadscrew), len(pitch));
    expect(wheels).toBeDefined();
    expect(Math.abs((wheels?.error ?? 1) - error)).toBeLessThanOrEqual(within);
  });
});

/** A drives B; C, on B's stud, drives D. */
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
    const found = trainsOf([a, b, c, d]).some(
      (train) =>
        String([train.drivers, train.driven]) ===
        String([
          [a, c],
          [b, d],
        ]),
    );
    expect(found).toBe(fits);
  });
});

it.each([
  [2, 1, 'anywhere'],
  [2, 0.5, 'anywhere'],
  [2, 2, 'anywhere'],
  [2, 0.75, 'closed'],
  [2, 1.25, 'closed'],
  [1.5, 1, 'closed'],
] as const)('half-nuts on a leadscrew of %f mm, pitch %f mm: %s', (leadscrew, pitch, asks) =>
  expect(halfNuts(mm(leadscrew), mm(pitch))).toBe(asks),
);

it('a pitch that no train comes near is not cut', () => expect(findWheels([20, 80], mm(2), mm(0.7))).toBeUndefined());

/** All ordered choices of wheels by their place in the box, and the error as a fraction of big whole numbers. */
function plainBest(
  gears: readonly number[],
  leadscrew: number,
  pitch: number,
): { readonly off: bigint; readonly by: bigint; readonly wheels: number } | undefined {
  let best: { off: bigint; by: bigint; wheels: number } | undefined;
  const offer = (drivers: number, driven: number, wheels: number): void => {
    const by = BigInt(pitch) * BigInt(driven);
    const signed = BigInt(leadscrew) * BigInt(drivers) - by;
    const off = signed < 0n ? -signed : signed;
    if (!best || off * best.by < best.off * by || (off * best.by === best.off * by && wheels < best.wheels)) best = { off, by, wheels };
  };
  gears.forEach((a, i) => {
    gears.forEach((b, j) => {
      if (j === i) return;
      offer(a, b, 2);
      gears.forEach((c, k) => {
        gears.forEach((d, l) => {
          if (new Set([i, j, k, l]).size < 4) return;
          if (a + b >= 80 && c + d >= 85 && a + b - c >= 15 && c + d - b >= 15) offer(a * c, b * d, 4);
        });
      });
    });
  });
  return best;
}

it('finds what plain enumeration finds: least error, then fewest wheels, each wheel as often as it is there', () => {
  let found = 0;
  const box = fc.array(fc.constantFrom(20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 80), { minLength: 2, maxLength: 7 });
  fc.assert(
    fc.property(box, fc.constantFrom(1.5, 2, 3), fc.constantFrom(0.5, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2), (gears, leadscrew, pitch) => {
      const best = plainBest(gears, mm(leadscrew), mm(pitch));
      const got = findWheels(gears, mm(leadscrew), mm(pitch));
      const bearable = best !== undefined && best.off * 1000n <= best.by * 3n;
      expect(got !== undefined).toBe(bearable);
      if (!got || !best) return;
      found += 1;
      expect(got.drivers.length + got.driven.length).toBe(best.wheels);
      expect(Math.abs(got.error)).toBeCloseTo(Number(best.off) / Number(best.by), 12);
      const used = [...got.drivers, ...got.driven];
      for (const wheel of used)
        expect(used.filter((one) => one === wheel).length).toBeLessThanOrEqual(gears.filter((one) => one === wheel).length);
    }),
    { numRuns: 200, seed: 6 },
  );
  expect(found).toBeGreaterThan(20);
});
