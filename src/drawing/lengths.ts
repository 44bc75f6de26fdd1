/**
 * Length dimensions in tiers above the work (ISO 129-1): shortest nearest, extension lines from the faces, the value in a gap of its line
 * or beside it. Where a value can't stand free, the extension line that it meets is interrupted; then a letter stands for it.
 */
import type { Advances, Box, Item } from '../model/display.ts';
import { isFree } from './collisions.ts';
import { arrowHead, line, type XY } from './display.ts';
import { type Layer, NARROW } from './paper.ts';
import { grown, type Leg, lineBoxes, withRoom } from './plane.ts';
import { levelValue, type Sizes, setValue, type Value } from './values.ts';

/** One dimension on paper: `from` and `to` are where its extension lines begin. */
export type Level = { readonly id: string; readonly from: XY; readonly to: XY; readonly text: readonly string[]; readonly letter?: string };
export type TierSizes = Sizes & { readonly gap: number; readonly pitch: number };
/** `top`: uppermost y that may be used. `base`: y of the highest thing below the tiers. */
export type TierRoom = {
  readonly base: number;
  readonly top: number;
  readonly left: number;
  readonly right: number;
  readonly taken: readonly Box[];
};
export type Tiers = Layer & { readonly lettered: readonly string[]; readonly top: number };

/** ISO 129-1: arrow heads; extension lines pass the dimension line by 8 line widths. */
const ARROW = 2.4;
const PAST = 8 * NARROW.width;
const CLEAR = 0.6;
const TAIL = 3;

type Way = { readonly items: readonly Item[]; readonly texts: readonly Box[]; readonly lines: readonly Leg[] };
/** `boxes`: of its texts and its line. */
type Placed = Way & {
  readonly dim: Level;
  readonly tier: number;
  readonly y: number;
  readonly boxes: readonly Box[];
  readonly lettered: boolean;
};

export function drawLengths(advances: Advances, dims: readonly Level[], sizes: TierSizes, room: TierRoom): Tiers {
  const placed = placeAll(advances, dims, sizes, room);
  const texts = placed.flatMap((p) => p.texts);
  const extensions = placed.flatMap((p) =>
    extensionLegs(p).flatMap((leg) => interrupted(leg, texts).map((l) => ({ leg: l, id: p.dim.id }))),
  );
  const left = dims.length === placed.length ? [] : shortestFirst(dims).filter((dim) => !placed.some((p) => p.dim === dim));
  return {
    items: [...extensions.map(({ leg }) => drawn(leg)), ...placed.flatMap((p) => [...p.lines.map(drawn), ...p.items, ...heads(p)])],
    boxes: [
      ...texts,
      ...placed.flatMap((p) => p.boxes.slice(p.texts.length)),
      ...extensions.flatMap(({ leg, id }) => lineBoxes(leg, `line ${id}`)),
    ],
    lettered: [...placed.filter((p) => p.lettered).map((p) => p.dim.id), ...left.map((dim) => dim.id)],
    top: topOf(placed, room),
  };
}

/** How far up they would reach, not drawn. */
export function topOfLengths(advances: Advances, dims: readonly Level[], sizes: TierSizes, room: TierRoom): number {
  return topOf(placeAll(advances, dims, sizes, room), room);
}

/** What their tiers take at least, mm: lengths over one place of the work stand in as many tiers, or their lines would lie on each other. */
export function heightAtLeast(dims: readonly Level[], sizes: TierSizes): number {
  let [most, open] = [0, 0];
  // where one ends another may begin
  const ends = dims
    .flatMap((d) => [
      { x: low(d), adds: 1 },
      { x: high(d), adds: -1 },
    ])
    .sort((p, q) => p.x - q.x || p.adds - q.adds);
  for (const { adds } of ends) {
    open += adds;
    most = Math.max(most, open);
  }
  return sizes.gap + (most - 1) * sizes.pitch + PAST;
}

function topOf(placed: readonly Placed[], room: TierRoom): number {
  return Math.min(room.base, ...placed.map((p) => p.y - PAST), ...placed.flatMap((p) => p.texts.map((t) => t.y)));
}

/** One after the other, the shortest first; what has no place is not among them. */
function placeAll(advances: Advances, dims: readonly Level[], sizes: TierSizes, room: TierRoom): readonly Placed[] {
  const placed: Placed[] = [];
  for (const dim of shortestFirst(dims)) {
    const found = place(advances, dim, dims, placed, sizes, room);
    if (found) placed.push(found);
  }
  return placed;
}

function shortestFirst(dims: readonly Level[]): readonly Level[] {
  return [...dims].sort((p, q) => extent(p) - extent(q) || low(p) - low(q) || (p.id < q.id ? -1 : 1));
}

const low = (d: Level): number => Math.min(d.from.x, d.to.x);
const high = (d: Level): number => Math.max(d.from.x, d.to.x);
const extent = (d: Level): number => high(d) - low(d);

/** The value free of everything; else across extension lines (they give way); else its letter; else nothing. */
function place(
  advances: Advances,
  dim: Level,
  dims: readonly Level[],
  placed: readonly Placed[],
  sizes: TierSizes,
  room: TierRoom,
): Placed | undefined {
  const value = setValue(advances, dim.text, sizes);
  const uprights = dims.filter((d) => d.id !== dim.id).flatMap((d) => futureLines(d, placed, room));
  const strict = [...room.taken, ...uprights];
  const found = tryTiers(dim, value, placed, sizes, room, strict) ?? tryTiers(dim, value, placed, sizes, room, room.taken);
  if (found || dim.letter === undefined) return found;
  const letter = tryTiers(dim, setValue(advances, [dim.letter], sizes), placed, sizes, room, room.taken);
  return letter && { ...letter, lettered: true };
}

