/**
 * The bound by which the proof spares itself replays: at no corner of any plan's limits is a wall thinner than it says. Corners by
 * chance, and those at which everything is small or large. With no slack at all the same bound is broken: the trial can tell.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { replayer } from '../../src/geometry/replay.ts';
import { thinnest } from '../../src/phases/prove/grip.ts';
import { leastWall, type Slack, slackOf } from '../../src/phases/prove/slack.ts';
import { everyPlan } from '../fixtures/every-plan.ts';

const PLANNED = everyPlan.flatMap(({ spec, plan }) => plan.parts.map((planned) => ({ name: `${spec} ${planned.part.id}`, planned })));
/** A share of all, so that it takes seconds: another one a part. */
const TRIED = PLANNED.filter((_, i) => i % 4 === 0);
const SIDES = ['lo', 'target', 'hi'] as const;

describe('the slack of a plan', () => {
  const broken = new Set<string>();
  it('is tried on many parts', () => expect(TRIED.length).toBeGreaterThan(20));

  it.each(TRIED)('$name', ({ planned: { part, route, chart } }) => {
    const again = replayer(part, route, chart);
    const slack = slackOf(part, chart);
    const base = again({});
    const boundsBy = (by: Slack): readonly number[] => base.steps.map(({ after }) => leastWall(after, by));
    const [bounds, tight] = [boundsBy(slack), boundsBy({ along: 0, across: 0 })];
    const free = chart.working.filter(({ limits }) => limits.lo < limits.hi);
    const corner = fc.oneof(
      fc.constantFrom(...SIDES).map((side) => free.map(() => side)),
      fc.array(fc.constantFrom(...SIDES), { minLength: free.length, maxLength: free.length }),
    );
    fc.assert(
      fc.property(corner, (sides) => {
        const run = again(Object.fromEntries(free.map((one, i) => [one.id, one.limits[sides[i] ?? 'target']])));
        run.steps.forEach(({ after }, i) => {
          const wall = thinnest(after)?.wall ?? Number.MAX_VALUE;
          expect(wall).toBeGreaterThanOrEqual((bounds[i] ?? 0) - 1e-6);
          if (wall < (tight[i] ?? 0) - 1e-6) broken.add(part.id);
        });
      }),
      { numRuns: 12 },
    );
  });

  it('is needed', () => expect(broken.size).toBeGreaterThan(10));
});
