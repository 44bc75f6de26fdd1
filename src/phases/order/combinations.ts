/** The ways of making a whole part: which methods are taken together. */
import type { Candidates, Method } from '../../model/plan.ts';

/** One method for each feature; what a method covers needs none of its own. */
export function combinations(c: Candidates): readonly (readonly Method[])[] {
  let all: (readonly Method[])[] = [[]];
  for (const { any } of c.methods) all = all.flatMap((chosen) => any.map((m) => [...chosen, m]));
  const number = new Map(c.methods.flatMap((f) => f.any).map((m, i) => [m, i]));
  const known = new Map<string, readonly Method[]>();
  for (const chosen of all) {
    const covered = new Set(chosen.flatMap((m) => m.covers ?? []));
    const left = chosen.filter((m) => !covered.has(m.feature));
    const key = left.map((m) => number.get(m)).join();
    if (!known.has(key)) known.set(key, left);
  }
  return [...known.values()];
}
