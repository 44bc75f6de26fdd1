/** Turned solids where they stand, with a quarter of them cut away: x and z above zero. What has no bore is left whole (ISO 128: shafts, screws). */
import type { ArrangedRing, Arrangement, Part } from '../../model/part.ts';
import type { Edge } from '../../model/stage.ts';
import { finishedStage } from '../part-outline.ts';
import { type Hole, holesOf, isInHole, type Local } from './holes.ts';
import type { Place } from './space.ts';

/** One stretch of the outline, in the solid's own places: along its axis from its first end, and out from it. `sides`: a prism's, out to its flats. */
export type Band = { readonly a0: number; readonly r0: number; readonly a1: number; readonly r1: number; readonly sides?: number };
export type ThreadBand = { readonly from: number; readonly to: number; readonly r: number; readonly pitch: number };
/** Of a prism: from its flats at `from` to the end at `at`, where it is `out` from the axis. */
export type Chamfer = { readonly from: number; readonly at: number; readonly out: number };
export type Solid = {
  readonly origin: Place;
  readonly way: 'up' | 'down' | 'right' | 'left';
  readonly ring: readonly { readonly a: number; readonly r: number }[];
  readonly bands: readonly Band[];
  readonly chamfers: readonly Chamfer[];
  readonly threads: readonly ThreadBand[];
  readonly holes: readonly Hole[];
  readonly whole: boolean;
  /** What stands in its bore keeps its room. */
  readonly open?: true;
  /** Its cut is not hatched. */
  readonly plain?: true;
  /** Nothing of it stands nearer the upright axis; 0 where that is its own. */
  readonly clear: number;
  readonly least: number;
  readonly most: number;
  readonly wide: number;
};
export type Ball = { readonly at: Place; readonly r: number };
/** What comes later stands in what comes before, and takes its room. */
export type Scene = { readonly solids: readonly Solid[]; readonly ball?: Ball };

const HEXAGON = 6;
const CLOSE = 1e-6;

export function sceneOf(arrangement: Arrangement, part: (id: string) => Part): Scene {
  const stands = arrangement.stands.map(({ part: id, way, at, round, whole }) => {
    const solid = solidOf(part(id), { x: 0, y: at, z: 0 }, way, 0);
    return { round, solid: whole ? { ...solid, whole } : solid };
  });
  const branches = arrangement.branches.map(({ part: id, way, at, from, clear, side }) => {
    const right = (way === 'out') !== (side === 'left');
    const solid = solidOf(part(id), { x: side === 'left' ? -from : from, y: at, z: 0 }, right ? 'right' : 'left', clear);
    // the cuts are to the right: what lies to the left is seen whole
    return side === 'left' ? { ...solid, whole: true } : solid;
  });
  const { ball } = arrangement;
  const outer = stands.filter(({ round }) => round);
  const [first, ...rest] = stands.filter(({ round }) => !round);
  const solids = [...outer, ...(first ? [first] : [])]
    .map((one) => one.solid)
    .concat(
      branches,
      rest.map((one) => one.solid),
      (arrangement.rings ?? []).map(ringSolid),
    );
  return ball ? { solids, ball: { at: { x: 0, y: ball.at, z: 0 }, r: ball.across / 2 } } : { solids };
}

function ringSolid({ from, to, inside, outside, level, shown }: ArrangedRing): Solid {
  const [out, into, most] = [outside / 2, inside / 2, to - from];
  const left = level?.side === 'left';
  const ring = [
    { a: 0, r: into },
    { a: 0, r: out },
    { a: most, r: out },
    { a: most, r: into },
  ];
  return {
    origin: level ? { x: left ? -from : from, y: level.at, z: 0 } : { x: 0, y: from, z: 0 },
    way: level ? (left ? 'left' : 'right') : 'up',
    ring,
    bands: ring.map((p, i) => ({ a0: p.a, r0: p.r, a1: (ring[(i + 1) % ring.length] ?? p).a, r1: (ring[(i + 1) % ring.length] ?? p).r })),
    ...{ chamfers: [], threads: [], holes: [], clear: 0, least: 0, most, wide: out, open: true },
    whole: left || shown === 'whole',
    ...(shown === 'soft' || shown === 'thin' ? { plain: true as const } : {}),
  };
}

