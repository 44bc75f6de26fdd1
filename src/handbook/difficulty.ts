/**
 * How hard a length is to come by, so that what a dimension allows is shared in proportion: the harder cut gets the wider limits. Weights are
 * pure numbers beside the easiest cut, which is 1; those of a process and those of its place are multiplied.
 */
import { type FactTable, factTable, type Standing } from './fact.ts';
import { cite, type SourceId } from './sources.ts';

/** What one shop says of its own processes. */
export type OwnWeights = readonly { readonly process: string; readonly weight: number }[];

/** Of a process, an operation's verb; one that the table does not name is as easy as any. */
export function weightOf(process: string, own: OwnWeights = []): number {
  const stated = own.find((one) => one.process === process)?.weight;
  return stated ?? difficulty.rows.find((row) => row.id === process)?.value ?? 1;
}

type Row = readonly [id: string, value: number, unit: string, what: string, source?: SourceId, standing?: Standing];
const ROWS: readonly Row[] = [
  // processes
  ['face', 1, 'ratio', 'a face by the top slide, measured by micrometer or caliper'],
  ['turn', 1, 'ratio', 'a shoulder by the top slide, measured by depth gauge'],
  ['face-down', 1, 'ratio', 'a shoulder by the top slide, to be cut again'],
  ['groove', 1.5, 'ratio', 'wall of a groove: the tool hides what it cuts'],
  ['bore', 2, 'ratio', 'floor of a bore: out of sight, measured by depth gauge'],
  ['ream', 3, 'ratio', 'depth by the tailstock'],
  ['d-bit', 3, 'ratio', 'depth by the tailstock'],
  ['drill', 3, 'ratio', 'depth by the tailstock, from full diameter'],
  ['centre', 3, 'ratio', 'depth by the tailstock'],
  ['part-off', 3, 'ratio', 'a blade that wanders'],
  ['cut-stub', 3, 'ratio', 'a blade that wanders'],
  ['saw-off', 10, 'ratio', 'by eye'],
  // where
  ['inside', 1.5, 'ratio', 'a length inside a bore: not seen, and measured from its mouth'],
  ['long', 1.5, 'ratio', 'a length beyond the reach of the usual micrometer'],
  ['long.from', 25, 'mm', 'range of the usual micrometer'],
  ['held-again', 1.2, 'ratio', 'work taken out and put back, pushed against its stop'],
  ['on-mandrel', 1.4, 'ratio', 'work screwed or wrung on a mandrel, its datum against a shoulder out of sight'],
];

export const difficulty: FactTable = factTable(
  ROWS.map(([id, value, unit, what, source = 'custom', standing = 'common practice']) => ({
    ...{ id, value, unit, what, standing },
    source: cite(source),
  })),
);
