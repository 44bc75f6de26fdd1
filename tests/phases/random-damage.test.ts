/**
 * Any damage at all: where a plain replay at the targets or at some corner shows another ring, a measure past its limits, or something
 * asked for that is not there, the proof does not hold. And a corner that the drawing allows, at which a face goes, is refused by name.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { len } from '../../src/base/units.ts';
import { replay } from '../../src/geometry/replay.ts';
import { finishedOf, sameRing } from '../../src/geometry/ring.ts';
import type { Part } from '../../src/model/part.ts';
import type { Working } from '../../src/model/plan.ts';
import { type Proved, prove } from '../../src/phases/prove.ts';
import { everyPlan, provedOf } from '../fixtures/every-plan.ts';
import { id, limits, seatChart, seatPiece, seatRoute, seatWorkshop } from '../fixtures/seat-piece.ts';

const SEAT: Proved = { part: seatPiece, route: seatRoute, chart: seatChart, workshop: seatWorkshop };
const SOUND: readonly Proved[] = [SEAT, ...everyPlan.flatMap(({ plan }) => plan.parts.map((planned) => provedOf(plan, planned)))];

// ---- any damage -----------------------------------------------------------------------------------------------------------------
type Change = { readonly what: 'shift' | 'from' | 'swap' | 'drop' | 'widen'; readonly i: number; readonly k: number; readonly by: number };
const change: fc.Arbitrary<Change> = fc.record({
  what: fc.constantFrom('shift', 'from', 'swap', 'drop', 'widen'),
  i: fc.nat(1000),
  k: fc.nat(1000),
  by: fc.integer({ min: -12_000, max: 12_000 }),
});

function apply(asked: Proved, { what, i, k, by }: Change): Proved {
  const { working } = asked.chart;
  const at = i % working.length;
  const onWorking = (alter: (one: Working) => Working): Proved => ({
    ...asked,
    chart: { ...asked.chart, working: working.map((one, n) => (n === at ? alter(one) : one)) },
  });
  if (what === 'shift') return onWorking((one) => ({ ...one, limits: moved(one.limits, by, by) }));
  if (what === 'widen') return onWorking((one) => ({ ...one, limits: moved(one.limits, Math.min(0, by), Math.max(0, by)) }));
  if (what === 'from') {
    const faces = asked.part.surfaces.filter((one) => one.shape === 'face');
    return onWorking((one) => (one.measures === 'length' ? { ...one, from: faces[k % faces.length]?.id ?? one.from } : one));
  }
  const setUps = asked.route.setUps.map((setUp, n) => {
    if (n !== i % asked.route.setUps.length || setUp.operations.length < 2) return setUp;
    const spot = k % (setUp.operations.length - 1);
    const [a, b] = [setUp.operations[spot] ?? '', setUp.operations[spot + 1] ?? ''];
    const rest = what === 'drop' ? [b] : [b, a];
    return { ...setUp, operations: [...setUp.operations.slice(0, spot), ...rest, ...setUp.operations.slice(spot + 2)] };
  });
  return { ...asked, route: { ...asked.route, setUps, befores: [] } };
}
const moved = (old: Working['limits'], lo: number, hi: number): Working['limits'] => {
  const [low, high] = [len(old.lo + lo), len(old.hi + hi)];
  const target = lo === hi ? len(old.target + lo) : old.target;
  return { ...old, lo: low, hi: high, target: len(Math.min(high, Math.max(low, target))) };
};

/** What a plain replay with these values shows to be wrong; empty where it shows nothing. Half a unit is what doubles may differ by. */
function wrongAt({ part, route, chart }: Proved, values: Readonly<Record<string, number>>): string {
  const run = replay(part, route, chart, values);
  if (run.steps.some((step) => step.lacks.length > 0)) return 'something is not there';
  const { ring, extents } = finishedOf(part, run.end);
  if (!sameRing(ring, part.ring)) return 'another ring';
  const out = part.dimensions.find(({ a, b, limits: of }) => {
    const [p, q] = [extents.get(a), extents.get(b)];
    return !p || !q || q.z[1] - p.z[0] > of.hi + 1 / 2 || q.z[0] - p.z[1] < of.lo - 1 / 2;
  });
  if (out) return `${out.id} is past its limits`;
  // of a blank nothing is left, which the ring has shown
  const wide = part.surfaces.find((one) => {
    if (one.shape === 'cylinder' && one.blank) return false;
    const level = one.shape === 'cylinder' ? extents.get(one.id)?.level : undefined;
    return one.shape === 'cylinder' && (!level || level[0] < one.size.lo - 1 / 2 || level[1] > one.size.hi + 1 / 2);
  });
  return wide ? `${wide.id} is past its limits` : '';
}
const cornerOf = ({ chart }: Proved, seed: number): Record<string, number> =>
  Object.fromEntries(
    chart.working.map((one, i) => [one.id, (seed * 2654435761 + i * 40503 * (seed + 1)) % 7 < 3 ? one.limits.lo : one.limits.hi]),
  );

