/** Sums of lengths through several parts: a lift, a take-up, a travel, an engagement, a clearance. Nothing here computes. */
import type { Len } from '../base/units.ts';
import type { DimId, PartId, SurfaceId } from './ids.ts';
import type { Limits } from './limits.ts';

/**
 * What a link is, where it is no drawn length of a planned part. `bought`: a size as it is sold, which can be measured. `tightened` (a joint
 * ring) and `packed` (compressed packing) are what they will come to be: nobody can measure them before, so their limits stay.
 * `bench`: a length that is set by hand or by a tool and can be measured.
 */
export type LinkKind = 'bought' | 'tightened' | 'packed' | 'bench';

/**
 * From `a` to `b`, a length without sign; `sign` says how it counts. On a planned part `a` and `b` are its faces, or `a` one of its cylinders
 * and `b` 'axis': then the link is that diameter.
 */
export type ChainLink = {
  readonly part: PartId;
  readonly a: SurfaceId;
  readonly b: SurfaceId;
  readonly nominal: Len;
  readonly sign: 1 | -1;
  /** Words' id, where it is no drawn length of one part: a ring as tightened, a ball on its seat. */
  readonly says?: string;
  readonly by?: LinkKind;
  /** Of a link that is no length of a planned part: what it may come to. */
  readonly limits?: Limits;
  /** Words' id of one reading: the links that share it stand put together and are measured at once. */
  readonly together?: string;
};

/** Links in the order in which they are measured; `fitted` is the dimension cut last, to the measured sum. */
export type Chain = {
  readonly id: string;
  readonly links: readonly ChainLink[];
  /** Other ends that the same play may come to: whichever sum is least is the play (a thread may run out before a shoulder meets). */
  readonly rivals?: readonly (readonly ChainLink[])[];
  readonly asks: Limits;
  /** Where only the lower limit of `asks` counts. */
  readonly open?: 'above';
  readonly how: 'blind' | 'measure and fit';
  readonly fitted?: { readonly part: PartId; readonly dim: DimId };
  /** Words' id of how the sum is proved on what was put together. */
  readonly proof?: string;
};
