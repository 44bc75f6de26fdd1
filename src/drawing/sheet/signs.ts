/**
 * Safety signs as paths: the shapes that ISO 3864-1 gives to warning, mandatory and prohibition signs, with simple pictures of our own. Told
 * by shape where there is no colour: a triangle with a border, a dark disc, a ring with a bar.
 */
import type { SignId } from '../../handbook/signs.ts';
import type { Ink, Item, PathItem } from '../../model/display.ts';
import { at2, circle, curve, lineTo, move, path, polygon, rect, roundRect, type XY } from '../display.ts';

/** A sign is drawn on a board of this many units, and then set to its size. */
const BOARD = 100;
const TRIANGLE = { outer: { top: 3, base: 91, half: 50, corner: 7 }, inner: { top: 16, base: 84, half: 38.5, corner: 4 } } as const;
const DISC = { middle: 50, radius: 48 } as const;
const RING = { radius: 43, width: 10, bar: 30.4 } as const;

/** Its frame is a square with sides of `size` mm, its top left corner at `x`, `y`, in hundredths: wherever it stands it is drawn alike. */
export function drawSign(id: SignId, x: number, y: number, size: number): readonly Item[] {
  const k = size / BOARD;
  return PICTURES[id].map((item) => scaled(item, at2(x), at2(y), k));
}

function scaled(item: PathItem, dx: number, dy: number, k: number): PathItem {
  const [px, py] = [(n: number): number => dx + at2(n * k), (n: number): number => dy + at2(n * k)];
  const segments = item.segments.map((s) => {
    if (s.to === 'close') return s;
    if (s.to === 'curve') return curve(px(s.x1), py(s.y1), px(s.x2), py(s.y2), px(s.x), py(s.y));
    return s.to === 'move' ? move(px(s.x), py(s.y)) : lineTo(px(s.x), py(s.y));
  });
  return {
    ...item,
    segments,
    ...(item.stroke ? { stroke: { ...item.stroke, width: Math.round(item.stroke.width * k * 100) / 100 } } : {}),
  };
}

// ---- shapes ------------------------------------------------------------------------------------------------------------
function triangle({ top, base, half, corner }: (typeof TRIANGLE)['outer' | 'inner'], ink: Ink): PathItem {
  const corners: readonly XY[] = [
    { x: DISC.middle, y: top },
    { x: DISC.middle + half, y: base },
    { x: DISC.middle - half, y: base },
  ];
  const segments = corners.flatMap((here, i) => {
    const [before, after] = [toward(here, corners[(i + 2) % 3] ?? here, corner), toward(here, corners[(i + 1) % 3] ?? here, corner)];
    const [a, b] = [toward(here, before, corner / 2), toward(here, after, corner / 2)];
    return [i === 0 ? move(before.x, before.y) : lineTo(before.x, before.y), curve(a.x, a.y, b.x, b.y, after.x, after.y)];
  });
  return path([...segments, { to: 'close' }], { fill: ink });
}

