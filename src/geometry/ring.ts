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
  /** Along z: where it is neither level nor square to the axis, such as what a drill's point leaves at the end of a hole. */
  readonly slant?: readonly [lo: number, hi: number];
  readonly stages: ReadonlySet<Edge['stage']>;
};
/** `ring`: names in the order of the walk, each stretch once; '' is what no surface of the part is. `pieces`: how many there are. */
export type Finished = { readonly ring: readonly string[]; readonly extents: ReadonlyMap<SurfaceId, Extent>; readonly pieces: number };

export function finishedOf(part: Part, end: Section): Finished {
  const outlines = outlinesOf(end, isSolid).map((outline) => outline.filter((edge) => counts(part, edge)));
  let extents: Finished['extents'] | undefined;
  return {
    ring: startAt(outlines.flatMap(ringOf), part.ring[0]),
    // at most corners only the ring is looked at
    get extents() {
      extents ??= extentsOf(outlines.flat());
      return extents;
    },
    pieces: outlines.length,
  };
}

/** Neither the axis, nor a speck, nor the raw bar of a part that stays in the chuck. */
function counts(part: Part, edge: Edge): boolean {
  const { a, b } = edge;
  if (a.d <= SPECK && b.d <= SPECK) return false;
  if (Math.abs(b.z - a.z) < SPECK && Math.hypot(b.z - a.z, b.d - a.d) < SPECK) return false;
  return !(part.staysInChuck && edge.surface === '' && edge.stage === 'bar');
}

function ringOf(outline: Outline): readonly string[] {
  const merged: string[] = [];
  let last: string | undefined;
  for (const { surface } of outline) {
    if (surface !== last) merged.push(surface);
    last = surface;
  }
  return merged.length > 1 && merged[0] === last ? merged.slice(1) : merged;
}

function startAt(ring: readonly string[], first: SurfaceId | undefined): readonly string[] {
  const i = first === undefined ? -1 : ring.indexOf(first);
  return i < 0 ? ring : [...ring.slice(i), ...ring.slice(0, i)];
}

/** Spans are made wider in place. */
type Span = [lo: number, hi: number];
type Growing = { readonly z: Span; readonly d: Span; level?: Span; slant?: Span; readonly stages: Set<Edge['stage']> };
function extentsOf(edges: readonly Edge[]): ReadonlyMap<SurfaceId, Extent> {
  const found = new Map<SurfaceId, Growing>();
  for (const { a, b, surface, stage } of edges) {
    if (surface === '') continue;
    let one = found.get(surface);
    if (!one) {
      one = { z: [a.z, a.z], d: [a.d, a.d], stages: new Set() };
      found.set(surface, one);
    }
    widen(one.z, a.z, b.z);
    widen(one.d, a.d, b.d);
    const [along, across] = [Math.abs(a.z - b.z) > TOUCH, Math.abs(a.d - b.d) > TOUCH];
    if (along && across) {
      one.slant ??= [a.z, a.z];
      widen(one.slant, a.z, b.z);
    } else if (along) {
      one.level ??= [a.d, a.d];
      widen(one.level, a.d, b.d);
    }
    one.stages.add(stage);
  }
  return found;
}

function widen(span: Span, a: number, b: number): void {
  span[0] = Math.min(span[0], a, b);
  span[1] = Math.max(span[1], a, b);
}

export const sameRing = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((name, i) => name === b[i]);
