/**
 * Change wheels for a pitch on this leadscrew, from the wheels in the box: pitch = leadscrew x drivers / driven. Every simple and every
 * compound train is tried; whole numbers decide.
 */
import type { Len } from '../base/units.ts';
import { numbersTable } from '../handbook/numbers.ts';
import type { Figures } from '../model/plan.ts';

export type Train = { readonly drivers: readonly number[]; readonly driven: readonly number[] };
export type Wheels = NonNullable<Figures['wheels']>;
/** `off` / `by` is the error of the pitch, as a signed fraction of it. */
type Scored = { readonly train: Train; readonly off: number; readonly by: number; readonly total: number };

/**
 * The best train by error, then by fewer wheels, then the larger wheels in all (they bridge the distance); undefined when the box makes
 * none within the error that a short thread bears. `error` is a fraction of the pitch, positive when the pitch comes out long.
 */
export function findWheels(gears: readonly number[], leadscrew: Len, pitch: Len): Wheels | undefined {
  // two wheels without error cannot be bettered by four
  const simple = bestOf(simpleTrains(gears), leadscrew, pitch);
  const best = simple?.off === 0 ? simple : bestOf(trainsOf(gears), leadscrew, pitch);
  if (!best || Math.abs(best.off) > best.by * numbersTable.value('wheels.error.most')) return undefined;
  return { ...best.train, error: best.off / best.by, halfNuts: halfNuts(leadscrew, pitch) };
}

function bestOf(trains: readonly Train[], leadscrew: Len, pitch: Len): Scored | undefined {
  let best: Scored | undefined;
  for (const train of trains) {
    const scored = score(train, leadscrew, pitch);
    if (!best || better(scored, best)) best = scored;
  }
  return best;
}

/** Half-nuts may be dropped in anywhere when the leadscrew's pitch is a whole multiple of the thread's. */
export function halfNuts(leadscrew: Len, pitch: Len): 'anywhere' | 'closed' {
  return leadscrew % pitch === 0 ? 'anywhere' : 'closed';
}

/** Every train of two wheels (an idler between) and of four, each wheel used as often as it is there; like trains once. */
export function trainsOf(gears: readonly number[]): readonly Train[] {
  const pairs = pairsOf(gears);
  const compound = pairs.flatMap(([a, b]) =>
    pairs
      .filter(([c, d]) => inBox(gears, [a, b, c, d]) && goesTogether(a, b, c, d))
      .map(([c, d]): Train => ({ drivers: [a, c], driven: [b, d] })),
  );
  return [...simpleTrains(gears), ...compound];
}

function simpleTrains(gears: readonly number[]): readonly Train[] {
  const even = sizesOf(gears)
    .filter((a) => inBox(gears, [a, a]))
    .map((a): Train => ({ drivers: [a], driven: [a] }));
  return [...even, ...pairsOf(gears).map(([driver, driven]): Train => ({ drivers: [driver], driven: [driven] }))];
}

const sizesOf = (gears: readonly number[]): readonly number[] => [...new Set(gears)].sort((a, b) => a - b);

function pairsOf(gears: readonly number[]): readonly (readonly [number, number])[] {
  const sizes = sizesOf(gears);
  return sizes.flatMap((a) => sizes.filter((b) => b !== a && inBox(gears, [a, b])).map((b) => [a, b] as const));
}

/** a drives b; c, on b's stud, drives d: the stud wheel clears the first shaft, and b clears the leadscrew's. */
function goesTogether(a: number, b: number, c: number, d: number): boolean {
  const clear = numbersTable.value('wheels.clear');
  return (
    a + b - c >= clear &&
    c + d - b >= clear &&
    a + b >= numbersTable.value('wheels.first-pair') &&
    c + d >= numbersTable.value('wheels.second-pair')
  );
}

function inBox(gears: readonly number[], wanted: readonly number[]): boolean {
  const count = (list: readonly number[], size: number): number => list.filter((one) => one === size).length;
  return wanted.every((size) => count(gears, size) >= count(wanted, size));
}

function score(train: Train, leadscrew: Len, pitch: Len): Scored {
  const product = (list: readonly number[]): number => list.reduce((all, one) => all * one, 1);
  const [drivers, driven] = [product(train.drivers), product(train.driven)];
  const total = [...train.drivers, ...train.driven].reduce((sum, one) => sum + one, 0);
  return { train, off: leadscrew * drivers - pitch * driven, by: pitch * driven, total };
}

/** Errors are compared as fractions of whole numbers, so that equal ones are seen to be equal. */
function better(a: Scored, b: Scored): boolean {
  const difference = Math.abs(a.off) * b.by - Math.abs(b.off) * a.by;
  if (difference !== 0) return difference < 0;
  if (a.train.drivers.length !== b.train.drivers.length) return a.train.drivers.length < b.train.drivers.length;
  return a.total > b.total;
}
