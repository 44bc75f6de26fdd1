/** What lies under a hold or behind it, and what makes the face that it rests on. */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { End, SurfaceId } from '../../model/ids.ts';
import type { Arc, Cone } from '../../model/part.ts';
import type { Grip, Operation, Refusal } from '../../model/plan.ts';
import { type Context, coneRun } from '../context.ts';
import type { GripRule, Work } from '../rule.ts';

type Offered = ReturnType<GripRule['offer']>;

export const makes = (k: Operation, face: SurfaceId): boolean =>
  k.verb !== 'part-off' &&
  k.verb !== 'saw-off' &&
  Object.values(k.ways).some((w) => w.cuts.some((cut) => cut.makes === face && cut.stage === 'final'));

/** What lies under the jaws or behind them cannot be cut. Holes are reached from the out end and do not count. */
export function hiddenBehind(work: Work, out: End, front: Len): readonly string[] {
  return work.operations
    .filter((k) => {
      const s = outsideStretch(work, k);
      if (!s) return false;
      return out === 'first' ? s.to > front : s.from < front;
    })
    .map((k) => k.id);
}

export function outsideStretch(work: Work, k: Operation): { readonly from: Len; readonly to: Len } | undefined {
  const f = work.c.part.features.find((p) => p.id === k.feature);
  if (!f) return undefined;
  if (f.kind === 'outside') return work.c.cylinder(f.cylinder);
  if (f.kind === 'groove' && f.side === 'outside') return work.c.cylinder(f.floor);
  if (f.kind === 'thread' && f.side === 'outside') return f;
  if (f.kind === 'cone' && work.c.cone(f.cone).side === 'outside') {
    const at = work.c.face(work.c.cone(f.cone).at).z;
    return { from: at, to: at };
  }
  const arc = f.kind === 'arc' ? work.c.surface(f.arc) : undefined;
  if (arc?.shape !== 'arc' || arc.side === 'inside') return undefined;
  const at = work.c.face(arc.at).z;
  const far = arc.into === 'second' ? add(at, len(arc.across.hi / 2)) : minus(at, len(arc.across.hi / 2));
  return { from: len(Math.min(at, far)), to: len(Math.max(at, far)) };
}

export function sorted(candidates: readonly (Grip | Refusal)[]): Offered {
  const isGrip = (x: Grip | Refusal): x is Grip => 'kind' in x;
  return { grips: candidates.filter(isGrip), refused: candidates.filter((x): x is Refusal => !isGrip(x)) };
}

/**
 * A cone or arc at either end of a stretch, cut or still to be cut, is nothing to hold by. `extreme`: the diameter of the surface at the limit at
 * which a cone reaches farthest along it.
 */
export function plainOf(c: Context, on: SurfaceId, stretch: Stretch, extreme: Len): Stretch {
  const taken = c.part.surfaces.flatMap((one): readonly Taken[] => {
    if (one.shape === 'face' || one.shape === 'cylinder' || one.until !== on) return [];
    return [{ into: one.into, z: c.face(one.at).z, depth: farthest(one, extreme) }];
  });
  return taken.reduce((left, { into, z, depth }) => {
    if (into === 'second') return z === stretch.from ? { from: add(left.from, depth), to: left.to } : left;
    return z === stretch.to ? { from: left.from, to: minus(left.to, depth) } : left;
  }, stretch);
}
export type Stretch = { readonly from: Len; readonly to: Len };

/** How far it reaches along the axis, at the limits at which that is most. */
function farthest(one: Cone | Arc, extreme: Len): Len {
  if (one.shape === 'arc') return len(one.across.hi / 2);
  const mouth = one.side === 'outside' ? one.mouth.lo : one.mouth.hi;
  return coneRun({ ...one, mouth: { ...one.mouth, target: mouth } }, extreme);
}
type Taken = { readonly into: End; readonly z: Len; readonly depth: Len };
