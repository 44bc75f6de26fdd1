/** What a leader costs: its length, and what it runs through. */
import type { Box } from '../model/display.ts';
import { kindOf } from './collisions.ts';
import type { XY } from './display.ts';
import { along, type Field, fieldOf, shareIn } from './field.ts';
import { distance, grown, type Leg } from './plane.ts';

/** Boxes that stand already, sorted once by what a leader may do with them. `owner`: to which line each of the `lines` belongs. */
export type Surroundings = {
  readonly boxes: readonly Box[];
  readonly solid: Field;
  readonly barred: Field;
  readonly lines: Field;
  readonly owner: readonly number[];
  /** Which lines a leader crossed already, by when it was asked. */
  readonly crossed: Int32Array;
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
    crossed: new Int32Array(names.length),
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
export function leaderCost(leader: Leg, around: Surroundings, most = Number.POSITIVE_INFINITY): number {
  const length = distance(leader.a, leader.b);
  if (length === 0) return Number.POSITIVE_INFINITY;
  const flat = Math.abs(leader.b.y - leader.a.y) < SLANT * Math.abs(leader.b.x - leader.a.x) ? LEVEL : 0;
  let cost = length + Math.max(0, length - LONG) + (length < LEAST ? TOO_SHORT : 0) + flat;
  if (cost > most) return Number.POSITIVE_INFINITY;
  const share = Math.max(0.1, 1 - TIP / length);
  const { a, b } = leader;
  const tip = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
  const long = length * share;
  for (let n = along(around.solid, a.x, a.y, tip.x, tip.y) - 1; n >= 0; n--)
    cost += THROUGH_WORK * shareIn(around.solid, around.solid.found[n] ?? 0, a.x, a.y, tip.x, tip.y) * long;
  if (cost > most) return Number.POSITIVE_INFINITY;
  for (let n = along(around.barred, a.x, a.y, b.x, b.y) - 1; n >= 0; n--)
    if (shareIn(around.barred, around.barred.found[n] ?? 0, a.x, a.y, b.x, b.y) > 0) return Number.POSITIVE_INFINITY;
  cost += ACROSS_LINE * crossings(a, tip, around);
  return cost > most ? Number.POSITIVE_INFINITY : cost;
}

/** A line counts once, however many boxes stand for it. */
function crossings(a: XY, b: XY, { lines, owner, crossed }: Surroundings): number {
  let count = 0;
  const there = along(lines, a.x, a.y, b.x, b.y);
  const now = lines.asked.times;
  for (let n = 0; n < there; n++) {
    const box = lines.found[n] ?? 0;
    const line = owner[box] ?? 0;
    if (crossed[line] === now || shareIn(lines, box, a.x, a.y, b.x, b.y) === 0) continue;
    crossed[line] = now;
    count++;
  }
  return count;
}
