/** One combination of methods as the search sees it: operations as bits, every question a mask. */

import { type Bits, bitsOf, wordsFor } from '../../base/bits.ts';
import type { End, OpId } from '../../model/ids.ts';
import type { Before, Candidates, Grip, Method, Operation } from '../../model/plan.ts';

export type OpSet = Bits;
export type Problem = {
  readonly operations: readonly Operation[];
  readonly methods: readonly Method[];
  readonly words: number;
  readonly grips: readonly GripMasks[];
  /** By operation and by the end in use ('bench' too): what must be done, what may not be done yet, what better had been done, what better had not. */
  readonly asks: readonly Readonly<Record<End | 'bench', Asks | undefined>>[];
  /** By operation, its tool; by tool, its operations on the lathe. */
  readonly tools: readonly number[];
  readonly toolMembers: readonly OpSet[];
  readonly onLathe: OpSet;
  readonly onBench: OpSet;
  /** What takes the part off the bar: nothing is done at the bench before. */
  readonly leaves: OpSet;
  readonly befores: readonly Before[];
  /** Cost of the methods themselves: tooling to make, and how they are liked. */
  readonly tooling: number;
  readonly rank: number;
};
export type GripMasks = { readonly grip: Grip; readonly ready: OpSet; readonly gone: OpSet; readonly can: OpSet; readonly tooling: number };
export type Asks = { readonly needs: OpSet; readonly forbids: OpSet; readonly wants: OpSet; readonly shuns: OpSet };

export function problemOf(c: Candidates, methods: readonly Method[]): Problem {
  return problemsOf(c)(methods);
}

/** Asks of the candidates what all combinations share, once; then gives a problem for each combination. */
export function problemsOf(c: Candidates): (methods: readonly Method[]) => Problem {
  const grips = c.grips.map(readGrip);
  return (methods) => {
    const operations = methods.flatMap((m) => m.operations);
    const index = new Map(operations.map((o, i) => [o.id, i]));
    const sets = settersOf(operations, index);
    const befores = c.befores.filter((b) => index.has(b.first) && index.has(b.then));
    const keys = [...new Set(operations.map((o) => o.tool.key))].sort();
    return {
      operations,
      methods,
      befores,
      words: wordsFor(operations.length),
      grips: grips.flatMap((g) => gripMasks(g, operations, sets) ?? []),
      asks: asksOf(operations, befores, index, sets),
      tools: operations.map((o) => keys.indexOf(o.tool.key)),
      toolMembers: keys.map((key) => sets.where((o) => !o.ways.bench && o.tool.key === key)),
      onLathe: sets.where((o) => !o.ways.bench),
      onBench: sets.where((o) => o.ways.bench !== undefined),
      leaves: sets.where((o) => o.verb === 'part-off' || o.verb === 'saw-off'),
      tooling: new Set(operations.flatMap((o) => (o.tool.made ? [o.tool.key] : []))).size,
      rank: methods.reduce((n, m) => n + m.rank, 0),
    };
  };
}

type Index = ReadonlyMap<OpId, number>;
type Setters = {
  readonly of: (ids: Iterable<OpId>) => OpSet;
  readonly where: (is: (o: Operation) => boolean) => OpSet;
  readonly has: (id: OpId) => boolean;
};

function settersOf(operations: readonly Operation[], index: Index): Setters {
  const words = wordsFor(operations.length);
  return {
    has: (id) => index.has(id),
    of: (ids) => {
      const members: number[] = [];
      for (const id of ids) {
        const i = index.get(id);
        if (i !== undefined) members.push(i);
      }
      return bitsOf(members, words);
    },
    where: (is) =>
      bitsOf(
        operations.flatMap((o, i) => (is(o) ? [i] : [])),
        words,
      ),
  };
}

/** `rests`: by feature, the operations that make what is held. */
type ReadGrip = {
  readonly grip: Grip;
  readonly rests: readonly (readonly OpId[])[];
  readonly hides: ReadonlySet<OpId>;
  readonly gone: ReadonlySet<OpId>;
};

function readGrip(grip: Grip): ReadGrip {
  const rests = new Map<string, OpId[]>();
  for (const id of grip.ready) {
    const feature = id.slice(0, id.lastIndexOf('/'));
    rests.set(feature, [...(rests.get(feature) ?? []), id]);
  }
  return { grip, rests: [...rests.values()], hides: new Set(grip.hides), gone: new Set(grip.gone) };
}

/** Nothing when the combination lacks what the grip rests on. */
function gripMasks({ grip, rests, hides, gone }: ReadGrip, operations: readonly Operation[], sets: Setters): GripMasks | undefined {
  if (rests.some((ids) => !ids.some(sets.has)) || !grip.gone.every(sets.has)) return undefined;
  const inBar = grip.kind === 'bar' || grip.kind === 'bar-and-centre' || grip.kind === 'stub';
  const leaves = inBar
    ? []
    : operations.filter((o) => o.verb === 'part-off' || o.verb === 'saw-off' || o.verb === 'cut-stub').map((o) => o.id);
  return {
    grip,
    ready: sets.of([...grip.ready, ...leaves]),
    gone: sets.of(grip.gone),
    can: sets.where((o) => o.ways[grip.out] !== undefined && !hides.has(o.id) && (o.light || !grip.lightOnly) && leavesHere(o, grip, gone)),
    tooling: grip.tooling ? 1 : 0,
  };
}

/** Parting belongs to the hold on the bar or stub that it ends. */
function leavesHere(o: Operation, grip: Grip, gone: ReadonlySet<OpId>): boolean {
  if (o.verb === 'cut-stub') return grip.kind === 'stub' && gone.has(o.id);
  if (o.verb === 'part-off' || o.verb === 'saw-off') return gone.has(o.id);
  return true;
}

function asksOf(operations: readonly Operation[], befores: readonly Before[], index: Index, sets: Setters): Problem['asks'] {
  const into: Before[][] = operations.map(() => []);
  const outOf: Before[][] = operations.map(() => []);
  for (const b of befores) {
    into[index.get(b.then) ?? 0]?.push(b);
    // 'when' on the earlier operation: doing it from that end after the later one is the breach.
    if (b.when?.op === b.first) outOf[index.get(b.first) ?? 0]?.push(b);
  }
  return operations.map((o, i) => {
    const from = (end: End | 'bench'): Asks | undefined => {
      if (!o.ways[end]) return undefined;
      const binds = (b: Before): boolean => b.when === undefined || (b.when.op === o.id && b.when.from === end);
      const before = (into[i] ?? []).filter(binds);
      const after = (outOf[i] ?? []).filter(binds);
      const only = (list: readonly Before[], force: Before['force']): readonly Before[] => list.filter((b) => b.force === force);
      return {
        needs: sets.of(only(before, 'strict').map((b) => b.first)),
        forbids: sets.of(only(after, 'strict').map((b) => b.then)),
        wants: sets.of(only(before, 'preferred').map((b) => b.first)),
        shuns: sets.of(only(after, 'preferred').map((b) => b.then)),
      };
    };
    return { first: from('first'), second: from('second'), bench: from('bench') };
  });
}
