/** Each part its best order, and the tooling that the orders ask for, as parts too. */
import type { Diagnostic } from '../base/diagnostics.ts';
import { makeTooling, toolingId } from '../fittings/tooling/make.ts';
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
  const queue = [...parts];
  const known = new Set(parts.map((p) => p.id));
  for (let part = queue.shift(); part; part = queue.shift()) {
    const c = candidates(part, workshop);
    const { route, none } = order(c, workshop);
    if (none) {
      noRoutes.push(none);
      found.push(noRouteFor(none));
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

export const noRouteFor = (none: NoRoute): Diagnostic => ({
  code: 'plan.no-route',
  severity: 'error',
  grounds: { part: none.part, refused: none.refused.length, ...helpOf(none) },
});

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
