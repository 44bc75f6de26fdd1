/** Inch, BA and pipe threads against what is printed of them. */
import { inch, len, mm, toMm } from '../../../src/base/units.ts';
import { engagement } from '../../../src/handbook/metric-tapping.ts';
import { basicShearOf } from '../../../src/handbook/thread-strength.ts';
import { thread } from '../../../src/handbook/threads.ts';
import { pitchTolerance2A } from '../../../src/handbook/unified-threads.ts';
import { type Figure, figures, type Given, relative, there } from './figure.ts';

const of = (name: string) => there(thread(name), name).thread;
type Basic = 'major' | 'pitchDiameter' | 'minor';
type Side = 'outside' | 'inside';
const inches = (length: number): number => length / inch(1);
const basicInch = (name: string, part: Basic, printed: number): Given => [`${name} ${part}`, () => inches(of(name).basic[part]), printed];
const basicMm = (name: string, part: Basic, printed: number): Given => [`${name} ${part}`, () => toMm(of(name).basic[part]), printed];
const limit = (name: string, side: Side, cls: string, part: Basic, end: 'lo' | 'hi') => () =>
  there(of(name).limits(side, cls), `${name} ${cls}`)[part][end];

/** BSW: effective, minor, inches. (1/16: the list prints a minor of 0.0413, the form gives 0.0412.) */
const BSW: readonly (readonly [name: string, effective: number, minor: number])[] = [
  ['3/32 BSW', 0.0804, 0.0671],
  ['1/8 BSW', 0.109, 0.093],
  ['5/32 BSW', 0.1362, 0.1162],
  ['3/16 BSW', 0.1608, 0.1341],
  ['7/32 BSW', 0.1921, 0.1654],
  ['1/4 BSW', 0.218, 0.186],
  ['5/16 BSW', 0.2769, 0.2414],
  ['3/8 BSW', 0.335, 0.295],
  ['7/16 BSW', 0.3918, 0.346],
  ['1/2 BSW', 0.4466, 0.3933],
];
/** BA: pitch, major, effective, minor, mm. */
const BA: readonly (readonly [number: number, pitch: number, major: number, effective: number, minor: number])[] = [
  [0, 1, 6, 5.4, 4.8],
  [1, 0.9, 5.3, 4.76, 4.22],
  [2, 0.81, 4.7, 4.215, 3.73],
  [3, 0.73, 4.1, 3.66, 3.22],
  [4, 0.66, 3.6, 3.205, 2.81],
  [5, 0.59, 3.2, 2.845, 2.49],
  [6, 0.53, 2.8, 2.48, 2.16],
  [7, 0.48, 2.5, 2.21, 1.92],
  [8, 0.43, 2.2, 1.94, 1.68],
  [9, 0.39, 1.9, 1.665, 1.43],
  [10, 0.35, 1.7, 1.49, 1.28],
  [11, 0.31, 1.5, 1.315, 1.13],
  [12, 0.28, 1.3, 1.13, 0.96],
  [13, 0.25, 1.2, 1.05, 0.9],
  [14, 0.23, 1, 0.86, 0.72],
  [15, 0.21, 0.9, 0.775, 0.65],
  [16, 0.19, 0.79, 0.675, 0.56],
];
/** G: major, pitch diameter, least pitch diameter A, B, greatest of the nut; minor least, greatest, mm. */
const PIPE: readonly (readonly [
  name: string,
  d: number,
  d2: number,
  a: number,
  b: number,
  nut: number,
  least: number,
  greatest: number,
])[] = [
  ['G1/16', 7.723, 7.142, 7.035, 6.928, 7.249, 6.561, 6.843],
  ['G1/8', 9.728, 9.147, 9.04, 8.933, 9.254, 8.566, 8.848],
  ['G1/4', 13.157, 12.301, 12.176, 12.051, 12.426, 11.445, 11.89],
  ['G3/8', 16.662, 15.806, 15.681, 15.556, 15.931, 14.95, 15.395],
  ['G1/2', 20.955, 19.793, 19.651, 19.509, 19.935, 18.631, 19.172],
  ['G5/8', 22.911, 21.749, 21.607, 21.465, 21.891, 20.587, 21.128],
  ['G3/4', 26.441, 25.279, 25.137, 24.995, 25.421, 24.117, 24.658],
  ['G1', 33.249, 31.77, 31.59, 31.41, 31.95, 30.291, 30.931],
];
/** Unified 2B, least and greatest minor diameter, inches, as printed. */
const MINOR_2B: readonly (readonly [name: string, least: number, greatest: number])[] = [
  ['#0-80 UNF', 0.0465, 0.0514],
  ['#1-64 UNC', 0.0561, 0.0623],
  ['#1-72 UNF', 0.058, 0.0635],
  ['#2-56 UNC', 0.0667, 0.0737],
  ['#2-64 UNF', 0.0691, 0.0753],
  ['#3-48 UNC', 0.0764, 0.0845],
  ['#3-56 UNF', 0.0797, 0.0865],
  ['#4-40 UNC', 0.0849, 0.0939],
  ['#4-48 UNF', 0.0894, 0.0968],
  ['#5-40 UNC', 0.0979, 0.1062],
  ['#5-44 UNF', 0.1004, 0.1079],
  ['#6-32 UNC', 0.104, 0.114],
  ['#6-40 UNF', 0.111, 0.119],
  ['#8-32 UNC', 0.13, 0.139],
  ['#8-36 UNF', 0.134, 0.142],
  ['#10-24 UNC', 0.145, 0.156],
  ['#10-32 UNF', 0.156, 0.164],
  ['#12-24 UNC', 0.171, 0.181],
  ['#12-28 UNF', 0.177, 0.186],
  ['#12-32 UNEF', 0.182, 0.19],
  ['1/4-20 UNC', 0.196, 0.207],
  ['1/4-28 UNF', 0.211, 0.22],
  ['1/4-32 UNEF', 0.216, 0.224],
  ['5/16-18 UNC', 0.252, 0.265],
  ['5/16-24 UNF', 0.267, 0.277],
  ['5/16-32 UNEF', 0.279, 0.286],
  ['3/8-16 UNC', 0.307, 0.321],
  ['3/8-24 UNF', 0.33, 0.34],
  ['3/8-32 UNEF', 0.341, 0.349],
  ['7/16-14 UNC', 0.36, 0.376],
  ['7/16-20 UNF', 0.383, 0.395],
  ['7/16-28 UNEF', 0.399, 0.407],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: 0.434 is a diameter as printed
  ['1/2-13 UNC', 0.417, 0.434],
  ['1/2-20 UNF', 0.446, 0.457],
  ['1/2-28 UNEF', 0.461, 0.47],
  ['9/16-12 UNC', 0.472, 0.49],
  ['9/16-18 UNF', 0.502, 0.515],
];
/** Thread, drill in inches, share of 3/4 H printed. */
const SHARES: readonly (readonly [name: string, drill: string, mm: number, share: number])[] = [
  ['#0-80', '3/64 in', 1.191, 81],
  ['#2-56', '#50', 1.778, 69],
  ['#4-40', '#43', 2.261, 71],
  ['#5-40', '#38', 2.578, 72],
  ['#6-32', '#36', 2.705, 78],
  ['#6-32', '#35', 2.794, 69],
  ['#8-32', '#29', 3.454, 69],
  ['#10-24', '#25', 3.797, 75],
  ['#10-32', '#21', 4.039, 76],
  ['#10-32', '#20', 4.089, 71],
  ['#12-24', '#16', 4.496, 72],
  ['1/4-20', '#7', 5.105, 75],
  ['1/4-28', '#3', 5.41, 80],
  ['1/4-28', '7/32 in', 5.556, 67],
  ['1/4-32', '7/32 in', 5.556, 77],
  ['1/4-32', '#2', 5.613, 71],
  ['5/16-18', 'F', 6.528, 77],
  ['5/16-18', 'G', 6.629, 71],
  ['5/16-24', 'I', 6.909, 75],
  ['5/16-32', '9/32 in', 7.144, 77],
  ['3/8-16', '5/16 in', 7.938, 77],
  ['3/8-24', 'Q', 8.433, 79],
  ['3/8-24', 'R', 8.611, 67],
  ['3/8-32', '11/32 in', 8.731, 77],
  ['7/16-14', 'T', 9.093, 86],
  ['7/16-14', '23/64 in', 9.128, 84],
  ['7/16-20', 'W', 9.804, 79],
  ['7/16-20', '25/64 in', 9.922, 72],
  ['1/2-13', '27/64 in', 10.716, 78],
  ['1/2-20', '29/64 in', 11.509, 72],
];

