/** The half-section at the end of every set-up of a plan, by replay of each part's route at the sizes aimed at: what the pictures show. */
import { replay, stageAfter } from '../../geometry/replay.ts';
import type { PartId } from '../../model/ids.ts';
import type { Plan, PlannedPart } from '../../model/plan.ts';
import type { Stage } from '../../model/stage.ts';

/** `setUp`: its place in the part's route, from 0. */
export type StageAt = { readonly part: PartId; readonly setUp: number; readonly stage: Stage };

/** One for each set-up that the replay got to; a page whose stage is missing has no picture (a draft's). */
export function stagesOf(plan: Plan): readonly StageAt[] {
  return plan.parts.flatMap(stagesOfPart);
}

function stagesOfPart({ part, route, chart }: PlannedPart): readonly StageAt[] {
  const run = replay(part, route, chart);
  return route.setUps.flatMap((setUp, place) => {
    const last = run.steps.findLastIndex((step) => setUp.operations.includes(step.operation.id));
    return last < 0 ? [] : [{ part: part.id, setUp: place, stage: stageAfter(run, last) }];
  });
}
