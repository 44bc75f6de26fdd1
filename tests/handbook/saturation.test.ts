/** Boiling point and pressure against the release's own verification tables, to all printed digits. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boilingPoint, saturationPressure, saturationTemperature } from '../../src/handbook/if97-saturation.ts';

describe('IAPWS R7-97(2012), region 4', () => {
  it.each([
    [300, '0.353658941e-2'],
    [500, '0.263889776e+1'],
    [600, '0.123443146e+2'],
  ])('table 35: %d K boils at %s MPa', (kelvin, printed) =>
    expect(nineDigits(saturationPressure(kelvin))).toBe(nineDigits(Number(printed))),
  );
  it.each([
    [0.1, '0.372755919e+3'],
    [1, '0.453035632e+3'],
    [10, '0.584149488e+3'],
  ])('table 36: %d MPa boils at %s K', (mpa, printed) => expect(nineDigits(saturationTemperature(mpa))).toBe(nineDigits(Number(printed))));
  it('each is the inverse of the other', () => {
    fc.assert(
      fc.property(fc.double({ min: 273.15, max: 647.096, noNaN: true }), (kelvin) => {
        const pressure = saturationPressure(kelvin) ?? 0;
        // the ends of the two ranges are rounded figures
        if (pressure >= 611.213e-6 && pressure <= 22.064) expect(saturationTemperature(pressure)).toBeCloseTo(kelvin, 5);
      }),
      { numRuns: 300 },
    );
  });
  it('rises', () => {
    const at = Array.from({ length: 200 }, (_, i) => saturationTemperature(0.001 + i * 0.11) ?? 0);
    expect(at.every((t, i) => i === 0 || t > (at[i - 1] ?? t))).toBe(true);
  });
  it.each([273.14, 647.1, 0, -1, Number.NaN])('nothing at %d K', (kelvin) => expect(saturationPressure(kelvin)).toBeUndefined());
  it.each([0.0006, 22.07, 0, -1, Number.NaN])('nothing at %d MPa', (mpa) => expect(saturationTemperature(mpa)).toBeUndefined());
});

describe('by the gauge', () => {
  it.each([
    [0, 100, 'water boils at 99.97 °C under the standard atmosphere (IF97)'],
    [7, 170.5, 'IF97'],
    [10, 184.1, 'IF97; the limit of brazed copper is printed as 177 °C'],
  ])('%d bar: about %d °C', (gauge, celsius) => expect(Math.abs(Number(boilingPoint(gauge)) - celsius)).toBeLessThan(0.35));
  /** Computed for this project with another implementation. bar absolute. */
  it.each([
    [3, 133.52535794654545],
    [8, 170.41351081360017],
    [10, 179.88563239146663],
    [11, 184.06967567794567],
  ])('%d bar absolute: %d °C', (bar, celsius) => expect(boilingPoint(bar - 1, 1)).toBeCloseTo(celsius, 6));
  it('a vacuum too deep gives nothing', () => expect(boilingPoint(-1.01)).toBeUndefined());
});

function nineDigits(value: number | undefined): string {
  return Number(value).toExponential(8);
}
