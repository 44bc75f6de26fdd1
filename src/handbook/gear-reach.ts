/**
 * Which wheels mesh on a banjo, in teeth. A wheel's pitch circle is module x teeth, so every distance between shafts is a sum of teeth, and
 * whatever stands in the way is a number of teeth as well.
 */
import type { Len } from '../base/units.ts';
import { numbersTable } from './numbers.ts';

/** A sum of the teeth of two wheels that mesh, from least to most. */
export type TeethSum = { readonly least: number; readonly most: number };
export type Reach = {
  /** First driver and the stud's driven wheel (or the idler). */
  readonly first: TeethSum;
  /** The stud's driver (or the idler) and the leadscrew's wheel. */
  readonly second: TeethSum;
  /** By how much a pair's sum is more than the wheel beside it: that wheel then passes the other shaft. */
  readonly clear: number;
  /** Twice the distance from the first shaft to the leadscrew, in modules; not known without a measured banjo. */
  readonly span?: number;
};
export type BanjoSizes = {
  readonly module: Len;
  readonly centres: Len;
  readonly slot: { readonly from: Len; readonly to: Len };
  readonly boss: Len;
};

/** What the trains published for small lathes with wheels of module 1 obey; they say nothing of a greatest sum. */
export const USUAL_REACH: Reach = {
  first: { least: numbersTable.value('wheels.first-pair'), most: Number.POSITIVE_INFINITY },
  second: { least: numbersTable.value('wheels.second-pair'), most: Number.POSITIVE_INFINITY },
  clear: numbersTable.value('wheels.clear'),
};

/**
 * From a measured banjo. The stud lies in the slot, so the second pair's sum is bounded; the three shafts make a triangle, so the first
 * pair's sum lies within the second's of the span. A wheel is two modules larger than its pitch circle.
 */
export function reachOf({ module, centres, slot, boss }: BanjoSizes): Reach {
  const teeth = (distance: number): number => (2 * distance) / module;
  const [span, near, far] = [teeth(centres), teeth(slot.from), teeth(slot.to)];
  return {
    first: { least: Math.max(0, span - far), most: span + far },
    second: { least: near, most: far },
    clear: TIPS + boss / module,
    span,
  };
}
/** Both tips of a wheel beyond its pitch circle, in modules. */
const TIPS = 2;

/** a drives b; c, on b's stud, drives d. */
export function compoundFits(reach: Reach, a: number, b: number, c: number, d: number): boolean {
  return (
    within(reach.first, a + b) &&
    within(reach.second, c + d) &&
    a + b - c >= reach.clear &&
    c + d - b >= reach.clear &&
    reaches(reach, a + b, c + d) &&
    (reach.span === undefined || reach.span - Math.max(a, d) >= reach.clear)
  );
}

/** a drives d through an idler between them: in one plane, so a and d must not touch. */
export function idlerFits(reach: Reach, a: number, idler: number, d: number): boolean {
  return (
    within(reach.first, a + idler) &&
    within(reach.second, idler + d) &&
    reaches(reach, a + idler, idler + d) &&
    (reach.span === undefined || reach.span - (a + d) >= 2 * TIPS)
  );
}

const within = ({ least, most }: TeethSum, sum: number): boolean => sum >= least && sum <= most;

/** Two sides and the span make a triangle. */
function reaches({ span }: Reach, first: number, second: number): boolean {
  return span === undefined || (Math.abs(first - second) <= span && first + second >= span);
}
