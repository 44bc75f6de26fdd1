/** In which order it is done, with which numbers, and the proof. Nothing here computes. */
import type { Len } from '../base/units.ts';
import type { Day, DayProof, Sequence } from './day.ts';
import type { DimId, End, FeatureId, GripId, OpId, PartId, SurfaceId } from './ids.ts';
import type { Fitting, Limits, Part, Say } from './part.ts';
import type { Claim, Proof } from './proof.ts';
import type { PackStock } from './stock.ts';
import type { PackTime, PartTime } from './time.ts';
import type { Because, Before, Candidates, Grip, Method, Refusal, Stage } from './work.ts';
import type { Workshop } from './workshop.ts';

export type * from './day.ts';
export type * from './proof.ts';
export type * from './work.ts';

// ---- route -------------------------------------------------------------------------------------------------------------
/** Compared field by field, least first. */
export type Cost = {
  readonly setUps: number;
  readonly tooling: number;
  readonly broken: number;
  readonly toolChanges: number;
  /** Tenths of a minute: what the holds, the changes of tool and the tooling to be made take; not the cutting itself. */
  readonly minutes: number;
  readonly rank: number;
};
export type SetUp = { readonly no: number; readonly grip: Grip; readonly operations: readonly OpId[] };
export type Route = {
  readonly part: PartId;
  /** Bench work stands as a set-up of kind 'bench'; it does not count as one. */
  readonly setUps: readonly SetUp[];
  readonly chosen: readonly Method[];
  readonly cost: Cost;
  /** How many orders are as good, in whole numbers of any size, as text. */
  readonly asGood: string;
  readonly proved: 'best' | 'best found within the limit';
  /** No order costs less; absent where the order is proved best. */
  readonly atLeast?: Cost;
  readonly states: number;
  readonly runnersUp: readonly { readonly grips: readonly GripId[]; readonly cost: Cost }[];
  readonly refused: readonly Refusal[];
  readonly befores: readonly Before[];
  readonly broken: readonly Before[];
  /** Habits of the workshop without which this would be another plan. */
  readonly habits?: readonly string[];
};
/** No plan: every refusal, and the single changes that would make one possible. */
export type NoRoute = {
  readonly part: PartId;
  /** What kind of part it is: tooling may be bought as well. */
  readonly kind: string;
  readonly refused: readonly Refusal[];
  readonly wouldHelp: readonly Refusal[];
  /** Changes that are one because one tool makes them all: what is refused to several features for want of it. */
  readonly wouldHelpByOne?: readonly (readonly Refusal[])[];
  /** Where no single change would: those that would together. */
  readonly wouldHelpPairs?: readonly (readonly [Refusal, Refusal])[];
  readonly stuck: readonly OpId[];
  /** What it fails at, where that is one thing: a feature by its own name; of an end, which, and whether it is the slot across it. */
  readonly about?: { readonly feature: string; readonly end?: End; readonly slot?: true };
};

// ---- chart and figures -------------------------------------------------------------------------------------------------
/** A working dimension: this cut's surface, measured from that one, with the limits to work to in this grip. */
export type Working = {
  readonly id: DimId;
  readonly op: OpId;
  readonly makes: SurfaceId;
  readonly stage: Stage;
  readonly measures: 'diameter' | 'length';
  /** A face as it is now; 'axis' for a diameter; 'bar end' for the first face on bar. */
  readonly from: SurfaceId | 'axis' | 'bar end';
  /** For a length: +1 when the surface lies toward the second end from `from`. */
  readonly toward: 1 | -1;
  readonly limits: Limits;
  /** What the process holds on this lathe, as a whole band. */
  readonly holds: Len;
};
export type Path = {
  readonly of: DimId;
  readonly links: readonly { readonly dim: DimId; readonly sign: 1 | -1 }[];
  readonly lo: Len;
  readonly hi: Len;
  readonly asks: Limits;
  readonly met: boolean;
  /** Statistical figure: root of the sum of the squared bands, about the middle of the worst case. It stands beside it and never governs. */
  readonly likely?: { readonly lo: Len; readonly hi: Len };
};
/** How far out of true one surface may run to another: the run-out of each re-grip between the two, added up. Full indicator readings. */
export type TruthPath = {
  readonly of: DimId;
  readonly a: SurfaceId;
  readonly b: SurfaceId;
  readonly links: readonly { readonly grip: GripId; readonly runout: Len }[];
  readonly worst: Len;
  readonly asks: Len;
  readonly met: boolean;
};
export type Chart = {
  readonly part: PartId;
  readonly working: readonly Working[];
  readonly drawing: readonly Path[];
  readonly truths?: readonly TruthPath[];
};
/**
 * A chain across parts. `lo`, `hi`: worst case of its links as they are made blind, of all rivals the least; `fitted`: what is left when it
 * is measured and fitted; `left` says of what.
 */
