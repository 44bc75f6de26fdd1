/** The search of orders against slow and plain ways to the same answer, over any small jobs. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Shelf } from '../../src/base/layers.ts';
import { mm } from '../../src/base/units.ts';
import { holdLike, setting } from '../../src/handbook/setting.ts';
import type { End } from '../../src/model/ids.ts';
import type { Candidates, Grip, GripKind, Operation, Verb } from '../../src/model/plan.ts';
import { problemOf } from '../../src/phases/order/problem.ts';
import { search, searchWork } from '../../src/phases/order/search.ts';
import { workOf } from '../../src/phases/order/space.ts';
import { order } from '../../src/phases/order.ts';
import { handlingOf } from '../../src/rules/handling.ts';
import { jobs } from '../fixtures/generators.ts';
import { plainOrder } from '../fixtures/plain-order.ts';
import { shop } from '../fixtures/shop.ts';

/** The workshop's minutes, looked up anew. */
const tenths = (id: string): number => Math.round((shop.handling[id] ?? setting.value(id)) * 10);
const TAKES = {
  hold: (kind: string) => tenths(`hold.${kind}`) + tenths(holdLike(kind) ?? ''),
  change: (tool: string) => tenths(tool.includes('drill') || tool === 'd-bit' ? 'tailstock-tool' : 'change-tool'),
  make: (kind: string) => tenths(`make.${kind}`),
};

const fieldsOf = (c: Parameters<typeof order>[0]) => {
  const { route } = order(c, shop);
  if (!route) return undefined;
  const { setUps, tooling, broken, toolChanges, minutes, rank } = route.cost;
  return { cost: [setUps, tooling, broken, toolChanges, minutes, rank], orders: BigInt(route.asGood), proved: route.proved };
};

describe('order against all permutations', () => {
  it.each([
    ['one method each', { operations: 6, choices: 'one method each', grips: 4 }, 150],
    ['some with two methods', { operations: 5, choices: 'some with two', grips: 4 }, 150],
    ['up to eight operations', { operations: 8, choices: 'one method each', grips: 3 }, 25],
  ] as const)('%s: cost, and how many are as good', (_, size, numRuns) => {
    fc.assert(
      fc.property(jobs(size), (c) => {
        const plain = plainOrder(c, TAKES);
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
          handlingOf(shop),
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

describe('layers used again', () => {
  it('give what new ones give, whatever stood in them', () => {
    const sizes = [
      { operations: 8, choices: 'one method each', grips: 4 },
      { operations: 4, choices: 'one method each', grips: 2 },
    ] as const;
    fc.assert(
      fc.property(fc.array(fc.oneof(...sizes.map(jobs)), { minLength: 2, maxLength: 4 }), (all) => {
        const shelf: Shelf = [];
        const whole = { states: 1e6, width: Number.POSITIVE_INFINITY, atMost: Number.POSITIVE_INFINITY };
        for (const c of all) {
          const methods = c.methods.flatMap((m) => m.any.slice(0, 1));
          const work = () => workOf(problemOf(c, methods, handlingOf(shop)));
          expect(searchWork(work(), () => 0, whole, shelf)).toEqual(searchWork(work(), () => 0, whole));
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('of two holds that serve as well', () => {
  it.each([
    ['jaws', 'four-jaw', undefined],
    ['collet', 'jaws', undefined],
    ['hexagon', 'sleeve', undefined],
    ['stub', 'bored-jaws', undefined],
    ['four-jaw', 'jaws', { 'four-jaw': 1 }],
  ] as const)('%s is quicker set than %s and is taken, whichever is named first', (quick, slow, minutes) => {
    const workshop = { ...shop, handling: { ...shop.handling, ...minutes } };
    for (const kinds of [
      [quick, slow],
      [slow, quick],
    ]) {
      const route = order(twoEnds(kinds), workshop).route;
      expect(route?.setUps.map((s) => s.grip.kind)).toEqual(['bar', quick]);
    }
  });
});

/** Faced and turned at one end and parted off; faced at the other, in either of two holds. */
function twoEnds(kinds: readonly GripKind[]): Candidates {
  const one = fc.sample(jobs({ operations: 4, choices: 'one method each', grips: 1 }), { numRuns: 1, seed: 1 })[0];
  if (!one) throw new Error('no job');
  const op = (feature: string, verb: Verb, end: End): Operation => ({
    ...{ id: `p/${feature}/${verb}`, feature: `p/${feature}`, verb, light: false, because: [], says: [] },
    ...{ tool: { kind: 'turning', key: 'turning', material: 'HSS' }, ways: { [end]: { cuts: [], sweeps: [] } } },
  });
  const operations = [op('a', 'face', 'first'), op('b', 'turn', 'first'), op('bar', 'part-off', 'first'), op('c', 'face', 'second')];
  const grip = (id: string, kind: GripKind, out: End, gone: readonly string[]): Grip => ({
    ...{ id, kind, out, on: [], from: mm(0), to: mm(10), diameter: mm(10), ready: [], gone, hides: [] },
    ...{ lightOnly: false, runout: mm(0.1), because: [] },
  });
  return {
    ...one,
    ...{ befores: [], refused: [] },
    methods: operations.map((o) => ({
      feature: o.feature,
      any: [{ feature: o.feature, name: 'only', because: { rule: 'any', grounds: {} }, operations: [o], rank: 0 }],
    })),
    grips: [grip('p/bar', 'bar', 'first', ['p/bar/part-off']), ...kinds.map((kind) => grip(`p/${kind}`, kind, 'second', []))],
  };
}
