/**
 * A sequential ordering problem as layers: what is visited, and where one stands. Arcs that skip a node which must lie between are
 * dropped; the bound is the assignment's, by its potentials.
 */
import { type Bits, bitsOf, contains, membersOf, put, wordsFor } from '../../../src/base/bits.ts';
import { type Bound, type Outcome, type Space, search } from '../../../src/base/layers.ts';
import { potentials } from './potentials.ts';
import type { Sop } from './read.ts';

export type Solved = Pick<Outcome, 'exact' | 'atLeast'> & {
  /** Infinity where no order is possible. */
  readonly value: number;
  /** The assignment's bound at the start. */
  readonly root: number;
  /** Nodes from start to end, counted from 1. */
  readonly order: readonly number[];
  /** How many orders are as good; exact where the value is proved. */
  readonly ways: bigint;
  /** Of the last run, and of all. */
  readonly states: number;
  readonly statesInAll: number;
};
const WIDTHS = [100, 1000, 10_000];

/** Narrow runs give the upper limit, each the next one's; then a whole one, unless a narrow one left nothing out. */
export function solveSop(sop: Sop, stateLimit: number): Solved {
  const arcs = arcsOf(sop);
  const dual = potentials(arcs.costs.slice(0, -1).map((row) => row.slice(1)));
  if (!dual) return { exact: true, atLeast: Infinity, value: Infinity, root: Infinity, order: [], ways: 0n, states: 0, statesInAll: 0 };
  const space = spaceOf(sop.nodes, arcs);
  const bound = boundOf(sop.nodes, [...dual.row, 0], [0, ...dual.column]);
  let statesInAll = 0;
  let best: Outcome | undefined;
  for (const width of [...WIDTHS, Number.POSITIVE_INFINITY]) {
    if (best?.exact) break;
    const limits = { states: stateLimit, width, atMost: best?.found?.cost ?? Number.POSITIVE_INFINITY };
    const outcome = search(space, bound, limits, (a, b) => a - b);
    statesInAll += outcome.states;
    if (outcome.found || !best) best = outcome;
  }
  const { exact = false, atLeast = 0, states = 0, found } = best ?? {};
  const told = { exact, atLeast: Math.max(atLeast, dual.sum), states, statesInAll, root: dual.sum };
  return { ...told, value: found?.cost ?? Infinity, order: found ? [1, ...found.steps.map((s) => s + 1)] : [], ways: found?.ways ?? 0n };
}

type Arcs = {
  /** Infinity: not possible. */
  readonly costs: readonly (readonly number[])[];
  /** By node, all that comes before it. */
  readonly before: readonly Bits[];
};

function arcsOf({ nodes, costs }: Sop): Arcs {
  const all = Array.from({ length: nodes }, (_, i) => i);
  const isBefore = costs.map((row) => row.map((c) => c === -1)); // [then][first]
  for (const k of all)
    for (const row of isBefore)
      if (row[k])
        isBefore[k]?.forEach((is, first) => {
          row[first] ||= is;
        });
  const before = isBefore.map((row) =>
    bitsOf(
      all.filter((i) => row[i]),
      wordsFor(nodes),
    ),
  );
  const skips = (i: number, j: number): boolean => all.some((k) => isBefore[k]?.[i] && isBefore[j]?.[k]);
  const possible = (i: number, j: number): boolean => i !== j && !isBefore[i]?.[j] && !skips(i, j);
  return { before, costs: costs.map((row, i) => row.map((c, j) => (possible(i, j) ? c : Number.POSITIVE_INFINITY))) };
}

/** Behind the words of the set stands the last node; a step's number is the node stepped to. */
function spaceOf(nodes: number, { costs, before }: Arcs): Space {
  const words = wordsFor(nodes);
  const rows = costs.map((row) => Float64Array.from(row));
  const start = [...Array.from(bitsOf([0], words)), 0];
  return {
    words: words + 1,
    steps: nodes - 1,
    start,
    cost: 0,
    expand: (state, next, reach) => {
      const row = rows[state[words] ?? 0];
      for (let j = 1; j < nodes; j += 1) {
        const cost = row?.[j] ?? Number.POSITIVE_INFINITY;
        if (cost === Number.POSITIVE_INFINITY || isIn(state, j) || !contains(state, before[j] ?? [])) continue;
        next.set(state);
        put(next, j);
        next[words] = j;
        reach(j, cost);
      }
    },
  };
}

const WORD = 31;
const isIn = (state: Int32Array, node: number): boolean => (((state[Math.floor(node / WORD)] ?? 0) >> (node % WORD)) & 1) === 1;

/** Every node still to come is entered, and every one but the end is left, as is the one where one stands. Summed by bytes of the set. */
function boundOf(nodes: number, row: readonly number[], column: readonly number[]): Bound {
  const words = wordsFor(nodes);
  const tables = Array.from({ length: words * 4 }, (_, t) =>
    Float64Array.from({ length: 256 }, (_, byte) => {
      let sum = 0;
      membersOf(byte << ((t % 4) * 8), Math.floor(t / 4), (i) => {
        sum += i < nodes ? (row[i] ?? 0) + (column[i] ?? 0) : 0;
      });
      return sum;
    }),
  );
  const total = row.reduce((sum, r, i) => sum + r + (column[i] ?? 0), 0);
  return (state) => {
    let left = total + (row[state[words] ?? 0] ?? 0);
    for (let t = 0; t < tables.length; t += 1) left -= tables[t]?.[((state[t >> 2] ?? 0) >>> ((t & 3) * 8)) & 255] ?? 0;
    return left;
  };
}
