/** The best order for one part: every combination of its methods through the exact search; or why there is none and what would help. */
import type { Candidates, Grip, Method, NoRoute, Operation, Refusal, Route, SetUp } from '../model/plan.ts';
import type { Workshop } from '../model/workshop.ts';
import { compareKeys, contextOf, gripKey, operationKey } from '../rules/likes.ts';
import { type Problem, problemOf } from './order/problem.ts';
import { BENCH, costOf, type Found, type Likes, type Step, search } from './order/search.ts';

const STATE_LIMIT = 1e6 / 2;
const FIRST_WIDTH = 100;

export type OrderOutcome = { readonly route?: Route; readonly none?: NoRoute };

export function order(c: Candidates, workshop: Workshop): OrderOutcome {
  const best = bestOf(withHabit(c, workshop), workshop, []) ?? bestOf(c, workshop, []);
  if (best) return { route: routeOf(c, best) };
  const bare = c.methods.filter((m) => m.any.length === 0).map((m) => m.feature);
  return { none: { part: c.part.id, refused: c.refused, wouldHelp: bare.length > 0 ? [] : wouldHelp(c, workshop), stuck: bare } };
}

/** A habit of which end comes first leaves out the other ways off the bar; where none of those finishes, the habit gives way. */
function withHabit(c: Candidates, workshop: Workshop): Candidates {
  const end = workshop.habits.firstEnd[c.part.id];
  if (!end) return c;
  const liked = (m: Method): boolean =>
    m.operations.every((o) => (o.verb !== 'part-off' && o.verb !== 'saw-off') || o.ways[end] !== undefined);
  return { ...c, methods: c.methods.map((f) => ({ ...f, any: f.any.filter(liked) })) };
}

type Best = {
  readonly problem: Problem;
  readonly found: Found;
  readonly states: number;
  readonly exact: boolean;
  readonly runnersUp: Route['runnersUp'];
};

function bestOf(c: Candidates, workshop: Workshop, extra: readonly Grip[]): Best | undefined {
  const context = contextOf(c.part, workshop);
  let best: Best | undefined;
  let states = 0;
  let exact = true;
  const finals: { readonly grips: readonly string[]; readonly cost: number }[] = [];
  for (const methods of combinations(c)) {
    const problem = problemOf(c, methods, extra);
    const found = searchOne(problem, likesOf(context, problem), best?.found.cost ?? Number.POSITIVE_INFINITY);
    if (!found) continue;
    states += found.states;
    exact &&= found.exact;
    finals.push(...found.finals.map((f) => ({ grips: f.grips.map((g) => problem.grips[g]?.grip.id ?? ''), cost: f.cost })));
    if (!best || found.cost < best.found.cost) best = { problem, found, states, exact, runnersUp: [] };
  }
  return best && { ...best, states, exact, runnersUp: runnersUp(finals, best) };
}

/** A narrow run gives the bound for the whole one. */
function searchOne(problem: Problem, likes: Likes, atMost: number): Found | undefined {
  const first = search(problem, likes, { states: STATE_LIMIT, atMost: Number.POSITIVE_INFINITY, width: FIRST_WIDTH });
  if (first?.exact) return first;
  const bound = Math.min(first?.cost ?? Number.POSITIVE_INFINITY, Math.max(atMost, first?.cost ?? 0));
  return search(problem, likes, { states: STATE_LIMIT, atMost: bound, width: Number.POSITIVE_INFINITY }) ?? first;
}

/** One method for each feature; what a method covers needs none of its own. */
function combinations(c: Candidates): readonly (readonly Method[])[] {
  let all: (readonly Method[])[] = [[]];
  for (const { any } of c.methods) all = all.flatMap((chosen) => any.map((m) => [...chosen, m]));
  return all
    .map((chosen) => {
      const covered = new Set(chosen.flatMap((m) => m.covers ?? []));
      return chosen.filter((m) => !covered.has(m.feature));
    })
    .filter((chosen, i, list) => list.findIndex((other) => sameMethods(other, chosen)) === i);
}

