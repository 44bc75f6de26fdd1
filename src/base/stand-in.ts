/**
 * Where some words of a file cannot be read, what depends on none of them can still be judged: each unreadable word gets a stand-in that
 * its schema takes, and the whole is read once more.
 */
import type * as z from 'zod';
import type { Problem } from './quantity.ts';

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/** One of each kind that a key may ask for; the first that the schema takes is used. */
const STAND_INS: readonly unknown[] = ['10 mm', 'first', 'yes', '60 deg', 1];

/** Only a key that asks for a name takes this and not a size. */
const NAME = 'b-7-c';

/**
 * Problems marked `alone`, but for those at the unreadable words themselves. Empty where something has no stand-in: a name or a letter
 * that cannot be read, or a whole list, may be what the rest of the file speaks of.
 */
export function standingAlone(schema: z.ZodType, value: unknown, issues: readonly Issue[]): readonly Issue[] {
  let whole = value;
  for (const issue of issues) {
    const next = mended(schema, whole, issue);
    if (next === undefined) return [];
    whole = next;
  }
  const again = schema.safeParse(whole).error?.issues ?? [];
  return again.filter((one) => isAlone(one) && !issues.some((issue) => issue.path.length > 0 && startsWith(one.path, issue.path)));
}

const startsWith = (path: Path, start: Path): boolean => start.every((step, i) => path[i] === step);

const isAlone = (issue: Issue): boolean => issue.code === 'custom' && (issue.params as Partial<Problem> | undefined)?.alone === true;

/** Nothing where no stand-in will do. */
function mended(schema: z.ZodType, value: unknown, issue: Issue): unknown {
  if (issue.code === 'unrecognized_keys') return issue.keys.reduce((left, key) => put(left, [...issue.path, key], undefined), value);
  const takes = (one: unknown): boolean => !stillWrong(schema, put(value, issue.path, one), issue.path);
  if (takes(NAME) && !takes(STAND_INS[0])) return undefined;
  for (const one of STAND_INS) {
    if (takes(one)) return put(value, issue.path, one);
  }
  return undefined;
}

const stillWrong = (schema: z.ZodType, value: unknown, path: Path): boolean =>
  (schema.safeParse(value).error?.issues ?? []).some((one) => isUnread(one) && startsWith(one.path, path));

const isUnread = (issue: Issue): boolean =>
  issue.code !== 'unrecognized_keys' &&
  (issue.code !== 'custom' || (issue.params as Partial<Problem> | undefined)?.problem?.startsWith('read.') === true);

/** A copy with another value at that place; `undefined` takes the key away. */
function put(value: unknown, [first, ...rest]: Path, to: unknown): unknown {
  if (first === undefined) return to;
  if (Array.isArray(value)) return value.map((one, i) => (i === first ? put(one, rest, to) : one));
  const record = typeof value === 'object' && value !== null ? (value as Readonly<Record<PropertyKey, unknown>>) : {};
  const changed = put(record[first], rest, to);
  if (rest.length > 0 || to !== undefined) return { ...record, [first]: changed };
  const { [first]: _, ...others } = record;
  return others;
}
