/**
 * Pictures without words that stand in a document many times (safety signs) are written once, as a form (ISO 32000-1, 8.10); shapes that do
 * (the frame of a box, a dial's divisions, a balloon) are so too, as a form that takes width and colour from where it is shown.
 */
import type { Item, PathItem } from '../model/display.ts';
import type { Pdf } from './pdf-adapter.ts';
import { beginOf, COLOURS, paintOf, pathOf, strokeOf } from './pdf-paths.ts';
import type { TaggedPage } from './pdf-tags.ts';
import { array, number } from './pdf-write.ts';

export type Shapes = {
  /** Its name among the resources of the page that is open; undefined for what is written where it stands. `shape`: as from its own beginning. */
  nameOf(shape: string): string | undefined;
  /** The same for all of a stretch at once. `picture`: as `pictureOf` tells it. */
  pictureName(picture: string): string | undefined;
};

/** Signs of a shape that may be worth a form: below it, showing the form takes as many. */
const LEAST = 80;
/** What a form costs besides its shape, and each showing of it, in bytes of the file; a sign of a path comes to less than half a byte there. */
const FORM = 200;
const SHOWING = 25;
const BYTES_A_SIGN = 0.4;
/** Lines reach beyond their middle, and mitred corners further: so far at most, mm. */
const BEYOND = 5;

/** `pages`: all of the document, their stretches merged. */
export function sharedShapes(pdf: Pdf, pages: readonly TaggedPage[]): Shapes {
  const stretches = pages.flatMap((page) => page.stretches);
  const pictures = counted(stretches.flatMap(({ items }) => pictureOf(items) ?? []));
  const isShown = (picture: string | undefined): boolean => picture !== undefined && pays(picture, pictures.get(picture) ?? 0);
  const others = stretches.filter(({ items }) => !isShown(pictureOf(items)));
  const shapes = counted(others.flatMap(({ items }) => items.flatMap(shapesOf)));
  const forms = new Map<string, number>();
  const named = (content: string): string => {
    const form = forms.get(content) ?? pdf.stream({ Type: '/XObject', Subtype: '/Form', BBox: boxOf(content), Resources: '<<>>' }, content);
    forms.set(content, form);
    return pdf.useForm(form);
  };
  return {
    nameOf: (shape) => (pays(shape, shapes.get(shape) ?? 0) ? named(shape) : undefined),
    pictureName: (picture) => (isShown(picture) ? named(picture) : undefined),
  };
}

function counted(contents: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const content of contents) counts.set(content, (counts.get(content) ?? 0) + 1);
  return counts;
}

/** A picture has so many paths at most; what has more hardly stands twice. */
const MOST_PATHS = 20;

/** A few paths from where the first begins, colours and all; undefined for what has words, hatching, or one path alone. */
export function pictureOf(items: readonly Item[]): string | undefined {
  if (items.length < 2 || items.length > MOST_PATHS) return undefined;
  const paths = items.filter((item) => item.kind === 'path' && !item.hatch) as readonly PathItem[];
  const [first] = paths;
  if (!first || paths.length < items.length) return undefined;
  const origin = beginOf(first);
  return paths.map((item) => [...inkOf(item), pathOf(item.segments, origin), paintOf(item)].join(' ')).join('\n');
}

function inkOf({ fill, stroke }: PathItem): readonly string[] {
  return [...(fill ? [`${COLOURS[fill]} rg`] : []), ...(stroke ? [strokeOf(stroke)] : [])];
}

/** The item's shape from its own beginning, with how it is painted. */
export function shapesOf(item: Item): readonly string[] {
  if (item.kind === 'text' || item.hatch) return [];
  const shape = `${pathOf(item.segments, beginOf(item))} ${paintOf(item)}`;
  return shape.length < LEAST ? [] : [shape];
}

function pays(shape: string, times: number): boolean {
  return (times - 1) * shape.length * BYTES_A_SIGN > FORM + times * SHOWING;
}

/** Read off the content's own figures: those of moves, lines and curves come in pairs. */
function boxOf(content: string): string {
  const figures = [...content.matchAll(/((?:-?[\d.]+ )+)(?=[mlc]\b)/g)].flatMap(([, some = '']) => some.trim().split(' ').map(Number));
  const [xs, ys] = [0, 1].map((odd) => figures.filter((_, i) => i % 2 === odd));
  const low = [xs, ys].map((some = []) => Math.min(...some) - BEYOND);
  const high = [xs, ys].map((some = []) => Math.max(...some) + BEYOND);
  return array([...low, ...high].map(number));
}
