/** Sizes as a turner sets them: limits on the hundredth, a round number to aim at. Whole units in, whole units out. */
import { type Len, len, mm } from '../base/units.ts';
import { middleOf } from '../geometry/places.ts';
import { numbersTable } from '../handbook/numbers.ts';

/** The roundest number in the middle half of the limits, nearest their middle; the middle itself when none is there. */
export function aimAt(lo: Len, hi: Len): Len {
  const middle = middleOf(lo, hi);
  const away = (hi - lo) / numbersTable.value('tidy.inside');
  for (const step of STEPS) {
    const round = Math.floor(middle / step + 1 / 2) * step;
    if (round >= lo + away && round <= hi - away) return len(round);
  }
  return len(middle);
}

/** Limits drawn in to the hundredth, unless that leaves less than `least` between them. */
export function drawIn(lo: Len, hi: Len, least: Len): { readonly lo: Len; readonly hi: Len } {
  const up = len(Math.ceil(lo / FINE) * FINE);
  const down = len(Math.floor(hi / FINE) * FINE);
  return down - up >= least ? { lo: up, hi: down } : { lo, hi };
}

const FINE = mm(numbersTable.value('tidy.fine'));
const STEPS: readonly Len[] = ['tidy.coarse', 'tidy.middle', 'tidy.fine'].map((id) => mm(numbersTable.value(id)));
