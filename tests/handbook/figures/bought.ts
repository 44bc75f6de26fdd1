/** Balls, drills, bar, surfaces, squares, packing as sold. */
import { inch, mm, toMm } from '../../../src/base/units.ts';
import { abmaGrade, ballGrade } from '../../../src/handbook/balls.ts';
import { hexagonCorners, inchBars, nutHexagons } from '../../../src/handbook/bar-stock.ts';
import { centreDrills } from '../../../src/handbook/centre-drills.ts';
import { findDrill, jobberLength, pointLength } from '../../../src/handbook/drills.ts';
import { pipesOf, wireGauge } from '../../../src/handbook/pipes.ts';
import { dBitThickness, silverSteel } from '../../../src/handbook/silver-steel.ts';
import { pairsOfRound, squareOn, wheelSquare } from '../../../src/handbook/squares.ts';
import { feedForRoughness, gradeRoughness, noseRoughness, ridgeHeight } from '../../../src/handbook/surface.ts';
import { ballMass } from '../../../src/handbook/valve-ball.ts';
import { type Figure, figures, type Given, there } from './figure.ts';

const drill = (name: string) => () => toMm(there(findDrill(name), name).diameter);
const centre = (pilot: number) => () =>
  toMm(there(centreDrills.filter((c) => c.pilot === mm(pilot)).at(-1), `centre drill ${pilot}`).mouth);
const pair = (round: number) => () => toMm(there(pairsOfRound(mm(round))[0], `square on ${round}`).across);
/** ISO 3290-1: grade; roundness, roughness, lot, um. */
const GRADES: readonly (readonly [grade: number, roundness: number, roughness: number, lot: number])[] = [
  [3, 0.08, 0.01, 0.13],
  [5, 0.13, 0.014, 0.25],
  [10, 0.25, 0.02, 0.5],
  [16, 0.4, 0.025, 0.8],
  [20, 0.5, 0.032, 1],
  [28, 0.7, 0.05, 1.4],
  [40, 1, 0.06, 2],
  [100, 2.5, 0.1, 5],
  [200, 5, 0.15, 10],
];
const DIN_10: readonly (readonly [round: number, across: number])[] = [
  [3.5, 2.7],
  [6, 4.9],
  [7, 5.5],
  [11, 9],
  [12, 9],
  [14, 11],
];

