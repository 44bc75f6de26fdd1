/** Stages so small that they are signs: the half-section above the axis, filled, what is new in it heavy. For strips from bar to part. */
import { len } from '../base/units.ts';
import type { Item, Picture } from '../model/display.ts';
import type { Stage } from '../model/stage.ts';
import { line, polygon, polyline } from './display.ts';
import { holdDepth } from './hold.ts';
import { across, CENTRE, type Layer, level, type Paper, ringOnPaper } from './paper.ts';
import { along, type Band, clippedEdge, clippedRing, corners, crestOf, rootOf, type Sketch, sketchOf, type UR } from './sketch.ts';
import { box, type Hold, type Window, windowOf, withRemainder } from './window.ts';

export type Frame = { readonly width: number; readonly height: number };
export type TinyView = {
  readonly stage: Stage;
  readonly hold?: Hold;
  readonly frame: Frame;
  readonly words: { readonly alt: string };
};

/** On paper, mm. */
const MARGIN = 1;
const MANY = 1e6;
const NO_HOLD: Hold = { kind: 'bench', from: len(0), to: len(0), diameter: len(0) };
/** Old edges and new ones: more than twice as heavy, so that grey is enough. */
const OLD = { ink: 'black', width: 0.2 } as const;
const NEW = { ink: 'new', width: 0.55 } as const;
const BLOCK = { fill: 'pale', stroke: { ink: 'light', width: 0.18 } } as const;

/** All at one scale, the largest at which the widest of them fits. */
export function drawStrip(views: readonly TinyView[]): readonly Picture[] {
  const laid = views.map(lay);
  const scale = Math.min(...laid.map((one) => one.scale));
  return laid.map((one) => drawn(one, scale));
}

export function drawTiny(view: TinyView): Picture {
  const laid = lay(view);
  return drawn(laid, laid.scale);
}

type Laid = { readonly view: TinyView; readonly hold: Hold; readonly sketch: Sketch; readonly window: Window; readonly scale: number };

function lay(view: TinyView): Laid {
  const hold = view.hold ?? NO_HOLD;
  const sketch = withRemainder(sketchOf(view.stage), hold);
  const window = shortened(windowOf(sketch, hold));
  const high = Math.max(window.rim, window.clamp?.radius ?? 0);
  const depth = window.clamp ? jawsOf(hold) : 0;
  const { width, height } = view.frame;
  return {
    ...{ view, hold, sketch, window },
    scale: Math.min((width - 2 * MARGIN) / (window.right - window.from), (height - 2 * MARGIN - depth) / high),
  };
}

/** Of a bar that is broken off in the headstock, less is shown than in a large picture. */
function shortened(window: Window): Window {
  const { clamp, cutAt, right } = window;
  if (!clamp || cutAt === undefined) return window;
  const from = Math.max(cutAt, clamp.to - Math.max(BEHIND * (right - clamp.to), LEAST_BEHIND * window.rim));
  return { ...window, from, cutAt: from, clamp: { ...clamp, from: Math.max(clamp.from, from) } };
}
const BEHIND = 0.18;
const LEAST_BEHIND = 2;

/** Thickness of the jaws on paper. */
const jawsOf = (hold: Hold): number => holdDepth(hold.kind) / JAWS_SHARE;
const JAWS_SHARE = 6;

function drawn({ view, hold, sketch, window }: Laid, scale: number): Picture {
  const { width, height } = view.frame;
  const long = (window.right - window.from) * scale;
  const paper: Paper = { scale, u0: window.from, left: (width - long) / 2, axis: height - MARGIN };
  const { clamp, tooling } = window;
  const jaws = clamp ? [box(clamp.from, clamp.to, clamp.radius, clamp.radius + jawsOf(hold) / scale)] : [];
  const blocks = [...jaws, ...(tooling.length > 0 ? [tooling] : [])];
  const items: readonly Item[] = [
    ...blocks.map((ring) => polygon(ringOnPaper(paper, ring, 'above'), BLOCK)),
    ...work(sketch, window, paper),
    ...sides(view.stage, paper),
    line(paper.left, paper.axis, paper.left + long, paper.axis, { ...CENTRE, width: 0.13 }),
  ];
  return { width, height, items, boxes: [], alt: view.words.alt };
}

function work(sketch: Sketch, window: Window, paper: Paper): Layer['items'] {
  const cutAt = window.cutAt ?? -MANY;
  const rings = [...sketch.loops.map(corners), ...sketch.bands.map((b) => b.polygon)]
    .map((ring) => clippedRing(ring, cutAt))
    .filter((r) => r.length > 2);
  const edges = sketch.loops.flat().flatMap((e) => clippedEdge(e, cutAt));
  const drawn = edges.filter((e) => e.a.r > 0 || e.b.r > 0).sort((a, b) => Number(a.made) - Number(b.made));
  const threads = sketch.bands.filter((b) => b.made).flatMap(crestAndRoot);
  return [
    ...rings.map((ring) => polygon(ringOnPaper(paper, ring, 'above'), { fill: 'metal' })),
    ...drawn.map((e) => polyline(ringOnPaper(paper, [e.a, e.b], 'above'), e.made ? NEW : OLD)),
    ...threads.map((ends) => polyline(ringOnPaper(paper, ends, 'above'), NEW)),
  ];
}

/** A new thread: both lines of its band, along its whole length. */
function crestAndRoot({ polygon: points, side }: Band): readonly (readonly UR[])[] {
  const us = points.map((p) => p.u);
  return [rootOf(points, side), crestOf(points, side)].map((r) => [
    { u: Math.min(...us), r },
    { u: Math.max(...us), r },
  ]);
}

/** What is made from the side is no part of the half-section: a heavy line along the metal that carries it. */
function sides(stage: Stage, paper: Paper): readonly Item[] {
  return (stage.sides ?? [])
    .filter((side) => side.made === 'here')
    .map((side) => {
      const ends = [along(side.z - side.half, stage.out), along(side.z + side.half, stage.out)] as const;
      const y = level(paper, along(side.on, 'second') / 2, 'above');
      return line(across(paper, ends[0]), y, across(paper, ends[1]), y, NEW);
    });
}
