/** What is known while a route is walked for what it takes away, and what comes of it. */
import type { Len } from '../base/units.ts';
import type { Profile } from '../geometry/profile.ts';
import type { End, SurfaceId } from '../model/ids.ts';
import type { Part } from '../model/part.ts';
import type { Operation, SetUp, Way, Working } from '../model/plan.ts';
import type { Beam } from './give.ts';

/** Of one operation. */
export type Removal = {
  readonly operation: Operation;
  readonly setUp: SetUp;
  readonly way: Way;
  /** Taken off the diameter, or along z by a facing cut; absent where the operation takes nothing so measured. */
  readonly stock?: { readonly measures: 'diameter' | 'length'; readonly amount: Len };
  /** The largest diameter that is cut: the speed is reckoned on it. */
  readonly diameter?: Len;
  /** Of cuts inward that stop at a diameter: so much of it they take away. */
  readonly inward?: Len;
  /** The diameter that the tool touches first: where its dial is set to nought. */
  readonly touch?: Len;
  /** What still stands on the end face in use, over the drawing: depths that count from it are so much more. */
  readonly stands?: Len;
  /** From the end face to the shoulder that stops the tool; of a parting blade, to its farther side. */
  readonly along?: Len;
  /** How the work stands out, with the tool at its farthest place. */
  readonly beam?: Beam;
  /** The same while it is only so far turned down, on diameter. */
  readonly beamAt?: (across: Len) => Beam | undefined;
  /** A hole's depth at full diameter, from the face of the end in use as it stands. */
  readonly depth?: Len;
  /** How much of that a hole as wide, or wider, has opened before: a drill begins to cut there. */
  readonly open?: Len;
  /** Where a drill stopped short of the floor: over the last `long`, so much more is to come off the diameter, and it is taken first. */
  readonly narrow?: { readonly long: Len; readonly amount: Len };
  /** Of a thread: how far its tool can go on past it before it meets metal; absent where it comes out. */
  readonly room?: Len;
  /** It goes on past the far face. */
  readonly through?: true;
  /** And nothing is left before its point there: no bar, no stub. */
  readonly comesOut?: true;
  /** A branch stands on the work. */
  readonly branched: boolean;
};

export type State = {
  readonly part: Part;
  readonly working: ReadonlyMap<string, Working>;
  readonly outs: Removal[];
  profile: Profile;
  /** Where either end of the metal is now; a raw end is not known until it is faced. */
  readonly ends: Map<End, Len>;
  readonly places: Map<SurfaceId, Len>;
  /** By hole, how far its drill went at full diameter. */
  readonly drilled: Map<SurfaceId, number>;
  branched: boolean;
};
