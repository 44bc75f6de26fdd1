/** Builders of display items. All in mm on paper, y downward, coordinates rounded to 0.01 here and nowhere else. */
import type { Advances, Box, Font, Ink, Item, PathItem, Segment, TextItem } from '../model/display.ts';
import { capHeight, textWidth } from './measure.ts';

export type XY = { readonly x: number; readonly y: number };
export type Stroke = { readonly ink: Ink; readonly width: number; readonly dash?: readonly number[] };
export type Paint = { readonly stroke?: Stroke; readonly fill?: Ink };
export type Lettering = { readonly advances: Advances; readonly font: Font; readonly size: number; readonly ink: Ink };
export type Align = 'left' | 'middle' | 'right';

/** A quarter circle as one Bezier: distance of its handles as a share of the radius, 4/3 tan(pi/8). */
const QUARTER = 0.5523;
const RIGHT_ANGLE = 90;
const SIGN_LINE = 0.25;
/** Half the width of an arrow head as a share of its length: 15 degrees between its sides (ISO 129:1985 style). */
const ARROW_HALF = 0.16;
/** Signs may reach this share of their size below the baseline (comma, brackets, g): counted into the box of a text. */
const BELOW = 0.22;

/** Rounded to 0.01, without -0. */
export function at2(n: number): number {
  const rounded = Math.round(n * 100) / 100;
  return rounded === 0 ? 0 : rounded;
}

export function line(x1: number, y1: number, x2: number, y2: number, stroke: Stroke): PathItem {
  return path([move(x1, y1), lineTo(x2, y2)], { stroke });
}

export function polyline(points: readonly XY[], stroke: Stroke): PathItem {
  return path(open(points), { stroke });
}

export function polygon(points: readonly XY[], paint: Paint): PathItem {
  return path([...open(points), { to: 'close' }], paint);
}

/** Several rings as one path: they must run one way round and not overlap, so that every fill rule paints the same. */
export function polygons(rings: readonly (readonly XY[])[], paint: Paint): PathItem {
  return path(
    rings.flatMap((ring) => [...open(ring), { to: 'close' } as const]),
    paint,
  );
}

export function rect(x: number, y: number, w: number, h: number, paint: Paint): PathItem {
  return polygon(
    [
      { x, y },
      { x: x + w, y },
      { x: x + w, y: y + h },
      { x, y: y + h },
    ],
    paint,
  );
}

export function roundRect(x: number, y: number, w: number, h: number, r: number, paint: Paint): PathItem {
  const k = r * (1 - QUARTER);
  const [right, bottom] = [x + w, y + h];
  return path(
    [
      move(x + r, y),
      lineTo(right - r, y),
      curve(right - k, y, right, y + k, right, y + r),
      lineTo(right, bottom - r),
      curve(right, bottom - k, right - k, bottom, right - r, bottom),
      lineTo(x + r, bottom),
      curve(x + k, bottom, x, bottom - k, x, bottom - r),
      lineTo(x, y + r),
      curve(x, y + k, x + k, y, x + r, y),
      { to: 'close' },
    ],
    paint,
  );
}

export function circle(cx: number, cy: number, r: number, paint: Paint): PathItem {
  const k = r * QUARTER;
  return path(
    [
      move(cx + r, cy),
      curve(cx + r, cy + k, cx + k, cy + r, cx, cy + r),
      curve(cx - k, cy + r, cx - r, cy + k, cx - r, cy),
      curve(cx - r, cy - k, cx - k, cy - r, cx, cy - r),
      curve(cx + k, cy - r, cx + r, cy - k, cx + r, cy),
      { to: 'close' },
    ],
    paint,
  );
}

/** Filled; its tip at `tip`, pointing toward `degrees` (0 = right, 90 = up the page). */
export function arrowHead(tip: XY, degrees: number, length: number, ink: Ink): PathItem {
  const along = (degrees * Math.PI) / 180;
  const [ux, uy] = [Math.cos(along), -Math.sin(along)];
  const back = { x: tip.x - ux * length, y: tip.y - uy * length };
  const half = length * ARROW_HALF;
  return polygon([tip, { x: back.x - uy * half, y: back.y + ux * half }, { x: back.x + uy * half, y: back.y - ux * half }], { fill: ink });
}

/** `x` is the left end, middle or right end by `align`; `y` is the baseline. */
export function text(how: Lettering, words: string, x: number, y: number, align: Align = 'left'): TextItem {
  const width = textWidth(how.advances, how.font, how.size, words);
  const left = align === 'left' ? x : align === 'middle' ? x - width / 2 : x - width;
  return { kind: 'text', x: at2(left), y: at2(y), size: how.size, font: how.font, ink: how.ink, text: words, width: at2(width) };
}

/** Reading upward: its baseline stands at `x`, its middle at `y`. */
export function textUp(how: Lettering, words: string, x: number, y: number): TextItem {
  const width = textWidth(how.advances, how.font, how.size, words);
  const flat = text(how, words, x, y + width / 2);
  return { ...flat, turn: RIGHT_ANGLE };
}

