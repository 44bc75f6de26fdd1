/**
 * The picture of a grip: half-section of the work at its end, cut above the axis, seen from outside below, in its hold, headstock on the
 * left; sizes in tiers, balloons round it. Tries scales and arrangements until nothing collides and nothing leaves the frame.
 */
import type { Len } from '../base/units.ts';
import type { Advances, Picture } from '../model/display.ts';
import type { SurfaceId } from '../model/ids.ts';
import type { Point, Stage } from '../model/stage.ts';
import { type Arrangement, arrange, type Laid, type Size, sizeUp } from './arrange.ts';
import { collisions } from './collisions.ts';
import { along, sketchOf } from './sketch.ts';
import { type Hold, windowOf } from './window.ts';

export type { Hold } from './window.ts';

/** `from`, `to`: places along z, `from` the datum's. `fromD`, `toD`: diameter at which the extension line begins (else the outline's own). */
export type LengthShown = {
  readonly id: string;
  readonly from: Len;
  readonly to: Len;
  readonly fromD?: Len;
  readonly toD?: Len;
  /** Value, then its limits: ['14.00', '±0.05'] or ['11.00', '+0', '−0.05']. */
  readonly text: readonly string[];
  /** Stands for the value where that can't be placed; the id is then among `lettered`. */
  readonly letter?: string;
};
export type DiameterShown = {
  readonly id: string;
  readonly z: Len;
  readonly d: Len;
  readonly side: 'outside' | 'inside';
  readonly text: readonly string[];
  readonly letter?: string;
};
/** Points at the edges of `surface`; at `at` where that has none (any more). */
export type Balloon = { readonly text: string; readonly surface: SurfaceId | ''; readonly at?: Point };
export type StageView = {
  readonly stage: Stage;
  readonly hold: Hold;
  readonly lengths: readonly LengthShown[];
  readonly diameters: readonly DiameterShown[];
  readonly balloons: readonly Balloon[];
  /** mm on paper */
  readonly frame: { readonly width: number; readonly height: number };
  readonly words: {
    readonly alt: string;
    readonly headstock: string;
    readonly scale?: (scale: string) => string;
    readonly legend?: { readonly made: string; readonly taken: string };
  };
  readonly advances: Advances;
};
/**
 * `lettered`: dimensions that stand as a letter, or not at all where they had none. `unplaced`: balloons without a place to point at or
 * to stand. `scale`: mm on paper a mm of work.
 */
export type StagePicture = Picture & { readonly scale: number; readonly lettered: readonly string[]; readonly unplaced: readonly string[] };

/** Preferred scales, largest first. */
const SCALES = [20, 15, 12, 10, 8, 6, 5, 4, 3.5, 3, 2.5, 2, 1.5, 1.25, 1, 0.8, 0.5, 0.4, 0.25, 0.2, 0.1] as const;
const LAST = 0.1;
/** How many scales are tried from the largest that fits down. */
const SCALES_TRIED = 4;
/** The ladder at one scale: other places for the balloons, then closer tiers with smaller figures. */
const ARRANGEMENTS: readonly Arrangement[] = [
  { phase: { x: 0, y: 0 }, places: 40, tiers: { value: 3.6, limits: 2.8, gap: 7, pitch: 6 } },
  { phase: { x: 0.5, y: 0.5 }, places: 80, tiers: { value: 3.6, limits: 2.8, gap: 7, pitch: 6 } },
  { phase: { x: 0.5, y: 0 }, places: 160, tiers: { value: 3.6, limits: 2.8, gap: 6, pitch: 5.2 } },
  { phase: { x: 0, y: 0.5 }, places: 300, tiers: { value: 3, limits: 2.5, gap: 5, pitch: 4.4 } },
];

/** Rather letters for some sizes than a picture this many times smaller. */
const SHRINK = 2.5;
const MARKED = 10_000;
const LEFT_OUT = 100;

export function drawStage(view: StageView): StagePicture {
  const sketch = sketchOf(view.stage);
  const measured = [...view.lengths.flatMap((d) => [d.from, d.to]), ...(view.hold.datum ? [view.hold.datum.z] : [])];
  const window = windowOf(
    sketch,
    view.hold,
    measured.map((z) => along(z, sketch.out)),
  );
  let best: { readonly picture: StagePicture; readonly faults: number } | undefined;
  for (const rung of ladder((scale, arrangement) => sizeUp(view, sketch, window, scale, arrangement))) {
    const picture = pictureOf(view, arrange(view, sketch, window, rung.scale, rung.arrangement), rung.scale);
    const faults = faultsOf(picture);
    if (!best || faults < best.faults) best = { picture, faults };
    if (faults <= rung.allows) break;
  }
  if (!best) throw new Error('no scale to draw at');
  return best.picture;
}

type Rung = { readonly scale: number; readonly arrangement: Arrangement; readonly allows: number };
/**
 * From the largest scale at which all tiers fit, some scales down, without a fault; then, from the largest at which one tier fits, with
 * letters for sizes that have no room; then any smaller scale on which no mark stands on another. It ends.
 */
function* ladder(size: (scale: number, arrangement: Arrangement) => Size): Generator<Rung> {
  const bare = SCALES.filter((scale) => ARRANGEMENTS.some((a) => size(scale, a).fitsBare));
  const least = (bare[0] ?? LAST) / SHRINK;
  const whole = SCALES.filter((scale) => scale >= least && ARRANGEMENTS.some((a) => size(scale, a).fits)).slice(0, SCALES_TRIED);
  for (const scale of whole) {
    for (const arrangement of ARRANGEMENTS) if (size(scale, arrangement).fits) yield { scale, arrangement, allows: 0 };
  }
  for (const scale of bare.slice(0, SCALES_TRIED)) {
    for (const arrangement of ARRANGEMENTS) if (size(scale, arrangement).fitsBare) yield { scale, arrangement, allows: LEFT_OUT - 1 };
  }
  for (const scale of [...bare.slice(SCALES_TRIED), LAST]) {
    for (const arrangement of ARRANGEMENTS) yield { scale, arrangement, allows: MARKED - 1 };
  }
}

function pictureOf(view: StageView, laid: Laid, scale: number): StagePicture {
  return {
    width: view.frame.width,
    height: view.frame.height,
    items: laid.items,
    boxes: laid.boxes,
    alt: view.words.alt,
    scale,
    lettered: laid.lettered,
    unplaced: laid.unplaced,
  };
}

/** A mark on another is worst, a balloon left out next, a letter in place of a value least. */
function faultsOf(picture: StagePicture): number {
  return MARKED * collisions(picture).length + LEFT_OUT * picture.unplaced.length + picture.lettered.length;
}
