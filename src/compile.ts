/** The phases in order. A description and a workshop go in; a proved plan comes out, or all that stands in its way. */
import { type Diagnostic, failed } from './base/diagnostics.ts';
import { markOf } from './base/mark.ts';
import { DESIGNS, PLACES } from './fittings/designs.ts';
import { FITTING_KINDS } from './fittings/kinds.ts';
import { makeTooling, toolingId } from './fittings/tooling/make.ts';
import { replay, stageAtEnd } from './geometry/replay.ts';
import { heldBy } from './handbook/capability.ts';
import type { Assets, Inputs } from './model/assets.ts';
import type { Part } from './model/part.ts';
import type { Candidates, NoRoute, Plan, PlannedPart, Route, ToolingAsk } from './model/plan.ts';
import type { SheetWish } from './model/wish.ts';
import type { Workshop } from './model/workshop.ts';
import { candidates } from './phases/candidates.ts';
import { chart, type Trying } from './phases/chart.ts';
import { design } from './phases/design.ts';
import { numbers } from './phases/numbers.ts';
import { madeBy } from './phases/order/made-by.ts';
import { order } from './phases/order.ts';
import { prove } from './phases/prove.ts';
import { placeFindings } from './phases/read/placed.ts';
import { read } from './phases/read.ts';
import { sequence } from './phases/sequence.ts';
import type { StageAt } from './phases/sheet.ts';
import { stack } from './phases/stack.ts';
import { stock } from './phases/stock.ts';
import { packTimes, times } from './phases/times.ts';
import { weighBy } from './rules/difficulty.ts';
import { toolingOf } from './rules/grips/plug.ts';

export type Compiled = {
  readonly plan?: Plan;
  /** The half-section at the end of each set-up at the lathe, for the pictures; `setUp` counts the route's set-ups from 0. */
  readonly stages?: readonly StageAt[];
  /** How the workshop wants its sheets to look. */
  readonly wish?: SheetWish;
  readonly found: readonly Diagnostic[];
  readonly noRoutes?: readonly NoRoute[];
};

export const VERSION = '0.1.0';

export function compile(inputs: Inputs, assets: Pick<Assets, 'workshop'>): Compiled {
  const job = read(inputs, assets.workshop, FITTING_KINDS);
  if (!job.value) return { found: job.found };
  const { sheet: wish, ...workshop } = job.value.workshop;
  const fitting = design(job.value, DESIGNS);
  const found: Diagnostic[] = [...job.found, ...placeFindings(fitting.found, inputs.fitting, PLACES[job.value.fitting] ?? {})];
  if (!fitting.value || failed(found)) return { found };
  const ordered = orderAll(fitting.value.parts, workshop, found);
  if (ordered.noRoutes.length > 0 || failed(found)) return { found, noRoutes: ordered.noRoutes };
  const parts = ordered.routed.flatMap((r) => finish(r, workshop, found) ?? []);
  const stacks = stack(fitting.value, parts);
  found.push(...stacks.found);
  if (failed(found)) return { found };
  const packs = inputs.packs ?? 1;
  const day = sequence(parts, ({ grip }) => toolingOf(grip).map(toolingId));
  const body = {
    version: VERSION,
    fitting: fitting.value,
    workshop,
    parts,
    sequence: day,
    time: packTimes(parts, day, packs, workshop),
    stock: stock(parts, packs, (part) => day.filter((s) => s.part === part && s.setUp === 0).length, workshop),
    stacks: stacks.value ?? [],
  };
  return { plan: { ...body, mark: markOf(JSON.stringify(body)) }, stages: parts.flatMap(stagesOf), ...(wish ? { wish } : {}), found };
}

type Routed = { readonly part: Part; readonly candidates: Candidates; readonly route: Route };

/** Parts first, then the tooling that their routes ask for, then what that tooling asks for, each once. */
function orderAll(
  parts: readonly Part[],
  workshop: Workshop,
  found: Diagnostic[],
): { readonly routed: readonly Routed[]; readonly noRoutes: readonly NoRoute[] } {
  const routed: Routed[] = [];
  const noRoutes: NoRoute[] = [];
  const queue = [...parts];
  const known = new Set(parts.map((p) => p.id));
  for (let part = queue.shift(); part; part = queue.shift()) {
    const c = candidates(part, workshop);
    const { route, none } = order(c, workshop);
    if (none) {
      noRoutes.push(none);
      found.push({
        code: 'plan.no-route',
        severity: 'error',
        grounds: { part: part.id, refused: none.refused.length, ...helpOf(none) },
      });
    }
    if (!route) continue;
    routed.push({ part, candidates: c, route });
    for (const ask of asksOf(route)) {
      if (known.has(toolingId(ask))) continue;
      known.add(toolingId(ask));
      queue.push(makeTooling(ask, workshop, found));
    }
  }
  return { routed, noRoutes };
}

/** How many single changes would help, and how many pairs where no single one does. */
const helpOf = ({ wouldHelp, wouldHelpByOne = [], wouldHelpPairs = [] }: NoRoute) => ({
  wouldHelp: wouldHelp.length + wouldHelpByOne.length,
  pairs: wouldHelp.length + wouldHelpByOne.length > 0 ? 0 : wouldHelpPairs.length,
});

function asksOf(route: Route): readonly ToolingAsk[] {
  const operations = route.chosen.flatMap((m) => m.operations);
  return [
    ...operations.flatMap((o) => [...(o.tool.made ? [o.tool.made] : []), ...(o.asks ?? [])]),
    ...route.setUps.flatMap((s) => toolingOf(s.grip)),
  ];
}

function finish({ part, candidates: c, route }: Routed, workshop: Workshop, found: Diagnostic[]): PlannedPart | undefined {
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
    proof: prove({ part, route, chart: charted.value, workshop, figures }),
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

function stagesOf({ part, route, chart: charted }: PlannedPart): readonly StageAt[] {
  const run = replay(part, route, charted);
  return route.setUps.flatMap((setUp, i) =>
    setUp.grip.kind === 'bench' ? [] : [{ part: part.id, setUp: i, stage: stageAtEnd(run, setUp.no) }],
  );
}