export function solidOf(part: Part, origin: Place, way: Solid['way'], clear: number): Solid {
  const { outlines } = finishedStage(part, 'second');
  const edges = outlines.flat();
  const { bands, chamfers } = squaredUp(edges.filter(({ a, b }) => a.d > 0 || b.d > 0).map((edge) => bandOf(part, edge)));
  const ends = edges.map(({ a }) => a.z);
  return {
    ...{ origin, way, bands, chamfers, clear, threads: threadsOf(part), holes: holesOf(part) },
    ring: edges.map(({ a }) => ({ a: a.z, r: a.d / 2 })),
    whole: part.surfaces.every(({ side }) => side === 'outside'),
    ...{ least: Math.min(...ends), most: Math.max(...ends), wide: Math.max(...bands.map((b) => outOf(b))) },
  };
}

/** How far out it reaches, a prism to its corners. */
export const outOf = ({ r0, r1, sides }: Band): number => Math.max(r0, r1) / (sides ? Math.cos(Math.PI / sides) : 1);

function bandOf(part: Part, { a, b, surface }: Edge): Band {
  const band = { a0: a.z, r0: a.d / 2, a1: b.z, r1: b.d / 2 };
  const prism = part.features.some((f) => f.kind === 'outside' && f.section === 'hexagon' && f.cylinder === surface);
  return prism ? { ...band, sides: HEXAGON } : band;
}

/** A prism goes on to where its chamfer ends (how that takes its corners off is a matter of its lines), and the faces there reach to its flats. */
function squaredUp(bands: readonly Band[]): Pick<Solid, 'bands' | 'chamfers'> {
  const prisms = bands.filter(({ sides }) => sides);
  const chamfers = prisms.flatMap((prism) => [prism.a0, prism.a1].flatMap((a) => chamfersAt(bands, a, prism.r0)));
  const grown = (a: number): number => chamfers.find(({ from }) => from === a)?.at ?? a;
  const grow = (band: Band): Band => {
    if (band.sides) return { ...band, a0: grown(band.a0), a1: grown(band.a1) };
    const out = Math.max(band.r0, band.r1);
    const prism =
      band.a0 === band.a1 && prisms.find((p) => [p.a0, p.a1].some((a) => grown(a) === band.a0) && meetsEdge(p, band.a0, out, chamfers));
    return prism ? { ...band, [band.r0 === out ? 'r0' : 'r1']: prism.r0, sides: HEXAGON } : band;
  };
  return { bands: bands.filter((band) => !chamfers.some((c) => c.band === band)).map(grow), chamfers };
}

const meetsEdge = (prism: Band, a: number, out: number, chamfers: readonly Chamfer[]): boolean =>
  out === prism.r0 || chamfers.some((c) => c.at === a && c.out === out);

function chamfersAt(bands: readonly Band[], from: number, r: number): readonly (Chamfer & { readonly band: Band })[] {
  return bands.flatMap((band) => {
    const { a0, r0, a1, r1, sides } = band;
    if (sides || a0 === a1) return [];
    if (a0 === from && r0 === r && r1 < r) return [{ band, from, at: a1, out: r1 }];
    return a1 === from && r1 === r && r0 < r ? [{ band, from, at: a0, out: r0 }] : [];
  });
}

function threadsOf(part: Part): readonly ThreadBand[] {
  return part.features.flatMap((f) => {
    const on = f.kind === 'thread' ? part.surfaces.find(({ id }) => id === f.on) : undefined;
    return f.kind === 'thread' && on?.shape === 'cylinder'
      ? [{ from: f.from, to: f.to, r: on.size.target / 2, pitch: f.thread.pitch }]
      : [];
  });
}

/** `round`: radians round its axis, from the upright plane of the first cut. */
export function placeOn({ origin, way }: Solid, a: number, r: number, round: number): Place {
  const [c, s] = [r * Math.cos(round), r * Math.sin(round)];
  if (way === 'up') return { x: c, y: origin.y + a, z: s };
  if (way === 'down') return { x: c, y: origin.y - a, z: s };
  return { x: way === 'right' ? origin.x + a : origin.x - a, y: origin.y + c, z: s };
}

/** A place in the solid's own terms: along, and the two across that `placeOn` turns between. */
export function within({ origin, way }: Solid, p: Place): Local {
  if (way === 'up') return { a: p.y - origin.y, c: p.x, s: p.z };
  if (way === 'down') return { a: origin.y - p.y, c: p.x, s: p.z };
  return { a: way === 'right' ? p.x - origin.x : origin.x - p.x, c: p.y - origin.y, s: p.z };
}

export const isCutAway = (p: Place): boolean => p.x > CLOSE && p.z > CLOSE;

