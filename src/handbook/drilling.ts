/**
 * Feeds of twist drills, what depth takes off speed and feed, and how deep each peck goes. Bands are by diameter, over the lower bound
 * and up to the upper; outside 0.34-25.4 mm nothing is given.
 */
import { type Len, len, mm, toMm } from '../base/units.ts';
import { type FactTable, factTable, type Standing } from './fact.ts';
import { cite } from './sources.ts';

export type DrillFeed = {
  /** mm a turn; the lower end for tough metals. */
  readonly lo: number;
  readonly hi: number;
  /** By the tailstock's wheel on a light lathe: about six tenths of the middle. */
  readonly hand: number;
  readonly source: string;
  readonly standing: Standing;
};

export function drillFeed(diameter: Len): DrillFeed | undefined {
  const d = toMm(diameter);
  const row = FEEDS.find(([from, to], i) => (d > from || (i === 0 && d === from)) && d <= to);
  if (!row) return undefined;
  const [, , lo, hi, hand] = row;
  return {
    lo,
    hi,
    hand,
    source: cite('navedtra', 'the same ladder on the drill-card; hand feed derived here'),
    standing: 'common practice',
  };
}

/** Feed of a reamer over that of a drill of its size: two to three times, from memory. */
export const REAM_FEED: { readonly lo: number; readonly hi: number } = { lo: 2, hi: 3 };

/** Factors on speed and feed at a depth; 1 below three diameters. Between rows the shallower row counts; past the last, the last. */
export function deepHole(depth: Len, diameter: Len): { readonly speed: number; readonly feed: number } {
  const row = DEEP.findLast(([diameters]) => depth >= diameters * diameter);
  return row ? { speed: 1 - row[1] / 100, feed: 1 - row[2] / 100 } : { speed: 1, feed: 1 };
}

/** Depths of the pecks from full diameter, in order; they add up to the depth. None for a depth of nought. */
export function pecks(depth: Len, diameter: Len): readonly Len[] {
  const steps: Len[] = [];
  let done = 0;
  while (done < depth) {
    const ratio = done === 0 ? 'peck.first' : done < drilling.value('peck.deep') * diameter ? 'peck.next' : 'peck.last';
    const step = Math.min(depth - done, Math.max(1, Math.round(drilling.value(ratio) * diameter)));
    steps.push(len(step));
    done += step;
  }
  return steps;
}

/** Probable mean oversize of a drilled hole: linear between the sizes published, nothing outside them. */
export function probableOversize(diameter: Len): Len | undefined {
  const d = toMm(diameter);
  for (const [i, [to, over]] of OVERSIZE.entries()) {
    const [from, before] = OVERSIZE[i - 1] ?? [to, over];
    if (d >= from && d <= to) return mm(from === to ? over : before + ((over - before) * (d - from)) / (to - from));
  }
  return undefined;
}

export const drilling: FactTable = factTable([
  {
    id: 'peck.first',
    value: 2.5,
    unit: 'ratio',
    what: 'first peck, in diameters',
    source: cite('greenfield', '2 to 3 d in one step'),
    standing: 'common practice',
  },
  {
    id: 'peck.next',
    value: 1,
    unit: 'ratio',
    what: 'each further peck, in diameters',
    source: cite('custom'),
    standing: 'common practice',
  },
  {
    id: 'peck.last',
    value: 0.5,
    unit: 'ratio',
    what: 'pecks of a deep hole, in diameters',
    source: cite('custom'),
    standing: 'common practice',
  },
  {
    id: 'peck.deep',
    value: 5,
    unit: 'ratio',
    what: 'depth in diameters from which pecks are halved',
    source: cite('custom'),
    standing: 'common practice',
  },
]);

/** mm: over, up to; mm a turn: low, high (0.001 in steps as published), hand. */
const FEEDS: readonly (readonly [from: number, to: number, lo: number, hi: number, hand: number])[] = [
  [0.34, 3.175, 0.025, 0.051, 0.025],
  [3.175, 6.35, 0.051, 0.102, 0.05],
  [6.35, 12.7, 0.102, 0.178, 0.08],
  [12.7, 25.4, 0.178, 0.381, 0.12],
];

/** Drill card: depth in diameters; percent off speed, off feed. */
const DEEP: readonly (readonly [diameters: number, speed: number, feed: number])[] = [
  [3, 10, 10],
  [4, 20, 10],
  [5, 30, 20],
  [6, 37.5, 20],
];

/** FED-STD-H28/2B, table II.A.1: 0.0015 in at 3/64, 0.0038 at 1/4 - 20's number 7, 0.0047 at 1/2 - 13's 27/64. mm. */
const OVERSIZE: readonly (readonly [diameter: number, over: number])[] = [
  [1.191, 0.0381],
  [5.105, 0.0965],
  [10.716, 0.1194],
];
