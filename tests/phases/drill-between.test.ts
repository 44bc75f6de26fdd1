/** The drill between a pilot and a size that drive or hand can't bear at once. */
import { expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import { drillBetween } from '../../src/phases/numbers/holes.ts';

const RACK = [11, 3, 8, 5].map((d) => mm(d));

it.each([
  ['the smallest that leaves the last a cut that is borne', 0, 12, 8, 5],
  ['larger where less is borne at once', 4, 12, 4, 8],
  ['none where two steps would be needed', 0, 12, 5, undefined],
  ['none beyond the size itself', 0, 4, 1, undefined],
])('%s', (_, hole, last, most, found) => {
  const bears = (drill: number, before: number): boolean => drill - before <= mm(most);
  expect(drillBetween(RACK, hole === 0 ? len(0) : mm(hole), mm(last), bears)).toBe(found === undefined ? undefined : mm(found));
});
