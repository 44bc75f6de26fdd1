/**
 * The day at the lathe: set-ups of all parts and tooling in one order. Kept tooling first; a part after those that it waits for; tooling
 * made in place right before the hold that it serves, since it fills the chuck and is true only where it was cut; so is what is made to fit
 * the work, once.
 */
import type { PartId } from '../model/ids.ts';
import type { Part } from '../model/part.ts';
import type { Route, Sequence } from '../model/plan.ts';

export type Sequenced = { readonly part: Part; readonly route: Route };

/** `toolingOf` names the tooling parts that a hold asks for. Throws Error when parts wait for each other in a ring. */
export function sequence(planned: readonly Sequenced[], toolingOf: (setUp: Route['setUps'][number]) => readonly PartId[]): Sequence {
  const byId = new Map(planned.map((p) => [p.part.id, p]));
  const order = inOrder(planned.filter((p) => p.part.use === 'kept tooling')).concat(
    inOrder(planned.filter((p) => p.part.use === 'fitting')),
  );
  const day: { readonly part: PartId; readonly setUp: number }[] = [];
  for (const { part, route } of order) {
    route.setUps.forEach((setUp, i) => {
      for (const made of toolingOf(setUp).flatMap((id) => byId.get(id) ?? []))
        if (isToMake(day, made)) day.push(...made.route.setUps.map((_, k) => ({ part: made.part.id, setUp: k })));
      day.push({ part: part.id, setUp: i });
    });
  }
  // asked for by itself: nothing here is held on it
  const alone = planned.filter(({ part }) => BY_ITS_HOLD.includes(part.use) && !day.some((entry) => entry.part === part.id));
  for (const { part, route } of alone) day.push(...route.setUps.map((_, setUp) => ({ part: part.id, setUp })));
  return day;
}

const BY_ITS_HOLD: readonly Part['use'][] = ['tooling made in place', 'tooling made to fit'];

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
