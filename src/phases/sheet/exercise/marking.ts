/** An order of strips judged: what of it breaks which rule and why, the fewest strips to move, and a right order near to it. */
import { brokenGroups, brokenPairs, mended, mostKept, type Pair, withoutChains } from '../../../base/orders.ts';
import type { Because } from '../../../model/plan.ts';
import type { Must, Puzzle } from './musts.ts';
import type { Strip } from './strips.ts';

/** `first` should have stood before `then`. */
export type Breach = { readonly first: Strip; readonly then: Strip; readonly because: Because };
export type Marked = {
  readonly right: boolean;
  readonly broken: readonly Breach[];
  /** Holds that are left and come back to, each by its strips. */
  readonly interrupted: readonly (readonly Strip[])[];
  /** The fewest that put it right, in the order in which they were given. */
  readonly move: readonly Strip[];
  /** A right order in which all the others stand as they were given. */
  readonly mended: readonly Strip[];
};

/** `order`: every strip once. */
export function markOrder(puzzle: Puzzle, strips: readonly Strip[], order: readonly Strip[]): Marked {
  const { ordering } = puzzle;
  const given = order.map((strip) => strip.place);
  const byPlace = new Map(strips.map((strip) => [strip.place, strip]));
  const strip = (place: number): Strip => {
    const found = byPlace.get(place);
    if (!found) throw new Error(`no strip for place ${place}`);
    return found;
  };
  const broken = toldPairs(puzzle, (all) => brokenPairs(all, given)).map(([a, b]) => {
    const must = mustOf(puzzle, a, b);
    return { first: strip(a), then: strip(b), because: must.because };
  });
  const kept = mostKept(ordering, given);
  const interrupted = brokenGroups(ordering, given).map((g) => (ordering.groups[g] ?? []).map(strip));
  return {
    right: broken.length === 0 && interrupted.length === 0,
    broken,
    interrupted,
    move: order.filter((one) => !kept.includes(one.place)),
    mended: mended(ordering, kept).map(strip),
  };
}

/**
 * Of the pairs that `which` picks: those that no chain of others says, and besides the first of each rule that would else not be told. By
 * what comes after.
 */
export function toldPairs(puzzle: Puzzle, which: (pairs: readonly Pair[]) => readonly Pair[]): readonly Pair[] {
  const { ordering } = puzzle;
  const ruleOf = ([a, b]: Pair): string => mustOf(puzzle, a, b).because.rule;
  const direct = which(withoutChains(ordering.count, ordering.pairs));
  const told = new Set(direct.map(ruleOf));
  const besides = which(ordering.pairs).filter((pair) => {
    const rule = ruleOf(pair);
    return !told.has(rule) && told.add(rule);
  });
  return [...direct, ...besides].sort(([a, b], [c, d]) => b - d || a - c);
}

export function mustOf({ musts, ops }: Puzzle, a: number, b: number): Must {
  const found = musts.find((must) => must.first === ops[a] && must.then === ops[b]);
  if (!found) throw new Error(`no reason for ${ops[a]} before ${ops[b]}`);
  return found;
}
