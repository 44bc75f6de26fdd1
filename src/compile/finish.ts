/**
 * From an order to a proved plan. Where the proof refuses one that the planner thought best, what its claims name is left out and the next
 * best is tried, a few times at most; the first that holds is taken, and keeps what was refused before it.
 */
import type { Diagnostic } from '../base/diagnostics.ts';
import { failed } from '../base/diagnostics.ts';
import { makeTooling, toolingId } from '../fittings/tooling/make.ts';
import { heldBy } from '../handbook/capability.ts';
import { proving } from '../handbook/proving.ts';
import type { Part } from '../model/part.ts';
import type { Candidates, NoRoute, PlannedPart, RefusedPlan, Route, ToolingAsk } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';
import { type Again, withoutRefused } from '../phases/again.ts';
import { chart, type Trying } from '../phases/chart.ts';
import { numbers } from '../phases/numbers.ts';
import { madeBy } from '../phases/order/made-by.ts';
import { order } from '../phases/order.ts';
import { prove } from '../phases/prove.ts';
import { times } from '../phases/times.ts';
import { weighBy } from '../rules/difficulty.ts';
import { withoutShortHolds } from '../rules/grips/short.ts';
import { asksOf, noRouteFor, orderAll, type Routed } from './routed.ts';

/** Judges a plan; another than the proof's own is for tests. */
export type Judge = typeof prove;

/** `roots`: the parts that were asked for; the rest is tooling, of which only what the plans in the end ask for is kept. */
export function finishAll(
  routed: readonly Routed[],
  roots: readonly Part[],
  workshop: Workshop,
  found: Diagnostic[],
  judge: Judge = prove,
  noRoutes: NoRoute[] = [],
): readonly PlannedPart[] {
  const settle = (one: Routed): readonly PlannedPart[] => {
    const { part, none } = settled(one, workshop, found, judge);
    if (none) {
      noRoutes.push(none);
      found.push(noRouteFor(none));
    }
    return part ? [part] : [];
  };
  const parts = routed.flatMap(settle);
  if (parts.every((one) => one.insteadOf === undefined)) return parts;
  const known = new Map(parts.map((one) => [one.part.id, one]));
  const queue = roots.flatMap((root) => known.get(root.id) ?? []);
  const kept = new Map(queue.map((one) => [one.part.id, one]));
  const fresh = (ask: ToolingAsk): readonly PlannedPart[] =>
    orderAll([makeTooling(ask, workshop, found)], workshop, found).routed.flatMap(settle);
  for (let one = queue.shift(); one; one = queue.shift()) {
    for (const ask of asksOf(one.route)) {
      const id = toolingId(ask);
      if (kept.has(id)) continue;
      const made = known.get(id) ?? fresh(ask).find((each) => each.part.id === id);
      if (!made) continue;
      kept.set(id, made);
      queue.push(made);
    }
  }
  return [...kept.values()];
}

type Settled = { readonly part?: PlannedPart; readonly none?: NoRoute };

/** The plan that the proof accepts; where none of those tried is, no plan if all that it refuses are holds, and else the first. */
function settled(routed: Routed, workshop: Workshop, found: Diagnostic[], judge: Judge): Settled {
  const first = finish(routed, workshop, found, judge);
  if (!first) return {};
  if (first.proof.holds) return { part: first };
  const again = tryAgain(first, workshop, judge);
  return again ? { part: again } : (heldOtherwise(first, workshop, judge) ?? { part: first });
}

/** Every hold that comes out too short is refused in turn, until a plan holds or none is left. */
function heldOtherwise(first: PlannedPart, workshop: Workshop, judge: Judge): Settled | undefined {
  const before: RefusedPlan[] = [];
  let refused = first;
  for (let c = withoutShortHolds(first.candidates, first); c; c = withoutShortHolds(c, refused)) {
    const claims = refused.proof.claims.filter((one) => !one.holds);
    before.push(...claims.map((one): RefusedPlan => ({ claims, left: { what: 'hold', grip: one.about } })));
    const { none } = order(c, workshop);
    if (none) return { none };
    const planned = planFor(first.part, c, workshop, judge);
    if (!planned) return undefined;
    if (planned.proof.holds) return { part: { ...planned, candidates: first.candidates, insteadOf: before } };
    refused = planned;
  }
  return undefined;
}

type Next = Again & { readonly before: readonly RefusedPlan[] };

/** Depth first: what a second refused plan names is left out besides. */
function tryAgain(first: PlannedPart, workshop: Workshop, judge: Judge): PlannedPart | undefined {
  const nextAfter = (refused: PlannedPart, before: readonly RefusedPlan[]): readonly Next[] =>
    withoutRefused(refused.candidates, refused).map((again) => ({
      ...again,
      before: [...before, { claims: refused.proof.claims.filter((one) => !one.holds), left: again.left }],
    }));
  const queue = [...nextAfter(first, [])];
  for (let tries = proving.value('proof.again'); tries > 0; tries -= 1) {
    const next = queue.shift();
    if (!next) return undefined;
    const planned = planFor(first.part, next.candidates, workshop, judge);
    if (planned?.proof.holds) return { ...planned, candidates: first.candidates, insteadOf: next.before };
    if (planned) queue.unshift(...nextAfter(planned, next.before));
  }
  return undefined;
}

function planFor(part: Part, candidates: Candidates, workshop: Workshop, judge: Judge): PlannedPart | undefined {
  const { route } = order(candidates, workshop);
  const faults: Diagnostic[] = [];
  const planned = route && finish({ part, candidates, route }, workshop, faults, judge);
  return failed(faults) ? undefined : planned;
}

function finish({ part, candidates: c, route }: Routed, workshop: Workshop, found: Diagnostic[], judge: Judge): PlannedPart | undefined {
  const charted = chart(part, route, heldBy(workshop.holds ?? []), weighBy(workshop.difficulty ?? []), tryingOf(c, route, workshop));
  found.push(...charted.found);
  if (!charted.value) return undefined;
  const figures = numbers(part, route, charted.value, workshop);
  return {
    part,
    candidates: c,
    route,
    chart: charted.value,
    figures,
    proof: judge({ part, route, chart: charted.value, workshop, figures }),
    time: times({ part, route, chart: charted.value, figures }, workshop),
  };
}

/** What would meet a length that is short is tried by the proof, and another process by the search. */
function tryingOf(c: Candidates, route: Route, workshop: Workshop): Trying {
  return {
    fails: (part, by, charted) => prove({ part, route: by, chart: charted, workshop }).claims.filter((one) => !one.holds),
    routeBy: (operation, verb) => {
      const other = madeBy(c, route, operation, verb);
      return other && order(other, workshop).route;
    },
  };
}
