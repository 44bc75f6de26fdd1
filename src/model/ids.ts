/** Names that a record on paper or disk may refer to. They survive re-planning: none holds a number of the order. */

export type PartId = string; // 'seat-piece'
export type FeatureId = string; // 'seat-piece/coupling'
export type SurfaceId = string; // 'seat-piece/A', 'seat-piece/coupling'
export type OpId = string; // 'seat-piece/coupling/turn' = part / feature / step of its method
export type DimId = string; // 'seat-piece/S-B' = part / the two surfaces; 'seat-piece/D.coupling' = a diameter
export type GripId = string; // 'seat-piece/mandrel.seat-thread.second'
export type RuleId = string; // 'seat-face-after-drill'
export type FactId = string; // 'grip.heavy.ratio'

/** The two ends of the PART, fixed by its drawing. z counts from 'first' (z = 0) toward 'second'. */
export type End = 'first' | 'second';

export const other = (end: End): End => (end === 'first' ? 'second' : 'first');
