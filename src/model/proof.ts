/** What the proof says: claims that hold or fail, with what they were judged by. Nothing here computes. */
import type { Len } from '../base/units.ts';
import type { DimId, OpId, PartId } from './ids.ts';
import type { Limits } from './limits.ts';
import type { Grounds } from './work.ts';

export type ClaimKind =
  | 'shape'
  | 'every surface stays'
  | 'dimension'
  | 'no air'
  | 'datum there'
  | 'grip'
  | 'fits its hold'
  | 'held'
  | 'kept untouched'
  | 'reach'
  | 'guide'
  | 'wall'
  | 'order'
  | 'speed exists'
  | 'stays in the chuck'
  | 'order of the day';
export type Claim = {
  readonly kind: ClaimKind;
  readonly at?: OpId;
  readonly about: string;
  readonly holds: boolean;
  readonly grounds: Grounds;
  readonly worst?: {
    readonly lo: Len;
    readonly hi: Len;
    readonly limits: Limits;
    /** Of the worse side. */
    readonly corner: Readonly<Record<DimId, 'lo' | 'hi'>>;
    /** Of either side: which working dimensions were at which end of their limits when it was measured. */
    readonly corners?: { readonly lo: Readonly<Record<DimId, 'lo' | 'hi'>>; readonly hi: Readonly<Record<DimId, 'lo' | 'hi'>> };
  };
};
export type Proof = {
  readonly part: PartId;
  readonly claims: readonly Claim[];
  readonly holds: boolean;
  readonly replays: number;
  /** Metal left at the targets, in cubic millimetres to the thousandth: what a scale can check. Threads count as full, side work as not done. */
  readonly volume?: number;
};
