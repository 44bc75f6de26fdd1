/** Hand and machine reamers: which sizes are sold, and what an H7 reamer measures. Sizes and tolerance are from memory of ISO 236 and ISO 522. */
import { type Len, len, mm } from '../base/units.ts';
import { fitLimits, toleranceGrade } from './iso286.ts';
import { cite } from './sources.ts';

export const reamers: readonly Len[] = [
  1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 22, 24, 25,
].map(mm);

/** The sold size nearest to a diameter, of two as near the smaller. */
export function nearestReamer(diameter: Len): Len {
  return [...reamers].sort((a, b) => Math.abs(a - diameter) - Math.abs(b - diameter) || a - b)[0] ?? diameter;
}

/**
 * A reamer for a hole of this grade measures from 50 to 85 % of the tolerance over its least size (35 % wide, 15 % under the top), each to the
 * micrometre above. Nothing outside the table of grades.
 */
export function reamerFor(size: Len, grade: number): { readonly lo: Len; readonly hi: Len } | undefined {
  const hole = fitLimits(size, `H${grade}`);
  const band = toleranceGrade(size, grade);
  if (!hole || band === undefined) return undefined;
  const hi = hole.hi - up(0.15 * band);
  return { lo: len(hi - up(0.35 * band)), hi: len(hi) };
}

export const reamerSource: { readonly source: string; readonly standing: 'from memory' } = {
  source: cite('iso-522'),
  standing: 'from memory',
};

/** To the next whole micrometre. */
function up(units: number): number {
  return Math.ceil(units / 10) * 10;
}
