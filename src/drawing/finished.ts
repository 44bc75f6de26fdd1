/** A finished part in half-section for the cover, with its main sizes or without. */
import { len, showMm } from '../base/units.ts';
import type { Advances, Item, Picture } from '../model/display.ts';
import type { Part } from '../model/part.ts';
import type { SideShown } from '../model/stage.ts';
import { line } from './display.ts';
import { across, CENTRE, joined, type Paper } from './paper.ts';
import { finishedStage, surfaceOf } from './part-outline.ts';
import { drawSides, sideShown, standsAbove } from './sides.ts';
import { sketchOf } from './sketch.ts';
import { drawStage, type LengthShown } from './stage.ts';
import { type Hold, type Window, windowOf } from './window.ts';
import { drawWork } from './work.ts';

export type Frame = { readonly width: number; readonly height: number };
export type PartView = {
  readonly part: Part;
  readonly frame: Frame;
  readonly words: { readonly alt: string };
  readonly advances: Advances;
  readonly dims?: 'main' | 'none';
  /** mm on paper, as laid out, a mm of work; as large as the frame allows where absent. */
  readonly scale?: number;
};

/** On paper, mm. */
const MARGIN = 1;
const AXIS_PAST = 3;
/** No part is drawn larger than this, however small it is. */
const LARGEST = 10;
const MOST_LENGTHS = 4;

/** The whole part, first end on the left, as large as the frame allows. Frames smaller than 12 mm either way leave no room for sizes. */
export function drawPart(view: PartView): Picture {
  return view.dims === 'main' ? withSizes(view) : plain(view);
}

function plain(view: PartView): Picture {
  const sketch = sketchOf(finishedStage(view.part, 'second'));
  const window = windowOf(sketch, NO_HOLD);
  const paper = fitted(window, view.frame, view.scale);
  const work = joined([drawWork(sketch, window, paper), drawSides(sidesOf(view.part), sketch.out, paper)]);
  return {
    ...view.frame,
    items: [...work.items, axis(window, paper)],
    boxes: work.boxes,
    alt: view.words.alt,
  };
}

/** What it takes on paper at a scale, mm as laid out, with its centre line, a margin, and room for what branches off it to either side. */
export function partExtent(part: Part): (scale: number) => Frame {
  const window = windowOf(sketchOf(finishedStage(part, 'second')), NO_HOLD);
  const branch = standsAbove(sidesOf(part).map((side) => ({ ...side, far: true })));
  return (scale) => ({
    width: (window.right - window.from) * scale + 2 * (MARGIN + AXIS_PAST),
    height: 2 * (window.rim * scale + MARGIN + branch),
  });
}

const NO_HOLD: Hold = { kind: 'bench', from: len(0), to: len(0), diameter: len(0) };

function fitted(window: Window, frame: Frame, asked = LARGEST): Paper {
  const long = window.right - window.from;
  const scale = Math.min(asked, (frame.width - 2 * (MARGIN + AXIS_PAST)) / long, (frame.height - 2 * MARGIN) / (2 * window.rim));
  return { scale, u0: window.from, left: (frame.width - long * scale) / 2, axis: frame.height / 2 };
}

function axis(window: Window, paper: Paper): Item {
  return line(across(paper, window.from) - AXIS_PAST, paper.axis, across(paper, window.right) + AXIS_PAST, paper.axis, CENTRE);
}

/** All that is not of revolution, on the outside view. */
function sidesOf(part: Part): readonly SideShown[] {
  return part.features.flatMap((f) => {
    const on = f.kind === 'side' ? surfaceOf(part, f.on) : undefined;
    const side = f.kind === 'side' && on?.shape === 'cylinder' ? sideShown(f, on.size.target, 'before') : undefined;
    return side ? [side] : [];
  });
}

function withSizes(view: PartView): Picture {
  const { part, frame, advances } = view;
  const stage = { ...finishedStage(part, 'second'), sides: sidesOf(part) };
  const words = { alt: view.words.alt, headstock: '' };
  return drawStage({ stage, hold: NO_HOLD, lengths: lengthsOf(part), diameters: [], balloons: [], frame, words, advances });
}

/** Over all, and the longest few that the drawing asks for, from its own faces. */
function lengthsOf(part: Part): readonly LengthShown[] {
  const whole: LengthShown = { id: `${part.id}/over-all`, from: len(0), to: part.length, text: [showMm(part.length, 1)] };
  const asked = part.dimensions.flatMap((dim): readonly LengthShown[] => {
    const [a, b] = [surfaceOf(part, dim.a), surfaceOf(part, dim.b)];
    if (a.shape !== 'face' || b.shape !== 'face') return [];
    return [{ id: dim.id, from: a.z, to: b.z, text: [showMm(dim.limits.target, 1)] }];
  });
  const others = asked
    .filter((d) => d.to - d.from !== part.length)
    .sort((p, q) => q.to - q.from - (p.to - p.from) || (p.id < q.id ? -1 : 1));
  return [whole, ...others.slice(0, MOST_LENGTHS - 1)];
}
