/** Orders of things in groups against plain enumeration: how many are right, and how many things must be moved at least. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { antichain } from '../../src/base/antichain.ts';
import {
  brokenGroups,
  brokenPairs,
  closure,
  countOrders,
  isRight,
  mended,
  mostKept,
  type Ordering,
  withoutChains,
} from '../../src/base/orders.ts';

function permutations(things: readonly number[]): readonly (readonly number[])[] {
  if (things.length === 0) return [[]];
  return things.flatMap((thing) => permutations(things.filter((t) => t !== thing)).map((rest) => [thing, ...rest]));
}
const all = Array.from({ length: 8 }, (_, n) => permutations(Array.from({ length: n }, (__, i) => i)));

/** The most things that `given` and a right order have in one sequence: the longest common subsequence, by trying every right order. */
function keptPlainly(rights: readonly (readonly number[])[], given: readonly number[]): number {
  return Math.max(...rights.map((right) => common(right, given)));
}
function common(a: readonly number[], b: readonly number[]): number {
  const table = a.map(() => new Array<number>(b.length).fill(0));
  const at = (i: number, k: number): number => table[i]?.[k] ?? 0;
  a.forEach((x, i) => {
    b.forEach((y, k) => {
      (table[i] as number[])[k] = x === y ? at(i - 1, k - 1) + 1 : Math.max(at(i - 1, k), at(i, k - 1));
    });
  });
  return at(a.length - 1, b.length - 1);
}

/** At most seven things; pairs and groups agree with the order 0, 1, 2 …, so that one order at least is right. */
const orderings = fc.integer({ min: 1, max: 7 }).chain((count) =>
  fc
    .record({
      cuts: fc.array(fc.boolean(), { minLength: count, maxLength: count }),
      pairs: fc.array(fc.tuple(fc.nat(count - 1), fc.nat(count - 1)), { maxLength: 9 }),
      order: fc.shuffledSubarray([...Array(count).keys()], { minLength: count, maxLength: count }),
    })
    .map(({ cuts, pairs, order }) => {
      const groups: number[][] = [];
      for (let i = 0; i < count; i += 1) {
        if (i === 0 || cuts[i]) groups.push([i]);
        else groups.at(-1)?.push(i);
      }
      const rising = pairs.filter(([a, b]) => a !== b).map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
      return { ordering: { count, groups, pairs: rising } satisfies Ordering, order };
    }),
);

describe('orders of things in groups', () => {
  it.each([
    ['nothing is asked', { count: 4, groups: [[0, 1, 2, 3]], pairs: [] }, 24n],
    [
      'a chain',
      {
        count: 4,
        groups: [[0, 1, 2, 3]],
        pairs: [
          [0, 1],
          [1, 2],
          [2, 3],
        ],
      },
      1n,
    ],
    [
      'two chains of two',
      {
        count: 4,
        groups: [[0, 1, 2, 3]],
        pairs: [
          [0, 1],
          [2, 3],
        ],
      },
      6n,
    ],
    [
      'two groups of two',
      {
        count: 4,
        groups: [
          [0, 1],
          [2, 3],
        ],
        pairs: [],
      },
      8n,
    ],
    [
      'two groups of two, one first',
      {
        count: 4,
        groups: [
          [0, 1],
          [2, 3],
        ],
        pairs: [[1, 2]],
      },
      4n,
    ],
    [
      'a ring',
      {
        count: 2,
        groups: [[0, 1]],
        pairs: [
          [0, 1],
          [1, 0],
        ],
      },
      0n,
    ],
    [
      'twenty-five things free of each other, which is 25!',
      { count: 25, groups: Array.from({ length: 25 }, (_, i) => [i]), pairs: [] },
      undefined,
    ],
  ] as readonly [string, Ordering, bigint | undefined][])('%s', (_, ordering, count) => {
    expect(countOrders(ordering)).toBe(count);
  });

  it('are counted as enumeration counts them', () => {
    fc.assert(
      fc.property(orderings, ({ ordering }) => {
        const rights = (all[ordering.count] ?? []).filter((order) => isRight(ordering, order));
        expect(countOrders(ordering)).toBe(BigInt(rights.length));
      }),
      { numRuns: 60, seed: 8 },
    );
  });

  it('no fewer can be moved than are told, and moving these puts it right', () => {
    fc.assert(
      fc.property(orderings, ({ ordering, order }) => {
        const rights = (all[ordering.count] ?? []).filter((each) => isRight(ordering, each));
        const kept = mostKept(ordering, order);
        expect(kept.length).toBe(keptPlainly(rights, order));
        const put = mended(ordering, kept);
        expect(isRight(ordering, put)).toBe(true);
        expect(put.filter((thing) => kept.includes(thing))).toEqual(kept);
        expect(isRight(ordering, order)).toBe(kept.length === ordering.count);
      }),
      { numRuns: 60, seed: 8 },
    );
  });

  it('what no chain says says all: an order breaks one of these or none at all', () => {
    fc.assert(
      fc.property(orderings, ({ ordering: { count, pairs }, order }) => {
        const direct = withoutChains(count, pairs);
        expect(closure(count, direct)).toEqual(closure(count, pairs));
        expect(brokenPairs(direct, order).length > 0).toBe(brokenPairs(pairs, order).length > 0);
      }),
      { numRuns: 100, seed: 8 },
    );
  });

  it.each([
    [[0, 1, 2, 3], []],
    [
      [0, 2, 1, 3],
      [0, 1],
    ],
    [[2, 0, 1, 3], [1]],
  ])('%j breaks up %j', (order, groups) => {
    expect(
      [
        ...brokenGroups(
          {
            count: 4,
            groups: [
              [0, 1],
              [2, 3],
            ],
            pairs: [],
          },
          order,
        ),
      ].sort(),
    ).toEqual(groups);
  });
});

describe('the largest set without a relation', () => {
  it('is as large as trying every set finds, and has none', () => {
    fc.assert(
      fc.property(orderings, ({ ordering: { count, pairs } }) => {
        const related = closure(count, pairs);
        const free = (set: readonly number[]): boolean => set.every((a) => set.every((b) => !related[a]?.[b]));
        const sets = Array.from({ length: 2 ** count }, (_, bits) => [...Array(count).keys()].filter((i) => bits & (1 << i)));
        const found = antichain(related);
        expect(free(found)).toBe(true);
        expect(found.length).toBe(Math.max(...sets.filter(free).map((set) => set.length)));
      }),
      { numRuns: 100, seed: 8 },
    );
  });
});
