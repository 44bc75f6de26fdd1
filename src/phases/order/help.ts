/** Where nothing finishes: each refused candidate allowed in turn, all that one tool would allow, and two at a time if no single one does. */
import type { Candidates, NoRoute, Refusal } from '../../model/plan.ts';
import type { Handling } from '../../rules/handling.ts';
import { combinations } from './combinations.ts';
import { problemsOf } from './problem.ts';
import { searchWork } from './search.ts';
import { workOf } from './space.ts';

const STATE_LIMIT = 1e5;
const FIRST_WIDTH = 1e2;

type Help = Pick<NoRoute, 'wouldHelp' | 'wouldHelpByOne' | 'wouldHelpPairs'>;

/** The single changes that would make the job possible, one tool for several features among them; where there is none, the pairs that would. */
export function changesThatHelp(c: Candidates, takes: Handling): Help {
  const allowed = [...c.refused, ...(c.asked ?? [])].filter((r) => r.would !== undefined);
  const helps = (changes: readonly Refusal[]): boolean => isPossible(changes.reduce(allow, c), takes);
  const wouldHelp = allowed.filter((r) => helps([r]));
  const byOne = byTool(allowed)
    .filter((all) => !all.some((r) => wouldHelp.includes(r)) && helps(all))
    .map((all) => needed(all, helps));
  const found = { wouldHelp, ...(byOne.length > 0 ? { wouldHelpByOne: byOne } : {}) };
  if (wouldHelp.length > 0) return found;
  const pairs = allowed.flatMap((a, i) => allowed.slice(i + 1).map((b) => [a, b] as const));
  return { ...found, wouldHelpPairs: pairs.filter(([a, b]) => idOf(a) !== idOf(b) && helps([a, b])) };
}

/** Refusals for want of one and the same tool, where it is wanted more than once. */
function byTool(refused: readonly Refusal[]): readonly (readonly Refusal[])[] {
  const lacking = new Map<string, Refusal[]>();
  for (const r of refused) if (r.lacks !== undefined) lacking.set(r.lacks, [...(lacking.get(r.lacks) ?? []), r]);
  return [...lacking.values()].filter((all) => all.length > 1);
}

/** Without those that are made in another way as well. */
function needed(all: readonly Refusal[], helps: (some: readonly Refusal[]) => boolean): readonly Refusal[] {
  return all.reduce((left, r) => {
    const rest = left.filter((other) => other !== r);
    return helps(rest) ? rest : left;
  }, all);
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
function isPossible(c: Candidates, takes: Handling): boolean {
  const problem = problemsOf(c, takes);
  return combinations(c).some((methods) => {
    const work = workOf(problem(methods));
    const limits = { states: STATE_LIMIT, atMost: Number.POSITIVE_INFINITY };
    const first = searchWork(work, () => 0, { ...limits, width: FIRST_WIDTH });
    if (first.found || first.exact) return first.found !== undefined;
    return searchWork(work, () => 0, { ...limits, width: Number.POSITIVE_INFINITY }).found !== undefined;
  });
}
