/**
 * Discs and nuts: work that stands out no further than it is thick, pressed back against the steps of the jaws. What a cut levers at its rim
 * the seat holds, so that a hold is enough that is short for the diameter; cuts are half as deep as usual. Taken only where nothing else holds.
 */
import { type Len, len, minus } from '../../base/units.ts';
import type { Grip, GripKind } from '../../model/plan.ts';
import { type Context, depthFrom, farther, length, nearer, scaled } from '../context.ts';
import type { Stretch } from './stretch.ts';
import { heldAtWorst } from './worst.ts';

/** Holds whose jaws have steps, or that are bored with one. */
const STEPPED: readonly GripKind[] = ['jaws', 'hexagon', 'bored-jaws', 'four-jaw'];

/** `whole`: the section's stretch; its face at the far side of the hold is the seat. None where that is no face, or the hold too short for this too. */
export function seatedGrip(c: Context, grip: Grip, whole: Stretch, plain: Stretch): readonly Grip[] {
  const seat = c.part.surfaces.find((one) => one.shape === 'face' && one.id === grip.datum);
  if (!STEPPED.includes(grip.kind) || seat?.shape !== 'face' || seat.z !== farther(grip.out, whole)) return [];
  const out = depthFrom(grip.out, nearer(grip.out, grip), c.part);
  if (out > scaled(grip.diameter, 'grip.seated.out')) return [];
  const wants = seatedLeast(out);
  if (minus(grip.to, grip.from) < wants || heldAtWorst(c, grip, whole, plain) < wants) return [];
  return [{ ...grip, id: `${grip.id}.seated`, seated: true, because: [...grip.because, { rule: 'seated-hold', grounds: {} }] }];
}

/** Least hold of work that stands so far out of it. */
const seatedLeast = (out: Len): Len => len(Math.max(scaled(out, 'grip.seated.ratio'), length('grip.least')));
