/**
 * The chart of a part: for each cut a working dimension with limits in its own grip, so that every drawing dimension comes out at the
 * worst of all of them, every cut finds metal, and no limit is finer than what the process holds or than anybody needs.
 */
import type { Diagnostic, Outcome } from '../base/diagnostics.ts';
import { type Len, len, mm } from '../base/units.ts';
import { findPath, type Link, likelyPath, type Pair, sumPath } from '../geometry/chain.ts';
import { type Drawn, drawnDimensions, facesOf, placeFaces, shortName } from '../geometry/places.ts';
import { type Budget, type Share, type Sides, shareTolerance } from '../geometry/sharing.ts';
import { numbersTable } from '../handbook/numbers.ts';
import { unstated } from '../handbook/unstated.ts';
import type { DimId } from '../model/ids.ts';
import type { Limits, Part } from '../model/part.ts';
import type { Chart, Claim, Path, Route, Working } from '../model/plan.ts';
import { asHeld, diameterLimits } from '../rules/diameters.ts';
import { type Weigh, weighBy } from '../rules/difficulty.ts';
import { aimAt, drawIn, evened } from '../rules/tidy.ts';
import { type Capability, type DiameterCut, type LengthCut, type Walk, walkRoute } from '../rules/working.ts';
import { STOCK, shortages, type Trials, tooCoarse } from './chart/cannot.ts';
import { notTrue } from './chart/not-true.ts';
import { truthPaths } from './chart/truths.ts';

type Asked = {
  readonly part: Part;
  readonly route: Route;
  readonly drawn: readonly Drawn[];
  readonly places: ReadonlyMap<string, Len>;
  readonly capability: Capability;
  readonly weigh: Weigh;
};
/** What was tried besides the first ranking: other faces to measure from, more metal left. */
type Instead = { readonly from: ReadonlyMap<string, string>; readonly more: ReadonlyMap<string, Len> };
type Settled = { readonly walk: Walk; readonly budgets: readonly Budget[]; readonly share: Share };

/**
 * `capability`: what each process holds on this lathe, as a whole band (handbook: `held`); `weigh`: how hard each cut is, by which limits are
 * shared. Errors: `chart.cannot-be-met` for each dimension or stock that the
 * processes overrun (by how much, through which cuts), `chart.not-located` for each face that no cut finishes, `chart.not-true` for what re-grips
 * leave too far out of true.
 */
export function chart(
  part: Part,
  route: Route,
  capability: Capability,
  weigh: Weigh = weighBy([]),
  trying: Trying = NOTHING_TRIED,
): Outcome<Chart> {
  const drawn = drawnDimensions(part, unstated);
  const asked: Asked = { part, route, drawn, places: placeFaces(part, drawn), capability, weigh };
  const first = settle(asked, { from: new Map(), more: new Map() });
  const lost = notLocated(part, first.walk);
  if (lost.length > 0) return { found: lost };
  const best = first.share.short.length > 0 ? measureOtherwise(asked, first) : first;
  const coarse = best.walk.cuts.flatMap((cut) => ('edge' in cut ? [] : tooCoarse(part, cut, capability, trying.routeBy)));
  const truths = truthPaths(part, route);
  const found = [...shortages(part, best, trialsOf(asked, best, trying)), ...coarse, ...notTrue(part, route, truths)];
  if (found.length > 0) return { found };
  return { value: { ...chartOf(asked, best), ...(truths.length > 0 ? { truths } : {}) }, found: [] };
}

/**
 * By what a change is tried that would meet what is short. `fails`: claims that the proof finds broken; `routeBy`: the best route in which
 * another process makes what that operation makes.
 */
export type Trying = {
  readonly fails: (part: Part, route: Route, chart: Chart) => readonly Claim[];
  readonly routeBy: Trials['routeBy'];
};
const NOTHING_TRIED: Trying = { fails: () => [], routeBy: () => undefined };

function chartOf({ part, route, drawn }: Asked, settled: Settled): Chart {
  const working = settled.walk.cuts.map((cut) => ('edge' in cut ? workingLength(cut, settled) : workingDiameter(part, route, cut)));
  return { part: part.id, working, drawing: drawingPaths(drawn, settled.walk, working) };
}

