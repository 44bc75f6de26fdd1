/**
 * What would meet a dimension that cannot be met: another face to set the work by, a cut made from the other end, a process that holds
 * closer, wider limits. Each is carried out on the route or the part, charted again and replayed; only what then comes out is told.
 */

import { type Len, len, mm, showMm } from '../../base/units.ts';
import { facesOf, shortName } from '../../geometry/places.ts';
import type { Shortage } from '../../geometry/sharing.ts';
import type { OpId } from '../../model/ids.ts';
import type { Part } from '../../model/part.ts';
import type { Route, SetUp, Verb } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';
import { operationOf, wayIn } from '../../rules/working.ts';

export type Trials = {
  readonly route: Route;
  /** Whether that dimension comes out with another part or route, no other becomes short by it, and the proof finds nothing else against it. */
  readonly meets: (of: string, part: Part, route: Route) => boolean;
  /** The best route in which another process makes what that operation makes; nothing where this workshop has no such way. */
  readonly routeBy: (operation: OpId, verb: Verb) => Route | undefined;
};
/** Empty where that kind of change alone meets nothing. */
export type Remedies = {
  readonly datum: string;
  readonly hold: string;
  readonly moves: string;
  readonly to: string;
  readonly process: string;
  /** Whether its limits, widened by `wider` to either side, would do. */
  readonly limit: boolean;
  readonly wider: string;
};

export function remediesOf(part: Part, one: Shortage, operations: readonly OpId[], trials: Trials): Remedies {
  const { route } = trials;
  const meets = (changed: { readonly route: Route }): boolean => trials.meets(one.of, part, changed.route);
  const datum = otherDatums(part, route).find(meets);
  const moved = operations.flatMap((id) => otherHolds(route, id)).find(meets);
  const finer = operations.flatMap((id) => closerProcesses(trials, id)).find(meets);
  const wider = roundUp(one.needs - one.allows);
  return {
    ...{ datum: datum ? shortName(part, datum.face) : '', hold: datum ? shortName(part, datum.hold) : '' },
    ...{ moves: moved ? shortName(part, moved.moves) : '', to: moved ? shortName(part, moved.to) : '' },
    process: finer ? `${finer.verb} ${shortName(part, finer.of)}` : '',
    ...{ limit: trials.meets(one.of, widened(part, one.of, wider), route), wider: showMm(wider) },
  };
}

/** To what is printed, so that whoever writes what he reads has enough. */
const roundUp = (units: number): Len => len(Math.ceil(units / STEP) * STEP);
const STEP = mm(1 / 1000);

/** Every later hold set by every face that is finished by then. */
function otherDatums(part: Part, route: Route): readonly { readonly face: string; readonly hold: string; readonly route: Route }[] {
  const faces = facesOf(part).map((face) => face.id);
  return route.setUps.flatMap((setUp, i) => {
    if (setUp.grip.datum === undefined) return [];
    const made = new Set(route.setUps.slice(0, i).flatMap((before) => finishedIn(route, before)));
    return faces
      .filter((face) => made.has(face) && face !== setUp.grip.datum)
      .map((face) => ({
        ...{ face, hold: setUp.grip.id },
        route: onSetUps(route, (each) => (each === setUp ? { ...each, grip: { ...each.grip, datum: face } } : each)),
      }));
  });
}

const finishedIn = (route: Route, setUp: SetUp): readonly string[] =>
  setUp.operations.flatMap((id) =>
    wayIn(operationOf(route, id), setUp).cuts.flatMap((cut) => (cut.stage === 'final' && cut.measures === 'length' ? [cut.makes] : [])),
  );

/** The operation done in another hold from which it can be done: the later in it the better, but before the work is parted off. */
function otherHolds(route: Route, id: OpId): readonly { readonly moves: OpId; readonly to: string; readonly route: Route }[] {
  const operation = operationOf(route, id);
  return route.setUps.flatMap((target) => {
    const there = !isOffLathe(target.grip) && operation.ways[target.grip.out] !== undefined;
    if (!there || target.operations.includes(id)) return [];
    return placesIn(route, target).map((i) => {
      const changed = onSetUps(route, (setUp) => {
        const rest = setUp.operations.filter((each) => each !== id);
        return { ...setUp, operations: setUp === target ? [...rest.slice(0, i), id, ...rest.slice(i)] : rest };
      });
      return { moves: id, to: target.grip.id, route: changed };
    });
  });
}

function placesIn(route: Route, setUp: SetUp): readonly number[] {
  const off = setUp.operations.findIndex((each) => wayIn(operationOf(route, each), setUp).sweeps.some((sweep) => sweep.take === 'part'));
  const last = off < 0 ? setUp.operations.length : off;
  return Array.from({ length: last + 1 }, (_, i) => last - i);
}

/** Closer ways to come by a length, the nearest first. */
const CLOSER: Readonly<Partial<Record<Verb, readonly Verb[]>>> = {
  'saw-off': ['part-off', 'face'],
  'part-off': ['face'],
  'cut-stub': ['face'],
  drill: ['d-bit', 'bore', 'turn'],
  'd-bit': ['bore', 'turn'],
  ream: ['bore', 'turn'],
  bore: ['turn'],
  groove: ['turn'],
};

function closerProcesses(
  { route, routeBy }: Trials,
  id: OpId,
): readonly { readonly verb: Verb; readonly of: OpId; readonly route: Route }[] {
  const verbs = CLOSER[operationOf(route, id).verb] ?? [];
  return verbs.flatMap((verb) => {
    const other = routeBy(id, verb);
    return other ? [{ verb, of: id, route: other }] : [];
  });
}

const onSetUps = (route: Route, change: (setUp: SetUp) => SetUp): Route => ({ ...route, setUps: route.setUps.map(change) });

function widened(part: Part, of: string, by: number): Part {
  const dimensions = part.dimensions.map((one) =>
    one.id === of ? { ...one, limits: { ...one.limits, lo: len(one.limits.lo - by), hi: len(one.limits.hi + by) } } : one,
  );
  return { ...part, dimensions };
}
