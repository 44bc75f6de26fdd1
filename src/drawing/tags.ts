/**
 * Balloons and labels with leaders: each gets a free place near its surface, all together at the least cost, with straight leaders
 * that do not cross. Balloons of one surface stand side by side and share a leader.
 */
import type { Box } from '../model/display.ts';
import { assign } from './assign.ts';
import { isApart } from './collisions.ts';
import type { XY } from './display.ts';
import { leaderCost, type Surroundings } from './leaders.ts';
import { distance, type Leg, overlap, type Span } from './plane.ts';
import { CLEAR, quarrel, type Standing, settle, type Tag } from './settle.ts';

/** `left`: ids of tags for which there is no free place. */
export type Placing = { readonly standing: readonly Standing[]; readonly left: readonly string[] };
/** `phase`: shift of the lattice of places, as shares of its step. `places`: how many of them are weighed for a tag, from the nearest. */
export type Lattice = {
  readonly width: number;
  readonly height: number;
  readonly step: number;
  readonly phase: XY;
  readonly places: number;
};

const BEST_ANCHORS = 2;
/** So many times more places are asked than are wanted, if most have no way to the surface. */
const IN_VAIN = 4;
/** So many of a tag's cheapest options take part in the first assignment; all of them do when things are moved after it. */
const AT_START = 30;
/** Places stand this share of the lattice's step apart; the first assignment takes every second one, which do not overlap. */
const FINE = 0.5;

export function placeTags(tags: readonly Tag[], lattice: Lattice, around: Surroundings): Placing {
  const placesOf = bySize((tag) => places(tag, lattice, around));
  const options = tags.map((tag) => optionsOf(tag, placesOf(tag), lattice.places, around));
  const able = tags.map((_, i) => i).filter((i) => (options[i] ?? []).length > 0);
  const usable = able.map((i) => options[i] ?? []);
  const start = startOf(usable);
  return { standing: settle(start, usable), left: tags.filter((_, i) => !able.includes(i)).map((t) => t.id) };
}

/** Places nearest the surface with their best anchors, cheapest first. A leader never costs less than its length. */
function optionsOf(tag: Tag, places: readonly XY[], most: number, around: Surroundings): readonly Standing[] {
  const anchors = [...tag.anchors].sort((p, q) => p.y - q.y || p.x - q.x);
  const found: Standing[] = [];
  let count = 0;
  let asked = 0;
  for (const middle of nearestFirst(anchors, places)) {
    const ways = bestWays(tag, anchors, middle, around);
    found.push(...ways);
    if (ways.length > 0) count++;
    asked++;
    if (count >= most || (count > 0 && asked >= IN_VAIN * most)) break;
  }
  return found.sort(cheaper);
}

function cheaper(p: Standing, q: Standing): number {
  return p.cost - q.cost || p.middle.y - q.middle.y || p.middle.x - q.middle.x;
}

/**
 * Sorted ring by ring of a millimetre, as far as they are asked for: the far ones never are, and no more is known of them than how far they
 * stand from the box round the anchors. Places come row by row, left to right.
 */
function* nearestFirst(anchors: readonly XY[], places: readonly XY[]): Generator<XY> {
  const away = new Float64Array(places.length);
  const [rings, unknown] = [[], byBox(anchors, places)] as [number[][], readonly (readonly number[] | undefined)[]];
  for (let r = 0; r < Math.max(rings.length, unknown.length); r++) {
    for (const i of unknown[r] ?? []) {
      const least = leastDistance(anchors, places[i] as XY);
      away[i] = least;
      into(rings, Math.floor(least), i);
    }
    const ring = rings[r] ?? [];
    ring.sort((i, j) => (away[i] ?? 0) - (away[j] ?? 0) || i - j);
    for (const i of ring) yield places[i] as XY;
  }
}

