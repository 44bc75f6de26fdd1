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
import { guideClaims, guideOf, holdClaim, reachClaims, wallClaim, widestAt } from './way.ts';

/** The same claims; one that holds at the targets and fails at its worst corner fails, with that corner. */
export function wayAtCorners(asked: Case, corners: Corners, claims: readonly Claim[]): readonly Claim[] {
  const bench: Bench = { asked, corners, seen: new WeakMap(), known: new Map() };
  return claims.map((one) => (one.holds ? atItsWorst(bench, one) : one));
}

type Bench = {
  readonly asked: Case;
  readonly corners: Corners;
  /** Steps of a replay as the work is then held. */
  readonly seen: WeakMap<Replay, readonly Step[]>;
  /** Measures by kind, of steps that several replays share. */
  readonly known: Map<string, WeakMap<object, number>>;
};

function atItsWorst(bench: Bench, one: Claim): Claim {
  const measure = measureOf(bench, one);
  if (!measure) return one;
  const { at, run } = bench.corners.least((_, each) => measure(stepsOf(bench, each)));
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
  const judge = kind === 'held' ? heldClaims : kind === 'guide' ? guideClaims : reachClaims;
  return judge(asked, step)[0];
}

// ---- measures: less is worse --------------------------------------------------------------------------------------------------
type StepsMeasure = (steps: readonly Step[]) => number;

function measureOf(bench: Bench, { kind, about }: Claim): StepsMeasure | undefined {
  const { steps } = bench.corners.base.run;
  const of = (i: number, what: (step: Step) => number): StepsMeasure | undefined =>
    i < 0 ? undefined : (all) => once(bench, `${kind} ${about}`, all[i], what);
  const own = steps.findIndex((step) => step.operation.id === about);
  if (kind === 'grip') {
    const opening = steps.findIndex((step) => step.setUp.grip.id === about);
    return of(opening, (step) => heldLength(bench.asked, step.before, step.setUp.grip));
  }
  if (kind === 'guide') return of(own, guideOf);
  if (kind === 'held') return steps[own]?.operation.verb === DRAWN_OUT ? undefined : of(own, (step) => -inHoldOf(bench.asked, step));
  if (kind === 'reach') return of(own, (step) => -(step.operation.tool.kind === 'parting' ? widestAt(step) : (step.way.reach ?? 0)));
  return kind === 'wall' ? wallMeasure(bench) : undefined;
}

/** Over the steps at which it is thin at the targets. */
function wallMeasure(bench: Bench): StepsMeasure | undefined {
  const { steps } = bench.corners.base.run;
  const thin = steps.flatMap((step, i) => (wallOf(bench, step.after) < figure('proof.wall.sure') ? [i] : []));
  if (thin.length === 0) return undefined;
  return (all) => Math.min(...thin.map((i) => (all[i] ? wallOf(bench, all[i].after) : Number.MAX_VALUE)));
}

const wallOf = (bench: Bench, section: Section): number => once(bench, 'wall', section, (one) => thinnest(one)?.wall ?? Number.MAX_VALUE);

function once<T extends object>(bench: Bench, what: string, of: T | undefined, measure: (of: T) => number): number {
  if (!of) return 0;
  const known = bench.known.get(what) ?? new WeakMap<object, number>();
  bench.known.set(what, known);
  const before = known.get(of);
  if (before !== undefined) return before;
  const value = measure(of);
  known.set(of, value);
  return value;
}

/** A sawn part is drawn out of its hold to be sawn, as far as it takes, with the lathe stopped. */
const DRAWN_OUT: Verb = 'saw-off';

// ---- the work as it is held at a corner ------------------------------------------------------------------------------------------
/** Work is pushed home by its datum, so the hold stands where that stands; and a tool goes in as much farther as its cut does. */
function stepsOf(bench: Bench, run: Replay): readonly Step[] {
  const { base } = bench.corners;
  if (run === base.run) return run.steps;
  const before = bench.seen.get(run);
  if (before) return before;
  const steps = run.steps.map((step, i) => heldAt(step, run.steps, base.run.steps[i], base.run.steps));
  bench.seen.set(run, steps);
  return steps;
}

function heldAt(step: Step, all: readonly Step[], atTarget: Step | undefined, targets: readonly Step[]): Step {
  if (!atTarget || step === atTarget) return step;
  const moved = datumOf(step, all) - datumOf(atTarget, targets);
  const farther = step.way.reach === undefined ? 0 : depthOf(step) - depthOf(atTarget);
  if (moved === 0 && farther === 0) return step;
  const { grip } = step.setUp;
  const [from, to] = [len(Math.round(grip.from + moved)), len(Math.round(grip.to + moved))];
  const way = step.way.reach === undefined ? step.way : { ...step.way, reach: len(Math.round(step.way.reach + farther)) };
  return { ...step, way, setUp: { ...step.setUp, grip: { ...grip, from, to } } };
}

/** Where its datum stands when the set-up begins; 0 on bar, which is set by its raw end. */
function datumOf({ setUp }: Step, all: readonly Step[]): number {
  const opening = all.find((one) => one.setUp.no === setUp.no);
  return (setUp.grip.datum && opening?.placesBefore.faces.get(setUp.grip.datum)?.z) || 0;
}

/** From the end at which the tool goes in to the far end of what it takes. */
function depthOf(step: Step): number {
  const cells = cutCells(step);
  const ends = metalEnds(step.before);
  if (!ends || cells.length === 0) return 0;
  return step.out === 'first'
    ? Math.max(...cells.map((one) => one.to)) - ends.first
    : ends.second - Math.min(...cells.map((one) => one.from));
}
