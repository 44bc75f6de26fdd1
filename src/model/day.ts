/** The order of the day across parts, and what its proof says. Nothing here computes. */
import type { PartId } from './ids.ts';
import type { Claim } from './proof.ts';

/**
 * The day at the lathe: set-ups of all parts and tooling in one order. `on`: place in the day where what it stands on was begun: tooling
 * made in place, or jaws bored in place (for the hold at that place, which may be this one).
 */
export type Sequence = readonly { readonly part: PartId; readonly setUp: number; readonly on?: number }[];
/** How good that order is. `makings`: how often tooling is made in the chuck; `aside`: how often a part is laid aside unfinished. */
export type Day = {
  readonly makings: number;
  /** No order makes it less often. */
  readonly atLeast: number;
  readonly aside: number;
  readonly proved: 'best' | 'best found within the limit';
  readonly states: number;
};

/** Of the day: what stands across parts. */
export type DayProof = { readonly claims: readonly Claim[]; readonly holds: boolean };
