/**
 * Trains of change wheels for a pitch on a leadscrew: pitch = leadscrew x drivers / driven. Every train of two wheels with an idler between
 * and of four wheels that the box and the banjo allow is tried; whole numbers decide.
 */
import { type Len, len } from '../base/units.ts';
import { compoundFits, idlerFits, type Reach } from './gear-reach.ts';

/** A length that need not be whole: `units` / `per`, of 0.1 um. 254 000 / 26 is the pitch of 26 threads an inch. */
export type Lead = { readonly units: number; readonly per: number };
export type Train = { readonly drivers: readonly number[]; readonly driven: readonly number[]; readonly idler?: number };
/** `off` / `by` is the error of the pitch, as a signed fraction of it, positive where it comes out long; `total` teeth in drivers and driven. */
export type Scored = { readonly train: Train; readonly off: number; readonly by: number; readonly total: number };
export type TrainAsk = { readonly gears: readonly number[]; readonly reach: Reach; readonly leadscrew: Lead; readonly pitch: Lead };

export const leadOf = (pitch: Len): Lead => ({ units: pitch, per: 1 });
export const perInch = (threads: number): Lead => ({ units: INCH, per: threads });
const INCH = 254_000;

/** The nearest whole unit. */
export const roundLead = ({ units, per }: Lead): Len => len(Math.round(units / per));

/** In millionths of the pitch. */
export const ppmOf = ({ off, by }: Pick<Scored, 'off' | 'by'>): number => (off / by) * 1_000_000;

/** Leadscrew over thread, in its lowest terms. */
export function ratioOf(leadscrew: Lead, pitch: Lead): { readonly over: number; readonly under: number } {
  const [over, under] = [leadscrew.units * pitch.per, pitch.units * leadscrew.per];
  const divisor = gcd(over, under);
  return { over: over / divisor, under: under / divisor };
}

export function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

/** The best train; nothing where none fits. Four wheels are not tried where two are exact. */
export function bestTrain(ask: TrainAsk): Scored | undefined {
  const simple = bestOf(ask, simpleTrains(ask));
  return simple?.off === 0 ? simple : bestOf(ask, [...(simple ? [simple.train] : []), ...compoundTrains(ask)]);
}

/** The best `most`, best first; of trains with the same drivers and the same driven wheels the first alone. */
export function bestTrains(ask: TrainAsk, most: number): readonly Scored[] {
  const all = [...simpleTrains(ask), ...compoundTrains(ask)].map((train) => score(train, ask));
  const seen = new Set<string>();
  const out: Scored[] = [];
  for (const one of all.sort((a, b) => (better(a, b) ? -1 : better(b, a) ? 1 : 0))) {
    const key = [one.train.drivers, one.train.driven].map((wheels) => [...wheels].sort((a, b) => a - b).join(' ')).join('/');
    if (seen.has(key)) continue;
    seen.add(key);
    out.push(one);
    if (out.length === most) break;
  }
  return out;
}

/** Every train that can be set up, like ones once. */
export function allTrains(ask: Pick<TrainAsk, 'gears' | 'reach'>): readonly Train[] {
  return [...simpleTrains(ask), ...compoundTrains(ask)];
}

/** Two wheels, with the smallest idler that bridges them. */
export function simpleTrains({ gears, reach }: Pick<TrainAsk, 'gears' | 'reach'>): readonly Train[] {
  const box = boxOf(gears);
  return pairsOf(box).flatMap(([driver, driven]): readonly Train[] => {
    const idler = box.sizes.find((size) => inBox(box, [driver, driven, size]) && idlerFits(reach, driver, size, driven));
    return idler === undefined ? [] : [{ drivers: [driver], driven: [driven], idler }];
  });
}

export function compoundTrains({ gears, reach }: Pick<TrainAsk, 'gears' | 'reach'>): readonly Train[] {
  const box = boxOf(gears);
  const pairs = pairsOf(box);
  return pairs.flatMap(([a, b]) =>
    pairs
      .filter(([c, d]) => compoundFits(reach, a, b, c, d) && inBox(box, [a, b, c, d]))
      .map(([c, d]): Train => ({ drivers: [a, c], driven: [b, d] })),
  );
}

/** A wheel that can stand between first driver and stud as well, so that the leadscrew turns the other way; only where one is left. */
export function secondIdler(gears: readonly number[], train: Train): number | undefined {
  const used = [...train.drivers, ...train.driven, ...(train.idler === undefined ? [] : [train.idler])];
  const box = boxOf(gears);
  return box.sizes.find((size) => inBox(box, [...used, size]));
}

type Box = { readonly sizes: readonly number[]; readonly count: ReadonlyMap<number, number> };

function boxOf(gears: readonly number[]): Box {
  const count = new Map<number, number>();
  for (const size of gears) count.set(size, (count.get(size) ?? 0) + 1);
  return { sizes: [...count.keys()].sort((a, b) => a - b), count };
}

/** Driver and driven; two of a size where there are two. */
function pairsOf(box: Box): readonly (readonly [number, number])[] {
  return box.sizes.flatMap((a) => box.sizes.filter((b) => inBox(box, [a, b])).map((b) => [a, b] as const));
}

function inBox({ count }: Box, wanted: readonly number[]): boolean {
  return wanted.every((size) => wanted.filter((one) => one === size).length <= (count.get(size) ?? 0));
}

function bestOf(ask: TrainAsk, trains: readonly Train[]): Scored | undefined {
  let best: Scored | undefined;
  for (const train of trains) {
    const scored = score(train, ask);
    if (!best || better(scored, best)) best = scored;
  }
  return best;
}

export function score(train: Train, { leadscrew, pitch }: Pick<TrainAsk, 'leadscrew' | 'pitch'>): Scored {
  const product = (list: readonly number[]): number => list.reduce((all, one) => all * one, 1);
  const { over, under } = ratioOf(leadscrew, pitch);
  const by = under * product(train.driven);
  const total = [...train.drivers, ...train.driven].reduce((sum, one) => sum + one, 0);
  return { train, off: over * product(train.drivers) - by, by, total };
}

/** Errors are compared as fractions of whole numbers, so that equal ones are seen to be equal; then fewer wheels, then larger ones. */
function better(a: Scored, b: Scored): boolean {
  const difference = Math.abs(a.off) * b.by - Math.abs(b.off) * a.by;
  if (difference !== 0) return difference < 0;
  if (a.train.drivers.length !== b.train.drivers.length) return a.train.drivers.length < b.train.drivers.length;
  return a.total > b.total;
}
