/** Paths as a content stream writes them: what is stroked alike in a row as one, coordinates from an origin, in hundredths of a millimetre. */
import type { Ink, Item, PathItem, Segment } from '../model/display.ts';
import { INKS } from './inks.ts';
import { number } from './pdf-write.ts';

/** Units of a content stream in a millimetre: coordinates are whole hundredths, which are shorter than fractions. */
export const UNITS = 100;
/** In units. */
export type Point = { readonly x: number; readonly y: number };
/** Device RGB, taken as sRGB: the inks are. */
export const COLOURS = Object.fromEntries(Object.entries(INKS).map(([ink, sRgb]) => [ink, colour(sRgb)])) as Readonly<Record<Ink, string>>;

/** A tenth of a unit: what a width, a size or a hatching may come to. */
const FINE = 10;

/** A coordinate, whole. Throws Error for what is no number. */
export function inUnits(mm: number): number {
  const units = Math.round(mm * UNITS);
  if (!Number.isFinite(units)) throw new Error(`not a number on paper: ${mm}`);
  return units;
}

/** A length that is no coordinate: a thousandth of a millimetre is told. */
export function length(mm: number): string {
  return number(Math.round(mm * UNITS * FINE) / FINE);
}

/** Lines of one stroke that follow one another are one path: they are painted alike either way. What paints nothing is left out. */
export function merged(items: readonly Item[]): readonly Item[] {
  const found: Item[] = [];
  /** Of the last one found, where others have joined it. */
  let grown: Segment[] | undefined;
  for (const item of items) {
    const last = found.at(-1);
    if (item.kind === 'path' && last?.kind === 'path' && isLine(last) && isLine(item) && strokeOf(last.stroke) === strokeOf(item.stroke)) {
      if (!grown) {
        grown = [...last.segments];
        found[found.length - 1] = { ...last, segments: grown };
      }
      for (const segment of item.segments) grown.push(segment);
      continue;
    }
    if (item.kind === 'text' ? item.text === '' : !item.stroke && !item.fill) continue;
    found.push(item);
    grown = undefined;
  }
  return found;
}

type Stroked = PathItem & { readonly stroke: NonNullable<PathItem['stroke']> };
const isLine = (item: PathItem): item is Stroked => item.stroke !== undefined && !item.fill && !item.hatch;

export function pathOf(segments: readonly Segment[], { x, y }: Point): string {
  let written = '';
  for (let i = 0; i < segments.length; i++) {
    const segment = segments[i];
    if (!segment) continue;
    if (segment.to === 'close') {
      written += 'h ';
      continue;
    }
    const box = segment.to === 'move' ? boxFrom(segments, i) : undefined;
    if (segment.to === 'curve') written += `${at(segment.x1, x)} ${at(segment.y1, y)} ${at(segment.x2, x)} ${at(segment.y2, y)} `;
    written += `${at(segment.x, x)} ${at(segment.y, y)} ${box ?? LETTERS[segment.to]} `;
    if (box !== undefined) i += BOX - 1;
  }
  return written.slice(0, -1);
}

const LETTERS = { move: 'm', line: 'l', curve: 'c' } as const;
const at = (mm: number, from: number): number => inUnits(mm) - from;

/** Segments of a box: set down, three sides, and the fourth. */
const BOX = 5;

/** Sides along the axes, the first across: that is how `re` goes round (ISO 32000-1, 8.5.2.1), so that nothing is drawn otherwise. */
function boxFrom(segments: readonly Segment[], i: number): string | undefined {
  if (segments[i + BOX - 1]?.to !== 'close') return undefined;
  const [a, b, c, d] = [segments[i], segments[i + 1], segments[i + 2], segments[i + 3]];
  if (a?.to !== 'move' || b?.to !== 'line' || c?.to !== 'line' || d?.to !== 'line') return undefined;
  const [left, top, right, low] = [inUnits(a.x), inUnits(a.y), inUnits(c.x), inUnits(c.y)];
  const square = inUnits(b.x) === right && inUnits(b.y) === top && inUnits(d.x) === left && inUnits(d.y) === low;
  return square ? `${right - left} ${low - top} re` : undefined;
}

/** Where its pen is first set down. */
export function beginOf({ segments }: PathItem): Point {
  const [first] = segments;
  return first && first.to !== 'close' ? { x: inUnits(first.x), y: inUnits(first.y) } : { x: 0, y: 0 };
}

export const paintOf = ({ stroke, fill }: PathItem): 'B' | 'f' | 'S' => (fill && stroke ? 'B' : fill ? 'f' : 'S');

type Stroke = NonNullable<PathItem['stroke']>;
const strokes = new WeakMap<Stroke, string>();

export function strokeOf(stroke: Stroke): string {
  const known = strokes.get(stroke);
  if (known !== undefined) return known;
  const { ink, width, dash = [] } = stroke;
  const written = `${COLOURS[ink]} RG ${length(width)} w [${dash.map(length).join(' ')}] 0 d`;
  strokes.set(stroke, written);
  return written;
}

function colour(sRgb: string): string {
  const value = Number.parseInt(sRgb.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255].map((part) => number(part / 255)).join(' ');
}
