/** Claims about the end: the ring is the drawing's, every surface stays, every dimension is inside its limits at its worst corners. */

import { type Len, len } from '../../base/units.ts';
import { pointedOver } from '../../geometry/nominal.ts';
import { type Finished, sameRing } from '../../geometry/ring.ts';
import { steepness } from '../../geometry/section/lines.ts';
import { POINT_ANGLE } from '../../handbook/drills.ts';
import type { SurfaceId } from '../../model/ids.ts';
import type { Cone, Feature, Limits, Part, Surface } from '../../model/part.ts';
import type { Claim } from '../../model/plan.ts';
import { type Case, claim, figure, short, show, whole } from './claims.ts';
import type { Corner, Corners, Measure } from './corners.ts';

export function endClaims(asked: Case, corners: Corners): readonly Claim[] {
  const { part } = asked;
  const dimensions = [
    ...part.dimensions.map((one) => dimensionClaim(part, one, corners)),
    ...part.surfaces.flatMap((one) => diameterClaims(part, one, corners)),
    ...part.features.flatMap((one) => pointClaims(part, one, corners)),
  ];
  const stays = part.surfaces.filter((one) => !isBlank(one)).map((one) => staysClaim(part, one, corners));
  return [shapeClaim(part, corners), ...stays, ...dimensions];
}

// ---- shape --------------------------------------------------------------------------------------------------------------------
/** Judged last in time: by then every corner that any other claim asked for has been replayed. */
function shapeClaim(part: Part, corners: Corners): Claim {
  const base = corners.base.finished;
  const rough = part.surfaces.filter((one) => isRough(one, base)).map((one) => short(part.id, one.id));
  const changed = corners.changed(part.ring);
  const more = base.ring.filter((name) => !part.ring.includes(name));
  const less = part.ring.filter((name) => !base.ring.includes(name));
  const same = sameRing(base.ring, part.ring);
  const names = (ids: readonly string[]): string => ids.map((id) => short(part.id, id) || '\u2013').join(', ');
  return claim('shape', part.id, same && rough.length === 0 && base.pieces === 1 && changed === undefined, {
    surfaces: part.ring.length,
    pieces: base.pieces,
    same,
    more: names(more),
    less: names(less),
    rough: rough.join(', '),
    corner: changed === undefined || !same ? '' : cornerText(part, changed),
  });
}

function isRough(surface: Surface, base: Finished): boolean {
  const stages = base.extents.get(surface.id)?.stages;
  if (!stages) return false;
  const asBar = surface.shape === 'cylinder' && surface.asStock === true;
  return stages.has('rough') || (stages.has('bar') && !asBar);
}

export function cornerText(part: Part, corner: Corner): string {
  const ids = Object.keys(corner);
  return ids.map((id) => `${short(part.id, id)} ${corner[id] === 'hi' ? '+' : '\u2212'}`).join(', ');
}

// ---- surfaces -----------------------------------------------------------------------------------------------------------------
/** Along z for cylinders and cones, across for faces. */
function lengthOf(surface: Surface): Measure {
  return (finished) => {
    const extent = finished.extents.get(surface.id);
    if (!extent) return 0;
    const [lo, hi] = surface.shape === 'face' ? extent.d : extent.z;
    return hi - lo;
  };
}

function staysClaim(part: Part, surface: Surface, corners: Corners): Claim {
  const least = figure('proof.surface.least');
  const { lo, at } = corners.least(lengthOf(surface));
  const grounds = { surface: short(part.id, surface.id), length: show(lo ?? 0), least: show(least), corner: cornerText(part, at) };
  return claim('every surface stays', surface.id, (lo ?? 0) >= least, grounds);
}

// ---- dimensions ---------------------------------------------------------------------------------------------------------------
function dimensionClaim(part: Part, dimension: Part['dimensions'][number], corners: Corners): Claim {
  return measureClaim(part, dimension.id, dimension.limits, corners, {
    lo: between(dimension.a, dimension.b, 'near'),
    hi: between(dimension.a, dimension.b, 'far'),
  });
}