export type StackPath = {
  readonly of: string;
  readonly how: 'blind' | 'measure and fit';
  readonly links: readonly StackLink[];
  /** Which way governs at the least: 0 the links, 1 the first of the rivals. */
  readonly governs?: number;
  readonly lo: Len;
  readonly hi: Len;
  readonly likely: { readonly lo: Len; readonly hi: Len };
  readonly fitted?: { readonly lo: Len; readonly hi: Len };
  /** Whole bands: of the last cut, of all readings together, of what can't be measured before. */
  readonly left?: { readonly cut: Len; readonly readings: number; readonly read: Len; readonly reckoned: Len };
  readonly asks: Limits;
  /** Only the lower limit is asked. */
  readonly open?: 'above';
  readonly met: boolean;
};
export type StackLink = {
  readonly part: PartId;
  readonly a: SurfaceId;
  readonly b: SurfaceId;
  readonly sign: 1 | -1;
  readonly lo: Len;
  readonly hi: Len;
  /** From the part's chart; as the link states it; its nominal size alone. */
  readonly from: 'chart' | 'stated' | 'nominal';
};

/** drivers[0] drives driven[0], through the idler where there is one; drivers[1], on that stud, drives driven[1]; the last is the leadscrew's. */
export type WheelsUsed = {
  readonly drivers: readonly number[];
  readonly driven: readonly number[];
  readonly idler?: number;
  /** Signed fraction of the pitch. */
  readonly error: number;
  /** What the error comes to over the engaged length, and as pitch diameter, where it is not nothing. */
  readonly over?: { readonly engaged: Len; readonly off: Len; readonly acts: Len; readonly tolerance: Len };
  readonly halfNuts: 'anywhere' | 'dial' | 'closed';
  /** Worm wheel of the threading dial; every how many of its marks serve. */
  readonly dial?: { readonly wheel: number; readonly every: number; readonly lines: number; readonly marks: number };
  /** For a left-hand thread: by the tumbler's lever, by this wheel as a second idler, or not at all with these wheels. */
  readonly leftBy?: 'tumbler' | 'none' | number;
};
export type ScrewCutting = {
  readonly infeed: 'straight' | 'flank';
  /** Degrees from square to the axis; how far it moves, pass by pass. */
  readonly topSlide?: { readonly angle: number; readonly passes: readonly Len[] };
  /** Which tool the passes are for: ground to a point, or rounded as the root of the form is. `other`: how deep the other one goes, a side. */
  readonly tip: 'sharp' | 'rounded';
  readonly other: Len;
  readonly spring: number;
  readonly toward: 'headstock' | 'tailstock';
  /** With the latter: where the tool goes in. */
  readonly entry?: 'groove' | 'bottom' | 'behind';
  /** How the spindle comes back where the half-nuts stay closed. */
  readonly back?: 'power' | 'slowly' | 'hand';
  /** The carriage's travel while it is stopped, and what room there is for it. */
  readonly stop?: { readonly runsOn: Len; readonly room: Len };
  /** What a micrometer reads over three wires of this size. */
  readonly wires?: { readonly wire: Len; readonly lo: Len; readonly hi: Len };
};
/** turns x turn + divisions x division = total, as that dial counts. */
export type Reading = {
  readonly which: 'cross' | 'top' | 'carriage' | 'tailstock';
  readonly turns: number;
  readonly divisions: number;
  readonly total: Len;
};

