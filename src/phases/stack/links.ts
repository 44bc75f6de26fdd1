/** What one link of a chain across parts may come to: as its part's chart has it, as it is stated, or its nominal size alone. */
import { type Edge, findPath, growTree, type Link, type Pair, sumPath, type Tree, type Version } from '../../geometry/chain.ts';
import type { ChainLink, Part } from '../../model/part.ts';
import type { Chart, StackLink, Working } from '../../model/plan.ts';

export type Charted = { readonly part: Part; readonly chart: Chart };

export function linkOf(link: ChainLink, parts: readonly Charted[]): StackLink {
  const { part, a, b, sign, nominal, limits } = link;
  const own = pairOf(link, parts);
  if (own) return { part, a, b, sign, lo: own.lo, hi: own.hi, from: 'chart' };
  return limits
    ? { part, a, b, sign, lo: limits.lo, hi: limits.hi, from: 'stated' }
    : { part, a, b, sign, lo: nominal, hi: nominal, from: 'nominal' };
}

/** A link that is measured on one part: the last cut on the way. Undefined where no planned part makes it. */
export function lastCutOf(link: ChainLink, parts: readonly Charted[]): Working | undefined {
  const charted = parts.find((one) => one.part.id === link.part);
  const dims = charted && cutsOf(link, charted)?.map((one) => one.dim);
  return charted?.chart.working.findLast((one) => dims?.includes(one.id));
}

function pairOf(link: ChainLink, parts: readonly Charted[]): Pair | undefined {
  const charted = parts.find((one) => one.part.id === link.part);
  const cuts = charted && cutsOf(link, charted);
  if (!charted || !cuts || cuts.length === 0) return undefined;
  const { lo, hi } = sumPath(cuts, new Map(charted.chart.working.map((one) => [one.id, one.limits])));
  return hi < 0 || (lo < 0 && lo + hi < 0) ? { lo: minus(hi), hi: minus(lo) } : { lo, hi };
}

const minus = (length: Pair['lo']): Pair['lo'] => -length as Pair['lo'];

/** The working dimensions on the way from a to b: a diameter's own, a drawn length's path, or the path of any two faces as last cut. */
function cutsOf({ a, b }: ChainLink, { part, chart }: Charted): readonly Link[] | undefined {
  if (b === AXIS) {
    const cut = chart.working.findLast((one) => one.makes === a && one.measures === 'diameter');
    return cut && [{ dim: cut.id, sign: 1 }];
  }
  const drawn = part.dimensions.find((one) => [a, b].includes(one.a) && [a, b].includes(one.b));
  const path = chart.drawing.find((one) => one.of === drawn?.id);
  if (path) return path.links;
  const { tree, now } = facesOf(chart.working);
  const [from, to] = [now.get(a), now.get(b)];
  return from && to ? findPath(tree, from, to) : undefined;
}
/** The other end of a link that is a diameter. */
const AXIS = 'axis';

type Faces = { readonly tree: Tree; readonly now: ReadonlyMap<string, Version> };
/** Each cut on a face makes a new version of it, measured from the version of another that stands then. */
function facesOf(working: readonly Working[]): Faces {
  const counts = new Map<string, number>();
  const now = new Map<string, Version>();
  const edges = working
    .filter((one) => one.measures === 'length')
    .map((one): Edge => {
      const from = now.get(one.from) ?? `${one.from}#0`;
      const count = (counts.get(one.makes) ?? 0) + 1;
      const to = `${one.makes}#${count}`;
      counts.set(one.makes, count);
      now.set(one.makes, to);
      return { dim: one.id, from, to, toward: one.toward };
    });
  return { tree: growTree(edges), now };
}
