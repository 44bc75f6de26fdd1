/** Small helpers that every kind of claim is made with. */
import { type Len, len, mm, showMm } from '../../base/units.ts';
import { proving } from '../../handbook/proving.ts';
import type { OpId, PartId } from '../../model/ids.ts';
import type { Part } from '../../model/part.ts';
import type { Chart, Claim, ClaimKind, Figures, Grounds, Route } from '../../model/plan.ts';
import type { Workshop } from '../../model/workshop.ts';

/** What is judged. `figures`: where they are there, their speeds are judged too. */
export type Case = {
  readonly part: Part;
  readonly route: Route;
  readonly chart: Chart;
  readonly workshop: Workshop;
  readonly figures?: readonly Figures[];
};

export function claim(kind: ClaimKind, about: string, holds: boolean, grounds: Grounds, at?: OpId): Claim {
  return { kind, about, holds, grounds, ...(at === undefined ? {} : { at }) };
}

/** Doubles to whole units; what lies within half a unit of a limit is on it. */
export const whole = (units: number): Len => len(Math.round(units));
export const show = (units: number): string => showMm(whole(units));
export const figure = (id: string): Len => mm(proving.value(id));
/** A surface's or operation's own name within its part. */
export const short = (part: PartId, id: string): string => (id.startsWith(`${part}/`) ? id.slice(part.length + 1) : id);
