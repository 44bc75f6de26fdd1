/** No fraction ever enters a sum of tolerances: whole units in, whole units out, and the sums are those of whole numbers of any size. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { len } from '../../src/base/units.ts';
import { type Link, likelyPath, type Pair, sumPath } from '../../src/geometry/chain.ts';
import { type Budget, type Sides, shareTolerance } from '../../src/geometry/sharing.ts';
import { everyPlan } from '../fixtures/every-plan.ts';

const isWhole = (value: unknown): boolean => Number.isSafeInteger(value);
/** Metres in tenths of a micrometre, both signs. */
const size = fc.integer({ min: -50_000_000, max: 50_000_000 });
const band = fc.integer({ min: 0, max: 10_000_000 });
const rows = fc.array(fc.record({ size, band, sign: fc.constantFrom(1 as const, -1 as const) }), { minLength: 1, maxLength: 40 });

describe('sums of tolerances', () => {
  it('are whole, and those of whole numbers of any size', () => {
    fc.assert(
      fc.property(rows, (list) => {
        const links = list.map(({ sign }, i): Link => ({ dim: `d${i}`, sign }));
        const pairs = new Map(list.map((one, i): [string, Pair] => [`d${i}`, { lo: len(one.size), hi: len(one.size + one.band) }]));
        const { lo, hi } = sumPath(links, pairs);
        const big = (side: 1 | -1): bigint =>
          list.reduce((sum, one) => sum + BigInt(one.sign) * BigInt(one.sign === side ? one.size + one.band : one.size), 0n);
        expect([isWhole(lo), isWhole(hi), BigInt(lo), BigInt(hi)]).toEqual([true, true, big(-1), big(1)]);
        // the root of squares is the one figure that is rounded: outward, once, and never past the worst case
        const likely = likelyPath(links, pairs);
        expect([isWhole(likely.lo), isWhole(likely.hi), likely.lo >= lo, likely.hi <= hi]).toEqual([true, true, true, true]);
        const squares = list.reduce((sum, one) => sum + BigInt(one.band) ** 2n, 0n);
        expect(BigInt(likely.hi - likely.lo + 1) ** 2n >= squares).toBe(true);
      }),
      { numRuns: 500, seed: 31 },
    );
  });
  it('shared in whole units, whatever is shared', () => {
    fc.assert(
      fc.property(fc.array(band, { minLength: 1, maxLength: 8 }), band, band, (leasts, below, above) => {
        const dims = leasts.map((_, i) => `d${i}`);
        const budget: Budget = { of: 'all', links: dims.map((dim): Link => ({ dim, sign: 1 })), below, above };
        const least = new Map(leasts.map((one, i): [string, Sides] => [`d${i}`, { below: one % 97, above: one % 89 }]));
        const { sides, short } = shareTolerance([budget], least);
        expect([...sides.values()].every((side) => isWhole(side.below) && isWhole(side.above))).toBe(true);
        expect(short.every((one) => isWhole(one.needs) && isWhole(one.allows))).toBe(true);
      }),
      { numRuns: 300, seed: 32 },
    );
  });
  it.each(everyPlan.map(({ spec, plan }) => [spec, plan] as const))(
    '%s: every limit, sum and worst case of the plan is whole',
    (_, plan) => {
      const figures = plan.parts.flatMap(({ chart, proof }) => [
        ...chart.working.flatMap(({ limits, holds }) => [limits.lo, limits.hi, limits.target, holds]),
        ...chart.drawing.flatMap(({ lo, hi, asks, likely }) => [lo, hi, asks.lo, asks.hi, likely?.lo ?? 0, likely?.hi ?? 0]),
        ...(chart.truths ?? []).flatMap(({ worst, asks }) => [worst, asks]),
        ...proof.claims.flatMap(({ worst }) => (worst ? [worst.lo, worst.hi] : [])),
      ]);
      const stacks = (plan.stacks ?? []).flatMap(({ lo, hi, likely }) => [lo, hi, likely.lo, likely.hi]);
      expect([...figures, ...stacks].filter((one) => !isWhole(one))).toEqual([]);
      for (const { chart } of plan.parts) {
        const pairs = new Map(chart.working.map((one) => [one.id, one.limits]));
        for (const path of chart.drawing) {
          const big = path.links.reduce((sum, { dim, sign }) => {
            const limits = pairs.get(dim);
            return sum + (sign === 1 ? BigInt(limits?.hi ?? 0) : -BigInt(limits?.lo ?? 0));
          }, 0n);
          expect(BigInt(path.hi)).toBe(big);
        }
      }
    },
  );
});
