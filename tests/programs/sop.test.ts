/** Published instances of the sequential ordering problem through the search that orders the lathe's work. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { potentials } from './sop/potentials.ts';
import { readSop, type Sop } from './sop/read.ts';
import { solveSop } from './sop/solve.ts';

const STATES = 3_000_000;
const load = (name: string): Sop => readSop(readFileSync(new URL(`../data/sop/${name}.sop`, import.meta.url), 'utf8'));

/** Sum of the arcs; NaN where the order breaks a precedence, or is none of all nodes. */
function costAlong(sop: Sop, order: readonly number[]): number {
  const at = new Map(order.map((node, i) => [node - 1, i]));
  const kept = sop.costs.every((row, then) => row.every((c, first) => c !== -1 || (at.get(first) ?? 0) < (at.get(then) ?? 0)));
  if (!kept || at.size !== sop.nodes || order.length !== sop.nodes) return Number.NaN;
  return order.slice(1).reduce((sum, node, i) => sum + (sop.costs[(order[i] ?? 0) - 1]?.[node - 1] ?? Number.NaN), 0);
}

describe('sequential ordering problems', () => {
  // optima as published with TSPLIB 95 (Heidelberg), https://comopt.ifi.uni-heidelberg.de/software/TSPLIB95/
  it.each([
    ['ESC07', 9, 2125],
    ['ESC12', 14, 1675],
    ['ESC25', 27, 1681],
    ['br17.10', 18, 55],
    ['p43.4', 44, 83005],
    ['ry48p.4', 49, 31446],
  ])('%s of %d nodes: %d, proved', (name, nodes, optimum) => {
    const sop = load(name);
    const solved = solveSop(sop, STATES);
    expect(sop.nodes).toBe(nodes);
    expect(solved).toMatchObject({ value: optimum, atLeast: optimum, exact: true });
    expect(solved.root).toBeLessThanOrEqual(optimum);
    expect(costAlong(sop, solved.order)).toBe(optimum);
    expect(solved.statesInAll).toBeLessThan(STATES);
  });

  it.each([
    ['ESC25', 500],
    ['p43.4', 2000],
    ['ry48p.4', 5000],
  ])('%s within %d states: an order, a bound below it, and not proved', (name, limit) => {
    const sop = load(name);
    const solved = solveSop(sop, limit);
    const { value } = solveSop(sop, STATES);
    expect(solved.exact).toBe(false);
    expect(costAlong(sop, solved.order)).toBe(solved.value);
    expect(solved.value).toBeGreaterThanOrEqual(value);
    expect(solved.atLeast).toBeLessThanOrEqual(value);
  });

  it('agrees with all permutations on value and on how many are as good', () => {
    fc.assert(
      fc.property(instances(), (sop) => {
        expect(solveSop(sop, STATES)).toMatchObject({ ...plainly(sop), exact: true });
      }),
    );
  });

  it.each([
    ['TYPE: TSP\nEDGE_WEIGHT_SECTION\n2\n0 1\n-1 0\nEOF', 'not SOP'],
    ['TYPE: SOP\n', 'no EDGE_WEIGHT_SECTION'],
    ['TYPE: SOP\nEDGE_WEIGHT_SECTION\n2\n0 1\n-1\nEOF', '3 weights'],
    ['TYPE: SOP\nEDGE_WEIGHT_SECTION\n2\n0 x\n-1 0\nEOF', 'weight 2'],
  ])('%j cannot be read: %s', (text, what) => {
    expect(() => readSop(text)).toThrow(what);
  });

  it.each([
    [
      [
        [4, 1, 3],
        [2, 0, 5],
        [3, 2, 2],
      ],
      5,
    ],
    [
      [
        [Infinity, 1],
        [1, Infinity],
      ],
      2,
    ],
  ])('assignment of %j costs %d, and its potentials prove it', (costs, least) => {
    const dual = potentials(costs);
    expect(dual?.sum).toBe(least);
    costs.forEach((row, i) => {
      row.forEach((c, j) => {
        expect((dual?.row[i] ?? 0) + (dual?.column[j] ?? 0)).toBeLessThanOrEqual(c);
      });
    });
  });
});

/** Up to seven nodes; precedences run from lower to higher numbers, so that an order always exists. */
const instances = (): fc.Arbitrary<Sop> =>
  fc.integer({ min: 3, max: 7 }).chain((nodes) =>
    fc
      .array(fc.record({ cost: fc.integer({ min: 0, max: 6 }), before: fc.integer({ min: 0, max: 3 }) }), {
        minLength: nodes * nodes,
        maxLength: nodes * nodes,
      })
      .map((cells) => {
        const isBefore = (first: number, then: number): boolean =>
          first < then && (first === 0 || then === nodes - 1 || cells[first * nodes + then]?.before === 0);
        const costs = Array.from({ length: nodes }, (_, i) =>
          Array.from({ length: nodes }, (_, j) => (isBefore(j, i) ? -1 : (cells[i * nodes + j]?.cost ?? 0))),
        );
        return { name: 'any', nodes, costs };
      }),
  );

function plainly(sop: Sop): { readonly value: number; readonly ways: bigint } {
  let [value, ways] = [Number.POSITIVE_INFINITY, 0n];
  const walk = (order: readonly number[]): void => {
    if (order.length === sop.nodes) {
      const cost = costAlong(sop, order);
      if (cost < value) [value, ways] = [cost, 0n];
      if (cost === value) ways += 1n;
      return;
    }
    for (let node = 1; node <= sop.nodes; node += 1) if (!order.includes(node)) walk([...order, node]);
  };
  walk([1]);
  return { value, ways };
}