/** The same with a part or a route a little changed: charted again, and what comes out replayed. */
function trialsOf(asked: Asked, best: Settled, trying: Trying): Trials {
  const short = best.share.short.map((one) => one.of);
  const meets = (of: string, part: Part, route: Route): boolean => {
    const drawn = drawnDimensions(part, unstated);
    const changed: Asked = { ...asked, part, route, drawn, places: placeFaces(part, drawn) };
    const first = settle(changed, { from: new Map(), more: new Map() });
    if (notLocated(part, first.walk).length > 0) return false;
    const settled = measureOtherwise(changed, first);
    const left = settled.share.short.map((one) => one.of);
    if (left.includes(of) || left.some((name) => !short.includes(name))) return false;
    const failed = trying.fails(part, route, chartOf(changed, settled));
    return failed.every((claim) => left.length > 0 && OF_LENGTHS.includes(claim.kind));
  };
  return { route: asked.route, meets, routeBy: trying.routeBy };
}
/** What the proof says of lengths that are short still. */
const OF_LENGTHS: readonly Claim['kind'][] = ['dimension', 'no air'];

function settle(asked: Asked, instead: Instead): Settled {
  const walk = walkRoute({ ...asked, instead: instead.from, more: instead.more });
  const budgets = [...drawingBudgets(asked.drawn, walk), ...stockBudgets(asked.part, walk)];
  const least = new Map(walk.lengths.map((cut): [DimId, Sides] => [cut.dim, halves(cut.holds)]));
  const weights = new Map(walk.lengths.map((cut): [DimId, number] => [cut.dim, cut.weight]));
  const share = shareTolerance([...budgets, ...capBudgets(walk, budgets)], least, weights);
  const settled = { walk, budgets, share };
  const more = moreLeft(settled);
  return more.size === 0 ? settled : settle(asked, { ...instead, more: new Map([...instead.more, ...addUp(instead.more, more)]) });
}

/** A cut that may find no metal because the one before is coarse: that one leaves as much more as is short, on a round figure. */
function moreLeft({ walk, share }: Settled): ReadonlyMap<string, Len> {
  const step = mm(numbersTable.value('tidy.middle'));
  const more = new Map<string, Len>();
  for (const one of share.short) {
    const cut = walk.lengths.find((length) => one.of === `${STOCK}${length.dim}`);
    const before = walk.lengths.find((length) => length.edge.to === cut?.takes);
    if (before?.cut.stage === 'rough') more.set(before.edge.to, len(Math.ceil((one.needs - one.allows) / step) * step));
  }
  return more;
}

function addUp(old: ReadonlyMap<string, Len>, more: ReadonlyMap<string, Len>): [string, Len][] {
  return [...more].map(([version, by]) => [version, len((old.get(version) ?? 0) + by)]);
}

/** Where it can't be met: one cut after another is measured from another face of its grip, as long as that lessens what is short. */
function measureOtherwise(asked: Asked, first: Settled): Settled {
  let best = first;
  let from: ReadonlyMap<string, string> = new Map();
  for (let better = true; better && best.share.short.length > 0; ) {
    better = false;
    const dims = new Set(best.share.short.flatMap((one) => one.dims));
    const tries = best.walk.lengths
      .filter((cut) => dims.has(cut.dim))
      .flatMap((cut) => cut.options.map((face) => [cut.edge.to, face] as const));
    for (const one of tries) {
      const other = new Map([...from, one]);
      const got = settle(asked, { from: other, more: new Map() });
      if (overrun(got) >= overrun(best)) continue;
      [best, from, better] = [got, other, true];
      break;
    }
  }
  return best;
}

const overrun = (settled: Settled): number => settled.share.short.reduce((sum, one) => sum + one.needs - one.allows, 0);

// ---- budgets: what each path may run out ------------------------------------------------------------------------------------
function drawingBudgets(drawn: readonly Drawn[], walk: Walk): Budget[] {
  return drawn.flatMap(({ dimension }): Budget[] => {
    const links = pathBetween(walk, dimension.a, dimension.b);
    if (!links) return [];
    const middle = middleOfPath(links, walk);
    return [{ of: dimension.id, links, below: middle - dimension.limits.lo, above: dimension.limits.hi - middle }];
  });
}

/** Every cut on a surface that was cut before finds at least so much. */
function stockBudgets(part: Part, walk: Walk): Budget[] {
  return walk.lengths.flatMap((cut): Budget[] => {
    const face = part.surfaces.find((surface) => surface.id === cut.cut.makes);
    if (cut.takes === undefined || face?.shape !== 'face') return [];
    const links = face.air === 'first' ? findPath(walk.tree, cut.takes, cut.edge.to) : findPath(walk.tree, cut.edge.to, cut.takes);
    if (!links) return [];
    return [{ of: `${STOCK}${cut.dim}`, links, below: middleOfPath(links, walk) - mm(numbersTable.value('stock.least')) }];
  });
}

