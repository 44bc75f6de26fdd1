/**
 * Claims about the way at their worst corners: how much is held, how much steers, how far a tool reaches, how thin a wall gets, how near a
 * cut comes to the hold. A measure finds the corner, by replay; the claim itself is then judged on the route replayed at that corner.
 */

import { len } from '../../base/units.ts';
import type { Replay, Step } from '../../geometry/replay.ts';
import { metalEnds } from '../../geometry/section/ask.ts';
import type { Section } from '../../geometry/section.ts';
import type { Claim, Verb } from '../../model/plan.ts';
import { type Case, figure } from './claims.ts';
import type { Corners } from './corners.ts';
import { cornerText } from './end.ts';
import { heldLength, thinnest } from './grip.ts';
import { cutCells, heldClaims, inHoldOf } from './held.ts';
import { leastWall, slackOf } from './slack.ts';
import { guideClaims, guideOf, holdClaim, reachClaims, wallClaim, widestAt } from './way.ts';

/** The same claims; one that holds at the targets and fails at its worst corner fails, with that corner. */
export function wayAtCorners(asked: Case, corners: Corners, claims: readonly Claim[]): readonly Claim[] {
  const { steps } = corners.base.run;
  const openings = steps.map((step) => steps.findIndex((one) => one.setUp.no === step.setUp.no));
  const bench: Bench = { asked, corners, openings, held: new WeakMap(), known: new Map() };
  return claims.map((one) => (one.holds ? atItsWorst(bench, one) : one));
}

type Bench = {
  readonly asked: Case;
  readonly corners: Corners;
  /** For each step, the number of the one with which its set-up begins. */
  readonly openings: readonly number[];
  /** Steps as the work is then held, each worked out when it is asked for; replays that share a step share what went before it. */
  readonly held: WeakMap<Step, Step>;
  /** Measures by kind, of steps that several replays share. */
  readonly known: Map<string, KnownMeasures>;
};

function atItsWorst(bench: Bench, one: Claim): Claim {
  const measure = measureOf(bench, one);
  if (!measure) return one;
  const { at, run } = bench.corners.least((_, each) => measure(each));
  if (run === bench.corners.base.run) return one;
  const there = judgedAt(bench, one, stepsOf(bench, run));
  if (!there || there.holds) return one;
  return { ...there, grounds: { ...there.grounds, corner: cornerText(bench.asked.part, at) } };
}

/** The same claim about the route as it went at a corner. */
function judgedAt({ asked }: Bench, { kind, about }: Claim, steps: readonly Step[]): Claim | undefined {
  if (kind === 'wall') return wallClaim(asked, steps);
  const step = steps.find((one) => (kind === 'grip' ? one.setUp.grip.id : one.operation.id) === about);
  if (!step) return undefined;
  if (kind === 'grip') return holdClaim(asked, steps, step);
  if (kind === 'held') return heldClaims(asked, drawnOut(asked, step))[0];
  return (kind === 'guide' ? guideClaims : reachClaims)(asked, step)[0];
}

/** Where the saw comes into the hold the work is drawn out, as far as it takes, with the lathe stopped; it must be held there as well. */
function drawnOut(asked: Case, step: Step): Step {
  const cells = cutCells(step);
  if (step.operation.verb !== SAWN || cells.length === 0 || inHoldOf(asked, step) === 0) return step;
  const { grip } = step.setUp;
  const by =
    step.out === 'first' ? Math.max(...cells.map((one) => one.to)) - grip.from : Math.min(...cells.map((one) => one.from)) - grip.to;
  return movedBy(step, by);
}
const SAWN: Verb = 'saw-off';

// ---- measures: less is worse --------------------------------------------------------------------------------------------------
type RunMeasure = (run: Replay) => number;

function measureOf(bench: Bench, { kind, about }: Claim): RunMeasure | undefined {
  const { steps } = bench.corners.base.run;
  const of = (i: number, what: (step: Step) => number): RunMeasure | undefined => {
    const known = knownOf(bench, `${kind} ${about}`);
    return i < 0 ? undefined : (run) => once(known, stepOf(bench, run, i), what);
  };
  const own = steps.findIndex((step) => step.operation.id === about);
  if (kind === 'grip') {
    const opening = steps.findIndex((step) => step.setUp.grip.id === about);
    return of(opening, (step) => heldLength(bench.asked, step.before, step.setUp.grip));
  }
  if (kind === 'guide') return of(own, guideOf);
  if (kind === 'held') return of(own, (step) => -inHoldOf(bench.asked, step));
  if (kind === 'reach') {
    const atTarget = steps[own];
    return of(own, (step) => -(step.operation.tool.kind === 'parting' ? widestAt(step) : (reachOf(step, atTarget) ?? 0)));
  }
  return kind === 'wall' ? wallMeasure(bench) : undefined;
}

