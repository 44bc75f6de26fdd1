/** Roughness: what feed and nose radius leave, what each process usually leaves, and the old N numbers (withdrawn: a sheet prints Ra). um. */
import type { Standing } from './fact.ts';
import { cite } from './sources.ts';

/** Height of the ridges that a round nose leaves: f² / (8 r). mm in, um out. Soft copper alloys and a built-up edge give worse. */
export function ridgeHeight(feed: number, nose: number): number {
  return (1000 * feed ** 2) / (8 * nose);
}

/** Ra of the same: f² / (31.2 r). */
export function noseRoughness(feed: number, nose: number): number {
  return (1000 * feed ** 2) / (31.2 * nose);
}

/** Its inverse: the feed that leaves this Ra. */
export function feedForRoughness(ra: number, nose: number): number {
  return Math.sqrt((ra / 1000) * 31.2 * nose);
}

/** Ra of N1 to N12. */
export function gradeRoughness(grade: number): number | undefined {
  return GRADES[grade - 1];
}

/** Usual Ra of a process, from and to. */
export function usualRoughness(
  process: string,
): { readonly lo: number; readonly hi: number; readonly source: string; readonly standing: Standing } | undefined {
  const row = PROCESSES.find(([name]) => name === process);
  return row && { lo: row[1], hi: row[2], source: cite('process-ra'), standing: row[3] };
}

const GRADES: readonly number[] = [0.025, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.3, 12.5, 25, 50];
const PROCESSES: readonly (readonly [name: string, lo: number, hi: number, standing: Standing])[] = [
  ['drill', 1.6, 6.3, 'common practice'],
  ['ream', 0.8, 3.2, 'common practice'],
  ['turn', 0.4, 6.3, 'common practice'],
  ['bore', 0.4, 6.3, 'common practice'],
  ['part-off', 3.2, 12.5, 'from memory'],
  ['tap', 3.2, 6.3, 'from memory'],
  ['die', 3.2, 6.3, 'from memory'],
  ['saw', 1.6, 25, 'common practice'],
];
