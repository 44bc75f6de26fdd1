/** How hard a length is here: its process, its size, whether it lies in a bore, how the work is held. Limits are shared by it. */
import { type Len, mm } from '../base/units.ts';
import { difficulty, type OwnWeights, weightOf } from '../handbook/difficulty.ts';
import type { Face } from '../model/part.ts';
import type { Grip, Operation, Stage } from '../model/plan.ts';

export type Weighed = {
  readonly operation: Operation;
  readonly stage: Stage;
  readonly face: Face;
  readonly grip: Grip;
  readonly length: Len;
};
/** A whole number above 0: hundredths of the easiest cut. */
export type Weigh = (cut: Weighed) => number;

/**
 * A face that is cut once more is as easy as any: what is left of it is nobody's dimension, and its process has its least already.
 * `own`: what the workshop says of its processes; what it is silent of is as the handbook has it.
 */
export function weighBy(own: OwnWeights): Weigh {
  return ({ operation, stage, face, grip, length }) => {
    if (stage === 'rough') return HUNDRED;
    const inside = face.side === 'inside' ? difficulty.value('inside') : 1;
    const long = length > mm(difficulty.value('long.from')) ? difficulty.value('long') : 1;
    const weight = weightOf(operation.verb, own) * inside * long * byHold(grip);
    return Math.max(1, Math.round(weight * HUNDRED));
  };
}
const HUNDRED = 100;

function byHold({ kind }: Grip): number {
  if (kind === 'threaded-mandrel' || kind === 'stub-mandrel') return difficulty.value('on-mandrel');
  return kind === 'bar' || kind === 'bar-and-centre' ? 1 : difficulty.value('held-again');
}
