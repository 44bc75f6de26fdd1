/** Every combination of a part's methods through the search, the most promising first, and the best of all. */
import type { Shelf } from '../../base/layers.ts';
import type { Candidates, Grip, Operation, Route } from '../../model/plan.ts';
import type { Workshop } from '../../model/workshop.ts';
import type { Context } from '../../rules/context.ts';
import { handlingOf } from '../../rules/handling.ts';
import { compareKeys, contextOf, gripKey, operationKey } from '../../rules/likes.ts';
import { combinations } from './combinations.ts';
import { costOf, horizonOf } from './costs.ts';
import { withoutDominated } from './dominated.ts';
import { type Problem, problemsOf } from './problem.ts';
import { type Found, type Likes, type Searched, searchWork } from './search.ts';
import { BENCH, type Step, type Work, workOf } from './space.ts';

const STATE_LIMIT = 1e6 / 2;
/** States spent on knowing other holds as well as the best; past it the best alone is sought. */
const STATES_FOR_OTHERS = 1e5;
const FIRST_WIDTH = 1e2;
const LIMIT_WIDTH = 2;

export type Best = {
  readonly problem: Problem;
  readonly found: Found;
  /** Of all combinations that cost as little. */
  readonly orders: bigint;
  readonly states: number;
  readonly exact: boolean;
  /** No order of any combination costs less. */
  readonly atLeast: number;
  readonly runnersUp: Route['runnersUp'];
};

export function bestOf(c: Candidates, workshop: Workshop): Best | undefined {
  const takes = handlingOf(workshop);
  const problem = problemsOf(c, takes);
  const keys = keysOf(contextOf(c.part, workshop));
  const tries = combinations(withoutDominated(c, takes)).map((methods) => tryOf(problem(methods), keys));
  searchAll(tries);
  const found = tries.flatMap((t) => (t.searched?.found ? [{ t, found: t.searched.found }] : []));
  const cost = Math.min(...found.map((f) => f.found.cost));
  const [first, ...others] = found.filter((f) => f.found.cost === cost);
  if (!first) return undefined;
  const best = others.reduce((a, b) => (compareWays(b.t, b.found, a.t, a.found) < 0 ? b : a), first);
  return {
    problem: best.t.problem,
    found: best.found,
    orders: [first, ...others].reduce((sum, f) => sum + f.found.orders, 0n),
    states: tries.reduce((sum, t) => sum + t.states, 0),
    exact: tries.every((t) => t.root > cost || t.searched?.exact),
    atLeast: Math.min(
      cost,
      ...tries.map((t) => (t.searched?.exact ? Number.POSITIVE_INFINITY : Math.max(t.root, t.searched?.atLeast ?? 0))),
    ),
    runnersUp: runnersUp(found, best, keys.grip),
  };
}

type Keys = { readonly op: (o: Operation) => readonly number[]; readonly grip: (g: Grip | undefined) => readonly number[] };
type Try = {
  readonly problem: Problem;
  readonly work: Work;
  readonly likes: Likes;
  readonly keyed: (s: Step) => readonly number[];
  /** No order of this combination costs less. */
  readonly root: number;
  searched?: Searched;
  states: number;
};

function tryOf(problem: Problem, keys: Keys): Try {
  const work = workOf(problem);
  const start = Int32Array.from(work.space.start);
  const grip = (s: Step): readonly number[] => keys.grip(problem.grips[s.grip]?.grip);
  const op = (s: Step): readonly number[] => {
    const o = problem.all[s.op];
    return o ? keys.op(o) : [];
  };
  return {
    problem,
    work,
    likes: (a, b) => compareKeys(grip(a), grip(b)) || compareKeys(op(a), op(b)),
    keyed: (s) => [...grip(s), ...op(s)],
    root: work.space.cost + work.bound(start),
    states: 0,
  };
}

/** Each key is worked out once: combinations share their operations. */
function keysOf(context: Context): Keys {
  return {
    grip: once((grip: Grip | undefined) => gripKey(context, grip)),
    op: once((o: Operation) => operationKey(context, o)),
  };
}

