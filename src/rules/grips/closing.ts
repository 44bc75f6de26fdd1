/** What a hold of one size closes on: the work is turned to that, whatever else its drawing allows. */
import { type Len, len, minus } from '../../base/units.ts';
import type { Limits } from '../../model/part.ts';
import type { Grip } from '../../model/plan.ts';
import type { Workshop } from '../../model/workshop.ts';
import { length, nearer } from '../context.ts';

export type Takes = NonNullable<Grip['takes']>;

/** The smallest collet that goes over a diameter of that size and closes on it. */
export function colletFor({ holding }: Workshop, { target }: Limits): Takes | undefined {
  const slack = length('collet.slack');
  const fits = holding.collets.filter((size) => size >= target && minus(size, target) <= slack).sort((a, b) => a - b)[0];
  return fits === undefined ? undefined : { lo: minus(fits, slack), hi: fits };
}

/** What a sleeve in the drawer closes on: one that is made is bored to the work, or over its largest. */
export const takenBy = (bore: Len): Takes => ({ lo: minus(bore, length('sleeve.slack')), hi: bore });

/** No longer than it bears; flush on the side of the tool, the work free behind it. */
export function bearing(grip: Grip, most: Len): Grip {
  if (minus(grip.to, grip.from) <= most) return grip;
  const front = nearer(grip.out, grip);
  return grip.out === 'first' ? { ...grip, from: front, to: len(front + most) } : { ...grip, from: minus(front, most), to: front };
}
