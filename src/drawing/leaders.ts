/** What a leader costs: its length, and what it runs through. */
import type { Box } from '../model/display.ts';
import { kindOf } from './collisions.ts';
import { clippedTo, distance, grown, type Leg, part, runsThrough, type Span } from './plane.ts';

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

/** mm; Infinity where it would run through a text, a mark or another ring. */
export function leaderCost(leader: Leg, around: Surroundings): number {
  const length = distance(leader.a, leader.b);
  if (length === 0) return Number.POSITIVE_INFINITY;
  if (around.barred.some((box) => runsThrough(leader, box))) return Number.POSITIVE_INFINITY;
  const tipless = part(leader, 0, Math.max(0.1, 1 - TIP / length));
  let inWork = 0;
  for (const box of around.solid) inWork += lengthWithin(tipless, box);
  let crossed = 0;
  for (const boxes of around.lines) if (boxes.some((box) => runsThrough(tipless, box))) crossed++;
  const flat = Math.abs(leader.b.y - leader.a.y) < SLANT * Math.abs(leader.b.x - leader.a.x) ? LEVEL : 0;
  const tooLong = Math.max(0, length - LONG);
  return length + tooLong + (length < LEAST ? TOO_SHORT : 0) + flat + ACROSS_LINE * crossed + THROUGH_WORK * inWork;
}

function lengthWithin(leg: Leg, box: Span): number {
  const share = runsThrough(leg, box) ? clippedTo(leg, box) : undefined;
  return share ? (share[1] - share[0]) * distance(leg.a, leg.b) : 0;
}
