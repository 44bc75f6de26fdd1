/** Balls, drills, centre drills, bar, pipe and silver steel against printed lists. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inch, len, mm, toMm } from '../../src/base/units.ts';
import {
  abmaGrade,
  ballGrade,
  ballMaterials,
  ballOf,
  ballSizes,
  findBallMaterial,
  isoGrades,
  nearestBall,
} from '../../src/handbook/balls.ts';
import * as bar from '../../src/handbook/bar-stock.ts';
import { centreDrills, centreUnder, coneDepth } from '../../src/handbook/centre-drills.ts';
import * as drill from '../../src/handbook/drills.ts';
import { pipes, pipesOf, pipeWithBore, wireGauge } from '../../src/handbook/pipes.ts';
import * as steel from '../../src/handbook/silver-steel.ts';

const strictly = (values: readonly number[]): boolean => values.every((v, i) => i === 0 || v > (values[i - 1] ?? v));

/** Sizes on the list at technoball.it; mm to the tenth of a micrometre. */
const BALLS: readonly (readonly [mm: number, name: string])[] = [
  [1.5, '1.5 mm'],
  [1.5875, '1/16 in'],
  [2.0, '2 mm'],
  [2.3812, '3/32 in'],
  [2.5, '2.5 mm'],
  [2.7781, '7/64 in'],
  [3.0, '3 mm'],
  [3.175, '1/8 in'],
  [3.5, '3.5 mm'],
  [3.9688, '5/32 in'],
  [4.0, '4 mm'],
  [4.5, '4.5 mm'],
  [4.7625, '3/16 in'],
  [5.0, '5 mm'],
  [5.5562, '7/32 in'],
  [6.0, '6 mm'],
  [6.35, '1/4 in'],
  [7.1437, '9/32 in'],
  [7.9375, '5/16 in'],
  [8.7312, '11/32 in'],
  [9.525, '3/8 in'],
  [10.0, '10 mm'],
  [10.3187, '13/32 in'],
  [11.1125, '7/16 in'],
  [11.9062, '15/32 in'],
  [12.0, '12 mm'],
  [12.7, '1/2 in'],
  [13.4937, '17/32 in'],
  [14.2875, '9/16 in'],
  [15.0, '15 mm'],
  [15.0812, '19/32 in'],
  [15.875, '5/8 in'],
  [16.0, '16 mm'],
  [16.6687, '21/32 in'],
  [17.4625, '11/16 in'],
  [19.05, '3/4 in'],
  [19.8438, '25/32 in'],
  [20.0, '20 mm'],
];
/** ISO 3290-1 as printed by rgpballs.com, zbnaao.com, marteau-lemarie: grade; um: roundness, Ra, lot. */
const ISO_GRADES: readonly (readonly [grade: number, roundness: number, roughness: number, lot: number])[] = [
  [3, 0.08, 0.01, 0.13],
  [5, 0.13, 0.014, 0.25],
  [10, 0.25, 0.02, 0.5],
  [16, 0.4, 0.025, 0.8],
  [20, 0.5, 0.032, 1],
  [24, 0.6, 0.04, 1.2],
  [28, 0.7, 0.05, 1.4],
  [40, 1, 0.06, 2],
  [60, 1.5, 0.08, 3],
  [100, 2.5, 0.1, 5],
  [200, 5, 0.15, 10],
];
/** ABMA Std 10 as printed by ballbiz.com and itiball.com: grade; um: roundness, lot, plus, minus. */
const ABMA_GRADES: readonly (readonly [grade: number, roundness: number, lot: number, plus: number, minus: number])[] = [
  [10, 0.25, 0.5, 1.25, 1],
  [24, 0.6, 1.2, 2.5, 2.5],
  [48, 1.2, 2.4, 5, 5],
  [100, 2.5, 5, 12.5, 12.5],
  [200, 5, 10, 25, 25],
  [500, 13, 25, 50, 50],
  [1000, 25, 50, 125, 125],
];

