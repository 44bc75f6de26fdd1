/**
 * The least day among all orders of blocks that what must come before what allows: exact search layer by layer, with memory of what is done
 * of each part, what stands in the spindle and which part was last in hand. Past the limit of states only the most promising go on; then the
 * day is the best found, and the bound says how much less there could be.
 */
import { type Outcome, type Space, search } from '../../base/layers.ts';
import type { Block } from './blocks.ts';
import type { Stop } from './stops.ts';

/** Compared field by field, least first. */
export type DayCost = {
  /** How often tooling is made in the chuck. */
  readonly makings: number;
  /** Whole minutes that this takes. */
  readonly minutes: number;
  /** How often soft jaws are bored. */
  readonly borings: number;
  /** How often a part is laid aside unfinished for another. */
  readonly aside: number;
  /** Pairs of blocks that stand the other way round than when part follows part. */
  readonly turned: number;
};
export type Asked = {
  readonly stops: readonly Stop[];
  readonly parts: readonly (readonly Block[])[];
  /** By tooling part. */
  readonly minutes: (made: string) => number;
  /** Places of the stops where part follows part. */
  readonly usual: readonly number[];
  /** What stands in the spindle at first. */
  readonly start: string | undefined;
};
export type FoundDay = {
  readonly order: readonly number[];
  readonly cost: DayCost;
  readonly exact: boolean;
  readonly atLeast: DayCost;
  readonly states: number;
};

const STATES = 1e5;
const NOTHING = 0;

/** `order`: places of stops. Undefined where they wait for each other in a ring. `states`: after how many it is cut short. */
export function leastDay(asked: Asked, states: number = STATES): FoundDay | undefined {
  const units = unitsOf(asked);
  const costs = costsOf(units);
  const found = search(spaceOf(asked, units), boundOf(asked, units), limits(states), listedFirst(asked));
  if (!found.found) return undefined;
  return {
    order: found.found.steps.flatMap(
      (part, i, steps) => asked.parts[part]?.[steps.slice(0, i).filter((one) => one === part).length]?.stops ?? [],
    ),
    ...{ cost: costs(found.found.cost), atLeast: costs(atLeastOf(found)), exact: found.exact, states: found.states },
  };
}

/** Of days that are as good, that which begins with what is listed first. */
function listedFirst({ parts, usual }: Asked): (a: number, b: number) => number {
  const places = parts.map((blocks) => usual.indexOf(blocks[0]?.stops[0] ?? 0));
  return (a, b) => (places[a] ?? 0) - (places[b] ?? 0);
}

const limits = (states: number) => ({ states, width: Number.POSITIVE_INFINITY, atMost: Number.POSITIVE_INFINITY });
const atLeastOf = ({ atLeast, exact, found }: Outcome): number => (exact ? (found?.cost ?? atLeast) : atLeast);

// ---- cost --------------------------------------------------------------------------------------------------------------
type Units = { readonly making: number; readonly minute: number; readonly boring: number; readonly aside: number };

/** Each field's unit is more than all fields after it can come to. */
function unitsOf({ parts, minutes }: Asked): Units {
  const blocks = parts.flat();
  const asks = blocks.flatMap((block) => (block.in?.by === undefined ? [] : [minutes(block.in.by)]));
  const aside = (blocks.length * (blocks.length - 1)) / 2 + 1;
  const boring = aside * (blocks.length + 1);
  const minute = boring * (blocks.filter((block) => block.in && block.in.by === undefined).length + 1);
  return { aside, boring, minute, making: minute * (asks.reduce((sum, one) => sum + one, 0) + 1) };
}

function costsOf(units: Units): (cost: number) => DayCost {
  const field = (cost: number, unit: number, over: number): number => Math.floor((cost % over) / unit);
  return (cost) => ({
    makings: Math.floor(cost / units.making),
    minutes: field(cost, units.minute, units.making),
    borings: field(cost, units.boring, units.minute),
    aside: field(cost, units.aside, units.boring),
    turned: cost % units.aside,
  });
}

function makingCost({ minutes }: Pick<Asked, 'minutes'>, { in: on }: Block, units: Units): number {
  if (!on) return 0;
  return on.by === undefined ? units.boring : units.making + minutes(on.by) * units.minute;
}

