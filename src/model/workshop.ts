/** A person's own workshop, read from YAML; every length in units of 0.1 um. */
import type { Len } from '../base/units.ts';
import type { End, PartId } from './ids.ts';
import type { SheetWish } from './wish.ts';

export type Dial = {
  readonly reads: 'diameter' | 'travel';
  readonly division: Len;
  readonly turn: Len;
  /** What its figures count: millimetres or thousandths of an inch; millimetres when absent. */
  readonly units?: 'mm' | 'in';
  /** Lost motion when the handle is turned back, as the dial counts it; nought when absent. */
  readonly backlash?: Len;
};
/** Full power from `fullFrom` up to `to`, turns a minute; slower than that the torque is no greater. One row for each range of gears or belt. */
export type PowerRange = { readonly to: number; readonly fullFrom: number };
/** As measured on the lathe. The banjo swings about the leadscrew, its stud slides in the slot. */
export type Banjo = {
  /** diameter of the pitch circle a tooth */
  readonly module: Len;
  /** from the axis of the first driver to that of the leadscrew */
  readonly centres: Len;
  /** from the leadscrew's axis to the stud's, as near and as far as the slot lets it */
  readonly slot: { readonly from: Len; readonly to: Len };
  /** diameter of the thickest thing beside a wheel on these shafts: boss, collar, nut */
  readonly boss: Len;
};
/** `wheels`: teeth of the worm wheels that there are for it; `marks`: lines on the dial, evenly spaced. */
export type ThreadingDial = { readonly wheels: readonly number[]; readonly marks: number };
export type ToolMaterial = 'HSS' | 'carbide';
export type Turner = {
  readonly name: string;
  readonly hand: 'right' | 'left' | 'both';
  readonly nose: Len;
  readonly material: ToolMaterial;
};
/** Something that the file did not say. `key`: as in the file, 'lathe.nose'; where `unit` is 'mm' a length in units of 0.1 um, or a range of millimetres as text, '24-72'. */
export type Taken = { readonly key: string; readonly value: string | number | boolean; readonly unit: string };