describe('balls', () => {
  it.each(BALLS)('%d mm is sold as %s (technoball.it)', (size, name) => {
    const sold = ballSizes.find((b) => b.name === name);
    // printed sizes of half units are cut off, ours are rounded to even
    expect(Math.abs(Number(sold?.diameter) - mm(size))).toBeLessThanOrEqual(1);
    expect(sold?.standing).toBe('common practice');
  });
  it.each(ISO_GRADES)('grade %d: round to %d um (ISO 3290-1)', (grade, roundness, roughness, lot) => {
    expect(ballGrade(grade)).toEqual({ grade, roundness, roughness, lot });
  });
  it.each(ABMA_GRADES)('ABMA grade %d: round to %d um', (grade, roundness, lot, plus, minus) => {
    expect(abmaGrade(grade)).toMatchObject({ roundness, lot, plus, minus });
  });
  it.each([4, 0, 17])('there is no grade %d', (grade) => expect([ballGrade(grade), abmaGrade(grade)]).toEqual([undefined, undefined]));
  it('6 mm and 1/4 in are sold, 6.1 is not', () => {
    expect([ballOf(mm(6))?.name, ballOf(inch(0.25))?.name, ballOf(mm(6.1))]).toEqual(['6 mm', '1/4 in', undefined]);
  });
  it('sizes rise, none twice; grades coarsen', () => {
    expect(strictly(ballSizes.map((b) => b.diameter))).toBe(true);
    for (const column of ['grade', 'roundness', 'lot', 'roughness'] as const)
      expect(strictly(isoGrades.map((g) => Number(g[column])))).toBe(true);
  });
  it('the nearest ball is the nearest', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 300_000 }).map(len), (size) => {
        const best = nearestBall(size);
        expect(ballSizes.every((b) => Math.abs(b.diameter - size) >= Math.abs(Number(best?.diameter) - size))).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
  it.each([
    ['316', 'faint'],
    ['AISI 304', 'faint'],
    ['440c', 'yes'],
    ['chrome steel', 'yes'],
    ['bronze', 'no'],
  ])('%s to a magnet: %s (makers: peijieballs.com, stwball.com)', (name, magnetic) =>
    expect(findBallMaterial(name)?.magnetic).toBe(magnetic),
  );
  it('what a magnet holds hard is not for the feed', () => {
    expect(ballMaterials.filter((m) => m.magnetic === 'yes' && m.forSteam)).toEqual([]);
    expect(findBallMaterial('glass')).toBeUndefined();
  });
});

