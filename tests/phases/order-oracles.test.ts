/** The search of orders against slow and plain ways to the same answer, over any small jobs. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
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
