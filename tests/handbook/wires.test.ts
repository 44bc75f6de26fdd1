/** Measuring over wires, and what threads carry, against printed figures. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inch, len, mm } from '../../src/base/units.ts';
import { metricThread } from '../../src/handbook/iso965-metric.ts';
import { basicShear, insideShear, outsideShear, stressArea } from '../../src/handbook/thread-strength.ts';
import { bestWire, overWires, pitchDiameterOf, usableWires, wireFactors } from '../../src/handbook/wires.ts';

/** The last of 47.5 degrees is printed cut off. */
const FACTORS: readonly (readonly [angle: number, factor: 'wire' | 'pitch' | 'best', printed: number, within: number, source: string])[] = [
  [60, 'wire', 3, 0.00001, 'Thread Check catalogue p. 130'],
  [60, 'pitch', 0.866025, 0.000001, 'Thread Check catalogue p. 130'],
  [60, 'best', 0.57735, 0.00001, 'Thread Check catalogue p. 130'],
  [55, 'wire', 3.16568, 0.00001, 'Thread Check catalogue p. 130'],
  [55, 'pitch', 0.960491, 0.000001, 'Thread Check catalogue p. 130'],
  [55, 'best', 0.563691, 0.00001, 'Thread Check catalogue p. 130'],
  [47.5, 'wire', 3.4829, 0.00006, 'Thread Check catalogue p. 130'],
  [47.5, 'pitch', 1.13634, 0.00001, 'Thread Check catalogue p. 130'],
  [47.5, 'best', 0.54626, 0.00001, 'Thread Check catalogue p. 130'],
];
describe('over three wires', () => {
  it.each(FACTORS)('%d degrees: %s %d (to %d, %s)', (angle, factor, printed, within) => {
    expect(Math.abs(wireFactors(angle)[factor] - printed)).toBeLessThan(within);
  });
  it.each([
    ['F. D. Jones, Turning and Boring: 1 1/2 in 6, wire 0.140', 1.39175, 0.14, 6, 1.6674],
    ['neme-s.org: 7/16 in 14, wire 0.045', 0.39111, 0.045, 14, 0.464],
  ])('%s', (_, d2, wire, tpi, printed) => {
    expect(Math.abs(overWires(inch(d2), inch(1 / tpi), inch(wire), 60) - inch(printed))).toBeLessThan(inch(0.0005));
  });
  it.each([
    [60, 20, 0.0433, "Machinery's Handbook 31 p. 2129"],
    [60, 28, 0.03093, "Machinery's Handbook 31 p. 2129"],
    [60, 40, 0.02165, "Machinery's Handbook 31 p. 2129"],
    [55, 20, 0.04803, "Machinery's Handbook 31 p. 2129"],
    [55, 32, 0.03002, "Machinery's Handbook 31 p. 2129"],
    [55, 40, 0.02401, "Machinery's Handbook 31 p. 2129"],
  ])('%d degrees, %d an inch: constant %d (%s)', (angle, tpi, printed) =>
    expect(Math.abs(wireFactors(angle).pitch / tpi - printed)).toBeLessThan(0.000011),
  );
  it('best wire of 8 an inch is 0.072 in (US Army OD1645)', () =>
    expect(Math.abs(bestWire(inch(1 / 8), 60) - inch(0.072))).toBeLessThan(inch(0.0005)));
  it('reading and pitch diameter are inverse', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20_000, max: 300_000 }).map(len),
        fc.integer({ min: 2500, max: 30_000 }).map(len),
        fc.constantFrom(60, 55, 47.5),
        (d2, pitch, angle) => {
          const wire = bestWire(pitch, angle);
          expect(Math.abs(pitchDiameterOf(overWires(d2, pitch, wire, angle), pitch, wire, angle) - d2)).toBeLessThanOrEqual(1);
          expect(overWires(d2, pitch, wire, angle)).toBeGreaterThan(d2);
        },
      ),
      { numRuns: 100 },
    );
  });
  it('the best wire is usable; an angle that was not published gives none', () => {
    for (const angle of [60, 55]) {
      const usable = usableWires(mm(1), angle);
      expect(usable && usable.lo < bestWire(mm(1), angle) && bestWire(mm(1), angle) < usable.hi).toBe(true);
    }
    expect(usableWires(mm(1), 47.5)).toBeUndefined();
    expect(() => wireFactors(0)).toThrow(RangeError);
  });
});

/** Form of FED-STD-H28/2B on basic sizes; mm and mm2, derived. */
const AREAS: readonly (readonly [
  name: string,
  nominal: number,
  pitch: number,
  engaged: number,
  outside: number,
  inside: number,
  stress: number,
])[] = [
  ['M10x1', 10, 1, 5, 105.05646894905101, 137.44467380264706, 64.49401318171942],
  ['M6', 6, 1, 6, 69.51908199726003, 98.96016513790589, 20.12337748036676],
  ['M12x1', 12, 1, 6, 154.3421031096618, 197.92033027581178, 96.10410899316513],
];
describe('what a thread carries', () => {
  it.each(AREAS)('%s', (name, nominal, pitch, engaged, outside, inside, stress) => {
    const areas = basicShear(mm(nominal), mm(pitch), mm(engaged));
    expect(areas.outside / outside).toBeCloseTo(1, 5);
    expect(areas.inside / inside).toBeCloseTo(1, 5);
    expect(stressArea(mm(nominal), mm(pitch)) / stress).toBeCloseTo(1, 5);
    const [bolt, nut] = [metricThread(name, '6g'), metricThread(name, '6H')];
    if (!bolt || !nut) throw new Error(name);
    // at the worst of limits there is less of it, but not much less
    for (const [worst, basic] of [
      [outsideShear(bolt, nut, mm(engaged)), areas.outside],
      [insideShear(bolt, nut, mm(engaged)), areas.inside],
    ] as const) {
      expect(worst).toBeLessThan(basic);
      expect(worst).toBeGreaterThan(basic * 0.6);
    }
  });
  it('M12x1, 6 mm engaged, 20 bar on its core: a hundred times over (gunmetal, 165 MPa in shear)', () => {
    const force = (Math.PI / 4) * 10.917 ** 2 * 2;
    expect((basicShear(mm(12), mm(1), mm(6)).outside * 165) / force).toBeGreaterThan(130);
  });
});
