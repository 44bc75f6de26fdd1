/**
 * The painted half-section: slabs along z, in each slab cells stacked from the axis out, each bounded by the labelled lines that made
 * it. Nothing is ever deleted: a cut paints. Where a new line crosses an old one the slab is split at their meeting point.
 */
import type { FeatureId, OpId, SurfaceId } from '../model/ids.ts';
import { at, type Line, level, meeting, TOUCH } from './section/lines.ts';

/** What made a line or a wall. '' is what no surface of the part is: raw ends, steps in the bar, the axis. */
export type Mark = { readonly surface: SurfaceId | ''; readonly stage: 'rough' | 'final' | 'bar'; readonly by: OpId | '' };
export type Bound = { readonly line: Line; readonly mark: Mark };
/** `partial`: a thread's band. `dropped`: parted off with the bar, or fallen off. */
export type Paint =
  | { readonly state: 'metal' | 'never' }
  | { readonly state: 'partial'; readonly by: OpId; readonly thread: FeatureId }
  | { readonly state: 'taken' | 'dropped'; readonly by: OpId };
/** `paints[i]` lies under `bounds[i]` and over `bounds[i - 1]`; the first reaches to the axis, the last (one more than bounds) has no end. */
export type Slab = { readonly from: number; readonly to: number; readonly bounds: readonly Bound[]; readonly paints: readonly Paint[] };
/** An upright line at `z`, from diameter `lo` to `hi`; the last one that covers a place is what made the face there. */
export type Wall = { readonly z: number; readonly lo: number; readonly hi: number; readonly mark: Mark };
/** Slabs follow each other without a gap, ascending. */
export type Section = { readonly slabs: readonly Slab[]; readonly walls: readonly Wall[] };

export const METAL: Paint = { state: 'metal' };
export const NEVER: Paint = { state: 'never' };
export const isSolid = (paint: Paint): boolean => paint.state === 'metal' || paint.state === 'partial';

/** `made`: this cut's own wall. `met`: the tool only goes up to it; it names what nothing else has named. */
export type Side = { readonly mark: Mark; readonly as: 'made' | 'met' };
/**
 * A stretch between two lines. `from` and `to` may be infinite; `lower` absent is the axis, `upper` absent has no end. `paint` gives
 * what each cell becomes.
 */
export type Region = {
  readonly from: number;
  readonly to: number;
  readonly lower?: Bound;
  readonly upper?: Bound;
  readonly first?: Side;
  readonly second?: Side;
  readonly paint: (old: Paint) => Paint;
};

/** Bar from `from` to `to`; a hexagon stands by its width across flats. `mark` names its skin. */
export function startBar(from: number, to: number, across: number, mark: Mark): Section {
  const raw: Mark = { surface: '', stage: 'bar', by: '' };
  const ends = [from, to].map((z): Wall => ({ z, lo: 0, hi: across, mark: raw }));
  return { slabs: [{ from, to, bounds: [{ line: level(across), mark }], paints: [METAL, NEVER] }], walls: ends };
}

export function paint(section: Section, region: Region): Section {
  const slabs: Slab[] = [];
  for (let i = 0; i < section.slabs.length; i += 1) {
    const slab = section.slabs[i];
    if (!slab) continue;
    if (slab.to <= region.from || slab.from >= region.to) slabs.push(slab);
    else if (isInside(slab, region.from) || isInside(slab, region.to)) paintParts(slabs, slab, region);
    else if (isOver(slab, region)) paintPiece(slabs, slab, region);
    else slabs.push(slab);
  }
  return { slabs, walls: withSides(section.walls, region) };
}

const isInside = (slab: Slab, z: number): boolean => z > slab.from + TOUCH && z < slab.to - TOUCH;

/** By its middle: none of its ends lies inside. */
function isOver(slab: Slab, region: Region): boolean {
  const middle = (slab.from + slab.to) / 2;
  return middle >= region.from && middle <= region.to;
}

const stretch = ({ bounds, paints }: Slab, from: number, to: number): Slab => ({ from, to, bounds, paints });

/** The part before the region, what it covers, and the part after it. */
function paintParts(into: Slab[], slab: Slab, region: Region): void {
  let rest = slab;
  if (isInside(rest, region.from)) {
    into.push(stretch(rest, rest.from, region.from));
    rest = stretch(rest, region.from, rest.to);
  }
  const after = isInside(rest, region.to) ? stretch(rest, region.to, rest.to) : undefined;
  if (after) rest = stretch(rest, rest.from, region.to);
  if (isOver(rest, region)) paintPiece(into, rest, region);
  else into.push(rest);
  if (after) into.push(after);
}

function paintPiece(into: Slab[], slab: Slab, region: Region): void {
  let rest = slab;
  for (const z of meetingsIn(slab, region)) {
    if (!isInside(rest, z)) continue;
    into.push(paintSlab(stretch(rest, rest.from, z), region));
    rest = stretch(rest, z, rest.to);
  }
  into.push(paintSlab(rest, region));
}

