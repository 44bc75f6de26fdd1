/**
 * Which marks of a picture meet though they may not. Layout asks this very function, and so do the tests.
 * A box's `what` is its kind, a blank, and its owner: 'text d1', 'ring 120', 'leader 120', 'line d1', 'mark A', 'work'.
 */
import type { Box, Item, Picture } from '../model/display.ts';
import { textBox } from './display.ts';
import { overlap } from './plane.ts';

/** Kinds that may not meet unless they have one owner. What is not listed may: lines cross lines and the work, leaders end on the work. */
const APART: ReadonlySet<string> = new Set(
  [
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
  ].flatMap(([a, b]) => [`${a} ${b}`, `${b} ${a}`]),
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
    const [a, kindA] = [boxes[byLeft[i] ?? 0], kinds[byLeft[i] ?? 0]];
    for (let j = i + 1; a && j < byLeft.length; j++) {
      const [b, kindB] = [boxes[byLeft[j] ?? 0], kinds[byLeft[j] ?? 0]];
      if (!b || b.x > a.x + a.w) break;
      if (overlap(a, b) && APART.has(`${kindA} ${kindB}`) && !sameOwner(a, b)) found.push([a, b]);
    }
  }
  return found;
}

/** Whether a new box may stand among these. */
export function isFree(box: Box, among: readonly Box[]): boolean {
  const kind = kindOf(box);
  // the cheapest question first: this is asked a hundred thousand times a picture
  return !among.some((other) => overlap(box, other) && APART.has(`${kind} ${kindOf(other)}`) && !sameOwner(box, other));
}

/** Whether marks of this kind must keep clear of the box, their owners being different. */
export function isApart(kind: string, box: Box): boolean {
  return APART.has(`${kind} ${kindOf(box)}`);
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
  return item.segments.every(
    (s) => s.to === 'close' || (isIn(s.x, s.y, frame) && (s.to !== 'curve' || (isIn(s.x1, s.y1, frame) && isIn(s.x2, s.y2, frame)))),
  );
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
