/**
 * The proof of the day: it is gone through entry by entry with one spindle, told only what each set-up is held by. What a hold trusts must
 * stand there as it was cut: tooling made in place, or jaws bored for it, runs true no longer once anything else was held. And what one part
 * waits for of another is there by then. It asks neither how the day was found nor what it costs.
 */
import type { Claim, DayProof } from '../model/plan.ts';
import { acrossClaims } from './prove-day/across.ts';
import type { ProvedDay } from './prove-day/asked.ts';
import { chuckClaims } from './prove-day/chuck.ts';

/** Claims hold or fail; none is left out because another one failed. */
export function proveDay(day: ProvedDay): DayProof {
  const claims: readonly Claim[] = [...chuckClaims(day), ...acrossClaims(day)];
  return { claims, holds: claims.every((one) => one.holds) };
}
