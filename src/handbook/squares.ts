/**
 * Squares filed on a round: what is left of the round, and which pairs of round and square are in use. Geometry derived here; pairs of DIN 10 and
 * DIN 79 were seen, those of ISO 237 are from memory.
 */
import { type Len, len, mm, roundHalfEven } from '../base/units.ts';
import { flatDepth, flatWidth, squareCorners } from './bar-stock.ts';
import type { Standing } from './fact.ts';
import { cite, type SourceId } from './sources.ts';

export type SquareFigures = {
  /** Taken off each flat. */
  readonly flat: Len;
  /** Of the flat: the whole side where the corners are sharp. */
  readonly width: Len;
  readonly sharpCorner: Len;
  /** Read over one finished flat and the round opposite. */
  readonly overOne: Len;
  readonly corners: 'sharp' | 'round';
};
export type SquarePair = { readonly round: Len; readonly across: Len; readonly source: string; readonly standing: Standing };

/** A square `across` flats on a bar of `round`. Throws RangeError where the flat would not touch the bar. */
export function squareOn(round: Len, across: Len): SquareFigures {
  if (!(across > 0 && across <= round)) throw new RangeError(`no square of ${across} on ${round}`);
  const sharp = squareCorners(across);
  return {
    flat: flatDepth(round, across),
    width: sharp > round ? flatWidth(round, across) : across,
    sharpCorner: sharp,
    overOne: len(roundHalfEven((round + across) / 2)),
    corners: sharp > round ? 'round' : 'sharp',
  };
}

/** Pairs of exactly this round, or of exactly this square. */
export function pairsOfRound(round: Len): readonly SquarePair[] {
  return squarePairs.filter((p) => p.round === round);
}
export function pairsOfSquare(across: Len): readonly SquarePair[] {
  return squarePairs.filter((p) => p.across === across);
}

/** Square for a handwheel, DIN 79: bore it may have beside it, diagonal of the shaft, least diagonal of the hole. */
export function wheelSquare(
  across: Len,
):
  | { readonly boreMost: Len; readonly diagonal: { readonly lo: Len; readonly hi: Len }; readonly holeLeast: Len; readonly source: string }
  | undefined {
  const row = DIN_79.find(([s]) => mm(s) === across);
  return row && { boreMost: mm(row[1]), diagonal: { lo: mm(row[3]), hi: mm(row[2]) }, holeLeast: mm(row[4]), source: cite('din-79') };
}

type N = number;
const DIN_10: readonly (readonly [round: N, across: N])[] = [
  [2.8, 2.1],
  [3.5, 2.7],
  [4.5, 3.4],
  [6, 4.9],
  [7, 5.5],
  [8, 6.2],
  [9, 7],
  [10, 8],
  [11, 9],
  [12, 9],
  [14, 11],
];
const ISO_237: readonly (readonly [round: N, across: N])[] = [
  [2, 1.6],
  [2.5, 2],
  [2.8, 2.24],
  [3.15, 2.5],
  [3.55, 2.8],
  [4, 3.15],
  [4.5, 3.55],
  [5, 4],
  [5.6, 4.5],
  [6.3, 5],
  [7.1, 5.6],
  [8, 6.3],
  [9, 7.1],
  [10, 8],
  [11.2, 9],
  [12.5, 10],
];
/** Across flats; bore at most; diagonal of the shaft, most and least; diagonal of the hole, least. 12: the later edition has 14.3 for 13.9. */
const DIN_79: readonly (readonly [across: N, bore: N, most: N, least: N, hole: N])[] = [
  [4, 4.2, 5, 4.7, 5.3],
  [5, 5.3, 6.5, 5.9, 6.6],
  [5.5, 5.8, 7, 6.5, 7.2],
  [6, 6.3, 8, 7.1, 8.1],
  [7, 7.3, 9, 8.3, 9.1],
  [8, 8.4, 10, 9.5, 10.1],
  [9, 9.5, 12, 10.7, 12.1],
  [10, 10.5, 13, 11.9, 13.1],
  [11, 11.6, 14, 13.1, 14.1],
  [12, 12.6, 16, 13.9, 16.1],
];

export const squarePairs: readonly SquarePair[] = [
  ...DIN_10.map((p) => pair(p, 'din-10', 'standard')),
  ...ISO_237.map((p) => pair(p, 'iso-237', 'from memory')),
].sort((a, b) => a.round - b.round || a.across - b.across);

function pair([round, across]: readonly [N, N], source: SourceId, standing: Standing): SquarePair {
  return { round: mm(round), across: mm(across), source: cite(source), standing };
}
