/** Stepped work as a beam: against the closed formulas where it is even, and against plain adding up of thin slices where it is not. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { giveOf, giveOnCentre, type Length } from '../../src/handbook/bending.ts';
import { cantilever, propped, secondMoment } from '../../src/handbook/stiffness.ts';

/** F over E times the sum of (a - x)(b - x) dx / I over each length, midpoint by midpoint. */
function sliced(lengths: readonly Length[], a: number, b: number): number {
  const slices = 500;
  let [sum, from] = [0, 0];
  for (const { long, outside, inside } of lengths) {
    const thin = (Math.min(from + long, a, b) - from) / slices;
    for (let i = 0; thin > 0 && i < slices; i += 1) {
      const x = from + (i + 0.5) * thin;
      sum += ((a - x) * (b - x) * thin) / (secondMoment(outside) - secondMoment(inside));
    }
    from += long;
  }
  return sum;
}

const stretch = fc.record({
  long: fc.double({ min: 1, max: 30, noNaN: true }),
  outside: fc.double({ min: 3, max: 25, noNaN: true }),
  inside: fc.constantFrom(0, 1, 2.5),
});

describe('work that stands out', () => {
  it('is a cantilever where it is even', () => {
    expect(giveOf([{ long: 40, outside: 6, inside: 0 }], 40, 195_000, 30)).toBeCloseTo(cantilever(30, 40, 6, 195_000), 12);
  });
  it('on a centre it is fixed and pinned', () => {
    for (const at of [10, 24, 35])
      expect(giveOnCentre([{ long: 40, outside: 6, inside: 0 }], at, 40, 195_000, 30)).toBeCloseTo(propped(30, 40, at, 6, 195_000), 12);
  });
  it('in steps it is what its slices add up to', () => {
    fc.assert(
      fc.property(fc.array(stretch, { minLength: 1, maxLength: 5 }), fc.double({ min: 0.2, max: 1, noNaN: true }), (lengths, share) => {
        const end = lengths.reduce((sum, one) => sum + one.long, 0);
        const at = end * share;
        expect(giveOf(lengths, at, 1, 1) / sliced(lengths, at, at)).toBeCloseTo(1, 2);
        const pinned = sliced(lengths, at, at) - sliced(lengths, at, end) ** 2 / sliced(lengths, end, end);
        expect(Math.abs(giveOnCentre(lengths, at, end, 1, 1) - pinned)).toBeLessThan(0.005 * sliced(lengths, at, at));
      }),
      { seed: 31, numRuns: 40 },
    );
  });
  it('gives less with a centre, less when thicker, more farther out', () => {
    fc.assert(
      fc.property(stretch, stretch, (a, b) => {
        const end = a.long + b.long;
        expect(giveOnCentre([a, b], end * 0.9, end, 1, 1)).toBeLessThan(giveOf([a, b], end * 0.9, 1, 1));
        expect(giveOf([{ ...a, outside: a.outside + 1 }, b], end, 1, 1)).toBeLessThan(giveOf([a, b], end, 1, 1));
        expect(giveOf([a, b], end, 1, 1)).toBeGreaterThan(giveOf([a, b], a.long, 1, 1));
      }),
      { seed: 32, numRuns: 100 },
    );
  });
});