function once<T>(keyOf: (of: T) => readonly number[]): (of: T) => readonly number[] {
  const known = new Map<T, readonly number[]>();
  return (of) => {
    const key = known.get(of) ?? keyOf(of);
    known.set(of, key);
    return key;
  };
}

/** Narrow runs through all that could be best give an upper limit; what they could not see whole is searched again, whole. */
function searchAll(tries: readonly Try[]): void {
  const shelf: Shelf = [];
  let least = Number.POSITIVE_INFINITY;
  const run = (t: Try, width: number, states: number, atMost: number): Searched => {
    const searched = searchWork(t.work, t.likes, { width, states, atMost }, shelf);
    t.states += searched.states;
    least = Math.min(least, searched.found?.cost ?? least);
    return searched;
  };
  const order = [...tries].sort((a, b) => a.root - b.root);
  const promising = (t: Try): boolean => t.root <= horizonOf(least);
  // a very narrow run of the first that finishes at all: an upper limit for all, itself among them
  for (const t of order) if (least === Number.POSITIVE_INFINITY) t.searched = run(t, LIMIT_WIDTH, STATE_LIMIT, least);
  for (const t of order) {
    if (!promising(t) || t.searched?.exact) continue;
    const narrow = run(t, FIRST_WIDTH, STATE_LIMIT, horizonOf(least));
    t.searched = t.searched ? better(t.searched, narrow) : narrow;
  }
  for (const t of order) {
    if (!promising(t) || !t.searched || t.searched.exact) continue;
    const wide = run(t, Number.POSITIVE_INFINITY, STATES_FOR_OTHERS, horizonOf(least));
    t.searched = wide.exact ? wide : better(t.searched, run(t, Number.POSITIVE_INFINITY, STATE_LIMIT, least));
  }
}

/** A whole run that finds nothing proves that nothing is cheaper than what is known. */
function better(narrow: Searched, whole: Searched): Searched {
  if (whole.exact || !narrow.found) return whole;
  return whole.found && whole.found.cost <= narrow.found.cost ? whole : { ...narrow, atLeast: Math.max(narrow.atLeast, whole.atLeast) };
}

/** The fewer operations the better; then step by step, as the steps are liked. */
function compareWays(a: Try, foundA: Found, b: Try, foundB: Found): number {
  return foundA.steps.length - foundB.steps.length || compareKeys(foundA.steps.flatMap(a.keyed), foundB.steps.flatMap(b.keyed));
}

/** Other histories of holds, each at its least cost, as far as they are worth telling of. */
function runnersUp(
  found: readonly { readonly t: Try; readonly found: Found }[],
  best: { readonly t: Try; readonly found: Found },
  keyOf: Keys['grip'],
): Route['runnersUp'] {
  const gripsOf = (t: Try, grips: readonly number[]): readonly Grip[] => grips.flatMap((g) => t.problem.grips[g]?.grip ?? []);
  const name = (grips: readonly Grip[]): string => grips.map((g) => g.id).join();
  const far = horizonOf(best.found.cost);
  const known = new Map<string, { readonly grips: readonly Grip[]; readonly cost: number }>();
  for (const { t, found: f } of found) {
    for (const final of f.finals) {
      const grips = gripsOf(t, final.grips);
      if (final.cost <= far && final.cost < (known.get(name(grips))?.cost ?? Number.POSITIVE_INFINITY))
        known.set(name(grips), { grips, cost: final.cost });
    }
  }
  known.delete(name(gripsOf(best.t, holdsOf(best.t, best.found.steps))));
  return [...known.values()]
    .sort((a, b) => a.cost - b.cost || compareKeys(a.grips.flatMap(keyOf), b.grips.flatMap(keyOf)))
    .map((r) => ({ grips: r.grips.map((g) => g.id), cost: costOf(r.cost) }));
}

/** The lathe's holds of a way, as its history counts them. */
function holdsOf({ problem }: Try, steps: readonly Step[]): readonly number[] {
  const off = (s: Step): boolean => s.grip === BENCH || problem.grips[s.grip]?.way === 'bench';
  return steps.flatMap((s, i) => (off(s) || s.grip === steps[i - 1]?.grip ? [] : [s.grip]));
}
