/** One combination of methods as the search sees it: operations as bits, every question a mask. */

import { type Bits, bitsOf, put, wordsFor } from '../../base/bits.ts';
import type { End, OpId } from '../../model/ids.ts';
import type { Before, Candidates, Grip, Method, Operation } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';
import { toolingOf } from '../../rules/grips/plug.ts';
import type { Handling } from '../../rules/handling.ts';
import { MINUTE, rankCost, SET_UP, TOOL, TOOLING } from './costs.ts';

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
  /** By tool, what taking it up costs. */
  readonly toolPrices: readonly number[];
  /** By tooling that holds ask for, what making it costs, once. */
  readonly makings: readonly number[];
  readonly onLathe: OpSet;
  /** In no hold of its own. */
  readonly onBench: OpSet;
  /** What takes the part off the bar: nothing is done at the bench before. */
  readonly leaves: OpSet;
  readonly befores: readonly Before[];
  /** Cost of the methods themselves: tooling to make, and how they are liked. */
  readonly cost: number;
};
/** `price`: each time the work comes into it; `tooling`: the numbers of what it asks for among the tooling. */
export type GripMasks = {
  readonly grip: Grip;
  readonly ready: OpSet;
  readonly gone: OpSet;
  readonly can: OpSet;
  readonly price: number;
  readonly tooling: readonly number[];
  /** Which of an operation's ways it is done in. */
  readonly way: End | 'bench';
};
export type Asks = { readonly needs: OpSet; readonly forbids: OpSet; readonly wants: OpSet; readonly shuns: OpSet };

export function problemOf(c: Candidates, methods: readonly Method[], takes: Handling): Problem {
  return problemsOf(c, takes)(methods);
}

/** Asks of the candidates what all combinations share, once; then gives a problem for each combination. */
export function problemsOf(c: Candidates, takes: Handling): (methods: readonly Method[]) => Problem {
  const places = placesOf(c);
  const place = (id: OpId): number => places.get(id) ?? places.size;
  const befores = c.befores.map((b) => ({ b, first: place(b.first), then: place(b.then) }));
  const asked = new Map(c.grips.flatMap(toolingOf).map((ask) => [JSON.stringify(ask), ask]));
  const toolings = [...asked.keys()];
  const makings = [...asked.values()].map((ask) => TOOLING + MINUTE * takes.make(ask));
  const grips = c.grips.map((g) => readGrip(g, places, toolings, takes));
  return (methods) => {
    const operations = methods.flatMap((m) => m.operations);
    // one place more, for what no method has: it is never here
    const here = new Int32Array(places.size + 1).fill(-1);
    operations.forEach((o, i) => {
      here[place(o.id)] = i;
    });
    const words = wordsFor(operations.length);
    const binding = befores.filter((x) => isHere(here, x.first) && isHere(here, x.then));
    const keys = [...new Set(operations.map((o) => o.tool.key))].sort();
    const tools = operations.map((o) => keys.indexOf(o.tool.key));
    const made = keys.flatMap((key) => operations.find((o) => o.tool.key === key && o.tool.made)?.tool.made ?? []);
    const where = (is: (o: Operation, i: number) => boolean): OpSet => setWhere(operations, words, is);
    return {
      operations,
      methods,
      words,
      makings,
      befores: binding.map((x) => x.b),
      grips: grips.flatMap((g) => gripMasks(g, operations, here, words, place) ?? []),
      asks: asksOf(operations, binding, here, words),
      tools,
      toolMembers: keys.map((_, k) => where((o, i) => tools[i] === k && !o.ways.bench)),
      toolPrices: keys.map((_, k) => TOOL + MINUTE * changeOf(operations[tools.indexOf(k)], takes)),
      onLathe: where((o) => !o.ways.bench),
      onBench: where((o) => o.ways.bench !== undefined && !o.lies),
      leaves: where((o) => o.verb === 'part-off' || o.verb === 'saw-off'),
      cost: made.reduce((sum, ask) => sum + TOOLING + MINUTE * takes.make(ask), rankCost(methods.reduce((n, m) => n + m.rank, 0))),
    };
  };
}

const changeOf = (o: Operation | undefined, takes: Handling): number => (o ? takes.change(o.tool) : 0);

/** A place for every operation of any method. */
function placesOf(c: Candidates): ReadonlyMap<OpId, number> {
  const places = new Map<OpId, number>();
  for (const { any } of c.methods)
    for (const { operations } of any) for (const o of operations) places.set(o.id, places.get(o.id) ?? places.size);
  return places;
}

/** By place, the operation's number in this combination; less than 0 where it has none. */
type Here = Int32Array;
const isHere = (here: Here, place: number): boolean => (here[place] ?? -1) >= 0;

function setWhere(operations: readonly Operation[], words: number, is: (o: Operation, i: number) => boolean): OpSet {
  const set = new Array<number>(words).fill(0);
  operations.forEach((o, i) => {
    if (is(o, i)) put(set, i);
  });
  return set;
}

