/** How a thread is cut with the single point on this lathe: passes, which slide feeds, how fast, how it stops, how it is checked. */
import { type Len, len, mm, toStep } from '../base/units.ts';
import type { CuttingGroup } from '../handbook/materials.ts';
import { numbersTable } from '../handbook/numbers.ts';
import { firstPass, modifiedInfeed, passCount, threading } from '../handbook/thread-passes.ts';
import { infeedOf, runOn, setOver, slideTravel, toolDepth, toolTable } from '../handbook/thread-tool.ts';
import { bestWire, overWires, usableWires } from '../handbook/wires.ts';
import type { Face, Feature, Part, ThreadSize } from '../model/part.ts';
import type { ScrewCutting, SetUp, WheelsUsed } from '../model/plan.ts';
import type { SpeedBound } from './cutting.ts';
import type { Lathe } from './wheels.ts';

export type Thread = Extract<Feature, { kind: 'thread' }>;

/** A side, from crest to root by the thread's form, to the hundredth; the gauge has the last word. */
export function threadDepth({ side, thread }: Thread): Len {
  return toHundredth(len(Math.round(numbersTable.value(`thread.depth.${thread.flankAngle}.${side}`) * thread.pitch)));
}

const toHundredth = (length: Len): Len => toStep(length, mm(numbersTable.value('tidy.fine')));

/** Radial passes for this metal; they add up to the depth. */
export function threadPasses(feature: Thread, group: CuttingGroup): readonly Len[] {
  const depth = threadDepth(feature);
  const count = passCount(depth, firstPass(group, feature.side), mm(threading.value('least')));
  return modifiedInfeed(depth, count, mm(numbersTable.value('tidy.fine')));
}

/**
 * The tool crosses the relief in no less than the time that it takes to stop: half-nuts out, or the spindle at rest where they stay closed.
 * None without a relief: the tool runs out past the end, or rises out of the cut.
 */
export function stopBound(part: Part, feature: Thread, wheels: WheelsUsed | undefined): readonly SpeedBound[] {
  const room = reliefRoom(part, feature);
  if (room === undefined) return [];
  return [{ most: ((room / feature.thread.pitch) * numbersTable.value('minute')) / secondsToStop(wheels), bound: 'bound.thread-stop' }];
}

function secondsToStop(wheels: WheelsUsed | undefined): number {
  return wheels?.halfNuts === 'closed' ? toolTable.value('stop.closed') : numbersTable.value('thread.stop');
}

/** Width of the relief that the tool runs into; a left-hand thread begins in it, and runs out over the free end. */
function reliefRoom(part: Part, feature: Thread): Len | undefined {
  if (feature.thread.hand === 'left') return undefined;
  const end = feature.start === 'first' ? feature.to : feature.from;
  const walls = part.features.flatMap((one) => {
    if (one.kind !== 'groove' || one.side !== feature.side) return [];
    const [first, second] = [one.first, one.second].map((id) => faceAt(part, id));
    return first === undefined || second === undefined ? [] : [{ serves: one.serves, first, second }];
  });
  const relief = walls.find(({ first, second }) => first === end || second === end) ?? walls.find(({ serves }) => serves === feature.id);
  return relief && len(Math.abs(relief.second - relief.first));
}

function faceAt(part: Part, id: string): Len | undefined {
  return part.surfaces.find((one): one is Face => one.id === id && one.shape === 'face')?.z;
}

export type ScrewAsk = {
  readonly part: Part;
  readonly feature: Thread;
  readonly setUp: SetUp;
  readonly lathe: Lathe;
  readonly wheels: WheelsUsed | undefined;
  readonly passes: readonly Len[] | undefined;
  readonly rpm: number | undefined;
};

/** All but the speed, the passes and the wheels. */
export function screwCutting(ask: ScrewAsk): ScrewCutting {
  const { feature, wheels, passes, rpm, part } = ask;
  const { thread, side } = feature;
  const { pitch, flankAngle } = thread;
  const infeed = infeedOf(pitch);
  const angle = setOver(flankAngle);
  const room = reliefRoom(part, feature);
  const wires = side === 'outside' ? wiresFor(thread) : undefined;
  return {
    infeed,
    ...(infeed === 'flank' && passes ? { topSlide: { angle, passes: alongSlide(passes, angle) } } : {}),
    sharp: toHundredth(toolDepth({ pitch, flankAngle, side }, len(0))),
    spring: threading.value('spring'),
    toward: thread.hand === 'left' ? 'tailstock' : 'headstock',
    ...(wheels?.halfNuts === 'closed' ? { back: backward(ask) } : {}),
    ...(room === undefined || rpm === undefined ? {} : { stop: { runsOn: runOn(pitch, rpm, secondsToStop(wheels)), room } }),
    ...(wires ? { wires } : {}),
  };
}

/** Depths along the slide, each from the sum so far, so that they add up to the whole travel. */
function alongSlide(passes: readonly Len[], angle: number): readonly Len[] {
  const reached = passes.map((_, i) => toHundredth(slideTravel(len(passes.slice(0, i + 1).reduce((sum, one) => sum + one, 0)), angle)));
  return reached.map((to, i) => len(to - (reached[i - 1] ?? 0)));
}

/** Power may unscrew work from a mandrel; a chuck on a screwed nose bears it slowly. */
function backward({ setUp, lathe }: ScrewAsk): NonNullable<ScrewCutting['back']> {
  if (setUp.grip.kind === 'threaded-mandrel' || lathe.reverse === false) return 'hand';
  return lathe.nose === 'screwed' ? 'slowly' : 'power';
}

/** Wires of a round size, nearest the best; none where no range was published for the angle. */
function wiresFor({ pitch, flankAngle, pitchDiameter }: ThreadSize): ScrewCutting['wires'] {
  const usable = usableWires(pitch, flankAngle);
  if (!usable) return undefined;
  const step = mm(numbersTable.value('tidy.middle'));
  const wire = toStep(bestWire(pitch, flankAngle), step);
  if (wire < usable.lo || wire > usable.hi) return undefined;
  return { wire, lo: overWires(pitchDiameter.lo, pitch, wire, flankAngle), hi: overWires(pitchDiameter.hi, pitch, wire, flankAngle) };
}
