/** The finished work's ring of surfaces, and what can be measured on it with scale and caliper. */
import type { SurfaceId } from '../model/ids.ts';
import type { Part } from '../model/part.ts';
import type { Edge, Outline } from '../model/stage.ts';
import { TOUCH } from './section/lines.ts';
import { outlinesOf } from './section/outline.ts';
import { isSolid, type Section } from './section.ts';

/**
 * Edges shorter than this (a tenth of a micrometre) are what doubles leave of nothing: no cut that is asked for in whole units makes one.
 */
const SPECK = 0.5;

/** What there is of one surface: its extent both ways, and the diameters between which its level stretches lie. */
export type Extent = {
  readonly z: readonly [lo: number, hi: number];
  readonly d: readonly [lo: number, hi: number];
  readonly level?: readonly [lo: number, hi: number];
  readonly stages: ReadonlySet<Edge['stage']>;
};
/** `ring`: names in the order of the walk, each stretch once; '' is what no surface of the part is. `pieces`: how many there are. */
export type Finished = { readonly ring: readonly string[]; readonly extents: ReadonlyMap<SurfaceId, Extent>; readonly pieces: number };

export function finishedOf(part: Part, end: Section): Finished {
  const outlines = outlinesOf(end, isSolid);
  const edges = outlines.flat().filter((edge) => counts(part, edge));
  return { ring: startAt(ringOf(outlines, part), part.ring[0]), extents: extentsOf(edges), pieces: outlines.length };
}

/** Neither the axis, nor a speck, nor the raw bar of a part that stays in the chuck. */
function counts(part: Part, edge: Edge): boolean {
  if (edge.a.d <= SPECK && edge.b.d <= SPECK) return false;
  if (Math.hypot(edge.b.z - edge.a.z, edge.b.d - edge.a.d) < SPECK) return false;
  return !(part.staysInChuck && edge.surface === '' && edge.stage === 'bar');
}

function ringOf(outlines: readonly Outline[], part: Part): readonly string[] {
  return outlines.flatMap((outline) => {
    const names = outline.filter((edge) => counts(part, edge)).map((edge) => edge.surface);
    const merged = names.filter((name, i) => name !== names[i - 1]);
    return merged.length > 1 && merged[0] === merged.at(-1) ? merged.slice(1) : merged;
  });
}

function startAt(ring: readonly string[], first: SurfaceId | undefined): readonly string[] {
  const i = first === undefined ? -1 : ring.indexOf(first);
  return i < 0 ? ring : [...ring.slice(i), ...ring.slice(0, i)];
}

type Growing = {
  z: readonly [number, number];
  d: readonly [number, number];
  level?: readonly [number, number];
  readonly stages: Set<Edge['stage']>;
};
function extentsOf(edges: readonly Edge[]): ReadonlyMap<SurfaceId, Extent> {
  const found = new Map<SurfaceId, Growing>();
  for (const { a, b, surface, stage } of edges) {
    if (surface === '') continue;
    const old = found.get(surface);
    const isLevel = Math.abs(a.d - b.d) <= TOUCH && Math.abs(a.z - b.z) > TOUCH;
    const one = old ?? { z: span(undefined, a.z, b.z), d: span(undefined, a.d, b.d), stages: new Set() };
    if (old) {
      old.z = span(old.z, a.z, b.z);
      old.d = span(old.d, a.d, b.d);
    } else found.set(surface, one);
    if (isLevel) one.level = span(one.level, a.d, b.d);
    one.stages.add(stage);
  }
  return found;
}

const span = (old: readonly [number, number] | undefined, a: number, b: number): readonly [number, number] => [
  Math.min(old?.[0] ?? a, a, b),
  Math.max(old?.[1] ?? b, a, b),
];

export const sameRing = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((name, i) => name === b[i]);
