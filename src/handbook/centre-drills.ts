/**
 * Centre drills of ISO 866 (form A, 60 degrees) and the holes they leave. An older series whose mouth is 2.5 pilots is still sold: a workshop
 * file states pilot and mouth of what is there. From memory, but the mouths of pilots 1 to 2.5.
 */
import { type Len, len, mm, roundHalfEven } from '../base/units.ts';
import type { Standing } from './fact.ts';
import { cite } from './sources.ts';

export type CentreDrill = {
  /** 'A2.5/5.3' */
  readonly name: string;
  readonly pilot: Len;
  readonly shank: Len;
  readonly whole: Len;
  readonly pilotLength: Len;
  /** Diameter of the countersink. */
  readonly mouth: Len;
  /** Least depth of the centre hole. */
  readonly depth: Len;
  /** Length to leave where the centre is cut off again. */
  readonly cutOff: Len;
  readonly source: string;
  readonly standing: Standing;
};

/** By rising pilot. */
export const centreDrills: readonly CentreDrill[] = [
  [1, 3.15, 31.5, 1.3, 2.12, 1.9, 3],
  [1.25, 3.15, 31.5, 1.6, 2.65, 2.3, 4],
  [1.6, 4, 35.5, 2, 3.35, 2.9, 5],
  [2, 5, 40, 2.5, 4.25, 3.7, 6],
  [2.5, 6.3, 45, 3.1, 5.3, 4.6, 7],
  [3.15, 8, 50, 3.9, 6.7, 5.9, 9],
  [4, 10, 56, 5, 8.5, 7.4, 11],
  [5, 12.5, 63, 6.3, 10.6, 9.2, 14],
  [6.3, 16, 71, 8, 13.2, 11.5, 18],
].map(([pilot = 0, shank = 0, whole = 0, pilotLength = 0, mouth = 0, depth = 0, cutOff = 0]) => ({
  name: `A${pilot}/${mouth}`,
  pilot: mm(pilot),
  shank: mm(shank),
  whole: mm(whole),
  pilotLength: mm(pilotLength),
  mouth: mm(mouth),
  depth: mm(depth),
  cutOff: mm(cutOff),
  source: cite('iso-866'),
  standing: 'from memory',
}));

/** Largest whose mouth stays under a diameter: at a seat the mouth must be gone when the pilot drill has been through. */
export function centreUnder(diameter: Len): CentreDrill | undefined {
  return centreDrills.findLast((c) => c.mouth < diameter);
}

/** From the face to where the cone ends, for a mouth of this diameter; the pilot's own length comes on top. */
export function coneDepth(pilot: Len, mouth: Len): Len {
  return len(roundHalfEven(((mouth - pilot) / 2) * Math.sqrt(3)));
}
