/**
 * Twist drills: which sizes there are (metric, number, letter, sixty-fourths), how long a jobber drill is, how much its point is longer than
 * its full diameter. Number and letter drills are withdrawn in BS 328 but lie in many drawers.
 */
import { inch, type Len, len, mm, roundHalfEven, toMm } from '../base/units.ts';
import type { Standing } from './fact.ts';
import { cite } from './sources.ts';

export type Drill = {
  readonly name: string;
  readonly series: 'metric' | 'number' | 'letter' | 'fraction';
  readonly diameter: Len;
  readonly source: string;
  readonly standing: Standing;
};

/** '3.8', '3.8 mm', '#29', 'No 29', 'F', '7/64', '7/64 in'. Nothing for a size that is not made. */
export function findDrill(name: string): Drill | undefined {
  const word = name.trim().replace(/\s+/g, ' ');
  const number = /^(?:#|no\.? ?)(\d{1,2})$/i.exec(word);
  if (number) return byName(`#${Number(number[1])}`);
  const fraction = /^(\d+)(?:\/(\d+)(?: ?(?:in|"))?| ?(?:in|"))$/.exec(word);
  if (fraction) return fractionDrills.find((d) => d.diameter === inch(Number(fraction[1]) / Number(fraction[2] ?? 1)));
  const metric = /^(\d+(?:\.\d+)?)(?: ?mm)?$/.exec(word);
  if (metric) return metricDrills.find((d) => d.diameter === mm(Number(metric[1])));
  return byName(word.toUpperCase());
}

/** Drills of every series within `reach` of a diameter, nearest first, of equals the smaller and then by name. */
export function drillsNear(diameter: Len, reach: Len): readonly Drill[] {
  return drills
    .filter((d) => Math.abs(d.diameter - diameter) <= reach)
    .sort(
      (a, b) => Math.abs(a.diameter - diameter) - Math.abs(b.diameter - diameter) || a.diameter - b.diameter || (a.name < b.name ? -1 : 1),
    );
}

/** From the corner of the lips to the tip: 0.3004 d at 118 degrees, 0.2071 d at 135, half of d at 90. Throws RangeError outside 0-180. */
export function pointLength(diameter: Len, angle: number = POINT_ANGLE): Len {
  if (!(angle > 0 && angle < 180)) throw new RangeError(`no point of ${angle} degrees`);
  return len(roundHalfEven(diameter / 2 / Math.tan((angle / 2) * (Math.PI / 180))));
}

/** DIN 338 type N. Degrees. */
export const POINT_ANGLE = 118;

/** Flute and whole length of a jobber drill. From memory of DIN 338; nothing outside 0.2-20 mm. */
export function jobberLength(
  diameter: Len,
): { readonly flute: Len; readonly whole: Len; readonly source: string; readonly standing: Standing } | undefined {
  const d = toMm(diameter);
  const row = d > LENGTHS_FROM ? LENGTHS.find(([to]) => d <= to) : undefined;
  return row && { flute: mm(row[1]), whole: mm(row[2]), source: cite('din-338'), standing: 'from memory' };
}

/** Ten-thousandths of an inch, number 1 first. */
const NUMBERS: readonly number[] = [
  2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695, 1660, 1610, 1590, 1570, 1540,
  1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160, 1130, 1110, 1100, 1065, 1040, 1015, 995, 980, 960, 935, 890, 860, 820, 810, 785,
  760, 730, 700, 670, 635, 595, 550, 520, 465, 430, 420, 410, 400, 390, 380, 370, 360, 350, 330, 320, 310, 292, 280, 260, 250, 240, 225,
  210, 200, 180, 160, 145, 135,
];
const NUMBERS_RECALLED: readonly number[] = [
  5, 6, 8, 9, 10, 11, 12, 13, 14, 15, 17, 18, 19, 22, 46, 47, 48, 49, 51, 52, 53, 54, 55, 56, 57, 58, 59, 60, 61, 62, 63,
];
/** A to Z. */
const LETTERS: readonly number[] = [
  2340, 2380, 2420, 2460, 2500, 2570, 2610, 2660, 2720, 2770, 2810, 2900, 2950, 3020, 3160, 3230, 3320, 3390, 3480, 3580, 3680, 3770, 3860,
  3970, 4040, 4130,
];
const LETTERS_RECALLED = 'PSUVXYZ';
/** BS 328 metric: from, to, step; thousandths of a mm. Below 1 mm the steps are 0, 2, 5, 8 hundredths in each tenth. */
const METRIC: readonly (readonly [from: number, to: number, step: number])[] = [
  [1000, 3000, 50],
  [3100, 14000, 100],
  [14250, 25000, 250],
];
const SMALL: readonly number[] = [0, 20, 50, 80];
/** mm: up to; flute, whole. */
const LENGTHS_FROM = 0.2;
const LENGTHS: readonly (readonly [to: number, flute: number, whole: number])[] = [
  [0.24, 2.5, 19],
  [0.3, 3, 19],
  [0.38, 4, 19],
  [0.48, 5, 20],
  [0.53, 6, 22],
  [0.6, 7, 24],
  [0.67, 8, 26],
  [0.75, 9, 28],
  [0.85, 10, 30],
  [0.95, 11, 32],
  [1.06, 12, 34],
  [1.18, 14, 36],
  [1.32, 16, 38],
  [1.5, 18, 40],
  [1.7, 20, 43],
  [1.9, 22, 46],
  [2.12, 24, 49],
  [2.36, 27, 53],
  [2.65, 30, 57],
  [3, 33, 61],
  [3.35, 36, 65],
  [3.75, 39, 70],
  [4.25, 43, 75],
  [4.75, 47, 80],
  [5.3, 52, 86],
  [6, 57, 93],
  [6.7, 63, 101],
  [7.5, 69, 109],
  [8.5, 75, 117],
  [9.5, 81, 125],
  [10.6, 87, 133],
  [11.8, 94, 142],
  [13.2, 101, 151],
  [14, 108, 160],
  [15, 114, 169],
  [16, 120, 178],
  [17, 125, 184],
  [18, 130, 191],
  [19, 135, 198],
  [20, 140, 205],
];

export const numberDrills: readonly Drill[] = NUMBERS.map((size, i) =>
  gauge('number', `#${i + 1}`, size, NUMBERS_RECALLED.includes(i + 1)),
);
export const letterDrills: readonly Drill[] = LETTERS.map((size, i) => {
  const letter = String.fromCharCode('A'.charCodeAt(0) + i);
  return gauge('letter', letter, size, LETTERS_RECALLED.includes(letter));
});
export const fractionDrills: readonly Drill[] = Array.from({ length: 64 }, (_, i) => fraction(i + 1));
export const metricDrills: readonly Drill[] = [...smallSizes(), ...METRIC.flatMap(([from, to, step]) => span(from, to, step))].map(metric);

/** By rising size, then by name. */
export const drills: readonly Drill[] = [...metricDrills, ...numberDrills, ...letterDrills, ...fractionDrills].sort(
  (a, b) => a.diameter - b.diameter || (a.name < b.name ? -1 : 1),
);

function byName(name: string): Drill | undefined {
  return [...numberDrills, ...letterDrills].find((d) => d.name === name);
}

function gauge(series: 'number' | 'letter', name: string, size: number, recalled: boolean): Drill {
  const standing = recalled ? 'from memory' : 'standard';
  return { name, series, diameter: inch(size / 10_000), source: cite(recalled ? 'drill-sizes-rest' : 'drill-sizes'), standing };
}

function fraction(n: number): Drill {
  let [over, under] = [n, 64];
  while (over % 2 === 0 && under > 1) [over, under] = [over / 2, under / 2];
  return {
    name: under === 1 ? `${over} in` : `${over}/${under} in`,
    series: 'fraction',
    diameter: inch(n / 64),
    source: cite('here', 'sixty-fourths of an inch'),
    standing: 'derived',
  };
}

function metric(thousandths: number): Drill {
  return {
    name: `${thousandths / 1000} mm`,
    series: 'metric',
    diameter: len(thousandths * 10),
    source: cite('bs-328'),
    standing: 'from memory',
  };
}

function smallSizes(): readonly number[] {
  return span(200, 900, 100).flatMap((tenth) => SMALL.map((more) => tenth + more));
}

function span(from: number, to: number, step: number): readonly number[] {
  return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);
}
