/** What is still to come at least: tools not yet in hand, and the least holds that together could do what can't be done as it is held. */
import { contains, isEmpty, meets } from '../../base/bits.ts';
import type { Bound } from '../../base/layers.ts';
import type { Histories } from './histories.ts';
import type { OpSet, Problem } from './problem.ts';

/** A bound of the states that space.ts makes, in the same order of words. */
export function boundOf(p: Problem, histories: Histories): Bound {
  const left = new Int32Array(p.words);
  const open = new Int32Array(p.grips.length);
  return (state) => {
    const tools = toolsFor(p, state);
    const held = p.grips[(state[p.words + 1] ?? 0) - 1];
    const can = held && !meets(held.gone, state) ? held.can : NOTHING;
    for (let w = 0; w < p.words; w += 1) left[w] = (p.onLathe[w] ?? 0) & ~(state[w] ?? 0) & ~(can[w] ?? 0);
    return isEmpty(left) ? tools : tools + holdsFor({ p, histories, left, open, history: state[p.words] ?? 0 }, state);
  };
}
const NOTHING: OpSet = [];

function toolsFor(p: Problem, state: Int32Array): number {
  const inHand = (state[p.words + 2] ?? 0) - 1;
  let sum = 0;
  for (let t = 0; t < p.toolMembers.length; t += 1)
    if (t !== inHand && !contains(state, p.toolMembers[t] ?? NOTHING)) sum += p.toolPrices[t] ?? 0;
  return sum;
}

/** `left`: what can't be done as it is held; `open`: written over. */
type Asked = {
  readonly p: Problem;
  readonly histories: Histories;
  readonly left: OpSet;
  readonly open: Int32Array;
  readonly history: number;
};

/** One hold, or two, or more than two; Infinity where an operation has none left. */
function holdsFor(asked: Asked, state: Int32Array): number {
  const { p, left, open } = asked;
  const prices = asked.histories.prices(asked.history);
  let one = Number.POSITIVE_INFINITY;
  let count = 0;
  for (let i = 0; i < p.grips.length; i += 1) {
    const g = p.grips[i];
    if (!g || !meets(g.can, left) || meets(g.gone, state)) continue;
    open[count] = i;
    count += 1;
    if (contains(g.can, left)) one = Math.min(one, prices[i] ?? 0);
  }
  return Number.isFinite(one) ? one : severalFor(asked, open.subarray(0, count), prices);
}

function severalFor({ p, histories, left, history }: Asked, open: Int32Array, prices: ArrayLike<number>): number {
  const able = (place: number): OpSet => p.grips[open[place] ?? 0]?.can ?? NOTHING;
  if (!covered(left, open.length, able)) return Number.POSITIVE_INFINITY;
  let two = Number.POSITIVE_INFINITY;
  for (let a = 0; a < open.length; a += 1) {
    for (let b = a + 1; b < open.length; b += 1) {
      if (!coverBoth(left, able(a), able(b))) continue;
      const [i, k] = [open[a] ?? 0, open[b] ?? 0];
      two = Math.min(two, (prices[i] ?? 0) + (prices[k] ?? 0) - histories.twice(history, i, k));
    }
  }
  if (Number.isFinite(two)) return two;
  // three at least, each no cheaper than the cheapest: tooling may serve more than one of them
  const least = open.reduce((cheapest, i) => Math.min(cheapest, p.grips[i]?.price ?? 0), Number.POSITIVE_INFINITY);
  return least + least + least;
}

function covered(left: OpSet, count: number, able: (place: number) => OpSet): boolean {
  for (let w = 0; w < left.length; w += 1) {
    let all = 0;
    for (let place = 0; place < count; place += 1) all |= able(place)[w] ?? 0;
    if (((left[w] ?? 0) & ~all) !== 0) return false;
  }
  return true;
}

function coverBoth(left: OpSet, a: OpSet, b: OpSet): boolean {
  for (let w = 0; w < left.length; w += 1) if (((left[w] ?? 0) & ~(a[w] ?? 0) & ~(b[w] ?? 0)) !== 0) return false;
  return true;
}
