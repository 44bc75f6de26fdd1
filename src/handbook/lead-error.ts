/**
 * What an error of the pitch does to a thread: over the length that is engaged it adds up, and the flanks turn it into pitch diameter:
 * e = δp cot a, a half the flank angle (1.732 δp for 60 degrees, 1.921 for 55). It may have half of the thread's own tolerance.
 */
import { type Len, len, toMm } from '../base/units.ts';
import { type FactTable, factTable } from './fact.ts';
import { cite } from './sources.ts';

export type LeadErrorAsk = {
  /** Signed fraction of the pitch. */
  readonly error: number;
  readonly engaged: Len;
  /** degrees, included */
  readonly flankAngle: number;
  /** The whole tolerance of the pitch diameter. */
  readonly tolerance: Len;
};
export type LeadError = {
  /** Over the engaged length. */
  readonly off: Len;
  /** How much larger an outside thread acts, an inside one smaller. */
  readonly acts: Len;
  /** Of the pitch diameter's tolerance. */
  readonly share: number;
  readonly bearable: boolean;
};

export function leadError({ error, engaged, flankAngle, tolerance }: LeadErrorAsk): LeadError {
  const off = Math.abs(error) * engaged;
  const acts = off * flankFactor(flankAngle);
  const share = acts / tolerance;
  return { off: len(Math.round(off)), acts: len(Math.round(acts)), share, bearable: share <= leadTable.value('share.most') };
}

/** Pitch diameter for an error of the lead. */
export function flankFactor(flankAngle: number): number {
  return leadTable.value('flank') / Math.tan((flankAngle / 2) * (Math.PI / 180));
}

/** The longest engagement that counts as normal: 6.7 P d^0.2, mm. */
export function longestEngagement(nominal: Len, pitch: Len): Len {
  const [factor, power] = [leadTable.value('engaged.factor'), leadTable.value('engaged.power')];
  return len(Math.round(factor * pitch * toMm(nominal) ** power));
}

export const leadTable: FactTable = factTable([
  {
    id: 'flank',
    value: 1,
    unit: 'ratio',
    what: 'pitch diameter for an error of the pitch, times the cotangent of half the flank angle',
    source: cite('pitch-error'),
    standing: 'derived',
  },
  {
    id: 'share.most',
    value: 0.5,
    unit: 'ratio',
    what: "of the pitch diameter's tolerance, that the pitch's error may use up",
    source: cite('custom'),
    standing: 'common practice',
  },
  {
    id: 'engaged.factor',
    value: 6.7,
    unit: 'ratio',
    what: 'longest normal engagement: times P d^0.2',
    source: cite('iso-965-1-rest', 'normal length of engagement'),
    standing: 'from memory',
  },
  {
    id: 'engaged.power',
    value: 0.2,
    unit: 'ratio',
    what: 'longest normal engagement: power of the diameter in mm',
    source: cite('iso-965-1-rest', 'normal length of engagement'),
    standing: 'from memory',
  },
]);