// ---- space -------------------------------------------------------------------------------------------------------------
/** A state: blocks done of each part; then what stands in the spindle; then which part was last in hand, from 1. */
function spaceOf(asked: Asked, units: Units): Space {
  const { parts } = asked;
  const keys = keysOf(asked);
  const chuck = parts.length;
  const hand = chuck + 1;
  const ready = readyOf(asked);
  const turned = turnedOf(asked);
  const left = (state: Int32Array, part: number): boolean => (state[part] ?? 0) < (parts[part]?.length ?? 0);
  return {
    words: parts.length + 2,
    steps: parts.reduce((sum, blocks) => sum + blocks.length, 0),
    start: [...parts.map(() => 0), keys.indexOf(asked.start ?? '') + 1, 0],
    cost: 0,
    expand: (state, next, reach) => {
      for (const [p, blocks] of parts.entries()) {
        const block = blocks[state[p] ?? 0];
        if (!block || !ready(state, p)) continue;
        const key = block.in ? keys.indexOf(block.in.key) + 1 : NOTHING;
        const stands = block.in !== undefined && !block.fresh && state[chuck] === key;
        const last = (state[hand] ?? 0) - 1;
        const aside = last >= 0 && last !== p && left(state, last) ? units.aside : 0;
        next.set(state);
        next[p] = (state[p] ?? 0) + 1;
        if (block.in || block.out) next[chuck] = key;
        next[hand] = p + 1;
        reach(p, (stands ? 0 : makingCost(asked, block, units)) + aside + turned(state, p));
      }
    },
  };
}

const keysOf = ({ parts }: Asked): readonly string[] => [...new Set(parts.flat().flatMap((block) => (block.in ? [block.in.key] : [])))];

/** Is all done that the part's next block waits for? */
function readyOf(asked: Asked): (state: Int32Array, part: number) => boolean {
  const { stops, parts } = asked;
  const at = new Map(parts.flatMap((blocks, p) => blocks.flatMap((block, b) => block.stops.map((stop) => [stop, { p, b }] as const))));
  const needs = parts.map((blocks) =>
    blocks.map((block) => block.stops.flatMap((i) => (stops[i]?.after ?? []).flatMap((j) => at.get(j) ?? []))),
  );
  const chain = freeParts(asked);
  for (const [i, p] of chain.entries()) {
    const before = chain[i - 1];
    if (before !== undefined) needs[p] = [[{ p: before, b: 0 }]];
  }
  return (state, part) => (needs[part]?.[state[part] ?? 0] ?? []).every(({ p, b }) => (state[p] ?? 0) > b);
}

/**
 * Parts of one block that nothing is tied to and that put out what stands in the spindle, in their usual order: changed about among themselves
 * they would only be turned more, so they are tried in that order alone.
 */
function freeParts({ stops, parts, usual }: Asked): readonly number[] {
  const waited = new Set(stops.flatMap((stop) => stop.after));
  const free = ({ stops: own, in: on, out, fresh }: Block): boolean =>
    out && !on && !fresh && own.every((i) => !waited.has(i) && (stops[i]?.after ?? []).length === 0);
  const place = (p: number): number => usual.indexOf(parts[p]?.[0]?.stops[0] ?? 0);
  return parts.flatMap(([first, second], p) => (first && !second && free(first) ? [p] : [])).sort((a, b) => place(a) - place(b));
}

/** Blocks not done yet that stand before the part's next one where part follows part. */
function turnedOf({ parts, usual }: Asked): (state: Int32Array, part: number) => number {
  const places = parts.map((blocks) => blocks.map((block) => usual.indexOf(block.stops[0] ?? 0)));
  const table = places.map((own) =>
    own.map((mine) => places.map((others) => others.map((_, done) => others.slice(done).filter((other) => other < mine).length))),
  );
  return (state, part) => {
    const row = table[part]?.[state[part] ?? 0] ?? [];
    return row.reduce((sum, counts, p) => (p === part ? sum : sum + (counts[state[p] ?? 0] ?? 0)), 0);
  };
}

/** What is asked for by a block to come, and does not stand in the spindle, is made once more at the least. */
function boundOf(asked: Asked, units: Units): (state: Int32Array) => number {
  const keys = keysOf(asked);
  const price = keys.map((key) => {
    const block = asked.parts.flat().find((one) => one.in?.key === key);
    return block ? makingCost(asked, block, units) : 0;
  });
  const asks = asked.parts.map((blocks) =>
    blocks.map((_, done) => [...new Set(blocks.slice(done).flatMap((b) => (b.in ? [keys.indexOf(b.in.key)] : [])))]),
  );
  return (state) => {
    const wanted = new Set(asked.parts.flatMap((_, p) => asks[p]?.[state[p] ?? 0] ?? []));
    wanted.delete((state[asked.parts.length] ?? 0) - 1);
    return [...wanted].reduce((sum, key) => sum + (price[key] ?? 0), 0);
  };
}
