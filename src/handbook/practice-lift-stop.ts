/**
 * Proportions of a lift stop that the water goes through: a hollow stem with a solid nose for the ball, and holes right across behind the nose,
 * so that a lifted ball covers none of them. Each row carries its source.
 */
import { type FactTable, factTable } from './fact.ts';

const CUSTOM = 'common practice, no source';
type Row = readonly [id: string, value: number, unit: string, what: string];

const ROWS: readonly Row[] = [
  ['lift-stop.across', 2, 'count', 'holes right across a lift stop, evenly round: each opens to both sides'],
  ['lift-stop.wall', 1, 'mm', 'wall of a lift stop round its bore'],
  ['lift-stop.nose', 1.5, 'mm', 'metal in the nose of a lift stop beyond the point of the drill, before its last facing'],
  ['lift-stop.past', 0.5, 'mm', 'the bore of a lift stop at full diameter beyond its cross holes'],
  ['lift-stop.clear', 0.8, 'mm', 'between the cross holes of a lift stop and the thread behind them'],
];

export const liftStopPractice: FactTable = factTable(
  ROWS.map(([id, value, unit, what]) => ({ id, value, unit, what, source: CUSTOM, standing: 'common practice' })),
);
