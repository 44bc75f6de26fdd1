/** Hatching of cut faces (ISO 128: narrow lines at 45 degrees): lines clipped to polygons by an even-odd scan. */
import type { PathItem } from '../model/display.ts';
import { lineTo, move, path, polygon, type Stroke, type XY } from './display.ts';
import type { Leg } from './plane.ts';

/** `lean`: +1 rises to the right on paper, -1 falls. `pitch`: distance between lines, mm, square to them. */
export type Hatch = { readonly pitch: number; readonly lean: 1 | -1 };

/** Segments shorter than this are dust from touching a corner. */
const DUST = 0.05;

/** The face inside the ring, hatched: nothing where it is too small for a line. */
export function hatched(ring: readonly XY[], hatch: Hatch, stroke: Stroke): readonly PathItem[] {
  const lines = hatchLines([ring], hatch).flatMap(({ a, b }) => [move(a.x, a.y), lineTo(b.x, b.y)]);
  if (lines.length === 0) return [];
  return [{ ...path(lines, { stroke }), hatch: { ring: polygon(ring, {}).segments, lean: hatch.lean, at: 0, step: stepOf(hatch) } }];
}

/** Along the page's edges, mm. */
const stepOf = ({ pitch }: Hatch): number => pitch * Math.SQRT2;

/**
 * Hatch lines inside the rings, even-odd: a ring in a ring is a hole. Lines lie on a lattice fixed to the page's corner, so that
 * neighbours with one hatch agree.
 */
export function hatchLines(rings: readonly (readonly XY[])[], hatch: Hatch): readonly Leg[] {
  const step = stepOf(hatch);
  const offsets = rings.flatMap((ring) => ring.map((p) => along(p, hatch.lean)));
  if (offsets.length === 0) return [];
  const first = Math.ceil(Math.min(...offsets) / step);
  const last = Math.floor(Math.max(...offsets) / step);
  const found = Array.from({ length: Math.max(0, last - first + 1) }, (): number[] => []);
  for (const ring of rings) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length] ?? a;
      const [fa, fb] = [along(a, hatch.lean), along(b, hatch.lean)];
      const to = Math.min(last, Math.ceil(Math.max(fa, fb) / step));
      for (let n = Math.max(first, Math.floor(Math.min(fa, fb) / step)); n <= to; n++) {
        const x = crossing(a, b, fa - n * step, fb - n * step);
        if (x !== undefined) found[n - first]?.push(x);
      }
    });
  }
  return found.flatMap((xs, i) => legsOf(xs, (first + i) * step, hatch.lean));
}

/** Lines of the lattice are the places where y + lean * x is the same. */
function along(p: XY, lean: 1 | -1): number {
  return p.y + lean * p.x;
}

/** Where the edge crosses a line from which its ends are so far. Half-open, so that a corner on the line counts once or twice as it must. */
function crossing(a: XY, b: XY, fa: number, fb: number): number | undefined {
  return fa < 0 !== fb < 0 ? a.x + ((b.x - a.x) * fa) / (fa - fb) : undefined;
}

function legsOf(crossings: readonly number[], offset: number, lean: 1 | -1): readonly Leg[] {
  const xs = [...crossings].sort((a, b) => a - b);
  const legs: Leg[] = [];
  for (let i = 0; i + 1 < xs.length; i += 2) {
    const [x0, x1] = [xs[i] ?? 0, xs[i + 1] ?? 0];
    if (x1 - x0 > DUST) legs.push({ a: { x: x0, y: offset - lean * x0 }, b: { x: x1, y: offset - lean * x1 } });
  }
  return legs;
}
