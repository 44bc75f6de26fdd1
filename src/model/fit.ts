/** What surfaces owe each other beyond their own limits: how true they run together, how close one is made to another. */
import type { Len } from '../base/units.ts';
import type { DimId, FeatureId, PartId, SurfaceId } from './ids.ts';
import type { LimitSource, Limits } from './limits.ts';

/**
 * A shaft that is turned to its hole, or a hole that is bored to its shaft, as the other came out: so much room between them, on diameter. Its own
 * limits are what comes of all that the drawing of the other allows. `by`: the holes of another part that is made here too.
 */
export type MadeTo = {
  readonly clear: Pick<Limits, 'lo' | 'hi'>;
  readonly by?: { readonly part: PartId; readonly holes: readonly FeatureId[] };
};

/** How true `b` must run to `a`: full indicator reading. Checked through the run-out of every re-grip between them. */
export type Truth = { readonly id: DimId; readonly a: SurfaceId; readonly b: SurfaceId; readonly asks: Len; readonly from: LimitSource };

/** That part's finishing must come before this feature is cut. */
export type WaitsFor = { readonly feature: FeatureId; readonly part: PartId; readonly why: 'measure-and-fit' | 'joined' | 'gauges' };
