/** The candidates of a part with those methods alone in which a process of one's choice makes what an operation makes. */
import type { OpId } from '../../model/ids.ts';
import type { Candidates, Method, Operation, Route, Verb } from '../../model/plan.ts';

/** Undefined where there is no such method. */
export function madeBy(c: Candidates, route: Route, operation: OpId, verb: Verb): Candidates | undefined {
  const method = route.chosen.find((one) => one.operations.some((each) => each.id === operation));
  const makes = method?.operations.flatMap((one) => (one.id === operation ? madeIn(one) : [])) ?? [];
  const does = (one: Operation): boolean => one.verb === verb && madeIn(one).some((surface) => makes.includes(surface));
  const liked = (one: Method): boolean => one.feature !== method?.feature || one.operations.some(does);
  const methods = c.methods.map(({ feature, any }) => ({ feature, any: any.filter(liked) }));
  return methods.every(({ any }) => any.length > 0) ? { ...c, methods } : undefined;
}

const madeIn = ({ ways }: Operation): readonly string[] =>
  [ways.first, ways.second].flatMap((way) => way?.cuts.map((cut) => cut.makes) ?? []);
