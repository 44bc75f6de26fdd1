/** Which way each cut part is hatched: parts that meet differ in direction, or else in spacing (ISO 128-3). */
import type { Hatch } from '../hatch.ts';
import { gapBetween, type Leg, overlap, type Span, spanOf } from '../plane.ts';
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
  const room = boundsOf(other.edges);
  const others = other.edges.map((leg) => ({ leg, span: spanOf(leg) }));
  return one.edges.some((a) => {
    const span = spanOf(a);
    // boxes are asked first: nearly all edges stand apart
    return isNear(span, room) && others.some((b) => isNear(span, b.span) && gapBetween(a, b.leg) < MEET);
  });
}

const isNear = (a: Span, b: Span): boolean => overlap(a, b, 2 * MEET);

function boundsOf(legs: readonly Leg[]): Span {
  const [xs, ys] = [legs.flatMap(({ a, b }) => [a.x, b.x]), legs.flatMap(({ a, b }) => [a.y, b.y])];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, w: Math.max(...xs) - x, h: Math.max(...ys) - y };
}
