/**
 * The day at the lathe: set-ups of all parts and tooling in one order. Kept tooling first; a part after those that it waits for; tooling
 * made in place right before the hold that it serves, since it fills the chuck and is true only where it was cut; so is what is made to fit
 * the work, once. A part that is turned to a hole of another comes when that hole is there: the other begins before it, and goes on after it.
 */
import type { FeatureId, PartId } from '../model/ids.ts';
import type { Part } from '../model/part.ts';
import type { Route, Sequence } from '../model/plan.ts';

export type Sequenced = { readonly part: Part; readonly route: Route };
/** `done`: how many set-ups of a part stand in the day already. */
type Day = { readonly entries: Sequence[number][]; readonly done: Map<PartId, number>; readonly parts: ReadonlyMap<PartId, Sequenced> };
type ToolingOf = (setUp: Route['setUps'][number]) => readonly PartId[];

/** `toolingOf` names the tooling parts that a hold asks for. Throws Error when parts wait for each other in a ring. */
export function sequence(planned: readonly Sequenced[], toolingOf: ToolingOf): Sequence {
  const day: Day = { entries: [], done: new Map(), parts: new Map(planned.map((p) => [p.part.id, p])) };
  const order = inOrder(planned.filter((p) => p.part.use === 'kept tooling')).concat(
    inOrder(planned.filter((p) => p.part.use === 'fitting')),
  );
  for (const one of order) {
    for (const { of, holes } of holesBefore(day, one)) goOn(day, of, holes, toolingOf);
    goOn(day, one, one.route.setUps.length, toolingOf);
  }
  // asked for by itself: nothing here is held on it
  const alone = planned.filter(({ part }) => BY_ITS_HOLD.includes(part.use) && !day.entries.some((entry) => entry.part === part.id));
  for (const { part, route } of alone) day.entries.push(...route.setUps.map((_, setUp) => ({ part: part.id, setUp })));
  return day.entries;
}

const BY_ITS_HOLD: readonly Part['use'][] = ['tooling made in place', 'tooling made to fit'];

/** On with a part, until so many of its set-ups are done. */
function goOn(day: Day, { part, route }: Sequenced, count: number, toolingOf: ToolingOf): void {
  for (let i = day.done.get(part.id) ?? 0; i < count; i++) {
    const setUp = route.setUps[i];
    for (const made of setUp ? toolingOf(setUp).flatMap((id) => day.parts.get(id) ?? []) : [])
      if (isToMake(day.entries, made)) day.entries.push(...made.route.setUps.map((_, k) => ({ part: made.part.id, setUp: k })));
    day.entries.push({ part: part.id, setUp: i });
    day.done.set(part.id, i + 1);
  }
}

/** What a part's shafts are turned to: the parts with those holes, and how many of their set-ups it takes to have them. */
function holesBefore(day: Day, { part }: Sequenced): readonly { readonly of: Sequenced; readonly holes: number }[] {
  return part.features.flatMap((f) => {
    const by = f.kind === 'outside' ? f.madeTo?.by : undefined;
    const of = by && day.parts.get(by.part);
    if (!by || !of) return [];
    const holes = 1 + Math.max(...by.holes.map((hole) => setUpOf(of, hole)));
    return isJoinedBy(of, part.id, holes) ? [] : [{ of, holes }];
  });
}

/** The last that makes it; -1 where nothing does. */
function setUpOf({ route }: Sequenced, feature: FeatureId): number {
  const making = new Set(route.chosen.flatMap((m) => m.operations).flatMap((op) => (op.feature === feature ? [op.id] : [])));
  return route.setUps.findLastIndex((setUp) => setUp.operations.some((op) => making.has(op)));
}

/** The very set-up that makes the hole asks for that part too, or one before it does: then it cannot wait for the hole. */
const isJoinedBy = (of: Sequenced, part: PartId, holes: number): boolean =>
  (of.part.waitsFor ?? []).some((wait) => wait.part === part && setUpOf(of, wait.feature) < holes);

/** In place: unless it is still in the chuck, because nothing has been held otherwise since. To fit: once. */
function isToMake(day: Sequence, { part }: Sequenced): boolean {
  if (part.use === 'tooling made in place') return day.at(-1)?.part !== part.id;
  return part.use === 'tooling made to fit' && !day.some((entry) => entry.part === part.id);
}

/** In the given order, but each after what it waits for. */
function inOrder(parts: readonly Sequenced[]): readonly Sequenced[] {
  const done: Sequenced[] = [];
  const left = [...parts];
  while (left.length > 0) {
    const next = left.findIndex((p) => (p.part.waitsFor ?? []).every((w) => !left.some((l) => l.part.id === w.part)));
    if (next < 0) throw new Error(`parts wait for each other: ${left.map((p) => p.part.id).join(', ')}`);
    done.push(...left.splice(next, 1));
  }
  return done;
}
