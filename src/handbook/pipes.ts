/** Copper pipe by outside and wall: EN 1057 and the small sizes that model engineers are sold. */
import { type Len, len, mm } from '../base/units.ts';
import type { Standing } from './fact.ts';
import { cite, type SourceId } from './sources.ts';

export type Pipe = { readonly outside: Len; readonly wall: Len; readonly bore: Len; readonly source: string; readonly standing: Standing };

/** Walls of a pipe of exactly this outside, thinnest first. */
export function pipesOf(outside: Len): readonly Pipe[] {
  return pipes.filter((p) => p.outside === outside);
}

/** The pipe of the least bore that still has this bore. */
export function pipeWithBore(bore: Len): Pipe | undefined {
  return [...pipes].filter((p) => p.bore >= bore).sort((a, b) => a.bore - b.bore || a.outside - b.outside)[0];
}

/** Standard wire gauge to mm. Nothing for a gauge that is not listed. */
export function wireGauge(gauge: number): Len | undefined {
  const row = SWG.find(([g]) => g === gauge);
  return row && mm(row[1]);
}

/** mm: outside; walls. EN 1057: the leaflet's column for the fourth wall of 10 mm is unsure. */
const ROWS: readonly (readonly [outside: number, walls: readonly number[], source: SourceId, standing: Standing])[] = [
  [3, [0.5], 'model-pipe', 'from memory'],
  [4, [0.6], 'model-pipe', 'from memory'],
  [5, [0.7], 'model-pipe', 'from memory'],
  [6, [0.6, 0.8, 1], 'en-1057', 'standard'],
  [8, [0.6, 0.8, 1], 'en-1057', 'standard'],
  [10, [0.6, 0.7, 0.8, 1], 'en-1057', 'standard'],
  [12, [0.6, 0.8, 1], 'en-1057', 'standard'],
  [15, [0.7, 0.8, 1], 'en-1057', 'standard'],
];
/** Gauge, mm. Exact by the definition of the gauge; from memory. */
const SWG: readonly (readonly [gauge: number, wall: number])[] = [
  [18, 1.2192],
  [20, 0.9144],
  [22, 0.7112],
  [24, 0.5588],
  [26, 0.4572],
];

export const pipes: readonly Pipe[] = ROWS.flatMap(([outside, walls, source, standing]) =>
  walls.map((wall) => ({ outside: mm(outside), wall: mm(wall), bore: len(mm(outside) - 2 * mm(wall)), source: cite(source), standing })),
);
