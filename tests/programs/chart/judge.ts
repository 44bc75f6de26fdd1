/** What a written chart comes to: each dimension through its links, and whether what is asked and what is printed hold. Whole units. */
import { type Len, len } from '../../../src/base/units.ts';
import { type Edge, findPath, growTree, type Link, likelyPath, type Pair, sumPath, type Tree } from '../../../src/geometry/chain.ts';
import { PER, type WrittenChart, type WrittenCut, type WrittenDimension } from './read.ts';

export type Judged = {
  readonly name: string;
  readonly links: readonly Link[];
  readonly worst: Pair;
  readonly likely: Pair;
  /** How far the worst case is past what is asked, on the worse side; 0 where it holds. */
  readonly short: Len;
  /** Absent where nothing is printed. */
  readonly asPrinted?: boolean;
};
/** Limits found for a cut that was written without any. `short`: by so much, in all, there is no room for it; then there are no limits. */
export type Found = { readonly cut: string; readonly limits?: Pair; readonly short: Len };
export type Judgement = { readonly dimensions: readonly Judged[]; readonly found: readonly Found[]; readonly holds: boolean };

/** Throws Error when a version is made twice or not at all, when no chain joins a dimension's ends, or when two free cuts share a path. */
export function judgeChart(chart: WrittenChart): Judgement {
  const tree = growTree(chart.cuts.map((cut): Edge => ({ dim: cut.name, from: cut.from, to: cut.makes, toward: cut.toward })));
  const fixed = new Map(chart.cuts.flatMap((cut) => (cut.limits ? [[cut.name, cut.limits] as const] : [])));
  const found = chart.cuts.filter((cut) => !cut.limits).map((cut) => findLimits(chart, tree, fixed, cut));
  const all = new Map([...fixed, ...found.flatMap((one) => (one.limits ? [[one.cut, one.limits] as const] : []))]);
  const dimensions = chart.dimensions.flatMap((one): Judged[] => {
    const links = pathOf(tree, one);
    return links.every((link) => all.has(link.dim)) ? [judge(chart, one, links, all)] : [];
  });
  const holds = dimensions.every((one) => one.short === 0 && one.asPrinted !== false) && found.every((one) => one.limits !== undefined);
  return { dimensions, found, holds };
}

function pathOf(tree: Tree, { name, from, to }: WrittenDimension): readonly Link[] {
  const links = findPath(tree, from, to);
  if (!links) throw new Error(`${name}: no chain of cuts joins '${from}' and '${to}'`);
  return links;
}

function judge(chart: WrittenChart, one: WrittenDimension, links: readonly Link[], pairs: ReadonlyMap<string, Pair>): Judged {
  const worst = sumPath(links, pairs);
  const likely = likelyPath(links, pairs);
  const below = one.asks?.lo === undefined ? 0 : one.asks.lo - worst.lo;
  const above = one.asks?.hi === undefined ? 0 : worst.hi - one.asks.hi;
  const printed = one.printed ? worst.lo === one.printed.lo && worst.hi === one.printed.hi : undefined;
  const statistical = one.statistical ? isPrinted(chart, likely, one.statistical) : undefined;
  const asPrinted = printed === undefined && statistical === undefined ? {} : { asPrinted: printed !== false && statistical !== false };
  return { name: one.name, links, worst, likely, short: len(Math.max(0, below, above)), ...asPrinted };
}

/** To the last digit printed; the figure is rounded outward to a whole unit of ours first, so a unit may be lost on it. */
function isPrinted(chart: WrittenChart, likely: Pair, { half, digit }: { readonly half: number; readonly digit: number }): boolean {
  const own = (likely.hi - likely.lo) / 2 / PER[chart.unit];
  return Math.abs(own - half) <= digit / 2 + 1 / PER[chart.unit];
}

/** What is left for one cut by every dimension that hangs on it, each at the worst of its other links. */
function findLimits(chart: WrittenChart, tree: Tree, fixed: ReadonlyMap<string, Pair>, cut: WrittenCut): Found {
  let [lo, hi] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const one of chart.dimensions) {
    const links = pathOf(tree, one);
    const own = links.find((link) => link.dim === cut.name);
    if (!own) continue;
    const others = links.filter((link) => link !== own);
    if (others.some((link) => !fixed.has(link.dim))) throw new Error(`${one.name}: two cuts without limits`);
    const rest = sumPath(others, fixed);
    const left = leftFor(own, one, rest);
    [lo, hi] = [Math.max(lo, left.lo), Math.min(hi, left.hi)];
  }
  if (!Number.isFinite(lo) || !Number.isFinite(hi)) throw new Error(`${cut.name}: nothing bounds it`);
  return lo <= hi ? { cut: cut.name, limits: { lo: len(lo), hi: len(hi) }, short: len(0) } : { cut: cut.name, short: len(lo - hi) };
}

/** A cut that adds to the dimension has what is asked less the rest; one that takes from it, the rest less what is asked. */
function leftFor(own: Link, { asks }: WrittenDimension, rest: Pair): { readonly lo: number; readonly hi: number } {
  const least = asks?.lo ?? Number.NEGATIVE_INFINITY;
  const most = asks?.hi ?? Number.POSITIVE_INFINITY;
  return own.sign === 1 ? { lo: least - rest.lo, hi: most - rest.hi } : { lo: rest.hi - most, hi: rest.lo - least };
}