/** Is a place on the `i`th solid's surface really there: not cut away, not trimmed, not taken by what stands in it? */
export function isThere({ solids }: Scene, i: number, p: Place): boolean {
  const own = solids[i];
  if (!own || !isLeft(own, p)) return false;
  for (let k = i + 1; k < solids.length; k++) {
    const other = solids[k];
    if (other && takes(other, p)) return false;
  }
  return true;
}

/** As far as its own shape goes: neither trimmed nor cut away, nor in a hole of its own. */
export function isLeft(own: Solid, p: Place): boolean {
  if (!isClear(own, p) || (!own.whole && isCutAway(p))) return false;
  return own.holes.length === 0 || !own.holes.some((hole) => isInHole(hole, within(own, p), CLOSE));
}

/** Does it stand at that place, where another is then none? */
export const takes = (other: Solid, p: Place): boolean => isClear(other, p) && fills(other, p);

/** May it take any place between these? Never false where it does, true of some that it leaves alone. */
export function mayTake(other: Solid, hull: readonly Place[]): boolean {
  const [first, ...rest] = hull.map((p) => within(other, p));
  if (!first) return false;
  let { a: low, a: high, c: left, c: right, s: near, s: far } = first;
  for (const { a, c, s } of rest) {
    [low, high] = [Math.min(low, a), Math.max(high, a)];
    [left, right] = [Math.min(left, c), Math.max(right, c)];
    [near, far] = [Math.min(near, s), Math.max(far, s)];
  }
  if (high <= other.least || low >= other.most) return false;
  const [c, s] = [Math.max(0, left, -right), Math.max(0, near, -far)];
  const out = Math.sqrt(c * c + s * s) + (CLOSE / 2) * other.wide;
  return other.bands.some(({ a0, r0, a1, r1 }) => Math.max(r0, r1) > out && Math.max(a0, a1) >= low && Math.min(a0, a1) <= high);
}

/** Nothing between these is trimmed or cut away, and there is no hole. */
export function isLeftWhole(own: Solid, hull: readonly Place[]): boolean {
  if (own.clear !== 0 || own.holes.length > 0) return false;
  return own.whole || hull.every(({ x }) => x <= CLOSE / 2) || hull.every(({ z }) => z <= CLOSE / 2);
}

/** 1 to the right of the upright axis, -1 to the left. */
export const sideOf = (origin: Place): 1 | -1 => (origin.x < 0 ? -1 : 1);

/** A level solid stands on one side of the upright axis only, and ends at a bore round it. */
const isClear = ({ clear, origin }: Solid, p: Place): boolean =>
  clear === 0 || (p.x * sideOf(origin) > 0 && p.x * p.x + p.z * p.z > (clear * (1 - CLOSE)) ** 2);

/** Inside of all that it fills, its bores too; its own skin is not inside. */
function fills(solid: Solid, p: Place): boolean {
  const a = alongIn(solid, p);
  if (a <= solid.least || a >= solid.most) return false;
  const r = outIn(solid, p);
  if (r >= solid.wide || (solid.open && !isMetal(solid, a, r))) return false;
  return r < outAt(solid, a) - CLOSE * solid.wide;
}

/** As `within`, without a record: along it, and how far out from its axis. */
export function alongIn({ origin, way }: Solid, p: Place): number {
  if (way === 'up') return p.y - origin.y;
  if (way === 'down') return origin.y - p.y;
  return way === 'right' ? p.x - origin.x : origin.x - p.x;
}

export function outIn({ origin, way }: Solid, { x, y, z }: Place): number {
  const c = way === 'up' || way === 'down' ? x : y - origin.y;
  return Math.sqrt(c * c + z * z);
}

/** How far out it reaches at `a`. */
function outAt({ bands }: Solid, a: number): number {
  let most = 0;
  for (const { a0, r0, a1, r1 } of bands) {
    if (a0 === a1 || (a - a0) * (a - a1) > 0) continue;
    most = Math.max(most, r0 + ((r1 - r0) * (a - a0)) / (a1 - a0));
  }
  return most;
}

/** Is there metal at this place of a section, along and out? Even-odd. */
export function isMetal({ ring }: Solid, a: number, r: number): boolean {
  let inside = false;
  for (let i = 0, k = ring.length - 1; i < ring.length; k = i++) {
    const [p, q] = [ring[i], ring[k]];
    if (p && q && p.r > r !== q.r > r && a < p.a + ((q.a - p.a) * (r - p.r)) / (q.r - p.r)) inside = !inside;
  }
  return inside;
}
