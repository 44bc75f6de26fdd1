/** The phases in order. A description and a workshop go in; a proved plan comes out, or all that stands in its way. */
import { type Diagnostic, failed } from './base/diagnostics.ts';
import { markOf } from './base/mark.ts';
import { ASKING } from './compile/asking.ts';
import { finishAll } from './compile/finish.ts';
import { orderAll } from './compile/routed.ts';
import { DESIGNS, PLACES } from './fittings/designs.ts';
import { FITTING_KINDS } from './fittings/kinds.ts';
import { replay, stageAtEnd } from './geometry/replay.ts';
import type { Assets, Inputs } from './model/assets.ts';
import type { NoRoute, Plan, PlannedPart } from './model/plan.ts';
import type { SheetWish } from './model/wish.ts';
import { design } from './phases/design.ts';
import { prove } from './phases/prove.ts';
import { proveDay } from './phases/prove-day.ts';
import { placeFindings } from './phases/read/placed.ts';
import { read } from './phases/read.ts';
import { sequence } from './phases/sequence.ts';
import type { StageAt } from './phases/sheet.ts';
import { stack } from './phases/stack.ts';
import { stock } from './phases/stock.ts';
import { packTimes } from './phases/times.ts';

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
  const placed = (): readonly Diagnostic[] => placeFindings(found, inputs.fitting, PLACES[job.value?.fitting ?? ''] ?? {});
  if (ordered.noRoutes.length > 0 || failed(found)) return { found: placed(), noRoutes: ordered.noRoutes };
  const noRoutes: NoRoute[] = [];
  const parts = finishAll(ordered.routed, fitting.value.parts, workshop, found, prove, noRoutes);
  if (noRoutes.length > 0) return { found: placed(), noRoutes };
  const stacks = stack(fitting.value, parts);
  found.push(...stacks.found);
  if (failed(found)) return { found: placed() };
  const packs = inputs.packs ?? 1;
  const { sequence: day, day: figures } = sequence(parts, ASKING);
  const body = {
    version: VERSION,
    fitting: fitting.value,
    workshop,
    parts,
    sequence: day,
    day: { ...figures, proof: proveDay({ parts, sequence: day, ...ASKING }) },
    time: packTimes(parts, day, packs, workshop),
    stock: stock(parts, packs, (part) => day.filter((s) => s.part === part && s.setUp === 0).length, workshop),
    stacks: stacks.value ?? [],
  };
  return { plan: { ...body, mark: markOf(JSON.stringify(body)) }, stages: parts.flatMap(stagesOf), ...(wish ? { wish } : {}), found };
}

function stagesOf({ part, route, chart: charted }: PlannedPart): readonly StageAt[] {
  const run = replay(part, route, charted);
  return route.setUps.map((setUp, i) => ({ part: part.id, setUp: i, stage: stageAtEnd(run, setUp) }));
}
