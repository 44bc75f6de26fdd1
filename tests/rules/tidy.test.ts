/** Sizes as a turner sets them: which limits are drawn in, and how far. */
import { expect, test } from 'vitest';
import { type Len, len, mm } from '../../src/base/units.ts';
import { drawIn } from '../../src/rules/tidy.ts';

/** Shared limits, what is to be left between them, and what the sheet says; all in mm. */
const DRAWN_IN: readonly (readonly [why: string, given: readonly [number, number], least: number, says: readonly [number, number]])[] = [
  ['to the tenth', [33.6614, 34.3386], 0.1, [33.7, 34.3]],
  ['to half of it, where the tenth gives up too much of one side', [11.3, 11.69], 0.1, [11.3, 11.65]],
  ['each side by itself', [19.3, 19.83], 0.1, [19.3, 19.8]],
  ['to the hundredth, where nothing coarser leaves three quarters of a side', [2.91, 3.0901], 0.1, [2.91, 3.09]],
  ['not so far that its target moves', [0.05, 2], 0.1, [0.05, 2]],
  ['not so far that the process cannot hold it', [33.6614, 34.3386], 0.62, [33.7 - 0.03, 34.3 + 0.03]],
  ['not at all, where even the hundredth is too coarse', [5.0004, 5.0196], 0.019, [5.0004, 5.0196]],
];

test.each(DRAWN_IN)('%s', (_, [lo, hi], least, [low, high]) => {
  const pair = drawIn(len(mm(lo)), len(mm(hi)), mm(least));
  expect(pair).toEqual({ lo: mm(low), hi: mm(high) });
});

test('limits are never widened, nor drawn in closer than the process holds', () => {
  const bands = Array.from({ length: 400 }, (_, at): readonly [Len, Len] => [
    len(100_000 + 37 * at),
    len(100_000 + 37 * at + 450 + 61 * at),
  ]);
  for (const [lo, hi] of bands) {
    const pair = drawIn(lo, hi, len(200));
    expect(pair.lo, `${lo} ${hi}`).toBeGreaterThanOrEqual(lo);
    expect(pair.hi).toBeLessThanOrEqual(hi);
    expect(pair.hi - pair.lo).toBeGreaterThanOrEqual(200);
  }
});
