/** Damage of every kind to every spec's plan: each is refused by the claim that should refuse it. */
import { describe, expect, it } from 'vitest';
import { prove } from '../../src/phases/prove.ts';
import { DAMAGES, type Damaged } from '../fixtures/damage.ts';
import { everyPlan, provedOf } from '../fixtures/every-plan.ts';

/** The least number of kinds that each spec is tried with. */
const LEAST = 14;

/** Empty when it is refused as it should be; else what the proof said instead. */
function accepted({ asked, by, about }: Damaged): string {
  const failed = prove(asked).claims.filter((claim) => !claim.holds);
  const right = failed.filter((claim) => by.includes(claim.kind) && (about === undefined || claim.about === about));
  return right.length > 0
    ? ''
    : `wanted ${by.join(' or ')}${about ? ` about ${about}` : ''}; failed: ${failed.map((c) => `${c.kind} ${c.about}`).join(', ')}`;
}

/** Valves share parts (nuts, nipples, branches, mandrels): a part that an earlier spec had by the same name is not tried again. */
const firstMet = new Map<string, string>();
for (const { spec, plan } of everyPlan) for (const { part } of plan.parts) if (!firstMet.has(part.id)) firstMet.set(part.id, spec);

describe('sabotage', () => {
  it.each(everyPlan.map(({ spec, plan }) => [spec, plan] as const))('%s', (spec, plan) => {
    const tried = new Set<string>();
    const wrong = plan.parts.flatMap((planned, i) => {
      if (i > 0 && firstMet.get(planned.part.id) !== spec) return [];
      const sound = provedOf(plan, planned);
      return DAMAGES.flatMap(({ kind, spoil }) => {
        const damaged = spoil(sound);
        if (!damaged) return [];
        tried.add(kind);
        const said = accepted(damaged);
        return said === '' ? [] : [`${planned.part.id}, ${kind}: ${said}`];
      });
    });
    expect(wrong).toEqual([]);
    expect(tried.size).toBeGreaterThanOrEqual(LEAST);
  });
  it('every kind has been tried on some spec', () => {
    const parts = everyPlan.flatMap(({ plan }) => plan.parts.map((planned) => provedOf(plan, planned)));
    expect(DAMAGES.filter(({ spoil }) => !parts.some((sound) => spoil(sound))).map((one) => one.kind)).toEqual([]);
  });
});
