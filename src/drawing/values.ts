/** A size as it is lettered on a picture: the value, its limits smaller beside it (one on the line, two stacked). */
import type { Advances, Box, Item } from '../model/display.ts';
import { type Lettering, text, textBox, textUp } from './display.ts';
import { capHeight, textWidth } from './measure.ts';

export type Sizes = { readonly value: number; readonly limits: number };
export type Value = {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly string[];
  readonly value: Lettering;
  readonly limits: Lettering;
};

/** Between value and limits, as a share of the value's size. */
const BLANK = 0.28;
/** Baselines of stacked limits, as shares of their size, from the middle of the value. */
const STACK = 0.58;

export function setValue(advances: Advances, lines: readonly string[], sizes: Sizes): Value {
  const value: Lettering = { advances, font: 'narrow-bold', size: sizes.value, ink: 'black' };
  const limits: Lettering = { advances, font: 'narrow', size: sizes.limits, ink: 'black' };
  const first = textWidth(advances, value.font, value.size, lines[0] ?? '');
  const rest = Math.max(0, ...lines.slice(1).map((l) => textWidth(advances, limits.font, limits.size, l)));
  const width = rest > 0 ? first + BLANK * sizes.value + rest : first;
  const height = lines.length > 2 ? sizes.limits * (2 * STACK + 0.7) : capHeight(sizes.value);
  return { width, height, lines, value, limits };
}

/** Level, its middle at x, y. `what` is the box's kind and owner. */
export function levelValue(v: Value, x: number, y: number, what: string): { readonly items: readonly Item[]; readonly box: Box } {
  const left = x - v.width / 2;
  const baseline = y + capHeight(v.value.size) / 2;
  const first = text(v.value, v.lines[0] ?? '', left, baseline);
  const at = left + first.width + BLANK * v.value.size;
  const rest = v.lines.slice(1).map((l, i) => text(v.limits, l, at, limitBaseline(v, i, y, baseline)));
  return around([first, ...rest], what);
}

/** Reading upward, its middle at y, all of it left of `right`. */
export function uprightValue(v: Value, right: number, y: number, what: string): { readonly items: readonly Item[]; readonly box: Box } {
  const x = right - Math.max(0, (v.height - capHeight(v.value.size)) / 2);
  const low = y + v.width / 2;
  const firstWidth = textWidth(v.value.advances, v.value.font, v.value.size, v.lines[0] ?? '');
  const first = textUp(v.value, v.lines[0] ?? '', x, low - firstWidth / 2);
  const at = low - firstWidth - BLANK * v.value.size;
  const middle = x - capHeight(v.value.size) / 2;
  const rest = v.lines.slice(1).map((l, i) => {
    const width = textWidth(v.limits.advances, v.limits.font, v.limits.size, l);
    return textUp(v.limits, l, limitBaseline(v, i, middle, x), at - width / 2);
  });
  return around([first, ...rest], what);
}

/** One line of limits stands on the value's baseline; two stand above and below its middle. */
function limitBaseline(v: Value, i: number, middle: number, baseline: number): number {
  if (v.lines.length < 3) return baseline;
  const half = capHeight(v.limits.size) / 2;
  return i === 0 ? middle - STACK * v.limits.size + half : middle + STACK * v.limits.size + half;
}

function around(items: readonly ReturnType<typeof text>[], what: string): { readonly items: readonly Item[]; readonly box: Box } {
  const boxes = items.map((item) => textBox(item));
  const [x, y] = [Math.min(...boxes.map((b) => b.x)), Math.min(...boxes.map((b) => b.y))];
  const right = Math.max(...boxes.map((b) => b.x + b.w));
  const low = Math.max(...boxes.map((b) => b.y + b.h));
  return { items, box: { x, y, w: right - x, h: low - y, what } };
}
