/** Fits and general tolerances. */
import { mm, toMm } from '../../../src/base/units.ts';
import { fitLimits, toleranceGrade } from '../../../src/handbook/iso286.ts';
import { generalTolerance, lookUpChamfer } from '../../../src/handbook/iso2768.ts';
import { type Figure, figures, type Given, there } from './figure.ts';

const grade = (size: number, it: number) => () => there(toleranceGrade(mm(size), it), `IT${it}`) / 10;
const end = (size: number, fit: string, which: 'upper' | 'lower') => () => there(fitLimits(mm(size), fit), `${size} ${fit}`)[which] / 10;
/** Sizes of the five ranges; grade; um. */
const SIZES = [3, 6, 10, 18, 30] as const;
const GRADES: readonly (readonly [grade: number, um: readonly number[]])[] = [
  [5, [4, 5, 6, 8, 9]],
  [6, [6, 8, 9, 11, 13]],
  [7, [10, 12, 15, 18, 21]],
  [8, [14, 18, 22, 27, 33]],
  [9, [25, 30, 36, 43, 52]],
  [10, [40, 48, 58, 70, 84]],
  [11, [60, 75, 90, 110, 130]],
  [12, [100, 120, 150, 180, 210]],
  [13, [140, 180, 220, 270, 330]],
];
/** Letter; deviation nearest to nought in each range, um. */
const SHAFTS: readonly (readonly [letter: string, which: 'upper' | 'lower', um: readonly number[]])[] = [
  ['d', 'upper', [-20, -30, -40, -50, -65]],
  ['e', 'upper', [-14, -20, -25, -32, -40]],
  ['f', 'upper', [-6, -10, -13, -16, -20]],
  ['g', 'upper', [-2, -4, -5, -6, -7]],
  ['m', 'lower', [2, 4, 6, 7, 8]],
  ['n', 'lower', [4, 8, 10, 12, 15]],
  ['p', 'lower', [6, 12, 15, 18, 22]],
];

export const fitFigures: readonly Figure[] = [
  ...figures(
    'ISO 286-1 table 1, engineersvault 2007/02',
    0.01,
    GRADES.flatMap(([it, um]) => um.map((value, i): Given => [`IT${it} at ${SIZES[i]}`, grade(SIZES[i] ?? 0, it), value])),
  ),
  ...figures(
    'ISO 286-1, precisemetal.in, column h',
    0.01,
    GRADES.filter(([it]) => it >= 6 && it <= 12).flatMap(([it, um]) =>
      um.map((value, i): Given => [`h${it} at ${SIZES[i]}`, end(SIZES[i] ?? 0, `h${it}`, 'lower'), -value]),
    ),
  ),
  ...figures(
    'ISO 286-1, list of mechguru (g of 6 to 10 printed as -8: a misprint)',
    0.01,
    SHAFTS.flatMap(([letter, which, um]) =>
      um.map((value, i): Given => [`${letter} at ${SIZES[i]}`, end(SIZES[i] ?? 0, `${letter}7`, which), value]),
    ),
  ),
  ...figures('dowel pins, m6', 0.01, [
    ['3 m6 upper', end(3, 'm6', 'upper'), 8],
    ['3 m6 lower', end(3, 'm6', 'lower'), 2],
  ]),
  ...figures('ISO 286-1 tables, joined', 0.01, [
    ['6 g6 upper', end(6, 'g6', 'upper'), -4],
    ['6 g6 lower', end(6, 'g6', 'lower'), -12],
    ['16 f7 upper', end(16, 'f7', 'upper'), -16],
    ['16 f7 lower', end(16, 'f7', 'lower'), -34],
  ]),
  ...figures('ISO 286-1 holes (from memory)', 0.01, [
    ['10 K7 upper', end(10, 'K7', 'upper'), 5],
    ['10 M7 upper', end(10, 'M7', 'upper'), 0],
    ['10 N7 upper', end(10, 'N7', 'upper'), -4],
    ['10 P7 upper', end(10, 'P7', 'upper'), -9],
    ['10 R7 upper', end(10, 'R7', 'upper'), -13],
    ['10 N9 upper', end(10, 'N9', 'upper'), 0],
    ['10 N9 lower', end(10, 'N9', 'lower'), -36],
    ['2 N9 upper', end(2, 'N9', 'upper'), -4],
    ['10 P9 upper', end(10, 'P9', 'upper'), -15],
    ['10 K5 lower', end(10, 'K5', 'lower'), -5],
  ]),
  ...figures('ISO 2768-1 table 1, scribd 585640440', 0.0001, [
    ['m at 25', () => toMm(generalTolerance(mm(25), 'm')), 0.2],
    ['f at 5', () => toMm(generalTolerance(mm(5), 'f')), 0.05],
  ]),
  ...figures('ISO 2768-1 table 2, camcut-group.com', 0.0001, [
    ['m, chamfer of 1', () => toMm(there(lookUpChamfer(mm(1), 'm'), 'chamfer').half), 0.2],
  ]),
];
