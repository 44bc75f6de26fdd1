/** Change wheels for a thread on this lathe: the best train that its box and banjo allow, and whether the thread bears its error. */
import { type Len, len } from '../base/units.ts';
import { reachOf, USUAL_REACH } from '../handbook/gear-reach.ts';
import { halfNutsFor } from '../handbook/half-nuts.ts';
import { type LeadError, leadError, longestEngagement } from '../handbook/lead-error.ts';
import { bestTrain, type Lead, leadOf, perInch, type Scored, secondIdler, type TrainAsk } from '../handbook/trains.ts';
import type { ThreadSize } from '../model/part.ts';
import type { WheelsUsed } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';

export type Lathe = Workshop['lathe'];
/** `length`: of full thread. */
export type WheelsAsk = { readonly thread: ThreadSize; readonly length: Len };
/** The nearest train where none will do; nothing where the box makes no train at all. */
export type NoWheels = {
  readonly nearest?: { readonly scored: Scored; readonly lead: LeadError };
  /** It is a left-hand thread, and nothing turns the leadscrew the other way. */
  readonly wayRound?: 'one only';
};

/** The wheels to use, or why there are none. */
export function wheelsFor(lathe: Lathe, ask: WheelsAsk): { readonly wheels: WheelsUsed } | { readonly none: NoWheels } {
  const scored = bestTrain(trainAsk(lathe, ask.thread));
  if (!scored) return { none: {} };
  const engaged = engagedOf(ask);
  const { lo, hi } = ask.thread.pitchDiameter;
  const tolerance = len(hi - lo);
  const lead = leadError({ error: scored.off / scored.by, engaged, flankAngle: ask.thread.flankAngle, tolerance });
  if (!lead.bearable) return { none: { nearest: { scored, lead } } };
  if (ask.thread.hand === 'left' && leftBy(lathe, scored) === 'none') return { none: { wayRound: 'one only' } };
  return { wheels: wheelsOf(lathe, ask.thread, scored, { engaged, off: lead.off, acts: lead.acts, tolerance }) };
}

function trainAsk(lathe: Lathe, thread: ThreadSize): TrainAsk {
  return {
    gears: lathe.gears,
    reach: lathe.banjo ? reachOf(lathe.banjo) : USUAL_REACH,
    leadscrew: leadscrewOf(lathe),
    pitch: pitchOf(thread),
  };
}

/** Exact for an inch leadscrew whose threads an inch are known. */
export function leadscrewOf({ leadscrew, leadscrewPerInch }: Pick<Lathe, 'leadscrew' | 'leadscrewPerInch'>): Lead {
  return leadscrewPerInch === undefined ? leadOf(leadscrew) : perInch(leadscrewPerInch);
}

const pitchOf = (thread: ThreadSize): Lead => (thread.perInch === undefined ? leadOf(thread.pitch) : perInch(thread.perInch));

/** No nut is engaged over more than the thread's length, nor over more than the longest normal engagement. */
function engagedOf({ thread, length }: WheelsAsk): Len {
  return len(Math.min(length, longestEngagement(thread.major.hi, thread.pitch)));
}

function wheelsOf(lathe: Lathe, thread: ThreadSize, scored: Scored, over: NonNullable<WheelsUsed['over']>): WheelsUsed {
  const { threadingDial, halfNuts } = lathe;
  const nuts = halfNutsFor({
    leadscrew: leadscrewOf(lathe),
    pitch: pitchOf(thread),
    exact: scored.off === 0,
    ...(threadingDial ? { dial: threadingDial } : {}),
    ...(halfNuts === undefined ? {} : { halfNuts }),
  });
  const { by, ...dial } = nuts;
  return {
    ...scored.train,
    error: scored.off / scored.by,
    ...(scored.off === 0 ? {} : { over }),
    halfNuts: by,
    ...('wheel' in dial ? { dial } : {}),
    ...(thread.hand === 'left' ? { leftBy: leftBy(lathe, scored) } : {}),
  };
}

function leftBy(lathe: Lathe, { train }: Scored): NonNullable<WheelsUsed['leftBy']> {
  return lathe.tumbler === true ? 'tumbler' : (secondIdler(lathe.gears, train) ?? 'none');
}
