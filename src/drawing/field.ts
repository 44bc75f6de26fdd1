/**
 * Boxes sorted into the cells of a lattice, so that what a line may meet is found along its way and not among all of them: this is asked
 * tens of thousands of times a picture. Its marks of what was met already are its own, and no answer depends on them.
 */
import type { Span } from './plane.ts';

/** `to`: of the box `i`, the edges at 4i: left, top, right, low. */
export type Field = {
  readonly edges: Float64Array;
  readonly x: number;
  readonly y: number;
  readonly columns: number;
  readonly rows: number;
  readonly cells: readonly (readonly number[] | undefined)[];
  readonly met: Int32Array;
  readonly found: Int32Array;
  readonly asked: { times: number };
};

/** mm */
const CELL = 5;

export function fieldOf(boxes: readonly Span[]): Field {
  const edges = new Float64Array(boxes.flatMap((b) => [b.x, b.y, b.x + b.w, b.y + b.h]));
  let [x, y, right, low] = [0, 0, CELL, CELL];
  for (const b of boxes) {
    [x, y] = [Math.min(x, b.x), Math.min(y, b.y)];
    [right, low] = [Math.max(right, b.x + b.w), Math.max(low, b.y + b.h)];
  }
  const columns = Math.floor((right - x) / CELL) + 1;
  const rows = Math.floor((low - y) / CELL) + 1;
  const cells = new Array<number[] | undefined>(columns * rows).fill(undefined);
  for (const [i, b] of boxes.entries()) {
    const from = Math.floor((b.x - x) / CELL);
    const to = Math.floor((b.x + b.w - x) / CELL);
    for (let row = Math.floor((b.y - y) / CELL); row <= Math.floor((b.y + b.h - y) / CELL); row++)
      for (let cell = row * columns + from; cell <= row * columns + to; cell++) {
        const there = cells[cell];
        if (there) there.push(i);
        else cells[cell] = [i];
      }
  }
  return { edges, x, y, columns, rows, cells, met: new Int32Array(boxes.length), found: new Int32Array(boxes.length), asked: { times: 0 } };
}

/** How many boxes the line may meet, each once; which, stands in `found` from its beginning. Boxes that the line passes by are among them. */
export function along(field: Field, ax: number, ay: number, bx: number, by: number): number {
  const { columns, rows, cells, met, found } = field;
  field.asked.times += 1;
  const now = field.asked.times;
  const top = Math.min(ay, by);
  const low = Math.max(ay, by);
  const last = Math.min(rows - 1, Math.floor((low - field.y) / CELL));
  const lean = ay === by ? 0 : (bx - ax) / (by - ay);
  let count = 0;
  for (let row = Math.max(0, Math.floor((top - field.y) / CELL)); row <= last; row++) {
    const p = ay === by ? ax : ax + (Math.max(top, field.y + row * CELL) - ay) * lean;
    const q = ay === by ? bx : ax + (Math.min(low, field.y + (row + 1) * CELL) - ay) * lean;
    const from = Math.max(0, Math.floor((Math.min(p, q) - field.x - DUST) / CELL));
    const to = Math.min(columns - 1, Math.floor((Math.max(p, q) - field.x + DUST) / CELL));
    for (let cell = row * columns + from; cell <= row * columns + to; cell++) {
      const there = cells[cell];
      if (!there) continue;
      for (const box of there) {
        if (met[box] === now) continue;
        met[box] = now;
        found[count++] = box;
      }
    }
  }
  return count;
}
const DUST = 1e-9;

/**
 * How much of a line lies inside a box, as a share of its length; 0 where it passes by. (Liang-Barsky, without a record or a list.)
 */
export function shareIn(field: Field, box: number, ax: number, ay: number, bx: number, by: number): number {
  const { edges } = field;
  const left = edges[4 * box] ?? 0;
  const top = edges[4 * box + 1] ?? 0;
  const right = edges[4 * box + 2] ?? 0;
  const low = edges[4 * box + 3] ?? 0;
  if ((ax < left && bx < left) || (ay < top && by < top) || (ax > right && bx > right) || (ay > low && by > low)) return 0;
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
