/** Water and steam: every verification table of the equations that are built, to all the digits printed (IAPWS R7-97(2012)). */
import { saturated, steam, type WaterState, water } from '../../../src/handbook/if97-regions.ts';
import { saturationPressure, saturationTemperature } from '../../../src/handbook/if97-saturation.ts';
import { type Figure, type Given, relative, there } from './figure.ts';

const FIELDS: readonly (keyof WaterState)[] = ['volume', 'enthalpy', 'energy', 'entropy', 'heat', 'sound'];
type State = (temperature: number, pressure: number) => WaterState | undefined;
const states = (of: State, temperature: number, pressure: number, printed: readonly number[]): readonly Given[] =>
  FIELDS.map((field, i) => [
    `${field} at ${temperature} K, ${pressure} MPa`,
    () => there(of(temperature, pressure), 'state')[field],
    printed[i] ?? Number.NaN,
  ]);
/** Nine figures are printed: half a unit of the ninth is at most 5e-9 of the whole. */
const NINE = 5e-9;

const line = (bar: number, printed: readonly number[]): readonly Given[] => {
  const at = () => there(saturated(bar / 10), `${bar} bar`);
  const got: readonly (readonly [string, () => number])[] = [
    ['boils at', () => at().temperature - 273.15],
    ['steam volume', () => at().steam.volume],
    ['water density', () => 1 / at().water.volume],
    ['water heat', () => at().water.enthalpy],
    ['latent', () => at().latent],
    ['steam heat', () => at().steam.enthalpy],
  ];
  return got.map(([what, value], i): Given => [`${bar} bar, ${what}`, value, printed[i] ?? Number.NaN]);
};

export const steamFigures: readonly Figure[] = [
  ...relative('IAPWS R7-97(2012) table 5, region 1', NINE, [
    ...states(water, 300, 3, [0.100215168e-2, 115.331273, 112.324818, 0.392294792, 4.17301218, 1507.73921]),
    ...states(water, 300, 80, [0.971180894e-3, 184.142828, 106.448356, 0.368563852, 4.01008987, 1634.69054]),
    ...states(water, 500, 3, [0.1202418e-2, 975.542239, 971.934985, 2.58041912, 4.65580682, 1240.71337]),
  ]),
  ...relative('IAPWS R7-97(2012) table 15, region 2', NINE, [
    ...states(steam, 300, 0.0035, [39.4913866, 2549.91145, 2411.6916, 8.52238967, 1.91300162, 427.920172]),
    ...states(steam, 700, 0.0035, [92.3015898, 3335.68375, 3012.62819, 10.1749996, 2.08141274, 644.289068]),
    ...states(steam, 700, 30, [0.542946619e-2, 2631.49474, 2468.61076, 5.17540298, 10.3505092, 480.386523]),
  ]),
  ...relative('IAPWS R7-97(2012) table 35, saturation pressure', NINE, [
    ['300 K', () => there(saturationPressure(300), '300 K'), 0.353658941e-2],
    ['500 K', () => there(saturationPressure(500), '500 K'), 0.263889776e1],
    ['600 K', () => there(saturationPressure(600), '600 K'), 0.123443146e2],
  ]),
  ...relative('IAPWS R7-97(2012) table 36, saturation temperature', NINE, [
    ['0.1 MPa', () => there(saturationTemperature(0.1), '0.1 MPa'), 0.372755919e3],
    ['1 MPa', () => there(saturationTemperature(1), '1 MPa'), 0.453035632e3],
    ['10 MPa', () => there(saturationTemperature(10), '10 MPa'), 0.584149488e3],
  ]),
  ...relative('IF97 regions 1, 2 and 4, worked out with another library', 1e-6, [
    ...line(3, [133.52535794654545, 0.6057854854799808, 931.8132266804876, 561.4554102571082, 2163.436256299543, 2724.891666556651]),
    ...line(8, [170.41351081360017, 0.24032752483478376, 897.0316593695322, 721.0178484197527, 2047.2846162439905, 2768.302464663743]),
    ...line(10, [179.88563239146663, 0.1943488843273919, 887.1274516747791, 762.6828443354104, 2014.4366933492518, 2777.119537684662]),
    ...line(11, [184.06967567794567, 0.17743577848620296, 882.6188886154331, 781.1977431114822, 1999.469412705387, 2780.667155816869]),
  ]),
];
