/** Where one tag may stand and how its leader then runs: found from the places nearest its surface outward, no further than they are asked for. */
import type { XY } from './display.ts';
import { leaderCost, type Surroundings } from './leaders.ts';
import { leastDistance, nearestFirst, type Places } from './places.ts';
import { distance } from './plane.ts';
import type { Standing, Tag } from './settle.ts';

/**
 * `most`: how many places with a way to the surface are weighed. `found`: as they were found, not sorted; `cheapest`: of these. `next`: the
 * place to be looked at next, none when all have been; `least`: no option from there on costs less.
 */
export type Search = {
  readonly tag: Tag;
  readonly anchors: readonly XY[];
  readonly most: number;
  readonly around: Surroundings;
  readonly places: Generator<XY>;
  /** Of the anchors from the place in question: written anew for each. */
  readonly away: number[];
  readonly found: Standing[];
  cheapest: Standing | undefined;
  next: XY | undefined;
  least: number;
  good: number;
  asked: number;
};

const BEST_ANCHORS = 2;
/** So many times more places are asked than are wanted, if most have no way to the surface. */
const IN_VAIN = 4;
/** Costs nearer than this are not told apart by sums of them. */
export const DUST = 1e-6;

export function searchOf(tag: Tag, places: Places, most: number, around: Surroundings): Search {
  const anchors = [...tag.anchors].sort((p, q) => p.y - q.y || p.x - q.x);
  const search: Search = {
    tag,
    anchors,
    most,
    around,
    places: nearestFirst(anchors, places),
    away: anchors.map(() => Number.POSITIVE_INFINITY),
    found: [],
    cheapest: undefined,
    next: undefined,
    least: Number.NEGATIVE_INFINITY,
    good: 0,
    asked: 0,
  };
  advance(search);
  return search;
}

/** Undefined where there is no way from any place. */
export function cheapestOf(search: Search): Standing | undefined {
  while (search.next && (search.cheapest === undefined || search.least <= search.cheapest.cost)) look(search);
  return search.cheapest;
}

/** All that cost no more than `cost`, and others; cheapest first. */
export function optionsUpTo(search: Search, cost: number): readonly Standing[] {
  while (search.next && search.least <= cost) look(search);
  return search.found.sort(cheaper);
}

export function cheaper(p: Standing, q: Standing): number {
  return p.cost - q.cost || p.middle.y - q.middle.y || p.middle.x - q.middle.x;
}

/** At the next place. */
function look(search: Search): void {
  const { most, found, next } = search;
  if (!next) return;
  const before = found.length;
  addWays(search, next);
  for (let i = before; i < found.length; i++) {
    const way = found[i];
    if (way && (search.cheapest === undefined || cheaper(way, search.cheapest) < 0)) search.cheapest = way;
  }
  if (found.length > before) search.good++;
  search.asked++;
  if (search.good >= most || (search.good > 0 && search.asked >= IN_VAIN * most)) search.next = undefined;
  else advance(search);
}

/** A leader never costs less than its length. */
function advance(search: Search): void {
  const { done, value } = search.places.next();
  search.next = done ? undefined : value;
  if (search.next) search.least = leastDistance(search.anchors, search.next.x, search.next.y) - search.tag.width / 2 - DUST;
}

/** The cheapest leaders from one place. As a leader costs its length at least, most anchors need no closer look. */
function addWays({ tag, anchors, around, away, found }: Search, middle: XY): void {
  const best: Standing[] = [];
  anchors.forEach((anchor, i) => {
    away[i] = (anchor.x - middle.x) ** 2 + (anchor.y - middle.y) ** 2;
  });
  for (let anchor = nearest(anchors, away); anchor; anchor = nearest(anchors, away)) {
    const most = best[BEST_ANCHORS - 1]?.cost ?? Number.POSITIVE_INFINITY;
    // the others are further still
    if (distance(middle, anchor) - tag.width / 2 >= most) break;
    const start = startOf(tag, middle, anchor);
    const cost = leaderCost(start, anchor, around, most);
    if (cost < most) into(best, { tag, middle, leader: { a: start, b: anchor }, cost });
  }
  for (const way of best) found.push(way);
}

/** Behind what costs as much; the dearest of too many is put out. */
function into(best: Standing[], way: Standing): void {
  let at = Math.min(best.length, BEST_ANCHORS - 1);
  for (let before = best[at - 1]; before && before.cost > way.cost; before = best[at - 1]) {
    best[at] = before;
    at--;
  }
  best[at] = way;
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

/** Where the leader leaves the tag: at the port that is nearest to the anchor. */
function startOf({ ports }: Tag, middle: XY, anchor: XY): XY {
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
  return { x, y };
}
