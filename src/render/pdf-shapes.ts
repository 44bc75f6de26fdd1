/**
 * What stands in a document many times is written once, as a form (ISO 32000-1, 8.10): shapes (the frame of a box, a dial's divisions, a
 * balloon), which take width and colour from where they are shown, and pictures whole, with colours and words of their own.
 */
import type { Item, PathItem } from '../model/display.ts';
import type { Box, Pdf } from './pdf-adapter.ts';
import { beginOf, inUnits, type Point, paintOf, pathOf } from './pdf-paths.ts';
import type { TaggedPage } from './pdf-tags.ts';

export type Shapes = {
  /** Its name among the resources; undefined for what is written where it stands. */
  nameOf(item: PathItem): string | undefined;
};

/** What a form costs besides its content, and each showing of it, in bytes of the file; a sign of content comes to less than half a byte there. */
const FORM = 150;
const SHOWING = 14;
const BYTES_A_SIGN = 0.4;
/** Segments of a shape that may be worth a form: below it, showing the form takes as many signs. */
const LEAST = 7;
const LEAST_CURVES = 2;
/** Lines reach beyond their middle, mitred corners and letters further: so far at most, mm. */
const BEYOND = 5;

/** `pages`: all of the document, their stretches merged. */
export function sharedShapes(pdf: Pdf, pages: readonly TaggedPage[]): Shapes {
  const shapes = new Map<Item, string>();
  const counts = new Map<string, number>();
  const seen = new Set<string>();
  for (const { items, whole } of pages.flatMap((page) => page.stretches)) {
    const look = whole ? lookOf(items) : '';
    // a figure that stands again is most likely shown whole
    const step = seen.has(look) ? 0 : 1;
    if (whole) seen.add(look);
    for (const item of items) {
      if (item.kind === 'text' || item.hatch || isShort(item)) continue;
      // from its own beginning, with how it is painted
      const shape = `${pathOf(item.segments, beginOf(item))} ${paintOf(item)}`;
      shapes.set(item, shape);
      counts.set(shape, (counts.get(shape) ?? 0) + step);
    }
  }
  const names = new Map<string, string>();
  return {
    nameOf: (item) => {
      const shape = shapes.get(item);
      if (shape === undefined || !pays(shape, counts.get(shape) ?? 0)) return undefined;
      const name = names.get(shape) ?? pdf.form(shape, boxAround([item], beginOf(item)));
      names.set(shape, name);
      return name;
    },
  };
}

/** The same for figures that look the same; others hardly ever share it. */
function lookOf(items: readonly Item[]): string {
  const [first] = items;
  const { x, y } = first?.kind === 'path' ? beginOf(first) : { x: 0, y: 0 };
  return items
    .map((item) => {
      if (item.kind === 'text') return item.text;
      const begin = beginOf(item);
      return `${item.segments.length} ${begin.x - x} ${begin.y - y}`;
    })
    .join();
}

function isShort({ segments }: PathItem): boolean {
  return segments.length < LEAST && segments.filter(({ to }) => to === 'curve').length < LEAST_CURVES;
}

/** A picture as it stands on a page; `content` as seen from `origin`, with nothing set before it. */
export type Picture = { readonly content: string; readonly origin: Point; readonly items: readonly Item[] };

/** Operators that show a picture where it stands and leave nothing set. */
export type Shown = (picture: Picture) => string;

/** `pictures`: all of the document. */
export function sharedPictures(pdf: Pdf, pictures: readonly Picture[]): Shown {
  const counts = new Map<string, number>();
  for (const { content } of pictures) counts.set(content, (counts.get(content) ?? 0) + 1);
  const names = new Map<string, string>();
  return ({ content, origin, items }) => {
    const place = `q 1 0 0 1 ${origin.x} ${origin.y} cm`;
    if (!pays(content, counts.get(content) ?? 0)) return `${place}\n${content}\nQ`;
    const name = names.get(content) ?? pdf.picture(content, boxAround(items, origin));
    names.set(content, name);
    return `${place} /${name} Do Q`;
  };
}

function pays({ length }: string, times: number): boolean {
  return times > 1 && (times - 1) * length * BYTES_A_SIGN > FORM + times * SHOWING;
}

/** In units, from the origin. */
function boxAround(items: readonly Item[], origin: Point): Box {
  const [xs, ys] = [items.flatMap(reachAcross), items.flatMap(reachDown)];
  const low = (mm: readonly number[], from: number): number => inUnits(Math.min(...mm) - BEYOND) - from;
  const high = (mm: readonly number[], from: number): number => inUnits(Math.max(...mm) + BEYOND) - from;
  return [low(xs, origin.x), low(ys, origin.y), high(xs, origin.x), high(ys, origin.y)];
}

function reachAcross(item: Item): readonly number[] {
  if (item.kind === 'path') return item.segments.flatMap((s) => (s.to === 'close' ? [] : s.to === 'curve' ? [s.x, s.x1, s.x2] : [s.x]));
  return item.turn ? [item.x] : [item.x, item.x + item.width];
}

function reachDown(item: Item): readonly number[] {
  if (item.kind === 'path') return item.segments.flatMap((s) => (s.to === 'close' ? [] : s.to === 'curve' ? [s.y, s.y1, s.y2] : [s.y]));
  return item.turn ? [item.y - item.width, item.y + item.width] : [item.y];
}
