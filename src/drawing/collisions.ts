/**
 * Which marks of a picture meet though they may not. Layout asks this very function, and so do the tests.
 * A box's `what` is its kind, a blank, and its owner: 'text d1', 'ring 120', 'leader 120', 'line d1', 'mark A', 'work'.
 */
import type { Box, Item, Picture } from '../model/display.ts';
import { textBox } from './display.ts';
import { overlap } from './plane.ts';

/** Kinds that may not meet unless they have one owner. What is not listed may: lines cross lines and the work, leaders end on the work. */
const PAIRS = [
  ['text', 'text'],
  ['text', 'ring'],
  ['text', 'mark'],
  ['text', 'leader'],
  ['text', 'line'],
  ['text', 'work'],
  ['ring', 'ring'],
  ['ring', 'mark'],
  ['ring', 'leader'],
  ['ring', 'line'],
  ['ring', 'work'],
  ['mark', 'mark'],
  ['mark', 'leader'],
  ['mark', 'line'],
  ['mark', 'work'],
  ['leader', 'leader'],
] as const;
type Kinds = ReadonlySet<string>;
const NONE: Kinds = new Set();
const APART: ReadonlyMap<string, Kinds> = new Map(
  [...new Set(PAIRS.flat())].map((kind) => [kind, new Set(PAIRS.flatMap(([a, b]) => (a === kind ? [b] : b === kind ? [a] : [])))]),
);
/** Half the widest line may stand over the frame's edge by rounding. */
const EDGE = 0.02;

/** Pairs that overlap, and what leaves the frame, paired with a box called 'frame'. Empty for a good picture. */
export function collisions(picture: Picture): readonly (readonly [Box, Box])[] {
  const frame: Box = { x: 0, y: 0, w: picture.width, h: picture.height, what: 'frame' };
  const outside = [
    ...picture.boxes.filter((box) => !inside(box, frame)),
    ...picture.items.filter((item) => !within(item, frame)).map(extent),
  ];
  return [...meetings(picture.boxes), ...outside.map((box) => [box, frame] as const)];
}

/** Pairs of boxes that meet though they may not. */
export function meetings(boxes: readonly Box[]): readonly (readonly [Box, Box])[] {
  const kinds = boxes.map((box) => kindOf(box));
  const byLeft = boxes.map((_, i) => i).sort((i, j) => (boxes[i]?.x ?? 0) - (boxes[j]?.x ?? 0) || i - j);
  const found: [Box, Box][] = [];
  for (let i = 0; i < byLeft.length; i++) {
    const a = boxes[byLeft[i] ?? 0];
    const apart = apartFrom(kinds[byLeft[i] ?? 0] ?? '');
    for (let j = i + 1; a && j < byLeft.length; j++) {
      const at = byLeft[j] ?? 0;
      const b = boxes[at];
      if (!b || b.x > a.x + a.w) break;
      if (overlap(a, b) && apart.has(kinds[at] ?? '') && !sameOwner(a, b)) found.push([a, b]);
    }
  }
  return found;
}

/** Whether a new box may stand among these. */
export function isFree(box: Box, among: readonly Box[]): boolean {
  const apart = apartFrom(kindOf(box));
  // the cheapest question first: this is asked a thousand times a picture
  for (const other of among) if (overlap(box, other) && apart.has(kindOf(other)) && !sameOwner(box, other)) return false;
  return true;
}

/** Whether marks of this kind must keep clear of the box, their owners being different. */
export function isApart(kind: string, box: Box): boolean {
  return apartFrom(kind).has(kindOf(box));
}

function apartFrom(kind: string): Kinds {
  return APART.get(kind) ?? NONE;
}

export function kindOf(box: Box): string {
  const end = box.what.indexOf(' ');
  return end < 0 ? box.what : box.what.slice(0, end);
}

function sameOwner(a: Box, b: Box): boolean {
  return a.what === b.what || a.what.slice(kindOf(a).length) === b.what.slice(kindOf(b).length);
}

function inside(box: Box, frame: Box): boolean {
  return box.x >= -EDGE && box.y >= -EDGE && box.x + box.w <= frame.w + EDGE && box.y + box.h <= frame.h + EDGE;
}

/** As `inside` of the item's extent, without a record of it: nearly all items are. */
function within(item: Item, frame: Box): boolean {
  if (item.kind === 'text') return inside(textBox(item), frame);
  for (const s of item.segments) {
    if (s.to === 'close') continue;
    if (!isIn(s.x, s.y, frame)) return false;
    if (s.to === 'curve' && !(isIn(s.x1, s.y1, frame) && isIn(s.x2, s.y2, frame))) return false;
  }
  return true;
}

function isIn(x: number, y: number, frame: Box): boolean {
  return x >= -EDGE && y >= -EDGE && x <= frame.w + EDGE && y <= frame.h + EDGE;
}

function extent(item: Item): Box {
  if (item.kind === 'text') return textBox(item);
  let [left, top, right, low] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const reach = (x: number, y: number): void => {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    low = Math.max(low, y);
  };
  for (const s of item.segments) {
    if (s.to === 'close') continue;
    reach(s.x, s.y);
    if (s.to !== 'curve') continue;
    reach(s.x1, s.y1);
    reach(s.x2, s.y2);
  }
  return { x: left, y: top, w: right - left, h: low - top, what: 'path' };
}
