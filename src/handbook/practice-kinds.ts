/** Proportions of unions, plugs and soldered joints that are asked for by themselves. Each row carries its source. */
import { type FactTable, factTable, type Standing } from './fact.ts';

const CUSTOM = 'common practice, no source';
const AWS = 'AWS C3.1:1963 as reported in brazing training (vacaero.com): at least three times the thinner part';
const TUBE = 'brazing trade guidance (alpha-braze.com): one tube diameter up to 25 mm';
const RUN = 'brazing trade guidance (silbraze.com.au): solder fed from one side runs about 20 mm';
const GAP = 'encyclopaedia text on brazing: 0.03 to 0.08 mm a side';
const WIDE = 'commonly printed for silver solder: 0.05 to 0.15 mm a side';
type Row = readonly [id: string, value: number, unit: string, what: string, source?: string, standing?: Standing];

const ROWS: readonly Row[] = [
  ['solder.overlap.thin', 3, 'ratio', 'least overlap of a soldered joint, of the thinner wall', AWS],
  ['solder.overlap.tube', 1, 'ratio', 'overlap of a pipe in its socket, of its outside', TUBE],
  ['solder.gap.least', 0.06, 'mm', 'closest fit of a silver-soldered joint, on diameter', GAP],
  ['solder.gap.most', 0.3, 'mm', 'widest fit of a silver-soldered joint, on diameter', WIDE, 'from memory'],
  ['solder.run', 20, 'mm', 'longest overlap that solder fed from one side fills', RUN],
  [
    'square.most',
    0.8,
    'ratio',
    'greatest square across flats on a round, of the round: flats get narrow',
    'DIN 79:2004: 0.75 to 0.80',
    'standard',
  ],
  ['nipple.tail.free', 4, 'mm', 'tail of a nipple beyond its socket for the pipe'],
  ['adaptor.bore', 2, 'mm', 'bore of a pump adaptor, where none is asked'],
  ['adaptor.flats', 6, 'mm', 'plain length on the tail of a pump adaptor for its spanner flats'],
  ['blank.tail', 3, 'mm', 'tail of a blank nipple out of its nut, to hold it by'],
  ['gauge-nut.least', 4, 'ratio', 'least length of a gauge nut, in pitches'],
  ['mandrel.least', 3, 'ratio', 'least full thread on a mandrel, in pitches, beyond the relief of the work'],
  ['gauge-nut.length', 0.8, 'ratio', 'length of a gauge nut, of its thread'],
];

export const kindsPractice: FactTable = factTable(
  ROWS.map(([id, value, unit, what, source = CUSTOM, standing = 'common practice']) => ({ id, value, unit, what, source, standing })),
);
