/** How stock is taken: equal roughing cuts no deeper than the tool and the motor bear, then a finishing cut that ends on size. */
import { type Len, len, mm } from '../base/units.ts';
import { numbersTable } from '../handbook/numbers.ts';

export type PassAsk = {
  /** A side, or along z. */
  readonly stock: Len;
  /** Deepest roughing cut. */
  readonly deepest: Len;
  /** Left for the finishing cut; 0 where a later operation finishes. */
  readonly finish: Len;
};

/** They add up to the stock exactly. None when there is no stock. */
export function splitPasses({ stock, deepest, finish }: PassAsk): readonly Len[] {
  if (stock <= 0) return [];
  const last = Math.min(finish, deepest);
  if (stock <= last) return [stock];
  const rough = stock - last;
  const cuts = roughCuts(len(rough), deepest);
  return last > 0 ? [...cuts, len(last)] : cuts;
}

/** As few as may be; all but the last on a round figure where that leaves the last at least half as deep. */
function roughCuts(stock: Len, deepest: Len): readonly Len[] {
  const count = Math.ceil(stock / deepest);
  for (const step of STEPS) {
    const each = Math.ceil(stock / count / step) * step;
    const rest = stock - each * (count - 1);
    if (each <= deepest && rest > 0 && rest >= each / 2) return [...Array<Len>(count - 1).fill(len(each)), len(rest)];
  }
  const each = Math.floor(stock / count);
  const larger = stock - each * count;
  return Array.from({ length: count }, (_, i) => len(i < larger ? each + 1 : each));
}
const STEPS: readonly Len[] = ['tidy.coarse', 'tidy.middle', 'tidy.fine'].map((id) => mm(numbersTable.value(id)));
