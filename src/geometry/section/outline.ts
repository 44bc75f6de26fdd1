/** Outlines of a painted section: edges between what counts as inside and what does not, walked with the inside on the right hand. */
import type { SurfaceId } from '../../model/ids.ts';
import type { Edge, Outline, Point, Polygon } from '../../model/stage.ts';
import type { Bound, Mark, Paint, Section, Slab } from '../section.ts';
import { at, TOUCH } from './lines.ts';

/** Says of a cell whether it counts as inside. */
export type Inside = (paint: Paint) => boolean;
/** `start` and `end` number corners: equal numbers, equal places. `also`: another that starts there. `used`: it is in a loop. */
type Piece = { readonly edge: Edge; readonly start: number; readonly end: number; also?: Piece; used: boolean };
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

/** Whether anything of that surface stands upright at one place, between inside and outside. */
export function standsAt(section: Section, z: number, surface: SurfaceId, inside: Inside): boolean {
  const { slabs } = section;
  let i = 0;
  while (i < slabs.length && (slabs[i]?.from ?? z) < z - TOUCH) i += 1;
  const [left, right] = [slabs[i - 1], slabs[i]];
  const place = right?.from ?? left?.to ?? 0;
  if (Math.abs(place - z) > TOUCH) return false;
  const isIn = (slab: Slab | undefined, cell: number): boolean => {
    const paint = slab?.paints[cell];
    return paint !== undefined && inside(paint);
  };
  let [low, l, r] = [0, 0, 0];
  for (let next = 0; next < Number.POSITIVE_INFINITY; low = next) {
    const [p, q] = [lineHeight(left, l, place), lineHeight(right, r, place)];
    next = Math.min(p, q);
    const upright = next - low > TOUCH && next < Number.POSITIVE_INFINITY && isIn(left, l) !== isIn(right, r);
    if (upright && markAt(section, place, (low + next) / 2).surface === surface) return true;
    if (p === next) l += 1;
    if (q === next) r += 1;
  }
  return false;
}

/** Of the slab's line with that number; no line is without end. */
function lineHeight(slab: Slab | undefined, i: number, z: number): number {
  const bound = slab?.bounds[i];
  return bound ? at(bound.line, z) : Number.POSITIVE_INFINITY;
}

/** The cell of `slab` at that place; z may be at an end of the slab. */
export function paintAt(slab: Slab | undefined, z: number, d: number): Paint | undefined {
  if (!slab) return undefined;
  const i = slab.bounds.findIndex((bound) => at(bound.line, z) > d);
  return i < 0 ? slab.paints.at(-1) : slab.paints[i];
}

// ---- slabs and places between them -------------------------------------------------------------------------------------------------
/** One end of a slab: which cells are inside, the diameters of its lines there, and of those between inside and outside. */
type Side = { readonly cells: readonly boolean[]; readonly heights: readonly number[]; readonly turns: readonly number[] };
type Sight = { readonly cells: readonly boolean[]; readonly from: Side; readonly to: Side };
/** Where two slabs meet. `same`: inside and outside on both hands, so that nothing stands upright. `nodes`: diameters at which a line arrives, ascending; what is as good as one place is one. */
type Place = { readonly z: number; readonly before: Side; readonly after: Side; readonly nodes: readonly number[]; readonly same: boolean };

const NOTHING: Side = { cells: [], heights: [], turns: [] };

function sightOf({ from, to, bounds, paints }: Slab, inside: Inside): Sight {
  const cells: boolean[] = [];
  for (let k = 0; k < paints.length; k += 1) {
    const paint = paints[k];
    cells.push(paint !== undefined && inside(paint));
  }
  const start = sideOf(bounds, cells, from);
  return { cells, from: start, to: isLevel(bounds) ? start : sideOf(bounds, cells, to) };
}

function isLevel(bounds: readonly Bound[]): boolean {
  for (let k = 0; k < bounds.length; k += 1) if (bounds[k]?.line.slope !== 0) return false;
  return true;
}

function sideOf(bounds: readonly Bound[], cells: readonly boolean[], z: number): Side {
  const heights: number[] = [];
  const turns: number[] = [];
  for (let k = 0; k < bounds.length; k += 1) {
    const bound = bounds[k];
    if (!bound) continue;
    const height = at(bound.line, z);
    heights.push(height);
    if (cells[k] !== cells[k + 1]) turns.push(height);
  }
  return { cells, heights, turns };
}

