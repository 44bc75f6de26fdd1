/** What must come before what across parts, judged by places in the day: nothing of how the day was found is asked. */
import type { FeatureId, OpId, PartId } from '../../model/ids.ts';
import type { Claim, PlannedPart } from '../../model/plan.ts';
import type { ProvedDay } from './asked.ts';
import { claim } from './claim.ts';

type Planned = Pick<PlannedPart, 'part' | 'route'>;

export function acrossClaims(day: ProvedDay): readonly Claim[] {
  return day.parts.flatMap((one) => [ownOrder(day, one), ...waits(day, one), ...shafts(day, one), ...tools(day, one)]);
}

/** Every set-up once and in its part's order; of tooling made in place as often as it is made, whole each time. */
function ownOrder({ sequence }: ProvedDay, { part, route }: Planned): Claim {
  const count = route.setUps.length;
  const mine = sequence.filter((entry) => entry.part === part.id);
  const times = part.use === 'tooling made in place' ? mine.length / count : 1;
  const holds = mine.length === times * count && times >= 1 && mine.every((entry, i) => entry.setUp === i % count);
  return claim('order of the day', part.id, holds, { part: part.id, first: '', then: '', why: 'own' });
}

/** The feature is begun when the other part is finished. */
function waits(day: ProvedDay, { part, route }: Planned): readonly Claim[] {
  return (part.waitsFor ?? []).flatMap(({ feature, part: other }) =>
    judged(part.id, 'waits', lastOf(day, other), places(day, part.id, makingOf(route, feature)).at(0), other, feature),
  );
}

/** A shaft is turned when the hole is there, unless the part with the hole cannot go so far without that shaft. */
function shafts(day: ProvedDay, { part, route }: Planned): readonly Claim[] {
  return part.features.flatMap((f) => {
    const by = f.kind === 'outside' ? f.madeTo?.by : undefined;
    const of = day.parts.find((one) => one.part.id === by?.part);
    if (!by || !of) return [];
    const holes = by.holes.flatMap((hole) => places(day, of.part.id, makingOf(of.route, hole)).at(-1) ?? []);
    const joined = (of.part.waitsFor ?? []).flatMap((w) =>
      w.part === part.id ? (places(day, of.part.id, makingOf(of.route, w.feature)).at(0) ?? []) : [],
    );
    if (holes.length === 0 || joined.some((at) => at <= Math.max(...holes))) return [];
    return judged(part.id, 'hole', Math.max(...holes), places(day, part.id, makingOf(route, f.id)).at(0), of.part.id, f.id);
  });
}

/** Tooling is finished before an operation takes it in hand, or a set-up is held in it. */
function tools(day: ProvedDay, { part, route }: Planned): readonly Claim[] {
  const operations = route.chosen.flatMap((method) => method.operations);
  return route.setUps.flatMap((setUp, i) => {
    const here = day.sequence.findIndex((entry) => entry.part === part.id && entry.setUp === i);
    const own = operations.filter((op) => setUp.operations.includes(op.id));
    const asked = new Set([...own.flatMap((op) => day.wants(op)), ...day.holds(setUp).filter((id) => !staysInChuck(day, id))]);
    return [...asked].flatMap((id) => judged(part.id, 'tool', lastOf(day, id), here, id, setUp.operations[0] ?? part.id));
  });
}

/** Of what stays in the chuck another claim speaks. */
const staysInChuck = ({ parts }: ProvedDay, id: PartId): boolean =>
  parts.some(({ part }) => part.id === id && part.use === 'tooling made in place');

function judged(
  part: PartId,
  why: string,
  first: number | undefined,
  then: number | undefined,
  other: PartId,
  feature: FeatureId,
): readonly Claim[] {
  if (first === undefined || then === undefined) return [];
  const about = feature.startsWith(`${part}/`) ? feature.slice(part.length + 1) : feature;
  return [claim('order of the day', feature, first < then, { part, first: other, then: about, why })];
}

/** The last entry of a part; none where it is not made here. */
function lastOf({ sequence }: ProvedDay, part: PartId): number | undefined {
  const last = sequence.findLastIndex((entry) => entry.part === part);
  return last < 0 ? undefined : last;
}

const makingOf = ({ chosen }: Planned['route'], feature: FeatureId): readonly OpId[] =>
  chosen.flatMap((method) => method.operations).flatMap((op) => (op.feature === feature ? [op.id] : []));

/** Entries in which one of these operations is done, in the order of the day. */
function places({ sequence, parts }: ProvedDay, part: PartId, operations: readonly OpId[]): readonly number[] {
  const route = parts.find((one) => one.part.id === part)?.route;
  return sequence.flatMap((entry, i) =>
    entry.part === part && route?.setUps[entry.setUp]?.operations.some((op) => operations.includes(op)) ? [i] : [],
  );
}