/** mm, where printed. */
const DRILLS: readonly (readonly [name: string, mm: number, source: string])[] = [
  ['#80', 0.3429, 'docslib 5335266'],
  ['#79', 0.3683, 'docslib 5335266'],
  ['#78', 0.4064, 'docslib 5335266'],
  ['#77', 0.4572, 'docslib 5335266'],
  ['#76', 0.508, 'docslib 5335266'],
  ['#75', 0.5334, 'docslib 5335266'],
  ['#74', 0.5715, 'docslib 5335266'],
  ['#73', 0.6096, 'docslib 5335266'],
  ['#72', 0.635, 'docslib 5335266'],
  ['#71', 0.6604, 'docslib 5335266'],
  ['#70', 0.7112, 'docslib 5335266'],
  ['#69', 0.7417, 'docslib 5335266'],
  ['#68', 0.7874, 'docslib 5335266'],
  ['#67', 0.8128, 'docslib 5335266'],
  ['#66', 0.8382, 'docslib 5335266'],
  ['#65', 0.889, 'docslib 5335266'],
  ['#64', 0.9144, 'docslib 5335266'],
  ['#50', 1.778, 'FED-STD-H28/2B'],
  ['#45', 2.0828, 'docslib 5335266'],
  ['#44', 2.1844, 'docslib 5335266'],
  ['#43', 2.2606, 'docslib 5335266'],
  ['#42', 2.3749, 'docslib 5335266'],
  ['#41', 2.4384, 'docslib 5335266'],
  ['#40', 2.4892, 'docslib 5335266'],
  ['#39', 2.5273, 'docslib 5335266'],
  ['#38', 2.5781, 'docslib 5335266'],
  ['#37', 2.6416, 'docslib 5335266'],
  ['#36', 2.7051, 'docslib 5335266'],
  ['#35', 2.794, 'docslib 5335266'],
  ['#34', 2.8194, 'docslib 5335266'],
  ['#33', 2.8702, 'docslib 5335266'],
  ['#32', 2.9464, 'docslib 5335266'],
  ['#31', 3.048, 'docslib 5335266'],
  ['#30', 3.2639, 'docslib 5335266'],
  ['#29', 3.4544, 'docslib 5335266'],
  ['#28', 3.5687, 'docslib 5335266'],
  ['#27', 3.6576, 'docslib 5335266'],
  ['#26', 3.7338, 'docslib 5335266'],
  ['#25', 3.7973, 'docslib 5335266'],
  ['#24', 3.8608, 'docslib 5335266'],
  ['#23', 3.9116, 'docslib 5335266'],
  ['#21', 4.0386, 'FED-STD-H28/2B'],
  ['#20', 4.0894, 'FED-STD-H28/2B'],
  ['#16', 4.4958, 'FED-STD-H28/2B'],
  ['#7', 5.1054, 'FED-STD-H28/2B'],
  ['#4', 5.3086, 'docslib 5335266'],
  ['#3', 5.4102, 'docslib 5335266'],
  ['#2', 5.6134, 'docslib 5335266'],
  ['#1', 5.7912, 'docslib 5335266'],
  ['A', 5.9436, 'docslib 5335266'],
  ['B', 6.0452, 'docslib 5335266'],
  ['C', 6.1468, 'docslib 5335266'],
  ['D', 6.2484, 'docslib 5335266'],
  ['E', 6.35, 'docslib 5335266'],
  ['F', 6.5278, 'docslib 5335266'],
  ['G', 6.6294, 'docslib 5335266'],
  ['H', 6.7564, 'docslib 5335266'],
  ['I', 6.9088, 'docslib 5335266'],
  ['J', 7.0358, 'docslib 5335266'],
  ['K', 7.1374, 'docslib 5335266'],
  ['L', 7.366, 'docslib 5335266'],
  ['M', 7.493, 'docslib 5335266'],
  ['N', 7.6708, 'docslib 5335266'],
  ['O', 8.0264, 'docslib 5335266'],
  ['Q', 8.4328, 'FED-STD-H28/2B'],
  ['R', 8.6106, 'FED-STD-H28/2B'],
  ['T', 9.0932, 'FED-STD-H28/2B'],
  ['W', 9.8044, 'FED-STD-H28/2B'],
  ['7/64', 2.7781, 'exact: 7/64 of 25.4'],
  ['1/4 in', 6.35, 'exact'],
  ['3.8', 3.8, 'BS 328, from memory'],
];
describe('drills', () => {
  it.each(DRILLS)('%s is %d mm (%s)', (name, size) => expect(drill.findDrill(name)?.diameter).toBe(mm(size)));
  it.each(['#0', '#81', 'AA', '7/65', '3.85', '', '0', '26', '-3', 'é'])('%s is no drill', (name) =>
    expect(drill.findDrill(name)).toBeUndefined(),
  );
  it('there are 80 numbers, 26 letters, 64 fractions and 227 metric sizes, each rising', () => {
    expect([drill.numberDrills, drill.letterDrills, drill.fractionDrills, drill.metricDrills].map((d) => d.length)).toEqual([
      80, 26, 64, 227,
    ]);
    for (const list of [drill.numberDrills.toReversed(), drill.letterDrills, drill.fractionDrills, drill.metricDrills]) {
      expect(strictly(list.map((d) => d.diameter))).toBe(true);
    }
    expect(new Set(drill.drills.map((d) => d.name)).size).toBe(drill.drills.length);
  });
  it('every drill is found by its own name', () => {
    for (const d of drill.drills) expect(drill.findDrill(d.name)?.diameter).toBe(d.diameter);
  });
  it('a neighbour of 3.8 is 3.8 first', () => expect(drill.drillsNear(mm(3.8), mm(0.05)).map((d) => d.name)).toEqual(['3.8 mm', '#25']));
  it.each([
    [5, 118, 1.502, 'arithmetic: d/2 / tan 59'],
    [10, 118, 3.0043, 'arithmetic'],
    [10, 135, 2.0711, 'arithmetic'],
    [10, 90, 5, 'arithmetic'],
    [2.6416, 118, 0.793, 'a chart of points: 0.104 in gives 0.0312 in'],
  ])('the point of %d mm at %d° is %d mm (%s)', (size, angle, point) => {
    expect(Math.abs(toMm(drill.pointLength(mm(size), angle)) - point)).toBeLessThan(0.001);
  });
  it('a point of no angle is our fault', () => expect(() => drill.pointLength(mm(5), 180)).toThrow(RangeError));
  it.each([
    [3.3, 65],
    [10, 133],
    [20, 205],
  ])('a jobber drill of %d mm is %d mm long (DIN 338, from memory)', (size, whole) =>
    expect(drill.jobberLength(mm(size))?.whole).toBe(mm(whole)),
  );
  it.each([0.2, 20.1])('no jobber length for %d mm', (size) => expect(drill.jobberLength(mm(size))).toBeUndefined());
});

