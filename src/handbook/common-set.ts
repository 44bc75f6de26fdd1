/** Tools that are taken to be in the drawer where no workshop is named: the usual set of drills and reamers of a small shop. No source. */
import { type Len, len, mm } from '../base/units.ts';

/** mm: 1 to 10 by tenths, and a few beyond. */
const FROM = 1;
const TO = 10;
const STEP = 0.1;
const BEYOND: readonly number[] = [10.2, 10.5, 11, 12, 13];
const REAMERS: readonly number[] = [3, 4, 5, 6, 8, 10];

export const commonDrills: readonly Len[] = [
  ...Array.from({ length: Math.round((TO - FROM) / STEP) + 1 }, (_, i) => len(mm(FROM) + i * mm(STEP))),
  ...BEYOND.map(mm),
];
export const commonReamers: readonly Len[] = REAMERS.map(mm);
