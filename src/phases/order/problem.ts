/**
 * One combination of methods as the search sees it: operations as bits, every question a mask. An operation has one bit in all combinations,
 * so that what they share is asked once, and each combination cuts the masks down to what it has.
 */

import { type Bits, bitsOf, isEmpty, meets, membersOf, put, wordsFor } from '../../base/bits.ts';
import type { End, OpId } from '../../model/ids.ts';
import type { Before, Candidates, Grip, Method, Operation, ToolingAsk } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';
import { toolingOf } from '../../rules/grips/plug.ts';
import type { Handling } from '../../rules/handling.ts';
import { MINUTE, rankCost, SET_UP, TOOL, TOOLING } from './costs.ts';

export type OpSet = Bits;
export type Problem = {
  /** Those of this combination. */
  readonly operations: readonly Operation[];
  /** Those of every combination, by their bit. */
  readonly all: readonly Operation[];
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
  const befores = c.befores.map((b) => ({ b, first: places.of(b.first), then: places.of(b.then) }));
  const asked = new Map(c.grips.flatMap(toolingOf).map((ask) => [JSON.stringify(ask), ask]));
  const makes = (ask: ToolingAsk): number => TOOLING + MINUTE * takes.make(ask);
  const makings = [...asked.values()].map(makes);
  const grips = c.grips.map((g) => readGrip(g, places, [...asked.keys()], takes));
  const asks = asksOf(places, befores);
  const { tools, toolMembers, toolPrices } = toolsOf(places, takes);
  const sets = setsOf(places);
  return (methods) => {
    const here = places.ofMethods(methods);
    const cut = (set: OpSet): OpSet => (isEmpty(set) ? set : both(set, here));
    const rank = rankCost(methods.reduce((n, m) => n + m.rank, 0));
    return {
      operations: methods.flatMap((m) => m.operations),
      all: places.all,
      methods,
      words: places.words,
      grips: grips.flatMap((g) => gripMasks(g, here) ?? []),
      asks: asks.map((ask) => cutAsks(ask, cut)),
      tools,
      toolMembers: toolMembers.map(cut),
      toolPrices,
      makings,
      onLathe: cut(sets.onLathe),
      onBench: cut(sets.onBench),
      leaves: cut(sets.leaves),
      befores: befores.filter((x) => meets(x.first, here) && meets(x.then, here)).map((x) => x.b),
      cost: madeFor(methods).reduce((sum, ask) => sum + makes(ask), rank),
    };
  };
}

function toolsOf({ all, words }: Places, takes: Handling): Pick<Problem, 'tools' | 'toolMembers' | 'toolPrices'> {
  const keys = [...new Set(all.map((o) => o.tool.key))].sort();
  const tools = all.map((o) => keys.indexOf(o.tool.key));
  return {
    tools,
    toolMembers: keys.map((_, k) => setWhere(all, words, (o, i) => tools[i] === k && !o.ways.bench)),
    toolPrices: keys.map((_, k) => TOOL + MINUTE * changeOf(all[tools.indexOf(k)], takes)),
  };
}

function setsOf({ all, words }: Places): Pick<Problem, 'onLathe' | 'onBench' | 'leaves'> {
  return {
    onLathe: setWhere(all, words, (o) => !o.ways.bench),
    onBench: setWhere(all, words, (o) => o.ways.bench !== undefined && !o.lies),
    leaves: setWhere(all, words, (o) => o.verb === 'part-off' || o.verb === 'saw-off'),
  };
}

const changeOf = (o: Operation | undefined, takes: Handling): number => (o ? takes.change(o.tool) : 0);

/** By tool, once. */
function madeFor(methods: readonly Method[]): readonly ToolingAsk[] {
  const tools = new Map(methods.flatMap((m) => m.operations).flatMap(({ tool }) => (tool.made ? [[tool.key, tool.made] as const] : [])));
  return [...tools.values()];
}

/** The bits of operations: those of one name that methods do differently have one each. No combination has two of them. */
type Places = {
  readonly all: readonly Operation[];
  readonly words: number;
  /** Empty where no method has it. */
  of(id: OpId): OpSet;
  ofMethods(methods: readonly Method[]): OpSet;
};

function placesOf(c: Candidates): Places {
  const known = new Map<string, number>();
  const all: Operation[] = [];
  const methods = c.methods.flatMap((f) => f.any);
  const numbers = new Map(methods.map((m) => [m, m.operations.map((o) => placeOf(o, all, known))]));
  const words = wordsFor(all.length);
  const byId = new Map<OpId, { [word: number]: number } & OpSet>();
  all.forEach((o, i) => {
    const set = byId.get(o.id) ?? new Array<number>(words).fill(0);
    put(set, i);
    byId.set(o.id, set);
  });
  const none = bitsOf([], words);
  return {
    all,
    words,
    of: (id) => byId.get(id) ?? none,
    ofMethods: (chosen) =>
      bitsOf(
        chosen.flatMap((m) => numbers.get(m) ?? m.operations.flatMap((o) => known.get(placeKey(o)) ?? [])),
        words,
      ),
  };
}

function placeOf(o: Operation, all: Operation[], known: Map<string, number>): number {
  const key = placeKey(o);
  const place = known.get(key) ?? all.push(o) - 1;
  known.set(key, place);
  return place;
}

