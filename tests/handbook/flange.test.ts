/** Bending of a ring-shaped plate: the table's figures, a fit of them that is published, and the plate's own equation gone along step by step. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plateStress, ringPlateFactor, ringPlateStress } from '../../src/handbook/flange.ts';

describe('moment round the inner edge of a ring-shaped plate, outer edge simply supported, load on the inner edge', () => {
  // Roark's Formulas for Stress and Strain, table 11.2, case 1a, load at the inner edge, nu = 0.3: from memory
  it.each([
    [0.1, 0.3374],
    [0.3, 0.621],
    [0.5, 0.7757],
    [0.7, 0.8814],
    [0.9, 0.9638],
  ])('inner over outer radius %d: %d', (share, factor) => {
    expect(ringPlateFactor(1, share)).toBeCloseTo(factor, 3);
  });

  // calcs.org.uk, PROC003: K fitted by a polynomial; its example a = 33.25, b = 13 has K = 0.7015
  it('agrees with a published fit to a hundredth, and with its example', () => {
    const curve = (x: number): number => -1.411 * x ** 4 + 3.923 * x ** 3 - 4.323 * x ** 2 + 2.694 * x + 0.1075;
    for (const x of [0.1, 0.2, 0.3, 0.391, 0.5, 0.7, 0.9]) expect(Math.abs(ringPlateFactor(1, x) - curve(x))).toBeLessThan(0.01);
    expect(Math.abs(ringPlateFactor(33.25, 13) - 0.7015)).toBeLessThan(0.002);
  });

  it('is what the equation of the plate gives, walked outward from the inner edge', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.15, max: 0.9, noNaN: true }), (share) => {
        expect(ringPlateFactor(1, share)).toBeCloseTo(walked(share), 3);
      }),
      { numRuns: 25 },
    );
  });

  it('grows with the load and falls with the square of the thickness', () => {
    const plate = { outer: 10, inner: 4, thick: 4 };
    const one = ringPlateStress(plate, 100);
    expect(ringPlateStress(plate, 200)).toBeCloseTo(2 * one, 9);
    expect(ringPlateStress({ ...plate, thick: 2 }, 100)).toBeCloseTo(4 * one, 9);
    expect(plateStress(2.204, 2.5)).toBeCloseTo(2.116, 3); // the same example: 6 M / t^2
    expect(() => ringPlateFactor(4, 4)).toThrow(RangeError);
  });
});

/**
 * Slope f of the plate: f'' + f'/r - f/r^2 = -Q / D with Q = w b / r; radial moment D (f' + nu f / r) nothing at both edges. Two walks
 * from the inner edge by the method of Runge and Kutta, joined so that the outer edge has none. D = w = 1.
 */
function walked(b: number): number {
  const nu = 0.3;
  const walk = (start: number, load: number) => {
    let [f, g] = [start, (-nu * start) / b];
    const steps = 4000;
    const h = (1 - b) / steps;
    const slope = (r: number, f0: number, g0: number): readonly [number, number] => [g0, -g0 / r + f0 / r ** 2 - (load * b) / r];
    for (let i = 0; i < steps; i++) {
      const r = b + i * h;
      const [a1, b1] = slope(r, f, g);
      const [a2, b2] = slope(r + h / 2, f + (h / 2) * a1, g + (h / 2) * b1);
      const [a3, b3] = slope(r + h / 2, f + (h / 2) * a2, g + (h / 2) * b2);
      const [a4, b4] = slope(r + h, f + h * a3, g + h * b3);
      f += (h / 6) * (a1 + 2 * a2 + 2 * a3 + a4);
      g += (h / 6) * (b1 + 2 * b2 + 2 * b3 + b4);
    }
    return g + nu * f;
  };
  const [loaded, free] = [walk(0, 1), walk(1, 0)];
  const start = -loaded / free;
  return Math.abs(start / b + nu * ((-nu * start) / b));
}
