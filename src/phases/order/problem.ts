/** One combination of methods as the search sees it: operations as bits, every question a mask. */

import { type Bits, bitsOf, wordsFor } from '../../base/bits.ts';
import type { End } from '../../model/ids.ts';
import type { Before, Candidates, Grip, Method, Operation } from '../../model/plan.ts';

export type OpSet = Bits;
export type Problem = {
  readonly operations: readonly Operation[];
  readonly methods: readonly Method[];
  readonly words: number;
  readonly full: OpSet;
  readonly grips: readonly GripMasks[];
  /** By operation and by the end in use ('bench' too): what must be done, what may not be done yet, what better had been done. */
  readonly asks: readonly Readonly<Record<End | 'bench', Asks | undefined>>[];
  /** By operation, its tool; by tool, its operations on the lathe; and all that is done on the lathe. */
  readonly tools: readonly number[];
  readonly toolMembers: readonly OpSet[];
  readonly onLathe: OpSet;
  readonly befores: readonly Before[];
  /** Cost of the methods themselves: tooling to make, and how they are liked. */
  readonly tooling: number;
  readonly rank: number;
};
export type GripMasks = { readonly grip: Grip; readonly ready: OpSet; readonly gone: OpSet; readonly can: OpSet; readonly tooling: number };
export type Asks = { readonly needs: OpSet; readonly forbids: OpSet; readonly wants: OpSet };

export function problemOf(c: Candidates, methods: readonly Method[], extra: readonly Grip[] = []): Problem {
  const operations = methods.flatMap((m) => m.operations);
  const index = new Map(operations.map((o, i) => [o.id, i]));
  const words = wordsFor(operations.length);
  const set = (ids: readonly string[]): OpSet =>
    bitsOf(
      ids.flatMap((id) => index.get(id) ?? []),
      words,
    );
  const befores = c.befores.filter((b) => index.has(b.first) && index.has(b.then));
  const latheOps = operations.flatMap((o, i) => (o.ways.bench ? [] : [i]));
  const keys = [...new Set(operations.map((o) => o.tool.key))].sort();
  return {
    operations,
    methods,
    words,
    befores,
    full: bitsOf(
      operations.map((_, i) => i),
      words,
    ),
    grips: [...c.grips, ...extra].flatMap((grip) => gripMasks(grip, operations, set, words) ?? []),
    asks: operations.map((o) => asksOf(o, befores, set)),
    tools: operations.map((o) => keys.indexOf(o.tool.key)),
    toolMembers: keys.map((key) =>
      bitsOf(
        latheOps.filter((i) => operations[i]?.tool.key === key),
        words,
      ),
    ),
    onLathe: bitsOf(latheOps, words),
    tooling: new Set(operations.flatMap((o) => (o.tool.made ? [o.tool.key] : []))).size,
    rank: methods.reduce((n, m) => n + m.rank, 0),
  };
}

/** Nothing when the combination lacks what the grip rests on. */
function gripMasks(
  grip: Grip,
  operations: readonly Operation[],
  set: (ids: readonly string[]) => OpSet,
  words: number,
): GripMasks | undefined {
  const here = new Set(operations.map((o) => o.id));
  const features = new Map<string, boolean>();
  for (const id of grip.ready) {
    const feature = id.slice(0, id.lastIndexOf('/'));
    features.set(feature, (features.get(feature) ?? false) || here.has(id));
  }
  if ([...features.values()].includes(false) || grip.gone.some((id) => !here.has(id))) return undefined;
  const leaves = operations.filter((o) => o.verb === 'part-off' || o.verb === 'saw-off' || o.verb === 'cut-stub').map((o) => o.id);
  const inBar = grip.kind === 'bar' || grip.kind === 'bar-and-centre' || grip.kind === 'stub';
  const hides = new Set(grip.hides);
  const can = operations.flatMap((o, i) =>
    o.ways[grip.out] && !hides.has(o.id) && (o.light || !grip.lightOnly) && leavesHere(o, grip) ? [i] : [],
  );
  return {
    grip,
    ready: set([...grip.ready, ...(inBar ? [] : leaves)]),
    gone: set(grip.gone),
    can: bitsOf(can, words),
    tooling: grip.tooling ? 1 : 0,
  };
}

/** Parting belongs to the hold on the bar or stub that it ends. */
function leavesHere(o: Operation, grip: Grip): boolean {
  if (o.verb === 'cut-stub') return grip.kind === 'stub' && grip.gone.includes(o.id);
  if (o.verb === 'part-off' || o.verb === 'saw-off') return grip.gone.includes(o.id);
  return true;
}

function asksOf(o: Operation, befores: readonly Before[], set: (ids: readonly string[]) => OpSet): Record<End | 'bench', Asks | undefined> {
  const from = (end: End | 'bench'): Asks | undefined => {
    if (!o.ways[end]) return undefined;
    const binds = befores.filter((b) => b.when === undefined || b.when.op !== o.id || b.when.from === end);
    const strict = binds.filter((b) => b.force === 'strict');
    const needs = strict.filter((b) => b.then === o.id && (b.when === undefined || b.when.op === o.id));
    // 'when' on the earlier operation: doing it from that end after the later one is the breach.
    const forbids = strict.filter((b) => b.first === o.id && b.when?.op === o.id);
    const wants = binds.filter((b) => b.force === 'preferred' && b.then === o.id);
    return { needs: set(needs.map((b) => b.first)), forbids: set(forbids.map((b) => b.then)), wants: set(wants.map((b) => b.first)) };
  };
  return { first: from('first'), second: from('second'), bench: from('bench') };
}
