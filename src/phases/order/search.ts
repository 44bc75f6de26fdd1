/** The least order of one combination of methods, through the general search of layers. */
import { type Outcome, type Shelf, search as searchLayers } from '../../base/layers.ts';
import { compareKeys } from '../../rules/likes.ts';
import type { Problem } from './problem.ts';
import { BENCH, type Step, type Work, workOf } from './space.ts';

export { costOf } from './costs.ts';
export { BENCH, type Step };

export type Found = {
  readonly cost: number;
  readonly steps: readonly Step[];
  readonly orders: bigint;
  readonly states: number;
  readonly exact: boolean;
  /** No order costs less. */
  readonly atLeast: number;
  /** By history of holds, the least cost; least first. */
  readonly finals: readonly { readonly grips: readonly number[]; readonly cost: number }[];
};
export type Limit = {
  readonly states: number;
  readonly atMost: number;
  /** States kept a layer. */
  readonly width: number;
};
/** Which of two steps is liked better: negative, the first. Never by name or list order. */
export type Likes = (a: Step, b: Step) => number;

export function search(p: Problem, likes: Likes, limit: Limit): Found | undefined {
  return searchWork(workOf(p), likes, limit).found;
}

/** What the search looked at, found or not. */
export type Searched = Pick<Outcome, 'states' | 'exact' | 'atLeast'> & { readonly found?: Found };

export function searchWork(work: Work, likes: Likes, limit: Limit, shelf?: Shelf): Searched {
  const { found, ...told } = searchLayers(work.space, work.bound, limit, (a, b) => likes(work.step(a), work.step(b)), shelf);
  if (!found) return told;
  const steps = found.steps.map(work.step);
  return { ...told, found: { ...told, cost: found.cost, steps, orders: found.ways, finals: finalsOf(work, found.ends) } };
}

function finalsOf(work: Work, ends: readonly { readonly state: readonly number[]; readonly cost: number }[]): Found['finals'] {
  const best = new Map<readonly number[], number>();
  for (const { state, cost } of ends) {
    const holds = work.holds(state);
    best.set(holds, Math.min(cost, best.get(holds) ?? cost));
  }
  return [...best].map(([grips, cost]) => ({ grips, cost })).sort((a, b) => a.cost - b.cost || compareKeys(a.grips, b.grips));
}
