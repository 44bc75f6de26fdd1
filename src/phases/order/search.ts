/**
 * Exact search for the least order: layers of (done, history of holds, hold, tool). Each layer keeps, for each state, the least cost,
 * the number of orders that reach it at that cost, and the steps by which they do.
 */
import { contains, has, meets, missing, withMember } from '../../base/bits.ts';
import type { Cost } from '../../model/plan.ts';
import type { OpSet, Problem } from './problem.ts';

export type Step = { readonly op: number; readonly grip: number };
export type Found = {
  readonly cost: number;
  readonly steps: readonly Step[];
  readonly orders: bigint;
  readonly states: number;
  readonly exact: boolean;
  readonly finals: readonly { readonly grips: readonly number[]; readonly cost: number }[];
};
export type Limit = {
  readonly states: number;
  readonly atMost: number /** states kept a layer, for the first, narrow run */;
  readonly width: number;
};
/** Which of two steps is liked better: negative, the first. Never by name or list order. */
export type Likes = (a: Step, b: Step) => number;

export const BENCH = -1;
const SET_UP = 1e12;
const TOOLING = 1e9;
const BROKEN = 1e6;
const TOOL = 1e3;

type Node = {
  readonly set: OpSet;
  readonly history: number;
  readonly grip: number;
  readonly tool: number;
  cost: number;
  orders: bigint;
  from: { readonly node: Node | undefined; readonly step: Step }[];
};
type Run = {
  readonly p: Problem;
  readonly likes: Likes;
  readonly limit: Limit;
  readonly histories: Histories;
  states: number;
  exact: boolean;
};

export function search(p: Problem, likes: Likes, limit: Limit): Found | undefined {
  const run: Run = { p, likes, limit, histories: newHistories(), states: 0, exact: true };
  let layer: readonly Node[] = [
    { set: p.full.map(() => 0), history: 0, grip: BENCH, tool: BENCH, cost: p.tooling * TOOLING + p.rank, orders: 1n, from: [] },
  ];
  for (let n = 0; n < p.operations.length && layer.length > 0; n += 1) layer = nextLayer(run, layer);
  const best = [...layer].sort((a, b) => a.cost - b.cost)[0];
  if (!best) return undefined;
  const ends = layer.filter((node) => node.cost === best.cost);
  return {
    cost: best.cost,
    steps: follow(run, ends),
    orders: ends.reduce((sum, e) => sum + e.orders, 0n),
    states: run.states,
    exact: run.exact,
    finals: finalsOf(run, layer),
  };
}

export function costOf(cost: number): Cost {
  const field = (unit: number, over: number): number => Math.floor((cost % over) / unit);
  return {
    setUps: Math.floor(cost / SET_UP),
    tooling: field(TOOLING, SET_UP),
    broken: field(BROKEN, TOOLING),
    toolChanges: field(TOOL, BROKEN),
    rank: cost % TOOL,
  };
}

function nextLayer(run: Run, layer: readonly Node[]): readonly Node[] {
  const next = new Map<Key, Node>();
  for (const node of layer) expand(run, node, next);
  run.states += next.size;
  if (run.states > run.limit.states) run.exact = false;
  const width = run.exact ? run.limit.width : Math.min(run.limit.width, NARROW);
  if (next.size <= width) return [...next.values()];
  run.exact = false;
  return [...next.values()].sort((a, b) => a.cost + bound(run.p, a) - b.cost - bound(run.p, b)).slice(0, width);
}
const NARROW = 1000;

function expand(run: Run, node: Node, next: Map<Key, Node>): void {
  const { p } = run;
  p.operations.forEach((o, i) => {
    if (has(node.set, i)) return;
    if (o.ways.bench) {
      if (offBar(p, node)) tryStep(run, node, { op: i, grip: BENCH }, next);
      return;
    }
    p.grips.forEach((g, k) => {
      if (has(g.can, i) && !meets(node.set, g.gone) && (k === node.grip || contains(node.set, g.ready)))
        tryStep(run, node, { op: i, grip: k }, next);
    });
  });
}

const offBar = (p: Problem, node: Node): boolean =>
  p.operations.every((o, i) => (o.verb !== 'part-off' && o.verb !== 'saw-off') || has(node.set, i));

