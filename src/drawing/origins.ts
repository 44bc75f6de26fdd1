/** Letters of the faces besides the datum that a picture's lengths are counted from, put in where all else leaves a place. */
import type { Box } from '../model/display.ts';
import { rimAt } from './anchors.ts';
import { isFree } from './collisions.ts';
import { drawOrigin } from './datum.ts';
import { text, type XY } from './display.ts';
import { capHeight } from './measure.ts';
import { joined, type Layer, onPaper, type Paper } from './paper.ts';
import { withRoom } from './plane.ts';
import type { Scene } from './scene.ts';
import { along, metalAt, type Sketch } from './sketch.ts';
import type { StageView } from './view.ts';

/** mm of work */
const NEAR = 1e-3;
/** On paper, mm. */
const LETTER = 3.2;
const OVER = 0.7;
const CLEAR = 0.4;
const SAME = 0.05;
/** From the line to the middle of a letter beside it, and from one place to the next. */
const BESIDE = 2;
const STEP = 0.8;

export function drawOrigins({ view, sketch }: Scene, paper: Paper, taken: readonly Box[]): Layer {
  let layer: Layer = { items: [], boxes: [] };
  for (const { z, letter } of view.origins ?? []) {
    const u = along(z, sketch.out);
    const others = [...taken, ...layer.boxes];
    const mark = under(view, sketch, paper, { u, letter }, others) ?? over(view, onPaper(paper, { u, r: 0 }, 'above').x, letter, others);
    if (mark) layer = joined([layer, mark]);
  }
  return layer;
}

type Origin = { readonly u: number; readonly letter: string };

/** Like the datum, under a face that is seen from outside. */
function under(view: StageView, sketch: Sketch, paper: Paper, { u, letter }: Origin, taken: readonly Box[]): Layer | undefined {
  const r = rimAt(sketch, u);
  if (!reachesRim(sketch, u, r)) return undefined;
  const side = metalAt(sketch.loops, { u: u + NEAR, r: r - NEAR }) ? -1 : 1;
  return drawOrigin(view.advances, letter, { from: onPaper(paper, { u, r }, 'below'), side, frame: view.frame, taken });
}

/** A face inside, or behind what is wider, is not seen from outside. */
function reachesRim(sketch: Sketch, u: number, rim: number): boolean {
  const at = (v: number): boolean => Math.abs(v - u) < NEAR;
  return sketch.loops.flat().some((e) => at(e.a.u) && at(e.b.u) && Math.max(e.a.r, e.b.r) > rim - NEAR);
}

/** Its letter alone, over the end of its extension line, or beside that, as far up as there is a place. */
function over(view: StageView, x: number, letter: string, taken: readonly Box[]): Layer | undefined {
  const own = taken.filter((b) => b.what.startsWith('line ') && Math.abs(b.x + b.w / 2 - x) < SAME && b.h > b.w);
  const [top, bottom] = [Math.min(...own.map((b) => b.y)), Math.max(...own.map((b) => b.y + b.h))];
  const how = { advances: view.advances, font: 'narrow-bold', size: LETTER, ink: 'black' } as const;
  for (const at of spots(x, top, bottom)) {
    const written = text(how, letter, at.x, at.y, 'middle');
    const box: Box = {
      x: at.x - written.width / 2,
      y: at.y - capHeight(LETTER),
      w: written.width,
      h: capHeight(LETTER),
      what: `text origin-${letter}`,
    };
    const inside = box.y > CLEAR && box.x > CLEAR && box.x + box.w < view.frame.width - CLEAR;
    if (inside && isFree(withRoom(box, CLEAR), taken)) return { items: [written], boxes: [box] };
  }
  return undefined;
}

function* spots(x: number, top: number, bottom: number): Generator<XY> {
  if (top < bottom) yield { x, y: top - OVER };
  for (let y = top + capHeight(LETTER); y < bottom; y += STEP) for (const side of [-1, 1]) yield { x: x + side * BESIDE, y };
}
