/** How a thread is cut with the single point on this lathe: passes, which slide feeds, how fast, how it stops, how it is checked. */
import { type Len, len, mm, toStep } from '../base/units.ts';
import type { CuttingGroup } from '../handbook/materials.ts';
import { numbersTable } from '../handbook/numbers.ts';
import { passesFor, springPasses, threading } from '../handbook/thread-passes.ts';
import { infeedOf, runOn, setOver, slideTravel, toolDepth, toolTable } from '../handbook/thread-tool.ts';
import { bestWire, overWires, usableWires } from '../handbook/wires.ts';
import type { Cylinder, Face, Feature, Part, ThreadSize } from '../model/part.ts';
import type { ScrewCutting, SetUp, WheelsUsed } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';
import type { SpeedBound } from './cutting.ts';
import { crossUnit, type Dials } from './dials.ts';
import type { Lathe } from './wheels.ts';

export type Thread = Extract<Feature, { kind: 'thread' }>;

/** A tool ground to a point goes deeper than one that is rounded as the root of the form is; the flanks end alike. */
export type Tip = Workshop['tools']['threadingTip'];

/** `step`: what its passes and its depth are whole numbers of, a side: see `threadStep`. */
export type Cut = { readonly tip: Tip; readonly step: Len };

/** A side, from the crest as it is turned to where this tool's tip ends, in whole steps of the dial; the gauge has the last word. */
export function threadDepth({ side, thread: { pitch, flankAngle } }: Thread, { tip, step }: Cut): Len {
  if (tip === 'sharp') return toStep(toolDepth({ pitch, flankAngle, side }, len(0)), step);
  return toStep(len(Math.round(numbersTable.value(`thread.depth.${flankAngle}.${side}`) * pitch)), step);
}

/** A division of the dial a side; half of it, and again, where one is more than the least pass. */
export function threadStep(dials: Dials): Len {
  const least = mm(threading.value('least'));
  let step = crossUnit(dials);
  while (step > least) step = len(Math.ceil(step / 2));
  return step;
}

const toHundredth = (length: Len): Len => toStep(length, mm(numbersTable.value('tidy.fine')));

/** Radial passes for this metal, none deeper than the one before it; they add up to the depth. */
export function threadPasses(feature: Thread, group: CuttingGroup, cut: Cut): readonly Len[] {
  return passesFor(group, feature.side, threadDepth(feature, cut), cut.step);
}

/**
 * The tool crosses the room past the thread in no less than the time that it takes to stop: half-nuts out, or the spindle at rest where
 * they stay closed. None where there is room enough: the tool runs out past the end, or rises out of the cut.
 */
export function stopBound(room: Len | undefined, pitch: Len, wheels: WheelsUsed | undefined): readonly SpeedBound[] {
  if (room === undefined) return [];
  return [{ most: ((room / pitch) * numbersTable.value('minute')) / secondsToStop(wheels), bound: 'bound.thread-stop' }];
}

function secondsToStop(wheels: WheelsUsed | undefined): number {
  return wheels?.halfNuts === 'closed' ? toolTable.value('stop.closed') : numbersTable.value('thread.stop');
}

/**
 * What the tool has to stop in: the width of the relief, or as far as the work lets it go on past its thread (`beyond`). A left-hand thread
 * begins there and runs out over the free end; the tool stops there only where the spindle brings it back.
 */
export function roomToStop(part: Part, feature: Thread, beyond: Len | undefined, wheels: WheelsUsed | undefined): Len | undefined {
  if (feature.thread.hand === 'left' && wheels?.halfNuts !== 'closed') return undefined;
  return reliefAt(part, feature) ?? (feature.side === 'inside' ? beyond : (plainPast(part, feature) ?? beyond));
}

/** Without a relief: how far the diameter of an outside thread goes on past it, before it meets a shoulder. */
function plainPast(part: Part, { on: id, from, to, start, thread }: Thread): Len | undefined {
  const cylinders = part.surfaces.filter((one): one is Cylinder => one.shape === 'cylinder' && one.side === 'outside');
  const on = cylinders.find((one) => one.id === id);
  if (!on) return undefined;
  const [end, wall] = start === 'first' ? [to, on.to] : [from, on.from];
  const rises = cylinders.some((one) => one !== on && (one.from === wall || one.to === wall) && one.size.hi > thread.minor.lo);
  return rises ? len(Math.abs(wall - end)) : undefined;
}

/** Width of the relief at the far end of the thread. */
function reliefAt(part: Part, feature: Thread): Len | undefined {
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
  readonly room: Len | undefined;
  readonly cut: Cut;
  readonly group: CuttingGroup | undefined;
};

/** All but the speed, the passes and the wheels. */
export function screwCutting(ask: ScrewAsk): ScrewCutting {
  const { feature, wheels, passes, rpm, part, room, cut } = ask;
  const { thread, side } = feature;
  const { pitch, flankAngle } = thread;
  const infeed = infeedOf(pitch);
  const angle = setOver(flankAngle);
  const wires = side === 'outside' ? wiresFor(thread) : undefined;
  return {
    infeed,
    ...(infeed === 'flank' && passes ? { topSlide: { angle, passes: alongSlide(passes, angle) } } : {}),
    ...{ tip: cut.tip, other: threadDepth(feature, { ...cut, tip: cut.tip === 'sharp' ? 'rounded' : 'sharp' }) },
    spring: springPasses(ask.group),
    ...(thread.hand === 'left' ? { toward: 'tailstock', entry: entryOf(part, feature) } : { toward: 'headstock' }),
    ...(wheels?.halfNuts === 'closed' ? { back: backward(ask) } : {}),
    ...(room === undefined || rpm === undefined ? {} : { stop: { runsOn: runOn(pitch, rpm, secondsToStop(wheels)), room } }),
    ...(wires ? { wires } : {}),
  };
}

/** Where a tool that cuts toward the tailstock goes in. */
function entryOf(part: Part, feature: Thread): NonNullable<ScrewCutting['entry']> {
  if (reliefAt(part, feature) !== undefined) return 'groove';
  return feature.side === 'inside' ? 'bottom' : 'behind';
}

/** Depths along the slide, each from the sum so far, so that they add up to the whole travel. */
function alongSlide(passes: readonly Len[], angle: number): readonly Len[] {
  const reached = passes.map((_, i) => toHundredth(slideTravel(len(passes.slice(0, i + 1).reduce((sum, one) => sum + one, 0)), angle)));
  return reached.map((to, i) => len(to - (reached[i - 1] ?? 0))).sort((a, b) => b - a);
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
