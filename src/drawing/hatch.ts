/** Hatching of cut faces (ISO 128: narrow lines at 45 degrees): lines clipped to polygons by an even-odd scan. */
import type { PathItem, Segment } from '../model/display.ts';
import { lineTo, move, polygon, type Stroke, type XY } from './display.ts';
import type { Leg } from './plane.ts';

/** `lean`: +1 rises to the right on paper, -1 falls. `pitch`: distance between lines, mm, square to them. */
export type Hatch = { readonly pitch: number; readonly lean: 1 | -1 };

/** Segments shorter than this are dust from touching a corner. */
const DUST = 0.05;

/** The face inside the ring, hatched: nothing where it is too small for a line. */
export function hatched(ring: readonly XY[], hatch: Hatch, stroke: Stroke): readonly PathItem[] {
  const ends = endsOf([ring], hatch);
  const lines: Segment[] = [];
  for (let i = 0; i < ends.length; i += ENDS) {
    lines.push(move(ends[i] ?? 0, ends[i + 1] ?? 0), lineTo(ends[i + 2] ?? 0, ends[i + 3] ?? 0));
  }
  if (lines.length === 0) return [];
  const lattice = { ring: polygon(ring, {}).segments, lean: hatch.lean, at: 0, step: stepOf(hatch) };
  return [{ kind: 'path', segments: lines, stroke, hatch: lattice }];
}

/** Along the page's edges, mm. */
const stepOf = ({ pitch }: Hatch): number => pitch * Math.SQRT2;

/**
 * Hatch lines inside the rings, even-odd: a ring in a ring is a hole. Lines lie on a lattice fixed to the page's corner, so that
 * neighbours with one hatch agree.
 */
export function hatchLines(rings: readonly (readonly XY[])[], hatch: Hatch): readonly Leg[] {
  const ends = endsOf(rings, hatch);
  return Array.from({ length: ends.length / ENDS }, (_, i): Leg => {
    const [ax = 0, ay = 0, bx = 0, by = 0] = ends.slice(i * ENDS, (i + 1) * ENDS);
    return { a: { x: ax, y: ay }, b: { x: bx, y: by } };
  });
}

/** Numbers that a line's ends take: x and y of the left one, then of the right. */
const ENDS = 4;

/** As bare numbers: a picture has hundreds. */
function endsOf(rings: readonly (readonly XY[])[], hatch: Hatch): readonly number[] {
  const step = stepOf(hatch);
  const offsets = rings.flatMap((ring) => ring.map((p) => along(p, hatch.lean)));
  const ends: number[] = [];
  if (offsets.length === 0) return ends;
  const first = Math.ceil(Math.min(...offsets) / step);
  const last = Math.floor(Math.max(...offsets) / step);
  const found: number[][] = [];
  for (let n = first; n <= last; n++) found.push([]);
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
  for (const [i, xs] of found.entries()) addStretches(ends, xs.sort(ascending), (first + i) * step, hatch.lean);
  return ends;
}

const ascending = (a: number, b: number): number => a - b;

/** Lines of the lattice are the places where y + lean * x is the same. */
function along(p: XY, lean: 1 | -1): number {
  return p.y + lean * p.x;
}

/** Where the edge crosses a line from which its ends are so far. Half-open, so that a corner on the line counts once or twice as it must. */
function crossing(a: XY, b: XY, fa: number, fb: number): number | undefined {
  return fa < 0 !== fb < 0 ? a.x + ((b.x - a.x) * fa) / (fa - fb) : undefined;
}

/** From the first to the second, from the third to the fourth. */
function addStretches(ends: number[], xs: readonly number[], offset: number, lean: 1 | -1): void {
  for (let i = 0; i + 1 < xs.length; i += 2) {
    const [from, to] = [xs[i] ?? 0, xs[i + 1] ?? 0];
    if (to - from > DUST) ends.push(from, offset - lean * from, to, offset - lean * to);
  }
}
