/** A part's work as layers: what is done, the history of holds, the hold and the tool in use; what each step costs; what is still to come at least. */
import { contains, isEmpty, meets, membersOf, missing, put, shared } from '../../base/bits.ts';
import type { Bound, Space } from '../../base/layers.ts';
import { BROKEN } from './costs.ts';
import { type Histories, newHistories } from './histories.ts';
import type { Asks, GripMasks, OpSet, Problem } from './problem.ts';

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
  const histories = newHistories(p.grips.length, (grip) => p.grips[grip]?.tooling ?? []);
  const start = new Array<number>(p.words + BEHIND).fill(0);
  const count = p.operations.length;
  return {
    space: { words: start.length, steps: count, start, cost: p.cost, expand: expanderOf(p, histories) },
    bound: boundOf(p, histories),
    step: (code) => ({ op: code % count, grip: Math.floor(code / count) - 1 }),
    holds: (state) => histories.list(state[p.words] ?? 0),
  };
}
const BEHIND = [BENCH, BENCH, BENCH].length;

function expanderOf(p: Problem, histories: Histories): Space['expand'] {
  const [HISTORY, GRIP, TOOL_AT] = [p.words, p.words + 1, p.words + 2];
  return (state, next, reach) => {
    const step = (op: number, grip: number, asks: Asks | undefined): void => {
      if (!asks || !contains(state, asks.needs) || meets(asks.forbids, state)) return;
      const anew = grip !== BENCH && grip + 1 !== state[GRIP];
      const off = grip === BENCH || p.grips[grip]?.way === 'bench';
      const history = state[HISTORY] ?? 0;
      const tool = off ? (state[TOOL_AT] ?? 0) : (p.tools[op] ?? BENCH) + 1;
      next.set(state);
      put(next, op);
      next[HISTORY] = anew && !off ? histories.after(history, grip) : history;
      next[GRIP] = grip + 1;
      next[TOOL_AT] = tool;
      const change = tool === state[TOOL_AT] ? 0 : (p.toolPrices[tool - 1] ?? 0);
      const hold = anew ? priceOf(p, histories, history, grip) : 0;
      reach((grip + 1) * p.operations.length + op, change + hold + (missing(asks.wants, state) + shared(asks.shuns, state)) * BROKEN);
    };
    if (contains(state, p.leaves)) eachLeft(p.onBench, state, (op) => step(op, BENCH, p.asks[op]?.bench));
    p.grips.forEach((g, grip) => {
      if (meets(g.gone, state) || (grip + 1 !== state[GRIP] && !contains(state, g.ready))) return;
      eachLeft(g.can, state, (op) => step(op, grip, p.asks[op]?.[g.way]));
    });
  };
}

/** Of coming into a hold, after this history. */
function priceOf(p: Problem, histories: Histories, history: number, grip: number): number {
  return histories.unpaid(history, grip).reduce((sum, tooling) => sum + (p.makings[tooling] ?? 0), p.grips[grip]?.price ?? 0);
}

function eachLeft(of: OpSet, done: Int32Array, tell: (op: number) => void): void {
  for (let w = 0; w < of.length; w += 1) membersOf((of[w] ?? 0) & ~(done[w] ?? 0), w, tell);
}

/** Tools not yet in hand, and the least holds that together could do what can't be done as it is held. */
function boundOf(p: Problem, histories: Histories): Bound {
  const left = new Int32Array(p.words);
  return (state) => {
    const tool = (state[p.words + 2] ?? 0) - 1;
    let tools = 0;
    for (let t = 0; t < p.toolMembers.length; t += 1)
      if (t !== tool && !contains(state, p.toolMembers[t] ?? [])) tools += p.toolPrices[t] ?? 0;
    const held = p.grips[(state[p.words + 1] ?? 0) - 1];
    const can = held && !meets(held.gone, state) ? held.can : [];
    for (let w = 0; w < p.words; w += 1) left[w] = (p.onLathe[w] ?? 0) & ~(state[w] ?? 0) & ~(can[w] ?? 0);
    if (isEmpty(left)) return tools;
    const history = state[p.words] ?? 0;
    const pays: Pays = { price: (grip) => priceOf(p, histories, history, grip), unpaid: (grip) => histories.unpaid(history, grip) };
    return tools + holdsFor(p, left, state, pays);
  };
}

type Pays = { readonly price: (grip: number) => number; readonly unpaid: (grip: number) => readonly number[] };

/** One hold, or two, or more than two; Infinity where an operation has none left. */
function holdsFor(p: Problem, left: OpSet, state: Int32Array, pays: Pays): number {
  let one = Number.POSITIVE_INFINITY;
  for (let i = 0; i < p.grips.length; i += 1) {
    const g = p.grips[i];
    if (g && contains(g.can, left) && !meets(g.gone, state)) one = Math.min(one, pays.price(i));
  }
  return Number.isFinite(one) ? one : severalFor(p, left, state, pays);
}

function severalFor(p: Problem, left: OpSet, state: Int32Array, { price, unpaid }: Pays): number {
  const open = p.grips.flatMap((g, i) => (meets(g.gone, state) || !meets(g.can, left) ? [] : [i]));
  const able = (i: number): OpSet => (p.grips[i] as GripMasks).can;
  if (!covered(left, open.map(able))) return Number.POSITIVE_INFINITY;
  let two = Number.POSITIVE_INFINITY;
  // two that share a piece of tooling pay for it once
  const share = (i: number, k: number): number =>
    unpaid(i).reduce((sum, tooling) => sum + (p.grips[k]?.tooling.includes(tooling) ? (p.makings[tooling] ?? 0) : 0), 0);
  for (const i of open)
    for (const k of open) if (i < k && coverBoth(left, able(i), able(k))) two = Math.min(two, price(i) + price(k) - share(i, k));
  if (Number.isFinite(two)) return two;
  // three at least, each no cheaper than the cheapest: tooling may serve more than one of them
  const least = open.reduce((cheapest, i) => Math.min(cheapest, p.grips[i]?.price ?? 0), Number.POSITIVE_INFINITY);
  return least + least + least;
}

function covered(left: OpSet, sets: readonly OpSet[]): boolean {
  for (let w = 0; w < left.length; w += 1) if (((left[w] ?? 0) & ~sets.reduce((all, s) => all | (s[w] ?? 0), 0)) !== 0) return false;
  return true;
}

function coverBoth(left: OpSet, a: OpSet, b: OpSet): boolean {
  for (let w = 0; w < left.length; w += 1) if (((left[w] ?? 0) & ~(a[w] ?? 0) & ~(b[w] ?? 0)) !== 0) return false;
  return true;
}