/** Where one of the region's lines meets the other or one of the slab's, ascending. */
function meetingsIn({ bounds }: Slab, { lower, upper }: Region): readonly number[] {
  const low = lower?.line;
  const high = upper?.line;
  const places: number[] = [];
  noteMeeting(places, low, high);
  for (let i = 0; i < bounds.length; i += 1) {
    const line = bounds[i]?.line;
    if (low && low.slope !== line?.slope) noteMeeting(places, low, line);
    if (high && high.slope !== line?.slope) noteMeeting(places, high, line);
  }
  return places.length < 2 ? places : places.sort((a, b) => a - b);
}

function noteMeeting(places: number[], p: Line | undefined, q: Line | undefined): void {
  if (!p || !q || p.slope === q.slope) return;
  const z = meeting(p, q);
  if (z !== undefined) places.push(z);
}

/** Inside a piece no two lines cross, so their order in its middle is their order all along. */
function paintSlab(slab: Slab, region: Region): Slab {
  const middle = (slab.from + slab.to) / 2;
  const low = region.lower ? at(region.lower.line, middle) : 0;
  const high = region.upper ? at(region.upper.line, middle) : Number.POSITIVE_INFINITY;
  if (high <= low + TOUCH || high <= TOUCH) return slab;
  const heights = heightsAt(slab, middle);
  if (!meetsSolid(slab.paints, heights, low, high)) return slab;
  return painted(slab, heights, region, low, high);
}

/** Diameters of the slab's lines at that place, from the axis out. */
export function heightsAt({ bounds }: Slab, z: number): number[] {
  const heights: number[] = [];
  for (let i = 0; i < bounds.length; i += 1) {
    const line = bounds[i]?.line;
    if (line) heights.push(line.slope === 0 ? line.d : at(line, z));
  }
  return heights;
}

/** Whether any metal lies between the two heights or touches them. */
function meetsSolid(paints: readonly Paint[], heights: readonly number[], low: number, high: number): boolean {
  let under = 0;
  for (let i = 0; i < heights.length && under <= high + TOUCH; i += 1) {
    const over = heights[i] ?? 0;
    const own = paints[i];
    if (over >= low - TOUCH && own && isSolid(own)) return true;
    under = over;
  }
  return false;
}

/** A slab in the making. */
type Cells = { readonly bounds: Bound[]; readonly paints: Paint[] };

/** What lies between the two heights is painted. A line that lies on an old one takes its place: the later tool made what is there. */
function painted(slab: Slab, heights: readonly number[], region: Region, low: number, high: number): Slab {
  const cells: Cells = { bounds: [], paints: [] };
  const paintOf = (old: Paint, from: number, to: number): Paint => (from >= low - TOUCH && to <= high + TOUCH ? region.paint(old) : old);
  let lower = low > TOUCH ? region.lower : undefined;
  let { upper } = region;
  let under = 0;
  for (let i = 0; i < slab.paints.length; i += 1) {
    const old = slab.paints[i] ?? NEVER;
    let over = heights[i] ?? Number.POSITIVE_INFINITY;
    let bound = slab.bounds[i];
    if (lower && over >= low - TOUCH) {
      if (over <= low + TOUCH) [bound, over] = [lower, low];
      else {
        add(cells, paintOf(old, under, low), lower);
        under = low;
      }
      lower = undefined;
    }
    if (upper && over >= high - TOUCH) {
      if (over <= high + TOUCH) [bound, over] = [upper, high];
      else {
        add(cells, paintOf(old, under, high), upper);
        under = high;
      }
      upper = undefined;
    }
    add(cells, paintOf(old, under, over), bound);
    under = over;
  }
  return { from: slab.from, to: slab.to, bounds: cells.bounds, paints: cells.paints };
}

/** Neighbours of one paint become one cell. `over`: the line over it; none over the last. */
function add({ bounds, paints }: Cells, paint: Paint, over: Bound | undefined): void {
  const last = paints[paints.length - 1];
  if (last && samePaint(paint, last)) bounds.pop();
  else paints.push(paint);
  if (over) bounds.push(over);
}

function samePaint(a: Paint, b: Paint | undefined): boolean {
  if (a === b) return true;
  if (a.state !== b?.state) return false;
  if (a.state === 'partial') return b.state === 'partial' && a.by === b.by && a.thread === b.thread;
  return !('by' in a) || !('by' in b) || a.by === b.by;
}

function withSides(walls: readonly Wall[], region: Region): readonly Wall[] {
  const { first, second } = region;
  if (!first && !second) return walls;
  const met: Wall[] = [];
  const made: Wall[] = [];
  if (first && Number.isFinite(region.from)) (first.as === 'met' ? met : made).push(wallOf(region, first, region.from));
  if (second && Number.isFinite(region.to)) (second.as === 'met' ? met : made).push(wallOf(region, second, region.to));
  return met.length + made.length === 0 ? walls : met.concat(walls, made);
}

function wallOf(region: Region, side: Side, z: number): Wall {
  const lo = region.lower ? at(region.lower.line, z) : 0;
  const hi = region.upper ? at(region.upper.line, z) : Number.POSITIVE_INFINITY;
  return { z, lo, hi, mark: side.mark };
}
