/** Stages so small that they are signs: the half-section above the axis, filled, what is new in it heavy. For strips from bar to part. */
import { len } from '../base/units.ts';
import type { Item, Picture } from '../model/display.ts';
import type { Stage } from '../model/stage.ts';
import { line, polygon, polyline, type XY } from './display.ts';
import { holdDepth } from './hold.ts';
import {
  BROKEN,
  brokenAt,
  brokenScale,
  type Fold,
  foldAt,
  foldedSketch,
  foldedWindow,
  plainStretches,
  type Stretch,
} from './interrupted.ts';
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

/** All at one scale, the largest at which the widest of them fits; long thin work with pieces left out where that makes all much larger. */
export function drawStrip(views: readonly TinyView[]): readonly Picture[] {
  const laid = views.map(lay);
  const whole = Math.min(...laid.map((one) => one.scale));
  const broken = Math.min(...laid.map((one) => one.broken));
  return laid.map((one) => drawn(one, broken > WORTH * whole ? broken : whole));
}
/** So much larger it must be with pieces left out. */
const WORTH = 1.2;

export function drawTiny(view: TinyView): Picture {
  const laid = lay(view);
  return drawn(laid, laid.scale);
}

/** `scale`: at which it fits whole; `broken`: with its plain stretches left out. */
type Laid = {
  readonly view: TinyView;
  readonly hold: Hold;
  readonly sketch: Sketch;
  readonly window: Window;
  readonly stretches: readonly Stretch[];
  readonly scale: number;
  readonly broken: number;
};

function lay(view: TinyView): Laid {
  const hold = view.hold ?? NO_HOLD;
  const sketch = withRemainder(sketchOf(view.stage), hold);
  const window = shortened(windowOf(sketch, hold));
  const high = Math.max(window.rim, window.clamp?.radius ?? 0);
  const depth = window.clamp ? jawsOf(hold) : 0;
  const { width, height } = view.frame;
  const [wide, long, most] = [width - 2 * MARGIN, window.right - window.from, (height - 2 * MARGIN - depth) / high];
  const stretches = plainStretches(sketch, window, view.stage);
  return {
    ...{ view, hold, sketch, window, stretches },
    scale: Math.min(wide / long, most),
    broken: Math.min(brokenScale(long, stretches, wide), most),
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

function drawn({ view, hold, sketch, window, stretches }: Laid, scale: number): Picture {
  const { width, height } = view.frame;
  const broken = brokenAt(window.right - window.from, stretches, width - 2 * MARGIN, scale);
  const fold = foldAt(broken, scale);
  const shown = broken.length > 0 ? foldedWindow(window, fold) : window;
  const long = (shown.right - shown.from) * scale;
  const paper: Paper = { scale, u0: shown.from, left: (width - long) / 2, axis: height - MARGIN };
  const { clamp, tooling } = shown;
  const jaws = clamp ? [box(clamp.from, clamp.to, clamp.radius, clamp.radius + jawsOf(hold) / scale)] : [];
  const blocks = [...jaws, ...(tooling.length > 0 ? [tooling] : [])];
  const items: readonly Item[] = [
    ...blocks.map((ring) => polygon(ringOnPaper(paper, ring, 'above'), BLOCK)),
    ...work(broken.length > 0 ? foldedSketch(sketch, fold) : sketch, shown, paper),
    ...sides(view.stage, paper, fold),
    ...broken.filter((stretch) => !isHeld(stretch, window)).flatMap((stretch) => gapIn(stretch, fold, sketch, paper)),
    line(paper.left, paper.axis, paper.left + long, paper.axis, { ...CENTRE, width: 0.13 }),
  ];
  return { width, height, items, boxes: [], alt: view.words.alt };
}

/** Jaws, and the bar behind them, are drawn short without a sign, as in a large picture. */
const isHeld = ({ to }: Stretch, { clamp }: Window): boolean => clamp !== undefined && to <= clamp.to;

/** White, with a freehand line on either side (ISO 128-2, 01.1), a little past the work. */
function gapIn({ from, to }: Stretch, fold: Fold, { loops }: Sketch, paper: Paper): readonly Item[] {
  const middle = (from + to) / 2;
  const radii = loops.flat().flatMap(({ a, b }) => (a.u < middle !== b.u < middle ? [a.r] : []));
  const [x, top] = [across(paper, fold(middle)), level(paper, Math.max(...radii), 'above') - PAST];
  const side = (way: 1 | -1): readonly XY[] =>
    WAVE.map(([share, swing]) => ({ x: x + (way * BROKEN.gap) / 2 + swing, y: paper.axis + (top - paper.axis) * share }));
  const [left, right] = [side(-1), side(1)];
  return [polygon([...left, ...[...right].reverse()], { fill: 'white' }), polyline(left, FREEHAND), polyline(right, FREEHAND)];
}
const PAST = 0.4;
/** How far up, and how far aside, mm. */
const WAVE = [
  [0, 0],
  [0.2, 0.2],
  [0.4, 0.15],
  [0.6, -0.15],
  [0.8, -0.2],
  [1, 0],
] as const;
const FREEHAND = { ink: 'black', width: 0.13 } as const;

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
function sides(stage: Stage, paper: Paper, fold: Fold): readonly Item[] {
  return (stage.sides ?? [])
    .filter((side) => side.made === 'here')
    .map((side) => {
      const ends = [fold(along(side.z - side.half, stage.out)), fold(along(side.z + side.half, stage.out))] as const;
      const y = level(paper, along(side.on, 'second') / 2, 'above');
      return line(across(paper, ends[0]), y, across(paper, ends[1]), y, NEW);
    });
}
