/** The search of orders against a general solver of integer programmes. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { order } from '../../src/phases/order.ts';
import { jobs } from '../fixtures/generators.ts';
import { mipOrder, WEIGHTS } from '../fixtures/mip-order.ts';
import { shop } from '../fixtures/shop.ts';

describe('order against an integer programme', () => {
  it.each([
    [4, 60],
    [5, 40],
  ])('of up to %d operations', (operations, numRuns) => {
    fc.assert(
      fc.property(jobs({ operations, choices: 'one method each', grips: 3 }), (c) => {
        const { route } = order(c, shop);
        const fields = route && [route.cost.setUps, route.cost.tooling, route.cost.broken, route.cost.toolChanges];
        const cost = fields ? fields.reduce((sum, n, i) => sum + n * (WEIGHTS[i] ?? 0), 0) : Number.POSITIVE_INFINITY;
        expect(
          mipOrder(
            c,
            c.methods.flatMap((m) => m.any.slice(0, 1)),
          ),
        ).toBe(cost);
      }),
      { numRuns },
    );
  });
});
