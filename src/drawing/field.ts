/**
 * Boxes as bare numbers, for what is asked of all of them thousands of times a picture. There are a dozen of a kind: most are passed by
 * at the first comparison, and a lattice to find the others by cost more than it saved.
 */
import type { Span } from './plane.ts';

/** Of the box `i`, the edges at 4i: left, top, right, low. */
export type Field = Float64Array;

export function fieldOf(boxes: readonly Span[]): Field {
  return new Float64Array(boxes.flatMap((b) => [b.x, b.y, b.x + b.w, b.y + b.h]));
}

/** Numbers that a box takes in a field. */
export const EDGES = 4;

/** Where the next box stands, at `at` or after it, that a box meets or touches; past the end where there is none. Most are passed by here. */
export function next(field: Field, at: number, left: number, top: number, right: number, low: number): number {
  const end = field.length;
  for (let i = at; i < end; i += EDGES) {
    if ((field[i] as number) > right || (field[i + 2] as number) < left) continue;
    if ((field[i + 1] as number) <= low && (field[i + 3] as number) >= top) return i;
  }
  return end;
}

/**
 * How much of a line lies inside the box whose edges stand `at` there, as a share of its length; 0 where it passes by. (Liang-Barsky,
 * without a record or a list.)
 */
export function shareIn(field: Field, at: number, ax: number, ay: number, bx: number, by: number): number {
  const left = field[at] ?? 0;
  const right = field[at + 2] ?? 0;
  if ((ax < left && bx < left) || (ax > right && bx > right)) return 0;
  const top = field[at + 1] ?? 0;
  const low = field[at + 3] ?? 0;
  if ((ay < top && by < top) || (ay > low && by > low)) return 0;
  const dx = bx - ax;
  const dy = by - ay;
  let t0 = 0;
  let t1 = 1;
  if (dx === 0) {
    if (ax <= left || ax >= right) return 0;
  } else {
    const p = (left - ax) / dx;
    const q = (right - ax) / dx;
    t0 = Math.max(t0, Math.min(p, q));
    t1 = Math.min(t1, Math.max(p, q));
  }
  if (dy === 0) return ay <= top || ay >= low ? 0 : Math.max(0, t1 - t0);
  const p = (top - ay) / dy;
  const q = (low - ay) / dy;
  return Math.max(0, Math.min(t1, Math.max(p, q)) - Math.max(t0, Math.min(p, q)));
}
