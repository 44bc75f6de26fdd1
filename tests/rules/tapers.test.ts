/** Tapers over the whole length of their piece: no land is left, the large end is proved, and whatever is planned is proved. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import type { Cone, Cylinder } from '../../src/model/part.ts';
import { type Proved, prove } from '../../src/phases/prove.ts';
import { ownPart, planOwn } from '../fixtures/own-part.ts';

const part = (...outside: readonly string[]): readonly string[] => [
  'first: { letter: A }',
  'second: { letter: B }',
  'outside:',
  ...outside.map((line) => `  - { ${line} }`),
];
const plug = (diameter: string, tip: string, more = '') =>
  part(
    `name: plug, diameter: ${diameter}, length: 20 ±0.1, cone: { at: first, length: 20 mm, tip: ${tip} }${more}`,
    'name: head, diameter: 15 mm, length: 12 mm',
  );
const coneOf = (lines: readonly string[]): Cone => ownPart(planOwn(lines)).part.surfaces.find((s): s is Cone => s.shape === 'cone') as Cone;

describe('a taper that runs out at a collar', () => {
  const planned = ownPart(planOwn(plug('11 mm', '8.5 ±0.05')));
  it('is cut from a blank over its large end, of which nothing is left', () => {
    const blank = planned.part.surfaces.find((s): s is Cylinder => s.shape === 'cylinder' && s.blank === true);
    const cone = planned.part.surfaces.find((s): s is Cone => s.shape === 'cone');
    expect(blank && cone?.ends && blank.size.lo > cone.ends.size.hi).toBe(true);
    expect(planned.part.ring).not.toContain(blank?.id);
    expect(planned.proof.holds).toBe(true);
  });
  // half angle atan(2.5 / 40) = 3.5763 degrees, set to 3.58; large end = tip + 2 tan(3.58 deg) x length, at the limits of both
  it('has the large end that tip, angle and length leave it', () => {
    const slope = 2 * Math.tan((3.58 * Math.PI) / 180);
    const claim = planned.proof.claims.find((c) => c.about === 'part/plug.cone.large-end');
    expect(claim?.worst?.lo).toBe(Math.round(mm(8.45) + slope * mm(19.9)));
    expect(claim?.worst?.hi).toBe(Math.round(mm(8.55) + slope * mm(20.1)));
    expect(claim?.holds).toBe(true);
  });
  it('lets the tip follow where only the large end has limits', () => {
    const cone = coneOf(plug('11 ±0.09', '8.5 mm'));
    expect([cone.mouth.lo > mm(8.4), cone.mouth.hi < mm(8.6)]).toEqual([true, true]);
    expect(cone.ends && cone.ends.size.lo >= mm(10.91) && cone.ends.size.hi <= mm(11.09)).toBe(true);
  });
  it('is refused by the proof where the tip comes out larger', () => {
    const { route, chart, proof } = planned;
    expect(proof.holds).toBe(true);
    const working = chart.working.map((one) =>
      one.makes === 'part/plug.cone'
        ? {
            ...one,
            limits: { ...one.limits, lo: len(one.limits.lo + 2000), hi: len(one.limits.hi + 2000), target: len(one.limits.target + 2000) },
          }
        : one,
    );
    const asked: Proved = { part: planned.part, route, chart: { ...chart, working }, workshop: WORKSHOP };
    const failed = prove(asked).claims.filter((c) => !c.holds);
    expect(failed.some((c) => c.kind === 'dimension' && c.about === 'part/plug.cone.large-end')).toBe(true);
  });
});
const WORKSHOP = (() => {
  const { plan } = planOwn(plug('11 mm', '8.5 ±0.05'));
  if (!plan) throw new Error('no plan');
  return plan.workshop;
})();

describe('two tapers that lean against each other', () => {
  const lines = part(
    'name: foot, diameter: 6 h9, length: 12 mm',
    'name: rise, diameter: 10 mm, length: 14 mm, cone: { at: first, length: 14 mm, tip: 7.5 ±0.05 }',
    'name: fall, diameter: 10 mm, length: 14 mm, cone: { at: second, length: 14 mm, tip: 7 ±0.05 }',
    'name: top, diameter: 6 h9, length: 12 mm',
  );
  it('meet in an edge, at every corner of their limits', () => {
    const { part: made, proof } = ownPart(planOwn(lines));
    const at = made.ring.indexOf('part/rise.cone');
    expect(made.ring[at + 1]).toBe('part/fall.cone');
    expect(proof.holds).toBe(true);
    expect(proof.claims.filter((c) => c.about.endsWith('.large-end')).map((c) => c.holds)).toEqual([true, true]);
  });
});

describe('any taper between a stud and a head', () => {
  const tenths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 10);
  it('is refused with a reason, or planned and proved', () => {
    let proved = 0;
    const sizes = fc.record({
      stud: tenths(40, 70),
      step: tenths(5, 20),
      rise: tenths(2, 40),
      long: fc.integer({ min: 6, max: 24 }),
      over: tenths(2, 30),
    });
    fc.assert(
      fc.property(sizes, ({ stud, step, rise, long, over }) => {
        const show = (n: number): string => String(Math.round(n * 10) / 10);
        const [tip, large] = [stud + step, stud + step + rise];
        const compiled = planOwn(
          part(
            `name: stud, diameter: ${show(stud)} mm, length: 8 mm`,
            `name: plug, diameter: ${show(large)} mm, length: ${long} mm, cone: { at: first, length: ${long} mm, tip: ${show(tip)} ±0.05 }`,
            `name: head, diameter: ${show(large + over)} mm, length: 12 mm`,
          ),
        );
        if (!compiled.plan) return compiled.found.length > 0;
        proved += 1;
        return compiled.plan.parts.every(({ proof }) => proof.holds);
      }),
      { numRuns: 12, seed: 9 },
    );
    expect(proved).toBeGreaterThan(3);
  });
});
