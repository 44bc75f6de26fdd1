/**
 * A turned part as its drawing asks for it: surfaces, features, dimensions. Nothing here computes.
 * Axis: z from the part's first end (z = 0) to its second. The second axis is always the DIAMETER.
 */
import type { Len } from '../base/units.ts';
import type { Arrangement } from './arrangement.ts';
import type { Chain } from './chain.ts';
import type { Curve } from './curve.ts';
import type { Derivation } from './derivation.ts';
import type { MadeTo, Truth, WaitsFor } from './fit.ts';
import type { DimId, End, FeatureId, PartId, SurfaceId } from './ids.ts';
import type { Limits } from './limits.ts';
import type { Say } from './say.ts';

export type * from './arrangement.ts';
export type * from './chain.ts';
export type * from './curve.ts';
export type * from './derivation.ts';
export type * from './fit.ts';
export type * from './limits.ts';
export type * from './say.ts';

export type Role = 'seat' | 'sealing' | 'register' | 'running' | 'thread' | 'clearance' | 'free';

/** A plane square to the axis. `air`: the side on which the finished part has no metal. z is the drawing's nominal place. */
export type Face = {
  readonly shape: 'face';
  readonly id: SurfaceId;
  readonly feature: FeatureId;
  readonly role: Role;
  readonly side: 'outside' | 'inside';
  readonly air: End;
  readonly z: Len;
  /** Datum letter printed on the sheet, where a length is measured from or to. */
  readonly letter?: string;
};
/** `from` < `to`: nominal extent along z. `asStock`: the bar's own surface, not cut. */
export type Cylinder = {
  readonly shape: 'cylinder';
  readonly id: SurfaceId;
  readonly feature: FeatureId;
  readonly role: Role;
  readonly side: 'outside' | 'inside';
  readonly size: Limits;
  readonly from: Len;
  readonly to: Len;
  readonly asStock?: true;
  /** Turned for tapers that run out at both its ends: nothing of it is left, and it stands in no ring. */
  readonly blank?: true;
  /** One cut that stands in several stretches, with grooves between them; `from` and `to` are then those of the whole. */
  readonly pieces?: readonly { readonly from: Len; readonly to: Len }[];
};
/**
 * A cone or chamfer. Its diameter is `mouth` at the face `at`; from there, going toward `into`, an outside cone grows and an inside
 * cone shrinks, by 2 tan(includedAngle / 2) of diameter a length, until it runs out at the cylinder (or face) `until`.
 */
export type Cone = {
  readonly shape: 'cone';
  readonly id: SurfaceId;
  readonly feature: FeatureId;
  readonly role: Role;
  readonly side: 'outside' | 'inside';
  /** degrees, 0 < angle < 180 */
  readonly includedAngle: number;
  readonly mouth: Limits;
  readonly at: SurfaceId;
  readonly into: End;
  readonly until: SurfaceId;
  /** It runs out before its cylinder, a blank: at this face, or at the cone that leans against it; its large diameter there. */
  readonly ends?: { readonly at: SurfaceId; readonly size: Limits };
};
/**
 * A quarter of a circle in section, tangent to the face `at` and to the cylinder `until`; `into` leads from that face along that cylinder.
 * 'round': the edge of an end, a step or a bore's mouth taken down; 'fillet': metal left in the corner under a shoulder or at a bore's floor.
 */
export type Arc = {
  readonly shape: 'arc';
  readonly id: SurfaceId;
  readonly feature: FeatureId;
  readonly role: Role;
  readonly side: 'outside' | 'inside';
  readonly bends: 'round' | 'fillet';
  /** Diameter of its circle: twice the R of the drawing, and even. */
  readonly across: Limits;
  readonly at: SurfaceId;
  readonly into: End;
  readonly until: SurfaceId;
};
export type Surface = Face | Cylinder | Cone | Arc;

/** `size` is signed: z(b) - z(a), b nearer the second end, so it is positive. */
export type Dimension = { readonly id: DimId; readonly a: SurfaceId; readonly b: SurfaceId; readonly limits: Limits };

export type ThreadSize = {
  readonly name: string; // 'M10x1'
  readonly cls: string; // '6g', '6H'
  readonly major: Limits;
  readonly pitchDiameter: Limits;
  readonly minor: Limits;
  /** Least root diameter of an outside thread; greatest root of an inside one: what a relief must clear. */
  readonly root: Len;
  readonly pitch: Len;
  /** threads an inch where that is what the thread is made to: exact, as `pitch` need not be */
  readonly perInch?: number;
  readonly hand: 'right' | 'left';
  /** degrees */
  readonly flankAngle: number;
};

