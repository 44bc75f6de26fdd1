/** What the proof of the day is asked about. */
import type { PartId } from '../../model/ids.ts';
import type { Grip, Operation, PlannedPart, Sequence, SetUp } from '../../model/plan.ts';

/** What is judged, and how to ask it: tooling parts that hold or fill the work, that an operation wants; what is bored in place for a hold. */
export type ProvedDay = {
  readonly parts: readonly Pick<PlannedPart, 'part' | 'route'>[];
  readonly sequence: Sequence;
  readonly holds: (setUp: SetUp) => readonly PartId[];
  readonly wants: (operation: Operation) => readonly PartId[];
  readonly bored: (grip: Grip) => string | undefined;
};
