/** Which metal hangs together: cells that share a line, or a stretch of a wall, are one piece. */
import { isSolid, type Paint, type Section, type Slab } from '../section.ts';
import { at, TOUCH } from './lines.ts';

/** `of[slab][cell]` is the number of its piece; -1 where there is no metal. */
export type Pieces = { readonly of: readonly (readonly number[])[]; readonly count: number };

export function piecesOf(section: Section): Pieces {
  const before = known.get(section);
  if (before) return before;
  const pieces = joined(section);
  known.set(section, pieces);
  return pieces;
}
/** A section is asked for as what one step leaves and as what the next one finds. */
const known = new WeakMap<Section, Pieces>();

function joined({ slabs }: Section): Pieces {
  const parent: number[] = [];
  const starts: number[] = [];
  for (const slab of slabs) {
    starts.push(parent.length);
    for (let k = 0; k < slab.paints.length; k += 1) parent.push(parent.length);
  }
  for (let i = 0; i < slabs.length; i += 1) {
    const slab = slabs[i];
    if (!slab) continue;
    joinInside(parent, slab, starts[i] ?? 0);
    const next = slabs[i + 1];
    if (next) joinAcross(parent, slab, starts[i] ?? 0, next, starts[i + 1] ?? 0);
  }
  return numbered(slabs, starts, parent);
}

/** The cell that stands for the piece of that one. */
function rootOf(parent: readonly number[], cell: number): number {
  let k = cell;
  for (let up = parent[k]; up !== undefined && up !== k; up = parent[k]) k = up;
  return k;
}

function join(parent: number[], p: number, q: number): void {
  parent[rootOf(parent, p)] = rootOf(parent, q);
}

/** Metal over metal. */
function joinInside(parent: number[], { paints }: Slab, start: number): void {
  for (let k = 1; k < paints.length; k += 1) if (solid(paints, k - 1) && solid(paints, k)) join(parent, start + k - 1, start + k);
}

/** Metal beside metal, where `slab` ends and `next` begins. */
function joinAcross(parent: number[], slab: Slab, start: number, next: Slab, nextStart: number): void {
  for (let p = 0; p < slab.paints.length; p += 1) {
    if (!solid(slab.paints, p)) continue;
    const lo = under(slab, p, slab.to);
    const hi = over(slab, p, slab.to);
    for (let q = 0; q < next.paints.length; q += 1) {
      if (!solid(next.paints, q)) continue;
      const shared = Math.min(hi, over(next, q, slab.to)) - Math.max(lo, under(next, q, slab.to));
      if (shared > TOUCH) join(parent, start + p, nextStart + q);
    }
  }
}

function numbered(slabs: readonly Slab[], starts: readonly number[], parent: readonly number[]): Pieces {
  const names = new Map<number, number>();
  const of = slabs.map(({ paints }, i) =>
    paints.map((paint, k) => {
      if (!isSolid(paint)) return -1;
      const key = rootOf(parent, (starts[i] ?? 0) + k);
      const name = names.get(key) ?? names.size;
      names.set(key, name);
      return name;
    }),
  );
  return { of, count: names.size };
}

function solid(paints: readonly Paint[], k: number): boolean {
  const paint = paints[k];
  return paint !== undefined && isSolid(paint);
}

/** Diameters at `z` of the lines under and over a cell. */
function under({ bounds }: Slab, cell: number, z: number): number {
  const bound = bounds[cell - 1];
  return bound ? at(bound.line, z) : 0;
}

function over({ bounds }: Slab, cell: number, z: number): number {
  const bound = bounds[cell];
  return bound ? at(bound.line, z) : Number.POSITIVE_INFINITY;
}
