/** What holds for the order of any job, however its lists are written. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Candidates, Cost, Refusal } from '../../src/model/plan.ts';
import { order } from '../../src/phases/order.ts';
import { jobs } from '../fixtures/generators.ts';
import { lines, shop } from '../fixtures/shop.ts';

const JOBS = jobs({ operations: 9, choices: 'some with two', grips: 4 });
const RUNS = { numRuns: 80 };

/** Least first: negative where `a` is cheaper. */
function compareCosts(a: Cost, b: Cost): number {
  const fields = ['setUps', 'tooling', 'broken', 'toolChanges', 'minutes', 'rank'] as const;
  return fields.map((f) => a[f] - b[f]).find((d) => d !== 0) ?? 0;
}

const turned = (c: Candidates): Candidates => ({
  ...c,
  methods: [...c.methods].reverse().map((m) => ({ ...m, any: [...m.any].reverse() })),
  grips: [...c.grips].reverse(),
  befores: [...c.befores].reverse(),
  refused: [...c.refused].reverse(),
});

/** Every feature, hold and operation by another name, in another alphabetical order. */
function renamed(c: Candidates): Candidates {
  const other = (id: string): string =>
    id.replace(/\/(f|hold|bar)(\d*)/, (_, kind, n) => `/${kind === 'f' ? 'z' : 'a'}${kind}${n === '' ? '' : 9 - Number(n)}`);
  const by = (ids: readonly string[]): readonly string[] => ids.map(other);
  return {
    ...c,
    part: { ...c.part, surfaces: c.part.surfaces.map((s) => ({ ...s, feature: other(s.feature) })) },
    methods: c.methods.map((m) => ({
      feature: other(m.feature),
      any: m.any.map((a) => ({
        ...a,
        feature: other(a.feature),
        operations: a.operations.map((o) => ({ ...o, id: other(o.id), feature: other(o.feature) })),
      })),
    })),
    grips: c.grips.map((g) => ({ ...g, id: other(g.id), ready: by(g.ready), gone: by(g.gone), hides: by(g.hides) })),
    befores: c.befores.map((b) => ({
      ...b,
      first: other(b.first),
      then: other(b.then),
      ...(b.when ? { when: { ...b.when, op: other(b.when.op) } } : {}),
    })),
  };
}

/** What a reader sees of an order, names left out. */
const seen = (c: Candidates) => {
  const { route, none } = order(c, shop);
  return {
    lines: route && lines(route),
    cost: route?.cost,
    asGood: route?.asGood,
    runnersUp: route?.runnersUp,
    helps: none && new Set(none.wouldHelp),
  };
};

describe('order of any job', () => {
  it('does not hang on the order of lists', () => {
    fc.assert(
      fc.property(JOBS, (c) => {
        expect(seen(turned(c))).toEqual(seen(c));
      }),
      RUNS,
    );
  });

  it('does not hang on names', () => {
    fc.assert(
      fc.property(JOBS, (c) => {
        const [plain, other] = [order(c, shop).route, order(renamed(c), shop).route];
        const shape = (r: typeof plain) =>
          r && { cost: r.cost, asGood: r.asGood, holds: r.setUps.map((s) => [s.grip.kind, s.grip.runout, s.operations.length]) };
        expect(shape(other)).toEqual(shape(plain));
      }),
      RUNS,
    );
  });

  it('is never dearer for one more way to make a feature', () => {
    fc.assert(
      fc.property(JOBS, (c) => {
        const fewer = { ...c, methods: c.methods.map((m) => ({ ...m, any: m.any.slice(0, 1) })) };
        const [less, more] = [order(fewer, shop).route, order(c, shop).route];
        if (less) expect(more && compareCosts(more.cost, less.cost)).toBeLessThanOrEqual(0);
      }),
      RUNS,
    );
  });

  it('stays possible when a before or a refusal is taken away', () => {
    fc.assert(
      fc.property(JOBS, fc.nat(8), (c, n) => {
        const { route } = order(c, shop);
        if (!route) return;
        const freer = { ...c, befores: c.befores.filter((_, i) => i !== n % Math.max(1, c.befores.length)) };
        const more = c.refused.reduce(allowed, c);
        const [a, b] = [order(freer, shop).route, order(more, shop).route];
        expect(a && compareCosts(a.cost, route.cost)).toBeLessThanOrEqual(0);
        expect(b && compareCosts(b.cost, route.cost)).toBeLessThanOrEqual(0);
      }),
      RUNS,
    );
  });

  it('names just the changes that would help: one alone, or two where no one does', () => {
    const hopeless = JOBS.filter((c) => order(c, shop).route === undefined);
    fc.assert(
      fc.property(hopeless, (c) => {
        const { none } = order(c, shop);
        const helps = (...changes: readonly Refusal[]): boolean => order(changes.reduce(allowed, c), shop).route !== undefined;
        expect(none?.wouldHelp).toEqual(c.refused.filter((r) => helps(r)));
        const pairs = c.refused.flatMap((a, i) => c.refused.slice(i + 1).flatMap((b) => (helps(a, b) ? [[a, b]] : [])));
        expect(none?.wouldHelpPairs).toEqual(none?.wouldHelp.length === 0 ? pairs : undefined);
      }),
      { numRuns: 60 },
    );
  });
});

function allowed(c: Candidates, { would }: Refusal): Candidates {
  return would && 'grip' in would ? { ...c, grips: [...c.grips, would.grip] } : c;
}
