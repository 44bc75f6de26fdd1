/**
 * One layer of a search: states of a few 32-bit words each, found again by what they hold (open addressing), with the least cost at
 * which each is reached, its bound, and the steps that reach it at that cost. It grows; it never forgets.
 */

export type Layer = {
  readonly words: number;
  size: number;
  /** `words` to a state, one after the other. */
  keys: Int32Array;
  costs: Float64Array;
  /** Least cost still to come. */
  ahead: Float64Array;
  /** First of the arcs that reach the state; NONE where there are none. */
  heads: Int32Array;
  /** Place of a state plus one, 0 where empty; a power of two long. */
  table: Int32Array;
  arcs: number;
  arcFrom: Int32Array;
  arcStep: Int32Array;
  arcNext: Int32Array;
};
export const NONE = -1;
const FIRST_ROOM = 16;

function newLayer(words: number): Layer {
  return {
    words,
    size: 0,
    keys: new Int32Array(FIRST_ROOM * words),
    costs: new Float64Array(FIRST_ROOM),
    ahead: new Float64Array(FIRST_ROOM),
    heads: new Int32Array(FIRST_ROOM),
    table: new Int32Array(FIRST_ROOM * 2),
    arcs: 0,
    arcFrom: new Int32Array(FIRST_ROOM),
    arcStep: new Int32Array(FIRST_ROOM),
    arcNext: new Int32Array(FIRST_ROOM),
  };
}

/** Layers to be used again, by their number: what stands in them lasts until the next search that is given them. */
export type Shelf = Layer[];

/** The layer of that number, empty. */
export function cleared(shelf: Shelf, n: number, words: number): Layer {
  const layer = shelf[n];
  if (layer === undefined || layer.words !== words) {
    const made = newLayer(words);
    shelf[n] = made;
    return made;
  }
  layer.table.fill(0);
  layer.size = 0;
  layer.arcs = 0;
  return layer;
}

/** The state's place, or, where it is not there, -1 less the slot of the table where it would be entered. */
export function find(layer: Layer, state: Int32Array): number {
  const { words, keys, table } = layer;
  const mask = table.length - 1;
  let slot = hash(state, 0, words) & mask;
  for (let entry = table[slot] ?? 0; entry !== 0; entry = table[slot] ?? 0) {
    const base = (entry - 1) * words;
    let w = 0;
    while (w < words && keys[base + w] === state[w]) w += 1;
    if (w === words) return entry - 1;
    slot = (slot + 1) & mask;
  }
  return -1 - slot;
}

/** Enters a state that `find` did not find, at the slot that it named. */
export function add(layer: Layer, state: Int32Array, slot: number, cost: number, ahead: number): number {
  const at = layer.size;
  if (at === layer.costs.length) grow(layer);
  layer.size += 1;
  for (let w = 0; w < layer.words; w += 1) layer.keys[at * layer.words + w] = state[w] ?? 0;
  layer.costs[at] = cost;
  layer.ahead[at] = ahead;
  layer.heads[at] = NONE;
  layer.table[slot] = at + 1;
  if (layer.size * 2 > layer.table.length) widen(layer);
  return at;
}

/** One more step that reaches the state; `before`: the arcs that stay (NONE forgets them). */
export function addArc(layer: Layer, at: number, from: number, step: number, before: number): void {
  const arc = layer.arcs;
  if (arc === layer.arcFrom.length) {
    layer.arcFrom = doubled(layer.arcFrom);
    layer.arcStep = doubled(layer.arcStep);
    layer.arcNext = doubled(layer.arcNext);
  }
  layer.arcs += 1;
  layer.arcFrom[arc] = from;
  layer.arcStep[arc] = step;
  layer.arcNext[arc] = before;
  layer.heads[at] = arc;
}

export function readState(layer: Layer, at: number, into: Int32Array): void {
  for (let w = 0; w < layer.words; w += 1) into[w] = layer.keys[at * layer.words + w] ?? 0;
}

function grow(layer: Layer): void {
  layer.keys = doubled(layer.keys);
  layer.heads = doubled(layer.heads);
  layer.costs = doubledFloats(layer.costs);
  layer.ahead = doubledFloats(layer.ahead);
}

function widen(layer: Layer): void {
  const { words, keys } = layer;
  const table = new Int32Array(layer.table.length * 2);
  const mask = table.length - 1;
  for (let at = 0; at < layer.size; at += 1) {
    let slot = hash(keys, at * words, words) & mask;
    while (table[slot] !== 0) slot = (slot + 1) & mask;
    table[slot] = at + 1;
  }
  layer.table = table;
}

function doubled(a: Int32Array): Int32Array {
  const b = new Int32Array(a.length * 2);
  b.set(a);
  return b;
}
function doubledFloats(a: Float64Array): Float64Array {
  const b = new Float64Array(a.length * 2);
  b.set(a);
  return b;
}

/** Mixes word by word (multiply and fold, as in the finalizer of MurmurHash3, A. Appleby, public domain). */
function hash(keys: Int32Array, from: number, words: number): number {
  let h = 0;
  for (let w = from; w < from + words; w += 1) {
    h = Math.imul(h ^ (keys[w] ?? 0), 0x85ebca6b);
    h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
    h ^= h >>> 16;
  }
  return h;
}
