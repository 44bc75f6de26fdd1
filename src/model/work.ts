/** What may be done to a part: operations, methods, befores, holds, refusals. Nothing here computes. */
import type { Len } from '../base/units.ts';
import type { End, FeatureId, GripId, OpId, PartId, RuleId, SurfaceId } from './ids.ts';
import type { Limits, Part, ThreadSize } from './part.ts';

export type Grounds = Readonly<Record<string, string | number | boolean>>;
/** Words live in templates under the rule's id; `grounds` is all that they are told. */
export type Because = {
  readonly rule: RuleId;
  readonly grounds: Grounds;
  /** Said only in a hold of this kind. */
  readonly held?: GripKind;
  /** Said only where the tool comes out on the far side: not in bar, where the hole ends in what stays in the chuck. */
  readonly comesOut?: true;
};

// ---- operations --------------------------------------------------------------------------------------------------------
export type Verb =
  | 'face'
  | 'turn'
  | 'face-down'
  | 'groove'
  | 'chamfer'
  | 'cone'
  | 'form'
  | 'steps'
  | 'screw-cut'
  | 'die'
  | 'tap'
  | 'centre'
  | 'drill'
  | 'bore'
  | 'bore-start'
  | 'ream'
  | 'd-bit'
  | 'counterbore'
  | 'part-off'
  | 'saw-off'
  | 'file-square'
  | 'file-square-hole'
  | 'file-hexagon'
  | 'knurl'
  | 'file-flats'
  | 'slit'
  | 'saw-slot'
  | 'cross-drill'
  | 'cross-ream'
  | 'drill-bolt-holes'
  | 'solder'
  | 'deburr'
  | 'harden'
  | 'stone'
  | 'cut-stub'
  | 'file-half'
  | 'gauge';

/** `stage`: 'rough' where a later cut takes the same surface again. */
export type Stage = 'rough' | 'final';
/**
 * One surface made. This is an edge of the chart and, with the sweeps, the only thing the replay is told.
 * A diameter is measured from the axis; a length from a face that the chart chooses (or from the bar's end for the very first face).
 */
export type Cut = {
  readonly makes: SurfaceId;
  readonly stage: Stage;
  readonly measures: 'diameter' | 'length';
  /** Left for a later cut: on diameter, or along z; 0 at the final stage. */
  readonly leaves: Len;
};
/**
 * Metal taken. Places are surfaces, so that the replay can move them. `to`: a face, or a place `by` beyond a face (away from the
 * end in use), where no surface of the part arises.
 */
/** With `beyond` the face itself need not have been made yet: its place is then the drawing's, carried from the set-up's datum. */
export type Bound = { readonly face: SurfaceId; readonly beyond?: Len };
export type Sweep =
  | { readonly take: 'face'; readonly face: SurfaceId }
  /** `spares`, here and of a bore: the fillet whose metal is left in the corner, as a square block. */
  | { readonly take: 'turn'; readonly cylinder: SurfaceId; readonly to: Bound; readonly spares?: SurfaceId }
  | {
      readonly take: 'groove';
      readonly side: 'outside' | 'inside';
      readonly floor: SurfaceId;
      readonly first: SurfaceId;
      readonly second: SurfaceId;
    }
  /** `point`: included angle of the drill's point in degrees; absent for a flat-bottomed tool. `label`: surface whose wall it makes. */
  | {
      readonly take: 'bore';
      readonly cylinder: SurfaceId;
      readonly diameter: Len;
      readonly to: Bound;
      readonly point?: number;
      readonly spares?: SurfaceId;
    }
  | { readonly take: 'cone'; readonly cone: SurfaceId }
  | { readonly take: 'arc'; readonly arc: SurfaceId }
  | { readonly take: 'thread'; readonly feature: FeatureId }
  /**
   * Takes the kerf and with it everything beyond. Leaves face `face` at the stage of its cut; with `stub`, leaves that much bar
   * beyond the face instead (to hold by), and then no surface of the part arises.
   */
  | { readonly take: 'part'; readonly face: SurfaceId; readonly kerf: Len; readonly stub?: Len }
  | { readonly take: 'side'; readonly feature: FeatureId };