/** Over the steps at which some limits might bring one under the least. */
function wallMeasure(bench: Bench): RunMeasure | undefined {
  const { part, chart } = bench.asked;
  const slack = slackOf(part, chart);
  const thin = bench.corners.base.run.steps.flatMap((step, i) => (leastWall(step.after, slack) < figure('proof.wall.least') ? [i] : []));
  if (thin.length === 0) return undefined;
  const known = knownOf(bench, 'wall');
  return (run) => Math.min(...thin.map((i) => wallOf(known, run.steps[i]?.after)));
}

type KnownMeasures = WeakMap<object, number>;
const wallOf = (known: KnownMeasures, section: Section | undefined): number =>
  section === undefined ? Number.MAX_VALUE : once(known, section, (one) => thinnest(one)?.wall ?? Number.MAX_VALUE);

function knownOf(bench: Bench, what: string): KnownMeasures {
  const known = bench.known.get(what) ?? new WeakMap();
  bench.known.set(what, known);
  return known;
}

function once<T extends object>(known: KnownMeasures, of: T | undefined, measure: (of: T) => number): number {
  if (!of) return 0;
  const before = known.get(of);
  if (before !== undefined) return before;
  const value = measure(of);
  known.set(of, value);
  return value;
}

// ---- the work as it is held at a corner ------------------------------------------------------------------------------------------
/** Work is pushed home by its datum, so the hold stands where that stands; and a tool goes in as much farther as its cut does. */
function stepsOf(bench: Bench, run: Replay): readonly Step[] {
  return run.steps.map((step, i) => {
    const held = stepOf(bench, run, i) ?? step;
    const reach = reachOf(held, bench.corners.base.run.steps[i]);
    return reach === undefined || reach === held.way.reach ? held : { ...held, way: { ...held.way, reach: len(reach) } };
  });
}

/** As it is held; the tool's way in is as at the targets. */
function stepOf(bench: Bench, run: Replay, i: number): Step | undefined {
  const { base } = bench.corners;
  const step = run.steps[i];
  const atTarget = base.run.steps[i];
  if (!step || !atTarget || step === atTarget) return step;
  const before = bench.held.get(step);
  if (before) return before;
  const moved = datumOf(step, openingOf(bench, run, i)) - datumOf(atTarget, openingOf(bench, base.run, i));
  const held = moved === 0 ? step : movedBy(step, moved);
  bench.held.set(step, held);
  return held;
}

/** The step with which that one's set-up begins. */
const openingOf = ({ openings }: Bench, { steps }: Replay, i: number): Step | undefined => steps[openings[i] ?? i];

function movedBy(step: Step, by: number): Step {
  const { grip } = step.setUp;
  const [from, to] = [len(Math.round(grip.from + by)), len(Math.round(grip.to + by))];
  return { ...step, setUp: { ...step.setUp, grip: { ...grip, from, to } } };
}

/** Where its datum stands when the set-up begins; 0 on bar, which is set by its raw end. */
const datumOf = ({ setUp }: Step, opening: Step | undefined): number =>
  (setUp.grip.datum && opening?.placesBefore.faces.get(setUp.grip.datum)?.z) || 0;

/** How far in the tool goes then. */
function reachOf(step: Step, atTarget: Step | undefined): number | undefined {
  const { reach } = step.way;
  if (reach === undefined || !atTarget || step === atTarget) return reach;
  return Math.round(reach + depthOf(step) - depthOf(atTarget));
}

/** From the end at which the tool goes in to the far end of what it takes. Replays share steps. */
function depthOf(step: Step): number {
  const depth = depths.get(step) ?? measuredDepth(step);
  depths.set(step, depth);
  return depth;
}
const depths = new WeakMap<Step, number>();

function measuredDepth(step: Step): number {
  const cells = cutCells(step);
  const ends = metalEnds(step.before);
  if (!ends || cells.length === 0) return 0;
  return step.out === 'first'
    ? Math.max(...cells.map((one) => one.to)) - ends.first
    : ends.second - Math.min(...cells.map((one) => one.from));
}
