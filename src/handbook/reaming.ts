/** What is left on the diameter for a reamer. Over the first bound, up to the second; nothing outside 25 mm. */
import { type Len, mm, toMm } from '../base/units.ts';
import type { Standing } from './fact.ts';
import { cite, type SourceId } from './sources.ts';

export type Stock = { readonly lo: Len; readonly hi: Len; readonly source: string; readonly standing: Standing };

/** On diameter. Too little makes a reamer rub and wear; the higher end for tough metal and light alloy. */
export function reamingStock(diameter: Len): Stock | undefined {
  const d = toMm(diameter);
  const row = ROWS.find(([from, to]) => d > from && d <= to);
  return row && { lo: mm(row[2]), hi: mm(row[3]), source: cite(row[4]), standing: 'common practice' };
}

/** Never more than this, on diameter: a thirty-second of an inch. */
export const MOST_STOCK: Stock = { lo: mm(0.8), hi: mm(0.8), source: cite('applied-science'), standing: 'common practice' };

const ROWS: readonly (readonly [from: number, to: number, lo: number, hi: number, source: SourceId])[] = [
  [0, 5, 0.1, 0.2, 'gtz'],
  [5, 20, 0.2, 0.3, 'gtz'],
  [20, 25, 0.254, 0.397, 'applied-science'],
];
