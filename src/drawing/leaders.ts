/** What a leader costs: its length, and what it runs through. */
import type { Box } from '../model/display.ts';
import { kindOf } from './collisions.ts';
import { distance, grown, type Leg, part, runsThrough, type Span, shareWithin } from './plane.ts';

/** Boxes that stand already, sorted once by what a leader may do with them. */
export type Surroundings = {
  readonly boxes: readonly Box[];
  readonly solid: readonly Span[];
  readonly lines: readonly (readonly Box[])[];
  readonly barred: readonly Span[];
};

export function surroundings(boxes: readonly Box[]): Surroundings {
  const lines = new Map<string, Box[]>();
  for (const box of boxes.filter((b) => kindOf(b) === 'line')) lines.set(box.what, [...(lines.get(box.what) ?? []), box]);
  return {
    boxes,
    lines: [...lines.values()],
    solid: boxes.filter((b) => kindOf(b) === 'work'),
    barred: boxes.filter((b) => !['line', 'work', 'leader'].includes(kindOf(b))).map((b) => grown(b, CLEAR)),
  };
}

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
  const tipless = part(leader, 0, Math.max(0.1, 1 - TIP / length));
  const long = distance(tipless.a, tipless.b);
  for (const box of around.solid) cost += THROUGH_WORK * shareWithin(tipless, box) * long;
  if (cost > most) return Number.POSITIVE_INFINITY;
  for (const box of around.barred) if (runsThrough(leader, box)) return Number.POSITIVE_INFINITY;
  for (const boxes of around.lines) if (crosses(tipless, boxes)) cost += ACROSS_LINE;
  return cost > most ? Number.POSITIVE_INFINITY : cost;
}

/** A line counts once, however many boxes stand for it. */
function crosses(leg: Leg, boxes: readonly Box[]): boolean {
  for (const box of boxes) if (runsThrough(leg, box)) return true;
  return false;
}
