/** In what two plans of the same files differ, as a turner would ask: parts, holds, operations, sizes, order. Each a words' id with its facts. */
import type { Plan } from '../model/plan.ts';
import type { OldPlan } from './open.ts';

/** Words' id is `reopen.<id>`. */
export type Difference = { readonly id: string; readonly facts: Readonly<Record<string, string | number>> };

/** Empty where they are the same, whatever version made them. The old one is read with care: another version may have written it otherwise. */
export function differences(old: OldPlan, now: Plan): readonly Difference[] {
  const [before, after] = [partsOf(old), partsOf(now)];
  const both = [...after.keys()].filter((part) => before.has(part));
  const found = [
    ...only(before, after).map((part) => say('part-gone', { part })),
    ...only(after, before).map((part) => say('part-new', { part })),
    ...both.flatMap((part) => partDifferences(part, before.get(part), after.get(part))),
    ...(text(at(old, 'sequence')) === text(now.sequence) ? [] : [say('day-order', {})]),
  ];
  const rest = found.length === 0 && text(body(old)) !== text(body(now));
  return rest ? [say('rest', {})] : found;
}

const say = (id: string, facts: Difference['facts']): Difference => ({ id, facts });

/** All but what says by whom it was made. */
function body(plan: object): unknown {
  const { mark: _, version: __, ...rest } = plan as Readonly<Record<string, unknown>>;
  return rest;
}

function partDifferences(part: string, before: unknown, after: unknown): readonly Difference[] {
  const [opsBefore, opsAfter] = [operationsOf(before), operationsOf(after)];
  const [sizesBefore, sizesAfter] = [sizesOf(before), sizesOf(after)];
  const gone = opsBefore.filter((op) => !opsAfter.includes(op));
  const fresh = opsAfter.filter((op) => !opsBefore.includes(op));
  const kept = (ops: readonly string[], others: readonly string[]): string => ops.filter((op) => others.includes(op)).join(' ');
  const changed = [...sizesAfter].filter(([id, size]) => sizesBefore.has(id) && sizesBefore.get(id) !== size);
  return [
    ...(gripsOf(before) === gripsOf(after) ? [] : [say('holds', { part, before: gripsOf(before), after: gripsOf(after) })]),
    ...gone.map((op) => say('operation-gone', { part, op: short(op, part) })),
    ...fresh.map((op) => say('operation-new', { part, op: short(op, part) })),
    ...(kept(opsBefore, opsAfter) === kept(opsAfter, opsBefore) ? [] : [say('order', { part })]),
    ...changed.map(([id, size]) => say('size', { part, dim: short(id, part), before: sizesBefore.get(id) ?? '', after: size })),
    ...(text(list(at(before, 'figures'))) === text(list(at(after, 'figures'))) || fresh.length + gone.length > 0
      ? []
      : [say('figures', { part })]),
  ];
}

function partsOf(plan: object): ReadonlyMap<string, unknown> {
  return new Map(list(at(plan, 'parts')).map((planned) => [String(at(at(planned, 'part'), 'id')), planned]));
}

function setUpsOf(planned: unknown): readonly unknown[] {
  return list(at(at(planned, 'route'), 'setUps'));
}

function operationsOf(planned: unknown): readonly string[] {
  return setUpsOf(planned).flatMap((setUp) => list(at(setUp, 'operations')).map(String));
}

/** Kinds of the holds, in their order. */
function gripsOf(planned: unknown): string {
  return setUpsOf(planned)
    .map((setUp) => String(at(at(setUp, 'grip'), 'kind')))
    .join(', ');
}

const UNITS_PER_MM = 10000;

/** Of each working dimension, its limits in mm; a dimension that is cut to more than once, by the operation too. */
function sizesOf(planned: unknown): ReadonlyMap<string, string> {
  return new Map(
    list(at(at(planned, 'chart'), 'working')).map((working) => {
      const limits = at(working, 'limits');
      const mm = (key: string): string => String(Number(at(limits, key)) / UNITS_PER_MM);
      return [`${String(at(working, 'id'))} (${String(at(working, 'op'))})`, `${mm('lo')} – ${mm('hi')}`];
    }),
  );
}

function only(a: ReadonlyMap<string, unknown>, b: ReadonlyMap<string, unknown>): readonly string[] {
  return [...a.keys()].filter((key) => !b.has(key));
}

function short(id: string, part: string): string {
  return id.replaceAll(`${part}/`, '');
}

function at(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>)[key] : undefined;
}

function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

/** With keys in order: another version may write them in another. */
function text(value: unknown): string {
  return JSON.stringify(value, (_, item: unknown) =>
    typeof item === 'object' && item !== null && !Array.isArray(item)
      ? Object.fromEntries(Object.entries(item).sort(([a], [b]) => (a < b ? -1 : 1)))
      : item,
  );
}
