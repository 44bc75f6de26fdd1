/** The best order for one part: every combination of its methods through the exact search; or why there is none and what would help. */

import type { Before, Candidates, Grip, NoRoute, Operation, Route, SetUp } from '../model/plan.ts';
import { isOffLathe } from '../model/work.ts';
import type { Workshop } from '../model/workshop.ts';
import { handlingOf } from '../rules/handling.ts';
import { failsAt } from './order/about.ts';
import { type Best, bestOf } from './order/best.ts';
import { type Habit, habitsFor } from './order/habits.ts';
import { changesThatHelp } from './order/help.ts';
import type { Problem } from './order/problem.ts';
import { costOf, type Step } from './order/search.ts';

export type OrderOutcome = { readonly route?: Route; readonly none?: NoRoute };

export function order(c: Candidates, workshop: Workshop): OrderOutcome {
  const firm = withoutSeated(c);
  const kept = (firm && withHabits(firm, workshop)) ?? withHabits(c, workshop);
  if (kept) return { route: { ...routeOf(c, kept.best), ...(kept.decided.length > 0 ? { habits: kept.decided } : {}) } };
  const bare = c.methods.filter((m) => m.any.length === 0).map((m) => m.feature);
  const help = changesThatHelp(c, handlingOf(workshop));
  return { none: { part: c.part.id, kind: c.part.kind, refused: c.refused, ...help, stuck: bare, ...failsAt(c, help) } };
}

/** A hold that is short for its diameter is taken only where no other will do. Nothing where there is none. */
function withoutSeated(c: Candidates): Candidates | undefined {
  const firm = c.grips.filter((grip) => !grip.seated);
  return firm.length === c.grips.length ? undefined : { ...c, grips: firm };
}

/** All habits kept if that finishes; else one after another gives way. `decided`: those without which the plan would be another. */
function withHabits(c: Candidates, workshop: Workshop): { readonly best: Best; readonly decided: readonly string[] } | undefined {
  let habits = habitsFor(c, workshop);
  for (;;) {
    const best = bestOf(
      habits.reduce((k, habit) => habit.apply(k), c),
      workshop,
    );
    if (best) return { best, decided: habits.filter((habit) => decides(c, workshop, habits, habit, best)).map((habit) => habit.name) };
    if (habits.length === 0) return undefined;
    habits = habits.slice(1);
  }
}

function decides(c: Candidates, workshop: Workshop, habits: readonly Habit[], habit: Habit, best: Best): boolean {
  const without = bestOf(
    habits.filter((h) => h !== habit).reduce((k, h) => h.apply(k), c),
    workshop,
  );
  return without === undefined || outline(without) !== outline(best);
}

const outline = ({ problem, found }: Best): string =>
  found.steps.map((s) => `${problem.all[s.op]?.id} ${problem.grips[s.grip]?.grip.id ?? ''}`).join();

function routeOf(c: Candidates, best: Best): Route {
  const { problem, found } = best;
  const done = new Map(found.steps.map((s, i) => [problem.all[s.op]?.id, { at: i, from: problem.grips[s.grip]?.grip.out }]));
  const late = (b: Before): boolean =>
    (done.get(b.first)?.at ?? 0) > (done.get(b.then)?.at ?? 0) && (!b.when || done.get(b.when.op)?.from === b.when.from);
  return {
    part: c.part.id,
    setUps: setUpsOf(c, problem, found.steps),
    chosen: problem.methods,
    cost: costOf(found.cost),
    asGood: best.orders.toString(),
    proved: best.exact ? 'best' : 'best found within the limit',
    ...(best.exact ? {} : { atLeast: costOf(best.atLeast) }),
    states: best.states,
    runnersUp: best.runnersUp,
    refused: c.refused,
    befores: problem.befores,
    broken: problem.befores.filter((b) => b.force === 'preferred' && late(b)),
  };
}

function setUpsOf(c: Candidates, problem: Problem, steps: readonly Step[]): readonly SetUp[] {
  const setUps: { readonly no: number; readonly grip: Grip; readonly operations: string[] }[] = [];
  let last: number | undefined;
  let no = 0;
  for (const step of steps) {
    const op = problem.all[step.op];
    if (!op) continue;
    if (step.grip !== last) {
      const grip = problem.grips[step.grip]?.grip ?? benchGrip(c);
      if (!isOffLathe(grip)) no += 1;
      setUps.push({ no: isOffLathe(grip) ? 0 : no, grip: settled(grip, problem.operations), operations: [] });
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
