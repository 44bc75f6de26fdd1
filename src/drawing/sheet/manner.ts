/**
 * How a sheet writes its lengths: in millimetres, or in inches as an inch turner reads them. Only the writing differs; nothing that is
 * planned knows of it.
 */
import type { Len } from '../../base/units.ts';
import type { Limits } from '../../model/part.ts';

export type Units = 'mm' | 'inch';
export type Manner = {
  readonly units: Units;
  /** What is turned to: inside its limits; `limits` counts from it, never wider than asked. */
  target(asked: Limits): string;
  /** `at`: what they count from, where that is not the target. */
  limits(asked: Limits, at?: Len): string;
  size(length: Len): string;
  /** A size that is told and not turned to, as what a hold takes: no finer than a thousandth of an inch. */
  nominal(length: Len): string;
  diameter(length: Len): string;
  /** As short as it is exact enough to work by. */
  short(length: Len): string;
  /** The same, never under and never over. */
  least(length: Len): string;
  most(length: Len): string;
  atLeast(length: Len): string;
  atMost(length: Len): string;
  /** Least and greatest as they are, for a proof. */
  range(least: Len, greatest: Len): string;
  depth(length: Len): string;
  passes(cuts: readonly Len[]): string;
  /** A drill, a reamer, a bar or a collet by the name that stands on it. */
  named(size: Len): string;
  /** That name, where it is not simply the size. */
  stamp(size: Len): string | undefined;
  /** Bar in the chuck, behind its '\u00d8'. */
  barAcross(size: Len): string;
  /** Bar: what is sawn off a little over, what is left a little under. */
  bar(length: Len, side: 'over' | 'under'): string;
  /** So that what is printed adds up. */
  barLeft(bar: Len, takes: readonly Len[]): string;
  /** In a sentence: no finer than a hand works. */
  about(length: Len): string;
  /** mm a turn */
  feed(feed: number): string;
  /** mm */
  pitch(pitch: number): string;
  /** A figure that was worked out, in a unit that may be 'mm'. */
  derived(value: number, unit: string): string;
};
