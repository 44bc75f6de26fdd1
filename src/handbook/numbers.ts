/** Figures for working dimensions and for the numbers of each operation: what is left, what is tidy, what a bench lathe bears. */
import { type Fact, type FactTable, factTable, type Standing } from './fact.ts';

const CUSTOM = 'common practice, no source';
const WHEELS = 'derived: fits 28 of 29 published trains of module 1 wheels on a small bench lathe';
type Row = readonly [id: string, value: number, unit: string, what: string, source?: string, standing?: Standing];

const ROWS: readonly Row[] = [
  // working dimensions
  ['stock.least', 0.05, 'mm', 'least that a cut must find on a surface that was cut before, along z, at every limit'],
  ['tidy.coarse', 0.1, 'mm', 'a target is a multiple of this where it lies in the middle half of its limits'],
  ['tidy.middle', 0.05, 'mm', 'else of this'],
  ['tidy.fine', 0.01, 'mm', 'else of this; shared limits are drawn in to multiples of it'],
  ['tidy.inside', 4, 'ratio', 'a target stays this part of the band away from either limit'],
  [
    'general.shortest',
    0.5,
    'mm',
    'shortest length that general tolerances are tabled for; a shorter one is given the first row',
    'ISO 2768-1:1989 table 1',
    'standard',
  ],
  ['rough.diameter.band', 0.1, 'mm', 'band of a diameter that is cut again'],
  // change wheels
  [
    'wheels.error.most',
    0.003,
    'ratio',
    'error of the pitch that a thread of up to 5 mm engagement bears',
    'derived: 3000 ppm of 5 mm is 0.015 mm',
    'derived',
  ],
  ['wheels.clear', 15, 'count', 'A + B - C and C + D - B of a compound train, in teeth: a wheel clears the next shaft', WHEELS, 'derived'],
  ['wheels.first-pair', 80, 'count', 'A + B of a compound train, in teeth, that the banjo bridges', WHEELS, 'derived'],
  ['wheels.second-pair', 85, 'count', 'C + D of a compound train, in teeth, that the banjo bridges', WHEELS, 'derived'],
  // screw-cutting
  [
    'thread.first-pass',
    0.3,
    'ratio',
    'what stands for the number of the first pass less one, under the root',
    'Sandvik threading manual p. 114; WIDIA 2017 p. 685',
    'standard',
  ],
  ['thread.stop', 0.5, 's', 'from seeing the tool in the relief to the half-nuts out'],
  // speeds
  ['rpm.thread-held', 600, '/min', 'most for work held by its thread, with a branch, or out of round'],
  ['rpm.tidy.change', 500, '/min', 'above this speeds are given in the larger steps'],
  ['rpm.tidy.low', 25, '/min', 'speeds are given in steps of this'],
  ['rpm.tidy.high', 50, '/min', 'speeds are given in steps of this above the change'],
  // power
  ['power.share', 0.7, 'ratio', "part of the motor's rating that a cut may ask for"],
  ['power.efficiency', 0.75, 'ratio', 'from motor to tool (published 0.7-0.8)', 'Kyocera 2021-22 p. 1069', 'common practice'],
];

/** Lengths are in mm. */
export const numbersTable: FactTable = factTable(ROWS.map(toFact));

function toFact([id, value, unit, what, source, standing]: Row): Fact {
  return { id, value, unit, what, source: source ?? CUSTOM, standing: standing ?? 'common practice' };
}