describe('any damage', () => {
  it('that a plain replay shows is refused', () => {
    let [shown, sound] = [0, 0];
    fc.assert(
      fc.property(fc.nat(1000), fc.array(change, { minLength: 1, maxLength: 2 }), fc.nat(1000), (n, changes, seed) => {
        const before = SOUND[n % SOUND.length] ?? SEAT;
        const asked = changes.reduce(apply, before);
        const wrong = [{}, cornerOf(asked, seed), cornerOf(asked, seed + 1)]
          .map((values) => wrongAt(asked, values))
          .find((one) => one !== '');
        if (wrong === undefined) sound += 1;
        else {
          shown += 1;
          expect(prove(asked).holds, wrong).toBe(false);
        }
      }),
      { numRuns: 250, seed: 21 },
    );
    expect(shown).toBeGreaterThan(100);
    expect(sound).toBeGreaterThan(10);
  });
  it.each(SOUND.map((asked) => [asked.part.id, asked] as const))('none: %s is right at its targets and at any corner', (_, asked) => {
    for (let seed = 0; seed < 8; seed += 1) expect(wrongAt(asked, seed === 0 ? {} : cornerOf(asked, seed))).toBe('');
  });
});

// ---- a corner that the drawing allows -----------------------------------------------------------------------------------------------
/** The seat piece with other limits for a mouth, on the drawing and in the chart alike. */
function drawn(mouths: Readonly<Record<string, readonly [lo: number, hi: number, target: number]>>): Proved {
  const surfaces: Part['surfaces'] = seatPiece.surfaces.map((one) => {
    const of = mouths[one.id.slice(seatPiece.id.length + 1)];
    return of && one.shape === 'cone' ? { ...one, mouth: limits(...of) } : one;
  });
  const working = seatChart.working.map((one) => {
    const of = mouths[one.makes.slice(seatPiece.id.length + 1)];
    return of ? { ...one, limits: limits(...of) } : one;
  });
  return { ...SEAT, part: { ...seatPiece, surfaces }, chart: { ...seatChart, working } };
}

describe('a legal corner at which a small face vanishes', () => {
  it('is refused with that corner: the end between cone and chamfer', () => {
    const { claims, holds } = prove(drawn({ cone: [7.7, 8.45, 7.8], 'coupling.chamfer': [8.4, 8.6, 8.5] }));
    expect(holds).toBe(false);
    const stays = claims.find((one) => one.kind === 'every surface stays' && one.about === id('E'));
    expect([stays?.holds, stays?.grounds.corner]).toEqual([false, 'D.coupling.chamfer −, D.cone +']);
    const shape = claims.find((one) => one.kind === 'shape');
    expect([shape?.holds, shape?.grounds.same, String(shape?.grounds.corner)]).toEqual([false, true, 'D.coupling.chamfer −, D.cone +']);
    expect(claims.filter((one) => one.kind === 'dimension' && !one.holds)).toEqual([]);
  });
  it('is not refused where the same limits leave it a twentieth', () => {
    expect(prove(drawn({ cone: [7.7, 8.35, 7.8], 'coupling.chamfer': [8.4, 8.6, 8.5] })).holds).toBe(true);
  });
});
