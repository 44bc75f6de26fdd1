/** What the picture of a grip is asked to show, and what comes back. All words are handed in. */
import type { Len } from '../base/units.ts';
import type { Advances, Picture } from '../model/display.ts';
import type { OpId, SurfaceId } from '../model/ids.ts';
import type { Point, Stage } from '../model/stage.ts';
import type { Half } from './paper.ts';
import type { Hold } from './window.ts';

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
/** `as` a radius: pointed at by its leader, never set as an upright dimension. */
export type DiameterShown = {
  readonly id: string;
  readonly as?: 'radius';
  readonly z: Len;
  readonly d: Len;
  readonly side: 'outside' | 'inside';
  readonly text: readonly string[];
  readonly letter?: string;
};
/** Points at the edges of `surface`; at `at` where that has none (any more); else at what the operation `by` left or took. */
export type Balloon = {
  readonly text: string;
  readonly surface: SurfaceId | '';
  readonly at?: Point;
  readonly by?: OpId;
  /** `at` is on the cut half alone, or on the outside view under it. */
  readonly half?: Half;
};
/**
 * The tool, by the form of its edge. `diameter`: of what runs along the axis, of a centre drill its body; `point`: its included angle in degrees, none where it is flat.
 * `wide`: of a blade that parts off, or a saw in a slot; else it is as wide as what it has cut. `on`: surfaces that it has made; all that is new where not said.
 * `number`: of its operation, where the picture shows several; it stands on the tool where that has room for it.
 */
export type ToolShown = {
  readonly form: 'knife' | 'facing' | 'blade' | 'bevel' | 'vee' | 'drill' | 'centre' | 'tap' | 'die' | 'wheel' | 'file' | 'saw';
  readonly side: 'outside' | 'inside';
  readonly diameter?: Len;
  readonly point?: number;
  readonly wide?: Len;
  /** Of what makes no edge of the half-section (a wheel, a file, a saw in a slit): what it works on along the part's axis, and across. */
  readonly rolls?: { readonly from: Len; readonly to: Len; readonly diameter: Len };
  readonly on?: readonly SurfaceId[];
  readonly number?: string;
};
export type StageView = {
  readonly stage: Stage;
  readonly hold: Hold;
  readonly lengths: readonly LengthShown[];
  readonly diameters: readonly DiameterShown[];
  readonly balloons: readonly Balloon[];
  /** Stands where it has just made what is new. */
  readonly tool?: ToolShown;
  /** Is put in where a place is left for it. */
  readonly toolIfFree?: ToolShown;
  /** Faces besides the datum that lengths are counted from: their letters are put in where a place is free. */
  readonly origins?: readonly { readonly z: Len; readonly letter: string }[];
  /** mm on paper, as laid out */
  readonly frame: { readonly width: number; readonly height: number };
  /** How much larger the sheet is printed than it is laid out: it is the printed picture that has a scale of the standard. 1 when absent. */
  readonly enlarged?: number;
  readonly words: {
    readonly alt: string;
    /** What `alt` says besides of `toolIfFree`, if that is put in. */
    readonly tool?: string;
    readonly headstock: string;
    readonly scale?: (scale: string) => string;
    readonly legend?: { readonly made: string; readonly taken: string };
  };
  readonly advances: Advances;
  /** Letters that the rows give to faces: a detail takes none of these. */
  readonly letters?: readonly string[];
};
/**
 * How far down the ladder a picture had to go. `step`: all sizes with their values; letters for some; whatever stands clear. `smaller`:
 * scales below the largest that it was tried at; `arrangement`: which places and tiers, from 0.
 */
export type RungUsed = { readonly step: 'whole' | 'letters' | 'clear'; readonly smaller: number; readonly arrangement: number };
/**
 * `lettered`: dimensions that stand as a letter, or not at all where they had none. `unplaced`: balloons without a place to point at or
 * to stand. `scale`: mm on paper, as laid out, a mm of work.
 */
export type StagePicture = Picture & {
  readonly scale: number;
  readonly rung: RungUsed;
  readonly lettered: readonly string[];
  readonly unplaced: readonly string[];
};
