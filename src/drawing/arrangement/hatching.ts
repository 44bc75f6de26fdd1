/** Which way each cut part is hatched: parts that meet differ in direction, or else in spacing (ISO 128-3). */
import type { Hatch } from '../hatch.ts';
import { gapBetween } from '../plane.ts';
import type { Piece } from './piece.ts';

/** The first that no neighbour has; there are more than any part has neighbours. */
const HATCHES: readonly Hatch[] = [1.3, 0.9, 1.8, 0.7].flatMap((pitch) => ([1, -1] as const).map((lean) => ({ pitch, lean })));
/** Units of length: nearer than this they meet. */
const MEET = 3000;

/** One for each piece, in their order; what is not hatched is passed over. */
export function hatchesFor(pieces: readonly Piece[]): readonly (Hatch | undefined)[] {
  const found: (Hatch | undefined)[] = [];
  for (const [i, piece] of pieces.entries()) {
    if (piece.shown !== 'metal') {
      found.push(undefined);
      continue;
    }
    const same = pieces.findIndex((other, j) => j < i && other.id === piece.id);
    const near = pieces.flatMap((other, j) => (j < i && other.id !== piece.id && meet(piece, other) ? (found[j] ?? []) : []));
    const free = [found[same], ...HATCHES].find((hatch) => hatch && !near.includes(hatch));
    found.push(free ?? HATCHES[0]);
  }
  return found;
}

export function meet(one: Piece, other: Piece): boolean {
  return one.edges.some((a) => other.edges.some((b) => gapBetween(a, b) < MEET));
}
