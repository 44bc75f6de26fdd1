/**
 * Balloons and labels with leaders: each gets a free place near its surface, all together at the least cost, with straight leaders
 * that do not cross. Balloons of one surface stand side by side and share a leader.
 */
import type { Box } from '../model/display.ts';
import { assign } from './assign.ts';
import type { XY } from './display.ts';
import type { Surroundings } from './leaders.ts';
import { cheaper, cheapestOf, DUST, optionsUpTo, type Search, searchOf } from './options.ts';
import { type Lattice, placesBySize } from './places.ts';
import { boxOn, overlap } from './plane.ts';
import { CLEAR, quarrel, type Standing, settle, spanOf, type Tag } from './settle.ts';

/** `left`: ids of tags for which there is no free place. */
export type Placing = { readonly standing: readonly Standing[]; readonly left: readonly string[] };

/** So many of a tag's cheapest options take part in the first assignment; all of them do when things are moved after it. */
const AT_START = 30;
/** How far tags are looked at first, mm over the cheapest; how many times as far those that quarrel then, and how often. */
const LITTLE = 5;
const FURTHER = 2.5;
const ROUNDS = 3;

export function placeTags(tags: readonly Tag[], lattice: Lattice, around: Surroundings): Placing {
  const placesOf = placesBySize(lattice, around);
  const searches = tags.map((tag) => searchOf(tag, placesOf(tag), lattice.places, around));
  const able = searches.filter((search) => cheapestOf(search) !== undefined);
  const left = searches.filter((search) => !able.includes(search)).map(({ tag }) => tag.id);
  return { standing: undisputed(able) ?? disputed(able), left };
}

/**
 * From those options of each tag alone that cost little more than its cheapest: where none quarrel then, no other would better any of them,
 * as each costs more than what was chosen. Tags that do quarrel are looked at further; in the end all are, as far as there are places.
 */
function disputed(searches: readonly Search[]): readonly Standing[] {
  let over = searches.map(() => LITTLE);
  for (let round = 0; round < ROUNDS; round++) {
    const standing = settledWithin(searches, over);
    const tags = standing.filter((s) => standing.some((other) => other !== s && quarrel(s, other))).map(({ tag }) => tag);
    if (tags.length === 0) return standing;
    over = over.map((own, i) => (tags.some((tag) => tag === searches[i]?.tag) ? FURTHER * own : own));
  }
  return settledWithin(
    searches,
    searches.map(() => Number.POSITIVE_INFINITY),
  );
}

/** `over`: mm of each tag's over its cheapest option. */
function settledWithin(searches: readonly Search[], over: readonly number[]): readonly Standing[] {
  const options = searches.map((search, i) => {
    const most = (cheapestOf(search)?.cost ?? 0) + (over[i] ?? 0);
    return optionsUpTo(search, most).filter((s) => s.cost <= most);
  });
  return settle(startOf(options), options);
}

/**
 * Each tag's cheapest option, where none of them quarrel, and where the first assignment would give each of them its own: nothing would be
 * moved then, and most of the others need not be found. Undefined where the assignment must be made.
 */
function undisputed(searches: readonly Search[]): readonly Standing[] | undefined {
  const cheapest = searches.map(cheapestOf).filter((s) => s !== undefined);
  if (cheapest.some((s, i) => cheapest.slice(i + 1).some((other) => quarrel(s, other)))) return undefined;
  const least = Math.min(...cheapest.map((s) => s.tag.width));
  const single = searches.filter(({ tag }) => tag.width <= least);
  const dearest = Math.max(...cheapest.filter((s) => s.tag.width <= least).map((s) => s.cost)) + DUST;
  const options = single.map((search) => optionsUpTo(search, dearest).filter((s) => s.cost <= dearest));
  const free = apart(
    options.flatMap((own) => own.slice(0, AT_START)),
    cheapest.filter((s) => s.tag.width > least),
  );
  return options.every((own) => isBest(own, free)) ? cheapest : undefined;
}

/** Whether the first is among the free, and no other place is as cheap. */
function isBest([first, ...others]: readonly Standing[], free: readonly Standing[]): boolean {
  return first !== undefined && free.includes(first) && others.every((s) => s.middle === first.middle || s.cost > first.cost + DUST);
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
  const spans = chosen.map(spanOf);
  for (const option of [...options].sort(cheaper)) {
    const own = spanOf(option);
    if (spans.some((span) => overlap(own, span, CLEAR))) continue;
    found.push(option);
    spans.push(own);
  }
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
  return boxOn(spanOf(s), `${s.tag.kind} ${s.tag.id}`);
}
