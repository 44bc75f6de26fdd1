/** Tags and leaders that stand together: which quarrel, and how they are moved and exchanged until none does. */
import type { Item } from '../model/display.ts';
import type { XY } from './display.ts';
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
export type Standing = { readonly tag: Tag; readonly middle: XY; readonly leader: Leg; readonly cost: number };
/** mm that tags keep from everything. */
export const CLEAR = 0.9;
/** Leaders nearer than this, away from their tips, read as one. */
const LEADER_GAP = 0.8;
const TIP = 1.2;
const QUARREL = 1000;
const ROUNDS = 60;
/** How many places are tried in which another tag stands. */
const UNLOCKED = 120;

/** While two quarrel or a move is cheaper: move one, or let two change places. Each step lowers the cost, so it ends. */
export function settle(start: readonly Standing[], options: readonly (readonly Standing[])[]): readonly Standing[] {
  const now = [...start];
  for (let round = 0; round < ROUNDS; round++) {
    let changed = false;
    for (let i = 0; i < now.length; i++) if (improve(now, i, options[i] ?? [])) changed = true;
    for (let i = 0; i < now.length; i++) for (let j = i + 1; j < now.length; j++) if (swap(now, i, j, options)) changed = true;
    if (!changed && !now.some((_, i) => unlock(now, i, options))) break;
  }
  return now;
}

/** A tag in a quarrel takes another's place, if that one finds a good place then. */
function unlock(now: Standing[], i: number, options: readonly (readonly Standing[])[]): boolean {
  const current = now[i];
  if (!current || !now.some((other) => other !== current && quarrel(current, other))) return false;
  for (const option of (options[i] ?? []).slice(0, UNLOCKED)) {
    const j = onlyInWay(option, now, i);
    if (j === undefined) continue;
    const give = options[j]?.find((o) => !quarrel(o, option) && now.every((other, k) => k === i || k === j || !quarrel(o, other)));
    if (!give) continue;
    now[i] = option;
    now[j] = give;
    return true;
  }
  return false;
}

/** The one tag that an option quarrels with; undefined where there is none or more than one. */
function onlyInWay(option: Standing, now: readonly Standing[], i: number): number | undefined {
  let found: number | undefined;
  for (let j = 0; j < now.length; j++) {
    const other = now[j];
    if (j === i || !other || !quarrel(option, other)) continue;
    if (found !== undefined) return undefined;
    found = j;
  }
  return found;
}

function improve(now: Standing[], i: number, options: readonly Standing[]): boolean {
  const current = now[i];
  if (!current) return false;
  let best = current;
  let least = costAmong(current, now, i);
  for (const option of options) {
    if (option.cost >= least - 1e-9) break;
    const cost = costAmong(option, now, i, -1, least);
    if (cost >= least - 1e-9) continue;
    best = option;
    least = cost;
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
  const among = (p: Standing, q: Standing): number => costAmong(p, now, i, j) + costAmong(q, now, i, j) + (quarrel(p, q) ? QUARREL : 0);
  const [was, is] = [among(a, b), among(a2, b2)];
  if (is >= was - 1e-9) return false;
  [now[i], now[j]] = [a2, b2];
  return true;
}

/** Of `s` in the place of `i`, and without `j`; not counted on beyond `enough`. */
function costAmong(s: Standing, now: readonly Standing[], i: number, j = -1, enough = Number.POSITIVE_INFINITY): number {
  let cost = s.cost;
  for (let k = 0; k < now.length && cost < enough; k++) {
    const other = now[k];
    if (k !== i && k !== j && other && quarrel(s, other)) cost += QUARREL;
  }
  return cost;
}

/** Two tags that overlap, a leader through the other's tag, leaders that cross or run together. */
export function quarrel(p: Standing, q: Standing): boolean {
  if (isFarFrom(p, q)) return false;
  const [a, b] = [spanOf(p), spanOf(q)];
  if (overlap(a, b, CLEAR)) return true;
  if (runsThrough(p.leader, grown(b, CLEAR / 2)) || runsThrough(q.leader, grown(a, CLEAR / 2))) return true;
  return cross(p.leader, q.leader) || gapBetween(short(p.leader), short(q.leader)) < LEADER_GAP;
}

/** Whether the boxes round each tag with its leader, which begins at the tag, are so far apart that nothing of them quarrels: most are. */
function isFarFrom(p: Standing, q: Standing): boolean {
  const [wide, high] = [p.tag.width / 2, p.tag.height / 2];
  const [otherWide, otherHigh] = [q.tag.width / 2, q.tag.height / 2];
  const [m, end, otherM, otherEnd] = [p.middle, p.leader.b, q.middle, q.leader.b];
  return (
    Math.min(m.x - wide, end.x) > Math.max(otherM.x + otherWide, otherEnd.x) + CLEAR ||
    Math.min(otherM.x - otherWide, otherEnd.x) > Math.max(m.x + wide, end.x) + CLEAR ||
    Math.min(m.y - high, end.y) > Math.max(otherM.y + otherHigh, otherEnd.y) + CLEAR ||
    Math.min(otherM.y - otherHigh, otherEnd.y) > Math.max(m.y + high, end.y) + CLEAR
  );
}

/** The tag's box. */
export function spanOf({ tag, middle }: Standing): Span {
  return { x: middle.x - tag.width / 2, y: middle.y - tag.height / 2, w: tag.width, h: tag.height };
}

/** A leader without its tip: tips on neighbouring surfaces may be close. */
export function short(leader: Leg): Leg {
  const length = distance(leader.a, leader.b);
  return length <= TIP ? part(leader, 0, 0.5) : part(leader, 0, 1 - TIP / length);
}