export type Workshop = {
  readonly name: string;
  readonly lathe: {
    readonly centreHeight: Len;
    /** the axis over the cross slide: half of what swings there */
    readonly overSlide: Len;
    readonly betweenCentres: Len;
    readonly spindleBore: Len;
    readonly nose: 'screwed' | 'flanged' | 'cam';
    /** rev/min: a range, or the steps that there are */
    readonly speeds: { readonly from: number; readonly to: number } | { readonly steps: readonly number[] };
    /** watts, at full power */
    readonly motor: number;
    /** By rising `to`; none where every speed has full power. See `powerAt` in handbook/motor.ts. */
    readonly torque: readonly PowerRange[];
    /** Its pitch, rounded. */
    readonly leadscrew: Len;
    /** threads an inch of an inch leadscrew: exact where its pitch in units is not */
    readonly leadscrewPerInch?: number;
    /** teeth of the change wheels; a wheel that is there twice stands twice */
    readonly gears: readonly number[];
    /** which wheels mesh; without it as on the small lathes whose trains are published */
    readonly banjo?: Banjo;
    /** can the carriage be let go of the leadscrew; yes where it is not said */
    readonly halfNuts?: boolean;
    /** can the spindle be run backward under power; yes where it is not said */
    readonly reverse?: boolean;
    /** a lever that turns the leadscrew the other way; without one left-hand threads want a second idler */
    readonly tumbler?: boolean;
    readonly threadingDial?: ThreadingDial;
    readonly dials: { readonly cross: Dial; readonly top: Dial; readonly carriage?: Dial; readonly tailstock: Dial };
    /** How far the slides and the tailstock's barrel go. */
    readonly travel: { readonly cross: Len; readonly top: Len; readonly tailstock: Len };
    /** 'MT2' */
    readonly tailstockTaper: string;
    readonly toolPost: 'quick-change' | 'clamped';
    /** how far the jaws must stay from the cut */
    readonly jawClearance: Len;
    /** room kept between what turns and the slides */
    readonly slideClearance: Len;
  };
  readonly holding: {
    /** `largest` and `smallest`: work held from outside; `inside`: bores that the jaws open into. */
    readonly threeJaw: {
      readonly runout: Len;
      readonly largest: Len;
      readonly smallest: Len;
      readonly inside: { readonly from: Len; readonly to: Len };
    };
    /** diameters that there are collets for */
    readonly collets: readonly Len[];
    /** may split sleeves be made, and the bores of those that lie in the drawer */
    readonly sleeves: boolean;
    readonly keptSleeves?: readonly Len[];
    readonly softJaws: boolean;
    /** an independent four-jaw chuck, work set in it by the indicator */
    readonly fourJaw?: boolean;
    /** will the person make threaded mandrels */
    readonly mandrels: boolean;
    /** threaded mandrels of these threads stand ready in the drawer: none by default */
  };
  readonly tools: {
    readonly material: ToolMaterial;
    readonly turning: boolean;
    /** Empty where `turning` is no. */
    readonly turners: readonly Turner[];
    /** `deepest`: the largest bar parted through; `reach`: how far the blade stands out, half of that and a little where absent. */
    readonly parting: { readonly width: Len; readonly deepest: Len; readonly reach?: Len; readonly material?: ToolMaterial } | undefined;
    readonly grooving: { readonly width: Len; readonly material?: ToolMaterial } | undefined;
    /** `shank`: thickness of the bar, `usualShank` of handbook/lathe-usual.ts where absent. */
    readonly boring: readonly {
      readonly smallest: Len;
      readonly reach: Len;
      readonly shank?: Len;
      readonly nose?: Len;
      readonly material?: ToolMaterial;
    }[];
    readonly threadingOutside: boolean;
    readonly threadingInside: readonly { readonly smallest: Len; readonly reach: Len; readonly shank?: Len }[];
    /** Are screw-cutting tools ground to a point, or rounded as the form has it. */
    readonly threadingTip: 'sharp' | 'rounded';
    readonly chamfering: boolean;
    readonly centreDrills: readonly { readonly pilot: Len; readonly mouth: Len; readonly name: string }[];
    readonly drills: readonly Len[];
    readonly reamers: readonly Len[];
    readonly silverSteel: readonly Len[];
    readonly taps: readonly string[];
    readonly dies: readonly string[];
    readonly dBits: readonly Len[];
    /** D-bits, or drills, whose end is ground flat */
    readonly flatDBits?: readonly Len[];
    /** `pilot`: the hole that steers it */
    readonly counterbores?: readonly { readonly size: Len; readonly pilot: Len }[];
    /** For grooves in a bore. `deep`: how far a side it reaches beyond the wall of the bore */
    readonly groovingInside?: { readonly width: Len; readonly smallest: Len; readonly reach: Len; readonly deep: Len } | undefined;
    readonly gaugeNuts: readonly string[];
    readonly files: boolean;
    /** two hardened rollers on a rest, on which the file runs: bought or made once */
    readonly filingGuide?: boolean;
    readonly knurling?: boolean;
    /** radii of hollow form tools that round an edge, and of round-nosed ones that leave a fillet */
    readonly radiusTools?: readonly Len[];
    readonly roundNosed?: readonly Len[];
    readonly drillPress: boolean;
    /** Of the drill press: its steps, or the range of its drive; absent where the file does not say. */
    readonly drillPressSpeeds?: Workshop['lathe']['speeds'];
    readonly torch: boolean;
  };
  readonly measuring: readonly string[];
  /** The same, each with the least that it shows; without where nobody knows. */
  readonly instruments: readonly { readonly name: string; readonly resolution?: Len }[];
  readonly shelf: readonly {
    readonly material: string;
    readonly section: 'round' | 'hexagon';
    readonly across: Len;
    readonly length: Len;
  }[];
  /** What a process (an operation's verb) holds here, as a whole band, where it differs from what a lathe in good order holds. */
  readonly holds?: readonly { readonly process: string; readonly diameter?: Len; readonly length?: Len }[];
  /** How hard a process is here, beside the easiest: what lengths are shared by, where it differs from custom. */
  readonly difficulty?: readonly { readonly process: string; readonly weight: number }[];
  readonly habits: {
    readonly firstEnd: Readonly<Record<PartId, End>>;
    readonly avoid: readonly string[];
    /** outside threads under this are cut by die, others by the single point */
    readonly dieBelow?: Len;
  };
  /** Minutes that a handling takes, by its id in handbook/handling.ts; every id is there. */
  readonly handling: Readonly<Record<string, number>>;
  /** How its sheets are to look; no plan holds it. */
  readonly sheet?: SheetWish;
  /** What the file left out, and what was taken in its place. */
  readonly taken: readonly Taken[];
};

/** What the person asked for, as read: one fitting's keys stay as values of that kind's own schema. */
export type Job<Asked = unknown> = { readonly fitting: string; readonly file: string; readonly asked: Asked; readonly workshop: Workshop };
