/**
 * Shares what a drawing dimension allows among the working dimensions that add up to it, max-min by weight: raise all working tolerances
 * together, each in proportion to how hard its cut is, until the tightest path is used up, freeze those on it, go on with the others. Each
 * dimension has two sides (how far it may fall below and rise above its middle), so unequal limits need no mean. Whole units; the answer does
 * not depend on the order of lists.
 */
import type { DimId } from '../model/ids.ts';
import type { Link } from './chain.ts';

/** How far a working dimension may run to either side of its middle, in whole units. */
export type Sides = { readonly below: number; readonly above: number };
/** What a path may run out, in all, below and above the sum of its links' middles; `above` absent: without bound (stock to remove). */
export type Budget = { readonly of: string; readonly links: readonly Link[]; readonly below: number; readonly above?: number };
/** A path that its processes overrun even at their best: `needs` - `allows` is the shortage, on one side. */
export type Shortage = {
  readonly of: string;
  readonly side: 'below' | 'above';
  readonly allows: number;
  readonly needs: number;
  readonly dims: readonly DimId[];
};
export type Share = { readonly sides: ReadonlyMap<DimId, Sides>; readonly short: readonly Shortage[] };

type Unknown = { readonly key: string; readonly least: number; readonly weight: number };
type Row = {
  readonly of: string;
  readonly side: 'below' | 'above';
  readonly allows: number;
  readonly keys: readonly string[];
  readonly dims: readonly DimId[];
};

/**
 * `least`: what each process holds, each side. `weights`: whole numbers above 0, 1 where none is given; a side rises by so much. When `short` is not empty the paths named there are overrun and their dimensions stand
 * at their least. Throws Error when a side stands in no budget (it would have no bound) or a link has no least.
 */
export function shareTolerance(
  budgets: readonly Budget[],
  least: ReadonlyMap<DimId, Sides>,
  weights: ReadonlyMap<DimId, number> = new Map(),
): Share {
  const unknowns = [...least].flatMap(([dim, side]): Unknown[] => [
    { key: sideKey(dim, 'below'), least: side.below, weight: weights.get(dim) ?? 1 },
    { key: sideKey(dim, 'above'), least: side.above, weight: weights.get(dim) ?? 1 },
  ]);
  const rows = budgets.flatMap(rowsOf);
  const leastOf = new Map(unknowns.map((unknown) => [unknown.key, unknown.least]));
  checkBounded(unknowns, rows, leastOf);
  const short = rows.flatMap((row): Shortage[] => {
    const needs = sumOf(row.keys, (key) => leastOf.get(key) ?? 0);
    return needs > row.allows ? [{ of: row.of, side: row.side, allows: row.allows, needs, dims: row.dims }] : [];
  });
  const frozen = fill(unknowns, rows);
  const sides = new Map<DimId, Sides>();
  for (const dim of least.keys())
    sides.set(dim, { below: frozen.get(sideKey(dim, 'below')) ?? 0, above: frozen.get(sideKey(dim, 'above')) ?? 0 });
  return { sides, short };
}

const sideKey = (dim: DimId, side: 'below' | 'above'): string => `${side} ${dim}`;

function rowsOf(budget: Budget): Row[] {
  const dims = budget.links.map((link) => link.dim);
  const low = budget.links.map((link) => sideKey(link.dim, link.sign === 1 ? 'below' : 'above'));
  const high = budget.links.map((link) => sideKey(link.dim, link.sign === 1 ? 'above' : 'below'));
  const rows: Row[] = [{ of: budget.of, side: 'below', allows: budget.below, keys: low, dims }];
  if (budget.above !== undefined) rows.push({ of: budget.of, side: 'above', allows: budget.above, keys: high, dims });
  return rows;
}

function checkBounded(unknowns: readonly Unknown[], rows: readonly Row[], leastOf: ReadonlyMap<string, number>): void {
  const bounded = new Set(rows.flatMap((row) => row.keys));
  for (const unknown of unknowns) if (!bounded.has(unknown.key)) throw new Error(`nothing bounds '${unknown.key}'`);
  for (const key of bounded) if (!leastOf.has(key)) throw new Error(`no least for '${key}'`);
}

/** Raise, freeze, go on. Each round freezes at least one side, so it ends. */
function fill(unknowns: readonly Unknown[], rows: readonly Row[]): ReadonlyMap<string, number> {
  const frozen = new Map<string, number>();
  let open = unknowns;
  while (open.length > 0) {
    const openOf = new Map(open.map((unknown) => [unknown.key, unknown]));
    const levels = rows.filter((row) => row.keys.some((key) => openOf.has(key))).map((row) => ({ row, ...levelOf(row, openOf, frozen) }));
    const lowest = levels.reduce((least, one) => (one.rest / one.among < least.rest / least.among ? one : least));
    const level = lowest.rest / lowest.among;
    const tight = new Set(levels.filter((one) => one.rest / one.among === level).flatMap((one) => one.row.keys));
    for (const { key, least, weight } of open)
      if (tight.has(key)) frozen.set(key, Math.max(least, Math.floor((lowest.rest * weight) / lowest.among)));
    open = open.filter((unknown) => !tight.has(unknown.key));
  }
  return frozen;
}

/** A fraction in whole numbers, so that no rounding comes between: what is left, among so much weight. */
type Level = { readonly rest: number; readonly among: number };

/** The highest level, a unit of weight, to which the open sides of this row can rise together; 0 when it is overrun already. */
function levelOf(row: Row, openOf: ReadonlyMap<string, Unknown>, frozen: ReadonlyMap<string, number>): Level {
  const taken = sumOf(row.keys, (key) => frozen.get(key) ?? 0);
  const open = row.keys.flatMap((key) => openOf.get(key) ?? []).sort((a, b) => a.least * b.weight - b.least * a.weight);
  for (let rising = open.length; rising > 1; rising -= 1) {
    const rest = row.allows - taken - sumOf(open.slice(rising), (one) => one.least);
    const among = sumOf(open.slice(0, rising), (one) => one.weight);
    const last = open[rising - 1];
    if (last && rest * last.weight >= last.least * among) return { rest, among };
  }
  const rest = row.allows - taken - sumOf(open.slice(1), (one) => one.least);
  return { rest: Math.max(0, rest), among: open[0]?.weight ?? 1 };
}

function sumOf<T>(items: readonly T[], value: (item: T) => number): number {
  return items.reduce((sum, item) => sum + value(item), 0);
}
