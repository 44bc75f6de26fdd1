/** One part of a fitting where it stands, as outlines: what is cut, what is seen beyond the cut, what it hides. */
import type { ArrangedRing, Arrangement, Part, SideFeature } from '../../model/part.ts';
import type { Edge } from '../../model/stage.ts';
import type { XY } from '../display.ts';
import { finishedStage, surfaceOf } from '../part-outline.ts';
import type { Leg } from '../plane.ts';

/** x to the right of the upright axis, y up, in units of length. */
export type Piece = {
  /** Part, or 'item <item>'. */
  readonly id: string;
  readonly shown: ArrangedRing['shown'];
  /** All that it fills, its bores too: whatever stands behind is hidden. */
  readonly envelopes: readonly (readonly XY[])[];
  readonly cuts: readonly (readonly XY[])[];
  readonly edges: readonly Leg[];
  /** Edges seen beyond the cut, roots of threads, crosses on flats. */
  readonly fine: readonly Leg[];
  /** Holes right across, where they are cut: what they take away of it, and their walls. */
  readonly openings?: readonly { readonly over: readonly XY[]; readonly sides: readonly Leg[] }[];
  /** Its axis, level. */
  readonly level?: number;
};

type At = (z: number, r: number, side: 1 | -1) => XY;
type Corner = { readonly z: number; readonly r: number };
const SIDES = [1, -1] as const;

/** In the order in which they are painted: what stands inside is drawn over what stands round it. */
export function piecesOf(arrangement: Arrangement, part: (id: string) => Part): readonly Piece[] {
  const { stands, branches, rings = [] } = arrangement;
  const upright = stands.map(({ part: id, way, at, round, whole }) => {
    const place: At = (z, r, side) => ({ x: side * r, y: at + (way === 'up' ? z : -z) });
    return { round, piece: (whole ? wholePiece : cutPiece)(part(id), place) };
  });
  const level = branches.map(({ part: id, way, at, from, clear, side }) => {
    const sign = side === 'left' ? -1 : 1;
    const place: At = (z, r, half) => ({ x: sign * Math.max(way === 'out' ? from + z : from - z, clear), y: at + half * r });
    return { ...cutPiece(part(id), place), level: at };
  });
  const [first = [], rest] = [upright.filter(({ round }) => !round).slice(0, 1), upright.filter(({ round }) => !round).slice(1)];
  const outer = [...upright.filter(({ round }) => round), ...first];
  return [...outer.map((u) => u.piece), ...level, ...rest.map((u) => u.piece), ...rings.map(ringPiece)];
}

const outlineOf = (part: Part): readonly Edge[] => finishedStage(part, 'second').outlines.flat();

/** Cut through its axis, both halves. */
function cutPiece(part: Part, at: At): Piece {
  const edges = outlineOf(part);
  const seen = edges.filter(({ a, b }) => a.d > 0 || b.d > 0);
  const outer = outsideOf(part, edges);
  return {
    id: part.id,
    shown: 'metal',
    envelopes: [[...outer.map(({ z, r }) => at(z, r, 1)), ...[...outer].reverse().map(({ z, r }) => at(z, r, -1))]],
    cuts: SIDES.map((side) => edges.map(({ a }) => at(a.z, a.d / 2, side))),
    edges: seen.flatMap(({ a, b }) => SIDES.map((side) => ({ a: at(a.z, a.d / 2, side), b: at(b.z, b.d / 2, side) }))),
    fine: [
      ...edges.flatMap((edge) => acrossBore(part, edge)).map(({ z, r }) => ({ a: at(z, r, 1), b: at(z, r, -1) })),
      ...rootsOf(part, ['outside', 'inside']).flatMap(({ from, to, r }) =>
        SIDES.map((side) => ({ a: at(from, r, side), b: at(to, r, side) })),
      ),
    ],
    openings: acrossOf(part).flatMap((hole) => openingsOf(part, hole, at)),
  };
}

/** Holes right across that nothing is soldered into. */
export const acrossOf = (part: Part): readonly SideFeature[] => {
  const sides = part.features.filter((f): f is SideFeature => f.kind === 'side');
  return sides.filter((f) => f.does === 'cross-hole' && !sides.some((other) => other.does === 'branch' && other.at === f.at));
};

/** Units of length: over the lines that bound it. */
const OVER = 1500;

/** Cut along the hole: from the bore, or from the axis where it is solid, to the outside, at either side. */
function openingsOf(part: Part, { at: middle, size, on }: SideFeature, at: At): NonNullable<Piece['openings']> {
  const half = (size?.target ?? 0) / 2;
  const [from, to] = [middle - half, middle + half];
  const bore = part.surfaces.find((s) => s.shape === 'cylinder' && s.side === 'inside' && s.from < middle && middle < s.to);
  const outside = surfaceOf(part, on);
  const [r, R] = [bore, outside].map((s) => (s?.shape === 'cylinder' ? s.size.target / 2 : 0)) as [number, number];
  return SIDES.map((side) => ({
    over: [at(from, r - OVER, side), at(to, r - OVER, side), at(to, R + OVER, side), at(from, R + OVER, side)],
    sides: [from, to].map((z) => ({ a: at(z, r, side), b: at(z, R, side) })),
  }));
}

