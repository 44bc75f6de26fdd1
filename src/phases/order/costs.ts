/** The fields of a cost as one whole number, least significant last: every field stays below a thousand, set-ups below nine thousand. */
import type { Cost } from '../../model/plan.ts';

export const SET_UP = 1e12;
export const TOOLING = 1e9;
export const BROKEN = 1e6;
export const TOOL = 1e3;

export function costOf(cost: number): Cost {
  const field = (unit: number, over: number): number => Math.floor((cost % over) / unit);
  return {
    setUps: Math.floor(cost / SET_UP),
    tooling: field(TOOLING, SET_UP),
    broken: field(BROKEN, TOOLING),
    toolChanges: field(TOOL, BROKEN),
    rank: cost % TOOL,
  };
}

/** The dearest cost with as many set-ups and at most one piece of tooling more: so far other holds are worth telling of. */
export const horizonOf = (cost: number): number =>
  Number.isFinite(cost) ? (Math.floor(cost / TOOLING) + 2) * TOOLING - 1 : Number.POSITIVE_INFINITY;
