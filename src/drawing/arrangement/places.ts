/** Where on a part its name's leader may end: a spot of it that is seen, a little inside its edge. Paper: mm, y down. */
import type { XY } from '../display.ts';
import type { Span } from '../plane.ts';

export type Shape = {
  readonly id: string;
  /** What of it is painted and may be pointed at; what it hides of those painted before it. */
  readonly seen: readonly Ring[];
  readonly hides: readonly Ring[];
};
export type Ring = { readonly corners: readonly XY[]; readonly box: Span };

export function ringOf(corners: readonly XY[]): Ring {
  const [xs, ys] = [corners.map((p) => p.x), corners.map((p) => p.y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { corners, box: { x, y, w: Math.max(...xs) - x, h: Math.max(...ys) - y } };
}

/** mm between the spots that are looked at, and how far in from an edge. */
const STEP = 0.8;
const INSET = 0.6;
/** Thin parts: as far in as there is room. */
const LESS = [1.6, 1, 0.5, 0.2] as const;
/** Spots kept for either side. */
const KEPT = 8;

/** Spots of the shape that nothing later hides, the nearest to the left and to the right. */
export function spotsOf(shape: Shape, later: readonly Shape[]): { readonly left: readonly XY[]; readonly right: readonly XY[] } {
  const own = shape.seen;
  const before = later.flatMap(({ hides }) => hides).filter((ring) => own.some(({ box }) => touch(box, ring.box)));
  const shows = (p: XY): boolean => isIn(p, own) && !isIn(p, before);
  const byX = inset(gridOf(shape).filter(shows), shows).sort((p, q) => p.x - q.x || p.y - q.y);
  return { left: spread(byX), right: spread([...byX].reverse()) };
}

/** Those that stand so far in from every edge that any does, if at all. */
function inset(seen: readonly XY[], shows: (p: XY) => boolean): XY[] {
  for (const share of LESS) {
    const found = seen.filter((p) => round(p, INSET * share).every(shows));
    if (found.length > 0) return found;
  }
  return [];
}

/** Of each height the one that stands outermost; no more than a few, over the whole height. */
function spread(spots: readonly XY[]): readonly XY[] {
  const outermost = [...new Map([...spots].reverse().map((p) => [p.y, p])).values()].sort((p, q) => p.y - q.y);
  const every = Math.max(1, Math.ceil(outermost.length / KEPT));
  return outermost.filter((_, i) => i % every === Math.floor(every / 2));
}

/** Most rings lie elsewhere altogether: their boxes are asked first. */
const isIn = (p: XY, rings: readonly Ring[]): boolean => rings.some(({ box, corners }) => holds(box, p) && within(p, corners));
const holds = ({ x, y, w, h }: Span, p: XY): boolean => p.x >= x && p.x <= x + w && p.y >= y && p.y <= y + h;
const touch = (a: Span, b: Span): boolean => a.x <= b.x + b.w && b.x <= a.x + a.w && a.y <= b.y + b.h && b.y <= a.y + a.h;

const round = ({ x, y }: XY, by: number): readonly XY[] => [
  { x: x - by, y },
  { x: x + by, y },
  { x, y: y - by },
  { x, y: y + by },
];

function gridOf({ seen }: Shape): readonly XY[] {
  return seen.flatMap(({ box: { x, y, w, h } }) => steps(y, y + h).flatMap((level) => steps(x, x + w).map((at) => ({ x: at, y: level }))));
}

/** Evenly from edge to edge, the middle of each step. */
function steps(from: number, to: number): readonly number[] {
  const n = Math.max(1, Math.floor((to - from) / STEP));
  return Array.from({ length: n }, (_, i) => from + ((i + 0.5) * (to - from)) / n);
}

/** Even-odd. */
export function within(p: XY, ring: readonly XY[]): boolean {
  let inside = false;
  let b = ring[0];
  for (let i = ring.length - 1; b && i >= 0; i--) {
    const a: XY = ring[i] ?? b;
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y)) inside = !inside;
    b = a;
  }
  return inside;
}
