/**
 * Balloons and labels with leaders: each gets a free place near its surface, all together at the least cost, with straight leaders
 * that do not cross. Balloons of one surface stand side by side and share a leader.
 */
import type { Box } from '../model/display.ts';
import { assign } from './assign.ts';
import { isApart } from './collisions.ts';
import type { XY } from './display.ts';
import { leaderCost, type Surroundings } from './leaders.ts';
import { distance, grown, type Leg, overlap, type Span } from './plane.ts';
import { CLEAR, quarrel, type Standing, settle, short, type Tag } from './settle.ts';

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
  const near = places
    .map((middle) => ({ middle, away: leastDistance(tag.anchors, middle) }))
    .sort((p, q) => p.away - q.away || p.middle.y - q.middle.y || p.middle.x - q.middle.x);
  const found: Standing[] = [];
  let count = 0;
  for (const { middle } of near) {
    const ways = bestWays(tag, middle, around);
    found.push(...ways);
    if (ways.length > 0) count++;
    if (count >= most) break;
  }
  return found.sort((p, q) => p.cost - q.cost || p.middle.y - q.middle.y || p.middle.x - q.middle.x);
}

function leastDistance(anchors: readonly XY[], middle: XY): number {
  let least = Number.POSITIVE_INFINITY;
  for (const anchor of anchors) least = Math.min(least, (anchor.x - middle.x) ** 2 + (anchor.y - middle.y) ** 2);
  return least;
}

/** The cheapest leaders from one place. As a leader costs its length at least, most anchors need no closer look. */
function bestWays(tag: Tag, middle: XY, around: Surroundings): readonly Standing[] {
  const legs = tag.anchors.map((anchor) => leaderTo(tag, middle, anchor)).sort((p, q) => p.length - q.length);
  let best: { readonly leader: Leg; readonly cost: number }[] = [];
  for (const { leader, length } of legs) {
    if (best.length === BEST_ANCHORS && length >= (best.at(-1)?.cost ?? 0)) break;
    const cost = leaderCost(leader, around);
    if (Number.isFinite(cost)) best = [...best, { leader, cost }].sort((p, q) => p.cost - q.cost).slice(0, BEST_ANCHORS);
  }
  const span = spanAt(tag, middle);
  return best.map(({ leader, cost }) => ({
    tag,
    middle,
    leader,
    cost,
    span,
    neck: short(leader),
    reach: grown(bounds(span, leader), CLEAR),
  }));
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

function places(tag: Tag, lattice: Lattice, around: Surroundings): readonly XY[] {
  const step = lattice.step * FINE;
  const across = stations(tag.width, lattice.width, lattice.phase.x * step, step);
  const down = stations(tag.height, lattice.height, lattice.phase.y * step, step);
  const barred = around.boxes.filter((box) => isApart(tag.kind, box));
  const free = (middle: XY): boolean => {
    const span = spanAt(tag, middle);
    return !barred.some((box) => overlap(span, box, CLEAR));
  };
  return down.flatMap((y) => across.map((x) => ({ x, y })).filter(free));
}

function stations(size: number, room: number, phase: number, step: number): readonly number[] {
  const first = size / 2 + CLEAR + phase;
  const count = Math.floor((room - size / 2 - CLEAR - first) / step) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => first + i * step);
}

function spanAt(tag: Tag, middle: XY): Span {
  return { x: middle.x - tag.width / 2, y: middle.y - tag.height / 2, w: tag.width, h: tag.height };
}

/** From the nearest port to the anchor. */
function leaderTo(tag: Tag, middle: XY, anchor: XY): { readonly leader: Leg; readonly length: number } {
  let best = { leader: { a: middle, b: anchor }, length: Number.POSITIVE_INFINITY };
  for (const port of tag.ports) {
    const a = startAt(port, middle, anchor);
    const length = distance(a, anchor);
    if (length < best.length) best = { leader: { a, b: anchor }, length };
  }
  return best;
}

function bounds(span: Span, leader: Leg): Span {
  const x = Math.min(span.x, leader.a.x, leader.b.x);
  const y = Math.min(span.y, leader.a.y, leader.b.y);
  const right = Math.max(span.x + span.w, leader.a.x, leader.b.x);
  const low = Math.max(span.y + span.h, leader.a.y, leader.b.y);
  return { x, y, w: right - x, h: low - y };
}

function startAt(port: Tag['ports'][number], middle: XY, anchor: XY): XY {
  const centre = { x: middle.x + port.dx, y: middle.y + port.dy };
  const away = distance(centre, anchor);
  if (away === 0) return centre;
  const share = Math.min(1, port.radius / away);
  return { x: centre.x + (anchor.x - centre.x) * share, y: centre.y + (anchor.y - centre.y) * share };
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
    single.flatMap((i) => options[i] ?? []),
    chosen.filter((c) => c !== undefined),
  ).map(keyOf);
  const column = new Map(free.map((k, j) => [k, j]));
  const best = single.map((i) => bestByPlace(options[i] ?? [], column, free.length));
  const columns = single.length <= free.length ? assign(best.map((row) => row.map((o) => o?.cost ?? Number.POSITIVE_INFINITY))) : [];
  single.forEach((i, row) => {
    chosen[i] = best[row]?.[columns[row] ?? -1] ?? options[i]?.[0];
  });
  return chosen.filter((c) => c !== undefined);
}

function keyOf(s: Standing): string {
  return `${s.middle.x} ${s.middle.y}`;
}

/** Places, cheapest first, that overlap neither each other nor what is chosen already. */
function apart(options: readonly Standing[], chosen: readonly Standing[]): readonly Standing[] {
  const found: Standing[] = [];
  for (const option of [...options].sort((p, q) => p.cost - q.cost || p.middle.y - q.middle.y || p.middle.x - q.middle.x)) {
    if (![...chosen, ...found].some((s) => overlap(option.span, s.span, CLEAR))) found.push(option);
  }
  return found;
}

function bestByPlace(options: readonly Standing[], column: ReadonlyMap<string, number>, count: number): readonly (Standing | undefined)[] {
  const row: (Standing | undefined)[] = new Array<undefined>(count).fill(undefined);
  for (const option of options) {
    const at = column.get(keyOf(option));
    if (at !== undefined && !row[at]) row[at] = option; // cheapest first
  }
  return row;
}

export function boxOf(s: Standing): Box {
  return { ...s.span, what: `${s.tag.kind} ${s.tag.id}` };
}
