/** Whatever corner is taken, nothing measures outside the worst corners that the proof replayed; of every part of every spec. */
import { describe, expect, it } from 'vitest';
import { replayer } from '../../src/geometry/replay.ts';
import { finishedOf } from '../../src/geometry/ring.ts';
import { everyPlan } from '../fixtures/every-plan.ts';

const CORNERS = 40;
const PARTS = everyPlan.flatMap(({ spec, plan }) => plan.parts.map((planned) => [spec, planned.part.id, planned] as const));

describe('random corners never beat the replayed ones', () => {
  it.each(PARTS)('%s: %s', (_, __, { part, route, chart, proof }) => {
    const run = replayer(part, route, chart);
    const worst = new Map(
      proof.claims.flatMap((claim) => (claim.kind === 'dimension' && claim.worst ? [[claim.about, claim.worst] as const] : [])),
    );
    for (let k = 0; k < CORNERS; k += 1) {
      const side = (i: number): boolean => Math.imul(k * 7919 + i * 104729 + 12345, 2654435761) >>> 31 === 1;
      const { extents } = finishedOf(
        part,
        run(Object.fromEntries(chart.working.map(({ id, limits }, i) => [id, side(i) ? limits.hi : limits.lo]))).end,
      );
      for (const { id, a, b } of part.dimensions) {
        const [p, q, of] = [extents.get(a), extents.get(b), worst.get(id)];
        expect((q?.z[0] ?? Number.NaN) - (p?.z[1] ?? Number.NaN)).toBeGreaterThanOrEqual((of?.lo ?? Number.NaN) - 0.5);
        expect((q?.z[1] ?? Number.NaN) - (p?.z[0] ?? Number.NaN)).toBeLessThanOrEqual((of?.hi ?? Number.NaN) + 0.5);
      }
      for (const surface of part.surfaces) {
        const level = surface.shape === 'cylinder' ? extents.get(surface.id)?.level : undefined;
        const of = worst.get(surface.id);
        if (!level || !of) continue;
        expect([level[0] >= of.lo - 0.5, level[1] <= of.hi + 0.5]).toEqual([true, true]);
      }
    }
  });
});
