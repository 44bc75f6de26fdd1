/**
 * A vee-block under round work, seen along its side: the work sinks into it by half its radius, its lowest line hidden behind the block. Over
 * it the drill stands where it works, its point on the axis, and the clamp beside it.
 */
import { line, type Paint, polygon } from './display.ts';
import { across, type Layer, level, MADE, NOTHING, type Paper } from './paper.ts';
import type { Window } from './window.ts';

/** On paper, mm: block under the work, drill and clamp over it. */
const BLOCK = 7;
const DRILL = 9;
const CLAMP = { high: 3, wide: 6, off: 2 };
/** Of the radius: how far below the axis the block's upper edge stands. A vee of 90 degrees touches the work at 0.71. */
const EDGE_AT = 0.5;
const EDGE = { ink: 'dark', width: 0.25 } as const;
const BODY: Paint = { fill: 'pale', stroke: EDGE };
const HIDDEN = { ink: 'dark', width: 0.18, dash: [1.2, 0.6] } as const;
/** Half of 118 degrees. */
const POINT = Math.tan((59 * Math.PI) / 180);

export function drawVee({ vee }: Window, paper: Paper): Layer {
  if (!vee) return NOTHING;
  const [left, right] = [across(paper, vee.from), across(paper, vee.to)];
  const [top, low] = [level(paper, vee.radius * EDGE_AT, 'below'), level(paper, vee.radius, 'below')];
  const block = box(left, right, top, low + BLOCK);
  const drills = vee.drills.map((drill) => drillItems(across(paper, drill.u), drill.radius * paper.scale, vee.radius * paper.scale, paper));
  const clamp = clampOver(vee, left, right, paper);
  return {
    items: [polygon(block, BODY), line(left, low, right, low, HIDDEN), ...clamp.items, ...drills.flatMap((d) => d.items)],
    boxes: [
      { x: left, y: top, w: right - left, h: low + BLOCK - top, what: 'work hold' },
      ...clamp.boxes,
      ...drills.flatMap((d) => d.boxes),
    ],
  };
}

const box = (left: number, right: number, top: number, bottom: number) => [
  { x: left, y: top },
  { x: right, y: top },
  { x: right, y: bottom },
  { x: left, y: bottom },
];

/** The hole's two sides as far as the axis, in the colour of what is new. */
function drillItems(x: number, half: number, radius: number, paper: Paper): Layer {
  const [tip, skin] = [paper.axis, paper.axis - radius];
  const corner = tip - half / POINT;
  const ring = [
    { x: x - half, y: skin - DRILL },
    { x: x + half, y: skin - DRILL },
    { x: x + half, y: corner },
    { x, y: tip },
    { x: x - half, y: corner },
  ];
  const walls = [x - half, x + half].map((at) => line(at, skin, at, Math.max(skin, corner), MADE));
  return {
    items: [polygon(ring, BODY), ...walls],
    boxes: [{ x: x - half, y: skin - DRILL, w: 2 * half, h: tip - skin + DRILL, what: 'work hold' }],
  };
}

/** On the longer side of the drill, where there is room for it. */
function clampOver(vee: NonNullable<Window['vee']>, left: number, right: number, paper: Paper): Layer {
  const drills = vee.drills.map(({ u, radius }) => ({
    from: across(paper, u) - radius * paper.scale,
    to: across(paper, u) + radius * paper.scale,
  }));
  const [first, last] = [Math.min(right, ...drills.map((d) => d.from)), Math.max(left, ...drills.map((d) => d.to))];
  const free = first - left > right - last ? { from: left, to: first } : { from: last, to: right };
  const wide = Math.min(CLAMP.wide, free.to - free.from - 2 * CLAMP.off);
  if (wide < CLAMP.off) return NOTHING;
  const [from, skin] = [(free.from + free.to - wide) / 2, level(paper, vee.radius, 'above')];
  return {
    items: [polygon(box(from, from + wide, skin - CLAMP.high, skin), BODY)],
    boxes: [{ x: from, y: skin - CLAMP.high, w: wide, h: CLAMP.high, what: 'work hold' }],
  };
}
