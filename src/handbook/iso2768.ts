/**
 * ISO 2768-1: general tolerances of lengths, radii and chamfers where a drawing states none. Below 0.5 mm the standard wants the
 * tolerance on the size itself; above 400 mm this table ends. Outside it nothing is given.
 */
import { type Len, mm, toMm } from '../base/units.ts';
import type { Standing } from './fact.ts';
import { cite, type SourceId } from './sources.ts';

export type GeneralClass = 'f' | 'm' | 'c';
export type GeneralTolerance = {
  /** Either way. */
  readonly half: Len;
  /** 'ISO 2768-1 m' */
  readonly as: string;
  readonly source: string;
  readonly standing: Standing;
};

/** Table 1. Nothing under 0.5 mm or over 400 mm. */
export function lookUpGeneral(size: Len, cls: GeneralClass): GeneralTolerance | undefined {
  return lookUp(LINEAR, size, cls);
}

/** Table 2: outside radii and heights of chamfers. Nothing under 0.5 mm or over 400 mm. */
export function lookUpChamfer(height: Len, cls: GeneralClass): GeneralTolerance | undefined {
  return lookUp(CHAMFER, height, cls);
}

/** Table 1, either way. Throws RangeError where the table has no row: a design asks only for sizes that it has checked. */
export function generalTolerance(size: Len, cls: GeneralClass): Len {
  const found = lookUpGeneral(size, cls);
  if (!found) throw new RangeError(`ISO 2768-1 has no general tolerance for ${toMm(size)} mm`);
  return found.half;
}

/** `over` < size <= `to`; the first row holds 0.5 itself. mm. Table 1 classes f and m, table 2 f, m, c were seen; table 1 c is from memory. */
export type GeneralRow = { readonly over: number; readonly to: number; readonly f: number; readonly m: number; readonly c: number };
export const LINEAR: readonly GeneralRow[] = [
  { over: 0.5, to: 3, f: 0.05, m: 0.1, c: 0.2 },
  { over: 3, to: 6, f: 0.05, m: 0.1, c: 0.3 },
  { over: 6, to: 30, f: 0.1, m: 0.2, c: 0.5 },
  { over: 30, to: 120, f: 0.15, m: 0.3, c: 0.8 },
  { over: 120, to: 400, f: 0.2, m: 0.5, c: 1.2 },
];
export const CHAMFER: readonly GeneralRow[] = [
  { over: 0.5, to: 3, f: 0.2, m: 0.2, c: 0.4 },
  { over: 3, to: 6, f: 0.5, m: 0.5, c: 1 },
  { over: 6, to: 400, f: 1, m: 1, c: 2 },
];

function lookUp(table: readonly GeneralRow[], size: Len, cls: GeneralClass): GeneralTolerance | undefined {
  const value = toMm(size);
  const row = table.find(({ over, to }, i) => (value > over || (i === 0 && value === over)) && value <= to);
  if (!row) return undefined;
  const recalled = table === LINEAR && cls === 'c';
  const source: SourceId = recalled ? 'iso-2768-1-rest' : 'iso-2768-1';
  return { half: mm(row[cls]), as: `ISO 2768-1 ${cls}`, source: cite(source), standing: recalled ? 'from memory' : 'standard' };
}
