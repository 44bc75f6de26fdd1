/** A part as a turner would say it over the bench: sections, holes, cones, and what is done from the side. */
import type { Len } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import type { Limits, MadeTo, Part, Role, SideFeature, ThreadSize } from '../../model/part.ts';

export type EndAsk = {
  readonly letter: string;
  readonly role: Role;
  readonly fitted?: true;
  readonly skimmed?: true /** a centre hole that may stay in this end */;
  readonly centre?: { readonly pilot: Limits; readonly depth: Len; readonly mouth: Limits };
  /** a centre hole might stay, but no centre drill of the workshop has so small a mouth */
  readonly centreUnder?: Len;
};
export type ThreadAsk = {
  readonly size: ThreadSize;
  readonly start: End;
  readonly chamfer: Limits;
  /** Where it comes out at the other end of the part: that edge is broken too. */
  readonly farChamfer?: Limits;
  readonly relief?: { readonly width: Limits; readonly floor: Limits };
};
/** A broken edge at that end of a section; `mouth` is its small diameter, at the face. */
export type Chamfer = { readonly at: End; readonly angle: number; readonly mouth: Limits };
/** At that end of a section; `across` is the diameter of its circle. */
export type ArcAsk = { readonly at: End; readonly bends: 'round' | 'fillet'; readonly across: Limits };
export type Section = {
  /** Narrower than both neighbours: plunged, not turned along. Its shoulder and the one before it are its walls. */
  readonly groove?: true;
  /** Rolled after turning; the size is the blank's. */
  readonly knurl?: true;
  readonly name: string;
  /** The section of that name, beyond a groove, is of this size too: the two are one cut, and one cylinder. */
  readonly oneWith?: string;
  readonly role: Role;
  readonly size: Limits;
  readonly length: Len;
  readonly section?: 'hexagon';
  readonly asStock?: true;
  readonly thread?: ThreadAsk;
  /** Turned to its hole as that came out. */
  readonly madeTo?: MadeTo;
  /** The face between this section and the next one. */
  readonly shoulder?: { readonly letter: string; readonly role: Role };
  readonly chamfers?: readonly Chamfer[];
  readonly arcs?: readonly ArcAsk[];
  /** An outside cone that ends this section at its end toward `at`, e.g. the cone of a nipple. */
  readonly cone?: {
    readonly at: End;
    readonly angle: number;
    readonly mouth: Limits;
    readonly role: Role /** it takes the whole section: `size` is its large diameter */;
    readonly whole?: true;
    /** Another like it ends the section at its other end. */
    readonly twin?: true;
  };
  /** What a cone that takes the whole section is cut from: nothing is left of it. */
  readonly blank?: Limits;
};
/** A groove in a bore between two walls. `letter` absent: it is the hole's own floor, or the wall of a relief. */
export type Recess = {
  readonly name: string;
  readonly role: Role;
  readonly size: Limits;
  readonly from: Len;
  readonly to: Len;
  readonly first: { readonly letter: string };
  readonly second: { readonly letter: string };
};
/** A rounded mouth at the end of the part where the hole opens, or a fillet at its floor. */
export type HoleArc = { readonly bends: 'round' | 'fillet'; readonly across: Limits };
export type Hole = {
  readonly arcs?: readonly HoleArc[];
  readonly recesses?: readonly Recess[];
  /** Behind an inside thread, at the floor. */
  readonly relief?: { readonly width: Limits; readonly floor: Limits; readonly from: Len; readonly to: Len };
  readonly name: string;
  readonly role: Role;
  readonly size: Limits;
  readonly from: Len;
  readonly to: Len;
  readonly opens: readonly End[];
  /** Letter of the end face whose meeting with this hole is a seat. */
  readonly edge?: string;
  /** What sits on that edge: a ball where nothing is said. */
  readonly takes?: 'ball' | 'cone';
  /** Its flat bottom, named by a letter. */
  readonly floor?: { readonly letter: string; readonly role: Role };
  /** Open at one end and ending in the drill's point; `to` (or `from`) is the depth of full diameter. */
  readonly blind?: true;
  /** An inside thread from the open end to `to` (nominal z of the last full thread). */
  readonly thread?: {
    readonly size: ThreadSize;
    readonly to: Len /** at the end face; absent where a wider mouth stands before the thread */;
    readonly chamfer?: Limits;
    /** at the other end, where the thread goes right through */
    readonly farChamfer?: Limits;
  };
  readonly cone?: {
    readonly at: End;
    readonly angle: number;
    readonly mouth: Limits;
    readonly role: Role;
    readonly name: string;
    /** What another like it is called, at its other end. */
    readonly twin?: string;
  };
  /** Bored to its shaft as that came out. */
  readonly madeTo?: MadeTo;
};
export type Side = Omit<SideFeature, 'kind' | 'id' | 'on' | 'spoils'> & {
  readonly name: string;
  readonly on: string;
  readonly spoils?: readonly string[];
};
export type OutlineAsk = Pick<Part, 'id' | 'kind' | 'quantity' | 'use' | 'stock'> & {
  readonly first: EndAsk;
  /** A part that stays in the chuck has no second end. */
  readonly second?: EndAsk;
  readonly sections: readonly Section[];
  readonly holes?: readonly Hole[];
  readonly sides?: readonly Side[];
  /** Faces by letter or, for a relief wall, by '<section>.wall'. */
  readonly lengths: readonly { readonly from: string; readonly to: string; readonly limits: Limits }[];
  /** Run-out that is asked for beside what the roles ask, by names of sections or holes. */
  readonly truths?: readonly { readonly a: string; readonly b: string; readonly asks: Len }[];
  readonly waitsFor?: readonly { readonly feature: string; readonly part: string; readonly why: 'measure-and-fit' | 'joined' | 'gauges' }[];
};
