/**
 * Where each face of a part is aimed at: the middles of the drawing's dimensions, laid one to another. Faces that the drawing does not
 * place get a general tolerance from the nearest face, so that every face hangs on every other by exactly one chain.
 */
import { type Len, len } from '../base/units.ts';
import type { SurfaceId } from '../model/ids.ts';
import type { Dimension, Face, Part } from '../model/part.ts';

/** `spans`: it places a face; the others only bound a sum that is placed already. */
export type Drawn = { readonly dimension: Dimension; readonly spans: boolean };

/**
 * All dimensions of the drawing between faces, the narrowest placed first, and the general ones that are needed to join the rest.
 * `tolerance`: of a length, to either side. Throws Error when a dimension names a surface that is no face of the part.
 */
export function drawnDimensions(part: Part, tolerance: (length: Len) => Len): readonly Drawn[] {
  const faces = facesOf(part);
  const joined = joiner(faces.map((face) => face.id));
  const ring = new Map(faces.map((face, i) => [face.id, i]));
  const along = (a: Dimension, b: Dimension): number =>
    (ring.get(a.a) ?? 0) - (ring.get(b.a) ?? 0) || (ring.get(a.b) ?? 0) - (ring.get(b.b) ?? 0);
  const stated = [...part.dimensions].sort((a, b) => bandOf(a) - bandOf(b) || along(a, b));
  const drawn = stated.map((dimension): Drawn => ({ dimension, spans: joined.join(dimension.a, dimension.b) }));
  const pairs = faces.flatMap((a, i) =>
    faces.slice(i + 1).map((b) => (a.z <= b.z ? { a, b, apart: b.z - a.z } : { a: b, b: a, apart: a.z - b.z })),
  );
  pairs.sort((p, q) => p.apart - q.apart);
  for (const { a, b } of pairs)
    if (joined.join(a.id, b.id)) drawn.push({ dimension: generalDimension(part, a, b, tolerance), spans: true });
  return drawn;
}

/** z to aim at, by face: the middle of each dimension that spans, from the face nearest the first end. */
export function placeFaces(part: Part, drawn: readonly Drawn[]): ReadonlyMap<SurfaceId, Len> {
  const [start] = [...facesOf(part)].sort((a, b) => a.z - b.z);
  const places = new Map<SurfaceId, Len>();
  if (!start) return places;
  places.set(start.id, start.z);
  const waiting = drawn.filter((one) => one.spans).map((one) => one.dimension);
  for (let found = true; found; ) {
    found = false;
    for (const { a, b, limits } of waiting) {
      const [at, bt, middle] = [places.get(a), places.get(b), middleOf(limits.lo, limits.hi)];
      if (at !== undefined && bt === undefined) places.set(b, len(at + middle));
      else if (bt !== undefined && at === undefined) places.set(a, len(bt - middle));
      else continue;
      found = true;
    }
  }
  return places;
}

/** The middle in whole units; the odd unit falls to the greater side. */
export function middleOf(lo: number, hi: number): number {
  return Math.floor((lo + hi) / 2);
}

/** Faces in the order of the ring, then of the list: never by name. */
export function facesOf(part: Part): readonly Face[] {
  const faces = part.surfaces.filter((surface) => surface.shape === 'face');
  const place = (face: Face): number => (part.ring.includes(face.id) ? part.ring.indexOf(face.id) : part.ring.length);
  return [...faces].sort((a, b) => place(a) - place(b));
}

const bandOf = (dimension: Dimension): number => dimension.limits.hi - dimension.limits.lo;
/** A surface's own name within its part. */
export const shortName = (part: Part, id: SurfaceId): string => (id.startsWith(`${part.id}/`) ? id.slice(part.id.length + 1) : id);

function generalDimension(part: Part, a: Face, b: Face, tolerance: (length: Len) => Len): Dimension {
  const target = len(b.z - a.z);
  const half = tolerance(target);
  const limits = { lo: len(target - half), hi: len(target + half), target, from: { kind: 'general', as: 'ISO 2768-1 m' } } as const;
  return { id: `${part.id}/${shortName(part, a.id)}-${shortName(part, b.id)}.general`, a: a.id, b: b.id, limits };
}

type Joiner = { join(a: SurfaceId, b: SurfaceId): boolean };

/** Says whether the two were apart until now, and joins them. */
function joiner(ids: readonly SurfaceId[]): Joiner {
  const parent = new Map(ids.map((id) => [id, id]));
  const root = (id: SurfaceId): SurfaceId => {
    const up = parent.get(id);
    if (up === undefined) throw new Error(`'${id}' is no face of the part`);
    return up === id ? id : root(up);
  };
  return {
    join(a, b) {
      const [ra, rb] = [root(a), root(b)];
      if (ra !== rb) parent.set(ra, rb);
      return ra !== rb;
    },
  };
}
