/** Where tags may stand: the free places of a lattice over the frame, and those nearest to a surface. */
import { isApart } from './collisions.ts';
import type { XY } from './display.ts';
import type { Surroundings } from './leaders.ts';
import { CLEAR, type Tag } from './settle.ts';

/** `phase`: shift of the lattice of places, as shares of its step. `places`: how many of them are weighed for a tag, from the nearest. */
export type Lattice = {
  readonly width: number;
  readonly height: number;
  readonly step: number;
  readonly phase: XY;
  readonly places: number;
};
/**
 * Row by row, left to right: the place `row * across.length + column` stands where they cross, and is struck out where it is not free.
 * `records`: of those that were asked for, one each.
 */
export type Places = {
  readonly across: readonly number[];
  readonly down: readonly number[];
  readonly struck: Uint8Array;
  readonly records: (XY | undefined)[];
};

/** Places stand this share of the lattice's step apart; the first assignment takes every second one, which do not overlap. */
const FINE = 0.5;

/** Tags of one kind and size have the same places. */
export function placesBySize(lattice: Lattice, around: Surroundings): (tag: Tag) => Places {
  const known = new Map<string, Places>();
  return (tag) => {
    const key = `${tag.kind} ${tag.width} ${tag.height}`;
    const found = known.get(key) ?? placesOf(tag, lattice, around);
    known.set(key, found);
    return found;
  };
}

/** The lattice, less what each box that a tag must keep clear of strikes out: its own stretch of it, not all places asked one by one. */
function placesOf(tag: Tag, lattice: Lattice, around: Surroundings): Places {
  const step = lattice.step * FINE;
  const across = stations(tag.width, lattice.width, lattice.phase.x * step, step);
  const down = stations(tag.height, lattice.height, lattice.phase.y * step, step);
  const struck = new Uint8Array(across.length * down.length);
  for (const box of around.boxes) {
    if (!isApart(tag.kind, box)) continue;
    const columns = within(across, step, box.x, box.w, tag.width);
    const rows = within(down, step, box.y, box.h, tag.height);
    for (let row = rows.first; row <= rows.last; row++)
      struck.fill(1, row * across.length + columns.first, row * across.length + columns.last + 1);
  }
  return { across, down, struck, records: new Array<XY | undefined>(struck.length) };
}

/** Stations whose tag, `size` long, would come nearer than CLEAR to the stretch `from`, `long`. An empty range has its last before its first. */
function within(
  at: readonly number[],
  step: number,
  from: number,
  long: number,
  size: number,
): { readonly first: number; readonly last: number } {
  const reach = size / 2 + CLEAR;
  const start = at[0] ?? 0;
  const first = Math.max(0, Math.floor((from - reach - start) / step) + 1);
  return { first, last: Math.max(first - 1, Math.min(at.length - 1, Math.ceil((from + long + reach - start) / step) - 1)) };
}

/** Flush with the far edge but for the phase: the free end has the least room. */
function stations(size: number, room: number, phase: number, step: number): readonly number[] {
  const near = size / 2 + CLEAR;
  const count = Math.floor((room - phase - 2 * near) / step) + 1;
  const first = room - phase - near - (count - 1) * step;
  return Array.from({ length: Math.max(0, count) }, (_, i) => first + i * step);
}

/**
 * Nearest first, of equals the first. They lie in rings of a millimetre, each a list by `next`, and a ring is sorted when it is come to: most
 * never are.
 */
export function* nearestFirst(anchors: readonly XY[], places: Places): Generator<XY> {
  const away = distances(anchors, places);
  const heads: number[] = [];
  const next = new Int32Array(away.length);
  // backwards, so that each list begins with its first place
  for (let i = away.length - 1; i >= 0; i--) {
    if (places.struck[i] === 1) continue;
    const ring = Math.floor(away[i] ?? 0);
    while (heads.length <= ring) heads.push(END);
    next[i] = heads[ring] ?? END;
    heads[ring] = i;
  }
  for (const head of heads) {
    const ring: number[] = [];
    for (let i = head; i !== END; i = next[i] ?? END) into(ring, i, away);
    for (const i of ring) yield recordOf(places, i);
  }
}
const END = -1;

/** Behind all that are as near. */
function into(ring: number[], i: number, away: Float64Array): void {
  const own = away[i] ?? 0;
  let at = ring.length;
  for (; at > 0 && (away[ring[at - 1] ?? 0] ?? 0) > own; at--) ring[at] = ring[at - 1] ?? 0;
  ring[at] = i;
}

/** Of every place from the nearest anchor. */
function distances(anchors: readonly XY[], { across, down, struck }: Places): Float64Array {
  const away = new Float64Array(struck.length);
  let i = 0;
  for (const y of down)
    for (const x of across) {
      if (struck[i] === 0) away[i] = leastDistance(anchors, x, y);
      i++;
    }
  return away;
}

export function leastDistance(anchors: readonly XY[], x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const anchor of anchors) least = Math.min(least, (anchor.x - x) ** 2 + (anchor.y - y) ** 2);
  return Math.sqrt(least);
}

function recordOf({ across, down, records }: Places, i: number): XY {
  const record = records[i] ?? { x: across[i % across.length] ?? 0, y: down[Math.floor(i / across.length)] ?? 0 };
  records[i] = record;
  return record;
}
