/** Tools in the tailstock: they run along the axis, and are seen above it, where the work is cut; behind the work they are whole. */
import { len } from '../../base/units.ts';
import { type Band, clippedRing, type Edge, rootOf, type Sketch, type UR } from '../sketch.ts';
import type { ToolShown } from '../view.ts';
import { BODY, CLEAR, FLANK, type Outline, type Place, radiusOf } from './place.ts';

/** Seen where the work is cut, above the axis; behind the work both its halves are. */
export function axial({ form, diameter = len(0), point }: ToolShown, place: Place): readonly Outline[] {
  const across = form === 'tap' ? tapped(place) : radiusOf(diameter);
  const walls = wallsAt(place, across);
  if (walls.length === 0) return [];
  const r = Math.max(across - place.mm(CLEAR), across / 2);
  return alongAxis(place, nose(Math.min(...walls), r, point, place.mm(CLEAR)), r);
}

/** As its hole is, and on from there by the same cone to its body. `diameter`: of that. */
export function centre({ diameter = len(0) }: ToolShown, place: Place): readonly Outline[] {
  const clear = place.mm(CLEAR) / Math.sin(Math.PI / 6);
  const corners = place.made.flatMap((e) => [e.a, e.b]).sort((p, q) => p.u - q.u || p.r - q.r);
  const mouth = corners.at(-1);
  if (!mouth) return [];
  const body = Math.max(radiusOf(diameter), mouth.r);
  const hole = corners.map((p) => ({ u: p.u + clear, r: p.r }));
  return alongAxis(place, [...hole, { u: mouth.u + clear + (body - mouth.r) / FLANK, r: body }], body);
}

/** The crests of a tap are the roots of its thread. */
const tapped = ({ sketch }: Place): number => Math.max(0, ...threadsIn(sketch).map((b) => rootOf(b.polygon, 'inside')));
const threadsIn = (sketch: Sketch): readonly Band[] => sketch.bands.filter((b) => b.made && b.side === 'inside');

/** From the axis out to that radius: a point, or flat and a little short of the floor. */
function nose(floor: number, r: number, point: number | undefined, clear: number): readonly UR[] {
  const [tip, shoulder] = point === undefined ? [floor + clear, floor + clear] : [floor - r / Math.tan((point * Math.PI) / 360), floor];
  return [
    { u: tip, r: 0 },
    { u: shoulder, r },
  ];
}

/** What of it lies where the work is broken away is not seen. */
function alongAxis({ shown, mm, out }: Place, front: readonly UR[], r: number): readonly Outline[] {
  const end = Math.max(shown.right, ...front.map((p) => p.u)) + mm(out.end);
  const whole = [...front, { u: end, r }, { u: end, r: 0 }];
  const cutAt = shown.cutAt ?? Number.NEGATIVE_INFINITY;
  const seen = clippedRing(whole, cutAt);
  const behind = clippedRing(whole, shown.right);
  const tip = front[0]?.u ?? end;
  return [
    { half: 'above', ring: seen, edge: seen.filter((p) => p.r > 0 || (p.u === tip && tip >= cutAt)) },
    { half: 'below', ring: behind, edge: behind.filter((p) => p.r > 0) },
  ];
}

/** Along the axis, the ends of what is new at that radius; of a thread, where there is none. */
function wallsAt({ made, sketch }: Place, radius: number): readonly number[] {
  const near = (e: Edge): boolean => e.a.u !== e.b.u && [e.a, e.b].every((p) => Math.abs(p.r - radius) < radius / 20);
  const walls = made.filter(near).flatMap((e) => [e.a.u, e.b.u]);
  return walls.length > 0 ? walls : threadsIn(sketch).flatMap((b) => b.polygon.map((p) => p.u));
}

/** Over the thread, as far as that goes; cut through above as it is below. */
export function die(_: ToolShown, { sketch, mm, out }: Place): readonly Outline[] {
  const band = sketch.bands.find((b) => b.made && b.side === 'outside');
  if (!band) return [];
  const left = Math.min(...band.polygon.map((p) => p.u));
  const low = Math.max(...band.polygon.map((p) => p.r)) + mm(CLEAR);
  const [right, high] = [left + mm(BODY.wide), low + mm(out.side)];
  const ring = [
    { u: left, r: low },
    { u: left, r: high },
    { u: right, r: high },
    { u: right, r: low },
    { u: left, r: low },
  ];
  return (['above', 'below'] as const).map((half) => ({ half, ring }));
}
