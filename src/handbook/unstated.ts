/** What a length that the drawing does not state is held to, either way. */
import { type Len, len, mm } from '../base/units.ts';
import { generalTolerance } from './iso2768.ts';
import { numbersTable } from './numbers.ts';

/** ISO 2768-1 m; the table begins at 0.5 mm, and shorter lengths are given its first row. */
export const unstated = (length: Len): Len => generalTolerance(len(Math.max(length, mm(numbersTable.value('general.shortest')))), 'm');
