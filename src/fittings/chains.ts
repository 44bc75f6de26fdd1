/**
 * Chains across parts, ready made: a lift, a gland's take-up, a spindle's travel, the engagement of two threads, the clearance of a fit. A
 * fitting hands over links, in the order in which they are measured; words: `chain.<id>`, and the ids named in `says`, `together`, `proof`.
 */
import { type Len, len, minus } from '../base/units.ts';
import type { Chain, ChainLink, Limits } from '../model/part.ts';

/** Least wanted, and nothing asked above: a take-up, a travel, an engagement may be more. */
export function atLeast(least: Len, as: string): Limits {
  return { lo: least, hi: least, target: least, from: { kind: 'role', as } };
}

export type LiftAsk = {
  readonly id: string;
  /** Words' id of the one reading that all of `depth` is measured in, parts put together. */
  readonly reading: string;
  /** From the face that the cap closes down to the top of what is lifted: up along the housing +1, what stands in it -1. */
  readonly depth: readonly ChainLink[];
  /** What comes between when the cap is on: its joint ring. */
  readonly between: readonly ChainLink[];
  /** Its stop, from the closing face to the end: -1, cut last. */
  readonly stop: ChainLink;
  readonly stopDim: string;
  readonly asks: Limits;
  readonly proof?: string;
};

/** What is left between the thing that is lifted and its stop. Measured and fitted: the stop is cut to depth and ring, less the lift. */
export function liftChain({ id, reading, depth, between, stop, stopDim, asks, proof }: LiftAsk): Chain {
  return {
    ...{ id, links: [...depth.map((link) => ({ ...link, together: reading })), ...between, stop], asks, how: 'measure and fit' },
    fitted: { part: stop.part, dim: stopDim },
    ...(proof === undefined ? {} : { proof }),
  };
}

export type TakeUpAsk = {
  readonly id: string;
  /** Packing as it is when the gland first bears on it: +1. */
  readonly packed: ChainLink;
  /** The same rings before: +1. */
  readonly loose: ChainLink;
  /** From the gland's shoulder to the end of its nose: +1. */
  readonly nose: ChainLink;
  /** From the mouth of the box to its floor: -1. */
  readonly box: ChainLink;
  /** Sums after which the gland can go no further though its shoulder stands clear: its thread runs out. */
  readonly rivals?: readonly (readonly ChainLink[])[];
  /** Least take-up that is to be left, and how far the nose must enter the box over loose packing. */
  readonly least: Len;
  readonly entry: Len;
};

/**
 * Two chains: `id`, how far the gland's shoulder stands off the box when it first bears (packing + nose - box), whichever end comes first; and
 * `id`.entry, how much of the box is left above loose packing for the nose to enter and be guided by.
 */
export function takeUpChains({ id, packed, loose, nose, box, rivals, least, entry }: TakeUpAsk): readonly Chain[] {
  return [
    {
      ...{ id, links: [box, packed, nose], asks: atLeast(least, 'take-up'), open: 'above', how: 'blind' },
      ...(rivals ? { rivals } : {}),
    },
    { id: `${id}.entry`, links: [turned(box), turned(loose)], asks: atLeast(entry, 'entry'), open: 'above', how: 'blind' },
  ];
}

export type TravelAsk = {
  readonly id: string;
  /** From the stop at one end to the stop at the other, along what stands still: together +1. */
  readonly housing: readonly ChainLink[];
  /** Between the two faces that meet those stops, along what moves: together -1. */
  readonly moving: readonly ChainLink[];
  readonly rivals?: readonly (readonly ChainLink[])[];
  readonly asks: Limits;
  readonly open?: 'above';
  /** The length that is cut last, where it is measured and fitted. */
  readonly fitted?: NonNullable<Chain['fitted']>;
  readonly proof?: string;
};

/** How far a spindle goes from stop to stop. */
export function travelChain({ id, housing, moving, rivals, asks, open, fitted, proof }: TravelAsk): Chain {
  return {
    ...{ id, links: [...housing, ...moving], asks, how: fitted ? 'measure and fit' : 'blind' },
    ...(rivals ? { rivals } : {}),
    ...(open ? { open } : {}),
    ...(fitted ? { fitted } : {}),
    ...(proof === undefined ? {} : { proof }),
  };
}

/** Where full thread begins and ends, counted into the hole from the face at which the two parts meet; joint rings belong to it. */
export type ThreadSpan = { readonly begins: readonly ChainLink[]; readonly ends: readonly ChainLink[] };
export type EngagementAsk = {
  readonly id: string;
  readonly outside: ThreadSpan;
  readonly inside: ThreadSpan;
  readonly least: Len;
};

/**
 * Overlap of two threads: from the later beginning to the earlier end. Whichever beginning meets whichever end is one sum, and the least of
 * the four is the overlap, at any limits.
 */
export function engagementChain({ id, outside, inside, least }: EngagementAsk): Chain {
  const spans = [outside, inside];
  const ways = spans
    .flatMap((last) => spans.map((first) => cancelled([...last.ends, ...first.begins.map(turned)])))
    .sort((a, b) => nominalOf(a) - nominalOf(b));
  const [links = [], ...rivals] = ways;
  return { id, links, rivals, asks: atLeast(least, 'engagement'), open: 'above', how: 'blind' };
}

export type ClearanceAsk = { readonly id: string; readonly hole: ChainLink; readonly shaft: ChainLink; readonly asks: Limits };

/** Hole less shaft, on diameter: least and greatest clearance of what is to go together. */
export function clearanceChain({ id, hole, shaft, asks }: ClearanceAsk): Chain {
  return { id, links: [{ ...hole, sign: 1 }, turned({ ...shaft, sign: 1 })], asks, how: 'blind' };
}

/** The same link, counted the other way. */
export const turned = (link: ChainLink): ChainLink => ({ ...link, sign: link.sign === 1 ? -1 : 1 });

/** A sum of the nominal sizes. */
export const nominalOf = (links: readonly ChainLink[]): Len => len(links.reduce((sum, { sign, nominal }) => sum + sign * nominal, 0));

/** What stands in both halves of a sum is the same piece of metal: it counts in neither. */
function cancelled(links: readonly ChainLink[]): readonly ChainLink[] {
  const left: ChainLink[] = [];
  for (const link of links) {
    const i = left.findIndex((one) => one.part === link.part && one.a === link.a && one.b === link.b && one.sign !== link.sign);
    if (i < 0) left.push(link);
    else left.splice(i, 1);
  }
  return left;
}

/** What is asked, less what a chain comes to at its nominal sizes: nothing, where the drawing is laid out for it. */
export const offBy = ({ links, asks }: Chain): Len => minus(asks.target, nominalOf(links));