/** Extension lines of the others: as far as they reach if that is known, else to the top. */
function futureLines(dim: Level, placed: readonly Placed[], room: TierRoom): readonly Box[] {
  const known = placed.find((p) => p.dim.id === dim.id);
  const top = known ? known.y - PAST : room.top;
  return [dim.from, dim.to].flatMap((p) => lineBoxes({ a: p, b: { x: p.x, y: Math.min(top, p.y) } }, `line ${dim.id}`));
}

function tryTiers(
  dim: Level,
  value: Value,
  placed: readonly Placed[],
  sizes: TierSizes,
  room: TierRoom,
  taken: readonly Box[],
): Placed | undefined {
  const over = placed.filter((p) => low(p.dim) < high(dim) && low(dim) < high(p.dim));
  const lowest = Math.max(-1, ...over.map((p) => p.tier)) + 1;
  const others = [...taken, ...placed.flatMap((p) => p.boxes)];
  for (let tier = lowest; ; tier++) {
    const y = room.base - sizes.gap - tier * sizes.pitch;
    if (y - value.height / 2 - CLEAR < room.top) return undefined;
    for (const tried of ways(dim, value, y)) {
      if (!isGood(tried, others, room)) continue;
      const boxes = [...tried.texts, ...tried.lines.flatMap((leg) => lineBoxes(leg, `line ${dim.id}`))];
      return { dim, tier, y, ...tried, boxes, lettered: false };
    }
  }
}

function isGood(way: Way, others: readonly Box[], room: TierRoom): boolean {
  const own = way.texts.map((t) => withRoom(t, CLEAR));
  if (own.some((t) => t.x < room.left || t.x + t.w > room.right)) return false;
  return own.every((t) => isFree(t, others)) && way.lines.every((leg) => lineBoxes(leg, 'line new').every((b) => isFree(b, others)));
}

/** In a gap of the line: middle, then a third from either end; else beside it to the right or left. */
function* ways(dim: Level, value: Value, y: number): Generator<Way> {
  const [x1, x2] = [low(dim), high(dim)];
  if (value.width + 2 * (CLEAR + ARROW) + 0.6 <= x2 - x1) {
    const third = (x2 - x1) / 3;
    for (const x of [(x1 + x2) / 2, x1 + third, x2 - third])
      if (x - value.width / 2 > x1 + ARROW + CLEAR && x + value.width / 2 < x2 - ARROW - CLEAR) yield within(dim, value, x, y);
  }
  for (const reach of REACHES) {
    yield beside(dim, value, y, 1, reach);
    yield beside(dim, value, y, -1, reach);
  }
}
const REACHES = [TAIL + ARROW, 3 * TAIL, 6 * TAIL];

function within(dim: Level, value: Value, x: number, y: number): Way {
  const { items, box } = levelValue(value, x, y, `text ${dim.id}`);
  const lines = [leg(low(dim), box.x - CLEAR, y), leg(box.x + box.w + CLEAR, high(dim), y)];
  return { items, texts: [box], lines };
}

function beside(dim: Level, value: Value, y: number, side: 1 | -1, reach: number): Way {
  const end = side === 1 ? high(dim) + reach : low(dim) - reach;
  const { items, box } = levelValue(value, end + side * (CLEAR + value.width / 2), y, `text ${dim.id}`);
  const tail = arrowsIn(dim) ? 0 : TAIL + ARROW;
  const lines = [leg(side === 1 ? low(dim) - tail : end, side === 1 ? end : high(dim) + tail, y)];
  return { items, texts: [box], lines };
}

const arrowsIn = (dim: Level): boolean => extent(dim) >= 2 * ARROW + 1;

/** Inside the extension lines, or from outside where there is no room. */
function heads({ dim, y }: Placed): readonly Item[] {
  const inside = arrowsIn(dim);
  return [
    arrowHead({ x: low(dim), y }, inside ? 180 : 0, ARROW, 'black'),
    arrowHead({ x: high(dim), y }, inside ? 0 : 180, ARROW, 'black'),
  ];
}

function leg(from: number, to: number, y: number): Leg {
  return { a: { x: from, y }, b: { x: to, y } };
}

function drawn(l: Leg): Item {
  return line(l.a.x, l.a.y, l.b.x, l.b.y, NARROW);
}

function extensionLegs(p: Placed): readonly Leg[] {
  return [p.dim.from, p.dim.to]
    .map((at) => ({ a: { x: at.x, y: at.y - CLEAR }, b: { x: at.x, y: p.y - PAST } }))
    .filter((l) => l.b.y < l.a.y);
}

/** An upright line less the texts that stand in its way. */
function interrupted(upright: Leg, texts: readonly Box[]): readonly Leg[] {
  const x = upright.a.x;
  const gaps = texts.map((t) => grown(t, CLEAR)).filter((t) => t.x < x && x < t.x + t.w);
  const sorted = [...gaps].sort((p, q) => q.y - p.y);
  const legs: Leg[] = [];
  let y = upright.a.y;
  for (const gap of sorted) {
    if (gap.y + gap.h <= upright.b.y || gap.y >= y) continue;
    if (gap.y + gap.h < y) legs.push({ a: { x, y }, b: { x, y: gap.y + gap.h } });
    y = Math.min(y, gap.y);
  }
  if (y > upright.b.y) legs.push({ a: { x, y }, b: { x, y: upright.b.y } });
  return legs;
}
