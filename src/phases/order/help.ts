/** Where nothing finishes: each refused candidate allowed in turn, and two at a time if none does. */
import type { Candidates, NoRoute, Refusal } from '../../model/plan.ts';
import { combinations } from './combinations.ts';
import { problemsOf } from './problem.ts';
import { searchWork } from './search.ts';
import { workOf } from './space.ts';

const STATE_LIMIT = 1e5;
const FIRST_WIDTH = 1e2;

/** The single changes that would make the job possible; where there is none, the pairs that would. */
export function changesThatHelp(c: Candidates): Pick<NoRoute, 'wouldHelp' | 'wouldHelpPairs'> {
  const allowed = c.refused.filter((r) => r.would !== undefined);
  const helps = (changes: readonly Refusal[]): boolean => isPossible(changes.reduce(allow, c));
  const wouldHelp = allowed.filter((r) => helps([r]));
  if (wouldHelp.length > 0) return { wouldHelp };
  const pairs = allowed.flatMap((a, i) => allowed.slice(i + 1).map((b) => [a, b] as const));
  return { wouldHelp, wouldHelpPairs: pairs.filter(([a, b]) => idOf(a) !== idOf(b) && helps([a, b])) };
}

/** One thing may be refused for two reasons. */
function idOf({ would }: Refusal): string {
  if (!would) return '';
  return 'grip' in would ? would.grip.id : `${would.method.feature} ${would.method.name}`;
}

function allow(c: Candidates, { would }: Refusal): Candidates {
  if (!would) return c;
  if ('grip' in would) return { ...c, grips: [...c.grips, would.grip] };
  const { method } = would;
  const others = c.methods.filter((m) => m.feature !== method.feature);
  const any = c.methods.find((m) => m.feature === method.feature)?.any ?? [];
  return { ...c, methods: [...others, { feature: method.feature, any: [...any, method] }] };
}

/** Is there any order at all? The narrow run mostly finds one. */
function isPossible(c: Candidates): boolean {
  const problem = problemsOf(c);
  return combinations(c).some((methods) => {
    const work = workOf(problem(methods));
    const limits = { states: STATE_LIMIT, atMost: Number.POSITIVE_INFINITY };
    const first = searchWork(work, () => 0, { ...limits, width: FIRST_WIDTH });
    if (first.found || first.exact) return first.found !== undefined;
    return searchWork(work, () => 0, { ...limits, width: Number.POSITIVE_INFINITY }).found !== undefined;
  });
}
