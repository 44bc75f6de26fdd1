/** What cannot be kept true through its re-grips: by how much, through which holds, and which change of hold would keep it, each tried. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { type Len, mm, showMm } from '../../base/units.ts';
import { shortName } from '../../geometry/places.ts';
import { practice } from '../../handbook/practice.ts';
import type { Part } from '../../model/part.ts';
import type { Route, TruthPath } from '../../model/plan.ts';
import { runoutOf, truthPaths } from './truths.ts';

export function notTrue(part: Part, route: Route, paths: readonly TruthPath[]): readonly Diagnostic[] {
  return paths
    .filter((path) => !path.met)
    .map((path) => ({
      code: 'chart.not-true',
      severity: 'error',
      grounds: {
        ...{ part: part.id, a: shortName(part, path.a), b: shortName(part, path.b), links: path.links.length },
        ...{ worst: showMm(path.worst), asks: showMm(path.asks), short: showMm((path.worst - path.asks) as Len) },
        through: path.links.map((link) => shortName(part, link.grip)).join(', '),
        truer: truerHold(part, route, path),
      },
    }));
}

/** Kinds of hold from the least change to the greatest, with what they run out. */
const HOLDS = ['sleeve', 'mandrel', 'collet', 'four-jaw', 'bored-jaws'] as const;

/** The first kind that would keep it true if one of the re-grips on the way were of that kind; empty where none does alone. */
function truerHold(part: Part, route: Route, path: TruthPath): string {
  for (const kind of HOLDS)
    for (const link of path.links) {
      const better = mm(practice.value(`runout.${kind}`));
      const tried = truthPaths(part, route, (setUp) => (setUp.grip.id === link.grip ? better : runoutOf(setUp)));
      if (tried.some((one) => one.of === path.of && one.met)) return kind;
    }
  return '';
}
