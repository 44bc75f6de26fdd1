/** Sizes as a turner sets them: limits on round figures, a round number to aim at. Whole units in, whole units out. */
import { type Len, len, mm } from '../base/units.ts';
import type { Pair } from '../geometry/chain.ts';
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

/**
 * Shared limits drawn in to figures that a turner reads at a glance: to the coarsest step that moves no target and gives up no more than a part
 * of either side, at the finest to the hundredth; as they are, where that leaves less than `least` between them.
 */
export function drawIn(lo: Len, hi: Len, least: Len): Pair {
  const target = aimAt(lo, hi);
  const gives = numbersTable.value('tidy.gives');
  const isEasy = (round: Pair): boolean =>
    (hi - round.hi) * gives <= hi - target && (round.lo - lo) * gives <= target - lo && aimAt(round.lo, round.hi) === target;
  const rounds = STEPS.map((step) => ({
    lo: len(Math.ceil(lo / step) * step),
    hi: len(Math.floor(hi / step) * step),
    isFine: step === FINE,
  }));
  const round = rounds.find((one) => one.hi - one.lo >= least && (one.isFine || isEasy(one)));
  return round ? { lo: round.lo, hi: round.hi } : { lo, hi };
}

/** As far up as down, where that takes no more than a share of the band, and leaves `least`: one figure to remember. */
export function evened(lo: Len, hi: Len, target: Len, least: Len): { readonly lo: Len; readonly hi: Len } {
  const by = Math.min(target - lo, hi - target);
  const lost = hi - lo - 2 * by;
  return lost <= (hi - lo) * numbersTable.value('tidy.even') && 2 * by >= least
    ? { lo: len(target - by), hi: len(target + by) }
    : { lo, hi };
}

const FINE = mm(numbersTable.value('tidy.fine'));
const STEPS: readonly Len[] = ['tidy.coarse', 'tidy.middle', 'tidy.fine'].map((id) => mm(numbersTable.value(id)));
