/**
 * A stage as it will lie on paper but still in millimetres of the work: u along the axis with the headstock on the left, r from the
 * axis (halved here, for drawing only). Questions about outlines: envelope, metal at a place, clipping.
 */
import { UNITS_PER_MM } from '../base/units.ts';
import type { Outline, Point, Polygon, Stage } from '../model/stage.ts';

export type UR = { readonly u: number; readonly r: number };
export type Edge = { readonly a: UR; readonly b: UR; readonly surface: string; readonly made: boolean };
export type Band = {
  readonly polygon: readonly UR[];
  readonly side: 'outside' | 'inside';
  readonly surface: string;
  readonly made: boolean;
};
export type Sketch = {
  readonly loops: readonly (readonly Edge[])[];
  readonly before: readonly (readonly Edge[])[];
  readonly bands: readonly Band[];
  readonly taken: readonly (readonly UR[])[];
  /** Paper's right is this end of the part. */
  readonly out: Stage['out'];
};

export function sketchOf(stage: Stage): Sketch {
  const formerly = new Set(stage.before.flatMap((outline) => outline.map((edge) => edge.by)));
  const edges = (outline: Outline): readonly Edge[] =>
    outline.map((e) => ({
      a: placed(e.a, stage.out),
      b: placed(e.b, stage.out),
      surface: e.surface,
      made: e.by !== '' && !formerly.has(e.by),
    }));
  const before = stage.before.map(edges);
  const now = stage.outlines.map(edges);
  return {
    loops: now,
    before,
    bands: stage.threads.map((t) => {
      const polygon = ring(t.polygon, stage.out);
      return { polygon, side: t.side, surface: t.surface, made: isNewThread(before, now, polygon, t.side) };
    }),
    taken: stage.taken.map((t) => ring(t.polygon, stage.out)),
    out: stage.out,
  };
}

/** z (units) to u (mm), the headstock on the left. Meeting points of lines carry binary dust: here they are rounded to whole units, for drawing only. */
export function along(z: number, out: Stage['out']): number {
  const u = Math.round(out === 'second' ? z : -z) / UNITS_PER_MM;
  return u === 0 ? 0 : u;
}

export function placed(p: Point, out: Stage['out']): UR {
  return { u: along(p.z, out), r: Math.round(p.d) / 2 / UNITS_PER_MM };
}

export function ring(polygon: Polygon, out: Stage['out']): readonly UR[] {
  return polygon.map((p) => placed(p, out));
}

/** Cut in this grip: its root was no wall before, and one of its walls was made now. */
function isNewThread(before: Sketch['before'], now: Sketch['loops'], polygon: readonly UR[], side: Band['side']): boolean {
  const root = rootOf(polygon, side);
  const crest = crestOf(polygon, side);
  const wasThere = before.some((loop) => loop.some((e) => liesAlong(e, polygon, root)));
  return !wasThere && now.some((loop) => loop.some((e) => e.made && (liesAlong(e, polygon, root) || liesAlong(e, polygon, crest))));
}

function liesAlong(e: Edge, polygon: readonly UR[], r: number): boolean {
  const us = polygon.map((p) => p.u);
  return e.a.r === r && e.b.r === r && Math.min(e.a.u, e.b.u) < Math.max(...us) && Math.max(e.a.u, e.b.u) > Math.min(...us);
}

/** Radius of the bottom of the thread's grooves. */
export function rootOf(polygon: readonly UR[], side: Band['side']): number {
  const radii = polygon.map((p) => p.r);
  return side === 'outside' ? Math.min(...radii) : Math.max(...radii);
}

export function crestOf(polygon: readonly UR[], side: Band['side']): number {
  return rootOf(polygon, side === 'outside' ? 'inside' : 'outside');
}

/** The corners of a loop in order; a loop that ends on the axis is closed along it. */
export function corners(loop: readonly Edge[]): readonly UR[] {
  const points = loop.map((e) => e.a);
  const last = loop.at(-1)?.b;
  const first = points[0];
  return last && first && (last.u !== first.u || last.r !== first.r) ? [...points, last] : points;
}

