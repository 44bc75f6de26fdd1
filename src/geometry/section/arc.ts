/**
 * An arc as a chain of chords: its corners lie on the circle and are whole units, so that lines, painting and proof need know no circles.
 * No chord lies farther from the circle than `CHORD_ERROR` (1 um, the corners' rounding included).
 */
import type { SurfaceId } from '../../model/ids.ts';
import type { Arc, Part } from '../../model/part.ts';
import type { Edge, Outline, Point } from '../../model/stage.ts';
import type { Line } from './lines.ts';

/** In units of 0.1 um. */
export const CHORD_ERROR = 10;
/** Of this the rounding of the corners takes at most one unit each way. */
const SAGITTA = CHORD_ERROR - 2;

/** Chords to a quarter of a circle of that diameter, in units: sagitta = radius (1 - cos(half the angle of a chord)). */
export function chordsOf(across: number): number {
  const half = Math.acos(1 - Math.min(1, SAGITTA / (across / 2)));
  return Math.max(2, Math.ceil(Math.PI / 4 / half));
}

/**
 * Corners from the face at `z` to the cylinder of diameter `d`, for a circle of diameter `across`. How many there are goes by the drawing's
 * greatest limit, so that it is the same at every corner of the limits.
 */
export function arcPoints(arc: Arc, z: number, d: number, across: number): readonly Point[] {
  const chords = chordsOf(arc.across.hi);
  const along = arc.into === 'second' ? 1 : -1;
  const up = opensUp(arc) ? 1 : -1;
  return Array.from({ length: chords + 1 }, (_, i): Point => {
    const angle = (i / chords) * (Math.PI / 2);
    const [out, in_] = i === chords ? [1, 1] : [1 - Math.cos(angle), Math.sin(angle)];
    return { z: z + along * Math.round((across / 2) * out), d: d + up * Math.round(across * (1 - in_)) };
  });
}

/** A fillet outside and the mouth of a bore are wider at the face than along the cylinder; a rounded edge and a bore's fillet narrower. */
const opensUp = (arc: Arc): boolean => (arc.bends === 'fillet') === (arc.side === 'outside');

/** The line through two corners of a chain. */
export const chordLine = (a: Point, b: Point): Line => ({ z: a.z, d: a.d, slope: (b.d - a.d) / (b.z - a.z) });

/** The part's ring without its arcs: every corner sharp. */
export const sharpRing = (part: Part): readonly SurfaceId[] =>
  part.ring.filter((id) => part.surfaces.find((one) => one.id === id)?.shape !== 'arc');

/** An outline of sharp corners with each arc put into its corner, at the drawing's targets. */
export function withArcs(part: Part, sharp: Outline): Outline {
  return part.surfaces.reduce<Outline>((outline, one) => (one.shape === 'arc' ? withArc(part, outline, one) : outline), sharp);
}

function withArc(part: Part, outline: Outline, arc: Arc): Outline {
  const [face, cylinder] = [arc.at, arc.until].map((id) => part.surfaces.find((one) => one.id === id));
  if (face?.shape !== 'face' || cylinder?.shape !== 'cylinder') throw new Error(`arc '${arc.id}' joins no face to a cylinder`);
  const points = arcPoints(arc, face.z, cylinder.size.target, arc.across.target);
  const names = [arc.at, arc.until];
  return outline.flatMap((edge, i): readonly Edge[] => {
    const [last, next] = [outline.at(i - 1), outline[(i + 1) % outline.length]];
    const meets = (other: Edge | undefined): boolean =>
      other !== undefined && other.surface !== edge.surface && names.includes(edge.surface) && names.includes(other.surface);
    const own = edge.surface === arc.at ? points[0] : points.at(-1);
    const kept = { ...edge, ...(meets(last) && own ? { a: own } : {}), ...(meets(next) && own ? { b: own } : {}) };
    return meets(next) ? [kept, ...chainEdges(edge.surface === arc.at ? points : [...points].reverse(), arc.id)] : [kept];
  });
}

const chainEdges = (points: readonly Point[], surface: SurfaceId): readonly Edge[] =>
  points.slice(1).flatMap((b, i) => {
    const a = points[i];
    return a ? [{ a, b, surface, stage: 'final', by: '' } as const] : [];
  });
