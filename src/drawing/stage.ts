/**
 * The picture of a grip: half-section of the work at its end, cut above the axis, seen from outside below, in its hold, headstock on the
 * left; sizes in tiers, balloons round it. Tries scales and arrangements until nothing collides and nothing leaves the frame.
 */
import { type Arrangement, arrange, type Fixed, fixedOf, type Laid, shownScale } from './arrange.ts';
import { collisions } from './collisions.ts';
import { drawDetail } from './detail.ts';
import type { TierSizes } from './lengths.ts';
import { drawOrigins } from './origins.ts';
import type { Paper } from './paper.ts';
import { hasRoom, type Scene, type Size, sceneOf, sizeUp } from './scene.ts';
import { along, sketchOf } from './sketch.ts';
import { toolIfFree } from './tool.ts';
import type { RungUsed, StagePicture, StageView } from './view.ts';
import { windowOf, withRemainder } from './window.ts';

export type { Balloon, DiameterShown, LengthShown, RungUsed, StagePicture, StageView, ToolShown } from './view.ts';
export type { Hold } from './window.ts';

/** Preferred scales of what is printed, largest first. */
export const SCALES = [20, 15, 12, 10, 8, 6, 5, 4, 3.5, 3, 2.5, 2, 1.5, 1.25, 1, 0.8, 0.5, 0.4, 0.25, 0.2, 0.1] as const;
/** How many scales are tried from the largest that fits down. */
const SCALES_TRIED = 4;
/** The ladder at one scale: other places for the balloons, then closer tiers with smaller figures. */
/** Balloons stand between the work and the first tier. */
const AIRY: TierSizes = { value: 3.6, limits: 2.8, gap: 9, pitch: 6 };
const ROOMY: TierSizes = { value: 3.6, limits: 2.8, gap: 7, pitch: 6 };
const CLOSE: TierSizes = { value: 3.6, limits: 2.8, gap: 6, pitch: 5.2 };
const SMALL: TierSizes = { value: 3, limits: 2.5, gap: 5, pitch: 4.4 };
const ARRANGEMENTS: readonly Arrangement[] = [
  { phase: { x: 0, y: 0 }, places: 40, tiers: AIRY },
  { phase: { x: 0, y: 0 }, places: 40, tiers: ROOMY },
  { phase: { x: 0.5, y: 0.5 }, places: 100, tiers: ROOMY },
  { phase: { x: 0.5, y: 0 }, places: 40, tiers: CLOSE },
  { phase: { x: 0, y: 0.5 }, places: 100, tiers: CLOSE },
  { phase: { x: 0, y: 0 }, places: 40, tiers: SMALL },
  { phase: { x: 0.5, y: 0.5 }, places: 300, tiers: SMALL },
];

const TIERS = [AIRY, ROOMY, CLOSE, SMALL];

/** Rather letters for some sizes than a picture this many times smaller. */
const SHRINK = 2.5;
const MARKED = 10_000;
const LEFT_OUT = 100;

export function drawStage(view: StageView): StagePicture {
  const sketch = withRemainder(sketchOf(view.stage), view.hold);
  const measured = [...view.lengths.flatMap((d) => [d.from, d.to]), ...(view.hold.datum ? [view.hold.datum.z] : [])];
  const window = windowOf(
    sketch,
    view.hold,
    measured.map((z) => along(z, sketch.out)),
  );
  const scene = sceneOf(view, sketch, window);
  const fixed = onPaper(scene);
  let best: Tried | undefined;
  // at most of them the work has no room, whatever the tiers; the last is drawn if need be
  const scales = scalesOf(view).filter((scale, i, all) => i === all.length - 1 || hasRoom(scene, scale));
  for (const rung of ladder(scales, (scale, sizes) => sizeUp(scene, scale, sizes))) {
    if (best && rung.allows === 0 && rung.used.smaller > 0 && best.laid.stray === best.faults) break;
    const laid = arrange(scene, fixed(rung), rung.arrangement);
    const least = lackOf(laid);
    // whether marks meet need not be asked of what is no better if none do
    if (best && least >= best.faults && least > rung.allows) continue;
    const picture = pictureOf(view, laid, rung);
    const faults = MARKED * collisions(picture).length + least;
    if (!best || faults < best.faults) best = { picture, laid, paper: rung.paper, faults };
    if (faults <= rung.allows) break;
  }
  if (!best) throw new Error('no scale to draw at');
  return withTool(scene, best, withOrigins(scene, best.paper, withDetail(scene, best)));
}

/** What two rungs of one scale and one size of figures share is drawn once. */
function onPaper(scene: Scene): (rung: Rung) => Fixed {
  const known = new Map<Paper, Fixed>();
  return ({ paper, arrangement }) => {
    const fixed = known.get(paper) ?? fixedOf(scene, paper, arrangement.tiers);
    known.set(paper, fixed);
    return fixed;
  };
}

