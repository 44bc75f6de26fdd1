/**
 * ISO 286-1: limits of a size by its fit, up to 30 mm. Grades IT5 to IT14; shafts c to s and js; holes C to H and JS by mirror, K, M, N to
 * grade 8 and P, R, S to grade 7 by the rule of delta, coarser M and P to S by mirror, N with its upper limit at nought, K to 3 mm only.
 * The table rules over the formula for i. Outside it nothing is given.
 */
import { type Len, len, mm, toMm } from '../base/units.ts';
import type { Standing } from './fact.ts';
import type { Pair } from './iso965-metric.ts';
import { cite } from './sources.ts';

export type FitLimits = Pair & {
  /** Signed, from the basic size. */
  readonly upper: Len;
  readonly lower: Len;
  readonly as: string;
  readonly source: string;
  readonly standing: Standing;
};

/** `fit`: 'h9', 'g6', 'H7', 'js6'. Nothing for a size over 30 mm, a letter or a grade that is not in the tables. */
export function fitLimits(size: Len, fit: string): FitLimits | undefined {
  const [, letter = '', grade = ''] = /^([a-zA-Z]{1,2})(\d{1,2})$/.exec(fit) ?? [];
  const tolerance = toleranceGrade(size, Number(grade));
  const range = rangeOf(size);
  if (range === undefined || tolerance === undefined) return undefined;
  const limits =
    letter === letter.toLowerCase() ? shaft(letter, Number(grade), range, tolerance) : hole(letter, Number(grade), range, tolerance);
  if (!limits) return undefined;
  const { lower, upper } = limits;
  const recalled = !SEEN.includes(letter) || Number(grade) > SEEN_GRADE;
  return {
    lo: len(size + lower),
    hi: len(size + upper),
    lower,
    upper,
    as: fit,
    source: cite(recalled ? 'iso-286-1-rest' : 'iso-286-1'),
    standing: recalled ? 'from memory' : 'standard',
  };
}

/** IT5 to IT14 as a whole band. Nothing over 30 mm or for another grade. */
export function toleranceGrade(size: Len, grade: number): Len | undefined {
  const range = rangeOf(size);
  const value = range === undefined ? undefined : GRADES[grade]?.[range];
  return value === undefined ? undefined : mm(value / 1000);
}

/** Letters whose deviations were seen, and the last grade that was. */
const SEEN: readonly string[] = ['d', 'e', 'f', 'g', 'h', 'js', 'm', 'n', 'p', 'D', 'E', 'F', 'G', 'H', 'JS'];
const SEEN_GRADE = 13;
/** Over the one before, up to this. mm. */
const RANGES: readonly number[] = [3, 6, 10, 18, 30];

/** um, a column a range. */
const GRADES: Readonly<Record<number, readonly number[]>> = {
  5: [4, 5, 6, 8, 9],
  6: [6, 8, 9, 11, 13],
  7: [10, 12, 15, 18, 21],
  8: [14, 18, 22, 27, 33],
  9: [25, 30, 36, 43, 52],
  10: [40, 48, 58, 70, 84],
  11: [60, 75, 90, 110, 130],
  12: [100, 120, 150, 180, 210],
  13: [140, 180, 220, 270, 330],
  14: [250, 300, 360, 430, 520],
};
/** IT4, which the rule of delta asks for at grade 5. From memory. */
const FINER_THAN_5: readonly number[] = [3, 4, 4, 5, 6];
/** Fundamental deviations, um: upper for c to h, lower for k to s. One list prints g = -8 for 6-10 mm: a misprint. */
const DEVIATIONS: Readonly<Record<string, readonly number[]>> = {
  c: [-60, -70, -80, -95, -110],
  d: [-20, -30, -40, -50, -65],
  e: [-14, -20, -25, -32, -40],
  f: [-6, -10, -13, -16, -20],
  g: [-2, -4, -5, -6, -7],
  h: [0, 0, 0, 0, 0],
  k: [0, 1, 1, 1, 2],
  m: [2, 4, 6, 7, 8],
  n: [4, 8, 10, 12, 15],
  p: [6, 12, 15, 18, 22],
  r: [10, 15, 19, 23, 28],
  s: [14, 19, 23, 28, 35],
};
/** k has its deviation in grades 4 to 7 only. */
const K_GRADES = { from: 4, to: 7 } as const;
const ABOVE: readonly string[] = ['k', 'm', 'n', 'p', 'r', 's'];
/** Last grade for which the rule of delta holds. */
const DELTA_TO: Readonly<Record<string, number>> = { k: 8, m: 8, n: 8, p: 7, r: 7, s: 7 };

type Signed = { readonly lower: Len; readonly upper: Len };

function rangeOf(size: Len): number | undefined {
  const value = toMm(size);
  const index = RANGES.findIndex((to) => value <= to);
  return value > 0 && index >= 0 ? index : undefined;
}

function shaft(letter: string, grade: number, range: number, tolerance: Len): Signed | undefined {
  if (letter === 'js') return centred(tolerance);
  const fundamental = deviation(letter, grade, range);
  if (fundamental === undefined) return undefined;
  if (ABOVE.includes(letter)) return { lower: fundamental, upper: len(fundamental + tolerance) };
  return { lower: len(fundamental - tolerance), upper: fundamental };
}

/** C to H mirror their shafts; K to P: upper = -lower of the shaft + delta, where delta is what the grade has over the one finer. */
function hole(letter: string, grade: number, range: number, tolerance: Len): Signed | undefined {
  if (letter === 'JS') return centred(tolerance);
  const small = letter.toLowerCase();
  const fundamental = deviation(small, K_GRADES.to, range);
  if (fundamental === undefined) return undefined;
  if (!ABOVE.includes(small)) return { lower: len(-fundamental), upper: len(tolerance - fundamental) };
  const upper = upperOfTight(small, grade, range, tolerance, fundamental);
  return upper === undefined ? undefined : { lower: len(upper - tolerance), upper };
}

function upperOfTight(letter: string, grade: number, range: number, tolerance: Len, fundamental: Len): Len | undefined {
  const first = range === 0;
  if (grade > (DELTA_TO[letter] ?? 0)) {
    if (letter === 'k') return first ? len(0) : undefined;
    return letter === 'n' && !first ? len(0) : len(-fundamental);
  }
  const finer = GRADES[grade - 1]?.[range] ?? FINER_THAN_5[range];
  if (finer === undefined) return undefined;
  return len((first ? 0 : tolerance - mm(finer / 1000)) - fundamental);
}

function deviation(letter: string, grade: number, range: number): Len | undefined {
  if (letter === 'k' && (grade < K_GRADES.from || grade > K_GRADES.to)) return len(0);
  const value = DEVIATIONS[letter]?.[range];
  return value === undefined ? undefined : mm(value / 1000);
}

/** Half the band either way. Half a micrometre is five units, so it stays whole. */
function centred(tolerance: Len): Signed {
  return { lower: len(-tolerance / 2), upper: len(tolerance / 2) };
}
