/**
 * How stock is taken: equal roughing cuts no deeper than tool, drive and work bear, then a finishing cut that ends on size. Roughing cuts are
 * whole divisions of the dial; what is left over goes into the last cut, which is set by what was measured before it.
 */
import { type Len, len } from '../base/units.ts';

export type PassAsk = {
  /** A side, or along z. */
  readonly stock: Len;
  /** Deepest roughing cut. */
  readonly deepest: Len;
  /** Left for the finishing cut; 0 where a later operation finishes. */
  readonly finish: Len;
  /** What one division of the dial takes. */
  readonly unit: Len;
  /** Under this the metal is rubbed, not cut. */
  readonly least: Len;
  /** How many cuts of the finishing depth there are at the end: two where work and tool have to give alike. */
  readonly alike: 1 | 2;
};

/** They add up to the stock exactly. None when there is no stock. No cut is under the least, unless the stock is. */
export function splitPasses(ask: PassAsk): readonly Len[] {
  const { stock, deepest, finish, unit, least, alike } = ask;
  if (stock <= 0) return [];
  const last = len(Math.min(finish, deepest));
  if (last === 0) return roughCuts(stock, deepest, unit, least);
  if (stock <= last) return [stock];
  const lasts = stock >= last * (1 + alike) ? alike : 1;
  const left = len(stock - last * lasts);
  const over = len(last + (left % unit));
  const even = over <= deepest && left > unit ? over : last;
  const rough = len(stock - last * (lasts - 1) - even);
  if (rough < least) return evenly(stock, deepest, least);
  return [...roughCuts(rough, deepest, unit, least), ...(lasts === 2 ? [last] : []), even];
}

/** What is left over a finishing cut is too little for a cut of its own: all is shared. */
function evenly(stock: Len, deepest: Len, least: Len): readonly Len[] {
  if (stock <= deepest && stock < 2 * least) return [stock];
  const half = len(Math.ceil(stock / 2));
  return [half, len(stock - half)];
}

/** As few as may be; all but the last on a round figure where that leaves the last at least a quarter as deep. */
function roughCuts(stock: Len, deepest: Len, unit: Len, least: Len): readonly Len[] {
  const count = Math.ceil(stock / deepest);
  for (const step of [10 * unit, (10 * unit) / 2, unit]) {
    const each = Math.ceil(stock / count / step) * step;
    const rest = stock - each * (count - 1);
    if (each <= deepest && rest >= Math.max(1, Math.min(least, each), each / 2 / 2))
      return [...Array<Len>(count - 1).fill(len(each)), len(rest)];
  }
  const each = Math.floor(stock / count);
  const larger = stock - each * count;
  return Array.from({ length: count }, (_, i) => len(i < larger ? each + 1 : each));
}
