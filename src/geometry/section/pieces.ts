/** Which metal hangs together: cells that share a line, or a stretch of a wall, are one piece. */
import { isSolid, type Section } from '../section.ts';
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

function joined(section: Section): Pieces {
  const starts: number[] = [];
  let cells = 0;
  for (const slab of section.slabs) {
    starts.push(cells);
    cells += slab.paints.length;
  }
  const parent = Array.from({ length: cells }, (_, i) => i);
  const root = (i: number): number => {
    let k = i;
    for (let up = parent[k]; up !== undefined && up !== k; up = parent[k]) k = up;
    return k;
  };
  for (const [p, q] of neighbours(section, starts)) parent[root(p)] = root(q);
  const names = new Map<number, number>();
  const of = section.slabs.map((slab, i) =>
    slab.paints.map((paint, k) => {
      if (!isSolid(paint)) return -1;
      const key = root((starts[i] ?? 0) + k);
      if (!names.has(key)) names.set(key, names.size);
      return names.get(key) ?? -1;
    }),
  );
  return { of, count: names.size };
}

function neighbours(section: Section, starts: readonly number[]): readonly (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  section.slabs.forEach((slab, i) => {
    const start = starts[i] ?? 0;
    const own = solidSpans(section, i, slab.to);
    slab.paints.forEach((paint, k) => {
      const next = slab.paints[k + 1];
      if (next && isSolid(paint) && isSolid(next)) pairs.push([start + k, start + k + 1]);
    });
    for (const p of own)
      for (const q of solidSpans(section, i + 1, slab.to))
        if (Math.min(p.hi, q.hi) - Math.max(p.lo, q.lo) > TOUCH) pairs.push([start + p.cell, (starts[i + 1] ?? 0) + q.cell]);
  });
  return pairs;
}

function solidSpans(
  section: Section,
  i: number,
  z: number,
): readonly { readonly cell: number; readonly lo: number; readonly hi: number }[] {
  const slab = section.slabs[i];
  return (slab?.paints ?? []).flatMap((paint, cell) => {
    if (!slab || !isSolid(paint)) return [];
    const [under, over] = [slab.bounds[cell - 1], slab.bounds[cell]];
    return [{ cell, lo: under ? at(under.line, z) : 0, hi: over ? at(over.line, z) : Number.POSITIVE_INFINITY }];
  });
}
