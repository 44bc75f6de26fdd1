/** Holds that the proof finds too short at the worst limits: where no plan does without them they are refused, with what they have and want. */
import { mm } from '../../base/units.ts';
import type { Candidates, Claim, PlannedPart, Refusal } from '../../model/plan.ts';

/** The same candidates with those holds among the refused; nothing where the proof refuses anything else besides. */
export function withoutShortHolds(c: Candidates, { proof }: Pick<PlannedPart, 'proof'>): Candidates | undefined {
  const failing = proof.claims.filter((one) => !one.holds);
  if (failing.length === 0 || !failing.every(isShort)) return undefined;
  const refused = failing.flatMap((one) => refusalOf(c, one));
  const short = new Set(refused.map((one) => one.what));
  return { ...c, grips: c.grips.filter((grip) => !short.has(grip.id)), refused: [...c.refused, ...refused] };
}

const isShort = ({ kind, grounds }: Claim): boolean => kind === 'grip' && grounds.reason === 'short';

function refusalOf(c: Candidates, { about, grounds }: Claim): readonly Refusal[] {
  const grip = c.grips.find((one) => one.id === about);
  const [has, wants] = [mm(Number(grounds.has)), mm(Number(grounds.wants))];
  return grip ? [{ what: about, because: { rule: 'short-at-limits', grounds: {} }, has, wants, would: { grip } }] : [];
}
