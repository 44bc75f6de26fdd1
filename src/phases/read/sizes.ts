/** A set of sizes: a list, in which a whole range may stand as `{ from: 1 mm, to: 10 mm, by: 0.1 mm }`. */
import { z } from 'zod';
import { type Bounds, length, list, record } from '../../base/asking.ts';
import { type Len, len } from '../../base/units.ts';
import { findDrill } from '../../handbook/drills.ts';
import { bounds, usual } from '../../handbook/reading.ts';

/** All sizes, each once, smallest first. */
export const sizes = (limits: Bounds) => set(length(limits), limits);

/** The same for drills, which may also be named by number or letter: `"#40"`, `F`. */
export const drillSizes = (limits: Bounds) =>
  set(
    length(limits, (word) => findDrill(word)?.diameter),
    limits,
  );

const set = (one: ReturnType<typeof length>, limits: Bounds) =>
  list(z.union([one, range(limits)])).transform((items) => [...new Set(items.flat())].sort((a, b) => a - b));

const range = (limits: Bounds) =>
  record({ from: length(limits), to: length(limits), by: length(bounds('range.step')) }).transform(({ from, to, by }, context): Len[] => {
    const steps = Math.floor((to - from) / by);
    if (steps >= 0 && steps < usual('set.most')) return Array.from({ length: steps + 1 }, (_, n) => len(from + n * by));
    const problem = steps < 0 ? 'read.range-backwards' : 'read.range-too-fine';
    context.addIssue({ code: 'custom', params: { problem, grounds: { most: usual('set.most') } }, input: from });
    return z.NEVER;
  });