function placeOf(before: Side = NOTHING, after: Side = NOTHING, z: number): Place {
  const same = areSame(before, after);
  return { z, before, after, nodes: same ? nodesOf(before.turns) : nodesOf(before.heights, after.heights), same };
}

function areSame({ turns, cells }: Side, other: Side): boolean {
  if (turns.length !== other.turns.length || (cells[0] ?? false) !== (other.cells[0] ?? false)) return false;
  for (let k = 0; k < turns.length; k += 1) if (turns[k] !== other.turns[k]) return false;
  return true;
}

function nodesOf(left: readonly number[], right: readonly number[] = []): readonly number[] {
  const all: number[] = [0];
  for (let k = 0; k < left.length; k += 1) putIn(all, left[k] ?? 0);
  for (let k = 0; k < right.length; k += 1) putIn(all, right[k] ?? 0);
  const nodes: number[] = [];
  for (let k = 0; k < all.length; k += 1) {
    const d = all[k] ?? 0;
    if (k === 0 || d - (all[k - 1] ?? 0) > TOUCH) nodes.push(d);
  }
  return nodes;
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

// ---- pieces of outline ------------------------------------------------------------------------------------------------------------
function piecesOf(section: Section, inside: Inside): readonly Piece[] {
  const { slabs } = section;
  const sights = slabs.map((slab) => sightOf(slab, inside));
  const places: Place[] = [];
  for (let i = 0; i <= slabs.length; i += 1)
    places.push(placeOf(sights[i - 1]?.to, sights[i]?.from, slabs[i]?.from ?? slabs[i - 1]?.to ?? 0));
  const found: Piece[] = [];
  for (let i = 0; i < slabs.length; i += 1) lengthwise(found, slabs[i], i, places);
  for (let i = 0; i < places.length; i += 1) uprights(found, section, places[i], i);
  return found;
}

function lengthwise(found: Piece[], slab: Slab | undefined, i: number, places: readonly Place[]): void {
  const start = places[i];
  const end = places[i + 1];
  if (!slab || !start || !end) return;
  const { cells } = start.after;
  for (let k = 0; k < cells.length; k += 1) {
    if (!cells[k]) continue;
    if (!cells[k - 1]) found.push(lineEdge(slab, i, start, end, k - 1, 'back'));
    if (cells[k + 1] === false) found.push(lineEdge(slab, i, start, end, k, 'on'));
  }
}

/** `k`: which of the slab's lines; -1 is the axis. */
function lineEdge(slab: Slab, i: number, start: Place, end: Place, k: number, way: 'on' | 'back'): Piece {
  const a = { z: slab.from, d: start.after.heights[k] ?? 0 };
  const b = { z: slab.to, d: end.before.heights[k] ?? 0 };
  const p = corner(a, i, start.nodes);
  const q = corner(b, i + 1, end.nodes);
  const mark = slab.bounds[k]?.mark ?? AXIS;
  return way === 'on' ? pieceOf(a, b, mark, p, q) : pieceOf(b, a, mark, q, p);
}

/** Its number. */
function corner({ z, d }: Point, i: number, nodes: readonly number[]): number {
  for (let k = 0; k < nodes.length; k += 1) if (Math.abs((nodes[k] ?? 0) - d) <= 2 * TOUCH) return i * CORNERS + k;
  throw new Error(`a line ends at no corner (${z}, ${d})`);
}

const pieceOf = (a: Point, b: Point, { surface, stage, by }: Mark, start: number, end: number): Piece => ({
  edge: { a, b, surface, stage, by },
  start,
  end,
  used: false,
});

/** Between neighbouring corners where the inside lies on one hand only. */
function uprights(found: Piece[], section: Section, place: Place | undefined, i: number): void {
  if (!place || place.same) return;
  const { z, before, after, nodes } = place;
  let l = 0;
  let r = 0;
  for (let k = 1; k < nodes.length; k += 1) {
    const low = nodes[k - 1] ?? 0;
    const high = nodes[k] ?? 0;
    const middle = (low + high) / 2;
    l = cellOver(before.heights, middle, l);
    r = cellOver(after.heights, middle, r);
    const up = after.cells[r] === true;
    if ((before.cells[l] === true) !== up) found.push(uprightEdge(place, i, k, up, markAt(section, z, middle)));
  }
}

/** The cell that holds that diameter, sought from the one that held the last. */
function cellOver(heights: readonly number[], d: number, from: number): number {
  let cell = from;
  for (let height = heights[cell]; height !== undefined && height <= d; height = heights[cell]) cell += 1;
  return cell;
}

/** Up to the node `k` where the inside lies toward the second end, down from it where it lies toward the first. */
function uprightEdge({ z, nodes }: Place, i: number, k: number, up: boolean, mark: Mark): Piece {
  const a = { z, d: nodes[k - 1] ?? 0 };
  const b = { z, d: nodes[k] ?? 0 };
  const name = i * CORNERS + k;
  return up ? pieceOf(a, b, mark, name - 1, name) : pieceOf(b, a, mark, name, name - 1);
}

function markAt({ walls }: Section, z: number, d: number): Mark {
  for (let i = walls.length - 1; i >= 0; i -= 1) {
    const wall = walls[i];
    if (wall && Math.abs(wall.z - z) <= TOUCH && wall.lo < d && d < wall.hi) return wall.mark;
  }
  return UNNAMED;
}

// ---- loops ------------------------------------------------------------------------------------------------------------------------
function chain(pieces: readonly Piece[]): readonly Outline[] {
  const from = new Map<number, Piece>();
  for (const piece of pieces) {
    const first = from.get(piece.start);
    if (first) addTo(first, piece);
    else from.set(piece.start, piece);
  }
  const loops: Outline[] = [];
  for (const first of pieces) {
    if (first.used) continue;
    const loop: Edge[] = [];
    let last = first;
    for (let next: Piece | undefined = first; next && !next.used; next = goOn(next, from.get(next.end))) {
      next.used = true;
      loop.push(next.edge);
      last = next;
    }
    if (last.end !== first.start) throw new Error('an outline does not close');
    loops.push(loop);
  }
  return loops;
}

function addTo(first: Piece, piece: Piece): void {
  let last = first;
  while (last.also) last = last.also;
  last.also = piece;
}

/** Where two ways lead on, the one hardest to the right stays with the same piece of metal. */
function goOn(piece: Piece, first: Piece | undefined): Piece | undefined {
  let best: Piece | undefined;
  for (let one = first; one; one = one.also)
    if (!one.used && !(best && turn(piece.edge, best.edge) <= turn(piece.edge, one.edge))) best = one;
  return best;
}

/** Least to the right, in (-pi, pi]. */
function turn(p: Edge, q: Edge): number {
  const angle = direction(q) - direction(p);
  return angle > Math.PI ? angle - 2 * Math.PI : angle <= -Math.PI ? angle + 2 * Math.PI : angle;
}
const direction = (edge: Edge): number => Math.atan2(edge.b.d - edge.a.d, edge.b.z - edge.a.z);

function joinStraight(loop: readonly Edge[]): Outline {
  let start = 0;
  while (start < loop.length && goesOn(loop.at(start - 1), loop[start])) start += 1;
  const found: Edge[] = [];
  let last: Edge | undefined;
  for (let i = 0; i < loop.length; i += 1) {
    const edge = loop[(start + i) % loop.length];
    if (!edge) continue;
    const on = last && goesOn(last, edge);
    last = on && last ? { ...last, b: edge.b } : edge;
    found[on ? found.length - 1 : found.length] = last;
  }
  return found;
}

/** Same mark and same direction: the corner between them lies within a touch of the line through both. */
function goesOn(last: Edge | undefined, edge: Edge | undefined): boolean {
  if (!last || !edge || last.surface !== edge.surface || last.stage !== edge.stage || last.by !== edge.by) return false;
  const dz = edge.b.z - last.a.z;
  const dd = edge.b.d - last.a.d;
  const off = dz * (edge.a.d - last.a.d) - dd * (edge.a.z - last.a.z);
  const along = dz * (edge.a.z - last.a.z) + dd * (edge.a.d - last.a.d);
  return along >= 0 && Math.abs(off) <= 2 * TOUCH * Math.hypot(dz, dd);
}
