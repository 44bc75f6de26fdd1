/** The shape of a rule. `when` finds the grounds; `then` may use nothing else. Words (title, why, otherwise) live in templates by id. */
import type { RuleId } from '../model/ids.ts';
import type { Feature } from '../model/part.ts';
import type { Before, Grip, Method, Operation, Refusal } from '../model/plan.ts';
import type { Context } from './context.ts';

export const CUSTOM = 'common practice, no source';

/** Offers a way to make a feature, or refuses it with the figures. */
export type MethodRule = { readonly id: RuleId; readonly source: string; offer(c: Context, feature: Feature): Offer };
export type Offer = { readonly methods?: readonly Method[]; readonly refused?: readonly Refusal[] };

export function methodRule<G>(rule: {
  readonly id: RuleId;
  readonly source: string;
  when(c: Context, feature: Feature): G | undefined;
  then(grounds: G, c: Context): Offer;
}): MethodRule {
  return {
    id: rule.id,
    source: rule.source,
    offer(c, feature) {
      const grounds = rule.when(c, feature);
      return grounds === undefined ? {} : rule.then(grounds, c);
    },
  };
}

/** Everything that may be done to a part, whichever methods are chosen in the end. */
export type Work = { readonly c: Context; readonly operations: readonly Operation[]; readonly methods: readonly Method[] };
export type Pair = Pick<Before, 'first' | 'then' | 'when'> & { readonly grounds?: Before['because']['grounds'] };
export type BeforeRule = {
  readonly id: RuleId;
  readonly source: string;
  readonly force: Before['force'];
  pairs(work: Work): readonly Pair[];
};

/** Offers a hold, or refuses it with the figures and the hold that it would have been. */
export type GripRule = {
  readonly id: RuleId;
  readonly source: string;
  offer(work: Work): { readonly grips: readonly Grip[]; readonly refused: readonly Refusal[] };
};
