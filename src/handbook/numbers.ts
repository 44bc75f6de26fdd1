/** Figures for working dimensions and for the numbers of each operation: what is left, what is tidy, what a bench lathe bears. */
import { type Fact, type FactTable, factTable, type Standing } from './fact.ts';
import { cite } from './sources.ts';

const CUSTOM = 'common practice, no source';
const WHEELS = 'derived: fits 28 of 29 published trains of module 1 wheels on a small bench lathe';
type Row = readonly [id: string, value: number, unit: string, what: string, source?: string, standing?: Standing];

const ISCAR = cite('iscar-kc');
const RECALLED = cite('kc-rest');
const KC: readonly (readonly [group: string, value: number, exponent: number, source: string, standing: Standing])[] = [
  ['brass', 700, 0.27, ISCAR, 'standard'],
  ['gunmetal', 700, 0.27, ISCAR, 'standard'],
  ['bronze', 1350, 0.25, RECALLED, 'from memory'],
  ['copper', 1350, 0.25, RECALLED, 'from memory'],
  ['303', 2150, 0.2, ISCAR, 'standard'],
  ['316', 2150, 0.2, ISCAR, 'standard'],
  ['silver steel', 1775, 0.24, ISCAR, 'standard'],
  ['mild steel', 1350, 0.21, ISCAR, 'standard'],
  ['aluminium', 800, 0.25, ISCAR, 'standard'],
];

const ROWS: readonly Row[] = [
  // working dimensions
  ['stock.least', 0.05, 'mm', 'least that a cut must find on a surface that was cut before, along z, at every limit'],
  ['tidy.coarse', 0.1, 'mm', 'a target is a multiple of this where it lies in the middle half of its limits'],
  ['tidy.middle', 0.05, 'mm', 'else of this'],
  ['tidy.fine', 0.01, 'mm', 'else of this; shared limits are drawn in to multiples of it at the finest'],
  ['tidy.gives', 4, 'ratio', 'this part of either side of shared limits may be given up for limits on a coarser step'],
  ['tidy.even', 0.25, 'ratio', 'shared limits are made even where that takes no more than this share of their band'],
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
  ['thread.stop', 1, 's', 'from seeing the tool in the relief to the half-nuts out'],
  [
    'thread.depth.60.outside',
    0.613435,
    'ratio',
    'depth of an outside thread of 60 degrees, in pitches',
    'ISO 68-1: 17/24 of 0.866025',
    'standard',
  ],
  [
    'thread.depth.60.inside',
    0.541266,
    'ratio',
    'depth of an inside thread of 60 degrees, in pitches',
    'ISO 68-1: 5/8 of 0.866025',
    'standard',
  ],
  ['thread.depth.55.outside', 0.640327, 'ratio', 'depth of a Whitworth thread, in pitches', 'BS 84, from memory', 'from memory'],
  ['thread.depth.55.inside', 0.640327, 'ratio', 'depth of a Whitworth thread, in pitches', 'BS 84, from memory', 'from memory'],
  ['thread.depth.47.5.outside', 0.6, 'ratio', 'depth of a BA thread, in pitches', 'BS 93, from memory', 'from memory'],
  ['thread.depth.47.5.inside', 0.6, 'ratio', 'depth of a BA thread, in pitches', 'BS 93, from memory', 'from memory'],
  ['hexagon.corners', 1.154701, 'ratio', 'across corners of a hexagon, of across flats', 'derived: 1 / cos 30 degrees', 'derived'],
  // speeds
  ['rpm.thread-held', 600, '/min', 'most for work held by its thread, with a branch, or out of round'],
  ['knurl.share', 0.5, 'ratio', 'speed of a knurl, of that for turning the same diameter', 'about half, from memory', 'from memory'],
  ['rpm.press.least', 100, '/min', 'least speed that is told for a drill press whose own nobody said'],
  ['rpm.press.most', 3000, '/min', 'most that is told for it'],
  ['rpm.tidy.change', 500, '/min', 'above this speeds are given in the larger steps'],
  ['rpm.tidy.low', 25, '/min', 'speeds are given in steps of this'],
  ['rpm.tidy.high', 50, '/min', 'speeds are given in steps of this above the change'],
  // power
  ['minute', 60, 's', 'a minute', 'definition', 'standard'],
  ['leg.share', 0.7, 'ratio', 'a turned diameter that has fallen to this share of what it was: how deep it is cut is reckoned anew'],
  ['leg.speed', 0.5, 'ratio', 'and to this share: the speed is set anew'],
  ['leg.saves', 4, 'count', 'cuts that are saved so, or made faster, where it is told'],
  ['power.share', 0.7, 'ratio', "part of the motor's rating that a cut may ask for"],
  ['power.efficiency', 0.75, 'ratio', 'from motor to tool (published 0.7-0.8)', 'Kyocera 2021-22 p. 1069', 'common practice'],
  // force: N/mm2 at a chip of 1 mm thick, and the exponent of its thickness
  ...KC.flatMap(([group, value, exponent, source, standing]): Row[] => [
    [`kc.${group}`, value, 'N/mm2', `specific cutting force of ${group} at a chip of 1 mm`, source, standing],
    [`kc.${group}.exponent`, exponent, 'ratio', `fall of the cutting force of ${group} with the chip's thickness`, source, standing],
  ]),
  [
    'kc.thin',
    1.3,
    'ratio',
    'on the cutting force where the chip is thinner than the figures were made for',
    'derived from the spread of published figures',
    'derived',
  ],
];

/** Lengths are in mm. */
export const numbersTable: FactTable = factTable(ROWS.map(toFact));

function toFact([id, value, unit, what, source, standing]: Row): Fact {
  return { id, value, unit, what, source: source ?? CUSTOM, standing: standing ?? 'common practice' };
}