/** By whole millimetres from the box round the anchors: no anchor is nearer. */
function byBox(anchors: readonly XY[], places: readonly XY[]): readonly (readonly number[] | undefined)[] {
  const [xs, ys] = [anchors.map((p) => p.x), anchors.map((p) => p.y)];
  const [left, right, top, low] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const found: number[][] = [];
  for (let i = 0; i < places.length; i++) {
    const { x, y } = places[i] as XY;
    const across = x < left ? left - x : x > right ? x - right : 0;
    const down = y < top ? top - y : y > low ? y - low : 0;
    into(found, Math.floor(Math.sqrt(across * across + down * down)), i);
  }
  return found;
}

function into(rings: number[][], at: number, i: number): void {
  const ring = rings[at];
  if (ring) ring.push(i);
  else rings[at] = [i];
}

function leastDistance(anchors: readonly XY[], middle: XY): number {
  let least = Number.POSITIVE_INFINITY;
  for (const anchor of anchors) least = Math.min(least, (anchor.x - middle.x) ** 2 + (anchor.y - middle.y) ** 2);
  return Math.sqrt(least);
}

type Option = { readonly leader: Leg; readonly cost: number };
/** The cheapest leaders from one place. As a leader costs its length at least, most anchors need no closer look. */
function bestWays(tag: Tag, anchors: readonly XY[], middle: XY, around: Surroundings): readonly Standing[] {
  const best: Option[] = [];
  const away = anchors.map((anchor) => (anchor.x - middle.x) ** 2 + (anchor.y - middle.y) ** 2);
  for (let anchor = nearest(anchors, away); anchor; anchor = nearest(anchors, away)) {
    const most = best[BEST_ANCHORS - 1]?.cost ?? Number.POSITIVE_INFINITY;
    // the others are further still
    if (distance(middle, anchor) - tag.width / 2 >= most) break;
    const leader = leaderTo(tag, middle, anchor);
    const cost = leaderCost(leader, around, most);
    if (cost >= most) continue;
    let at = best.length;
    while (at > 0 && (best[at - 1]?.cost ?? 0) > cost) at--;
    best.splice(at, 0, { leader, cost });
    if (best.length > BEST_ANCHORS) best.pop();
  }
  if (best.length === 0) return [];
  const span = spanAt(tag, middle);
  return best.map(({ leader, cost }) => ({ tag, middle, leader, cost, span, reach: reachOf(span, leader) }));
}

/** The nearest that was not given yet, the first of several: its distance is struck out. Mostly two or three of them are asked for. */
function nearest(anchors: readonly XY[], away: number[]): XY | undefined {
  let [at, least] = [-1, Number.POSITIVE_INFINITY];
  for (let i = 0; i < away.length; i++) {
    const own = away[i] ?? least;
    if (own < least) [at, least] = [i, own];
  }
  if (at >= 0) away[at] = Number.POSITIVE_INFINITY;
  return anchors[at];
}

/** Tags of one kind and size have the same places. */
function bySize(find: (tag: Tag) => readonly XY[]): (tag: Tag) => readonly XY[] {
  const known = new Map<string, readonly XY[]>();
  return (tag) => {
    const key = `${tag.kind} ${tag.width} ${tag.height}`;
    const found = known.get(key) ?? find(tag);
    known.set(key, found);
    return found;
  };
}

