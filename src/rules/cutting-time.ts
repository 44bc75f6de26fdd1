/** How long the tool is in the cut, from the numbers of the operation: length, passes, feed, speed. Lengths are the drawing's; whole seconds. */
import { type Len, len, toMm } from '../base/units.ts';
import { pointLength } from '../handbook/drills.ts';
import { setting } from '../handbook/setting.ts';
import { facingTime, turningTime } from '../handbook/times.ts';
import type { End } from '../model/ids.ts';
import type { Part } from '../model/part.ts';
import type { Bound, Figures, Sweep } from '../model/plan.ts';
import type { Removal } from './removal.ts';

/** None where the operation has no speed: what is done by hand is handling. */
export function cuttingTime(part: Part, removal: Removal, figures: Figures): number {
  const { rpm, feed } = figures;
  const [sweep] = removal.way.sweeps;
  if (!rpm || feed === undefined || !sweep) return 0;
  const byHand = Math.min(feed, setting.value('feed.hand') / rpm.value);
  return Math.round(sweepTime({ part, removal, sweep, turns: rpm.value, feed, byHand, cuts: cutsOf(figures) }));
}

/** Passes, the spring passes of a thread among them. */
export const cutsOf = ({ passes, screw }: Figures): number => Math.max(1, passes?.length ?? 1) + (screw?.spring ?? 0);

type Ask = {
  readonly part: Part;
  readonly removal: Removal;
  readonly sweep: Sweep;
  readonly turns: number;
  readonly feed: number;
  readonly byHand: number;
  readonly cuts: number;
};

function sweepTime({ part, removal, sweep, turns, feed, byHand, cuts }: Ask): number {
  const { diameter = len(0), stock } = removal;
  const out = removal.setUp.grip.out;
  const approach = setting.value('approach');
  const inward = stock?.measures === 'diameter' ? len(diameter - stock.amount) : len(0);
  switch (sweep.take) {
    case 'face':
      return facingTime(toMm(diameter) + 2 * approach, 0, byHand, turns, cuts);
    case 'groove':
    case 'part':
      return facingTime(toMm(diameter) + 2 * approach, toMm(len(Math.max(0, inward))), byHand, turns);
    case 'turn':
      return turningTime(toMm(depthOf(part, out, sweep.to)) + approach, feed, turns, cuts);
    case 'bore': {
      const point = sweep.point === undefined ? 0 : pointLength(sweep.diameter, sweep.point);
      const deep = toMm(len((removal.depth ?? 0) + point)) + approach;
      return removal.operation.verb.startsWith('bore') ? turningTime(deep, feed, turns, cuts) : turningTime(deep, byHand, turns);
    }
    case 'thread':
      return turningTime(toMm(threadLength(part, sweep.feature)) + approach, feed, turns, cuts);
    default:
      return 0;
  }
}

/** From the end in use in to the bound. */
function depthOf(part: Part, out: End, { face, beyond = len(0) }: Bound): Len {
  const at = part.surfaces.find((one) => one.id === face);
  const z = at?.shape === 'face' ? at.z : 0;
  return len(Math.max(0, (out === 'first' ? z : part.length - z) + beyond));
}

export function threadLength(part: Part, id: string): Len {
  const thread = part.features.find((one) => one.id === id);
  return thread?.kind === 'thread' ? len(thread.to - thread.from) : len(0);
}
