/**
 * What the day is put together from: the set-ups of all parts, each a stop, with what must be done before it and what it finds or leaves in
 * the spindle. A part's own order is fixed by its route and is never asked again.
 */
import type { FeatureId, OpId, PartId } from '../../model/ids.ts';
import type { Part } from '../../model/part.ts';
import type { Grip, Operation, Route, SetUp } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';

export type Sequenced = { readonly part: Part; readonly route: Route; readonly time?: { readonly whole: number } };
/** How to ask a plan: tooling parts that hold or fill the work, tooling parts that an operation wants, what is bored in place for a hold. */
export type Asking = {
  readonly holds: (setUp: SetUp) => readonly PartId[];
  readonly wants: (operation: Operation) => readonly PartId[];
  readonly bored: (grip: Grip) => string | undefined;
};

export type Stop = {
  readonly part: PartId;
  readonly setUp: number;
  /** At the bench or under the drill press: what is in the chuck stays there. */
  readonly off: boolean;
  /** What must stand in the spindle, true as it was cut there; undefined: any hold, which puts out what stood there. */
  readonly on?: Standing;
  /** Tooling turned to fit this work, made right before it, in the chuck: whatever stood there is out. */
  readonly fits: readonly PartId[];
  /** Stops that must be done before it, besides those before it in its own part; by their place in the list. */
  readonly after: readonly number[];
};
/** `by`: the tooling part that is made there; undefined: jaws bored in place. */
export type Standing = { readonly key: string; readonly by?: PartId };

export function stopsOf(group: readonly Sequenced[], all: readonly Sequenced[], asking: Asking): readonly Stop[] {
  const bare = group.flatMap((one) => one.route.setUps.map((setUp, i) => bareStop(one, setUp, i, all, asking)));
  const place = new Map(bare.map(({ part, setUp }, i) => [`${part} ${setUp}`, i]));
  const at = (one: Sequenced, setUp: number): readonly number[] => {
    const found = place.get(`${one.part.id} ${setUp}`);
    return found === undefined ? [] : [found];
  };
  const pairs = group.flatMap((one) => pairsOf(one, group, asking));
  return bare.map((stop, i) => ({
    ...stop,
    after: [...new Set(pairs.flatMap(({ first, then }) => (at(...then).includes(i) ? at(...first) : [])))],
  }));
}

function bareStop(one: Sequenced, setUp: SetUp, i: number, all: readonly Sequenced[], asking: Asking): Omit<Stop, 'after'> {
  const held = asking.holds(setUp);
  const used = (use: Part['use']): readonly PartId[] => held.filter((id) => all.some(({ part }) => part.id === id && part.use === use));
  const [by] = used('tooling made in place');
  const key = by ?? asking.bored(setUp.grip);
  return {
    ...{ part: one.part.id, setUp: i, off: isOffLathe(setUp.grip), fits: used('tooling made to fit') },
    ...(key === undefined ? {} : { on: { key, ...(by === undefined ? {} : { by }) } }),
  };
}

type At = readonly [of: Sequenced, setUp: number];
type Pair = { readonly first: At; readonly then: At };

/** What of other parts must be done before what of this one. */
function pairsOf(one: Sequenced, group: readonly Sequenced[], asking: Asking): readonly Pair[] {
  const find = (id: PartId): readonly Sequenced[] => group.filter(({ part }) => part.id === id && part.id !== one.part.id);
  const whole = (of: Sequenced): At => [of, of.route.setUps.length - 1];
  const waits = (one.part.waitsFor ?? []).flatMap(({ feature, part }) =>
    find(part).map((of) => ({ first: whole(of), then: [one, firstAt(one, feature)] as const })),
  );
  const shafts = shaftsOf(one, find).map(({ feature, of, holes }) => ({
    first: [of, holes] as const,
    then: [one, firstAt(one, feature)] as const,
  }));
  const tools = one.route.setUps.flatMap((setUp, i) =>
    [...operationsOf(one, setUp.operations).flatMap(asking.wants), ...asking.holds(setUp)].flatMap((id) =>
      find(id).map((of) => ({ first: whole(of), then: [one, i] as const })),
    ),
  );
  return [...waits, ...shafts, ...tools];
}

/** Shafts of a part that are turned to holes of another one, with the set-up of that other in which the last of these is made. */
export function shaftsOf(
  one: Sequenced,
  find: (id: PartId) => readonly Sequenced[],
): readonly { readonly feature: FeatureId; readonly of: Sequenced; readonly holes: number }[] {
  return one.part.features.flatMap((f) => {
    const by = f.kind === 'outside' ? f.madeTo?.by : undefined;
    if (!by) return [];
    return find(by.part).flatMap((of) => {
      const holes = Math.max(...by.holes.map((hole) => lastAt(of, hole)));
      return isJoinedBy(of, one.part.id, holes) ? [] : [{ feature: f.id, of, holes }];
    });
  });
}

/** The very set-up that makes the hole asks for that part too, or one before it does: then it cannot wait for the hole. */
const isJoinedBy = (of: Sequenced, part: PartId, holes: number): boolean =>
  (of.part.waitsFor ?? []).some((wait) => wait.part === part && firstAt(of, wait.feature) <= holes);

/** The set-up in which it is begun; the first of all where nothing makes it by itself. */
const firstAt = (one: Sequenced, feature: FeatureId): number => Math.max(0, one.route.setUps.findIndex(makes(one, feature)));
/** The last that makes it; -1 where nothing does. */
const lastAt = (one: Sequenced, feature: FeatureId): number => one.route.setUps.findLastIndex(makes(one, feature));

function makes(one: Sequenced, feature: FeatureId): (setUp: SetUp) => boolean {
  return ({ operations }) => operationsOf(one, operations).some((op) => op.feature === feature);
}

function operationsOf({ route }: Sequenced, ids: readonly OpId[]): readonly Operation[] {
  return route.chosen.flatMap((m) => m.operations).filter((op) => ids.includes(op.id));
}
