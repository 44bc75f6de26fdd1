/**
 * Balloons and labels with leaders: each gets a free place near its surface, all together at the least cost, with straight leaders
 * that do not cross. Balloons of one surface stand side by side and share a leader.
 */
import type { Box, Item } from '../model/display.ts';
import { assign } from './assign.ts';
import { isApart } from './collisions.ts';
import type { XY } from './display.ts';
import { leaderCost, type Surroundings } from './leaders.ts';
import { cross, distance, gapBetween, grown, type Leg, overlap, part, runsThrough, type Span } from './plane.ts';

/** `ports`: where a leader may start, from the tag's middle, each with the radius that it starts clear of. `anchors`: places on its surface. */
export type Tag = {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly ports: readonly { readonly dx: number; readonly dy: number; readonly radius: number }[];
  readonly anchors: readonly XY[];
  readonly kind: 'ring' | 'text';
  readonly draw: (middle: XY) => readonly Item[];
};
/** `span`: the tag's box; `neck`: its leader without the tip; `reach`: the box round both, with what must stay clear. */
export type Standing = {
  readonly tag: Tag;
  readonly middle: XY;
  readonly leader: Leg;
  readonly cost: number;
  readonly span: Span;
  readonly neck: Leg;
  readonly reach: Span;
};
export type Placing = { readonly standing: readonly Standing[]; readonly left: readonly string[]; readonly quarrels: number };
/** `phase`: shift of the lattice of places, as shares of its step. `places`: how many of them are weighed for a tag, from the nearest. */
export type Lattice = {
  readonly width: number;
  readonly height: number;
  readonly step: number;
  readonly phase: XY;
  readonly places: number;
};

const CLEAR = 0.9;
/** Leaders nearer than this, away from their tips, read as one. */
const LEADER_GAP = 0.8;
const TIP = 1.2;
const QUARREL = 1000;
const ROUNDS = 60;
/** How many places are tried in which another tag stands. */
const UNLOCKED = 120;
const BEST_ANCHORS = 2;
/** Places stand this share of the lattice's step apart; the first assignment takes every second one, which do not overlap. */
const FINE = 0.5;

export function placeTags(tags: readonly Tag[], lattice: Lattice, around: Surroundings): Placing {
  const placesOf = bySize((tag) => places(tag, lattice, around));
  const options = tags.map((tag) => optionsOf(tag, placesOf(tag), lattice.places, around));
  const able = tags.map((_, i) => i).filter((i) => (options[i] ?? []).length > 0);
  const usable = able.map((i) => options[i] ?? []);
  const start = startOf(usable);
  const settled = settle(start, usable);
  return {
    standing: settled,
    left: tags.filter((_, i) => !able.includes(i)).map((t) => t.id),
    quarrels: quarrelsOf(settled),
  };
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

/** While two quarrel or a move is cheaper: move one, or let two change places. Each step lowers the cost, so it ends. */
function settle(start: readonly Standing[], options: readonly (readonly Standing[])[]): readonly Standing[] {
  const now = [...start];
  for (let round = 0; round < ROUNDS; round++) {
    const moved = now.map((_, i) => improve(now, i, options[i] ?? [])).some((done) => done);
    const swapped = now.flatMap((_, i) => now.slice(i + 1).map((_other, k) => swap(now, i, i + 1 + k, options)));
    if (!moved && !swapped.some((done) => done) && !now.some((_, i) => unlock(now, i, options))) break;
  }
  return now;
}

/** A tag in a quarrel takes another's place, if that one finds a good place then. */
function unlock(now: Standing[], i: number, options: readonly (readonly Standing[])[]): boolean {
  const current = now[i];
  if (!current || !now.some((other) => other !== current && quarrel(current, other))) return false;
  for (const option of (options[i] ?? []).slice(0, UNLOCKED)) {
    const inWay = now.map((_, j) => j).filter((j) => j !== i && quarrel(option, now[j] ?? option));
    const j = inWay[0];
    if (j === undefined || inWay.length > 1) continue;
    const others = now.filter((_, k) => k !== i && k !== j);
    const give = options[j]?.find((o) => !quarrel(o, option) && others.every((other) => !quarrel(o, other)));
    if (!give) continue;
    now[i] = option;
    now[j] = give;
    return true;
  }
  return false;
}

function improve(now: Standing[], i: number, options: readonly Standing[]): boolean {
  const current = now[i];
  if (!current) return false;
  const others = now.filter((_, j) => j !== i);
  let [best, least] = [current, costAmong(current, others)];
  for (const option of options) {
    if (option.cost >= least - 1e-9) break;
    const cost = costAmong(option, others);
    if (cost < least - 1e-9) [best, least] = [option, cost];
  }
  now[i] = best;
  return best !== current;
}

function swap(now: Standing[], i: number, j: number, options: readonly (readonly Standing[])[]): boolean {
  const [a, b] = [now[i], now[j]];
  if (!a || !b || !quarrel(a, b)) return false;
  const a2 = options[i]?.find((o) => o.middle.x === b.middle.x && o.middle.y === b.middle.y);
  const b2 = options[j]?.find((o) => o.middle.x === a.middle.x && o.middle.y === a.middle.y);
  if (!a2 || !b2) return false;
  const others = now.filter((_, k) => k !== i && k !== j);
  const was = costAmong(a, [...others, b]) + costAmong(b, others);
  const is = costAmong(a2, [...others, b2]) + costAmong(b2, others);
  if (is >= was - 1e-9) return false;
  [now[i], now[j]] = [a2, b2];
  return true;
}

function costAmong(s: Standing, others: readonly Standing[]): number {
  let cost = s.cost;
  for (const other of others) if (quarrel(s, other)) cost += QUARREL;
  return cost;
}

function quarrelsOf(standing: readonly Standing[]): number {
  return standing.flatMap((s, i) => standing.slice(i + 1).filter((o) => quarrel(s, o))).length;
}

/** Two tags that overlap, a leader through the other's tag, leaders that cross or run together. */
export function quarrel(p: Standing, q: Standing): boolean {
  if (!overlap(p.reach, q.reach)) return false;
  if (overlap(p.span, q.span, CLEAR)) return true;
  if (runsThrough(p.leader, grown(q.span, CLEAR / 2)) || runsThrough(q.leader, grown(p.span, CLEAR / 2))) return true;
  return cross(p.leader, q.leader) || gapBetween(p.neck, q.neck) < LEADER_GAP;
}

/** A leader without its tip: tips on neighbouring surfaces may be close. */
export function short(leader: Leg): Leg {
  const length = distance(leader.a, leader.b);
  return length <= TIP ? part(leader, 0, 0.5) : part(leader, 0, 1 - TIP / length);
}

export function boxOf(s: Standing): Box {
  return { ...s.span, what: `${s.tag.kind} ${s.tag.id}` };
}
