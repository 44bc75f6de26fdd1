/** Paths as a content stream writes them: what is stroked alike in a row as one, coordinates from an origin, in hundredths of a millimetre. */
import type { Ink, Item, PathItem, Segment, TextItem } from '../model/display.ts';
import { INKS } from './inks.ts';
import { number } from './pdf-write.ts';

export type Point = { readonly x: number; readonly y: number };
/** Device RGB, taken as sRGB: the inks are. */
export const COLOURS = Object.fromEntries(Object.entries(INKS).map(([ink, sRgb]) => [ink, colour(sRgb)])) as Readonly<Record<Ink, string>>;

/** Coordinates come in hundredths: a difference of two is written as it was meant, not as fractions of two leave it. */
const HUNDREDTHS = 100;

export function from(origin: number, value: number): string {
  return number((Math.round(value * HUNDREDTHS) - Math.round(origin * HUNDREDTHS)) / HUNDREDTHS);
}

/** Lines of one stroke that follow one another are one path: they are painted alike either way. What paints nothing is left out. */
export function merged(items: readonly Item[]): readonly Item[] {
  const found: (TextItem | (PathItem & { segments: Segment[] }))[] = [];
  for (const item of items) {
    const last = found.at(-1);
    if (item.kind === 'text') {
      if (item.text !== '') found.push(item);
    } else if (last?.kind === 'path' && isLine(last) && isLine(item) && strokeOf(last.stroke) === strokeOf(item.stroke)) {
      last.segments.push(...item.segments);
    } else if (item.stroke || item.fill) found.push({ ...item, segments: [...item.segments] });
  }
  return found;
}

type Stroked = PathItem & { readonly stroke: NonNullable<PathItem['stroke']> };
const isLine = (item: PathItem): item is Stroked => item.stroke !== undefined && !item.fill && !item.hatch;

export function pathOf(segments: readonly Segment[], origin: Point): string {
  return segments.map((segment) => segmentOf(segment, origin)).join(' ');
}

/** Where its pen is first set down. */
export function beginOf({ segments }: PathItem): Point {
  const [first] = segments;
  return first && first.to !== 'close' ? { x: first.x, y: first.y } : { x: 0, y: 0 };
}

export const paintOf = ({ stroke, fill }: PathItem): 'B' | 'f' | 'S' => (fill && stroke ? 'B' : fill ? 'f' : 'S');

export function strokeOf({ ink, width, dash = [] }: NonNullable<PathItem['stroke']>): string {
  return `${COLOURS[ink]} RG ${number(width)} w [${dash.map(number).join(' ')}] 0 d`;
}

function segmentOf(segment: Segment, { x, y }: Point): string {
  if (segment.to === 'close') return 'h';
  const end = `${from(x, segment.x)} ${from(y, segment.y)}`;
  if (segment.to === 'move') return `${end} m`;
  if (segment.to === 'line') return `${end} l`;
  return `${from(x, segment.x1)} ${from(y, segment.y1)} ${from(x, segment.x2)} ${from(y, segment.y2)} ${end} c`;
}

function colour(sRgb: string): string {
  const value = Number.parseInt(sRgb.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255].map((part) => number(part / 255)).join(' ');
}
