/** What is drilled from the side of round work is drilled in a vee-block; how that holds it is judged as any hold is. */
import type { Step } from '../../geometry/replay.ts';
import type { Claim } from '../../model/plan.ts';
import { type Case, claim, short } from './claims.ts';

export function veeClaims({ part }: Case, { operation, setUp }: Step): readonly Claim[] {
  if (!operation.lies) return [];
  const lies = setUp.grip.kind === 'vee-block';
  const grounds = { operation: short(part.id, operation.id), hold: short(part.id, setUp.grip.id), reason: lies ? '' : 'rolls', corner: '' };
  return [claim('held', operation.id, lies, grounds, operation.id)];
}
