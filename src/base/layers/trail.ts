/** The least ways through finished layers: walked back from the ends, counted, and the one that is liked best followed. */
import { type Layer, NONE } from './store.ts';

type Arc = { readonly from: number; readonly step: number; readonly to: number };
/** By layer, the first one's states having none: the arcs that lie on a least way. */
export type Trail = readonly (readonly Arc[])[];

/** From all states of the last layer that cost `cost`. */
export function trails(layers: readonly Layer[], cost: number): Trail {
  const last = layers.length - 1;
  const found: (readonly Arc[])[] = layers.map(() => []);
  let wanted = new Set<number>();
  const end = layers[last];
  for (let i = 0; end && i < end.size; i += 1) if (end.costs[i] === cost) wanted.add(i);
  for (let n = last; n > 0; n -= 1) {
    const layer = layers[n];
    const arcs = layer ? [...wanted].flatMap((to) => arcsInto(layer, to)) : [];
    found[n] = arcs;
    wanted = new Set(arcs.map((arc) => arc.from));
  }
  return found;
}

function arcsInto(layer: Layer, to: number): readonly Arc[] {
  const arcs: Arc[] = [];
  for (let a = layer.heads[to] ?? NONE; a !== NONE; a = layer.arcNext[a] ?? NONE)
    arcs.push({ from: layer.arcFrom[a] ?? 0, step: layer.arcStep[a] ?? 0, to });
  return arcs;
}

/** How many ways there are; whole numbers of any size. */
export function waysAlong(trail: Trail): bigint {
  let ways = new Map<number, bigint>([[0, 1n]]);
  for (const arcs of trail.slice(1)) {
    const next = new Map<number, bigint>();
    for (const { from, to } of arcs) next.set(to, (next.get(to) ?? 0n) + (ways.get(from) ?? 0n));
    ways = next;
  }
  return [...ways.values()].reduce((sum, n) => sum + n, 0n);
}

/** From the first step on, always the step that is liked best. */
export function liked(trail: Trail, liking: (a: number, b: number) => number): readonly number[] {
  const steps: number[] = [];
  let at = 0;
  for (const arcs of trail.slice(1)) {
    const here = arcs.filter((arc) => arc.from === at);
    const [first, ...others] = here;
    if (!first) return steps;
    const best = others.reduce((a, b) => (liking(b.step, a.step) < 0 ? b : a), first);
    steps.push(best.step);
    at = best.to;
  }
  return steps;
}
