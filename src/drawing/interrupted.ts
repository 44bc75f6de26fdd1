/**
 * Long work with plain stretches of it left out, so that the rest may be larger: an interrupted view (ISO 128-3). Where the work is as thick all
 * along, nothing is lost; what is on a mandrel, and what is bored or filed from the side, stays whole.
 */
import type { Stage } from '../model/stage.ts';
import { along, between, type Edge, type Sketch, type UR } from './sketch.ts';
import type { Window } from './window.ts';

/** Along the work, mm of it. */
export type Stretch = { readonly from: number; readonly to: number };

/** Left of a broken stretch, on both sides of its gap together, and the gap: mm on paper. */
export const BROKEN = { kept: 2, gap: 0.8 } as const;
const LEFT = BROKEN.kept + BROKEN.gap;
const DUST = 1e-6;

/** Shorter than so many radii is left whole: what is short and thick reads as it is. */
const LONG = 3;

/** Long stretches along which every wall is level and nothing begins or ends, the longest first. */
export function plainStretches(sketch: Sketch, window: Window, stage: Stage): readonly Stretch[] {
  const walls = sketch.loops.flat();
  const kept = keptWhole(window, stage);
  const held = window.clamp ? [window.clamp.from, window.clamp.to] : [];
  const ends = [window.from, window.right, ...held, ...kept.flatMap(({ from, to }) => [from, to])];
  const corners = [
    ...walls.map(({ a }) => a.u),
    ...walls.map(({ b }) => b.u),
    ...sketch.bands.flatMap((band) => band.polygon.map(({ u }) => u)),
  ];
  const stations = [...new Set([...ends, ...corners])].filter((u) => u >= window.from && u <= window.right).sort((a, b) => a - b);
  return stations
    .slice(1)
    .map((to, i): Stretch => ({ from: stations[i] ?? to, to }))
    .filter(({ from, to }) => to - from > LONG * window.rim && isPlain(walls, kept, (from + to) / 2))
    .sort((a, b) => lengthOf(b) - lengthOf(a));
}

function isPlain(walls: readonly Edge[], kept: readonly Stretch[], u: number): boolean {
  const here = walls.filter(({ a, b }) => a.u < u !== b.u < u);
  return here.length > 0 && here.every(({ a, b }) => a.r === b.r) && !kept.some(({ from, to }) => u > from && u < to);
}

/** On tooling, and what is made from the side. */
function keptWhole({ tooling }: Window, { sides = [], out }: Stage): readonly Stretch[] {
  const us = tooling.map(({ u }) => u);
  return [
    ...(us.length > 0 ? [{ from: Math.min(...us), to: Math.max(...us) }] : []),
    ...sides.map(({ z, half }) => {
      const ends = [along(z - half, out), along(z + half, out)] as const;
      return { from: Math.min(...ends), to: Math.max(...ends) };
    }),
  ];
}

const lengthOf = ({ from, to }: Stretch): number => to - from;

/** The largest scale at which so much work fits so much paper, the longest of its stretches broken as far as that helps; none binds work that is plain all along. */
export function brokenScale(long: number, stretches: readonly Stretch[], width: number): number {
  let [best, left] = [width / long, long];
  stretches.forEach((stretch, i) => {
    left -= lengthOf(stretch);
    const room = width - (i + 1) * LEFT;
    const scale = left > DUST ? room / left : room > 0 ? Number.POSITIVE_INFINITY : 0;
    if (scale * lengthOf(stretch) > LEFT) best = Math.max(best, scale);
  });
  return best;
}

/** As few of them as must be broken for the work to fit at that scale, from left to right. */
export function brokenAt(long: number, stretches: readonly Stretch[], width: number, scale: number): readonly Stretch[] {
  let wide = long * scale;
  const fits = (): boolean => wide <= width + DUST;
  const broken: Stretch[] = [];
  for (const stretch of stretches) {
    if (fits()) break;
    wide -= lengthOf(stretch) * scale - LEFT;
    broken.push(stretch);
  }
  return broken.sort((a, b) => a.from - b.from);
}

/** Where a place comes to lie when what is left out is taken away. */
export type Fold = (u: number) => number;

export function foldAt(broken: readonly Stretch[], scale: number): Fold {
  return (u) =>
    broken.reduce(
      (at, stretch) => at - Math.max(0, Math.min(1, (u - stretch.from) / lengthOf(stretch))) * (lengthOf(stretch) - LEFT / scale),
      u,
    );
}

export function foldedSketch(sketch: Sketch, fold: Fold): Sketch {
  const point = ({ u, r }: UR): UR => ({ u: fold(u), r });
  const loop = (edges: readonly Edge[]): readonly Edge[] => edges.map((e) => between(e, point(e.a), point(e.b)));
  return {
    ...sketch,
    loops: sketch.loops.map(loop),
    before: sketch.before.map(loop),
    bands: sketch.bands.map((band) => ({ ...band, polygon: band.polygon.map(point) })),
    taken: sketch.taken.map((ring) => ring.map(point)),
  };
}

export function foldedWindow(window: Window, fold: Fold): Window {
  const { from, right, cutAt, clamp, tooling } = window;
  return {
    ...window,
    from: fold(from),
    right: fold(right),
    ...(cutAt === undefined ? {} : { cutAt: fold(cutAt) }),
    ...(clamp ? { clamp: { ...clamp, from: fold(clamp.from), to: fold(clamp.to) } } : {}),
    tooling: tooling.map(({ u, r }) => ({ u: fold(u), r })),
  };
}
