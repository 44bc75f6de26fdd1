/**
 * What would meet a dimension that cannot be met: another face to set the work by, a cut made from the other end, a process that holds
 * closer, wider limits. Each is carried out on the route or the part and charted again; only what then comes out is told.
 */
import { len } from '../../base/units.ts';
import { facesOf, shortName } from '../../geometry/places.ts';
import type { Shortage } from '../../geometry/sharing.ts';
import type { Part } from '../../model/part.ts';
import type { Operation, Route, SetUp, Verb } from '../../model/plan.ts';
import { operationOf, wayIn } from '../../rules/working.ts';

export type Trials = {
  readonly route: Route;
  /** What is short now. */
  readonly short: readonly string[];
  /** What stays short with another part or route; undefined where that leaves a face without its cut. */
  readonly again: (part: Part, route: Route) => readonly string[] | undefined;
};
/** Empty where that kind of change alone meets nothing. */
export type Remedies = {
  readonly datum: string;
  readonly hold: string;
  readonly moves: string;
  readonly to: string;
  readonly process: string;
  /** Whether its limits, widened by the shortage to either side, would do. */
  readonly limit: boolean;
};

export function remediesOf(part: Part, one: Shortage, operations: readonly string[], trials: Trials): Remedies {
  const meets = (changed: Part, route: Route): boolean => {
    const left = trials.again(changed, route);
    return left !== undefined && !left.includes(one.of) && left.every((name) => trials.short.includes(name));
  };
  const { route } = trials;
  const datum = otherDatums(part, route).find((each) => meets(part, each.route));
  const moved = operations.flatMap((id) => otherHolds(route, id)).find((each) => meets(part, each.route));
  const finer = operations.flatMap((id) => closerProcesses(route, id)).find((each) => meets(part, each.route));
  return {
    ...{ datum: datum ? shortName(part, datum.face) : '', hold: datum ? shortName(part, datum.hold) : '' },
    ...{ moves: moved ? shortName(part, moved.moves) : '', to: moved ? shortName(part, moved.to) : '' },
    process: finer ? `${finer.verb} ${shortName(part, finer.of)}` : '',
    limit: meets(widened(part, one), route),
  };
}

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

/** The operation done last in another hold from which it can be done. */
function otherHolds(route: Route, id: string): readonly { readonly moves: string; readonly to: string; readonly route: Route }[] {
  const operation = operationOf(route, id);
  return route.setUps.flatMap((target) => {
    const there = target.grip.kind !== 'bench' && operation.ways[target.grip.out] !== undefined;
    if (!there || target.operations.includes(id)) return [];
    const changed = onSetUps(route, (setUp) => {
      const rest = setUp.operations.filter((each) => each !== id);
      return { ...setUp, operations: setUp === target ? beforeOff(route, setUp, rest, id) : rest };
    });
    return [{ moves: id, to: target.grip.id, route: changed }];
  });
}

/** At the end of the hold, but before the work is parted off. */
function beforeOff(route: Route, setUp: SetUp, rest: readonly string[], id: string): readonly string[] {
  const off = rest.findIndex((each) => wayIn(operationOf(route, each), setUp).sweeps.some((sweep) => sweep.take === 'part'));
  return off < 0 ? [...rest, id] : [...rest.slice(0, off), id, ...rest.slice(off)];
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

function closerProcesses(route: Route, id: string): readonly { readonly verb: Verb; readonly of: string; readonly route: Route }[] {
  const verbs = CLOSER[operationOf(route, id).verb] ?? [];
  return verbs.map((verb) => ({ verb, of: id, route: onOperation(route, id, (one) => ({ ...one, verb })) }));
}

const onSetUps = (route: Route, change: (setUp: SetUp) => SetUp): Route => ({ ...route, setUps: route.setUps.map(change) });
const onOperation = (route: Route, id: string, change: (one: Operation) => Operation): Route => ({
  ...route,
  chosen: route.chosen.map((method) => ({ ...method, operations: method.operations.map((one) => (one.id === id ? change(one) : one)) })),
});

function widened(part: Part, { of, needs, allows }: Shortage): Part {
  const by = needs - allows;
  const dimensions = part.dimensions.map((one) =>
    one.id === of ? { ...one, limits: { ...one.limits, lo: len(one.limits.lo - by), hi: len(one.limits.hi + by) } } : one,
  );
  return { ...part, dimensions };
}