export type Way = {
  readonly cuts: readonly Cut[];
  readonly sweeps: readonly Sweep[];
  /** How far the tool reaches in from the end in use. */
  readonly reach?: Len;
  /** A tool that is steered by a bore of its own size: how much of it must stand before the tool arrives. */
  /** `slack`: on diameter, what still steers it, where that is more than a bored start allows. */
  readonly guide?: { readonly diameter: Len; readonly least: Len; readonly slack?: Len };
};
export type ToolUse = {
  readonly kind: string; // 'turning', 'drill', 'd-bit' ...
  /** One tool, one key: a change of key is a tool change. */
  readonly key: string;
  readonly size?: Len;
  /** What stands on it, where that is not its size. */
  readonly name?: string;
  readonly thread?: string;
  /** Of a boring tool with its nose ground to a radius, and of an inside threading tool: the least hole that it enters, as it is called in the workshop. */
  readonly enters?: Len;
  readonly material: 'HSS' | 'carbide' | 'silver steel' | 'none';
  /** Tooling to be made first, when the workshop lacks it. */
  readonly made?: ToolingAsk;
};
export type Operation = {
  readonly id: OpId;
  readonly feature: FeatureId;
  readonly verb: Verb;
  readonly tool: ToolUse;
  /** By the end that points away from the headstock; 'bench' for work off the lathe. */
  readonly ways: { readonly first?: Way; readonly second?: Way; readonly bench?: Way };
  /** Round work lies in a vee-block meanwhile: it is done in no other hold. */
  readonly lies?: true;
  /** Light work (a facing cut, a chamfer, a stone) may be done in a shorter grip. */
  readonly light: boolean;
  readonly because: readonly Because[];
  /** Tooling to have ready besides the tool itself, e.g. the gauge nut of a thread. */
  readonly asks?: readonly ToolingAsk[];
  /** Checks and cautions printed at this operation. */
  readonly says: readonly Because[];
};
/** One choice for a feature: the operations that make it, in their method's order. */
export type Method = {
  readonly feature: FeatureId;
  readonly name: string;
  readonly because: Because;
  readonly operations: readonly Operation[] /** other features that this method finishes too */;
  readonly covers?: readonly FeatureId[] /** 0 is liked best; decides only where all else is equal */;
  readonly rank: number;
};

export type ToolingAsk =
  /**
   * `side` is the mandrel's own thread; `thread` its size (the mate of the part's). `depth`: the part's length inside or over it;
   * `rim`: the part's diameter at the datum; `clears`: the bore needed behind, for a tool that comes through.
   */
  | {
      readonly kind: 'threaded-mandrel';
      readonly side: 'inside' | 'outside';
      readonly thread: ThreadSize;
      readonly depth: Len;
      readonly rim: Len;
      readonly clears: Len;
      readonly serves: PartId;
    }
  /** `bore`: the limits of the work's bore; `depth`: how far the spigot goes in from the work's face; `rim`: the work's diameter there. */
  | { readonly kind: 'stub-mandrel'; readonly bore: Limits; readonly depth: Len; readonly rim: Len; readonly serves: PartId }
  /** Fills the work's bore under its hold: pushed in from the end in the chuck, so far; made when that bore can be tried on it. */
  | { readonly kind: 'tube-plug'; readonly bore: Limits; readonly length: Len; readonly serves: PartId }
  | { readonly kind: 'd-bit'; readonly diameter: Len; readonly length: Len; readonly end?: 'flat' }
  /**
   * `work`: the largest diameter that it closes on; `length`: how much of it; from a round bar of `material`. Kept; where the work may come out
   * too loose in one bored to that size, it is bored to the work instead, which is then the part `serves`, its diameter within `fits`.
   */
  | {
      readonly kind: 'split-sleeve';
      readonly work: Len;
      readonly length: Len;
      readonly material: string;
      readonly across: Len;
      readonly to?: { readonly serves: PartId; readonly fits: Limits };
    }
  /** Goes over the work's outside thread, is slit and closed on it: so long, from a round bar of `material`. Kept. */
  | {
      readonly kind: 'threaded-sleeve';
      readonly thread: ThreadSize;
      readonly length: Len;
      readonly material: string;
      readonly across: Len;
    }
  /** Two of each, on a rest: the rollers on which a file runs, and the pins that they turn on. Kept. */
  | { readonly kind: 'guide-roller'; readonly across: Len }
  | { readonly kind: 'guide-pin'; readonly across: Len }
  | { readonly kind: 'gauge-nut'; readonly thread: ThreadSize; readonly length: Len };

