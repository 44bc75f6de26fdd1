/** Claims about the way at corners: what holds at the targets and not at a legal corner is refused, with that corner. */
import { describe, expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import type { Claim, Working } from '../../src/model/plan.ts';
import { type Proved, prove } from '../../src/phases/prove.ts';
import { everyPlan, provedOf } from '../fixtures/every-plan.ts';

/** A working dimension with one of its limits moved out, its target where it was. */
const widened = (asked: Proved, dim: string, side: 'lo' | 'hi', by: number): Proved => ({
  ...asked,
  chart: {
    ...asked.chart,
    working: asked.chart.working.map(
      (one): Working =>
        one.id === dim ? { ...one, limits: { ...one.limits, [side]: len(one.limits.target + (side === 'hi' ? by : -by)) } } : one,
    ),
  },
});
const failedBy = (asked: Proved, kind: Claim['kind'], about: string): Claim | undefined =>
  prove(asked).claims.find((one) => one.kind === kind && one.about === about && !one.holds);

/** Held in a collet that is set 5 mm short of where it was, and past the end of what it holds: then it holds what a length leaves of that. */
function shortHeld(sound: Proved): { readonly sound: Proved; readonly tight: Proved; readonly grip: string } | undefined {
  const grip = sound.route.setUps.find((one) => one.grip.kind === 'collet')?.grip;
  if (!grip) return undefined;
  const drawn = { ...grip, from: len(grip.to - mm(5)), to: len(grip.to + mm(10)) };
  const setUps = sound.route.setUps.map((one) => (one.grip === grip ? { ...one, grip: drawn } : one));
  return { sound, tight: { ...sound, route: { ...sound.route, setUps } }, grip: grip.id };
}

describe('the way at its corners', () => {
  it('a grip that is long enough at the targets and too short at a corner is refused with that corner', () => {
    // those whose work does not stand out too far for so short a hold; of some the hold lies on no length that may come out short
    const found = everyPlan.flatMap(({ plan }) => plan.parts.flatMap((one) => shortHeld(provedOf(plan, one)) ?? []));
    const refused = found
      .filter(({ tight, grip }) => failedBy(tight, 'grip', grip) === undefined)
      .flatMap(({ sound, tight, grip }) =>
        sound.chart.working
          .filter((one) => one.measures === 'length' && one.stage === 'final')
          .flatMap(({ id }) =>
            (['lo', 'hi'] as const).flatMap((side) => {
              const claim = failedBy(widened(tight, id, side, mm(4)), 'grip', grip);
              return claim ? [{ id: id.slice(id.indexOf('/') + 1), claim }] : [];
            }),
          ),
      );
    expect(refused.length).toBeGreaterThan(0);
    for (const { id, claim } of refused) {
      expect(claim.grounds.reason).toBe('short');
      expect(claim.grounds.corner).toContain(`${id} `);
    }
  });
  it.each([
    // a saw cuts what is drawn out of the jaws, a parting tool what stands before them
    ['spindle', 'saw-off', undefined],
    ['bush', 'part-off', 'in-the-hold'],
  ] as const)('%s: a length to be cut off, so long at a corner that the %s comes into the hold', (named, verb, reason) => {
    const planned = everyPlan.find(({ spec }) => spec.includes(named));
    const sound = planned?.plan.parts[0] && provedOf(planned.plan, planned.plan.parts[0]);
    const off = sound?.route.chosen.flatMap((method) => method.operations).find((one) => one.verb === verb);
    const length = sound?.chart.working.find((one) => one.op === off?.id && one.measures === 'length');
    if (!sound || !off || !length) throw new Error(`no ${verb} of the ${named}`);
    const long = widened(sound, length.id, 'hi', mm(6));
    expect(prove(sound).holds).toBe(true);
    expect(failedBy(long, 'held', off.id)?.grounds.reason).toBe(reason);
    if (reason) expect(failedBy(long, 'held', off.id)?.grounds.corner).toContain('+');
  });
  it('a wall of more than 3 mm at the targets, and of less than the least at a corner, is refused with that corner', () => {
    const thick = everyPlan.flatMap(({ plan }) =>
      plan.parts.flatMap((planned) => {
        const sound = provedOf(plan, planned);
        const [hole] = sound.part.surfaces.flatMap((one) => (one.shape === 'cylinder' && one.side === 'inside' ? [one] : []));
        const around = sound.part.surfaces.flatMap((one) =>
          one.shape === 'cylinder' && one.side === 'outside' && hole && one.from < hole.to && one.to > hole.from ? [one.size.lo] : [],
        );
        const bored = sound.chart.working.find((one) => one.makes === hole?.id && one.stage === 'final');
        const wall = Math.min(...around) - (hole?.size.hi ?? 0);
        return bored && wall > mm(4) && Number.isFinite(wall) ? [{ sound, bored, wall }] : [];
      }),
    );
    expect(thick.length).toBeGreaterThan(2);
    const refused = thick.filter(({ sound, bored, wall }) => {
      const thin = widened(sound, bored.id, 'hi', wall + bored.limits.hi - bored.limits.target - mm(0.2));
      const claim = failedBy(thin, 'wall', sound.part.id);
      return String(claim?.grounds.corner).includes(`${bored.id.slice(sound.part.id.length + 1)} +`);
    });
    expect(refused.length).toBeGreaterThan(2);
  });
});
