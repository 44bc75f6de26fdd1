/** What has to be minded over the whole sheet: what the fitting brings with it, and the dangers of the work that its plan has in fact. */
import type { Say } from '../../model/part.ts';
import type { Plan, Verb } from '../../model/plan.ts';

/** Dangers of one kind of work: only where that is done. */
const OF_WORK: readonly { readonly id: string; readonly verbs: readonly Verb[] }[] = [
  { id: 'caution.parting', verbs: ['part-off', 'cut-stub'] },
  { id: 'caution.hardening', verbs: ['harden'] },
];

/** In the fitting's order; what its tooling adds stands after the last of those at the lathe that the fitting names, else last. */
export function dangersOf(plan: Plan): readonly Say[] {
  const verbs = new Set(
    plan.parts.flatMap(({ route }) => {
      const done = new Set(route.setUps.flatMap((setUp) => setUp.operations));
      return route.chosen.flatMap((method) => method.operations).flatMap((op) => (done.has(op.id) ? [op.verb] : []));
    }),
  );
  const asked = plan.fitting.cautions;
  const [absent, present] = [false, true].map((is) => OF_WORK.filter((one) => one.verbs.some((verb) => verbs.has(verb)) === is));
  const left = asked.filter(({ id }) => !absent?.some((one) => one.id === id));
  const added = (present ?? []).filter(({ id }) => !asked.some((one) => one.id === id)).map(({ id }): Say => ({ id, grounds: {} }));
  const after = left.findLastIndex(({ id }) => AT_LATHE.includes(id)) + 1;
  return after === 0 ? [...left, ...added] : [...left.slice(0, after), ...added, ...left.slice(after)];
}
const AT_LATHE: readonly string[] = ['caution.lathe', 'caution.bar', 'caution.parting'];
