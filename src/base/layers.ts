/**
 * Exact search for a least way through layers: every way takes as many steps, a state is a few 32-bit words, and states of one layer that
 * hold the same are one. Dynamic programming over what is done, cut by a bound and an upper limit (the idea is old: Held and Karp 1962;
 * for orders under precedence: Salii, EJOR 272(1), 2019). It knows nothing of what the states mean.
 */
import { add, addArc, cleared, find, type Layer, NONE, readState, type Shelf } from './layers/store.ts';
import { liked, type Trail, trails, waysAlong } from './layers/trail.ts';

export type Space = {
  readonly words: number;
  /** Steps from start to end. */
  readonly steps: number;
  readonly start: readonly number[];
  readonly cost: number;
  /** For each step from `state`: write the state reached into `next`, whole, and call `reach` with the step's number and cost (>= 0). */
  readonly expand: (state: Int32Array, next: Int32Array, reach: (step: number, cost: number) => void) => void;
};
/** What is still to come from here costs at least so much; Infinity: no way leads on. Never more than the truth, or the answer is wrong. */
export type Bound = (state: Int32Array) => number;
export type Limits = {
  /** Past so many states only the `FEW` most promising of a layer go on, and the answer is no longer proved. */
  readonly states: number;
  /** States of a layer that go on; fewer than there are: not proved. */
  readonly width: number;
  /** Ways that cost more are not wanted. */
  readonly atMost: number;
};
/** Which of two steps is liked better, where both lead to a least way: negative, the first. */
export type Liking = (a: number, b: number) => number;

export type Outcome = {
  readonly states: number;
  /** Nothing was left out but what costs more than `atMost`. */
  readonly exact: boolean;
  /** No way costs less (of those within `atMost`). The gap is `found.cost - atLeast`. */
  readonly atLeast: number;
  readonly found?: {
    readonly cost: number;
    /** The least way that is liked best, from the first step on. */
    readonly steps: readonly number[];
    /** How many least ways there are, among the states kept. */
    readonly ways: bigint;
    /** Every state of the last layer, as its words, with its least cost. */
    readonly ends: readonly { readonly state: readonly number[]; readonly cost: number }[];
  };
};
const FEW = 1000;

export type { Shelf };

type Run = {
  readonly space: Space;
  readonly bound: Bound;
  readonly limits: Limits;
  readonly shelf: Shelf;
  readonly state: Int32Array;
  readonly next: Int32Array;
  states: number;
  width: number;
  room: number;
  exact: boolean;
  /** Least promise among the states that were dropped. */
  dropped: number;
};

/** `shelf`: where many searches follow one another, the same one for all spares making layers anew. */
export function search(space: Space, bound: Bound, limits: Limits, liking: Liking, shelf: Shelf = []): Outcome {
  const buffers = { state: new Int32Array(space.words), next: new Int32Array(space.words) };
  const counts = { states: 0, width: limits.width, room: limits.states, exact: true, dropped: Number.POSITIVE_INFINITY };
  const run: Run = { space, bound, limits, shelf, ...buffers, ...counts };
  const first = cleared(shelf, 0, space.words);
  run.state.set(space.start);
  add(first, run.state, -1 - find(first, run.state), space.cost, bound(run.state));
  const layers: Layer[] = [first];
  for (let layer = first; layers.length <= space.steps && layer.size > 0; ) {
    layer = nextLayer(run, layer, layers.length);
    layers.push(layer);
  }
  const last = layers.at(-1);
  const cost = last && layers.length > space.steps ? leastOf(last.costs, last.size) : Number.POSITIVE_INFINITY;
  const told = { states: run.states, exact: run.exact, atLeast: Math.min(cost, run.dropped) };
  if (!last || cost === Number.POSITIVE_INFINITY) return told;
  const trail: Trail = trails(layers, cost);
  return { ...told, found: { cost, steps: liked(trail, liking), ways: waysAlong(trail), ends: endsOf(last) } };
}

/** Past the limit the layer is narrowed and stepped from once more, so that memory never outgrows the limit by much. */
function nextLayer(run: Run, layer: Layer, n: number): Layer {
  const next = stepFrom(run, layer, promising(run, layer), cleared(run.shelf, n, run.space.words));
  if (next) {
    run.states += next.size;
    return next;
  }
  run.room = Number.POSITIVE_INFINITY;
  run.width = Math.min(run.width, FEW);
  run.exact = false;
  return nextLayer(run, layer, n);
}

/** Places of the states that go on: all, or the most promising; of equals, those reached first. */
function promising(run: Run, layer: Layer): Int32Array | undefined {
  if (layer.size <= run.width) return undefined;
  run.exact = false;
  const promise = Float64Array.from({ length: layer.size }, (_, i) => (layer.costs[i] ?? 0) + (layer.ahead[i] ?? 0));
  const places = Int32Array.from({ length: layer.size }, (_, i) => i).sort((a, b) => (promise[a] ?? 0) - (promise[b] ?? 0) || a - b);
  run.dropped = Math.min(run.dropped, promise[places[run.width] ?? 0] ?? run.dropped);
  return places.subarray(0, run.width);
}

/** Nothing when there would be too many. */
function stepFrom(run: Run, layer: Layer, places: Int32Array | undefined, reached: Layer): Layer | undefined {
  const { space, state, next } = run;
  let from = 0;
  const reach = (step: number, cost: number): void => enter(run, reached, from, step, (layer.costs[from] ?? 0) + cost);
  const count = places?.length ?? layer.size;
  for (let i = 0; i < count; i += 1) {
    from = places?.[i] ?? i;
    readState(layer, from, state);
    space.expand(state, next, reach);
    if (run.states + reached.size > run.room) return undefined;
  }
  return reached;
}

function enter(run: Run, layer: Layer, from: number, step: number, cost: number): void {
  const place = find(layer, run.next);
  if (place < 0) {
    const ahead = run.bound(run.next);
    if (ahead < Number.POSITIVE_INFINITY && cost + ahead <= run.limits.atMost)
      addArc(layer, add(layer, run.next, -1 - place, cost, ahead), from, step, NONE);
    return;
  }
  const known = layer.costs[place] ?? 0;
  if (cost > known) return;
  layer.costs[place] = cost;
  addArc(layer, place, from, step, cost < known ? NONE : (layer.heads[place] ?? NONE));
}

function leastOf(costs: Float64Array, size: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < size; i += 1) least = Math.min(least, costs[i] ?? least);
  return least;
}

function endsOf(last: Layer): readonly { readonly state: readonly number[]; readonly cost: number }[] {
  return Array.from({ length: last.size }, (_, i) => ({
    state: [...last.keys.subarray(i * last.words, (i + 1) * last.words)],
    cost: last.costs[i] ?? 0,
  }));
}
