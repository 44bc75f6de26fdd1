/** A set of sizes: a list, in which a whole range may stand as `{ from: 1 mm, to: 10 mm, by: 0.1 mm }` or by a name of its own. */
import * as z from 'zod';
import { type Bounds, length, list, record } from '../../base/asking.ts';
import { type Len, toMm } from '../../base/units.ts';
import { findDrill } from '../../handbook/drills.ts';
import { bounds } from '../../handbook/reading.ts';
import { namedSet, spanned } from './named-set.ts';

/** All sizes, each once, smallest first. */
export const sizes = (limits: Bounds) => set(length(limits), limits);

/** The same for drills, which may also be named by number or letter: `"#40"`, `F`. */
export const drillSizes = (limits: Bounds) =>
  set(
    length(limits, (word) => findDrill(word)?.diameter),
    limits,
  );

type One = ReturnType<typeof length>;
/** A single set need not stand in a list. */
const set = (one: One, limits: Bounds) =>
  z
    .union([list(z.union([sizeOrSet(one, limits), range(limits)])), sizeOrSet(one, limits)])
    .transform((items) => [...new Set(items.flat())].sort((a, b) => a - b));

const sizeOrSet = (one: One, limits: Bounds) =>
  z
    .any()
    .meta({ type: ['number', 'string'] })
    .transform((value: unknown, context): readonly Len[] => {
      const named = typeof value === 'string' ? namedSet(value) : undefined;
      if (named && 'problem' in named) context.addIssue({ code: 'custom', params: named, input: value });
      if (named && 'problem' in named) return z.NEVER;
      const ends = named
        ? [named[0], named.at(-1)].map((size) => length(limits).safeParse(toMm(size ?? (0 as Len))))
        : [one.safeParse(value)];
      const issues = ends.flatMap((end) => end.error?.issues ?? []);
      for (const issue of issues) if (issue.code === 'custom') context.addIssue({ ...issue, path: [], input: value });
      return issues.length > 0 ? z.NEVER : (named ?? ends.flatMap((end) => (end.data === undefined ? [] : [end.data])));
    });

const range = (limits: Bounds) =>
  record({ from: length(limits), to: length(limits), by: length(bounds('range.step')) }).transform(
    ({ from, to, by }, context): readonly Len[] => {
      const got = spanned(from, to, by);
      if (!('problem' in got)) return got;
      context.addIssue({ code: 'custom', params: got, input: from });
      return z.NEVER;
    },
  );
