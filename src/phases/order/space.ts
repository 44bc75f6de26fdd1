/** A part's work as layers: what is done, the history of holds, the hold and the tool in use; what each step costs. */
import { contains, meets, membersOf, missing, put, shared } from '../../base/bits.ts';
import type { Bound, Space } from '../../base/layers.ts';
import { boundOf } from './bound.ts';
import { BROKEN } from './costs.ts';
import { type Histories, newHistories } from './histories.ts';
import type { Asks, OpSet, Problem } from './problem.ts';

export const BENCH = -1;
export type Step = { readonly op: number; readonly grip: number };
export type Work = {
  readonly space: Space;
  readonly bound: Bound;
  readonly step: (code: number) => Step;
  /** Holds at the lathe in order, each index as often as the work was put in it. */
  readonly holds: (state: ArrayLike<number>) => readonly number[];
};

/** Behind the words of the set stand the history, the hold and the tool, the last two plus one. */
export function workOf(p: Problem): Work {
  const histories = newHistories(p.grips, p.makings);
  const start = new Array<number>(p.words + BEHIND).fill(0);
  const count = p.all.length;
  return {
    space: { words: start.length, steps: p.operations.length, start, cost: p.cost, expand: expanderOf(p, histories) },
    bound: boundOf(p, histories),
    step: (code) => ({ op: code % count, grip: Math.floor(code / count) - 1 }),
    holds: (state) => histories.list(state[p.words] ?? 0),
  };
}
const BEHIND = [BENCH, BENCH, BENCH].length;

function expanderOf(p: Problem, histories: Histories): Space['expand'] {
  const [HISTORY, GRIP, TOOL_AT] = [p.words, p.words + 1, p.words + 2];
  const count = p.all.length;
  return (state, next, reach) => {
    const [history, held, inHand] = [state[HISTORY] ?? 0, state[GRIP] ?? 0, state[TOOL_AT] ?? 0];
    const step = (op: number, grip: number, asks: Asks | undefined, price: number, after: number, off: boolean): void => {
      if (!asks || !contains(state, asks.needs) || meets(asks.forbids, state)) return;
      const tool = off ? inHand : (p.tools[op] ?? BENCH) + 1;
      for (let w = 0; w < p.words; w += 1) next[w] = state[w] ?? 0;
      put(next, op);
      next[HISTORY] = after;
      next[GRIP] = grip + 1;
      next[TOOL_AT] = tool;
      const change = tool === inHand ? 0 : (p.toolPrices[tool - 1] ?? 0);
      reach((grip + 1) * count + op, change + price + (missing(asks.wants, state) + shared(asks.shuns, state)) * BROKEN);
    };
    if (contains(state, p.leaves)) eachLeft(p.onBench, state, (op) => step(op, BENCH, p.asks[op]?.bench, 0, history, true));
    for (let grip = 0; grip < p.grips.length; grip += 1) {
      const g = p.grips[grip];
      const anew = grip + 1 !== held;
      if (!g || meets(g.gone, state) || (anew && !contains(state, g.ready))) continue;
      const off = g.way === 'bench';
      const price = anew ? (histories.prices(history)[grip] ?? 0) : 0;
      const after = anew && !off ? histories.after(history, grip) : history;
      eachLeft(g.can, state, (op) => step(op, grip, p.asks[op]?.[g.way], price, after, off));
    }
  };
}

function eachLeft(of: OpSet, done: Int32Array, tell: (op: number) => void): void {
  for (let w = 0; w < of.length; w += 1) membersOf((of[w] ?? 0) & ~(done[w] ?? 0), w, tell);
}
