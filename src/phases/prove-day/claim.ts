/** A claim of the day. */
import type { OpId } from '../../model/ids.ts';
import type { Claim, Grounds } from '../../model/plan.ts';

type DayKind = Extract<Claim['kind'], 'stays in the chuck' | 'order of the day'>;

export function claim(kind: DayKind, about: string, holds: boolean, grounds: Grounds, at?: OpId): Claim {
  return { kind, about, holds, grounds, ...(at === undefined ? {} : { at }) };
}
