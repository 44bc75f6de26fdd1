/** The work itself: cut and hatched above the axis, seen from outside below; what was there before; what this grip made. */
import type { Item } from '../model/display.ts';
import { line, polygon, polygons, polyline, type Stroke } from './display.ts';
import { type Hatch, hatched } from './hatch.ts';
import { across, FORMER, HATCHED, type Half, type Layer, level, MADE, NARROW, onPaper, type Paper, ringOnPaper, WIDE } from './paper.ts';
import {
  type Band,
  between,
  clippedEdge,
  clippedRing,
  corners,
  type Edge,
  envelope,
  type Piece,
  rootOf,
  type Sketch,
  type UR,
} from './sketch.ts';
import type { Window } from './window.ts';

const WORK_HATCH: Hatch = { pitch: 1.2, lean: 1 };
/** How far the wave of a break line swings, as a share of the radius there. */
const WAVE = 0.12;
const WAVE_STEPS = Array.from({ length: 13 }, (_, i) => i / 12);
const NEAR = 1e-6;

export function drawWork(sketch: Sketch, window: Window, paper: Paper): Layer {
  const cutAt = window.cutAt ?? Number.NEGATIVE_INFINITY;
  const seen = (edges: readonly Edge[]): readonly Edge[] => edges.flatMap((e) => clippedEdge(e, cutAt));
  const now = seen(sketch.loops.flat());
  const rimAtBreak = window.cutAt === undefined ? 0 : Math.max(0, envelope(now, 'outer')[0]?.a.r ?? 0);
  const metal = [...sketch.loops.map(corners), ...sketch.bands.map((b) => b.polygon)]
    .map((ring) => broken(clippedRing(ring, cutAt), cutAt, rimAtBreak))
    .filter((r) => r.length > 2);
  const outside = [...now, ...seen(sketch.bands.filter((b) => b.side === 'outside').flatMap(bandEdges))];
  const inside = [...now, ...seen(sketch.bands.filter((b) => b.side === 'inside').flatMap(bandEdges))];
  const outer = envelope(outside, 'outer');
  const former = seen(sketch.before.flat());
  const curved = curvedIn(now);
  const bands = sketch.bands.map((b) => ({ ...b, polygon: clippedRing(b.polygon, cutAt) })).filter((b) => b.polygon.length > 2);
  return {
    items: [
      ...takenArea(
        sketch.taken.map((ring) => clippedRing(ring, cutAt)),
        paper,
      ),
      ...drawFaces(metal, outer, paper),
      ...boreLines(envelope(inside, 'inner'), curved, window, paper),
      ...formerLines(former, window, paper),
      ...outsideView(outer, now, curved, window, paper),
      ...bands.flatMap((band) => bandLines(band, paper)),
      ...sectionLines(now, bands, paper),
      ...(window.cutAt === undefined ? [] : breakLine(metal, window.cutAt, rimAtBreak, paper)),
    ],
    boxes: workBoxes([...outside, ...former], paper),
  };
}

/** One path, all rings one way round, so that no seam shows between neighbours. */
function takenArea(rings: readonly (readonly UR[])[], paper: Paper): readonly Item[] {
  const shown = rings
    .filter((ring) => ring.length > 2)
    .map((ring) => ringOnPaper(paper, area(ring) < 0 ? [...ring].reverse() : ring, 'above'));
  return shown.length === 0 ? [] : [polygons(shown, { fill: 'taken' })];
}

function area(ring: readonly UR[]): number {
  return ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return sum + p.u * q.r - q.u * p.r;
  }, 0);
}

/** White under the work, so that it hides what holds it; then the hatching of the cut face. */
function drawFaces(metal: readonly (readonly UR[])[], outer: readonly Piece[], paper: Paper): readonly Item[] {
  const rings = metal.map((ring) => ringOnPaper(paper, ring, 'above'));
  const below = outer.map((p) => [{ u: p.a.u, r: 0 }, p.a, p.b, { u: p.b.u, r: 0 }]);
  return [
    ...rings.map((ring) => polygon(ring, { fill: 'white' })),
    ...below.map((ring) => polygon(ringOnPaper(paper, ring, 'below'), { fill: 'white' })),
    // one by one: a thread band that lies on the metal must not count as a hole in it; lines of one lattice fall on each other
    ...rings.flatMap((ring) => hatched(ring, WORK_HATCH, HATCHED)),
  ];
}

/** Edges of the cut face; roots of threads are left to the narrow lines. */
function sectionLines(now: readonly Edge[], bands: readonly Band[], paper: Paper): readonly Item[] {
  const edges = now.filter((e) => !onAxis(e) && !bands.some((band) => onRoot(e, band)));
  return strokes(edges, paper, 'above');
}

/** Wide lines first, then what is new on top. */
function strokes(edges: readonly Edge[], paper: Paper, half: Half): readonly Item[] {
  const drawn = (made: boolean, stroke: Stroke): readonly Item[] =>
    chains(edges.filter((e) => e.made === made)).map((chain) => polyline(ringOnPaper(paper, chain, half), stroke));
  return [...drawn(false, WIDE), ...drawn(true, MADE)];
}

