/**
 * The usual day: part follows part as they are listed, each after what it waits for. A part that is turned to a hole of another comes when
 * that hole is there: the other begins before it, and goes on after it. Other days are told from this one.
 */
import type { PartId } from '../../model/ids.ts';
import { type Sequenced, type Stop, shaftsOf } from './stops.ts';

/** Places in `stops`. Throws Error when parts wait for each other in a ring. */
export function partByPart(group: readonly Sequenced[], stops: readonly Stop[]): readonly number[] {
  const done = new Map<PartId, number>();
  const order: number[] = [];
  const goOn = ({ part }: Sequenced, count: number): void => {
    for (let i = done.get(part.id) ?? 0; i < count; i++) {
      order.push(stops.findIndex((stop) => stop.part === part.id && stop.setUp === i));
      done.set(part.id, i + 1);
    }
  };
  const find = (id: PartId): readonly Sequenced[] => group.filter(({ part }) => part.id === id);
  for (const one of inOrder(group)) {
    for (const { of, holes } of shaftsOf(one, find)) goOn(of, holes + 1);
    goOn(one, one.route.setUps.length);
  }
  return order;
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
