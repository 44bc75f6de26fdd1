/**
 * Parts made up of features at random (tapers, divided threads, chamfered grooves, wells with radii and grooves, counterbores): each is
 * refused with a code, or planned and proved. Nothing throws.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planOwn } from '../fixtures/own-part.ts';

const tenths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 10);
const show = (n: number): string => String(Math.round(n * 10) / 10);
type Line = { readonly feature: string; readonly line: string };

/** Smaller than the collar that follows: a stem, a taper, a thread in one piece or two, a spigot with a ring's groove. */
const ends = fc.oneof(
  fc
    .record({ d: tenths(50, 90), long: fc.integer({ min: 5, max: 14 }), radius: tenths(3, 15) })
    .map(({ d, long, radius }): readonly Line[] => [
      {
        feature: 'stem',
        line: `name: stem, diameter: ${show(d)} mm, length: ${long} mm, radius: ${show(radius)} mm, radius-at: first, fillet: 0.5 ±0.1`,
      },
    ]),
  fc
    .record({ tip: tenths(45, 70), rise: tenths(3, 30), long: fc.integer({ min: 5, max: 16 }) })
    .map(({ tip, rise, long }): readonly Line[] => [
      {
        feature: 'taper',
        line: `name: taper, diameter: ${show(tip + rise)} mm, length: ${long} mm, cone: { at: first, length: ${long} mm, tip: ${show(tip)} ±0.05 }`,
      },
    ]),
  fc
    .record({ floor: tenths(60, 85), wide: tenths(20, 30), long: fc.integer({ min: 4, max: 9 }) })
    .map(({ floor, wide, long }): readonly Line[] => [
      { feature: 'divided', line: `name: front, thread: M10x1, length: ${long} mm` },
      { feature: 'divided', line: `name: gap, diameter: ${show(floor)} mm, length: ${show(wide)} mm, groove: yes` },
      { feature: 'divided', line: `name: back, thread: M10x1, length: ${long + 2} mm` },
    ]),
  fc.record({ high: tenths(3, 12), wide: tenths(20, 40), floor: tenths(50, 80) }).map(({ high, wide, floor }): readonly Line[] => [
    { feature: 'ringed', line: `name: tip, diameter: 10 h9, length: 5 mm, chamfer: ${show(high)} ±0.1, chamfer-at: second` },
    { feature: 'ringed', line: `name: ring, diameter: ${show(floor)} mm, length: ${show(wide)} mm, groove: yes` },
    { feature: 'ringed', line: 'name: land, diameter: 10 h9, length: 6 mm' },
  ]),
);

/** From the other end, in a body of 18 mm that is 24 long. */
const wells = fc.oneof(
  fc.constant([] as readonly Line[]),
  fc
    .record({ d: tenths(60, 130), deep: fc.integer({ min: 4, max: 14 }), fillet: tenths(3, 30), mouth: tenths(3, 20) })
    .map(({ d, deep, fillet, mouth }): readonly Line[] => [
      {
        feature: 'well',
        line: `name: well, diameter: ${show(d)} mm, from: second, depth: ${deep} mm, bottom: flat, fillet: ${show(fillet)} ±0.1, radius: ${show(mouth)} ±0.1`,
      },
    ]),
  fc
    .record({
      d: tenths(80, 120),
      deep: fc.integer({ min: 10, max: 16 }),
      wide: tenths(20, 30),
      more: tenths(5, 25),
      at: fc.integer({ min: 5, max: 12 }),
    })
    .map(({ d, deep, wide, more, at }): readonly Line[] => [
      { feature: 'recess', line: `name: well, diameter: ${show(d)} mm, from: second, depth: ${deep} mm, bottom: flat` },
      { feature: 'recess', line: `name: ring-in, diameter: ${show(d + more)} mm, from: second, depth: ${at} mm, groove: ${show(wide)} mm` },
    ]),
  fc.record({ wide: tenths(60, 100), deep: fc.integer({ min: 2, max: 8 }) }).map(({ wide, deep }): readonly Line[] => [
    { feature: 'stepped', line: `name: mouth, diameter: ${show(wide)} mm, from: second, depth: ${deep} mm, bottom: flat, role: clearance` },
    { feature: 'stepped', line: 'name: bore, diameter: 4 mm, from: second, depth: 16 mm, role: clearance' },
  ]),
);

describe('any part of these features', () => {
  it('is refused with a code, or planned and proved', () => {
    const proved = new Map<string, number>();
    let refused = 0;
    fc.assert(
      fc.property(ends, wells, (end, inside) => {
        const lines = [
          ...['first: { letter: A }', 'second: { letter: B }', 'outside:'],
          ...end.map(({ line }) => `  - { ${line} }`),
          '  - { name: body, diameter: 18 mm, length: 24 mm, chamfer: 0.5 mm, chamfer-at: first }',
          ...(inside.length > 0 ? ['inside:', ...inside.map(({ line }) => `  - { ${line} }`)] : []),
        ];
        const { plan, found } = planOwn(lines);
        if (!plan) {
          refused += 1;
          expect(found.filter((one) => one.severity === 'error' && one.code !== '').length).toBeGreaterThan(0);
          return;
        }
        for (const { part, proof } of plan.parts)
          expect(
            proof.claims.filter((one) => !one.holds).map((one) => `${part.id}: ${one.kind} ${one.about}`),
            lines.join('\n'),
          ).toEqual([]);
        for (const feature of new Set([...end, ...inside].map((one) => one.feature))) proved.set(feature, (proved.get(feature) ?? 0) + 1);
      }),
      { numRuns: 40, seed: 41, endOnFailure: true },
    );
    expect([...proved.keys()].sort()).toEqual(['divided', 'recess', 'ringed', 'stem', 'stepped', 'taper', 'well']);
    expect(refused).toBeGreaterThan(0);
  });
});
