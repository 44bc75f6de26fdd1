/** Gathers from a plan the reasons for its order, part by part and operation by operation. Nothing is searched or computed anew. */

import type { OpId } from '../model/ids.ts';
import type { Before, Cost, Day, Grip, Method, NoRoute, Operation, Plan, PlannedPart, Refusal, Route, SetUp } from '../model/plan.ts';
import type { WhyDay, WhyHold, WhyMust, WhyNot, WhyOperation, WhyPart, WhyRefusal, WhySetUp, WhyStanding, WhyView } from '../model/why.ts';
import { isOffLathe } from '../model/work.ts';

/** Parts in the plan's order, operations in the order of work. */
export function why(plan: Plan): WhyView {
  const { day } = plan;
  return { title: plan.fitting.title, parts: plan.parts.map(whyPart), ...(day ? { day: whyDay(plan, day) } : {}) };
}

function whyDay(plan: Plan, { makings, atLeast, aside, proved }: Day): WhyDay {
  const { sequence } = plan;
  const setUp = (i: number): SetUp | undefined =>
    plan.parts.find(({ part }) => part.id === sequence[i]?.part)?.route.setUps[sequence[i]?.setUp ?? 0];
  const hold = (i: number): WhyHold => ({ part: sequence[i]?.part ?? '', no: setUp(i)?.no ?? 0 });
  const served = (begun: number): readonly number[] => sequence.flatMap(({ on }, i) => (on === begun ? [i] : []));
  const begun = [...new Set(sequence.flatMap(({ on }) => (on === undefined ? [] : [on])))];
  const inPlace = begun.filter((i) => plan.parts.some(({ part }) => part.id === sequence[i]?.part && part.use === 'tooling made in place'));
  const standing = inPlace.map((i): WhyStanding => {
    const before = inPlace.filter((other) => other < i && sequence[other]?.part === sequence[i]?.part).at(-1);
    const last = before === undefined ? undefined : served(before).at(-1);
    const out = sequence.findIndex((_, k) => last !== undefined && k > last && k < i && !isOffLathe(setUp(k)?.grip ?? { kind: 'bench' }));
    return { tooling: sequence[i]?.part ?? '', holds: served(i).map(hold), ...(out < 0 ? {} : { out: hold(out) }) };
  });
  return { makings, atLeast, aside, proved, standing };
}

/** The same for a part that cannot be planned. */
export function whyNot(none: NoRoute): WhyNot {
  const pairs = none.wouldHelpPairs ?? [];
  return {
    part: none.part,
    stuck: none.stuck,
    refused: none.refused.map(refusal),
    wouldHelp: none.wouldHelp.map(refusal),
    wouldHelpByOne: (none.wouldHelpByOne ?? []).map((all) => all.map(refusal)),
    wouldHelpPairs: pairs.map(([a, b]) => [refusal(a), refusal(b)] as const),
  };
}

/** Operation numbers in tens through the part, in the order of work. */
export function numbers(route: Route): ReadonlyMap<OpId, number> {
  const order = route.setUps.flatMap((setUp) => setUp.operations);
  return new Map(order.map((id, index) => [id, (index + 1) * 10]));
}

function whyPart(planned: PlannedPart): WhyPart {
  const { route, part } = planned;
  const number = numbers(route);
  const binding = route.befores.filter((before) => binds(before, route));
  return {
    part: part.id,
    setUps: route.setUps.map(whySetUp),
    operations: route.setUps.flatMap((setUp, i) => setUp.operations.map((id) => whyOperation(id, i, planned, binding))),
    cost: route.cost,
    asGood: route.asGood,
    habits: route.habits ?? [],
    proved: route.proved,
    ...(route.atLeast ? { atLeast: route.atLeast } : {}),
    states: route.states,
    runnersUp: route.runnersUp.map(({ grips, cost }) => ({ grips, cost, dearerBy: dearer(route.cost, cost) })),
    insteadOf: planned.insteadOf ?? [],
    refused: route.refused.map(refusal),
    broken: route.broken.map((before) => must(before, before.first, before.then, number)),
  };
}

function whySetUp({ no, grip }: SetUp): WhySetUp {
  return {
    no,
    kind: grip.kind,
    plugged: grip.plug !== undefined,
    seated: grip.seated === true,
    centred: grip.centre !== undefined && grip.kind !== 'bar-and-centre',
    out: grip.out,
    on: grip.on,
    datum: grip.datum ?? '',
    diameter: grip.diameter,
    long: (grip.to - grip.from) as Grip['from'],
    because: grip.because,
  };
}

function whyOperation(id: OpId, at: number, planned: PlannedPart, binding: readonly Before[]): WhyOperation {
  const number = numbers(planned.route);
  const grip = planned.route.setUps[at]?.grip;
  const method = planned.route.chosen.find((m) => m.operations.some((op) => op.id === id));
  const operation = method?.operations.find((op) => op.id === id);
  if (!method || !operation) throw new Error(`'${id}' stands in the route and in no chosen method`);
  return {
    id,
    number: number.get(id) ?? 0,
    verb: operation.verb,
    feature: operation.feature.slice(operation.feature.indexOf('/') + 1),
    setUp: at,
    from: grip === undefined || isOffLathe(grip) ? 'bench' : grip.out,
    because: operation.because,
    method: { name: method.name, because: method.because, besides: besides(method, planned) },
    comesAfter: binding.filter((b) => b.then === id).map((b) => must(b, b.first, id, number)),
    comesBefore: binding.filter((b) => b.first === id).map((b) => must(b, b.then, id, number)),
    notFrom: notFrom(operation),
  };
}

function besides(method: Method, planned: PlannedPart): WhyOperation['method']['besides'] {
  const choice = planned.candidates.methods.find((m) => m.feature === method.feature);
  return (choice?.any ?? []).filter((m) => m.name !== method.name).map(({ name, because }) => ({ name, because }));
}

function notFrom(operation: Operation): WhyOperation['notFrom'] {
  if (operation.ways.bench) return [];
  return (['first', 'second'] as const).filter((end) => operation.ways[end] === undefined);
}

/** A before that depends on the end in use binds only if its operation was done from that end; one about work that is not done binds nothing. */
function binds(before: Before, route: Route): boolean {
  const done = (id: OpId): SetUp | undefined => route.setUps.find((setUp) => setUp.operations.includes(id));
  if (!done(before.then)) return false;
  const when = before.when;
  return when === undefined || done(when.op)?.grip.out === when.from;
}

function must(before: Before, op: OpId, than: OpId, number: ReadonlyMap<OpId, number>): WhyMust {
  return { op, number: number.get(op) ?? 0, than, force: before.force, because: before.because };
}

/** The first field, in the order in which they count, in which the other is dearer. */
function dearer(best: Cost, other: Cost): keyof Cost | 'nothing' {
  const fields = ['setUps', 'tooling', 'broken', 'toolChanges', 'minutes', 'rank'] as const;
  return fields.find((field) => other[field] > best[field]) ?? 'nothing';
}

function refusal({ what, because, has, wants, most }: Refusal): WhyRefusal {
  const least = wants === undefined ? {} : { wants };
  return { what, because, ...(has === undefined ? {} : { has }), ...least, ...(most === undefined ? {} : { most }) };
}