export const inchFigures: readonly Figure[] = [
  ...figures(
    'BS 84 basic sizes, trfastings.com knowledge base',
    0.00006,
    BSW.flatMap(([name, effective, minor]) => [basicInch(name, 'pitchDiameter', effective), basicInch(name, 'minor', minor)]),
  ),
  ...figures(
    "BS 93:1951, Machinery's Handbook 31 p. 2115",
    0.0005,
    BA.flatMap(([number, pitch, major, effective, minor]) => [
      [`${number}BA pitch`, () => toMm(of(`${number}BA`).pitch), pitch],
      basicMm(`${number}BA`, 'major', major),
      basicMm(`${number}BA`, 'pitchDiameter', effective),
      basicMm(`${number}BA`, 'minor', minor),
    ]),
  ),
  ...figures(
    'ISO 228-1, threadlib, BSPP_thread.csv',
    0.0005,
    PIPE.flatMap(([name, d, d2, a, b, nut]) => [
      basicMm(name, 'major', d),
      basicMm(name, 'pitchDiameter', d2),
      [`${name} A`, () => toMm(limit(name, 'outside', 'A', 'pitchDiameter', 'lo')()), a],
      [`${name} B`, () => toMm(limit(name, 'outside', 'B', 'pitchDiameter', 'lo')()), b],
      [`${name} nut`, () => toMm(limit(name, 'inside', 'nut', 'pitchDiameter', 'hi')()), nut],
    ]),
  ),
  ...figures(
    "a tap maker's wall chart, doczz 116624",
    0.0005,
    PIPE.flatMap(([name, , , , , , least, greatest]) => [
      [`${name} D1 least`, () => toMm(limit(name, 'inside', 'nut', 'minor', 'lo')()), least],
      [`${name} D1 greatest`, () => toMm(limit(name, 'inside', 'nut', 'minor', 'hi')()), greatest],
    ]),
  ),
  ...figures(
    'FED-STD-H28/2B (1991), table II.A.1, pp. 15-17',
    0.00006,
    MINOR_2B.flatMap(([name, least, greatest]) => [
      [`${name}-2B least`, () => inches(limit(name, 'inside', '2B', 'minor', 'lo')()), least],
      [`${name}-2B greatest`, () => inches(limit(name, 'inside', '2B', 'minor', 'hi')()), greatest],
    ]),
  ),
  ...figures(
    'FED-STD-H28/2B (1991), 20.2.3, share of 3/4 H',
    0.6,
    SHARES.map(([name, drill, size, share]): Given => [`${name} with ${drill}`, () => engagement(of(name), mm(size), '3/4 H'), share]),
  ),
  ...figures("ASME B1.1 worked example, Machinery's Handbook 31, 1/2-28 UNEF-2A", 0.00006, [
    ['greatest major', () => inches(limit('1/2-28 UNEF', 'outside', '2A', 'major', 'hi')()), 0.4989],
    ['least major', () => inches(limit('1/2-28 UNEF', 'outside', '2A', 'major', 'lo')()), 0.4924],
    ['greatest pitch diameter', () => inches(limit('1/2-28 UNEF', 'outside', '2A', 'pitchDiameter', 'hi')()), 0.4757],
    ['least pitch diameter', () => inches(limit('1/2-28 UNEF', 'outside', '2A', 'pitchDiameter', 'lo')()), 0.472],
    ['greatest minor, rounded root', () => inches(limit('1/2-28 UNEF', 'outside', '2A', 'minor', 'hi')()), 0.4564],
  ]),
  ...figures("ASME B1.1 worked example, Machinery's Handbook 31, tolerance", 0.0000005, [
    ['1/2-28 UNEF-2A', () => pitchTolerance2A(0.5, 1 / 28, 'UNEF'), 0.003668],
  ]),
  ...figures('BS 84 form: h = 0.640327 p', 0.00006, [
    ['1/4-40 ME depth', () => of('1/4-40 ME').form.depth.outside / 40, 0.016],
    ['5/16-32 ME effective', () => inches(of('5/16-32 ME').basic.pitchDiameter), 0.2925],
  ]),
  ...relative('Whitworth form on basic sizes, crests as sharp, inches rounded to 0.0001; derived', 0.0003, [
    ['1/4-40 ME core', () => toMm(of('1/4-40 ME').basic.minor), 5.536784709999999],
    ['outside, 5 mm engaged', () => meShear().outside, 72.47632536497856],
    ['inside, 5 mm engaged', () => meShear().inside, 83.12128612051703],
  ]),
];

function meShear(): { readonly outside: number; readonly inside: number } {
  const { basic, pitch, form } = of('1/4-40 ME');
  return basicShearOf(basic, pitch, form.flankAngle, len(50_000));
}
