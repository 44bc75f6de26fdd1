/** Outlines of a painted section: edges between what counts as inside and what does not, walked with the inside on the right hand. */
import type { SurfaceId } from '../../model/ids.ts';
import type { Edge, Outline, Point, Polygon } from '../../model/stage.ts';
import type { Bound, Mark, Paint, Section, Slab } from '../section.ts';
import { at, TOUCH } from './lines.ts';

/** Says of a cell whether it counts as inside. */
export type Inside = (paint: Paint) => boolean;
/** `start` and `end` number corners: equal numbers, equal places. */
type Piece = { readonly edge: Edge; readonly start: number; readonly end: number };
/** More corners than stand above each other anywhere. */
const CORNERS = 10_000;

const AXIS: Mark = { surface: '', stage: 'bar', by: '' };
const UNNAMED: Mark = { surface: '', stage: 'rough', by: '' };

/**
 * Closed loops, each outer one running from the first end outward, along the outside, and back along the inside (or the axis); holes
 * run the other way. Pieces that touch in a corner only stay apart. Edges of one line and one mark are one edge.
 */
export function outlinesOf(section: Section, inside: Inside): readonly Outline[] {
  return chain(piecesOf(section, inside)).map(joinStraight);
}

/** Corners of each loop, in order. */
export function polygonsOf(section: Section, inside: Inside): readonly Polygon[] {
  return outlinesOf(section, inside).map((outline) => outline.map((edge) => edge.a));
}

/** How much of that surface stands upright at one place, between inside and outside, as a difference of diameters. */
export function standingAt(section: Section, z: number, surface: SurfaceId, inside: Inside): number {
  const i = section.slabs.findIndex((slab) => Math.abs(slab.from - z) <= TOUCH);
  const last = section.slabs.at(-1);
  const place = i < 0 && last && Math.abs(last.to - z) <= TOUCH ? section.slabs.length : i;
  let sum = 0;
  for (const { low, high, mark } of place < 0 ? [] : uprights(section, place, nodesAt(section, place), inside))
    if (mark.surface === surface) sum += high - low;
  return sum;
}

/** The cell of `slab` at that place; z may be at an end of the slab. */
export function paintAt(slab: Slab | undefined, z: number, d: number): Paint | undefined {
  if (!slab) return undefined;
  const i = slab.bounds.findIndex((bound) => at(bound.line, z) > d);
  return i < 0 ? slab.paints.at(-1) : slab.paints[i];
}

function piecesOf(section: Section, inside: Inside): readonly Piece[] {
  const { slabs } = section;
  const has = slabs.map((slab) => slab.paints.some(inside));
  const found: Piece[] = [];
  if (!has.includes(true)) return found;
  // where nothing is inside on either hand there is no edge
  const nodes = Array.from({ length: slabs.length + 1 }, (_, i) => (has[i - 1] || has[i] ? nodesAt(section, i) : []));
  for (const [i, slab] of slabs.entries()) if (has[i]) lengthwise(found, slab, i, nodes, inside);
  for (const [i, own] of nodes.entries()) for (const one of uprights(section, i, own, inside)) found.push(uprightEdge(one, i, own));
  return found;
}

/** Diameters at which a line arrives from either side, ascending; what is as good as one place is one. */
function nodesAt(section: Section, i: number): readonly number[] {
  const [left, right] = [section.slabs[i - 1], section.slabs[i]];
  const z = right?.from ?? left?.to ?? 0;
  const all: number[] = [0];
  if (left) for (const bound of left.bounds) putIn(all, at(bound.line, z));
  if (right) for (const bound of right.bounds) putIn(all, at(bound.line, z));
  return all.filter((d, k) => k === 0 || d - (all[k - 1] ?? 0) > TOUCH);
}

/** At its place among numbers that ascend. */
function putIn(all: number[], d: number): void {
  let k = all.length;
  for (let last = all[k - 1]; last !== undefined && last > d; last = all[k - 1]) {
    all[k] = last;
    k -= 1;
  }
  all[k] = d;
}

function lengthwise(found: Piece[], slab: Slab, i: number, nodes: readonly (readonly number[])[], inside: Inside): void {
  for (const [k, paint] of slab.paints.entries()) {
    if (!inside(paint)) continue;
    const [under, over] = [slab.bounds[k - 1], slab.bounds[k]];
    const below = slab.paints[k - 1];
    const above = slab.paints[k + 1];
    if (below === undefined || !inside(below)) found.push(lineEdge(slab, i, nodes, under, 'back'));
    if (above !== undefined && !inside(above)) found.push(lineEdge(slab, i, nodes, over, 'on'));
  }
}

function lineEdge(slab: Slab, i: number, nodes: readonly (readonly number[])[], bound: Bound | undefined, way: 'on' | 'back'): Piece {
  const left = corner(slab.from, bound ? at(bound.line, slab.from) : 0, i, nodes[i]);
  const right = corner(slab.to, bound ? at(bound.line, slab.to) : 0, i + 1, nodes[i + 1]);
  const mark = bound?.mark ?? AXIS;
  return way === 'on' ? pieceOf(left, right, mark) : pieceOf(right, left, mark);
}