export const boughtFigures: readonly Figure[] = [
  ...figures(
    'ISO 3290-1, rgpballs.com, zbnaao.com',
    0.00001,
    GRADES.flatMap(([grade, roundness, roughness, lot]): readonly Given[] => [
      [`grade ${grade} roundness`, () => there(ballGrade(grade), `grade ${grade}`).roundness, roundness],
      [`grade ${grade} Ra`, () => there(there(ballGrade(grade), `grade ${grade}`).roughness, 'Ra'), roughness],
      [`grade ${grade} lot`, () => there(ballGrade(grade), `grade ${grade}`).lot, lot],
    ]),
  ),
  ...figures('ABMA Std 10, ballbiz.com', 0.00001, [['grade 100, basic size', () => there(abmaGrade(100), '100').plus, 12.5]]),
  ...figures("a maker's list: about 1130 balls of 6 mm a kilogram", 0.005, [['mass, g', () => ballMass(6, 7820), 0.885]]),
  ...figures('drill sizes, docslib 5335266', 0.00006, [
    ['#29', drill('#29'), 3.4544],
    ['F', drill('F'), 6.5278],
    ['#43', drill('#43'), 2.2606],
    ['#80', drill('#80'), 0.3429],
  ]),
  ...figures('7/64 of 25.4, exact', 0.00006, [['7/64', drill('7/64'), 2.7781]]),
  ...figures('DIN 338 (from memory)', 0.0001, [
    ['3.3 whole', () => toMm(there(jobberLength(mm(3.3)), '3.3').whole), 65],
    ['10 whole', () => toMm(there(jobberLength(mm(10)), '10').whole), 133],
  ]),
  ...figures('d/2 / tan of half the point', 0.0006, [
    ['5, 118 degrees', () => toMm(pointLength(mm(5))), 1.502],
    ['10, 118 degrees', () => toMm(pointLength(mm(10))), 3.0043],
    ['10, 135 degrees', () => toMm(pointLength(mm(10), 135)), 2.0711],
  ]),
  ...figures('a hobby chart of drill tips', 0.0005, [['0.104 in, 118 degrees, in', () => pointLength(inch(0.104)) / inch(1), 0.0312]]),
  ...figures('DIN 332:1986, copy', 0.0001, [['centre drill 2', centre(2), 4.25]]),
  ...figures('ISO 6411, example', 0.0001, [['centre drill 2.5', centre(2.5), 5.3]]),
  ...figures('BS 57 (from memory)', 0.0006, [
    [
      'hexagon of 2BA',
      () =>
        toMm(
          there(
            nutHexagons.find((b) => b.name === 'BA 2'),
            '2BA',
          ).across,
        ),
      8.23,
    ],
  ]),
  ...figures('25.4 mm an inch', 0.0006, [
    [
      'round 5/16 in',
      () =>
        toMm(
          there(
            inchBars.find((b) => b.section === 'round' && b.across === inch(5 / 16)),
            '5/16',
          ).across,
        ),
      7.9375,
    ],
  ]),
  ...figures('ISO 1302, grades, scribd 237493784', 0.0001, [
    ...[0.025, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.3, 12.5, 25, 50].map(
      (ra, i): Given => [`N${i + 1}`, () => there(gradeRoughness(i + 1), `N${i + 1}`), ra],
    ),
  ]),
  ...figures('Youssef & El-Hofy, Machining Technology', 0.006, [
    ['ridge, 0.2 a turn, nose 0.8', () => ridgeHeight(0.2, 0.8), 6.25],
    ['Ra, 0.2 a turn, nose 0.8', () => noseRoughness(0.2, 0.8), 1.6],
    ['feed for Ra 1.6, nose 0.8', () => feedForRoughness(1.6, 0.8), 0.2],
    ['ridge, 0.1 a turn, nose 0.4', () => ridgeHeight(0.1, 0.4), 3.125],
  ]),
  ...figures(
    'DIN 10, Yamawa DIN taps p. 123',
    0.0001,
    DIN_10.map(([round, across]): Given => [`on ${round}`, pair(round), across]),
  ),
  ...figures('DIN 79:2004, scribd 637532634', 0.0001, [
    ['5: diagonal, most', () => toMm(there(wheelSquare(mm(5)), '5').diagonal.hi), 6.5],
    ['6: diagonal, least', () => toMm(there(wheelSquare(mm(6)), '6').diagonal.lo), 7.1],
    ['8: bore', () => toMm(there(wheelSquare(mm(8)), '8').boreMost), 8.4],
    ['10: hole, least', () => toMm(there(wheelSquare(mm(10)), '10').holeLeast), 13.1],
  ]),
  ...figures('geometry of flats', 0.0006, [
    ['3.15 on 4, off each flat', () => toMm(squareOn(mm(4), mm(3.15)).flat), 0.425],
    ['3.15 on 4, flat', () => toMm(squareOn(mm(4), mm(3.15)).width), 2.465],
    ['3.15, sharp corner', () => toMm(squareOn(mm(4), mm(3.15)).sharpCorner), 4.455],
    ['5, sharp corner', () => toMm(squareOn(mm(8), mm(5)).sharpCorner), 7.071],
    ['hexagon of 8, corners', () => toMm(hexagonCorners(mm(8))), 9.238],
  ]),
  ...figures('C. Collins, D-bits, metalwebnews.com', 0.001, [
    ['8 mm, flat to back', () => toMm(dBitThickness(mm(8)).hi), 4.025],
    ['8 mm, neck', () => 8 - silverSteel.value('d-bit.neck'), 7.62],
  ]),
  ...figures('glue-it.com, heat treating', 0.5, [
    ['water, from', () => silverSteel.value('water.from'), 770],
    ['oil, from', () => silverSteel.value('oil.from'), 800],
    ['oil, thickest', () => silverSteel.value('oil.most'), 8],
  ]),
  ...figures('EN 1057, leaflet of the Copper Development Association', 0.0001, [
    ['6, walls', () => pipesOf(mm(6)).length, 3],
    ['6, second wall', () => toMm(there(pipesOf(mm(6))[1], '6').wall), 0.8],
    ['15, thinnest', () => toMm(there(pipesOf(mm(15))[0], '15').wall), 0.7],
  ]),
  ...figures('standard wire gauge, sheet', 0.0006, [
    ['22', () => toMm(there(wireGauge(22), '22')), 0.711],
    ['26', () => toMm(there(wireGauge(26), '26')), 0.457],
  ]),
];