const placeKey = (o: Operation): string => JSON.stringify([o.id, o.verb, o.tool.key, Object.keys(o.ways).sort(), o.light, o.lies ?? false]);

function setWhere(operations: readonly Operation[], words: number, is: (o: Operation, i: number) => boolean): OpSet {
  const set = new Array<number>(words).fill(0);
  operations.forEach((o, i) => {
    if (is(o, i)) put(set, i);
  });
  return set;
}

/** What is in both. */
function both(a: OpSet, b: OpSet): OpSet {
  const set = new Array<number>(a.length).fill(0);
  for (let w = 0; w < set.length; w += 1) set[w] = (a[w] ?? 0) & (b[w] ?? 0);
  return set;
}

/** What is in any of them. */
function union(sets: readonly OpSet[], words: number): OpSet {
  const all = new Array<number>(words).fill(0);
  for (const set of sets) for (let w = 0; w < words; w += 1) all[w] = (all[w] ?? 0) | (set[w] ?? 0);
  return all;
}

/** `rests`, `ends`: by feature, the operations that make what is held, and those that end it; `off`: those that leave the bar before. */
type ReadGrip = Omit<GripMasks, 'ready'> & { readonly rests: readonly OpSet[]; readonly ends: readonly OpSet[]; readonly ready: OpSet };

function readGrip(grip: Grip, { all, words, of }: Places, toolings: readonly string[], takes: Handling): ReadGrip {
  const way = isOffLathe(grip) ? 'bench' : grip.out;
  const inBar = grip.kind === 'bar' || grip.kind === 'bar-and-centre' || grip.kind === 'stub';
  const before = setWhere(all, words, (o) => !inBar && isBefore(o, way));
  const sets = (ids: readonly OpId[]): readonly OpSet[] => byFeature(ids).map((some) => union(some.map(of), words));
  const [rests, ends] = [sets(grip.ready), sets(grip.gone)];
  const [hides, gone] = [new Set(grip.hides), new Set(grip.gone)];
  const can = (o: Operation): boolean =>
    o.ways[way] !== undefined && !hides.has(o.id) && (o.light || !grip.lightOnly) && leavesHere(o, grip, gone);
  return {
    ...{ grip, way, rests, ends },
    ready: union([before, ...rests], words),
    gone: union(ends, words),
    can: setWhere(all, words, can),
    tooling: toolingOf(grip).map((ask) => toolings.indexOf(JSON.stringify(ask))),
    price: (isOffLathe(grip) ? 0 : SET_UP) + MINUTE * takes.hold(grip),
  };
}

/** A feature's methods differ in their operations. */
function byFeature(ids: readonly OpId[]): readonly (readonly OpId[])[] {
  const all = new Map<string, OpId[]>();
  for (const id of ids) {
    const feature = id.slice(0, id.lastIndexOf('/'));
    all.set(feature, [...(all.get(feature) ?? []), id]);
  }
  return [...all.values()];
}

/** Nothing when the combination lacks what the grip rests on. */
function gripMasks(g: ReadGrip, here: OpSet): GripMasks | undefined {
  const has = (of: OpSet): boolean => meets(of, here);
  if (!g.rests.every(has) || !g.ends.every(has)) return undefined;
  const { grip, price, tooling, way } = g;
  return { grip, ready: both(g.ready, here), gone: both(g.gone, here), can: both(g.can, here), price, tooling, way };
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

type Binding = { readonly b: Before; readonly first: OpSet; readonly then: OpSet };
type Draft = { readonly [kind in keyof Asks]: number[] };
const ENDS = ['first', 'second', 'bench'] as const;

/** By place, as if all of them were there. */
function asksOf({ all, words }: Places, befores: readonly Binding[]): Problem['asks'] {
  const none = (): number[] => new Array<number>(words).fill(0);
  const draft = (way: unknown): Draft | undefined => (way ? { needs: none(), forbids: none(), wants: none(), shuns: none() } : undefined);
  const asks = all.map(({ ways }) => ({ first: draft(ways.first), second: draft(ways.second), bench: draft(ways.bench) }));
  for (const { b, first, then } of befores) {
    // 'when' on the earlier operation: doing it from that end after the later one is the breach.
    const late = b.when !== undefined && b.when.op === b.first;
    const ends = b.when === undefined ? ENDS : late || b.when.op === b.then ? [b.when.from] : [];
    const kind = late ? (b.force === 'strict' ? 'forbids' : 'shuns') : b.force === 'strict' ? 'needs' : 'wants';
    const [asking, about] = late ? [first, then] : [then, first];
    for (let w = 0; w < words; w += 1)
      membersOf(asking[w] ?? 0, w, (place) => {
        for (const end of ends) join(asks[place]?.[end]?.[kind], about);
      });
  }
  return asks;
}

function join(set: number[] | undefined, more: OpSet): void {
  for (let w = 0; set && w < set.length; w += 1) set[w] = (set[w] ?? 0) | (more[w] ?? 0);
}

function cutAsks(asks: Problem['asks'][number], cut: (set: OpSet) => OpSet): Problem['asks'][number] {
  const one = (ask: Asks | undefined): Asks | undefined =>
    ask && { needs: cut(ask.needs), forbids: cut(ask.forbids), wants: cut(ask.wants), shuns: cut(ask.shuns) };
  return { first: one(asks.first), second: one(asks.second), bench: one(asks.bench) };
}