/** Edges that follow each other as one line, so that corners are mitred. */
function chains(edges: readonly Edge[]): readonly (readonly UR[])[] {
  const found: UR[][] = [];
  for (const e of edges) {
    const chain = found.at(-1);
    const end = chain?.at(-1);
    if (chain && end && end.u === e.a.u && end.r === e.a.r) chain.push(e.b);
    else found.push([e.a, e.b]);
  }
  return found;
}

/** Below the axis: the silhouette, and an upright line at every corner of it. */
function outsideView(
  outer: readonly Piece[],
  now: readonly Edge[],
  curved: ReadonlySet<string>,
  window: Window,
  paper: Paper,
): readonly Item[] {
  const uprights = steps(outer, curved).filter((s) => s.u !== window.cutAt);
  const jumps = uprights.filter((s) => s.high > s.low + NEAR).map((s) => jumpEdge(s, now));
  const faint = uprights.filter((s) => s.low > 0 && !s.smooth).map((s) => upright(s.u, 0, s.low, paper, 'below'));
  return [...faint, ...strokes(mergedOrder([...outer, ...jumps]), paper, 'below')];
}

/** `smooth`: what is lower there curves into it, so that no edge is seen. */
type Step = { readonly u: number; readonly low: number; readonly high: number; readonly smooth?: boolean };
/** Where the silhouette jumps or bends; its two ends count as jumps from the axis. */
function steps(pieces: readonly Piece[], curved: ReadonlySet<string>): readonly Step[] {
  const found: Step[] = [];
  const ends = [...pieces, undefined];
  ends.forEach((next, i) => {
    const last = pieces[i - 1];
    if (last && next && last.b.u === next.a.u) {
      const [low, high] = [Math.min(last.b.r, next.a.r), Math.max(last.b.r, next.a.r)];
      const lower = last.b.r < next.a.r ? last : next;
      if (high > low + NEAR) found.push({ u: next.a.u, low, high, smooth: curved.has(lower.surface) });
      else if (!isStraight(last, next) && !isSmooth(last, next, curved)) found.push({ u: next.a.u, low, high });
      return;
    }
    if (last) found.push({ u: last.b.u, low: 0, high: last.b.r });
    if (next) found.push({ u: next.a.u, low: 0, high: next.a.r });
  });
  return found;
}

/** Surfaces that are chains of chords: no two neighbours of theirs lie in one line. */
function curvedIn(edges: readonly Edge[]): ReadonlySet<string> {
  const named = edges.filter((e) => e.surface !== '' && e.a.u !== e.b.u);
  const bends = named.filter((e, i) => named[i + 1]?.surface === e.surface && !isStraight(e, named[i + 1] ?? e));
  return new Set(bends.map((e) => e.surface));
}

/** Within an arc, or where it runs out into its cylinder: a bend of a few degrees, which is no edge. */
function isSmooth(p: Piece, q: Piece, curved: ReadonlySet<string>): boolean {
  if (!curved.has(p.surface) && !curved.has(q.surface)) return false;
  const angle = (e: Piece): number => Math.atan2(e.b.r - e.a.r, e.b.u - e.a.u);
  return p.surface === q.surface || Math.abs(angle(p) - angle(q)) < TANGENT;
}
/** Radians. */
const TANGENT = 0.2;

function isStraight(p: Piece, q: Piece): boolean {
  const slope = (e: Piece): number => (e.b.r - e.a.r) / (e.b.u - e.a.u);
  return Math.abs(slope(p) - slope(q)) < NEAR;
}

function jumpEdge(s: Step, now: readonly Edge[]): Edge {
  const wall = now.find(
    (e) => e.a.u === s.u && e.b.u === s.u && Math.min(e.a.r, e.b.r) < s.high - NEAR && Math.max(e.a.r, e.b.r) > s.low + NEAR,
  );
  return { a: { u: s.u, r: s.low }, b: { u: s.u, r: s.high }, surface: wall?.surface ?? '', made: wall?.made ?? false };
}

/** From left to right, each turned so that it begins where the one before ended if it can. */
function mergedOrder(edges: readonly Edge[]): readonly Edge[] {
  const middle = (e: Edge): number => (e.a.u + e.b.u) / 2;
  const sorted = [...edges].sort((p, q) => middle(p) - middle(q));
  const found: Edge[] = [];
  for (const e of sorted) {
    const end = found.at(-1)?.b;
    const turned = end && end.u === e.b.u && end.r === e.b.r;
    found.push(turned ? between(e, e.b, e.a) : e);
  }
  return found;
}

/** Seen in the bore behind the cut: its steps and its mouths. */
function boreLines(inner: readonly Piece[], curved: ReadonlySet<string>, window: Window, paper: Paper): readonly Item[] {
  return steps(inner, curved)
    .map((s) => ({ u: s.u, r: s.low > 0 ? s.low : s.high }))
    .filter((s) => s.r > 0 && !behindSpigot(s.u, window) && s.u !== window.cutAt)
    .map((s) => upright(s.u, 0, s.r, paper, 'above'));
}

