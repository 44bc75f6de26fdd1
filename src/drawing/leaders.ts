/** What a leader costs: its length, and what it runs through. */
import type { Box } from '../model/display.ts';
import { kindOf } from './collisions.ts';
import type { XY } from './display.ts';
import { EDGES, type Field, fieldOf, next, shareIn } from './field.ts';
import { distance, grown } from './plane.ts';

/** Boxes that stand already, sorted once by what a leader may do with them. `owner`: to which line each of the `lines` belongs. */
export type Surroundings = {
  readonly boxes: readonly Box[];
  readonly solid: Field;
  readonly barred: Field;
  readonly lines: Field;
  readonly owner: readonly number[];
  /** Which lines the leader in question crosses: written anew for each. */
  readonly crossed: Uint8Array;
};

export function surroundings(boxes: readonly Box[]): Surroundings {
  const kinds = boxes.map(kindOf);
  const of = (kind: string): readonly Box[] => boxes.filter((_, i) => kinds[i] === kind);
  const barred = boxes.filter((_, i) => !WAYS.includes(kinds[i] ?? ''));
  const lines = of('line');
  const names = [...new Set(lines.map((b) => b.what))];
  const place = new Map(names.map((name, i) => [name, i]));
  return {
    boxes,
    solid: fieldOf(of('work')),
    barred: fieldOf(barred.map((b) => grown(b, CLEAR))),
    lines: fieldOf(lines),
    owner: lines.map((b) => place.get(b.what) ?? 0),
    crossed: new Uint8Array(names.length),
  };
}

/** What a leader may run through, though not for nothing. */
const WAYS: readonly string[] = ['line', 'work', 'leader'];
/** In mm of leader: what it is worth to go round. */
const ACROSS_LINE = 7;
const THROUGH_WORK = 0.7;
const TOO_SHORT = 6;
const LEVEL = 4;
const LEAST = 3;
const LONG = 30;
const TIP = 1;
const CLEAR = 0.5;
/** tan of the angle to the axis under which a leader reads as an edge of the work. */
const SLANT = 0.16;

/** mm; Infinity where it would run through a text, a mark or another ring, or would cost more than `most` (mm). */
export function leaderCost(a: XY, b: XY, { solid, barred, lines, owner, crossed }: Surroundings, most = Number.POSITIVE_INFINITY): number {
  const length = distance(a, b);
  if (length === 0) return Number.POSITIVE_INFINITY;
  const flat = Math.abs(b.y - a.y) < SLANT * Math.abs(b.x - a.x) ? LEVEL : 0;
  let cost = length + Math.max(0, length - LONG) + (length < LEAST ? TOO_SHORT : 0) + flat;
  if (cost > most) return Number.POSITIVE_INFINITY;
  const [left, top, right, low] = [Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y)];
  for (let at = next(barred, 0, left, top, right, low); at < barred.length; at = next(barred, at + EDGES, left, top, right, low))
    if (shareIn(barred, at, a.x, a.y, b.x, b.y) > 0) return Number.POSITIVE_INFINITY;
  const share = Math.max(0.1, 1 - TIP / length);
  const tipX = a.x + (b.x - a.x) * share;
  const tipY = a.y + (b.y - a.y) * share;
  const long = length * share;
  for (let at = next(solid, 0, left, top, right, low); at < solid.length; at = next(solid, at + EDGES, left, top, right, low))
    cost += THROUGH_WORK * shareIn(solid, at, a.x, a.y, tipX, tipY) * long;
  if (cost > most) return Number.POSITIVE_INFINITY;
  let across = 0;
  crossed.fill(0);
  for (let at = next(lines, 0, left, top, right, low); at < lines.length; at = next(lines, at + EDGES, left, top, right, low)) {
    const line = owner[at / EDGES] ?? 0;
    // a line counts once, however many boxes stand for it
    if (crossed[line] === 1 || shareIn(lines, at, a.x, a.y, tipX, tipY) === 0) continue;
    crossed[line] = 1;
    across++;
  }
  cost += ACROSS_LINE * across;
  return cost > most ? Number.POSITIVE_INFINITY : cost;
}