/** What no drawing dimension bounds is given its general tolerance, or as much as the stock that it takes from a raw end. */
function capBudgets(walk: Walk, budgets: readonly Budget[]): Budget[] {
  const bounded = new Set(budgets.filter((one) => one.above !== undefined).flatMap((one) => one.links.map((link) => link.dim)));
  return walk.lengths.flatMap((cut): Budget[] => {
    if (bounded.has(cut.dim)) return [];
    const most = cut.from === 'bar end' ? cut.middle : Math.max(unstated(cut.middle), cut.holds);
    return [{ of: `cap/${cut.dim}`, links: [{ dim: cut.dim, sign: 1 }], below: most, above: most }];
  });
}

function pathBetween(walk: Walk, a: string, b: string): readonly Link[] | undefined {
  const [from, to] = [walk.now.get(a), walk.now.get(b)];
  return from && to ? findPath(walk.tree, from.version, to.version) : undefined;
}

function middleOfPath(links: readonly Link[], walk: Walk): number {
  const middles = new Map(walk.lengths.map((cut) => [cut.dim, cut.middle]));
  return links.reduce((sum, link) => sum + link.sign * (middles.get(link.dim) ?? Number.NaN), 0);
}

function halves(band: Len): Sides {
  const below = Math.floor(band / 2);
  return { below, above: band - below };
}

// ---- working dimensions -----------------------------------------------------------------------------------------------------
function workingLength(cut: LengthCut, settled: Settled): Working {
  const sides = settled.share.sides.get(cut.dim);
  if (!sides) throw new Error(`'${cut.dim}' was given no share`);
  const own = settled.budgets.find((one) => one.links.length === 1 && one.links[0]?.dim === cut.dim && isWhole(one, sides));
  const raw: Pair = { lo: len(cut.middle - sides.below), hi: len(cut.middle + sides.above) };
  const drawn = own ? raw : drawIn(raw.lo, raw.hi, cut.holds);
  const target = aimAt(drawn.lo, drawn.hi);
  const { lo, hi } = own || cut.from === 'bar end' ? drawn : evened(drawn.lo, drawn.hi, target, cut.holds);
  const limits: Limits = { lo, hi, target, from: { kind: 'chart', as: own?.of ?? tightest(cut.dim, settled) } };
  return { ...plainWorking(cut), from: cut.from, toward: cut.edge.toward, limits };
}

/** The drawing's own length, cut in one: its limits stand as they are. */
const isWhole = (budget: Budget, sides: Sides): boolean => budget.below === sides.below && budget.above === sides.above;

/** The path that bounds this dimension most: least room a link. */
function tightest(dim: DimId, settled: Settled): string {
  const on = settled.budgets.filter((one) => one.links.some((link) => link.dim === dim));
  const room = (one: Budget): number => Math.min(one.below, one.above ?? one.below) / one.links.length;
  return on.reduce<Budget | undefined>((least, one) => (least && room(least) <= room(one) ? least : one), undefined)?.of ?? '';
}

function workingDiameter(part: Part, route: Route, cut: DiameterCut): Working {
  const limits = diameterLimits(part, cut);
  return {
    ...plainWorking(cut),
    from: 'axis',
    toward: 1,
    limits: cut.cut.stage === 'final' ? asHeld(limits, route, cut.cut.makes) : limits,
  };
}

function plainWorking(cut: LengthCut | DiameterCut): Pick<Working, 'id' | 'op' | 'makes' | 'stage' | 'measures' | 'holds'> {
  return { id: cut.dim, op: cut.operation.id, makes: cut.cut.makes, stage: cut.cut.stage, measures: cut.cut.measures, holds: cut.holds };
}

function drawingPaths(drawn: readonly Drawn[], walk: Walk, working: readonly Working[]): Path[] {
  const pairs = new Map(working.map((one) => [one.id, one.limits]));
  return drawn.flatMap(({ dimension }): Path[] => {
    const links = pathBetween(walk, dimension.a, dimension.b);
    if (!links) return [];
    const { lo, hi } = sumPath(links, pairs);
    const met = lo >= dimension.limits.lo && hi <= dimension.limits.hi;
    return [{ of: dimension.id, links, lo, hi, asks: dimension.limits, met, likely: likelyPath(links, pairs) }];
  });
}

function notLocated(part: Part, walk: Walk): Diagnostic[] {
  const lost = facesOf(part).filter((face) => walk.now.get(face.id)?.stage !== 'final');
  return lost.map((face) => ({ code: 'chart.not-located', severity: 'error', grounds: { part: part.id, face: shortName(part, face.id) } }));
}
