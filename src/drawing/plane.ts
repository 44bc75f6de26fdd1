/** Boxes, segments and polygons on paper: who meets whom. */
import type { Box } from '../model/display.ts';
import type { XY } from './display.ts';

export type Span = { readonly x: number; readonly y: number; readonly w: number; readonly h: number };
export type Leg = { readonly a: XY; readonly b: XY };

/** Rounding to 0.01 moves edges by half of that: boxes that only touch do not overlap. */
const TOUCH = 0.011;

export function overlap(a: Span, b: Span, gap = 0): boolean {
  const slack = TOUCH - gap;
  return a.x + slack < b.x + b.w && b.x + slack < a.x + a.w && a.y + slack < b.y + b.h && b.y + slack < a.y + a.h;
}

/** The box `gap` larger on every side. */
export function grown(box: Span, gap: number): Span {
  return { x: box.x - gap, y: box.y - gap, w: box.w + 2 * gap, h: box.h + 2 * gap };
}

/** A mark's box `gap` larger on every side. All boxes are made in one order of their fields: they are compared thousands of times a picture. */
export function withRoom({ x, y, w, h, what }: Box, gap: number): Box {
  return { x: x - gap, y: y - gap, w: w + 2 * gap, h: h + 2 * gap, what };
}

export function boxOn({ x, y, w, h }: Span, what: string): Box {
  return { x, y, w, h, what };
}

/** Whether two segments cross or touch. */
export function cross(p: Leg, q: Leg): boolean {
  const d1 = turn(q.a, q.b, p.a);
  const d2 = turn(q.a, q.b, p.b);
  const d3 = turn(p.a, p.b, q.a);
  const d4 = turn(p.a, p.b, q.b);
  if (d1 * d2 > 0 || d3 * d4 > 0) return false;
  if (d1 !== 0 || d2 !== 0 || d3 !== 0 || d4 !== 0) return true;
  return overlap(spanOf(p), spanOf(q), 2 * TOUCH);
}

/** Least distance between two segments; 0 where they meet. */
export function gapBetween(p: Leg, q: Leg): number {
  if (cross(p, q)) return 0;
  return Math.min(toLeg(p.a, q), toLeg(p.b, q), toLeg(q.a, p), toLeg(q.b, p));
}

/** Whether a segment runs through the inside of a box. */
export function runsThrough(leg: Leg, box: Span): boolean {
  return shareWithin(leg, box) > 0;
}

/**
 * How much of a segment lies inside a box, as a share of its length; 0 where it passes by. (Liang-Barsky, without a record or a list:
 * this is asked tens of thousands of times a picture.)
 */
export function shareWithin(leg: Leg, box: Span): number {
  if (farOff(leg, box)) return 0;
  const [dx, dy] = [leg.b.x - leg.a.x, leg.b.y - leg.a.y];
  let t0 = 0;
  let t1 = 1;
  if (dx === 0) {
    if (leg.a.x <= box.x || leg.a.x >= box.x + box.w) return 0;
  } else {
    const [p, q] = [(box.x - leg.a.x) / dx, (box.x + box.w - leg.a.x) / dx];
    t0 = Math.max(t0, Math.min(p, q));
    t1 = Math.min(t1, Math.max(p, q));
  }
  if (dy === 0) return leg.a.y <= box.y || leg.a.y >= box.y + box.h ? 0 : Math.max(0, t1 - t0);
  const [p, q] = [(box.y - leg.a.y) / dy, (box.y + box.h - leg.a.y) / dy];
  return Math.max(0, Math.min(t1, Math.max(p, q)) - Math.max(t0, Math.min(p, q)));
}

/** Whether the boxes round a segment and a box are apart: most are, and it costs nothing to ask. */
function farOff(leg: Leg, box: Span): boolean {
  const { a, b } = leg;
  return (
    (a.x < box.x && b.x < box.x) ||
    (a.y < box.y && b.y < box.y) ||
    (a.x > box.x + box.w && b.x > box.x + box.w) ||
    (a.y > box.y + box.h && b.y > box.y + box.h)
  );
}

export function distance(a: XY, b: XY): number {
  return Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2);
}

function toLeg(p: XY, leg: Leg): number {
  const [dx, dy] = [leg.b.x - leg.a.x, leg.b.y - leg.a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - leg.a.x) * dx + (p.y - leg.a.y) * dy) / square));
  return distance(p, { x: leg.a.x + t * dx, y: leg.a.y + t * dy });
}

function turn(a: XY, b: XY, c: XY): number {
  const cross = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  return Math.abs(cross) < 1e-9 ? 0 : cross;
}

/** The box round a segment. */
export function spanOf(leg: Leg): Span {
  const [x, y] = [Math.min(leg.a.x, leg.b.x), Math.min(leg.a.y, leg.b.y)];
  return { x, y, w: Math.abs(leg.a.x - leg.b.x), h: Math.abs(leg.a.y - leg.b.y) };
}

/** A thin box along an upright or level line; a chain of small ones along a slanting one, so that boxes alone tell who meets whom. */
export function lineBoxes(leg: Leg, what: string): readonly Box[] {
  const span = spanOf(leg);
  if (span.w < THIN || span.h < THIN) return [thinBox(span, what)];
  const steps = Math.ceil(distance(leg.a, leg.b) / CHAIN_LINK);
  return Array.from({ length: steps }, (_, i) => thinBox(spanOf(part(leg, i / steps, (i + 1) / steps)), what));
}

function thinBox({ x, y, w, h }: Span, what: string): Box {
  return { x: x - THIN / 2, y: y - THIN / 2, w: w + THIN, h: h + THIN, what };
}
const THIN = 0.1;
const CHAIN_LINK = 0.6;

/** The stretch of a segment between two shares of it. */
export function part(leg: Leg, from: number, to: number): Leg {
  const at = (t: number): XY => ({ x: leg.a.x + (leg.b.x - leg.a.x) * t, y: leg.a.y + (leg.b.y - leg.a.y) * t });
  return { a: at(from), b: at(to) };
}
