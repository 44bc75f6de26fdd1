/**
 * Orders of things of which some must come before others, and which stand in groups that are not broken up: how many orders are right, what
 * is wrong with one, and the most of it that may stay as it stands. Everything is exact. Things are numbered from 0.
 */
import { antichain } from './antichain.ts';

export type Pair = readonly [first: number, then: number];
/** `groups`: every thing in one; those of a group follow each other without anything between. */
export type Ordering = { readonly count: number; readonly groups: readonly (readonly number[])[]; readonly pairs: readonly Pair[] };
/** `before[a][b]`: a must come before b, by a pair or by a chain of them. */
export type Closed = readonly (readonly boolean[])[];

/** States that counting may look at, and things in one group (the bits of a number). */
const MOST_STATES = 200_000;
const MOST_TOGETHER = 30;

/** The number of right orders; undefined where it takes more than can be counted. */
export function countOrders(ordering: Ordering): bigint | undefined {
  const { things, groups } = closed(ordering);
  const factors = [countLinear(groups), ...ordering.groups.map((members) => countLinear(part(things, members)))];
  if (factors.some((factor) => factor === undefined)) return undefined;
  return factors.reduce<bigint>((product, factor) => product * (factor ?? 1n), 1n);
}

/** Things by their own numbers, and groups by theirs, closed under "before". */
export function closed({ count, groups, pairs }: Ordering): { readonly things: Closed; readonly groups: Closed } {
  const groupOf = groupsOf(count, groups);
  const between = pairs.map(([a, b]): Pair => [groupOf[a] ?? 0, groupOf[b] ?? 0]).filter(([a, b]) => a !== b);
  const ofGroups = closure(groups.length, between);
  const across = ofGroups.flatMap((row, g) => row.flatMap((is, h) => (is ? crossed(groups[g] ?? [], groups[h] ?? []) : [])));
  return { things: closure(count, [...pairs, ...across]), groups: ofGroups };
}

const crossed = (as: readonly number[], bs: readonly number[]): readonly Pair[] => as.flatMap((a) => bs.map((b): Pair => [a, b]));

export function groupsOf(count: number, groups: Ordering['groups']): readonly number[] {
  const of = new Array<number>(count).fill(-1);
  groups.forEach((members, g) => {
    for (const member of members) of[member] = g;
  });
  return of;
}

export function closure(count: number, pairs: readonly Pair[]): Closed {
  const before = Array.from({ length: count }, () => new Array<boolean>(count).fill(false));
  for (const [a, b] of pairs) (before[a] as boolean[])[b] = true;
  for (let k = 0; k < count; k += 1)
    for (const row of before) if (row[k]) for (let b = 0; b < count; b += 1) if (before[k]?.[b]) row[b] = true;
  return before;
}

/** Pairs that no chain of others says already. */
export function withoutChains(count: number, pairs: readonly Pair[]): readonly Pair[] {
  const before = closure(count, pairs);
  return pairs.filter(([a, b]) => !before.some((row, k) => k !== a && k !== b && before[a]?.[k] && row[b]));
}

function part(before: Closed, members: readonly number[]): Closed {
  return members.map((a) => members.map((b) => before[a]?.[b] ?? false));
}

/** Linear extensions, by the sets that may stand first: each is reached from those with one thing less. */
function countLinear(before: Closed): bigint | undefined {
  const count = before.length;
  if (count > MOST_TOGETHER) return undefined;
  const needs = before.map((_, b) => before.reduce((set, row, a) => (row[b] ? set | (1 << a) : set), 0));
  let layer = new Map<number, bigint>([[0, 1n]]);
  let states = 0;
  for (let size = 0; size < count; size += 1) {
    const next = new Map<number, bigint>();
    for (const [set, ways] of layer)
      needs.forEach((need, b) => {
        if ((set & (1 << b)) !== 0 || (need & ~set) !== 0) return;
        const more = set | (1 << b);
        next.set(more, (next.get(more) ?? 0n) + ways);
      });
    layer = next;
    states += layer.size;
    if (states > MOST_STATES) return undefined;
  }
  return [...layer.values()].reduce((sum, ways) => sum + ways, 0n);
}