type Corner = { readonly point: Point; readonly name: number };
function corner(z: number, d: number, i: number, nodes: readonly number[] = []): Corner {
  for (const [k, node] of nodes.entries()) if (Math.abs(node - d) <= 2 * TOUCH) return { point: { z, d }, name: i * CORNERS + k };
  throw new Error(`a line ends at no corner (${z}, ${d})`);
}

const pieceOf = (a: Corner, b: Corner, mark: Mark): Piece => ({ edge: { a: a.point, b: b.point, ...mark }, start: a.name, end: b.name });

/** `up`: the inside lies toward the second end. */
type Upright = { readonly z: number; readonly low: number; readonly high: number; readonly up: boolean; readonly mark: Mark };
/** Between neighbouring corners where the inside lies on one hand only. */
function uprights(section: Section, i: number, nodes: readonly number[], inside: Inside): readonly Upright[] {
  const [left, right] = [section.slabs[i - 1], section.slabs[i]];
  const z = right?.from ?? left?.to ?? 0;
  const found: Upright[] = [];
  let [l, r] = [0, 0];
  for (let k = 1; k < nodes.length; k += 1) {
    const [low, high] = [nodes[k - 1] ?? 0, nodes[k] ?? 0];
    const middle = (low + high) / 2;
    l = cellOver(left, z, middle, l);
    r = cellOver(right, z, middle, r);
    const up = isInside(right, r, inside);
    if (isInside(left, l, inside) !== up) found.push({ z, low, high, up, mark: markAt(section, z, middle) });
  }
  return found;
}

/** The cell that holds that diameter, sought from the one that held the last. */
function cellOver(slab: Slab | undefined, z: number, d: number, from: number): number {
  let cell = from;
  for (let bound = slab?.bounds[cell]; bound && at(bound.line, z) <= d; bound = slab?.bounds[cell]) cell += 1;
  return cell;
}

function isInside(slab: Slab | undefined, cell: number, inside: Inside): boolean {
  const paint = slab?.paints[cell];
  return paint !== undefined && inside(paint);
}

/** Up where the inside lies toward the second end, down where it lies toward the first. */
function uprightEdge({ z, low, high, up, mark }: Upright, i: number, nodes: readonly number[]): Piece {
  const [a, b] = [corner(z, low, i, nodes), corner(z, high, i, nodes)];
  return up ? pieceOf(a, b, mark) : pieceOf(b, a, mark);
}

function markAt(section: Section, z: number, d: number): Mark {
  const wall = section.walls.findLast((one) => Math.abs(one.z - z) <= TOUCH && one.lo < d && d < one.hi);
  return wall?.mark ?? UNNAMED;
}

function chain(pieces: readonly Piece[]): readonly Outline[] {
  const from = new Map<number, Piece[]>();
  for (const piece of pieces) {
    const before = from.get(piece.start);
    if (before) before.push(piece);
    else from.set(piece.start, [piece]);
  }
  const used = new Set<Piece>();
  const loops: Outline[] = [];
  for (const first of pieces) {
    if (used.has(first)) continue;
    const loop: Edge[] = [];
    let last = first;
    for (let next: Piece | undefined = first; next && !used.has(next); next = goOn(next, from, used)) {
      used.add(next);
      loop.push(next.edge);
      last = next;
    }
    if (last.end !== first.start) throw new Error('an outline does not close');
    loops.push(loop);
  }
  return loops;
}

/** Where two ways lead on, the one hardest to the right stays with the same piece of metal. */
function goOn(piece: Piece, from: ReadonlyMap<number, readonly Piece[]>, used: ReadonlySet<Piece>): Piece | undefined {
  let best: Piece | undefined;
  for (const one of from.get(piece.end) ?? [])
    if (!used.has(one) && !(best && turn(piece.edge, best.edge) <= turn(piece.edge, one.edge))) best = one;
  return best;
}

/** Least to the right, in (-pi, pi]. */
function turn(p: Edge, q: Edge): number {
  const angle = direction(q) - direction(p);
  return angle > Math.PI ? angle - 2 * Math.PI : angle <= -Math.PI ? angle + 2 * Math.PI : angle;
}
const direction = (edge: Edge): number => Math.atan2(edge.b.d - edge.a.d, edge.b.z - edge.a.z);

function joinStraight(loop: Outline): Outline {
  const start = loop.findIndex((edge, i) => !goesOn(loop.at(i - 1), edge));
  const turned = start < 0 ? loop : [...loop.slice(start), ...loop.slice(0, start)];
  const found: Edge[] = [];
  for (const edge of turned) {
    const last = found.at(-1);
    if (last && goesOn(last, edge)) found[found.length - 1] = { ...last, b: edge.b };
    else found.push(edge);
  }
  return found;
}

/** Same mark and same direction: the corner between them lies within a touch of the line through both. */
function goesOn(last: Edge | undefined, edge: Edge): boolean {
  if (!last || last.surface !== edge.surface || last.stage !== edge.stage || last.by !== edge.by) return false;
  const [dz, dd] = [edge.b.z - last.a.z, edge.b.d - last.a.d];
  const off = dz * (edge.a.d - last.a.d) - dd * (edge.a.z - last.a.z);
  const along = dz * (edge.a.z - last.a.z) + dd * (edge.a.d - last.a.d);
  return along >= 0 && Math.abs(off) <= 2 * TOUCH * Math.hypot(dz, dd);
}