function toward(from: XY, to: XY, far: number): XY {
  const share = far / Math.hypot(to.x - from.x, to.y - from.y);
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

const warning = (...symbol: readonly PathItem[]): readonly PathItem[] => [
  triangle(TRIANGLE.outer, 'black'),
  triangle(TRIANGLE.inner, 'warned'),
  ...symbol,
];

const mandatory = (...symbol: readonly PathItem[]): readonly PathItem[] => [
  circle(DISC.middle, DISC.middle, DISC.radius, { fill: 'asked' }),
  ...symbol,
];

const prohibition = (...symbol: readonly PathItem[]): readonly PathItem[] => [
  circle(DISC.middle, DISC.middle, RING.radius, { fill: 'white' }),
  ...symbol,
  thick([at(DISC.middle - RING.bar, DISC.middle - RING.bar), at(DISC.middle + RING.bar, DISC.middle + RING.bar)], RING.width, 'forbidden'),
  circle(DISC.middle, DISC.middle, RING.radius, { stroke: { ink: 'forbidden', width: RING.width } }),
];

const at = (x: number, y: number): XY => ({ x, y });

function thick([first, ...others]: readonly XY[], width: number, ink: Ink): PathItem {
  return path([move(first?.x ?? 0, first?.y ?? 0), ...others.map((p) => lineTo(p.x, p.y))], { stroke: { ink, width } });
}

// ---- pictures ----------------------------------------------------------------------------------------------------------
/** A stroke that rises and sways. */
function haze(x: number): PathItem {
  return path([move(x, 66), curve(x - 8, 59, x + 8, 53, x, 46), curve(x - 5, 42, x - 2, 38, x + 1, 36)], {
    stroke: { ink: 'black', width: 4.5 },
  });
}

const drop = (x: number, y: number, r: number, ink: Ink): PathItem => circle(x, y, r, { fill: ink });
const face = (): PathItem => circle(50, 50, 30, { fill: 'white' });
const finger = (x: number, y: number, w: number, h: number, ink: Ink): PathItem =>
  roundRect(x, y, w, h, Math.min(w, h) / 2 - 0.1, { fill: ink });

const PICTURES: Readonly<Record<SignId, readonly PathItem[]>> = {
  W001: warning(polygon([at(44.5, 34), at(55.5, 34), at(53, 64), at(47, 64)], { fill: 'black' }), circle(50, 73, 5, { fill: 'black' })),
  W017: warning(haze(37), haze(50), haze(63), rect(26, 70, 48, 6, { fill: 'black' })),
  W022: warning(
    polygon([at(45, 30), at(55, 30), at(55, 61), at(50, 66), at(45, 61)], { fill: 'black' }),
    finger(27, 66, 47, 12, 'black'),
    polygon([at(46, 66), at(54, 66), at(50, 73)], { fill: 'warned' }),
  ),
  W023: warning(
    polygon([at(42, 45), at(58, 38), at(62, 46), at(46, 53)], { fill: 'black' }),
    drop(41, 55, 2.6, 'black'),
    drop(41, 62.5, 3, 'black'),
    polygon([at(25, 70), at(33, 70), at(37, 75), at(45, 75), at(49, 70), at(75, 70), at(75, 79), at(25, 79)], { fill: 'black' }),
  ),
  W024: warning(
    rect(45.5, 30, 9, 14, { fill: 'black' }),
    rect(37, 43, 26, 8, { fill: 'black' }),
    ...[54, 58.8, 63.6].map((y, i) => finger([34, 30, 32][i] ?? 32, y, 24, 3.8, 'black')),
    roundRect(50, 53.6, 19, 14.2, 3, { fill: 'black' }),
    rect(24, 71, 52, 8, { fill: 'black' }),
  ),
  M004: mandatory(
    face(),
    rect(19, 43, 62, 5, { fill: 'asked' }),
    circle(38.5, 47, 9.5, { fill: 'asked' }),
    circle(61.5, 47, 9.5, { fill: 'asked' }),
  ),
  M011: mandatory(
    polygon([at(20, 18), at(54, 18), at(60, 24), at(60, 34), at(50, 34), at(50, 27), at(20, 27)], { fill: 'white' }),
    ...[41, 48.5, 56].map((y) => drop(55, y, 2.6, 'white')),
    finger(18, 62, 52, 10, 'white'),
    finger(30, 74, 52, 10, 'white'),
    finger(38, 56, 12, 9, 'white'),
  ),
  M013: mandatory(
    circle(50, 44, 27, { fill: 'white' }),
    rect(21, 33, 58, 6, { fill: 'asked' }),
    roundRect(27, 39, 46, 43, 8, { fill: 'white', stroke: { ink: 'asked', width: 4 } }),
  ),
  P028: prohibition(
    rect(37, 66, 28, 9, { fill: 'black' }),
    roundRect(36, 44, 30, 20, 3, { fill: 'black' }),
    ...[36, 43.8, 51.6, 59.4].map((x, i) => finger(x, [30, 25, 24, 28][i] ?? 24, 6.6, 26, 'black')),
    polygon([at(38, 62), at(24, 48), at(28, 43), at(40, 52)], { fill: 'black' }),
  ),
};