/** From face to face; where a face does not stand all in one place, the nearest and the farthest that it can be measured. */
function between(a: SurfaceId, b: SurfaceId, how: 'near' | 'far'): Measure {
  return (finished) => {
    const [p, q] = [finished.extents.get(a), finished.extents.get(b)];
    if (!p || !q) return undefined;
    return how === 'near' ? q.z[0] - p.z[1] : q.z[1] - p.z[0];
  };
}

function diameterClaims(part: Part, surface: Surface, corners: Corners): readonly Claim[] {
  if (surface.shape === 'face' || isBlank(surface)) return [];
  if (surface.shape === 'cylinder') {
    const across =
      (i: 0 | 1): Measure =>
      (finished) =>
        finished.extents.get(surface.id)?.level?.[i];
    return [measureClaim(part, surface.id, surface.size, corners, { lo: across(0), hi: across(1) })];
  }
  if (surface.shape === 'arc') return [measureClaim(part, surface.id, surface.across, corners, circle(surface.id))];
  const mouth: Measure = (finished) => finished.extents.get(surface.id)?.d[surface.side === 'outside' ? 0 : 1];
  return [measureClaim(part, surface.id, surface.mouth, corners, { lo: mouth, hi: mouth }), ...largeEnd(part, surface, corners)];
}

/** Turned only to be cut away by its tapers. */
const isBlank = (surface: Surface): boolean => surface.shape === 'cylinder' && surface.blank === true;

/** Of a taper that runs out: as large as the drawing has it, where it ends. */
function largeEnd(part: Part, { id, ends }: Cone, corners: Corners): readonly Claim[] {
  const across: Measure = (finished) => finished.extents.get(id)?.d[1];
  return ends ? [measureClaim(part, `${id}.large-end`, ends.size, corners, { lo: across, hi: across })] : [];
}

/**
 * Where a smaller hole goes on, what is left of the larger drill's point is a cone as long as its angle makes it between the two diameters,
 * whatever these come to within their limits.
 */
function pointClaims(part: Part, feature: Feature, corners: Corners): readonly Claim[] {
  const step = pointedOver(part, feature);
  if (!step) return [];
  const { wide, narrow } = step;
  const run = (narrows: number): Len => len(Math.round(narrows / steepness(POINT_ANGLE)));
  const limits: Limits = {
    lo: run(wide.size.lo - narrow.size.hi),
    hi: run(wide.size.hi - narrow.size.lo),
    target: run(wide.size.target - narrow.size.target),
    from: wide.size.from,
  };
  const long: Measure = (finished) => {
    const slant = finished.extents.get(wide.id)?.slant;
    return slant ? slant[1] - slant[0] : 0;
  };
  return [measureClaim(part, `${wide.id}.point`, limits, corners, { lo: long, hi: long })];
}

/** Twice the arc's extent along the axis, or its extent in diameter: each is its circle's diameter where it is a quarter of one. */
function circle(id: SurfaceId): Both {
  const both =
    (pick: (...of: readonly number[]) => number): Measure =>
    (finished) => {
      const extent = finished.extents.get(id);
      return extent && pick(2 * (extent.z[1] - extent.z[0]), extent.d[1] - extent.d[0]);
    };
  return { lo: both(Math.min), hi: both(Math.max) };
}

type Both = { readonly lo: Measure; readonly hi: Measure };
function measureClaim(part: Part, about: string, limits: Limits, corners: Corners, measures: Both): Claim {
  const [low, high] = [corners.least(measures.lo), corners.most(measures.hi)];
  const there = low.lo !== undefined && high.hi !== undefined;
  const [lo, hi] = [whole(low.lo ?? 0), whole(high.hi ?? 0)];
  const holds = there && lo >= limits.lo && hi <= limits.hi;
  const grounds = { what: short(part.id, about), there, lo: show(lo), hi: show(hi), asksLo: show(limits.lo), asksHi: show(limits.hi) };
  const failing: Corner = lo < limits.lo ? low.at : high.at;
  const made = claim('dimension', about, holds, { ...grounds, corner: cornerText(part, failing) });
  const worst = { lo: len(lo), hi: len(hi), limits, corner: failing, corners: { lo: low.at, hi: high.at } };
  return there ? { ...made, worst } : made;
}