/** Seen from outside, as a spindle is: its outline, a line across at every edge, a cross on its flats. */
function wholePiece(part: Part, at: At): Piece {
  const squares = part.features.filter((f): f is SideFeature => f.kind === 'side' && f.does === 'square');
  const profile = squares.reduce(squared, outsideOf(part, outlineOf(part)));
  const ring = [...profile.map(({ z, r }) => at(z, r, 1)), ...[...profile].reverse().map(({ z, r }) => at(z, r, -1))];
  const places = [...new Set(profile.map(({ z }) => z))];
  const widest = (place: number): number => Math.max(...profile.filter(({ z }) => z === place).map(({ r }) => r));
  return {
    ...{ id: part.id, shown: 'whole', envelopes: [ring], cuts: [] },
    edges: ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length] ?? a })),
    fine: [
      ...places.map((z) => ({ a: at(z, widest(z), 1), b: at(z, widest(z), -1) })),
      ...rootsOf(part, ['outside']).flatMap(({ from, to, r }) => SIDES.map((side) => ({ a: at(from, r, side), b: at(to, r, side) }))),
      ...squares.flatMap((f) => crossOn(f, at)),
    ],
  };
}

/** Corners of the outside, from the first end to the second. */
function outsideOf(part: Part, edges: readonly Edge[]): readonly Corner[] {
  const outer = edges.filter(({ surface }) => surface !== '' && surfaceOf(part, surface).side === 'outside').flatMap(({ a, b }) => [a, b]);
  return outer.map(({ z, d }) => ({ z, r: d / 2 }));
}

/** Between its ends a square is as wide as it measures across its flats. */
function squared(profile: readonly Corner[], { at, half, size }: SideFeature): readonly Corner[] {
  const r = (size?.target ?? 0) / 2;
  const [from, to] = [at - half, at + half];
  return profile.flatMap((corner, i) => {
    const next = profile[i + 1];
    if (!next || corner.r !== next.r || corner.z > from || next.z < to || corner.z === next.z) return [corner];
    return [corner, { z: from, r: corner.r }, { z: from, r }, { z: to, r }, ...(next.z > to ? [{ z: to, r: corner.r }] : [])];
  });
}

/** Flat faces are marked by thin diagonals (ISO 128-3). */
function crossOn({ at: middle, half, size }: SideFeature, at: At): readonly Leg[] {
  const r = (size?.target ?? 0) / 2;
  const [from, to] = [middle - half, middle + half];
  return SIDES.map((side) => ({ a: at(from, r, side), b: at(to, r, side === 1 ? -1 : 1) }));
}

/** Roots of threads, thin (ISO 6410-1). */
function rootsOf(part: Part, sides: readonly ('outside' | 'inside')[]): readonly { from: number; to: number; r: number }[] {
  return part.features.flatMap((f) => {
    if (f.kind !== 'thread' || !sides.includes(f.side)) return [];
    const root = f.side === 'outside' ? f.thread.minor : f.thread.major;
    return [{ from: f.from, to: f.to, r: root.target / 2 }];
  });
}

/** Edges of a bore that are seen beyond the cut: at its ends and where it steps. */
function acrossBore(part: Part, { a, b, surface }: Edge): readonly Corner[] {
  if (surface === '' || a.z !== b.z) return [];
  const face = surfaceOf(part, surface);
  const isEnd = part.features.some((f) => f.kind === 'end' && f.face === surface);
  const r = Math.min(a.d, b.d) / 2;
  return r > 0 && (face.side === 'inside' || isEnd) ? [{ z: a.z, r }] : [];
}

/** Bought things: two rectangles, or one where it is seen whole. */
function ringPiece({ item, from, to, inside, outside, level, shown }: ArrangedRing): Piece {
  const sign = level?.side === 'left' ? -1 : 1;
  const at = (along: number, r: number): XY => (level ? { x: sign * along, y: level.at + r } : { x: r, y: along });
  const between = (low: number, high: number): readonly XY[] => [at(from, low), at(to, low), at(to, high), at(from, high)];
  const [r, R] = [inside / 2, outside / 2];
  const rings = shown === 'whole' ? [between(-R, R)] : [between(r, R), between(-R, -r)];
  return {
    ...{ id: `item ${item}`, shown, envelopes: rings, cuts: shown === 'whole' ? [] : rings, fine: [] },
    edges: rings.flatMap((ring) => ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length] ?? a }))),
    ...(level ? { level: level.at } : {}),
  };
}
