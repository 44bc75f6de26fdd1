/** What `why` answers with, as plain records: the reasons that a plan holds, gathered by part and operation. */

import type { Len } from '../base/units.ts';
import type { End, OpId, PartId, SurfaceId } from './ids.ts';
import type { Because, Cost, GripKind, NoRoute, RefusedPlan, Verb } from './plan.ts';

export type WhyView = { readonly title: string; readonly parts: readonly WhyPart[]; readonly day?: WhyDay };

/** Of the day across parts; `standing`: each making of tooling in the chuck, in order, and the holds that it serves. */
export type WhyDay = {
  readonly makings: number;
  readonly atLeast: number;
  readonly aside: number;
  readonly proved: 'best' | 'best found within the limit';
  readonly standing: readonly WhyStanding[];
};
export type WhyHold = { readonly part: PartId; readonly no: number };
/** `out`: what wanted the chuck when it was made before, so that it is made anew. */
export type WhyStanding = { readonly tooling: PartId; readonly holds: readonly WhyHold[]; readonly out?: WhyHold };

export type WhyPart = {
  readonly part: PartId;
  readonly setUps: readonly WhySetUp[];
  readonly operations: readonly WhyOperation[];
  readonly cost: Cost;
  /** Habits of the workshop that decided. */
  readonly habits: readonly string[];
  /** How many orders are as good, as text; this one among them. */
  readonly asGood: string;
  readonly proved: 'best' | 'best found within the limit';
  /** No order costs less; absent where the order is proved best. */
  readonly atLeast?: Cost;
  readonly states: number;
  readonly runnersUp: readonly { readonly grips: readonly string[]; readonly cost: Cost; readonly dearerBy: keyof Cost | 'nothing' }[];
  /** Plans that the proof refused before this one. */
  readonly insteadOf: readonly RefusedPlan[];
  readonly refused: readonly WhyRefusal[];
  /** Preferences that this order does not keep. */
  readonly broken: readonly WhyMust[];
};
export type WhySetUp = {
  /** 0 for work at the bench. */
  readonly no: number;
  readonly kind: GripKind;
  /** Besides, a centre runs in the free end. */
  readonly centred: boolean;
  /** A plug fills the bore under it. */
  readonly plugged: boolean;
  readonly seated: boolean;
  readonly out: End;
  readonly on: readonly SurfaceId[];
  readonly datum: SurfaceId | '';
  readonly diameter: Len;
  readonly long: Len;
  readonly because: readonly Because[];
};
export type WhyOperation = {
  readonly id: OpId;
  /** In tens through the part, as on the sheet. */
  readonly number: number;
  readonly verb: Verb;
  /** The feature's name without its part's. */
  readonly feature: string;
  /** Index among the part's set-ups, those at the bench counted too. */
  readonly setUp: number;
  readonly from: End | 'bench';
  readonly because: readonly Because[];
  /** Why this way of making the feature, and the ways that the workshop has besides. */
  readonly method: {
    readonly name: string;
    readonly because: Because;
    readonly besides: readonly { readonly name: string; readonly because: Because }[];
  };
  readonly comesAfter: readonly WhyMust[];
  readonly comesBefore: readonly WhyMust[];
  /** Ends from which it cannot be done. */
  readonly notFrom: readonly End[];
};
/** The other operation of a before; `number` is 0 where it is not one of this part's. */
export type WhyMust = {
  readonly op: OpId;
  readonly number: number;
  readonly than: OpId;
  readonly force: 'strict' | 'preferred';
  readonly because: Because;
};
export type WhyRefusal = {
  readonly what: string;
  readonly because: Because;
  readonly has?: Len;
  readonly wants?: Len;
  readonly most?: Len;
};
export type WhyNot = Pick<NoRoute, 'part' | 'stuck'> & {
  readonly refused: readonly WhyRefusal[];
  readonly wouldHelp: readonly WhyRefusal[];
  /** One tool for several features. */
  readonly wouldHelpByOne: readonly (readonly WhyRefusal[])[];
  /** Where no single change would help. */
  readonly wouldHelpPairs: readonly (readonly [WhyRefusal, WhyRefusal])[];
};