/** The box that a text fills: from the top of its capitals to a little below its baseline. */
export function textBox(item: TextItem, what = `text ${item.text}`): Box {
  const up = capHeight(item.size);
  const down = item.size * BELOW;
  if (item.turn === RIGHT_ANGLE) return { x: item.x - up, y: item.y - item.width, w: up + down, h: item.width, what };
  return { x: item.x, y: item.y - up, w: item.width, h: up + down, what };
}

/** A tick box: the fonts have none. `x`, `y`: top left corner. */
export function tickBox(x: number, y: number, size: number, state: 'open' | 'ticked'): readonly PathItem[] {
  const stroke = { ink: 'black', width: SIGN_LINE } as const;
  const frame = rect(x, y, size, size, { stroke });
  if (state === 'open') return [frame];
  const tick = [
    { x: x + size * 0.2, y: y + size * 0.55 },
    { x: x + size * 0.42, y: y + size * 0.78 },
    { x: x + size * 0.82, y: y + size * 0.22 },
  ];
  return [frame, polyline(tick, { ink: 'black', width: 2 * SIGN_LINE })];
}

/** The diameter sign U+2300, which the fonts lack: circle and stroke, `h` high above the baseline `y`. */
export function diameterSign(x: number, y: number, h: number, ink: Ink): readonly PathItem[] {
  const stroke = { ink, width: h / 10 };
  const r = h * 0.4;
  return [circle(x + h / 2, y - h / 2, r, { stroke }), line(x + h * 0.12, y, x + h * 0.88, y - h, stroke)];
}

/** The depth sign U+25BD, which the fonts lack: an open triangle standing on its point. */
export function depthSign(x: number, y: number, h: number, ink: Ink): readonly PathItem[] {
  const corners = [
    { x, y: y - h },
    { x: x + h, y: y - h },
    { x: x + h / 2, y },
  ];
  return [polygon(corners, { stroke: { ink, width: h / 10 } })];
}

/** The same items, `dx`, `dy` further on: to set a picture on a page. */
export function moved(items: readonly Item[], dx: number, dy: number): readonly Item[] {
  return items.map((item) =>
    item.kind === 'text'
      ? { ...item, x: at2(item.x + dx), y: at2(item.y + dy) }
      : { ...item, segments: item.segments.map((s) => movedSegment(s, dx, dy)), ...movedHatch(item, dx, dy) },
  );
}

function movedHatch({ hatch }: PathItem, dx: number, dy: number): Pick<PathItem, 'hatch'> {
  if (!hatch) return {};
  const { ring, lean, at } = hatch;
  return { hatch: { ...hatch, ring: ring.map((s) => movedSegment(s, dx, dy)), at: at2(at + dy + lean * dx) } };
}

function movedSegment(s: Segment, dx: number, dy: number): Segment {
  if (s.to === 'close') return s;
  if (s.to === 'curve') return curve(s.x1 + dx, s.y1 + dy, s.x2 + dx, s.y2 + dy, s.x + dx, s.y + dy);
  return { to: s.to, x: at2(s.x + dx), y: at2(s.y + dy) };
}

/** The same items, all of them `times` as large from the top left corner: lines and letters as well. */
export function enlarged(items: readonly Item[], times: number): readonly Item[] {
  if (times === 1) return items;
  return items.map((item): Item => {
    if (item.kind === 'text') {
      const [x, y, size, width] = [item.x, item.y, item.size, item.width].map((n) => at2(n * times)) as [number, number, number, number];
      return { ...item, x, y, size, width };
    }
    const { stroke } = item;
    const drawn = stroke && {
      ...stroke,
      width: at2(stroke.width * times),
      ...(stroke.dash ? { dash: stroke.dash.map((n) => at2(n * times)) } : {}),
    };
    const segments = item.segments.map((s) => enlargedSegment(s, times));
    return { ...item, segments, ...(drawn ? { stroke: drawn } : {}), ...enlargedHatch(item, times) };
  });
}

function enlargedHatch({ hatch }: PathItem, times: number): Pick<PathItem, 'hatch'> {
  if (!hatch) return {};
  const { ring, at, step } = hatch;
  return { hatch: { ...hatch, ring: ring.map((s) => enlargedSegment(s, times)), at: at2(at * times), step: step * times } };
}

function enlargedSegment(s: Segment, times: number): Segment {
  if (s.to === 'close') return s;
  if (s.to === 'curve') return curve(s.x1 * times, s.y1 * times, s.x2 * times, s.y2 * times, s.x * times, s.y * times);
  return { to: s.to, x: at2(s.x * times), y: at2(s.y * times) };
}

export function path(segments: readonly Segment[], paint: Paint): PathItem {
  return { kind: 'path', segments, ...paint };
}

export const move = (x: number, y: number): Segment => ({ to: 'move', x: at2(x), y: at2(y) });
export const lineTo = (x: number, y: number): Segment => ({ to: 'line', x: at2(x), y: at2(y) });
export const curve = (x1: number, y1: number, x2: number, y2: number, x: number, y: number): Segment => ({
  to: 'curve',
  x1: at2(x1),
  y1: at2(y1),
  x2: at2(x2),
  y2: at2(y2),
  x: at2(x),
  y: at2(y),
});

function open(points: readonly XY[]): readonly Segment[] {
  return points.map((p, i) => (i === 0 ? move(p.x, p.y) : lineTo(p.x, p.y)));
}
