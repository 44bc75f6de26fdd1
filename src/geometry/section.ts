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
  for (const slab of section.slabs) {
    const middle = (slab.from + slab.to) / 2;
    const cuts = isInside(slab, region.from) || isInside(slab, region.to);
    if (!cuts && (middle < region.from || middle > region.to)) slabs.push(slab);
    else for (const piece of splitAt(slab, [region.from, region.to])) paintPiece(slabs, piece, region);
  }
  return { slabs, walls: withSides(section.walls, region) };
}

function paintPiece(into: Slab[], slab: Slab, region: Region): void {
  const middle = (slab.from + slab.to) / 2;
  if (middle < region.from || middle > region.to) into.push(slab);
  else for (const piece of splitAtMeetings(slab, region)) into.push(paintSlab(piece, region));
}

const isInside = (slab: Slab, z: number): boolean => z > slab.from + TOUCH && z < slab.to - TOUCH;

/** Cut through at each of the places, ascending, that lies inside of what is left. */
function splitAt(slab: Slab, places: readonly number[]): readonly Slab[] {
  if (!places.some((z) => isInside(slab, z))) return [slab];
  const pieces: Slab[] = [];
  let rest = slab;
  for (const z of places) {
    if (!isInside(rest, z)) continue;
    pieces.push({ ...rest, to: z });
    rest = { ...rest, from: z };
  }
  return [...pieces, rest];
}

function splitAtMeetings(slab: Slab, region: Region): readonly Slab[] {
  const [low, high] = [region.lower?.line, region.upper?.line];
  const places: number[] = [];
  const note = (p: Line | undefined, q: Line | undefined): void => {
    const z = p && q && meeting(p, q);
    if (z !== undefined && isInside(slab, z)) places.push(z);
  };
  note(low, high);
  for (const bound of slab.bounds) {
    note(low, bound.line);
    note(high, bound.line);
  }
  return places.length === 0
    ? [slab]
    : splitAt(
        slab,
        places.sort((a, b) => a - b),
      );
}

/** Inside a piece no two lines cross, so their order in its middle is their order all along. */
function paintSlab(slab: Slab, region: Region): Slab {
  const middle = (slab.from + slab.to) / 2;
  const low = region.lower ? at(region.lower.line, middle) : 0;
  const high = region.upper ? at(region.upper.line, middle) : Number.POSITIVE_INFINITY;
  if (high <= low + TOUCH || high <= TOUCH || !meetsSolid(slab, middle, low, high)) return slab;
  const withLower = region.lower && low > TOUCH ? insert(slab, region.lower, middle) : slab;
  const whole = region.upper ? insert(withLower, region.upper, middle) : withLower;
  const paints: Paint[] = [];
  let under = 0;
  for (const [i, old] of whole.paints.entries()) {
    const bound = whole.bounds[i];
    const over = bound ? at(bound.line, middle) : Number.POSITIVE_INFINITY;
    paints.push(under >= low - TOUCH && over <= high + TOUCH ? region.paint(old) : old);
    under = over;
  }
  return merge({ ...whole, paints });
}

/** Whether any metal lies between the two heights or touches them. */
function meetsSolid({ bounds, paints }: Slab, middle: number, low: number, high: number): boolean {
  let under = 0;
  for (const [i, bound] of bounds.entries()) {
    const over = at(bound.line, middle);
    const own = paints[i];
    if (own && isSolid(own) && over >= low - TOUCH && under <= high + TOUCH) return true;
    under = over;
  }
  return false;
}

/** A line that lies on an old one takes its place: the later tool made what is there. */
function insert(slab: Slab, bound: Bound, middle: number): Slab {
  const height = at(bound.line, middle);
  const i = slab.bounds.findIndex((old) => at(old.line, middle) >= height - TOUCH);
  const old = slab.bounds[i];
  if (!old) return { ...slab, bounds: [...slab.bounds, bound], paints: [...slab.paints, slab.paints.at(-1) ?? NEVER] };
  const same = at(old.line, middle) <= height + TOUCH;
  const rest = slab.bounds.slice(same ? i + 1 : i);
  const bounds = [...slab.bounds.slice(0, i), bound, ...rest];
  if (same) return { ...slab, bounds };
  return { ...slab, bounds, paints: [...slab.paints.slice(0, i + 1), ...slab.paints.slice(i)] };
}

/** Neighbours of one paint become one cell. */
function merge(slab: Slab): Slab {
  if (!slab.paints.some((one, i) => i > 0 && samePaint(one, slab.paints[i - 1]))) return slab;
  const kept = slab.paints.map((one, i) => i === 0 || !samePaint(one, slab.paints[i - 1]));
  return { ...slab, paints: slab.paints.filter((_, i) => kept[i]), bounds: slab.bounds.filter((_, i) => kept[i + 1]) };
}

function samePaint(a: Paint, b: Paint | undefined): boolean {
  if (a === b) return true;
  if (a.state !== b?.state) return false;
  if (a.state === 'partial') return b.state === 'partial' && a.by === b.by && a.thread === b.thread;
  return !('by' in a) || !('by' in b) || a.by === b.by;
}

function withSides(walls: readonly Wall[], region: Region): readonly Wall[] {
  if (!region.first && !region.second) return walls;
  const own = [wallOf(region, region.first, region.from), wallOf(region, region.second, region.to)].flatMap((one) => one ?? []);
  const met = own.filter((one) => one.as === 'met').map((one) => one.wall);
  const made = own.filter((one) => one.as === 'made').map((one) => one.wall);
  return own.length === 0 ? walls : [...met, ...walls, ...made];
}

function wallOf(region: Region, side: Side | undefined, z: number): { readonly as: Side['as']; readonly wall: Wall } | undefined {
  if (!side || !Number.isFinite(z)) return undefined;
  const lo = region.lower ? at(region.lower.line, z) : 0;
  const hi = region.upper ? at(region.upper.line, z) : Number.POSITIVE_INFINITY;
  return { as: side.as, wall: { z, lo, hi, mark: side.mark } };
}