function tryStep(run: Run, node: Node, step: Step, next: Map<Key, Node>): void {
  const { p } = run;
  const grip = p.grips[step.grip]?.grip;
  const asks = p.asks[step.op]?.[grip ? grip.out : 'bench'];
  if (!asks || !contains(node.set, asks.needs) || meets(node.set, asks.forbids)) return;
  const cost = node.cost + stepCost(run, node, step) + missing(asks.wants, node.set) * BROKEN;
  const history = step.grip === BENCH || step.grip === node.grip ? node.history : run.histories.after(node.history, step.grip);
  const tool = step.grip === BENCH ? node.tool : (p.tools[step.op] ?? BENCH);
  const set = withMember(node.set, step.op);
  if (cost + bound(p, { set, grip: step.grip, tool }) > run.limit.atMost) return;
  const key = keyOf(set, history, step.grip, tool);
  const known = next.get(key);
  if (!known || cost < known.cost)
    next.set(key, { set, history, grip: step.grip, tool, cost, orders: node.orders, from: [{ node, step }] });
  else if (cost === known.cost) {
    known.orders += node.orders;
    known.from.push({ node, step });
  }
}

/** A number where it fits exactly, else a text. */
function keyOf(set: OpSet, history: number, grip: number, tool: number): Key {
  const [word, ...more] = set;
  if (word === undefined || more.length > 0 || history >= FIELD || grip >= FIELD - 1 || tool >= FIELD - 1)
    return `${set.join()}|${history}|${grip}|${tool}`;
  return ((word * FIELD + history) * FIELD + grip + 1) * FIELD + tool + 1;
}
/** 31 bits of operations and three fields below 100 stay under 2^53. */
const FIELD = 100;
type Key = number | string;

function stepCost(run: Run, node: Node, step: Step): number {
  if (step.grip === BENCH) return 0;
  const change = run.p.tools[step.op] === node.tool ? 0 : TOOL;
  if (step.grip === node.grip) return change;
  const tooling = run.p.grips[step.grip]?.tooling === 1 && !run.histories.list(node.history).includes(step.grip) ? TOOLING : 0;
  return change + SET_UP + tooling;
}

/** Tools not yet in hand, and one set-up more where something can't be done as it is held. */
function bound(p: Problem, node: Pick<Node, 'set' | 'grip' | 'tool'>): number {
  let tools = 0;
  p.toolMembers.forEach((members, tool) => {
    if (tool !== node.tool && !contains(node.set, members)) tools += 1;
  });
  const can = p.grips[node.grip]?.can;
  const more =
    can === undefined ? !contains(node.set, p.onLathe) : p.onLathe.some((w, k) => (w & ~(node.set[k] ?? 0) & ~(can[k] ?? 0)) !== 0);
  return tools * TOOL + (more ? SET_UP : 0);
}

/** Of all least orders, the one whose steps are liked best, from the first on. */
function follow(run: Run, ends: readonly Node[]): readonly Step[] {
  const onward = new Map<Node | undefined, { readonly node: Node; readonly step: Step }[]>();
  const seen = new Set<Node>(ends);
  const queue = [...ends];
  for (let node = queue.pop(); node; node = queue.pop()) {
    for (const f of node.from) {
      onward.set(f.node, [...(onward.get(f.node) ?? []), { node, step: f.step }]);
      if (f.node && !seen.has(f.node)) queue.push(f.node);
      if (f.node) seen.add(f.node);
    }
  }
  const steps: Step[] = [];
  let at = [...seen].find((n) => n.from.length === 0);
  for (let next = at && onward.get(at); next && next.length > 0; next = at && onward.get(at)) {
    const best = [...next].sort((a, b) => run.likes(a.step, b.step))[0];
    if (!best) break;
    steps.push(best.step);
    at = best.node;
  }
  return steps;
}

function finalsOf(run: Run, layer: readonly Node[]): Found['finals'] {
  const best = new Map<number, number>();
  for (const node of layer) best.set(node.history, Math.min(node.cost, best.get(node.history) ?? Number.POSITIVE_INFINITY));
  return [...best]
    .map(([history, cost]) => ({ grips: run.histories.list(history), cost }))
    .sort((a, b) => a.cost - b.cost || compare(a.grips, b.grips));
}

const compare = (a: readonly number[], b: readonly number[]): number =>
  a.map((x, i) => x - (b[i] ?? 0)).find((d) => d !== 0) ?? a.length - b.length;

type Histories = { after(history: number, grip: number): number; list(history: number): readonly number[] };
function newHistories(): Histories {
  const lists: (readonly number[])[] = [[]];
  const known = new Map<string, number>([['', 0]]);
  return {
    list: (history) => lists[history] ?? [],
    after(history, grip) {
      const list = [...(lists[history] ?? []), grip];
      const key = list.join();
      const id = known.get(key) ?? lists.length;
      if (id === lists.length) lists.push(list);
      known.set(key, id);
      return id;
    },
  };
}
