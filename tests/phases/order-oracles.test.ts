/** The search of orders against slow and plain ways to the same answer, over any small jobs. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { problemOf } from '../../src/phases/order/problem.ts';
import { search } from '../../src/phases/order/search.ts';
import { order } from '../../src/phases/order.ts';
import { jobs } from '../fixtures/generators.ts';
import { plainOrder } from '../fixtures/plain-order.ts';
import { shop } from '../fixtures/shop.ts';

const fieldsOf = (c: Parameters<typeof order>[0]) => {
  const { route } = order(c, shop);
  if (!route) return undefined;
  const { setUps, tooling, broken, toolChanges, rank } = route.cost;
  return { cost: [setUps, tooling, broken, toolChanges, rank], orders: BigInt(route.asGood), proved: route.proved };
};

describe('order against all permutations', () => {
  it.each([
    ['one method each', { operations: 6, choices: 'one method each', grips: 4 }, 150],
    ['some with two methods', { operations: 5, choices: 'some with two', grips: 4 }, 150],
    ['up to eight operations', { operations: 8, choices: 'one method each', grips: 3 }, 25],
  ] as const)('%s: cost, and how many are as good', (_, size, numRuns) => {
    fc.assert(
      fc.property(jobs(size), (c) => {
        const plain = plainOrder(c);
        expect(fieldsOf(c)).toEqual(plain && { ...plain, proved: 'best' });
      }),
      { numRuns },
    );
  });
});

describe('a search that is cut short', () => {
  it('gives an order no better than the best, and a bound no dearer', () => {
    fc.assert(
      fc.property(jobs({ operations: 8, choices: 'one method each', grips: 4 }), fc.integer({ min: 1, max: 4 }), (c, width) => {
        const p = problemOf(
          c,
          c.methods.flatMap((m) => m.any.slice(0, 1)),
        );
        const whole = search(p, () => 0, { states: 1e6, width: Number.POSITIVE_INFINITY, atMost: Number.POSITIVE_INFINITY });
        const cut = search(p, () => 0, { states: 1e6, width, atMost: Number.POSITIVE_INFINITY });
        if (!cut) return;
        expect(cut.cost).toBeGreaterThanOrEqual(whole?.cost ?? Number.POSITIVE_INFINITY);
        expect(cut.atLeast).toBeLessThanOrEqual(whole?.cost ?? 0);
        if (cut.exact) expect(cut.cost).toBe(whole?.cost);
      }),
      { numRuns: 150 },
    );
  });
});
