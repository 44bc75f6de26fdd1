/** The datum, and other faces that lengths are counted from: an extension line, a filled triangle standing on it, a letter in a frame (ISO 5459). */
import type { Advances, Box, Item } from '../model/display.ts';
import { isFree } from './collisions.ts';
import { type Lettering, line, polygon, rect, text, type XY } from './display.ts';
import { capHeight, textWidth } from './measure.ts';
import { type Layer, NARROW } from './paper.ts';
import { lineBoxes, withRoom } from './plane.ts';

/** On paper, mm. */
const FRAME = 5;
const LETTER = 3.6;
const TRIANGLE = 2.4;
const STEM = 1.6;
const PAST = 1.4;
const CLEAR = 0.6;
const STEP = 2;

/** `from`: the face's outer corner below the axis. `side`: where its air is, tried first: -1 left. */
export type Stand = {
  readonly from: XY;
  readonly side: 1 | -1;
  readonly frame: { readonly width: number; readonly height: number };
  readonly taken: readonly Box[];
};

/** Undefined where no place is free. */
export function drawDatum(advances: Advances, letter: string, stand: Stand): Layer | undefined {
  for (const spot of spotsOf(advances, { letter, owner: 'datum' }, stand)) if (isClear(spot, stand)) return datumAt(advances, spot, stand);
  return undefined;
}

/** One of the others, put in when all else stands: near its face, where its line meets nothing either. Undefined where there is no such place. */
export function drawOrigin(advances: Advances, letter: string, stand: Stand): Layer | undefined {
  const { frame, from, taken } = stand;
  const low = { width: frame.width, height: Math.min(frame.height, from.y + NEAR) };
  for (const spot of spotsOf(advances, { letter, owner: `origin-${letter}` }, { ...stand, frame: low })) {
    if (!isClear(spot, stand)) continue;
    const layer = datumAt(advances, spot, stand);
    if (layer.boxes.every((b) => isFree(b, taken))) return layer;
  }
  return undefined;
}
/** On paper, mm: how far under its face. */
const NEAR = 25;

const isClear = ({ mark }: Spot, { taken }: Stand): boolean => isFree(withRoom(mark, CLEAR), taken);

type Named = { readonly letter: string; readonly owner: string };
/** `y`: of the triangle. `mark`: round it and the framed letter, `width` wide, on its `side`. */
type Spot = Named & { readonly y: number; readonly side: number; readonly width: number; readonly mark: Box };

/** Ever further down, on either hand, within the frame. */
function* spotsOf(advances: Advances, named: Named, { from, side, frame }: Stand): Generator<Spot> {
  const width = Math.max(FRAME, textWidth(advances, LETTERED.font, LETTERED.size, named.letter) + 2);
  const wide = TRIANGLE + STEM + width;
  for (let y = from.y + FRAME; y + FRAME < frame.height; y += STEP) {
    for (const way of [side, -side] as const) {
      const mark: Box = { x: way > 0 ? from.x : from.x - wide, y: y - FRAME / 2, w: wide, h: FRAME, what: `mark ${named.owner}` };
      if (mark.x > 0 && mark.x + mark.w < frame.width && mark.y + mark.h < frame.height) yield { ...named, y, side: way, width, mark };
    }
  }
}

const LETTERED = { font: 'narrow-bold', size: LETTER, ink: 'black' } as const;

function datumAt(advances: Advances, { letter, owner, y, side, width, mark }: Spot, { from }: Stand): Layer {
  const how: Lettering = { advances, ...LETTERED };
  const [apex, near] = [from.x + side * TRIANGLE, from.x + side * (TRIANGLE + STEM)];
  const left = side > 0 ? near : near - width;
  const upright = { a: from, b: { x: from.x, y: y + PAST } };
  const base = [
    { x: from.x, y: y - TRIANGLE / 2 },
    { x: from.x, y: y + TRIANGLE / 2 },
    { x: apex, y },
  ];
  const items: readonly Item[] = [
    line(upright.a.x, upright.a.y, upright.b.x, upright.b.y, NARROW),
    polygon(base, { fill: 'black' }),
    line(apex, y, near, y, NARROW),
    rect(left, y - FRAME / 2, width, FRAME, { fill: 'white', stroke: { ink: 'black', width: 0.3 } }),
    text(how, letter, left + width / 2, y + capHeight(LETTER) / 2, 'middle'),
  ];
  return { items, boxes: [mark, ...lineBoxes(upright, `line ${owner}`)] };
}