export type Figures = {
  readonly op: OpId;
  readonly rpm?: { readonly value: number; readonly vc: number; readonly bound: string };
  /** mm a revolution */
  readonly feed?: number;
  /** Depth of each pass, a side (radial), or along z for a facing cut; they add up to the stock. */
  readonly passes?: readonly Len[];
  /** Before them, over the last `long` of a bore, where its drill stopped short of the floor; a side. */
  readonly narrow?: { readonly long: Len; readonly passes: readonly Len[] };
  /** The whole movement. */
  readonly dial?: Reading;
  /** What bounds the cut: words' id. The speed's own bound stands with it. */
  readonly bound?: string;
  /** Where that dial is set to nought: the tool touching this diameter, or the end face (a drill: its point or its lips, 'level': its point beside it in a wider hole; a reamer: behind its lead). */
  readonly zero?:
    | { readonly at: 'diameter'; readonly diameter: Len }
    | { readonly at: 'face' | 'point' | 'level' | 'lips' | 'lead' | 'corner' };
  /** The dial after each pass, from that nought; the last is the whole movement. */
  readonly readings?: readonly Reading[];
  /** The tool is fed away from the axis: slack is taken up outward. */
  readonly outward?: true;
  /** With it: divisions of the cross slide's dial that its lost motion takes up, where the workshop says. */
  readonly slack?: number;
  /** Stop and measure before this pass (from 0); what is left is set by what was measured. */
  readonly measure?: number;
  /** Passes taken again at the same setting. */
  readonly spring?: number;
  /** The spindle is set faster as the work grows thinner: after so many passes, at that diameter, so many turns a minute. */
  readonly faster?: readonly { readonly across: Len; readonly after: number; readonly rpm: number }[];
  /** How far along the axis the tool goes from the end face, where a shoulder stops it. */
  readonly along?: Reading;
  /** That reading is for parts as aimed at: what lies between datum and end is measured, and the length taken from it, or added. */
  readonly alongBy?: { readonly from: SurfaceId; readonly end: SurfaceId; readonly size: Len; readonly way: 'less' | 'more' };
  /** Top slide for a cone: degrees from the axis, how far it moves, and the divisions that its lost motion takes up before, where known. */
  readonly slide?: { readonly angle: number; readonly travel: Reading; readonly slack?: number };
  /** Set-up lines, by the words' ids. */
  readonly says?: readonly Say[];
  readonly wheels?: WheelsUsed;
  readonly screw?: ScrewCutting;
  readonly depth?: Len;
  /** A hole's tool comes out on the far side. */
  readonly comesOut?: true;
  /** What still stands on the end face: depths that count from it are so much more than the drawing's. */
  readonly stands?: Len;
  /** Turns a minute of the drill press; `about` where nobody said which it has. */
  readonly press?: { readonly value: number; readonly vc: number; readonly bound: string; readonly about?: true };
  /** A drill's steps from full diameter; they add up to the depth at full diameter. */
  readonly pecks?: readonly Len[];
  readonly lubricant?: string;
};

/** What is left out of the candidates because the proof refused a plan with it: a hold, an operation in a hold, a way of making a feature. */
export type LeftOut =
  | { readonly what: 'hold'; readonly grip: GripId }
  | { readonly what: 'in-hold'; readonly grip: GripId; readonly op: OpId }
  | { readonly what: 'method'; readonly feature: FeatureId; readonly method: string; readonly because: Because };
/** A plan that was best until the proof refused it: by which claims, and what was left out for that. */
export type RefusedPlan = { readonly claims: readonly Claim[]; readonly left: LeftOut };

export type PlannedPart = {
  readonly part: Part;
  readonly candidates: Candidates;
  readonly route: Route;
  readonly chart: Chart;
  readonly figures: readonly Figures[];
  readonly proof: Proof;
  /** Plans that the proof refused before this one, in the order in which they were tried. */
  readonly insteadOf?: readonly RefusedPlan[];
  /** An estimate; absent in a plan that was not made by the phases. */
  readonly time?: PartTime;
};

/** The whole answer: what `compile` gives, what the sheet is written from, what `--format json` prints. Plain records only. */
export type Plan = {
  readonly version: string;
  readonly fitting: Fitting;
  readonly workshop: Workshop;
  /** Every part that is made, tooling included, in the order of the fitting and then of the tooling. */
  readonly parts: readonly PlannedPart[];
  readonly sequence: Sequence;
  /** Absent in a plan that was not made by the phases. */
  readonly day?: Day & { readonly proof: DayProof };
  readonly stock?: PackStock;
  /** Of the whole pack, as an estimate. */
  readonly time?: PackTime;
  /** Worst case of each of the fitting's chains across parts. */
  readonly stacks?: readonly StackPath[];
  /** First 8 hex digits of a hash of all the above. */
  readonly mark: string;
};