describe('centre drills', () => {
  it.each([
    ['A1/2.12', 2.12, 'DIN 332:1986 copy'],
    ['A1.25/2.65', 2.65, 'DIN 332:1986 copy'],
    ['A1.6/3.35', 3.35, 'DIN 332:1986 copy'],
    ['A2/4.25', 4.25, 'DIN 332:1986 copy'],
    ['A2.5/5.3', 5.3, 'example of ISO 6411'],
  ])('%s opens to %d (%s)', (name, mouth) => expect(centreDrills.find((c) => c.name === name)?.mouth).toBe(mm(mouth)));
  it('sizes rise; the cone and the pilot make the least depth or less', () => {
    for (const column of ['pilot', 'mouth', 'depth', 'pilotLength'] as const)
      expect(strictly(centreDrills.map((c) => c[column]))).toBe(true);
    for (const c of centreDrills) expect(c.pilot < c.mouth && c.mouth < c.shank && coneDepth(c.pilot, c.mouth) < c.depth).toBe(true);
  });
  it.each([
    [1, 2.12, 0.97],
    [2.5, 5.3, 2.42],
    [6.3, 13.2, 5.98],
  ])('the cone from %d to %d is %d deep (arithmetic)', (pilot, mouth, depth) =>
    expect(toMm(coneDepth(mm(pilot), mm(mouth)))).toBeCloseTo(depth, 2),
  );
  it('under 4.0 the largest is A1.6, under 2.12 none', () => {
    expect(centreUnder(mm(4))?.name).toBe('A1.6/3.35');
    expect(centreUnder(mm(2.12))).toBeUndefined();
  });
});

/** DIN 10 squares as in Yamawa 2016-17, p. 123: round, across flats; depth a flat, width of the flat, sharp corners (arithmetic). */
const SQUARES: readonly (readonly [d: number, a: number, depth: number, width: number, corners: number, source: string])[] = [
  [2.8, 2.1, 0.35, 1.852, 2.97, 'DIN 10 (Yamawa DIN taps)'],
  [3.5, 2.7, 0.4, 2.227, 3.818, 'DIN 10 (Yamawa DIN taps)'],
  [4.5, 3.4, 0.55, 2.948, 4.808, 'DIN 10 (Yamawa DIN taps)'],
  [6, 4.9, 0.55, 3.463, 6.93, 'DIN 10 (Yamawa DIN taps)'],
  [7, 5.5, 0.75, 4.33, 7.778, 'DIN 10 (Yamawa DIN taps)'],
  [8, 6.2, 0.9, 5.056, 8.768, 'DIN 10 (Yamawa DIN taps)'],
  [9, 7, 1.0, 5.657, 9.899, 'DIN 10 (Yamawa DIN taps)'],
  [10, 8, 1.0, 6.0, 11.314, 'DIN 10 (Yamawa DIN taps)'],
  [11, 9, 1.0, 6.325, 12.728, 'DIN 10 (Yamawa DIN taps)'],
  [12, 9, 1.5, 7.937, 12.728, 'DIN 10 (Yamawa DIN taps)'],
  [14, 11, 1.5, 8.66, 15.556, 'DIN 10 (Yamawa DIN taps)'],
];
describe('bar', () => {
  it.each(SQUARES)('round %d to square %d', (d, a, depth, width, corners) => {
    expect(toMm(bar.flatDepth(mm(d), mm(a)))).toBeCloseTo(depth, 3);
    expect(toMm(bar.flatWidth(mm(d), mm(a)))).toBeCloseTo(width, 3);
    expect(toMm(bar.squareCorners(mm(a)))).toBeCloseTo(corners, 2);
  });
  it('4 on 5: 0.5 a flat, 3.000 wide; no flat is left at full size', () => {
    expect([bar.flatDepth(mm(5), mm(4)), bar.flatWidth(mm(5), mm(4)), bar.flatWidth(mm(5), mm(5))]).toEqual([mm(0.5), mm(3), mm(0)]);
    expect(bar.squareWithin(mm(7.071))).toBe(mm(5));
  });
  it.each([
    [8, 9.238],
    [14, 16.166],
    [17, 19.63],
    [30, 34.641],
  ])('hexagon %d is %d across corners (arithmetic)', (flats, corners) => {
    expect(toMm(bar.hexagonCorners(mm(flats)))).toBeCloseTo(corners, 3);
    expect(Math.abs(bar.hexagonWithin(bar.hexagonCorners(mm(flats))) - mm(flats))).toBeLessThanOrEqual(1);
  });
  it('lists rise', () => {
    for (const list of [bar.metricBars, bar.inchBars]) {
      for (const section of ['round', 'hexagon'])
        expect(strictly(list.filter((b) => b.section === section).map((b) => b.across))).toBe(true);
    }
  });
  it('one size up from 17 is 18, from 5/16 in is 5/16; nothing over the list', () => {
    expect(bar.barAtLeast('round', mm(16.1), 'metric')?.across).toBe(mm(18));
    expect(bar.barAtLeast('round', inch(5 / 16), 'inch')?.across).toBe(mm(7.9375));
    expect(bar.barAtLeast('hexagon', mm(31), 'metric')).toBeUndefined();
  });
  it.each([
    ['BSW/BSF 1/4', 0.445, "Machinery's Handbook 31 / BS 1083"],
    ['BSW/BSF 3/8', 0.6, "Machinery's Handbook 31 / BS 1083"],
    ['BA 2', 0.324, 'BS 57, from memory'],
  ])('nut hexagon %s is %d in (%s)', (name, inches) => expect(bar.nutHexagons.find((b) => b.name === name)?.across).toBe(inch(inches)));
});

