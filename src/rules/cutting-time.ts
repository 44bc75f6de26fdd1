/** How long the tool is in the cut, from the numbers of the operation: length, passes, feed, speed. Lengths are the drawing's; whole seconds. */
import { type Len, len, mm, toMm } from '../base/units.ts';
import { slideAlong } from '../handbook/cones.ts';
import { drillFeed } from '../handbook/drilling.ts';
import { pointLength } from '../handbook/drills.ts';
import { setting } from '../handbook/setting.ts';
import { facingTime, turningTime } from '../handbook/times.ts';
import type { End } from '../model/ids.ts';
import type { Cone, Part } from '../model/part.ts';
import type { Bound, Figures, Sweep } from '../model/plan.ts';
import { stairsOf } from './methods/radii.ts';
import type { Removal } from './removal.ts';

/** None where the operation has no speed: what is done by hand is handling. */
export function cuttingTime(part: Part, removal: Removal, figures: Figures): number {
  const { rpm, depth } = figures;
  const [sweep] = removal.way.sweeps;
  const feed = figures.feed ?? feedByHand(removal);
  if (!rpm || feed === undefined || !sweep) return 0;
  const byHand = Math.min(feed, setting.value('feed.hand') / rpm.value);
  return Math.round(
    sweepTime({ part, removal, sweep, turns: rpm.value, feed, byHand, cuts: cutsOf(figures), faster: figures.faster ?? [], depth }),
  );
}

/** A centre drill is pressed on as a drill of its pilot is. */
function feedByHand({ operation }: Removal): number | undefined {
  return operation.verb === 'centre' && operation.tool.size !== undefined ? drillFeed(operation.tool.size)?.hand : undefined;
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
  readonly faster: NonNullable<Figures['faster']>;
  /** A centre drill's whole way in. */
  readonly depth: Len | undefined;
};

function sweepTime(ask: Ask): number {
  const { part, removal, sweep, turns, feed, byHand, cuts } = ask;
  const { diameter = len(0), stock } = removal;
  const out = removal.setUp.grip.out;
  const approach = setting.value('approach');
  const inward = stock?.measures === 'diameter' ? len(diameter - stock.amount) : len(0);
  switch (sweep.take) {
    case 'face':
      return facingTime(toMm(diameter) + 2 * approach, 0, byHand, turns, cuts);
    case 'groove':
      return facingTime(toMm(diameter) + 2 * approach, toMm(len(Math.max(0, inward))), byHand, turns, plungesOf(ask));
    case 'part':
      return facingTime(toMm(diameter) + 2 * approach, toMm(len(Math.max(0, inward))), byHand, turns);
    case 'turn':
      if (removal.inward !== undefined)
        return facingTime(toMm(diameter) + 2 * approach, toMm(len(diameter - removal.inward)), byHand, turns, cuts);
      return turnTime(ask, toMm(depthOf(part, out, sweep.to)) + approach);
    case 'bore':
      return boreTime(ask, sweep);
    case 'cone':
      return coneTime(ask, sweep.cone);
    case 'arc':
      return arcTime(ask, sweep.arc);
    case 'thread':
      return turningTime(toMm(threadLength(part, sweep.feature)) + approach, feed, turns, cuts);
    default:
      return 0;
  }
}

/** Along once a cut, at the speed that is set for it. */
function turnTime({ turns, feed, cuts, faster }: Ask, long: number): number {
  const legs = [{ after: 0, rpm: turns }, ...faster];
  return legs.reduce((sum, { after, rpm }, i) => sum + turningTime(long, feed, rpm, (legs[i + 1]?.after ?? cuts) - after), 0);
}

function boreTime({ removal, turns, feed, byHand, cuts, depth }: Ask, { diameter, point }: Extract<Sweep, { take: 'bore' }>): number {
  const { operation } = removal;
  const way =
    operation.verb === 'centre' && depth !== undefined
      ? depth
      : (removal.depth ?? 0) + (point === undefined ? 0 : pointLength(diameter, point));
  const deep = toMm(len(way)) + setting.value('approach');
  return operation.verb.startsWith('bore') ? turningTime(deep, feed, turns, cuts) : turningTime(deep, byHand, turns);
}

/** A groove wider than its blade is plunged side by side. */
function plungesOf({ part, removal: { operation } }: Ask): number {
  const feature = part.features.find((one) => one.id === operation.feature);
  const floor = feature?.kind === 'groove' ? part.surfaces.find((one) => one.id === feature.floor) : undefined;
  const blade = operation.tool.size;
  if (floor?.shape !== 'cylinder' || blade === undefined || blade <= 0) return 1;
  return Math.max(1, Math.ceil((floor.to - floor.from) / blade));
}

/** A chamfer is plunged by the cross slide; along a cone the top slide is wound by hand, once a pass. */
function coneTime({ part, removal, turns, byHand, cuts }: Ask, id: string): number {
  const cone = part.surfaces.find((one): one is Cone => one.id === id && one.shape === 'cone');
  const off = toMm(removal.stock?.amount ?? len(0));
  const approach = setting.value('approach');
  if (removal.operation.verb !== 'cone' || !cone) return facingTime(off + 2 * approach, 0, byHand, turns);
  const until = part.surfaces.find((one) => one.id === cone.until);
  const change = until?.shape === 'cylinder' ? Math.abs(cone.mouth.target - (cone.ends?.size ?? until.size).target) : mm(off);
  return turningTime(toMm(slideAlong(len(change), cone.includedAngle)) + approach, byHand, turns, cuts);
}

/** A form tool goes in by its radius; steps are turned one by one, the last the shortest. */
function arcTime({ part, removal, turns, feed, byHand }: Ask, id: string): number {
  const arc = part.surfaces.find((one) => one.id === id);
  if (arc?.shape !== 'arc') return 0;
  const approach = setting.value('approach');
  if (removal.operation.verb !== 'steps') return facingTime(toMm(arc.across.target) + 2 * approach, 0, byHand, turns);
  return stairsOf(part, arc).reduce((sum, { far }) => sum + turningTime(toMm(far) + approach, feed, turns), 0);
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
