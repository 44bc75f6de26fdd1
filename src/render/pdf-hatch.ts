/**
 * Hatching by forms (ISO 32000-1, 8.10): a square full of lines is written once and shown through the outline of each face that is hatched so.
 * Its lines have no width or colour of their own: they take those of the page.
 */
import type { Lattice } from '../model/display.ts';
import type { Pdf } from './pdf-adapter.ts';
import { length, type Point, pathOf, UNITS } from './pdf-paths.ts';

export type Forms = {
  /** The least square that covers so many mm: its name among the resources, and its side. */
  covering(hatch: Lattice, reach: number): { readonly name: string; readonly side: number };
};

/** Sides of the squares, mm: this and each twice the one before. */
const LEAST = 10;

export function hatchForms(pdf: Pdf): Forms {
  const known = new Map<string, string>();
  return {
    covering: (hatch, reach) => {
      const side = LEAST * 2 ** Math.max(0, Math.ceil(Math.log2(reach / LEAST)));
      const key = `${hatch.lean} ${length(hatch.step)} ${side}`;
      const name = known.get(key) ?? pdf.form(linesIn(side, hatch.lean, hatch.step), [0, 0, side * UNITS, side * UNITS]);
      known.set(key, name);
      return { name, side };
    },
  };
}

/** Operators that show the hatching inside its ring and leave nothing set. `origin`: where the page counts from just now. */
export function hatchContent(hatch: Lattice, origin: Point, forms: Forms): string {
  const { ring, lean, at, step } = hatch;
  const points = ring.flatMap((s) => (s.to === 'close' ? [] : [s]));
  const [left, right] = [Math.min(...points.map((p) => p.x)), Math.max(...points.map((p) => p.x))];
  const [top, bottom] = [Math.min(...points.map((p) => p.y)), Math.max(...points.map((p) => p.y))];
  // one line of the lattice runs through the square's corner: so far to the left of the ring's own
  const off = lean === 1 ? top + left - at : at - top + left;
  const back = off - Math.floor(off / step) * step;
  const { name } = forms.covering(hatch, Math.max(right - left + step, bottom - top));
  const corner = `${length(left - back - origin.x / UNITS)} ${length(top - origin.y / UNITS)}`;
  return `q ${pathOf(ring, origin)} W n 1 0 0 1 ${corner} cm /${name} Do Q`;
}

/** Rising to the right: y + x = n step. Falling: y - x = n step. */
function linesIn(side: number, lean: 1 | -1, step: number): string {
  const count = Math.floor(side / step);
  const from = lean === 1 ? 0 : -count;
  const to = lean === 1 ? 2 * count + 1 : count;
  return Array.from({ length: to - from + 1 }, (_, i) => (from + i) * step)
    .map((c) => (lean === 1 ? [Math.max(0, c - side), Math.min(c, side)] : [Math.max(0, -c), Math.min(side, side - c)]))
    .map(([x0 = 0, x1 = 0], i) => {
      const c = (from + i) * step;
      return [x0, c - lean * x0, x1, c - lean * x1];
    })
    .filter(([x0 = 0, , x1 = 0]) => x1 > x0)
    .map(([x0 = 0, y0 = 0, x1 = 0, y1 = 0]) => `${length(x0)} ${length(y0)} m ${length(x1)} ${length(y1)} l`)
    .concat('S')
    .join('\n');
}