describe('pipe', () => {
  it('6 mm has walls of 0.6, 0.8 and 1.0 (EN 1057, leaflet of the CDA)', () =>
    expect(pipesOf(mm(6)).map((p) => toMm(p.wall))).toEqual([0.6, 0.8, 1]));
  it('a bore of 4.4 is had from 6 x 0.8', () =>
    expect(pipeWithBore(mm(4.4))).toMatchObject({ outside: mm(6), wall: mm(0.8), bore: mm(4.4) }));
  it('nothing wider than the list, no size between', () => expect([pipeWithBore(mm(15)), pipesOf(mm(7)).length]).toEqual([undefined, 0]));
  it('every pipe has a bore', () => expect(pipes.every((p) => p.bore > 0 && p.bore < p.outside)).toBe(true));
  it('22 gauge is 0.711 mm', () => expect([toMm(wireGauge(22) ?? len(0)), wireGauge(23)]).toEqual([0.7112, undefined]));
});

describe('silver steel', () => {
  it('thin rod in oil or water, thick rod in water whatever is wished (glue-it; schmitz: 30 mm in oil stayed soft)', () => {
    expect(steel.quench(mm(6), 'oil')).toEqual({ medium: 'oil', from: 800, to: 810 });
    expect(steel.quench(mm(8.1), 'oil')).toEqual({ medium: 'water', from: 770, to: 780 });
    expect(steel.quench(mm(6), 'water')).toEqual({ medium: 'water', from: 770, to: 780 });
  });
  it.each([
    [221, 'pale-yellow'],
    [230, 'straw'],
    [254, 'brown'],
    [277, 'purple'],
    [293, 'blue'],
    [225, 'pale-yellow'],
    [0, 'pale-yellow'],
    [999, 'dark-blue'],
  ])('%d °C shows %s (glue-it)', (celsius, colour) => expect(steel.temperColour(celsius)).toBe(colour));
  it('colours rise', () => expect(strictly(steel.COLOURS.map(([, c]) => c))).toBe(true));
  it('5 minutes each quarter inch (stubmandrel)', () => expect(steel.soakMinutes(inch(0.25))).toBe(5));
  it('a D-bit of 8.00 is 4.000 to 4.025 flat to back (Collins)', () =>
    expect(steel.dBitThickness(mm(8))).toEqual({ lo: mm(4), hi: mm(4.025) }));
});
