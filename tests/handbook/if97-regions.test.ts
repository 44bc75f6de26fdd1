/** Water and steam against the release's own verification tables, to all nine printed digits. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { borderOfSteam, saturated, steam, type WaterState, water } from '../../src/handbook/if97-regions.ts';
import { saturationPressure } from '../../src/handbook/if97-saturation.ts';

type Row = readonly [kelvin: number, mpa: number, v: string, h: string, u: string, s: string, cp: string, w: string];
/** IAPWS R7-97(2012), table 5. */
const TABLE_5: readonly Row[] = [
  [300, 3, '0.100215168e-2', '115.331273', '112.324818', '0.392294792', '4.17301218', '1507.73921'],
  [300, 80, '0.971180894e-3', '184.142828', '106.448356', '0.368563852', '4.01008987', '1634.69054'],
  [500, 3, '0.120241800e-2', '975.542239', '971.934985', '2.58041912', '4.65580682', '1240.71337'],
];
/** IAPWS R7-97(2012), table 15. */
const TABLE_15: readonly Row[] = [
  [300, 0.0035, '39.4913866', '2549.91145', '2411.69160', '8.52238967', '1.91300162', '427.920172'],
  [700, 0.0035, '92.3015898', '3335.68375', '3012.62819', '10.1749996', '2.08141274', '644.289068'],
  [700, 30, '0.542946619e-2', '2631.49474', '2468.61076', '5.17540298', '10.3505092', '480.386523'],
];

describe('verification tables', () => {
  it.each(TABLE_5)('table 5: water at %d K, %d MPa', (kelvin, mpa, ...printed) =>
    expect(digits(water(kelvin, mpa))).toEqual(printed.map(nine)),
  );
  it.each(TABLE_15)('table 15: steam at %d K, %d MPa', (kelvin, mpa, ...printed) =>
    expect(digits(steam(kelvin, mpa))).toEqual(printed.map(nine)),
  );
});

it('equation 5: at 623.15 K region 2 ends at 16.5291643 MPa', () => expect(borderOfSteam(623.15)).toBeCloseTo(16.5291643, 7));

/** Computed for this project with another implementation: bar absolute; m3/kg; kg/m3; kJ/kg. */
const BOILING: readonly (readonly [bar: number, vg: number, rhoF: number, hf: number, hfg: number, hg: number])[] = [
  [3, 0.6057854854799808, 931.8132266804876, 561.4554102571082, 2163.436256299543, 2724.891666556651],
  [8, 0.24032752483478376, 897.0316593695322, 721.0178484197527, 2047.2846162439905, 2768.302464663743],
  [10, 0.1943488843273919, 887.1274516747791, 762.6828443354104, 2014.4366933492518, 2777.119537684662],
  [11, 0.17743577848620296, 882.6188886154331, 781.1977431114822, 1999.469412705387, 2780.667155816869],
];
describe('the boiling line', () => {
  it.each(BOILING)('%d bar absolute', (bar, vg, rhoF, hf, hfg, hg) => {
    const line = saturated(bar / 10);
    const ours = [line?.steam.volume, 1 / Number(line?.water.volume), line?.water.enthalpy, line?.latent, line?.steam.enthalpy].map(Number);
    for (const [i, theirs] of [vg, rhoF, hf, hfg, hg].entries()) expect(Number(ours[i]) / theirs).toBeCloseTo(1, 8);
  });
  it('water at 165 °C let down to the open flashes 12.3 % by mass (697.14, 419.06 and 2256.5 kJ/kg)', () => {
    const [hot, open] = [saturated(0.7), saturated(0.101325)];
    expect((Number(hot?.water.enthalpy) - Number(open?.water.enthalpy)) / Number(open?.latent)).toBeCloseTo(0.123, 3);
  });
  it('the two phases have the same Gibbs energy, within the formulation’s own tolerance', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 16, noNaN: true }), (mpa) => {
        const line = saturated(mpa);
        const [f, g] = [line?.water, line?.steam].map((s) => Number(s?.enthalpy) - Number(line?.temperature) * Number(s?.entropy));
        expect(Math.abs(Number(f) - Number(g))).toBeLessThan(0.05);
      }),
      { numRuns: 200 },
    );
  });
  it('steam is lighter than water, and energy is enthalpy less work', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 16, noNaN: true }), (mpa) => {
        const line = saturated(mpa);
        expect(Number(line?.steam.volume)).toBeGreaterThan(Number(line?.water.volume));
        for (const s of [line?.water, line?.steam])
          expect(Number(s?.enthalpy) - Number(s?.energy)).toBeCloseTo(mpa * Number(s?.volume) * 1000, 6);
      }),
      { numRuns: 100 },
    );
  });
  it('a state on the line may be asked for by its temperature', () => {
    const kelvin = 443.15;
    const mpa = saturationPressure(kelvin) ?? 0;
    expect(water(kelvin, mpa) && steam(kelvin, mpa)).toBeTruthy();
  });
});

describe('outside its regions it gives nothing', () => {
  it.each([
    [273, 1],
    [300, 0.001],
    [300, 101],
    [624, 20],
    [Number.NaN, 1],
    [300, Number.NaN],
  ])('no water at %d K, %d MPa', (kelvin, mpa) => expect(water(kelvin, mpa)).toBeUndefined());
  it.each([
    [300, 3],
    [630, 20],
    [1074, 1],
    [300, 0],
    [272, 0.0001],
    [900, 101],
    [700, Number.NaN],
  ])('no steam at %d K, %d MPa', (kelvin, mpa) => expect(steam(kelvin, mpa)).toBeUndefined());
  it.each([0.0006, 16.53, 17, -1])('no boiling line at %d MPa', (mpa) => expect(saturated(mpa)).toBeUndefined());
});

function digits(state: WaterState | undefined): readonly string[] {
  if (!state) throw new Error('no state');
  return [state.volume, state.enthalpy, state.energy, state.entropy, state.heat, state.sound].map((v) => v.toExponential(8));
}

function nine(printed: string): string {
  return Number(printed).toExponential(8);
}
