/** What a stage's picture shows, and whether it has room at a scale: work and hold in the frame, sizes in tiers over them. */

import { rimAt } from './anchors.ts';
import { RING } from './balloons.ts';
import { centreRoom, holdDepth } from './hold.ts';
import { heightAtLeast, type Level, type TierSizes, topOfLengths } from './lengths.ts';
import { textWidth } from './measure.ts';
import { across, onPaper, type Paper } from './paper.ts';
import { standsAbove } from './sides.ts';
import { along, placed, type Sketch, type UR } from './sketch.ts';
import { toolRoom } from './tool/room.ts';
import type { LengthShown, StageView } from './view.ts';
import type { Window } from './window.ts';

/** What is drawn, and where the extension lines of its lengths begin: the same at every scale, so it is worked out once. */
export type Scene = {
  readonly view: StageView;
  readonly sketch: Sketch;
  readonly window: Window;
  readonly starts: readonly { readonly from: UR; readonly to: UR }[];
  /** Room on paper that the axis, its words and upright sizes want left and right of the work, without centres; mm. */
  readonly beside: { readonly left: number; readonly right: number };
};
export function sceneOf(view: StageView, sketch: Sketch, window: Window): Scene {
  const starts = view.lengths.map((d) => ({
    from: startOf(d.from, d.fromD, sketch, window),
    to: startOf(d.to, d.toD, sketch, window),
  }));
  const columns = Math.min(2, view.diameters.filter((d) => d.as !== 'radius').length);
  return { view, sketch, window, starts, beside: { left: leftMargin(view), right: SIDE + COLUMN * columns + toolRoom(view.tool).end } };
}
/** On paper, mm. */
const SIDE = 9;
const BELOW = 2 * RING + 3;
const DATUM_BELOW = 9;
const COLUMN = 7;
export const AXIS_PAST = 5;
/** Of words beside the work. */
export const SMALL = 2.8;

/** `fits`: with every tier that the lengths ask for. `fitsBare`: with room for one tier; the other lengths get letters. */
export type Size = { readonly fits: boolean; readonly fitsBare: boolean; readonly paper: Paper };
type Room = { readonly half: number; readonly width: number; readonly left: number; readonly right: number };
/** What work and hold take at this scale: from the axis up and down, along it, and beside it. */
function roomOf({ view, window, beside }: Scene, scale: number): Room {
  const clamp = window.clamp ? window.clamp.radius * scale + holdDepth(view.hold.kind) : 0;
  const half = Math.max(
    window.rim * scale + toolRoom(view.tool).side,
    clamp,
    window.vee ? window.vee.radius * scale + holdDepth(view.hold.kind) : 0,
  );
  const [left, right] = [beside.left + centreRoom(window, scale, 'leftCentre'), beside.right + centreRoom(window, scale)];
  return { half, width: (window.right - window.from) * scale, left, right };
}

const isIn = ({ half, width, left, right }: Room, { frame }: StageView): boolean =>
  !(width > frame.width - left - right || 2 * half > frame.height);

/** Whether work and hold have room in the frame, whatever stands over them. */
export const hasRoom = (scene: Scene, scale: number): boolean => isIn(roomOf(scene, scale), scene.view);

/** Whether work, hold and tiers fit the frame at this scale, and where the work then lies: in the middle of what is left over. */
export function sizeUp(scene: Scene, scale: number, sizes: TierSizes): Size {
  const { view, window } = scene;
  const room = roomOf(scene, scale);
  const { half, width, left: margin, right } = room;
  const trial: Paper = { scale, u0: window.from, left: margin, axis: 0 };
  if (!isIn(room, view)) return { fits: false, fitsBare: false, paper: trial };
  const levels = levelsOf(scene, trial);
  const down = half + Math.max(BELOW, view.hold.datum ? DATUM_BELOW : 0);
  const rim = highest(levels, view, window, trial);
  const least = levels.length > 0 ? rim + heightAtLeast(levels, sizes) : 0;
  // where these have no room, it need not be tried how the values stand
  const asksAll = levels.length > 0 && view.frame.height - least - 1 - down >= 0;
  const tiers = asksAll ? tiersAbove(view, levels, sizes, rim) : least;
  const up = Math.max(half + standsAbove(view.stage.sides), tiers) + 1;
  const spareX = view.frame.width - margin - right - width;
  const spareY = view.frame.height - up - down;
  const bare = view.frame.height - half - sizes.gap - sizes.pitch - down;
  const axis = spareY >= 0 ? up + spareY / 2 : view.frame.height - down;
  const paper = { ...trial, left: margin + Math.max(0, spareX / 2), axis };
  return { fits: spareX >= 0 && spareY >= 0, fitsBare: spareX >= 0 && bare >= 0, paper };
}

/** How far over the axis the tiers reach that the lengths ask for. */
function tiersAbove(view: StageView, levels: readonly Level[], sizes: TierSizes, rim: number): number {
  const { width, height } = view.frame;
  return -topOfLengths(view.advances, levels, sizes, { base: -rim, top: -height, left: 0, right: width, taken: [] });
}

function leftMargin(view: StageView): number {
  return textWidth(view.advances, 'narrow', SMALL, view.words.headstock) + AXIS_PAST + 2;
}

export function levelsOf({ view, starts }: Scene, paper: Paper): readonly Level[] {
  return view.lengths.flatMap((d, i) => {
    const start = starts[i];
    if (!start) return [];
    const [from, to] = [onPaper(paper, start.from, 'above'), onPaper(paper, start.to, 'above')];
    return [{ id: d.id, from, to, text: d.text, ...(d.letter ? { letter: d.letter } : {}) }];
  });
}

function startOf(z: LengthShown['from'], d: LengthShown['fromD'], sketch: Sketch, window: Window): UR {
  const u = Math.max(window.from, along(z, sketch.out));
  return { u, r: d === undefined ? rimAt(sketch, u) : placed({ z, d }, sketch.out).r };
}

/** Distance from the axis to the highest thing beside or under the dimensions, on paper. */
export function highest(levels: readonly Level[], view: StageView, window: Window, paper: Paper): number {
  const clamp = window.clamp;
  const left = Math.min(...levels.map((l) => Math.min(l.from.x, l.to.x)));
  const beside = clamp !== undefined && left < across(paper, clamp.to);
  const rim = window.rim * paper.scale + standsAbove(view.stage.sides);
  return Math.max(rim, beside ? clamp.radius * paper.scale + holdDepth(view.hold.kind) : 0);
}
