/**
 * The proof of a part's route: it is carried out again on the painted half-section, told only what each cut is measured from, by how
 * much and which way, and each grip; then judged by claims about the end and claims about the way. It shares no sum with the chart.
 */
import { UNITS_PER_MM } from '../base/units.ts';
import { type Step, tookOf } from '../geometry/replay.ts';
import { volumeOf } from '../geometry/section/ask.ts';
import { isSolid } from '../geometry/section.ts';
import type { Part } from '../model/part.ts';
import type { Chart, Claim, Figures, Operation, Proof, Route } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';
import { wayAtCorners } from './prove/at-corners.ts';
import { type Case, claim, short } from './prove/claims.ts';
import { closesClaims } from './prove/closes.ts';
import { type Corners, cornersOf } from './prove/corners.ts';
import { cornerText, endClaims } from './prove/end.ts';
import { NO_CHIPS, wayClaims } from './prove/way.ts';

/** What is judged. `figures`: where they are given, their speeds are judged too. */
export type Proved = {
  readonly part: Part;
  readonly route: Route;
  readonly chart: Chart;
  readonly workshop: Workshop;
  readonly figures?: readonly Figures[];
};

/**
 * Claims hold or fail; none is left out because another one failed. Throws Error when part, route and chart do not speak of the same
 * operations and surfaces: our fault, not the user's.
 */
export function prove(asked: Proved): Proof {
  const corners = cornersOf(asked);
  const way = wayAtCorners(asked, corners, wayClaims(asked, corners.base.run.steps));
  const closes = closesClaims(asked, corners);
  const stock = stockClaims(asked, corners);
  const end = endClaims(asked, corners);
  // judged last: by then every corner that any other claim asked for has been replayed
  const claims = [...end, ...way, ...closes, ...stock, ...lackClaims(asked, corners)];
  return { part: asked.part.id, claims, holds: claims.every((one) => one.holds), replays: corners.replays(), volume: volumeLeft(corners) };
}

/** A surface that is cut once more, and the raw end, give metal at every limit, not at the targets only. A chamfer may miss at its small limit. */
function stockClaims(asked: Case, corners: Corners): readonly Claim[] {
  const seen = new Set<string>();
  const known = new WeakMap<Step, number>();
  const leastOf = (step: Step): number => {
    const least = known.get(step) ?? Math.min(...tookOf(step));
    known.set(step, least);
    return least;
  };
  return corners.base.run.steps.flatMap((step, i): readonly Claim[] => {
    const again = step.way.cuts.some((cut) => seen.has(cut.makes) || fromBarEnd(asked, step, cut.makes));
    for (const cut of step.way.cuts) seen.add(cut.makes);
    if (!again || isExempt(step.operation)) return [];
    const least = corners.least((_, run) => leastOf(run.steps[i] ?? step));
    const id = step.operation.id;
    const grounds = {
      operation: short(asked.part.id, id),
      sweep: step.way.sweeps[0]?.take ?? '',
      at: 'limits',
      corner: cornerText(asked.part, least.at),
    };
    return [claim('no air', id, (least.lo ?? 0) > 1, grounds, id)];
  });
}

function volumeLeft({ base }: Corners): number {
  const cubed = volumeOf(base.run.end, isSolid) / UNITS_PER_MM ** (1 + 2);
  return Math.round(cubed * 1000) / 1000;
}

const fromBarEnd = ({ chart }: Case, { operation }: Step, makes: string): boolean =>
  chart.working.some((one) => one.op === operation.id && one.makes === makes && one.from === 'bar end');

/** At some corner that was replayed something is not there that is there at the targets. */
function lackClaims(asked: Case, corners: Corners): readonly Claim[] {
  const found = corners.lacking();
  if (!found) return [];
  const id = short(asked.part.id, found.at);
  const grounds = { operation: id, surface: short(asked.part.id, found.surface), what: found.what };
  return [claim('datum there', found.at, false, { ...grounds, corner: cornerText(asked.part, found.corner) }, found.at)];
}

const isExempt = ({ verb }: Operation): boolean => verb === 'chamfer' || NO_CHIPS.includes(verb);