/** The lattice, less what each box that a tag must keep clear of strikes out: its own stretch of it, not all places asked one by one. */
function places(tag: Tag, lattice: Lattice, around: Surroundings): readonly XY[] {
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
  const free: XY[] = [];
  for (const [row, y] of down.entries())
    for (const [column, x] of across.entries()) if (struck[row * across.length + column] === 0) free.push({ x, y });
  return free;
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

function spanAt(tag: Tag, middle: XY): Span {
  return { x: middle.x - tag.width / 2, y: middle.y - tag.height / 2, w: tag.width, h: tag.height };
}

/** From the nearest port to the anchor. */
function leaderTo({ ports }: Tag, middle: XY, anchor: XY): Leg {
  let [x, y, least] = [middle.x, middle.y, Number.POSITIVE_INFINITY];
  for (const { dx, dy, radius } of ports) {
    const centreX = middle.x + dx;
    const centreY = middle.y + dy;
    const [alongX, alongY] = [anchor.x - centreX, anchor.y - centreY];
    const away = Math.sqrt(alongX ** 2 + alongY ** 2);
    const share = away === 0 ? 0 : Math.min(1, radius / away);
    const [fromX, fromY] = [centreX + alongX * share, centreY + alongY * share];
    const length = Math.sqrt((fromX - anchor.x) ** 2 + (fromY - anchor.y) ** 2);
    if (length < least) [x, y, least] = [fromX, fromY, length];
  }
  return { a: { x, y }, b: anchor };
}

/** CLEAR round both. */
function reachOf(span: Span, { a, b }: Leg): Span {
  const x = Math.min(span.x, a.x, b.x) - CLEAR;
  const y = Math.min(span.y, a.y, b.y) - CLEAR;
  return { x, y, w: Math.max(span.x + span.w, a.x, b.x) + CLEAR - x, h: Math.max(span.y + span.h, a.y, b.y) + CLEAR - y };
}

/** One least-cost assignment of the tags of the commonest size to places; wider ones, which fill several places, go to their best first. */
function startOf(options: readonly (readonly Standing[])[]): Standing[] {
  const chosen: (Standing | undefined)[] = options.map(() => undefined);
  const wide = (o: readonly Standing[]): number => o[0]?.tag.width ?? 0;
  const least = Math.min(...options.map(wide));
  const order = options
    .map((_, i) => i)
    .filter((i) => wide(options[i] ?? []) > least)
    .sort((i, j) => wide(options[j] ?? []) - wide(options[i] ?? []) || i - j);
  for (const i of order) {
    const all = options[i] ?? [];
    chosen[i] = all.find((o) => chosen.every((c) => !c || !quarrel(o, c))) ?? all[0];
  }
  const single = options.map((_, i) => i).filter((i) => !chosen[i]);
  const free = apart(
    single.flatMap((i) => (options[i] ?? []).slice(0, AT_START)),
    chosen.filter((c) => c !== undefined),
  );
  const column = new Map(free.map((s, j) => [s.middle, j]));
  const best = single.map((i) => bestByPlace(options[i] ?? [], column, free.length));
  const columns = single.length <= free.length ? assign(best.map((row) => row.map((o) => o?.cost ?? Number.POSITIVE_INFINITY))) : [];
  single.forEach((i, row) => {
    chosen[i] = best[row]?.[columns[row] ?? -1] ?? options[i]?.[0];
  });
  return chosen.filter((c) => c !== undefined);
}

/** Places, cheapest first, that overlap neither each other nor what is chosen already. */
function apart(options: readonly Standing[], chosen: readonly Standing[]): readonly Standing[] {
  const found: Standing[] = [];
  const clear = (option: Standing, among: readonly Standing[]): boolean => !among.some((s) => overlap(option.span, s.span, CLEAR));
  for (const option of [...options].sort(cheaper)) if (clear(option, chosen) && clear(option, found)) found.push(option);
  return found;
}

/** Tags of one size share the records of their places, and those of another stand elsewhere. */
function bestByPlace(options: readonly Standing[], column: ReadonlyMap<XY, number>, count: number): readonly (Standing | undefined)[] {
  const row: (Standing | undefined)[] = new Array<undefined>(count).fill(undefined);
  for (const option of options) {
    const at = column.get(option.middle);
    if (at !== undefined && !row[at]) row[at] = option; // cheapest first
  }
  return row;
}

export function boxOf(s: Standing): Box {
  return { ...s.span, what: `${s.tag.kind} ${s.tag.id}` };
}
