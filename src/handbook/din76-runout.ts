/**
 * DIN 76-1: run-outs and undercuts of metric threads, by pitch. From memory but for the row of pitch 0.6 and the offsets of the
 * undercut's diameter, which were seen; a printed table should be asked before this is quoted as the standard. Between rows and outside
 * pitches 0.35 to 2 nothing is given.
 */
import { type Len, len, mm } from '../base/units.ts';
import type { Standing } from './fact.ts';
import { cite } from './sources.ts';

export type Form = 'normal' | 'short';
export type Undercut = {
  /** Under the nominal diameter outside, over it inside; on diameter. */
  readonly offset: Len;
  /** Full-depth part of the groove, at least; and the whole of it, at most. */
  readonly least: Len;
  readonly most: Len;
  readonly radius?: Len;
  readonly source: string;
  readonly standing: Standing;
};

/** Groove behind an outside thread (forms A normal, B short). */
export function undercut(pitch: Len, form: Form): Undercut | undefined {
  const row = OUTSIDE.find(([p]) => mm(p) === pitch);
  if (!row) return undefined;
  const [, offset, longLeast, longMost, shortLeast, shortMost, radius] = row;
  const [least, most] = form === 'normal' ? [longLeast, longMost] : [shortLeast, shortMost];
  return { offset: mm(offset), least: mm(least), most: mm(most), radius: mm(radius), ...SOURCE };
}

/** Groove behind an inside thread (forms C normal, D short). None under pitch 0.5. */
export function insideUndercut(pitch: Len, form: Form): Undercut | undefined {
  const row = INSIDE.find(([p]) => mm(p) === pitch);
  if (!row) return undefined;
  const [, , , offset, longLeast, longMost, shortLeast, shortMost] = row;
  const [least, most] = form === 'normal' ? [longLeast, longMost] : [shortLeast, shortMost];
  return { offset: mm(offset), least: mm(least), most: mm(most), ...SOURCE };
}

/** Incomplete thread at the end of an outside thread (x1, x2), at most; `shoulder` is the whole distance to a shoulder (a1, a2). */
export function runOut(pitch: Len, form: Form): { readonly thread: Len; readonly shoulder: Len } | undefined {
  const row = RUN_OUTS.find(([p]) => mm(p) === pitch);
  if (!row) return undefined;
  const [, x1, x2, a1, a2] = row;
  return form === 'normal' ? { thread: mm(x1), shoulder: mm(a1) } : { thread: mm(x2), shoulder: mm(a2) };
}

/** From the last full thread of a blind tapped hole to the end of the drilled cylinder (e1, e2). Short: none under pitch 0.5. */
export function blindRunOut(pitch: Len, form: Form): Len | undefined {
  const inside = INSIDE.find(([p]) => mm(p) === pitch);
  if (form === 'short') return inside && mm(inside[2]);
  const fine = FINE_E1.find(([p]) => mm(p) === pitch);
  const value = inside?.[1] ?? fine?.[1];
  return value === undefined ? undefined : mm(value);
}

/** Least width of a relief that a screw-cutting tool stops in: two pitches and half its width. Common practice, no source. */
export function reliefWidth(pitch: Len, toolWidth: Len): Len {
  return len(2 * pitch + Math.ceil(toolWidth / 2));
}

const SOURCE = { source: cite('din-76'), standing: 'from memory' } as const;

type N = number;
const RUN_OUTS: readonly (readonly [pitch: N, x1: N, x2: N, a1: N, a2: N])[] = [
  [0.35, 0.9, 0.45, 1.05, 0.7],
  [0.4, 1, 0.5, 1.2, 0.8],
  [0.45, 1.1, 0.6, 1.35, 0.9],
  [0.5, 1.25, 0.7, 1.5, 1],
  [0.6, 1.5, 0.75, 1.8, 1.2],
  [0.7, 1.75, 0.9, 2.1, 1.4],
  [0.75, 1.9, 1, 2.25, 1.5],
  [0.8, 2, 1, 2.4, 1.6],
  [1, 2.5, 1.25, 3, 2],
  [1.25, 3.2, 1.6, 4, 2.5],
  [1.5, 3.8, 1.9, 4.5, 3],
  [1.75, 4.3, 2.2, 5.3, 3.5],
  [2, 5, 2.5, 6, 4],
];
/** `offset` is d - dg; forms A and B. */
const OUTSIDE: readonly (readonly [pitch: N, offset: N, ag1: N, ag2: N, bg1: N, bg2: N, radius: N])[] = [
  [0.35, 0.6, 0.7, 1.2, 0.4, 0.9, 0.16],
  [0.4, 0.7, 0.8, 1.4, 0.5, 1, 0.2],
  [0.45, 0.7, 1, 1.6, 0.5, 1.1, 0.2],
  [0.5, 0.8, 1.1, 1.75, 0.5, 1.25, 0.2],
  [0.6, 1, 1.2, 2.1, 0.6, 1.5, 0.4],
  [0.7, 1.1, 1.5, 2.45, 0.8, 1.75, 0.4],
  [0.75, 1.2, 1.6, 2.6, 0.9, 1.9, 0.4],
  [0.8, 1.3, 1.7, 2.8, 0.9, 2, 0.4],
  [1, 1.6, 2.1, 3.5, 1.1, 2.5, 0.6],
  [1.25, 2, 2.7, 4.4, 1.5, 3.2, 0.6],
  [1.5, 2.3, 3.2, 5.2, 1.8, 3.8, 0.8],
  [1.75, 2.6, 3.9, 6.1, 2.1, 4.3, 1],
  [2, 3, 4.5, 7, 2.5, 5, 1],
];
const INSIDE: readonly (readonly [pitch: N, e1: N, e2: N, offset: N, cg1: N, cg2: N, dg1: N, dg2: N])[] = [
  [0.5, 2.8, 1.8, 0.3, 2, 2.7, 1.25, 2],
  [0.6, 3.4, 2.1, 0.3, 2.4, 3.3, 1.5, 2.4],
  [0.7, 3.8, 2.4, 0.3, 2.8, 3.8, 1.75, 2.75],
  [0.75, 4, 2.5, 0.3, 3, 4, 1.9, 2.9],
  [0.8, 4.2, 2.7, 0.3, 3.2, 4.2, 2, 3],
  [1, 5.1, 3.2, 0.5, 4, 5.2, 2.5, 3.7],
  [1.25, 6.2, 3.9, 0.5, 5, 6.7, 3.2, 4.9],
  [1.5, 7.3, 4.6, 0.5, 6, 7.8, 3.8, 5.6],
  [1.75, 8.3, 5.2, 0.5, 7, 9.1, 4.3, 6.4],
  [2, 9.3, 5.8, 0.5, 8, 10.3, 5, 7.3],
];
/** Pitches of which only e1 is recalled. */
const FINE_E1: readonly (readonly [pitch: N, e1: N])[] = [
  [0.35, 2.1],
  [0.4, 2.3],
  [0.45, 2.6],
];
