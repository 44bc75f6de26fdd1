/** Where on the drawn work a surface may be pointed at, and where an extension line of its face may begin. */
import type { OpId } from '../model/ids.ts';
import type { Point, Stage } from '../model/stage.ts';
import type { XY } from './display.ts';
import { type Half, onPaper, type Paper } from './paper.ts';
import { clippedEdge, crestOf, type Edge, radiusAt, type Sketch, type UR } from './sketch.ts';

/** Shares of an edge at which a leader may end, the middle first. */
const SHARES = [0.5, 0.3, 0.7] as const;
/** Two places this near (mm of work) are one. */
const NEAR = 1e-4;

/** Points on a surface's edges: all on the cut half, what is seen from outside on the lower one. Empty where it has no edge. */
export function anchorsOf(sketch: Sketch, surface: string, paper: Paper, from: number): readonly XY[] {
  if (surface === '') return [];
  const shown = edgesOf(sketch, surface).flatMap((e) => clippedEdge(e, from));
  const points = shown.flatMap((e) => SHARES.map((t) => pointOn(e, t)));
  return halvesOf(
    sketch,
    points.filter((p) => p.r > 0),
    paper,
  );
}

/** A point given by hand, on both halves where it may be seen. */
export function halvesOf(sketch: Sketch, points: readonly UR[], paper: Paper): readonly XY[] {
  return points.flatMap((p) => {
    const halves: readonly Half[] = isSilhouette(sketch, p) ? ['above', 'below'] : ['above'];
    return halves.map((half) => onPaper(paper, p, half));
  });
}

function edgesOf(sketch: Sketch, surface: string): readonly Edge[] {
  const bands = sketch.bands.filter((b) => b.surface === surface);
  if (bands.length === 0) return sketch.loops.flat().filter((e) => e.surface === surface);
  return bands.map((band) => {
    const us = band.polygon.map((p) => p.u);
    const r = crestOf(band.polygon, band.side);
    return { a: { u: Math.min(...us), r }, b: { u: Math.max(...us), r }, surface, made: band.made };
  });
}

function pointOn(e: Edge, t: number): UR {
  return { u: e.a.u + (e.b.u - e.a.u) * t, r: e.a.r + (e.b.r - e.a.r) * t };
}

/** Nothing of the work stands further out, at least on one side of the point. */
export function isSilhouette(sketch: Sketch, p: UR): boolean {
  const walls = wallsOf(sketch);
  const covered = (u: number): boolean => walls.some((e) => e.a.u < u !== e.b.u < u && radiusAt(e, u) > p.r + 2 * NEAR);
  return !covered(p.u - NEAR) || !covered(p.u + NEAR);
}

/** The work's edges and those of threads that stand out of it; put together once a sketch. */
function wallsOf(sketch: Sketch): readonly Edge[] {
  const walls = known.get(sketch) ?? [...sketch.loops.flat(), ...bandCrests(sketch)];
  known.set(sketch, walls);
  return walls;
}
const known = new WeakMap<Sketch, readonly Edge[]>();

function bandCrests(sketch: Sketch): readonly Edge[] {
  return sketch.bands
    .filter((b) => b.side === 'outside')
    .flatMap((b) => b.polygon.map((a, i) => ({ a, b: b.polygon[(i + 1) % b.polygon.length] ?? a, surface: b.surface, made: b.made })));
}

/** Largest radius of the work's own corners at u; else of the silhouette there; 0 where there is no work. */
export function rimAt(sketch: Sketch, u: number): number {
  let [corner, wall] = [Number.NEGATIVE_INFINITY, 0];
  for (const e of wallsOf(sketch)) {
    if (Math.abs(e.a.u - u) < NEAR) corner = Math.max(corner, e.a.r);
    if (Math.abs(e.b.u - u) < NEAR) corner = Math.max(corner, e.b.r);
    if (e.a.u < u !== e.b.u < u) wall = Math.max(wall, radiusAt(e, u));
  }
  return corner === Number.NEGATIVE_INFINITY ? wall : corner;
}

/** How far out the work reached before, where nothing is left of it at u; 0 where there was none. */
export function barAt(sketch: Sketch, u: number): number {
  const over = sketch.before.flat().filter((e) => e.a.u < u !== e.b.u < u);
  return Math.max(0, ...over.map((e) => radiusAt(e, u)));
}

/** Middles of the edges that an operation left; where it left none, of the metal that it took. */
export function workOf(stage: Stage, by: OpId): readonly Point[] {
  const left = stage.outlines.flat().filter((e) => e.by === by);
  if (left.length > 0) return left.map((e) => between(e.a, e.b));
  return stage.taken
    .filter((t) => t.by === by)
    .flatMap((t) => t.polygon.map((p, i) => between(p, t.polygon[(i + 1) % t.polygon.length] ?? p)));
}

function between(a: Point, b: Point): Point {
  return { z: (a.z + b.z) / 2, d: (a.d + b.d) / 2 };
}