/** `rests`, `gone`: by feature, the places of the operations that make what is held, and of those that end it; `hides`: by place. */
type ReadGrip = {
  readonly grip: Grip;
  readonly rests: readonly (readonly number[])[];
  readonly gone: readonly (readonly number[])[];
  readonly hides: Uint8Array;
  readonly goneIds: ReadonlySet<OpId>;
  readonly price: number;
  readonly tooling: readonly number[];
};

function readGrip(grip: Grip, places: ReadonlyMap<OpId, number>, toolings: readonly string[], takes: Handling): ReadGrip {
  const place = (id: OpId): number => places.get(id) ?? places.size;
  const hides = new Uint8Array(places.size + 1);
  for (const id of grip.hides) hides[place(id)] = 1;
  return {
    grip,
    rests: byFeature(grip.ready, place),
    gone: byFeature(grip.gone, place),
    hides,
    goneIds: new Set(grip.gone),
    tooling: toolingOf(grip).map((ask) => toolings.indexOf(JSON.stringify(ask))),
    price: (isOffLathe(grip) ? 0 : SET_UP) + MINUTE * takes.hold(grip),
  };
}

/** A feature's methods differ in their operations. */
function byFeature(ids: readonly OpId[], place: (id: OpId) => number): readonly (readonly number[])[] {
  const all = new Map<string, number[]>();
  for (const id of ids) {
    const feature = id.slice(0, id.lastIndexOf('/'));
    const of = all.get(feature) ?? [];
    of.push(place(id));
    all.set(feature, of);
  }
  return [...all.values()];
}

/** Nothing when the combination lacks what the grip rests on. */
function gripMasks(
  { grip, rests, gone, hides, goneIds, price, tooling }: ReadGrip,
  operations: readonly Operation[],
  here: Here,
  words: number,
  place: (id: OpId) => number,
): GripMasks | undefined {
  const is = (at: number): boolean => isHere(here, at);
  if (!rests.every((of) => of.some(is)) || !gone.every((of) => of.some(is))) return undefined;
  const inBar = grip.kind === 'bar' || grip.kind === 'bar-and-centre' || grip.kind === 'stub';
  const way = isOffLathe(grip) ? 'bench' : grip.out;
  const ready = setWhere(operations, words, (o) => !inBar && isBefore(o, way));
  const set = [...Array.from(ready)];
  for (const of of rests) for (const at of of) if (is(at)) put(set, here[at] ?? 0);
  return {
    grip,
    ready: set,
    gone: bitsOf(
      gone.flat().flatMap((at) => (is(at) ? [here[at] ?? 0] : [])),
      words,
    ),
    can: setWhere(
      operations,
      words,
      (o) => o.ways[way] !== undefined && hides[place(o.id)] !== 1 && (o.light || !grip.lightOnly) && leavesHere(o, grip, goneIds),
    ),
    price,
    tooling,
    way,
  };
}

/** Off the bar; and back in the chuck, off its stub too. */
const isBefore = ({ verb }: Operation, way: End | 'bench'): boolean =>
  verb === 'part-off' || verb === 'saw-off' || (way !== 'bench' && verb === 'cut-stub');

/** Parting belongs to the hold on the bar or stub that it ends. */
function leavesHere(o: Operation, grip: Grip, gone: ReadonlySet<OpId>): boolean {
  if (o.verb === 'cut-stub') return grip.kind === 'stub' && gone.has(o.id);
  if (o.verb === 'part-off' || o.verb === 'saw-off') return gone.has(o.id);
  return true;
}

type Binding = { readonly b: Before; readonly first: number; readonly then: number };
type Draft = { readonly needs: number[]; readonly forbids: number[]; readonly wants: number[]; readonly shuns: number[] };
const ENDS = ['first', 'second', 'bench'] as const;

function asksOf(operations: readonly Operation[], befores: readonly Binding[], here: Here, words: number): Problem['asks'] {
  const none = (): number[] => new Array<number>(words).fill(0);
  const draft = (way: unknown): Draft | undefined => (way ? { needs: none(), forbids: none(), wants: none(), shuns: none() } : undefined);
  const asks = operations.map(({ ways }) => ({ first: draft(ways.first), second: draft(ways.second), bench: draft(ways.bench) }));
  for (const { b, first, then } of befores) {
    const [i, k] = [here[first] ?? 0, here[then] ?? 0];
    // 'when' on the earlier operation: doing it from that end after the later one is the breach.
    const late = b.when !== undefined && b.when.op === b.first;
    const ends = b.when === undefined ? ENDS : late || b.when.op === b.then ? [b.when.from] : [];
    for (const end of ends) {
      const ask = asks[late ? i : k]?.[end];
      if (!ask) continue;
      if (late) put(b.force === 'strict' ? ask.forbids : ask.shuns, k);
      else put(b.force === 'strict' ? ask.needs : ask.wants, i);
    }
  }
  return asks;
}
