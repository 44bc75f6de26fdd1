/**
 * Balls as they are bought: sizes from 1.5 to 20 mm, grades, and what they are made of. Inch sizes are exact sixty-fourths, rounded once.
 * A seat wants roundness, not hardness: grade 100 or 200 is ample for a valve.
 */
import { inch, type Len, mm } from '../base/units.ts';
import type { Standing } from './fact.ts';
import { cite } from './sources.ts';

export type BallSize = {
  readonly diameter: Len;
  readonly name: string;
  readonly system: 'metric' | 'inch';
  readonly source: string;
  readonly standing: Standing;
};
export type BallMaterial = {
  readonly id: string;
  readonly aliases: readonly string[];
  /** Will a magnet hold it? 'faint': a weak pull is possible after cold work, and by itself proves little. */
  readonly magnetic: 'no' | 'faint' | 'yes';
  /** kg/m3 */
  readonly density: number;
  /** Fit for the feed of a boiler. */
  readonly forSteam: boolean;
  /** Words' ids. */
  readonly cautions: readonly string[];
  readonly source: string;
  readonly standing: Standing;
};
/** Micrometres. */
export type BallGrade = {
  readonly grade: number;
  readonly roundness: number;
  readonly roughness: number | undefined;
  readonly lot: number;
};

/** A ball of exactly this size that is sold, metric before inch. */
export function ballOf(diameter: Len): BallSize | undefined {
  return ballSizes.find((ball) => ball.diameter === diameter);
}

/** The sold size nearest to a diameter; of two as near the smaller. Always one: the list is not empty. */
export function nearestBall(diameter: Len): BallSize | undefined {
  return [...ballSizes].sort((a, b) => Math.abs(a.diameter - diameter) - Math.abs(b.diameter - diameter) || a.diameter - b.diameter)[0];
}

export function findBallMaterial(name: string): BallMaterial | undefined {
  return ballMaterials.find((m) => [m.id, ...m.aliases].some((known) => plain(known) === plain(name)));
}

/** ISO 3290-1: deviation from roundness, roughness, variation of a lot. Nothing for a grade that is not tabled. */
export function ballGrade(grade: number): BallGrade | undefined {
  return isoGrades.find((row) => row.grade === grade);
}

/** ABMA Std 10: the same, and how far a lot may lie from its nominal size (um). */
export function abmaGrade(grade: number): (BallGrade & { readonly plus: number; readonly minus: number }) | undefined {
  const row = ABMA.find(([g]) => g === grade);
  if (!row) return undefined;
  const [, roundness, roughness, lot, plus, minus] = row;
  return { grade, roundness, roughness: Number.isNaN(roughness) ? undefined : roughness, lot, plus, minus };
}

const METRIC: readonly number[] = [1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 10, 12, 15, 16, 20];
const METRIC_RECALLED: readonly number[] = [5.5, 6.5, 7, 8, 9, 11, 13, 14, 18];
/** Sixty-fourths of an inch. */
const INCH: readonly number[] = [4, 6, 7, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 38, 40, 42, 44, 48, 50];
const INCH_RECALLED: readonly number[] = [5, 9, 11, 13, 15, 46];

/** By rising size. */
export const ballSizes: readonly BallSize[] = [
  ...METRIC.map((d) => metric(d, 'common practice')),
  ...METRIC_RECALLED.map((d) => metric(d, 'from memory')),
  ...INCH.map((n) => inches(n, 'common practice')),
  ...INCH_RECALLED.map((n) => inches(n, 'from memory')),
].sort((a, b) => a.diameter - b.diameter);

export const ballMaterials: readonly BallMaterial[] = [
  ball('316', ['1.4401', 'AISI 316'], 'faint', 7950, true, []),
  ball('304', ['1.4301', 'AISI 304'], 'faint', 7900, true, ['pits-sooner']),
  ball('420C', ['1.4034', 'AISI 420C'], 'yes', 7700, false, ['pits']),
  ball('440C', ['1.4125', 'AISI 440C'], 'yes', 7650, false, ['pits']),
  ball('52100', ['100Cr6', 'chrome steel', 'AISI 52100'], 'yes', 7820, false, ['rusts']),
  ball('bronze', ['phosphor bronze', 'brass'], 'no', 8800, true, []),
  ball('nitrile', ['NBR', 'rubber'], 'no', 1300, false, ['cold-only']),
  ball('PTFE', [], 'no', 2150, false, ['softens']),
];

const NONE = Number.NaN;
/** Grade; um: roundness, Ra, lot, gauge interval. */
const ISO: readonly (readonly [grade: number, roundness: number, roughness: number, lot: number, interval: number])[] = [
  [3, 0.08, 0.01, 0.13, 0.5],
  [5, 0.13, 0.014, 0.25, 1],
  [10, 0.25, 0.02, 0.5, 1],
  [16, 0.4, 0.025, 0.8, 2],
  [20, 0.5, 0.032, 1, 2],
  [24, 0.6, 0.04, 1.2, 2],
  [28, 0.7, 0.05, 1.4, 2],
  [40, 1, 0.06, 2, 4],
  [60, 1.5, 0.08, 3, 6],
  [100, 2.5, 0.1, 5, 10],
  [200, 5, 0.15, 10, 15],
];
/** Grade; um: roundness, Ra, lot, nominal plus, minus. (Grade 16 exists; its figures were not seen.) */
const ABMA: readonly (readonly [grade: number, roundness: number, roughness: number, lot: number, plus: number, minus: number])[] = [
  [10, 0.25, 0.025, 0.5, 1.25, 1],
  [24, 0.6, 0.05, 1.2, 2.5, 2.5],
  [48, 1.2, 0.08, 2.4, 5, 5],
  [100, 2.5, 0.125, 5, 12.5, 12.5],
  [200, 5, 0.2, 10, 25, 25],
  [500, 13, NONE, 25, 50, 50],
  [1000, 25, NONE, 50, 125, 125],
];
export const isoGrades: readonly BallGrade[] = ISO.map(([grade, roundness, roughness, lot]) => ({ grade, roundness, roughness, lot }));

function metric(d: number, standing: Standing): BallSize {
  return { diameter: mm(d), name: `${d} mm`, system: 'metric', source: from(standing), standing };
}

function inches(n: number, standing: Standing): BallSize {
  return { diameter: inch(n / 64), name: `${lowest(n)} in`, system: 'inch', source: from(standing), standing };
}

function from(standing: Standing): string {
  return cite(standing === 'from memory' ? 'ball-sizes-rest' : 'ball-sizes');
}

/** Magnetism was read at makers'; densities of steels and the cautions are from memory. */
function ball(
  id: string,
  aliases: readonly string[],
  magnetic: BallMaterial['magnetic'],
  density: number,
  forSteam: boolean,
  cautions: readonly string[],
): BallMaterial {
  return { id, aliases, magnetic, density, forSteam, cautions, source: cite('ball-materials'), standing: 'common practice' };
}

function lowest(n: number): string {
  let [over, under] = [n, 64];
  while (over % 2 === 0 && under > 1) [over, under] = [over / 2, under / 2];
  return `${over}/${under}`;
}

function plain(name: string): string {
  return name.toLowerCase().replace(/[\s-]+/g, '');
}
