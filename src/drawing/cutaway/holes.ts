/** Holes right across an upright solid: what they take away of it, where a line of sight meets their walls, and their edges. */
import type { Part } from '../../model/part.ts';
import { acrossOf } from '../arrangement/piece.ts';

/** `a`: its middle along the solid's axis; `round`: radians round it. Where the solid lies, along and across: see `within`. */
export type Hole = { readonly a: number; readonly r: number; readonly round: number };
export type Local = { readonly a: number; readonly c: number; readonly s: number };

/** Several go across evenly round, the first along the first cut. */
export function holesOf(part: Part): readonly Hole[] {
  return acrossOf(part).flatMap(({ at, size, count = 1 }) =>
    Array.from({ length: count }, (_, k): Hole => ({ a: at, r: (size?.target ?? 0) / 2, round: (k * Math.PI) / count })),
  );
}

/** How far beside the middle plane of the hole, across its own line. */
const beside = ({ round }: Hole, { c, s }: Pick<Local, 'c' | 's'>): number => s * Math.cos(round) - c * Math.sin(round);

/** Its own wall is not in it. */
export const isInHole = (hole: Hole, p: Local, close: number): boolean =>
  (p.a - hole.a) ** 2 + beside(hole, p) ** 2 < (hole.r * (1 - close)) ** 2;

/** Shares of the line from `p` by `by` at which it comes to the wall of the hole. */
export function meetsHole(hole: Hole, p: Local, by: Local): readonly number[] {
  const [x, y, dx, dy] = [p.a - hole.a, beside(hole, p), by.a, beside(hole, by)];
  const [q, h, k] = [dx * dx + dy * dy, x * dx + y * dy, x * x + y * y - hole.r * hole.r];
  const root = h * h - q * k;
  return root > 0 ? [-1, 1].map((sign) => (-h + sign * Math.sqrt(root)) / q) : [];
}

/** On the edge that it makes with a cylinder of radius `out`, at its `mouth`: along the axis and round it. */
export function onEdge(hole: Hole, out: number, mouth: 0 | 1, share: number): { readonly a: number; readonly round: number } {
  const turn = 2 * Math.PI * share;
  return { a: hole.a + hole.r * Math.cos(turn), round: hole.round + mouth * Math.PI + Math.asin((hole.r * Math.sin(turn)) / out) };
}
