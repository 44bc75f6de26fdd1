/** Tools that are taken to be in the drawer where no workshop is named: the usual set of drills and reamers of a small shop. No source. */
import { type Len, len, mm } from '../base/units.ts';
import { type CentreDrill, centreDrills } from './centre-drills.ts';

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
/** Pilots of the centre drills that lie in most drawers. */
const PILOTS: readonly number[] = [1, 1.6, 2.5];
export const commonCentreDrills: readonly CentreDrill[] = centreDrills.filter((c) => PILOTS.map(mm).includes(c.pilot));
export const commonReamers: readonly Len[] = REAMERS.map(mm);
