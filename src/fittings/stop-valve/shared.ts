/** The sizes of a stop valve that its parts share. */
import type { Len } from '../../base/units.ts';
import type { EndForm } from '../ends.ts';
import type { ThreadPair } from '../threads.ts';
import type { StopValveAsked } from './asked.ts';

export type StopValveSizes = {
  /** of the seat */
  readonly bore: Len;
  /** included, degrees */
  readonly cone: number;
  readonly plug: Len;
  readonly tip: Len;
  /** From the flat of the tip to where the cone is as wide as the seat, and on to the plug's full diameter. */
  readonly coneBelow: Len;
  readonly coneAbove: Len;
  /** Lift at which the ring round the cone passes as much as the bore, and the travel to the back stop. */
  readonly fullLift: Len;
  readonly travel: Len;
  readonly chamber: Len;
  readonly outlet: Len;
  /** In the barrel, for a branch's spigot. */
  readonly crossHole: Len;
  readonly stem: Len;
  readonly square: Len;
  readonly packing: Len;
  readonly rings: number;
  readonly box: Len;
  readonly boxDepth: Len;
  readonly wheel: Len;
  readonly ends: Ends;
  readonly bonnet: ThreadPair;
  readonly spindle: ThreadPair;
  readonly gland: ThreadPair;
  readonly coupling: ThreadPair;
  readonly end: ThreadPair;
};

/** How each end meets its pipe. In angle pattern the inlet is the body itself: it has a union. */
export type Ends = { readonly inlet: EndForm; readonly outlet: EndForm; readonly pipe: StopValveAsked['pipe'] };
