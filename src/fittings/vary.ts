/** One size of a fitting taken through several values, all else as it was asked for. */
import { type Len, len, mm, toMm } from '../base/units.ts';
import { dutyFacts } from '../handbook/duty.ts';
import type { Workshop } from '../model/workshop.ts';

export type Vary<A> = {
  /** As it is named in the file. */
  readonly key: string;
  /** Another name that it may be called by. */
  readonly also?: string;
  readonly unit: string;
  /** The figure of the reasoning that it is; its value is what stands now. */
  readonly of: string;
  /** Figures that tell most of it. */
  readonly shows: readonly string[];
  /** Values to try about `now`, in any order; `now` may be among them. */
  readonly values: (now: number, asked: A, workshop: Workshop) => readonly number[];
  /** The same asked for with that value; `figures`: what stands now, by what it is of. */
  readonly with: (asked: A, value: number, figures: Readonly<Record<string, number>>) => A;
};

/** Whole steps to either side of `now`, so many; none at or under nothing. */
export function stepsAbout(now: number, step: number): readonly number[] {
  const count = dutyFacts.value('vary.steps');
  const middle = Math.round(now / step);
  const values = Array.from({ length: 2 * count + 1 }, (_, i) => rounded((middle - count + i) * step));
  return values.filter((value) => value > 0);
}

/** Whole steps from the first to one past `now`: a curve from its beginning. */
export function stepsUpTo(now: number, step: number): readonly number[] {
  return Array.from({ length: Math.ceil(now / step) + 1 }, (_, i) => rounded((i + 1) * step));
}

/** Of a list of sizes in mm, so many to either side of `now`. */
export function nearOf(sizes: readonly Len[], now: number): readonly number[] {
  const count = dutyFacts.value('vary.steps');
  const sorted = [...new Set(sizes)].sort((a, b) => a - b).map(toMm);
  return [...sorted.filter((size) => size < now).slice(-count), ...sorted.filter((size) => size > now).slice(0, count)];
}

export const asLen = (millimetres: number): Len => mm(millimetres);
const rounded = (value: number): number => toMm(len(Math.round(value * PER_UNIT)));
const PER_UNIT = 10_000;
