/**
 * The fields of a cost as one whole number, least significant last. Room: rank under a hundred, minutes under a thousand (in tenths), tool
 * changes and broken habits under a thousand, tooling under a hundred, set-ups up to ninety: all of it stays a whole number to the last digit.
 */
import type { Cost } from '../../model/plan.ts';

export const SET_UP = 1e14;
export const TOOLING = 1e12;
export const BROKEN = 1e9;
export const TOOL = 1e6;
/** A tenth of a minute. */
export const MINUTE = 1e2;
const MOST_RANK = MINUTE - 1;

export function costOf(cost: number): Cost {
  const field = (unit: number, over: number): number => Math.floor((cost % over) / unit);
  return {
    setUps: Math.floor(cost / SET_UP),
    tooling: field(TOOLING, SET_UP),
    broken: field(BROKEN, TOOLING),
    toolChanges: field(TOOL, BROKEN),
    minutes: field(MINUTE, TOOL),
    rank: cost % MINUTE,
  };
}

/** How the methods are liked, all together; from the last figure on they count alike. */
export const rankCost = (rank: number): number => Math.min(rank, MOST_RANK);

/** The dearest cost with as many set-ups and at most one piece of tooling more: so far other holds are worth telling of. */
export const horizonOf = (cost: number): number =>
  Number.isFinite(cost) ? (Math.floor(cost / TOOLING) + 2) * TOOLING - 1 : Number.POSITIVE_INFINITY;