/** Is every pair kept and no group broken up? */
export function isRight(ordering: Ordering, order: readonly number[]): boolean {
  return brokenPairs(ordering.pairs, order).length === 0 && brokenGroups(ordering, order).length === 0;
}

export function brokenPairs(pairs: readonly Pair[], order: readonly number[]): readonly Pair[] {
  const place = new Map(order.map((thing, i) => [thing, i]));
  return pairs.filter(([a, b]) => (place.get(a) ?? 0) > (place.get(b) ?? 0));
}

/** Groups that are left and come back to. */
export function brokenGroups({ count, groups }: Ordering, order: readonly number[]): readonly number[] {
  const groupOf = groupsOf(count, groups);
  const runs = order.map((thing) => groupOf[thing] ?? 0).filter((g, i, all) => g !== all[i - 1]);
  return [...new Set(runs.filter((g, i) => runs.indexOf(g) < i))];
}

/**
 * The most things of `order` that may stay as they stand among each other while the rest are put elsewhere and the order comes right: so the
 * others are the fewest to move. Within a group, things stay together where no two of them are the wrong way round, and of those sets the
 * largest is wanted; groups are taken one after the other, each from a stretch of the order.
 */
export function mostKept(ordering: Ordering, order: readonly number[]): readonly number[] {
  const { things, groups } = closed(ordering);
  const groupOf = groupsOf(ordering.count, ordering.groups);
  const keep = stretches(things, groupOf, order);
  const known = new Map<string, readonly number[]>();
  const from = (at: number, used: number): readonly number[] => {
    const key = `${at} ${used}`;
    const found = known.get(key);
    if (found) return found;
    let best: readonly number[] = [];
    for (let start = at; start < order.length; start += 1) {
      const g = groupOf[order[start] ?? 0] ?? 0;
      if (used & (1 << g) || groups[g]?.some((is, h) => is && used & (1 << h))) continue;
      for (let end = start + 1; end <= order.length; end += 1) {
        if (groupOf[order[end - 1] ?? 0] !== g) continue;
        const all = [...keep(g, start, end), ...from(end, used | (1 << g))];
        if (all.length > best.length) best = all;
      }
    }
    known.set(key, best);
    return best;
  };
  return from(0, 0);
}

type Stretch = (group: number, start: number, end: number) => readonly number[];

/** The largest set of a group's things in that stretch of which no two are the wrong way round. */
function stretches(before: Closed, groupOf: readonly number[], order: readonly number[]): Stretch {
  const known = new Map<string, readonly number[]>();
  return (group, start, end) => {
    const key = `${group} ${start} ${end}`;
    const found = known.get(key);
    if (found) return found;
    const here = order.slice(start, end).filter((thing) => groupOf[thing] === group);
    const wrong = here.map((a, i) => here.map((b, k) => k > i && (before[b]?.[a] ?? false)));
    const kept = antichain(wrong).map((i) => here[i] ?? 0);
    known.set(key, kept);
    return kept;
  };
}

/** A right order in which `kept` stand as they are given; of what may come next, the first by number. */
export function mended(ordering: Ordering, kept: readonly number[]): readonly number[] {
  const chain = kept.slice(1).map((b, i): Pair => [kept[i] ?? 0, b]);
  const whole = { ...ordering, pairs: [...ordering.pairs, ...chain] };
  const { things, groups } = closed(whole);
  const groupOrder = sorted(groups);
  return groupOrder.flatMap((g) => {
    const members = ordering.groups[g] ?? [];
    return sorted(part(things, members)).map((i) => members[i] ?? 0);
  });
}

function sorted(before: Closed): readonly number[] {
  const order: number[] = [];
  while (order.length < before.length) {
    const next = before.findIndex((_, b) => !order.includes(b) && before.every((row, a) => !row[b] || order.includes(a)));
    if (next < 0) throw new Error('these things wait for each other in a ring');
    order.push(next);
  }
  return order;
}