/** As laid out. */
function scalesOf({ enlarged = 1 }: StageView): readonly number[] {
  return enlarged === 1 ? SCALES : SCALES.map((scale) => scale / enlarged);
}

type Tried = { readonly picture: StagePicture; readonly laid: Laid; readonly paper: Paper; readonly faults: number };
type Rung = {
  readonly scale: number;
  readonly paper: Paper;
  readonly arrangement: Arrangement;
  readonly allows: number;
  readonly used: RungUsed;
};
/**
 * From the largest scale at which all tiers fit, some scales down, without a fault (but no scale smaller for the sake of long leaders); then, from the largest at which one tier fits, with
 * letters for sizes that have no room; then any smaller scale on which no mark stands on another. It ends.
 */
function* ladder(scales: readonly number[], measure: Measure): Generator<Rung> {
  const size = onceEach(measure);
  const fitting = (scale: number, fits: (size: Size) => boolean): boolean => TIERS.some((tiers) => fits(size(scale, tiers)));
  const least = (scales.find((scale) => fitting(scale, (s) => s.fitsBare)) ?? scales.at(-1) ?? 0) / SHRINK;
  const rungs = function* (step: RungUsed['step'], tried: Iterable<number>, allows: number, fits: (size: Size) => boolean) {
    let smaller = -1;
    for (const scale of tried) {
      smaller++;
      for (const [i, arrangement] of ARRANGEMENTS.entries()) {
        const asked = size(scale, arrangement.tiers);
        if (fits(asked)) yield { scale, paper: asked.paper, arrangement, allows, used: { step, smaller, arrangement: i } };
      }
    }
  };
  yield* rungs(
    'whole',
    first(scales, SCALES_TRIED, (scale) => scale >= least && fitting(scale, (s) => s.fits)),
    0,
    (s) => s.fits,
  );
  const bare = scales.filter((scale) => fitting(scale, (s) => s.fitsBare));
  yield* rungs('letters', bare.slice(0, SCALES_TRIED), LEFT_OUT - 1, (s) => s.fitsBare);
  yield* rungs('clear', [...bare.slice(SCALES_TRIED), ...scales.slice(-1)], MARKED - 1, () => true);
}

/** No more of them than `most`, and none looked at before it is asked for. */
function* first(all: readonly number[], most: number, which: (one: number) => boolean): Generator<number> {
  let left = most;
  for (const one of all) {
    if (left === 0) return;
    if (!which(one)) continue;
    left--;
    yield one;
  }
}

type Measure = (scale: number, sizes: TierSizes) => Size;
/** Sizes are asked for again on each step of the ladder. */
function onceEach(measure: Measure): Measure {
  const known = new Map<TierSizes, Map<number, Size>>(ARRANGEMENTS.map(({ tiers }) => [tiers, new Map()]));
  return (scale, sizes) => {
    const found = known.get(sizes)?.get(scale) ?? measure(scale, sizes);
    known.get(sizes)?.set(scale, found);
    return found;
  };
}

/** Where new edges are too small to see and a place is free. */
function withDetail({ view, sketch }: Scene, { picture, paper }: Tried): StagePicture {
  const room = { frame: view.frame, taken: picture.boxes, advances: view.advances, scales: scalesOf(view), letters: view.letters ?? [] };
  const detail = drawDetail(sketch, paper, room, (scale) => shownScale(scale, view));
  return detail ? { ...picture, items: [...picture.items, ...detail.items], boxes: [...picture.boxes, ...detail.boxes] } : picture;
}

function withOrigins(scene: Scene, paper: Paper, picture: StagePicture): StagePicture {
  const { items, boxes } = drawOrigins(scene, paper, picture.boxes);
  return items.length > 0 ? { ...picture, items: [...picture.items, ...items], boxes: [...picture.boxes, ...boxes] } : picture;
}

/** Over work and hold, under what is written and measured. */
function withTool({ view }: Scene, { laid }: Tried, picture: StagePicture): StagePicture {
  const { items, boxes } = toolIfFree(laid.reaches, picture.boxes);
  if (items.length === 0) return picture;
  const [under, over] = [picture.items.slice(0, laid.solids), picture.items.slice(laid.solids)];
  const alt = [picture.alt, view.words.tool ?? ''].filter((said) => said !== '').join(' ');
  return { ...picture, alt, items: [...under, ...items, ...over], boxes: [...picture.boxes, ...boxes] };
}

function pictureOf(view: StageView, laid: Laid, rung: Rung): StagePicture {
  return {
    width: view.frame.width,
    height: view.frame.height,
    items: laid.items,
    boxes: laid.boxes,
    alt: view.words.alt,
    scale: rung.scale,
    rung: rung.used,
    lettered: laid.lettered,
    unplaced: [...laid.unplaced, ...laid.pointless],
  };
}

/** A mark on another is worst, a balloon left out next, a letter in place of a value or a leader hard to follow least: all but the first. */
function lackOf(laid: Laid): number {
  return LEFT_OUT * laid.unplaced.length + laid.lettered.length + laid.stray;
}
