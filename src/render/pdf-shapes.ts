/**
 * Shapes that stand in a document many times (the frame of a box, a dial's divisions, a balloon) are written once, as a form (ISO 32000-1, 8.10)
 * that takes width and colour from where it is shown.
 */
import type { Item } from '../model/display.ts';
import type { Pdf } from './pdf-adapter.ts';
import { beginOf, paintOf, pathOf } from './pdf-paths.ts';
import type { TaggedPage } from './pdf-tags.ts';
import { array, number } from './pdf-write.ts';

export type Shapes = {
  /** Its name among the resources of the page that is open; undefined for what is written where it stands. `shape`: as from its own beginning. */
  nameOf(shape: string): string | undefined;
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
  const counts = new Map<string, number>();
  for (const { stretches } of pages)
    for (const { items } of stretches) for (const shape of items.flatMap(shapesOf)) counts.set(shape, (counts.get(shape) ?? 0) + 1);
  const forms = new Map<string, number>();
  return {
    nameOf: (shape) => {
      if (!pays(shape, counts.get(shape) ?? 0)) return undefined;
      const form = forms.get(shape) ?? pdf.stream({ Type: '/XObject', Subtype: '/Form', BBox: boxOf(shape), Resources: '<<>>' }, shape);
      forms.set(shape, form);
      return pdf.useForm(form);
    },
  };
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

/** Read off the shape's own figures: its coordinates come in pairs. */
function boxOf(shape: string): string {
  const figures = shape
    .split(' ')
    .filter((word) => word !== '' && !/[a-zA-Z]/.test(word))
    .map(Number);
  const [xs, ys] = [0, 1].map((odd) => figures.filter((_, i) => i % 2 === odd));
  const low = [xs, ys].map((some = []) => Math.min(...some) - BEYOND);
  const high = [xs, ys].map((some = []) => Math.max(...some) + BEYOND);
  return array([...low, ...high].map(number));
}
