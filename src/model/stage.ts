/** The half-section at one moment, as geometry hands it to drawing and proof: polygons and labelled edges, in units (z, diameter). */
import type { End, OpId, SurfaceId } from './ids.ts';
import type { SideFeature } from './part.ts';

export type Point = { readonly z: number; readonly d: number };
/** One edge between metal and air, walked with metal on a fixed side; `surface` is what made it, '' for sawn or unnamed. */
export type Edge = {
  readonly a: Point;
  readonly b: Point;
  readonly surface: SurfaceId | '';
  readonly stage: 'rough' | 'final' | 'bar';
  readonly by: OpId | '';
};
export type Outline = readonly Edge[];
export type Polygon = readonly Point[];
/**
 * What is made from the side or at the bench, for the outside view: it is no part of the half-section. `on`: diameter of what carries it;
 * `half`: how far it reaches either way of `z`; `size` as in the feature; `made` in this grip or earlier.
 */
export type SideShown = {
  readonly does: SideFeature['does'];
  readonly z: number;
  readonly half: number;
  readonly on: number;
  readonly size?: number;
  /** On the far side: drawn above the axis. */
  readonly far?: true;
  /** Of a slot: the end that it goes across. */
  readonly open?: End;
  readonly made: 'here' | 'before';
};
export type Stage = {
  /** Metal now, as loops (one, unless the work is in two pieces). */
  readonly outlines: readonly Outline[];
  /** Thread bands: neither metal nor air. */
  readonly threads: readonly { readonly polygon: Polygon; readonly side: 'outside' | 'inside'; readonly surface: SurfaceId }[];
  /** Taken since the grip began, as polygons. */
  readonly taken: readonly { readonly polygon: Polygon; readonly by: OpId }[];
  /** The outline when the grip began. */
  readonly before: readonly Outline[];
  readonly out: End;
  /** Done already at this moment. */
  readonly sides?: readonly SideShown[];
};
