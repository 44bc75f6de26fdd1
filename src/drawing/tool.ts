/**
 * The tool where its work is done. Where that is, the picture's new edges tell, or for a wheel, a file, a saw in a slit what it works on. What cuts from outside
 * stands below the axis, on the turner's side; what cuts inside is seen where the work is cut, above it; what the tailstock holds runs along
 * the axis.
 */
import type { Advances, Box } from '../model/display.ts';
import { isFree, kindOf } from './collisions.ts';
import { type Lettering, polygon, polyline, text, textBox, textUp, type XY } from './display.ts';
import { capHeight, textWidth } from './measure.ts';
import { joined, type Layer, NOTHING, type Paper, ringOnPaper } from './paper.ts';
import type { Scene } from './scene.ts';
import { crossHatched } from './sides.ts';
import type { Sketch } from './sketch.ts';
import { file, saw } from './tool/bench.ts';
import { NEAR, OUT, type Outline, type Place } from './tool/place.ts';
import { bevel, blade, facing, knife, vee, wheel } from './tool/post.ts';
import { axial, centre, die } from './tool/tailstock.ts';
import type { ToolShown } from './view.ts';
import type { Window } from './window.ts';

const EDGE = { ink: 'dark', width: 0.25 } as const;

export function drawTool(tool: ToolShown | undefined, sketch: Sketch, window: Window, paper: Paper, advances: Advances, out = OUT): Layer {
  if (!tool) return NOTHING;
  const { on, number = '' } = tool;
  const made = sketch.loops.flat().filter((e) => e.made && (!on || on.includes(e.surface)) && (e.a.r > NEAR || e.b.r > NEAR));
  const outlines = FORMS[tool.form](tool, { made, sketch, shown: window, out, mm: (onPaper) => onPaper / paper.scale });
  const bodies: Layer = {
    items: outlines.flatMap(({ half, ring, edge = ring, knurled }) => {
      const shape = ringOnPaper(paper, ring, half);
      return [polygon(shape, { fill: 'pale' }), ...(knurled ? crossHatched(shape) : []), polyline(ringOnPaper(paper, edge, half), EDGE)];
    }),
    boxes: outlines.map(({ half, ring }) => boxAround(ringOnPaper(paper, ring, half))),
  };
  const [first] = outlines;
  return first && number !== '' ? joined([bodies, numberOn(first, number, paper, advances)]) : bodies;
}

/** Shares of its reach that are tried. */
const SHORTER = [1, 0.7, 0.45] as const;

/** The layers of a tool that may be shown, at its reach and shorter, within the frame; each drawn when it is asked for, and once. */
export type Reaches = readonly (() => Reach | undefined)[];
type Reach = { readonly layer: Layer; readonly bodies: readonly Box[] };

export function reachesOf(tool: ToolShown | undefined, { view, sketch, window }: Scene, paper: Paper): Reaches {
  const { width, height } = view.frame;
  const reachAt = (share: number): Reach | undefined => {
    const layer = drawTool(tool, sketch, window, paper, view.advances, { side: OUT.side * share, end: OUT.end * share });
    const bodies = layer.boxes.filter((box) => kindOf(box) === 'work');
    return bodies.every(({ x, y, w, h }) => x >= 0 && y >= 0 && x + w <= width && y + h <= height) ? { layer, bodies } : undefined;
  };
  return tool ? SHORTER.map((share) => onceMade(() => reachAt(share))) : [];
}

function onceMade<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** Where what stands already leaves a place for it, if need be a short one: no picture is drawn another way for its sake. */
export function toolIfFree(reaches: Reaches, standing: readonly Box[]): Layer {
  const others = standing.filter((box) => kindOf(box) !== 'work');
  for (const reach of reaches) {
    const reached = reach();
    if (!reached?.bodies.every((box) => isFree(box, others))) continue;
    const { layer, bodies } = reached;
    // its number may not stand over the work either
    if (layer.boxes.every((box) => bodies.includes(box) || isFree(box, standing))) return layer;
    return { items: layer.items.filter((item) => item.kind === 'path'), boxes: bodies };
  }
  return NOTHING;
}

/** At its open end, within it; nothing where that is too narrow. */
function numberOn({ half, ring, edge }: Outline, number: string, paper: Paper, advances: Advances): Layer {
  const points = ringOnPaper(paper, ring, half);
  const [a, b] = edge ? points.slice(-2) : [points.at(-1), points[0]];
  if (!a || !b) return NOTHING;
  const how: Lettering = { advances, ...NUMBER };
  const [width, high] = [textWidth(advances, how.font, how.size, number) + 2 * PAD, capHeight(how.size) + 2 * PAD];
  const flat = a.y === b.y;
  const wide = Math.abs(b.x - a.x);
  // a narrow shank has it along itself
  const upright = flat && wide < width && wide >= high && a.y - Math.min(...points.map(({ y }) => y)) >= width + high;
  if (!upright && (flat ? wide < width : Math.abs(b.y - a.y) < high)) return NOTHING;
  if (upright) {
    const turned = textUp(how, number, (a.x + b.x) / 2 + capHeight(how.size) / 2, a.y - width / 2);
    return { items: [turned], boxes: [textBox(turned, 'text tool')] };
  }
  const written = flat
    ? text(how, number, (a.x + b.x) / 2, a.y - PAD, 'middle')
    : text(how, number, a.x - PAD, (a.y + b.y) / 2 + capHeight(how.size) / 2, 'right');
  return { items: [written], boxes: [textBox(written, 'text tool')] };
}
const NUMBER = { font: 'narrow-bold', size: 2.8, ink: 'dark' } as const;
const PAD = 0.6;

function boxAround(points: readonly XY[]): Layer['boxes'][number] {
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, w: Math.max(...xs) - x, h: Math.max(...ys) - y, what: 'work tool' };
}

const FORMS: Readonly<Record<ToolShown['form'], (tool: ToolShown, place: Place) => readonly Outline[]>> = {
  knife,
  facing,
  blade,
  bevel,
  vee,
  drill: axial,
  centre,
  tap: axial,
  die,
  wheel,
  file,
  saw,
};