export type Feature =
  | {
      readonly kind: 'end';
      readonly id: FeatureId;
      readonly role: Role;
      readonly end: End;
      readonly face: SurfaceId /** cut last, to a sum that is measured on the other parts */;
      readonly fitted?: true;
      /** a mandrel's face: skimmed when all else at that end is done */
      readonly skimmed?: true;
      /** it may carry a centre hole with a mouth up to this, and the workshop has no centre drill so small */
      readonly centreUnder?: Len;
    }
  /** A cylinder on the outside. `shoulder`: the face that rises from it at either end (absent where the part steps down there). */
  | {
      readonly kind: 'outside';
      readonly id: FeatureId;
      readonly role: Role;
      readonly cylinder: SurfaceId;
      readonly shoulder: { readonly first?: SurfaceId; readonly second?: SurfaceId };
      /** Across-corners section (hexagon) left from the bar: not turned, held by its flats. */
      readonly section: 'round' | 'hexagon';
      readonly madeTo?: MadeTo;
    }
  /** A groove: `first` and `second` are its two walls, either may be a shoulder already named by a cylinder. */
  | {
      readonly kind: 'groove';
      readonly id: FeatureId;
      readonly role: Role;
      readonly side: 'outside' | 'inside';
      readonly floor: SurfaceId;
      readonly first: SurfaceId;
      readonly second: SurfaceId;
      readonly serves?: FeatureId;
    }
  | {
      readonly kind: 'cone';
      readonly id: FeatureId;
      readonly role: Role;
      readonly cone: SurfaceId;
      readonly from: End;
      readonly serves?: FeatureId;
      readonly does: 'chamfer' | 'cone';
    }
  /** `from`: the end that its tool comes from. */
  | {
      readonly kind: 'arc';
      readonly id: FeatureId;
      readonly role: Role;
      readonly arc: SurfaceId;
      readonly from: End;
      readonly does: 'round' | 'fillet';
    }
  /** Cut on the cylinder `on`; full thread between z = `from` and z = `to` (nominal). `start`: the end that the tool or tap enters from. */
  | {
      readonly kind: 'thread';
      readonly id: FeatureId;
      readonly role: 'thread';
      readonly side: 'outside' | 'inside';
      readonly on: SurfaceId;
      readonly thread: ThreadSize;
      readonly from: Len;
      readonly to: Len;
      readonly start: End;
    }
  /**
   * A round hole on the axis. `opens`: the ends from which it can be reached. `floor` is its flat bottom (absent: it runs into a larger
   * hole or out of the part). `edge`: the face whose meeting with this hole is a seat.
   */
  | {
      readonly kind: 'hole';
      readonly id: FeatureId;
      readonly role: Role;
      readonly cylinder: SurfaceId;
      readonly opens: readonly End[];
      readonly floor?: SurfaceId;
      readonly edge?: SurfaceId;
      /** What sits on that edge: a ball where nothing is said. */
      readonly takes?: 'ball' | 'cone';
      /** Ends in the drill's point, at that depth of full diameter. */
      readonly blind?: true;
      /** A centre hole that stays in the end: the tailstock centre runs in it. */
      readonly centre?: true;
      readonly madeTo?: MadeTo;
    }
  /** Not of revolution: made from the side or at the bench. `at`: nominal z of its middle; `half`: how far it reaches either way. */
  | SideFeature;

export type SideFeature = {
  readonly kind: 'side';
  readonly id: FeatureId;
  readonly role: Role;
  readonly does:
    | 'flats'
    | 'cross-hole'
    | 'branch'
    | 'flange'
    | 'bolt-holes'
    | 'half-flat'
    | 'harden'
    | 'hexagon'
    | 'square'
    | 'square-hole'
    | 'knurl'
    | 'slit'
    /** Across an end, through its middle: `size` is its width, `half` half its depth. */
    | 'slot';
  readonly on: SurfaceId;
  readonly at: Len;
  readonly half: Len;
  /** Across flats, hole diameter, or the branch's spigot. */
  readonly size?: Limits;
  /** How many of it there are round the axis, e.g. two flats; of cross holes, how many go right across, evenly round. */
  readonly count?: number;
  /** Of holes along the axis: the circle that their middles stand on. */
  readonly circle?: Limits;
  /** A branch, or its flange: the part that is soldered in or on, by what, its clearance on diameter, how far it goes in. */
  readonly joins?: {
    readonly part: PartId;
    readonly by: 'silver-solder';
    readonly fit?: Pick<Limits, 'lo' | 'hi'>;
    readonly overlap?: Len;
  };
  /** How many degrees round the axis it stands from another; where it matters. */
  readonly facing?: { readonly other: FeatureId; readonly degrees: number };
  /** Features of this part that heat, flux or burr would spoil: they come after. */
  readonly spoils?: readonly FeatureId[];
};

export type Stock =
  | {
      readonly from: 'bar';
      readonly section: 'round' | 'hexagon';
      readonly across: Len;
      readonly material: string;
      readonly asStock?: true;
    }
  | { readonly from: 'bought'; readonly what: string; readonly material?: string };

export type Part = {
  readonly id: PartId;
  /** Words' key for the part's name; the template turns it into 'Seat piece'. */
  readonly kind: string;
  readonly quantity: number;
  readonly use: 'fitting' | 'kept tooling' | 'tooling made in place' | 'tooling made to fit' | 'bought';
  readonly stock: Stock;
  /** Surfaces in order round the half-section: from the first end outward along the outside to the second end, back along the inside. */
  readonly ring: readonly SurfaceId[];
  readonly surfaces: readonly Surface[];
  readonly features: readonly Feature[];
  readonly dimensions: readonly Dimension[];
  /** Surfaces that must run true to one another (a seat to its register, a cone to its stem). */
  readonly truths?: readonly Truth[];
  /** Nominal length over all. */
  readonly length: Len;
  /** Ends that this part's use fixes to be made in the chuck and left there (a mandrel): it is never parted off. */
  readonly staysInChuck?: true;
  /** Parts whose finishing must come before a named feature of this one is cut (measure and fit, branch before barrel, gauge before thread). */
  readonly waitsFor?: readonly WaitsFor[];
};

export type BoughtItem = {
  readonly id: PartId;
  readonly kind: string;
  readonly quantity: number;
  readonly grounds: Readonly<Record<string, string | number>>;
};

export type Fitting = {
  readonly kind: string;
  readonly title: string;
  readonly parts: readonly Part[];
  readonly bought: readonly BoughtItem[];
  readonly chains: readonly Chain[];
  readonly derivations: readonly Derivation[];
  readonly curves?: readonly Curve[];
  /** Words' ids of the assembly steps, tests and cautions that this fitting asks for, with what they are told. */
  readonly assembly: readonly Say[];
  readonly tests: readonly Say[];
  readonly cautions: readonly Say[];
  readonly arrangement?: Arrangement;
};