/**
 * `force`: breaking a strict one spoils the part or hurts someone; a preferred one costs time or truth.
 * `when`: it binds only if the operation so named is done from that end.
 */
export type Before = {
  readonly first: OpId;
  readonly then: OpId;
  readonly force: 'strict' | 'preferred';
  readonly when?: { readonly op: OpId; readonly from: End };
  readonly because: Because;
};

// ---- grips -------------------------------------------------------------------------------------------------------------
export type GripKind =
  | 'bar'
  | 'bar-and-centre'
  | 'jaws'
  | 'bored-jaws'
  | 'four-jaw'
  | 'hexagon'
  | 'collet'
  | 'sleeve'
  | 'stub'
  | 'blank'
  | 'between-centres'
  | 'threaded-mandrel'
  | 'threaded-sleeve'
  | 'stub-mandrel'
  | 'vee-block'
  | 'bench';
/** Off the lathe: in the vice, or in a vee-block under the drill press. Such work counts as no set-up. */
/** Held by the work's own thread. */
export const isByThread = (grip: Pick<Grip, 'kind'>): boolean => grip.kind === 'threaded-mandrel' || grip.kind === 'threaded-sleeve';
export const isOffLathe = (grip: Pick<Grip, 'kind'>): boolean => grip.kind === 'bench' || grip.kind === 'vee-block';
export type Grip = {
  readonly id: GripId;
  readonly kind: GripKind;
  /** The end of the part that points away from the headstock. */
  readonly out: End;
  readonly on: readonly SurfaceId[];
  /** What lengths are measured from when the work comes to the lathe; absent on bar, where the first face cut becomes it. */
  readonly datum?: SurfaceId;
  /** The held stretch along z (nominal), and the diameter that is held. */
  readonly from: Len;
  readonly to: Len;
  readonly diameter: Len;
  /** What a collet or a sleeve closes on; absent where jaws are set, or bored, to the work as it came out. */
  readonly takes?: { readonly lo: Len; readonly hi: Len };
  /** What is held was rolled before, and stands higher than its diameter says: jaws are bored to it as it came out. */
  readonly knurled?: true;
  /** The centre hole in the free end in which the tailstock's centre runs, where it does. */
  readonly centre?: FeatureId;
  readonly tooling?: ToolingAsk;
  /** What fills a thin tube under the hold: where it stands, and the tooling that it is. */
  readonly plug?: { readonly from: Len; readonly to: Len; readonly bore: SurfaceId; readonly tooling: ToolingAsk };
  /**
   * Operations by id. Of each feature among `ready` at least one operation must be in the route (its methods differ), and those that are
   * must be done; of each feature among `gone` one must be in the route, and none may be done yet; what it `hides` can't be done so held.
   */
  readonly ready: readonly OpId[];
  readonly gone: readonly OpId[];
  readonly hides: readonly OpId[];
  readonly lightOnly: boolean;
  /** Short for its diameter, and pressed back against the steps of the jaws. */
  readonly seated?: true;
  readonly runout: Len;
  readonly because: readonly Because[];
};
/** A thing refused, with its figures and the candidate that it would have been: allow it, search again, and you have the change that would help. */
export type Refusal = {
  readonly what: string;
  readonly because: Because;
  /** What there is, and either what it wants at least, which is more, or what it may be at most, which is less. */
  readonly has?: Len;
  readonly wants?: Len;
  readonly most?: Len;
  readonly would?: { readonly grip: Grip } | { readonly method: Method };
  /** The one thing that is wanting: what is refused to several features for want of the same tool is one change. */
  readonly lacks?: string;
};
export type Candidates = {
  readonly part: Part;
  /** By feature, every method that this workshop has; the search takes one each. */
  readonly methods: readonly { readonly feature: FeatureId; readonly any: readonly Method[] }[];
  readonly grips: readonly Grip[];
  readonly befores: readonly Before[];
  readonly refused: readonly Refusal[];
  /** What the drawing could do without: told of only where nothing finishes. */
  readonly asked?: readonly Refusal[];
};
