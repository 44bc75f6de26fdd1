/** Work that lies in a vee-block under the drill press: by a plain stretch of itself, long enough to lie steady, and nothing kept. */
import { len, mm, toMm } from '../../base/units.ts';
import type { Step } from '../../geometry/replay.ts';
import { throughs } from '../../geometry/section/ask.ts';
import { practice } from '../../handbook/practice.ts';
import type { Claim } from '../../model/plan.ts';
import { type Case, claim, short, show } from './claims.ts';
import { isKept } from './grip.ts';

export function veeClaims(asked: Case, { operation, before }: Step): readonly Claim[] {
  const { lies } = operation;
  if (!lies) return [];
  const under = throughs(before).flatMap(({ slab, outer }) => {
    const long = Math.min(slab.to, lies.to) - Math.max(slab.from, lies.from);
    return long > 0 && outer.line.slope === 0 ? [{ long, across: outer.line.d, surface: outer.mark.surface }] : [];
  });
  const across = Math.max(0, ...under.map((one) => one.across));
  const lain = under.filter((one) => one.across === across);
  const has = lain.reduce((sum, one) => sum + one.long, 0);
  const wants = Math.max(mm(toMm(len(Math.round(across))) * practice.value('vee.ratio')), mm(practice.value('vee.least')));
  const kept = lain.find((one) => isKept(asked, before, one.surface));
  const reason = has === 0 ? 'nothing' : kept ? 'kept' : has < wants ? 'short' : '';
  const grounds = {
    hold: short(asked.part.id, operation.id),
    kind: 'vee',
    ...{ has: show(has), wants: show(wants), diameter: show(across), surface: short(asked.part.id, kept?.surface ?? '') },
    ...{ out: '', most: '', reason, corner: '' },
  };
  return [claim('grip', operation.id, reason === '', grounds, operation.id)];
}
