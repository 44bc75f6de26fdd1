/** Figures of sums across parts: what a reading is worth, joint rings before and after tightening, packing before and after. */
import { type FactTable, factTable, type Standing } from './fact.ts';
import { cite, type SourceId } from './sources.ts';

type Row = readonly [id: string, value: number, unit: string, what: string, source?: SourceId, standing?: Standing];
const ROWS: readonly Row[] = [
  ['reading', 0.02, 'mm', 'either way: a length or depth read by caliper or depth gauge with divisions of 0.02'],
  ['ring.band', 0.05, 'mm', 'either way on the thickness of a copper joint ring as bought'],
  ['ring.tight.band', 0.03, 'mm', 'either way on the thickness of the same ring, annealed, as tightened'],
  ['packing.band', 0.1, 'ratio', 'either way on the width of braided packing as bought, of its width'],
  ['ball.grade', 200, 'count', 'grade of ball that a valve is reckoned to get, the coarsest that is ample for one'],
];

/** Lengths are in mm. */
export const chainFacts: FactTable = factTable(
  ROWS.map(([id, value, unit, what, source = 'custom', standing = 'common practice']) => ({
    ...{ id, value, unit, what, standing },
    source: cite(source),
  })),
);
