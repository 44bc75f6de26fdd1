/** Balloons (operation numbers in rings) and diameters with a leader, made ready for placing; and drawn where they were placed. */
import type { Advances, Box, Item } from '../model/display.ts';
import { arrowHead, circle, type Lettering, line, text, type XY } from './display.ts';
import { capHeight, textWidth } from './measure.ts';
import { type Layer, NARROW } from './paper.ts';
import { lineBoxes } from './plane.ts';
import { type Standing, short, type Tag } from './settle.ts';
import { boxOf } from './tags.ts';
import { levelValue, type Sizes, setValue } from './values.ts';

/** On paper, mm. */
export const RING = 3.2;
const NUMBER = 3.6;
const RING_GAP = 0.5;
const RING_LINE = 0.3;
const DOT = 0.45;
const ARROW = 2.2;
const LABEL_GAP = 0.8;

/** One surface's balloons, side by side. */
export function balloonTag(advances: Advances, id: string, numbers: readonly string[], anchors: readonly XY[]): Tag {
  const how: Lettering = { advances, font: 'narrow-bold', size: NUMBER, ink: 'black' };
  const radius = Math.max(RING, ...numbers.map((n) => textWidth(advances, how.font, how.size, n) / 2 + 0.7));
  const step = 2 * radius + RING_GAP;
  const offsets = numbers.map((_, i) => (i - (numbers.length - 1) / 2) * step);
  return {
    id,
    kind: 'ring',
    width: 2 * radius + (numbers.length - 1) * step,
    height: 2 * radius,
    ports: offsets.map((dx) => ({ dx, dy: 0, radius })),
    anchors,
    draw: (middle) =>
      numbers.flatMap((n, i) => [
        circle(middle.x + (offsets[i] ?? 0), middle.y, radius, { fill: 'white', stroke: { ink: 'black', width: RING_LINE } }),
        text(how, n, middle.x + (offsets[i] ?? 0), middle.y + capHeight(NUMBER) / 2, 'middle'),
      ]),
  };
}

/** A size beside a leader. */
export function labelTag(advances: Advances, id: string, lines: readonly string[], sizes: Sizes, anchors: readonly XY[]): Tag {
  const value = setValue(advances, lines, sizes);
  const side = value.width / 2 + LABEL_GAP;
  return {
    id,
    kind: 'text',
    width: value.width + 2 * LABEL_GAP,
    height: value.height + 2 * LABEL_GAP,
    ports: [
      { dx: -side, dy: 0, radius: 0 },
      { dx: side, dy: 0, radius: 0 },
    ],
    anchors,
    draw: (middle) => levelValue(value, middle.x, middle.y, `text ${id}`).items,
  };
}

/** Leaders first, so that rings stand on them. A balloon's leader ends in a dot on the surface, a size's in an arrow. */
export function drawTags(standing: readonly Standing[]): Layer {
  const leaders = standing.flatMap((s): readonly Item[] => [
    line(s.leader.a.x, s.leader.a.y, s.leader.b.x, s.leader.b.y, NARROW),
    endOf(s),
  ]);
  const boxes = standing.flatMap((s): readonly Box[] => [boxOf(s), ...lineBoxes(short(s.leader), `leader ${s.tag.id}`)]);
  return { items: [...leaders, ...standing.flatMap((s) => s.tag.draw(s.middle))], boxes };
}

function endOf(s: Standing): Item {
  const { a, b } = s.leader;
  if (s.tag.kind === 'ring') return circle(b.x, b.y, DOT, { fill: 'black' });
  return arrowHead(b, (Math.atan2(a.y - b.y, b.x - a.x) * 180) / Math.PI, ARROW, 'black');
}