/** Radius of an edge at u; its ends must not be at one u. */
export function radiusAt(e: { readonly a: UR; readonly b: UR }, u: number): number {
  return e.a.r + ((e.b.r - e.a.r) * (u - e.a.u)) / (e.b.u - e.a.u);
}

function spans(e: { readonly a: UR; readonly b: UR }, u: number): boolean {
  return e.a.u < u !== e.b.u < u;
}

/** Whether there is metal at a place that lies on no edge. */
export function metalAt(loops: readonly (readonly Edge[])[], at: UR): boolean {
  const above = loops.flat().filter((e) => spans(e, at.u) && radiusAt(e, at.u) > at.r);
  return above.length % 2 === 1;
}

/** What bounds the work outside or inside, from left to right. Inside: r = 0 where it is solid. Steps are the jumps between pieces. */
export type Piece = { readonly a: UR; readonly b: UR; readonly surface: string; readonly made: boolean };
export function envelope(edges: readonly Edge[], which: 'outer' | 'inner'): readonly Piece[] {
  const stations = [...new Set(edges.flatMap((e) => [e.a.u, e.b.u]))].sort((p, q) => p - q);
  // upright walls span nothing, and the axis bounds nothing
  const walls = edges.filter((e) => e.a.u !== e.b.u && (e.a.r > 0 || e.b.r > 0));
  const pieces: Piece[] = [];
  for (let i = 1; i < stations.length; i++) {
    const [from, to] = [stations[i - 1] ?? 0, stations[i] ?? 0];
    const found = bounding(walls, (from + to) / 2, which);
    if (!found) continue;
    const piece = between(found, { u: from, r: radiusAt(found, from) }, { u: to, r: radiusAt(found, to) });
    const last = pieces.at(-1);
    if (last && last.surface === piece.surface && last.made === piece.made && straightOn(last, piece))
      pieces[pieces.length - 1] = between(piece, last.a, piece.b);
    else pieces.push(piece);
  }
  return pieces;
}

/** The same edge between other ends. (Not by spreading it: that is slow, and a picture has many.) */
export function between({ surface, made }: Edge, a: UR, b: UR): Edge {
  return { a, b, surface, made };
}

function bounding(walls: readonly Edge[], u: number, which: 'outer' | 'inner'): Edge | undefined {
  let first: Edge | undefined;
  let last: Edge | undefined;
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let count = 0;
  for (const e of walls) {
    if (!spans(e, u)) continue;
    count++;
    const r = radiusAt(e, u);
    if (r < least) [first, least] = [e, r];
    if (r >= most) [last, most] = [e, r];
  }
  if (!first || !last) return undefined;
  if (which === 'outer') return last;
  // an odd number of walls: metal reaches the axis
  return count % 2 === 0 ? first : { a: { u: first.a.u, r: 0 }, b: { u: first.b.u, r: 0 }, surface: '', made: false };
}

function straightOn(p: Piece, q: Piece): boolean {
  if (p.b.u !== q.a.u || Math.abs(p.b.r - q.a.r) > FLAT) return false;
  const slope = (e: Piece): number => (e.b.r - e.a.r) / (e.b.u - e.a.u);
  return Math.abs(slope(p) - slope(q)) < FLAT;
}
const FLAT = 1e-6;

/** The part of a polygon right of `u`. Where the cut parts it in two, the pieces stay joined along the cut, which fills the same. */
export function clippedRing(points: readonly UR[], u: number): readonly UR[] {
  return points.flatMap((p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    const meet = p.u < u !== q.u < u ? [{ u, r: radiusAt({ a: p, b: q }, u) }] : [];
    return p.u >= u ? [p, ...meet] : meet;
  });
}

/** The part of an edge right of `u`, if any. */
export function clippedEdge(e: Edge, u: number): readonly Edge[] {
  if (e.a.u < u && e.b.u < u) return [];
  if (e.a.u >= u && e.b.u >= u) return [e];
  const meet = { u, r: radiusAt(e, u) };
  return [e.a.u < u ? between(e, meet, e.b) : between(e, e.a, meet)];
}
