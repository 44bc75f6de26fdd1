/**
 * Holes to be tapped and depths to be cut. A share of thread of an ISO thread is told on the basis 5/8 H (1.08253 P on diameter, the
 * standard's own depth) unless the other is asked for: handbooks and FED-STD-H28 reckon with 3/4 H (1.29904 P), on which the same hole
 * shows five sixths of the figure. Whitworth and BA threads are reckoned on their own whole depth. A sheet names the basis.
 */
import { type Len, len, mm, roundHalfEven } from '../base/units.ts';
import type { Pair, ThreadLimits } from './iso965-metric.ts';
import { BA_FORM, type Basis, FULL_DEPTH, WHITWORTH_FORM } from './thread-form.ts';

export type { Basis } from './thread-form.ts';
export type TappingDrill = {
  readonly drill: Len;
  /** Percent of full thread. */
  readonly engagement: number;
  readonly basis: Basis;
  /** Where the hole stands to the minor diameter's limits. */
  readonly place: 'under' | 'lower half' | 'upper half' | 'over';
  readonly inside: boolean;
};

/**
 * Drills of `rack` whose hole is inside the minor diameter's limits, by rising size; besides them the nearest under and the nearest over.
 * `thread` is the inside thread.
 */
export function tappingDrills(
  thread: ThreadLimits,
  rack: readonly Len[],
  basis: Basis = usualBasis(thread.flankAngle),
): readonly TappingDrill[] {
  const sizes = [...new Set(rack)].sort((a, b) => a - b).filter((drill) => drill < thread.nominal);
  const under = sizes.findLast((drill) => drill < thread.minor.lo);
  const over = sizes.find((drill) => drill > thread.minor.hi);
  return sizes
    .filter((drill) => drill === under || drill === over || (drill >= thread.minor.lo && drill <= thread.minor.hi))
    .map((drill) => {
      const place = placeOf(drill, thread.minor);
      return { drill, engagement: engagement(thread, drill, basis), basis, place, inside: place !== 'under' && place !== 'over' };
    });
}

/** What a share of thread is a share of, where nothing else is said. Degrees, included. */
export function usualBasis(flankAngle: number): Basis {
  if (flankAngle === WHITWORTH_FORM.flankAngle) return 'Whitworth depth';
  return flankAngle === BA_FORM.flankAngle ? 'BA depth' : '5/8 H';
}

/** Percent of full thread that a hole of this size leaves. */
export function engagement(thread: Pick<ThreadLimits, 'nominal' | 'pitch'>, hole: Len, basis: Basis): number {
  return (100 * (thread.nominal - hole)) / (FULL_DEPTH[basis] * thread.pitch);
}

/** Its inverse: the hole that leaves this share. */
export function holeFor(thread: Pick<ThreadLimits, 'nominal' | 'pitch'>, percent: number, basis: Basis): Len {
  return len(roundHalfEven(thread.nominal - (percent / 100) * FULL_DEPTH[basis] * thread.pitch));
}

/**
 * How deep a screw-cutting tool goes, a side, from the crest that was turned or bored (`crest`, a diameter) until the pitch diameter is
 * inside its limits. `nose`: the tool's radius, 0 for a sharp point; a flat of width w counts as a radius of w × 0.866. A sharp point on
 * a basic crest gives 7/8 H outside and 3/4 H inside; the profile's own radius H/6 gives 0.61343 P outside.
 */
export function threadDepth(thread: ThreadLimits, crest: Len, nose: Len): Pair {
  const tip = height(thread.pitch) / 2 - nose;
  const { lo, hi } = thread.pitchDiameter;
  const depths =
    thread.side === 'outside' ? [(crest - hi) / 2 + tip, (crest - lo) / 2 + tip] : [(lo - crest) / 2 + tip, (hi - crest) / 2 + tip];
  const [shallow = 0, deep = 0] = depths.map(roundHalfEven);
  return { lo: len(shallow), hi: len(deep) };
}

/** Radius at the root: from the least of FED-STD-H28/21B (0.125 P) to the profile's H/6 (0.144338 P). */
export function rootRadius(pitch: Len): Pair {
  return { lo: len(roundHalfEven(pitch / 8)), hi: len(roundHalfEven(height(pitch) / 6)) };
}

/** Heights of the profile, a side: outside to the rounded root h3 = 17/24 H, inside to the basic major H1 = 5/8 H. */
export function profileDepth(pitch: Len): { readonly outside: Len; readonly inside: Len } {
  const h = height(pitch);
  return { outside: len(roundHalfEven((17 / 24) * h)), inside: len(roundHalfEven((5 / 8) * h)) };
}

/** Usual tapping drill, ISO 2306 (from memory; most seen on a list of tapping drills). Nothing for a thread that is not in it. */
export function usualTappingDrill(name: string): Len | undefined {
  const drill = ISO_2306.get(name);
  return drill === undefined ? undefined : mm(drill);
}

function height(pitch: Len): number {
  return (Math.sqrt(3) / 2) * pitch;
}

function placeOf(drill: Len, { lo, hi }: Pair): TappingDrill['place'] {
  if (drill < lo) return 'under';
  if (drill > hi) return 'over';
  return drill - lo < hi - drill ? 'lower half' : 'upper half';
}

/** mm, by canonical name. */
const ISO_2306: ReadonlyMap<string, number> = new Map([
  ['M1.6', 1.25],
  ['M2', 1.6],
  ['M2.5', 2.05],
  ['M3', 2.5],
  ['M3.5', 2.9],
  ['M4', 3.3],
  ['M5', 4.2],
  ['M6', 5],
  ['M7', 6],
  ['M8', 6.8],
  ['M10', 8.5],
  ['M12', 10.2],
  ['M14', 12],
  ['M16', 14],
  ['M18', 15.5],
  ['M20', 17.5],
  ['M24', 21],
  ['M2.5x0.35', 2.15],
  ['M3x0.35', 2.65],
  ['M4x0.5', 3.5],
  ['M5x0.5', 4.5],
  ['M6x0.75', 5.2],
  ['M8x0.75', 7.25],
  ['M8x1', 7],
  ['M10x0.75', 9.25],
  ['M10x1', 9],
  ['M10x1.25', 8.8],
  ['M12x1', 11],
  ['M12x1.25', 10.8],
  ['M12x1.5', 10.5],
  ['M14x1', 13],
  ['M14x1.5', 12.5],
  ['M16x1', 15],
  ['M16x1.5', 14.5],
  ['M20x1', 19],
  ['M20x1.5', 18.5],
]);
