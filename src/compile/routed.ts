/** Each part its best order, and the tooling that the orders ask for, as parts too. */
import type { Diagnostic } from '../base/diagnostics.ts';
import { makeTooling, servesBoth, toolingId } from '../fittings/tooling/make.ts';
import type { Part } from '../model/part.ts';
import type { Candidates, NoRoute, Route, ToolingAsk } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';
import { candidates } from '../phases/candidates.ts';
import { order } from '../phases/order.ts';
import { toolingOf } from '../rules/grips/plug.ts';

export type Routed = { readonly part: Part; readonly candidates: Candidates; readonly route: Route };

/** Parts first, then the tooling that their routes ask for, then what that tooling asks for, each once. */
export function orderAll(
  parts: readonly Part[],
  workshop: Workshop,
  found: Diagnostic[],
): { readonly routed: readonly Routed[]; readonly noRoutes: readonly NoRoute[] } {
  const routed: Routed[] = [];
  const noRoutes: NoRoute[] = [];
  const known = new Set(parts.map((p) => p.id));
  for (let level = parts; level.length > 0; ) {
    const routes = level.flatMap((part) => routeOf(part, workshop, found, noRoutes) ?? []);
    routed.push(...routes);
    const asks = routes.flatMap(({ route }) => asksOf(route)).filter((ask) => !known.has(toolingId(ask)));
    level = forAll(asks).map((ask) => makeTooling(ask, workshop, found));
    for (const { id } of level) known.add(id);
  }
  return { routed, noRoutes };
}

export const noRouteFor = (none: NoRoute): Diagnostic => ({
  code: 'plan.no-route',
  severity: 'error',
  grounds: {
    ...{ part: none.part, kind: none.kind, refused: none.refused.length, ...helpOf(none) },
    ...{ feature: none.about?.feature ?? '', end: none.about?.end ?? '', slot: none.about?.slot ?? false },
  },
});

function routeOf(part: Part, workshop: Workshop, found: Diagnostic[], noRoutes: NoRoute[]): Routed | undefined {
  const c = candidates(part, workshop);
  const { route, none } = order(c, workshop);
  if (none) {
    noRoutes.push(none);
    found.push(noRouteFor(none));
  }
  return route && { part, candidates: c, route };
}

/** Each piece of tooling once, of sizes that serve all who ask for it. */
function forAll(asks: readonly ToolingAsk[]): readonly ToolingAsk[] {
  const byId = new Map<string, ToolingAsk>();
  for (const ask of asks) {
    const id = toolingId(ask);
    const before = byId.get(id);
    byId.set(id, before ? servesBoth(before, ask) : ask);
  }
  return [...byId.values()];
}

/** How many single changes would help, and how many pairs where no single one does. */
const helpOf = ({ wouldHelp, wouldHelpByOne = [], wouldHelpPairs = [] }: NoRoute) => ({
  wouldHelp: wouldHelp.length + wouldHelpByOne.length,
  pairs: wouldHelp.length + wouldHelpByOne.length > 0 ? 0 : wouldHelpPairs.length,
});

/** Tooling that a route asks for: as tools, beside them, and to hold the work. */
export function asksOf(route: Route): readonly ToolingAsk[] {
  const operations = route.chosen.flatMap((m) => m.operations);
  return [
    ...operations.flatMap((o) => [...(o.tool.made ? [o.tool.made] : []), ...(o.asks ?? [])]),
    ...route.setUps.flatMap((s) => toolingOf(s.grip)),
  ];
}