const sameMethods = (a: readonly Method[], b: readonly Method[]): boolean => a.length === b.length && a.every((m, i) => m === b[i]);

function likesOf(context: ReturnType<typeof contextOf>, problem: Problem): Likes {
  const ops = problem.operations.map((o) => operationKey(context, o));
  const grips = problem.grips.map((g) => gripKey(g.grip));
  const gripOf = (s: Step): readonly number[] => grips[s.grip] ?? gripKey(undefined);
  return (a, b) => compareKeys(gripOf(a), gripOf(b)) || compareKeys(ops[a.op] ?? [], ops[b.op] ?? []);
}

function runnersUp(finals: readonly { readonly grips: readonly string[]; readonly cost: number }[], best: Best): Route['runnersUp'] {
  const chosen = best.found.finals[0]?.grips.map((g) => best.problem.grips[g]?.grip.id ?? '').join();
  const byHold = new Map<string, { readonly grips: readonly string[]; readonly cost: number }>();
  for (const f of finals) {
    const known = byHold.get(f.grips.join());
    if (f.grips.join() !== chosen && (!known || f.cost < known.cost)) byHold.set(f.grips.join(), f);
  }
  return [...byHold.values()].sort((a, b) => a.cost - b.cost).map((f) => ({ grips: f.grips, cost: costOf(f.cost) }));
}

function routeOf(c: Candidates, best: Best): Route {
  const { problem, found } = best;
  const doneBefore = new Map(found.steps.map((s, i) => [problem.operations[s.op]?.id ?? '', i]));
  const late = (first: string, then: string): boolean => (doneBefore.get(first) ?? 0) > (doneBefore.get(then) ?? 0);
  return {
    part: c.part.id,
    setUps: setUpsOf(c, problem, found.steps),
    chosen: problem.methods,
    cost: costOf(found.cost),
    asGood: found.orders.toString(),
    proved: best.exact ? 'best' : 'best found within the limit',
    states: best.states,
    runnersUp: best.runnersUp,
    refused: c.refused,
    befores: problem.befores,
    broken: problem.befores.filter((b) => b.force === 'preferred' && late(b.first, b.then)),
  };
}

function setUpsOf(c: Candidates, problem: Problem, steps: readonly Step[]): readonly SetUp[] {
  const setUps: { readonly no: number; readonly grip: Grip; readonly operations: string[] }[] = [];
  let last: number | undefined;
  let no = 0;
  for (const step of steps) {
    const op = problem.operations[step.op];
    if (!op) continue;
    if (step.grip !== last) {
      const grip = problem.grips[step.grip]?.grip ?? benchGrip(c);
      if (step.grip !== BENCH) no += 1;
      setUps.push({ no: step.grip === BENCH ? 0 : no, grip: settled(grip, problem.operations), operations: [] });
    }
    setUps.at(-1)?.operations.push(op.id);
    last = step.grip;
  }
  return setUps;
}

/** A grip's lists, cut down to the operations that this route has. */
function settled(grip: Grip, operations: readonly Operation[]): Grip {
  const here = new Set(operations.map((o) => o.id));
  const only = (ids: readonly string[]): readonly string[] => ids.filter((id) => here.has(id));
  return { ...grip, ready: only(grip.ready), gone: only(grip.gone), hides: only(grip.hides) };
}

function benchGrip(c: Candidates): Grip {
  return {
    id: `${c.part.id}/bench`,
    kind: 'bench',
    out: 'first',
    on: [],
    from: c.part.length,
    to: c.part.length,
    diameter: c.part.length,
    ready: [],
    gone: [],
    hides: [],
    lightOnly: false,
    runout: c.part.length,
    because: [],
  };
}

/** Each refused hold allowed in turn: those that let the search finish are the single changes that would help. */
function wouldHelp(c: Candidates, workshop: Workshop): readonly Refusal[] {
  return c.refused.filter((r) => r.would && 'grip' in r.would && bestOf(c, workshop, [r.would.grip]) !== undefined);
}
