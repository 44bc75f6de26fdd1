/**
 * A hole across the part: as a drill leaves it where its limits are as wide as what a drill press holds; closer, drilled under size and reamed by
 * hand; closer than any reamer that there is, refused with both bands.
 */
import { type Len, minus } from '../../base/units.ts';
import { heldBy } from '../../handbook/capability.ts';
import type { Limits, SideFeature } from '../../model/part.ts';
import type { Refusal } from '../../model/plan.ts';
import { type Context, length } from '../context.ts';
import { drillUnder } from '../tools.ts';

/** `ream`: what finishes it after the drill. */
export type CrossHole = { readonly drill: Len; readonly ream?: Len; readonly refused?: Refusal };

/** A drill and a reamer alike cut their own size and over. Of a feature that says no size: nothing. */
export function crossHoleOf(c: Context, f: SideFeature): CrossHole | undefined {
  const limits = f.size;
  if (f.does !== 'cross-hole' || !limits) return undefined;
  const holds = heldBy(c.workshop.holds ?? []);
  const fits = (process: 'cross-drill' | 'cross-ream', sizes: readonly Len[]): Len | undefined =>
    sizes
      .filter((d) => d >= limits.lo && d + holds(process, 'diameter', 'final', d) <= limits.hi)
      .sort((a, b) => Math.abs(a - limits.target) - Math.abs(b - limits.target) || a - b)[0];
  const drill = fits('cross-drill', c.workshop.tools.drills);
  if (drill !== undefined) return { drill };
  const ream = fits('cross-ream', c.workshop.tools.reamers);
  const under = ream === undefined ? undefined : drillUnder(c.workshop, minus(ream, length('ream.stock')));
  if (ream !== undefined && under !== undefined) return { drill: under, ream };
  return { drill: limits.target, refused: refusalOf(f, limits, holds('cross-drill', 'diameter', 'final', limits.target)) };
}

/** Limits too close for a drill, or wide enough and no drill of that size. */
function refusalOf({ id }: SideFeature, limits: Limits, wants: Len): Refusal {
  const has = minus(limits.hi, limits.lo);
  if (has < wants) return { what: id, because: { rule: 'cross-hole-close', grounds: {} }, has, wants };
  return { what: id, because: { rule: 'cross-hole-size', grounds: {} }, wants: limits.target, lacks: `drill-${limits.target}` };
}
