/**
 * Diameters at the free end: extension lines level from the surface, the dimension line upright, smallest nearest the work, its value
 * reading upward. Only surfaces whose extension line runs clear to the end; the others are labelled with a leader.
 */
import type { Advances, Box, Item } from '../model/display.ts';
import { isFree } from './collisions.ts';
import { arrowHead, line } from './display.ts';
import { type Layer, NARROW } from './paper.ts';
import { type Leg, lineBoxes, withRoom } from './plane.ts';
import { type Sizes, setValue, uprightValue } from './values.ts';

/** `x`: right end of the surface; `above`, `below`: its levels on paper. */
export type Upright = {
  readonly id: string;
  readonly x: number;
  readonly above: number;
  readonly below: number;
  readonly side: 'outside' | 'inside';
  readonly text: readonly string[];
};
export type EndRoom = { readonly from: number; readonly right: number; readonly taken: readonly Box[] };
export type Columns = Layer & { readonly placed: readonly string[]; readonly right: number };

const PITCH = 7;
const ARROW = 2.4;
const CLEAR = 0.6;
const TEXT_OFF = 0.9;
const PAST = 8 * NARROW.width;
/** In a half-section the line of a bore ends a little past the axis, without an arrow there. */
const PAST_AXIS = 3;

export function drawDiameters(advances: Advances, dims: readonly Upright[], sizes: Sizes, room: EndRoom): Columns {
  const sorted = [...dims].sort((p, q) => q.above - p.above || (p.id < q.id ? -1 : 1));
  const layers: Layer[] = [];
  const placed: string[] = [];
  let x = room.from + PITCH;
  for (const dim of sorted) {
    if (x > room.right) break;
    const layer = column(advances, dim, sizes, x);
    const taken = [...room.taken, ...layers.flatMap((l) => l.boxes)];
    if (!layer.boxes.every((b) => isFree(b.what.startsWith('text') ? withRoom(b, CLEAR) : b, taken))) continue;
    layers.push(layer);
    placed.push(dim.id);
    x += PITCH;
  }
  return {
    items: layers.flatMap((l) => l.items),
    boxes: layers.flatMap((l) => l.boxes),
    placed,
    right: placed.length > 0 ? x - PITCH + PAST : room.from,
  };
}

function column(advances: Advances, dim: Upright, sizes: Sizes, x: number): Layer {
  const inside = dim.side === 'inside';
  const axis = (dim.above + dim.below) / 2;
  const roomy = dim.below - dim.above >= 2 * ARROW + 1;
  const foot = inside ? axis + PAST_AXIS : dim.below;
  const value = uprightValue(setValue(advances, dim.text, sizes), x - TEXT_OFF, axis, `text ${dim.id}`);
  const tail = roomy ? 0 : 2 * ARROW;
  const legs: readonly Leg[] = [
    { a: { x: dim.x + CLEAR, y: dim.above }, b: { x: x + PAST, y: dim.above } },
    { a: { x, y: dim.above - tail }, b: { x, y: inside ? foot : foot + tail } },
    ...(inside ? [] : [{ a: { x: dim.x + CLEAR, y: dim.below }, b: { x: x + PAST, y: dim.below } }]),
  ];
  const heads: readonly Item[] = [
    arrowHead({ x, y: dim.above }, roomy ? 90 : 270, ARROW, 'black'),
    ...(inside ? [] : [arrowHead({ x, y: dim.below }, roomy ? 270 : 90, ARROW, 'black')]),
  ];
  return {
    items: [...legs.map((l) => line(l.a.x, l.a.y, l.b.x, l.b.y, NARROW)), ...heads, ...value.items],
    boxes: [value.box, ...legs.flatMap((l) => lineBoxes(l, `line ${dim.id}`))],
  };
}
