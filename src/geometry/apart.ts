/** How near and how far from one another any two faces of a part may come, at whatever limits of its drawing together. */
import { type Len, len } from '../base/units.ts';
import type { SurfaceId } from '../model/ids.ts';
import type { Part } from '../model/part.ts';
import type { Pair } from './chain.ts';
import { drawnDimensions, facesOf } from './places.ts';

/** z(b) - z(a) at its least and at its most, whole units. Throws Error when either is no face of the part. */
export type Apart = (a: SurfaceId, b: SurfaceId) => Pair;

/**
 * Every dimension of the drawing is a bound to either side; what two faces are held to by several of them is the shortest path (Bellman,
 * "On a routing problem", 1958, of systems of differences). `tolerance`: of a length that the drawing does not state, to either side.
 */
export function apartIn(part: Part, tolerance: (length: Len) => Len): Apart {
  const faces = facesOf(part);
  const place = new Map(faces.map((face, i) => [face.id, i]));
  const most = faces.map((_, i) => faces.map((__, k) => (i === k ? 0 : Number.POSITIVE_INFINITY)));
  const bound = (a: number, b: number, by: number): void => {
    const row = most[a];
    if (row) row[b] = Math.min(row[b] ?? by, by);
  };
  for (const { dimension } of drawnDimensions(part, tolerance)) {
    const [a, b] = [place.get(dimension.a) ?? 0, place.get(dimension.b) ?? 0];
    bound(a, b, dimension.limits.hi);
    bound(b, a, -dimension.limits.lo);
  }
  const over = (a: number, b: number): number => most[a]?.[b] ?? Number.POSITIVE_INFINITY;
  for (const [by] of faces.entries())
    for (const [a] of faces.entries()) for (const [b] of faces.entries()) bound(a, b, over(a, by) + over(by, b));
  return (a, b) => {
    const [from, to] = [place.get(a), place.get(b)];
    if (from === undefined || to === undefined) throw new Error(`${part.id}: '${a}' or '${b}' is no face`);
    return { lo: len(-over(to, from)), hi: len(over(from, to)) };
  };
}
