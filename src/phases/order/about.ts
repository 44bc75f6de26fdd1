/** Which feature a part without an order fails at: what no method makes, what no hold lets be made, or else what a single change would be about. */
import type { FeatureId } from '../../model/ids.ts';
import type { Feature, Part } from '../../model/part.ts';
import type { Candidates, Grip, NoRoute, Operation } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';

/** Nothing where it is the order of all of it, and no one thing; nor for tooling, which nobody wrote down. */
export function failsAt(c: Candidates, help: Pick<NoRoute, 'wouldHelp'>): Pick<NoRoute, 'about'> {
  const id = c.part.use === 'fitting' ? featureAt(c, help) : undefined;
  const feature = c.part.features.find((one) => one.id === id);
  if (!feature) return {};
  const [own = ''] = feature.id.slice(c.part.id.length + 1).split('.');
  const end = c.part.features.find((one) => one.kind === 'end' && one.id === `${c.part.id}/${own}`);
  return { about: { feature: own, ...(end?.kind === 'end' ? { end: end.end } : {}), ...(isSlot(feature) ? { slot: true } : {}) } };
}

/** It is called after the end that it goes across. */
const isSlot = (feature: Feature): boolean => feature.kind === 'side' && feature.does === 'slot';

function featureAt(c: Candidates, { wouldHelp }: Pick<NoRoute, 'wouldHelp'>): FeatureId | undefined {
  const known = new Set(c.part.features.map(({ id }) => id));
  const bare = c.methods.find(({ any, feature }) => any.length === 0 && known.has(feature));
  if (bare) return bare.feature;
  const made = (o: Operation): boolean => c.grips.some((grip) => doneIn(o, grip));
  const unheld = c.methods.find(({ any, feature }) => known.has(feature) && any.every(({ operations }) => !operations.every(made)));
  return unheld?.feature ?? wouldHelp.map(({ what }) => featureIn(c.part, what)).find((one) => one !== undefined);
}

/** As far as that hold goes: what must stand before, or be still there, is not asked. */
function doneIn({ ways, id, light }: Operation, grip: Grip): boolean {
  const way = isOffLathe(grip) ? ways.bench : ways[grip.out];
  return ways.bench !== undefined || (way !== undefined && !grip.hides.includes(id) && (light || !grip.lightOnly));
}

/** A refusal names a hold or a method by its feature: 'part/feature.hold.end', 'part/feature/step'. */
function featureIn({ features }: Part, what: string): FeatureId | undefined {
  return features
    .map(({ id }) => id)
    .filter((id) => what === id || what.startsWith(`${id}.`) || what.startsWith(`${id}/`))
    .sort((a, b) => b.length - a.length)[0];
}