function behindSpigot(u: number, window: Window): boolean {
  const us = window.tooling.map((p) => p.u);
  return window.tooling.some((p) => p.r === 0) && u > Math.min(...us) && u <= Math.max(...us);
}

function upright(u: number, low: number, high: number, paper: Paper, half: Half): Item {
  return line(across(paper, u), level(paper, low, half), across(paper, u), level(paper, high, half), NARROW);
}

/** ISO 6410: crests and the end of full thread wide, roots narrow; below the axis an outside thread only. */
function bandLines(band: Band, paper: Paper): readonly Item[] {
  const wide = band.made ? MADE : WIDE;
  const halves: readonly Half[] = band.side === 'outside' ? ['above', 'below'] : ['above'];
  const edges = bandEdges(band);
  const root = (e: Edge): boolean => onRoot(e, band);
  return halves.flatMap((half) => [
    ...edges.filter(root).map((e) => polyline(ringOnPaper(paper, [e.a, e.b], half), NARROW)),
    ...edges.filter((e) => !root(e)).map((e) => polyline(ringOnPaper(paper, [e.a, e.b], half), e.a.u === e.b.u ? WIDE : wide)),
  ]);
}

/** All sides of a thread's band, its root among them. */
export function bandEdges(band: Band): readonly Edge[] {
  return band.polygon.map((a, i) => ({ a, b: band.polygon[(i + 1) % band.polygon.length] ?? a, surface: band.surface, made: band.made }));
}

export function onRoot(e: Edge, band: Band): boolean {
  const root = rootOf(band.polygon, band.side);
  if (Math.abs(e.a.r - root) > NEAR || Math.abs(e.b.r - root) > NEAR) return false;
  const us = band.polygon.map((p) => p.u);
  return Math.min(e.a.u, e.b.u) >= Math.min(...us) - NEAR && Math.max(e.a.u, e.b.u) <= Math.max(...us) + NEAR;
}

function onAxis(e: Edge): boolean {
  return e.a.r === 0 && e.b.r === 0;
}

/** The outline when the grip began: cut above, silhouette below. What still stands is drawn over it. */
function formerLines(former: readonly Edge[], window: Window, paper: Paper): readonly Item[] {
  const silhouette = envelope(former, 'outer');
  const jumps = steps(silhouette, curvedIn(former))
    .filter((s) => s.u !== window.cutAt)
    .map((s) => [onPaper(paper, { u: s.u, r: s.low }, 'below'), onPaper(paper, { u: s.u, r: s.high }, 'below')]);
  return [
    ...chains(former.filter((e) => !onAxis(e))).map((chain) => polyline(ringOnPaper(paper, chain, 'above'), FORMER)),
    ...silhouette.map((p) => polyline(ringOnPaper(paper, [p.a, p.b], 'below'), FORMER)),
    ...jumps.map((ends) => polyline(ends, FORMER)),
  ];
}

/** How far the freehand wave of a break stands from the straight cut: to the headstock above the axis, the other way below. */
function wave(r: number, rim: number): number {
  return rim === 0 ? 0 : -rim * WAVE * Math.sin((Math.PI * r) / rim);
}

/** The cut face ends in the wave where the bar is broken off. */
function broken(ring: readonly UR[], cutAt: number, rim: number): readonly UR[] {
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    if (p.u !== cutAt || q.u !== cutAt) return [p];
    return WAVE_STEPS.map((t) => p.r + (q.r - p.r) * t).map((r) => ({ u: cutAt + wave(r, rim), r }));
  });
}

/** A broken-off bar: the wave of its cut face above the axis, a whole one below. */
function breakLine(metal: readonly (readonly UR[])[], cutAt: number, rim: number, paper: Paper): readonly Item[] {
  const below = WAVE_STEPS.map((t) => ({ u: cutAt - wave(rim * t, rim), r: rim * t }));
  const above = metal.flatMap((ring) => onCut(ring, cutAt, rim));
  return [
    ...above.map((part) => polyline(ringOnPaper(paper, part, 'above'), NARROW)),
    polyline(ringOnPaper(paper, below, 'below'), NARROW),
  ];
}

/** Stretches of a ring that follow the wave: WAVE_STEPS points each, as `broken` made them. */
function onCut(ring: readonly UR[], cutAt: number, rim: number): readonly (readonly UR[])[] {
  const runs: UR[][] = [];
  let last = -2;
  ring.forEach((p, i) => {
    if (Math.abs(p.u - cutAt - wave(p.r, rim)) > NEAR) return;
    if (i === last + 1) runs.at(-1)?.push(p);
    else runs.push([p]);
    last = i;
  });
  return runs.filter((run) => run.length > 1);
}

/** The room that the work fills, now and before, as boxes over both halves. */
function workBoxes(edges: readonly Edge[], paper: Paper): Layer['boxes'] {
  return envelope(edges, 'outer').map((p) => {
    const r = Math.max(p.a.r, p.b.r);
    const { x, y } = onPaper(paper, { u: p.a.u, r }, 'above');
    return { x, y, w: (p.b.u - p.a.u) * paper.scale, h: 2 * r * paper.scale, what: 'work' };
  });
}
