/** The lines that may be drawn of a scene: edges round and along, contours, threads, the outlines of the cuts and their hatching. */
import { hatchLines } from '../hatch.ts';
import { type Hole, onEdge } from './holes.ts';
import { type Band, placeOn, type Scene, type Solid, sideOf, within } from './solids.ts';
import { along, cross, type Eye, less, long, type Place } from './space.ts';

/**
 * `of`: the solid on which it lies, by its place in the scene; -1 for the ball. `at` from 0 to 1. `hull`: corners between which all of it
 * lies, where they are known.
 */
export type Curve = {
  readonly of: number;
  readonly at: (share: number) => Place;
  readonly hull?: readonly Place[];
  readonly shape: 'straight' | 'bent' | 'round';
  readonly pen: 'edge' | 'thread' | 'hatch';
  /** It lies on one of the two cuts. */
  readonly onCut?: true;
};

const ROUND = 2 * Math.PI;
/** Corners of less than this, in radians, are chords of one arc. */
const SHARP = 0.3;

export function curvesOf(scene: Scene, eye: Eye, apart: { readonly hatch: number; readonly thread: number }): readonly Curve[] {
  return [
    ...scene.solids.flatMap((solid, i) => [
      ...rims(solid, i),
      ...solid.bands.flatMap((band) => contours(solid, i, band, eye)),
      ...(solid.whole ? [] : [...cutOutlines(solid, i), ...(solid.plain ? [] : cutHatch(solid, i, apart.hatch))]),
      ...threadRounds(solid, i, apart.thread),
      ...solid.holes.flatMap((hole) => [...holeEdges(solid, i, hole), ...holeCuts(solid, i, hole)]),
    ]),
    ...meetings(scene),
    ...(scene.ball ? [ballContour(scene.ball, eye)] : []),
  ];
}

const straight = (of: number, p: Place, q: Place, pen: Curve['pen'] = 'edge'): Curve => {
  const by = less(q, p);
  return { of, pen, shape: 'straight', hull: [p, q], at: (share) => along(p, share, by) };
};
const circle = (solid: Solid, of: number, a: number, r: number, pen: Curve['pen'] = 'edge'): Curve => ({
  ...{ of, pen, shape: 'round', hull: squareRound(solid, a, r) },
  at: (share) => placeOn(solid, a, r, ROUND * share),
});
const squareRound = (solid: Solid, a: number, r: number): readonly Place[] =>
  [1, 3, 5, 7].map((eighths) => placeOn(solid, a, r * Math.SQRT2, (eighths * Math.PI) / 4));

function rims(solid: Solid, of: number): readonly Curve[] {
  const { ring, bands } = solid;
  const prisms = bands.filter(({ sides, a0, a1 }) => sides && a0 !== a1);
  const round = ring
    .filter((p, i) => p.r > 0 && isCorner(ring.at(i - 1), p, ring[(i + 1) % ring.length]))
    .filter(({ a, r }) => !prisms.some((b) => r === b.r0 && (a - b.a0) * (a - b.a1) <= 0));
  return [...round.map(({ a, r }) => circle(solid, of, a, r)), ...prisms.flatMap((band) => prismEdges(solid, of, band))];
}

type Point = Solid['ring'][number];
function isCorner(p: Point | undefined, q: Point, s: Point | undefined): boolean {
  if (!p || !s) return true;
  const turn = Math.atan2(s.r - q.r, s.a - q.a) - Math.atan2(q.r - p.r, q.a - p.a);
  return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) > SHARP;
}

/** Its ends are straight, or scallops where a chamfer takes the corners off: there the flat meets a cone. */
function prismEdges(solid: Solid, of: number, band: Band): readonly Curve[] {
  const { a0, r0, a1, sides = 0 } = band;
  const half = Math.PI / sides;
  const ends = [a0, a1].map((a) => ({ a, chamfer: solid.chamfers.find((c) => c.at === a) }));
  /** How far along it reaches, so far round from the middle of a flat. */
  const reach = ({ a, chamfer }: (typeof ends)[number], round: number): number =>
    chamfer ? chamfer.from + ((r0 / Math.cos(round) - r0) * (chamfer.at - chamfer.from)) / (chamfer.out - r0) : a;
  const place = (end: (typeof ends)[number], k: number, round: number): Place =>
    placeOn(solid, reach(end, round), r0 / Math.cos(round), (2 * k + 1) * half + round);
  return Array.from({ length: sides }, (_, k) => [
    ...ends.map(
      (end): Curve => ({ of, pen: 'edge', shape: end.chamfer ? 'bent' : 'straight', at: (share) => place(end, k, half * (2 * share - 1)) }),
    ),
    ...ends.slice(1).flatMap((end) => ends.slice(0, 1).map((first) => straight(of, place(first, k, half), place(end, k, half)))),
  ]).flat();
}

/** Where a round surface turns away from the eye: two straight lines on a cone, as its normal is square to the sight there. */
function contours(solid: Solid, of: number, { a0, r0, a1, r1, sides }: Band, eye: Eye): readonly Curve[] {
  if (a0 === a1 || sides) return [];
  const from = within(solid, eye.at);
  const widens = (r1 - r0) / (a1 - a0);
  const share = (r0 + widens * (from.a - a0)) / Math.hypot(from.c, from.s);
  if (Math.abs(share) >= 1) return [];
  const [middle, half] = [Math.atan2(from.s, from.c), Math.acos(share)];
  return [middle - half, middle + half].map((round) => straight(of, placeOn(solid, a0, r0, round), placeOn(solid, a1, r1, round)));
}

const cut = (curve: Curve): Curve => ({ ...curve, onCut: true });
/** The planes of the cuts, each with the rounds at which the solid lies in it. */
const CUTS = { level: [0, Math.PI], upright: [0, Math.PI / 2] } as const;
const roundsOf = ({ way }: Solid): readonly number[] => (way === 'up' || way === 'down' ? CUTS.upright : CUTS.level);

function cutOutlines(solid: Solid, of: number): readonly Curve[] {
  return roundsOf(solid).flatMap((round) =>
    solid.bands.map(({ a0, r0, a1, r1 }) => cut(straight(of, placeOn(solid, a0, r0, round), placeOn(solid, a1, r1, round)))),
  );
}

/** What stands inside leans otherwise than what stands round it, and of two inside one is closer: neighbours differ (ISO 128). */
const CLOSER = 0.75;

function cutHatch(solid: Solid, of: number, apart: number): readonly Curve[] {
  const pitch = apart * (of > 0 && of % 2 === 0 ? CLOSER : 1);
  const ring = solid.ring.map(({ a, r }) => ({ x: a / pitch, y: r / pitch }));
  const lean = of === 0 ? 1 : -1;
  return roundsOf(solid).flatMap((round, k) =>
    hatchLines([ring], { pitch: 1, lean: k === 0 ? lean : lean === 1 ? -1 : 1 }).map(({ a, b }) =>
      cut(straight(of, placeOn(solid, a.x * pitch, a.y * pitch, round), placeOn(solid, b.x * pitch, b.y * pitch, round), 'hatch')),
    ),
  );
}

function threadRounds(solid: Solid, of: number, apart: number): readonly Curve[] {
  return solid.threads.flatMap(({ from, to, r, pitch }) => {
    const step = pitch * Math.max(1, Math.ceil(apart / pitch));
    const count = Math.floor((to - from) / step);
    return Array.from({ length: count }, (_, k) => circle(solid, of, from + step * (k + 1 / 2), r, 'thread'));
  });
}

/** Its edges with the outside, and with the bore where there is one, at both mouths. */
function holeEdges(solid: Solid, of: number, hole: Hole): readonly Curve[] {
  const radii = radiiAt(solid, hole.a).filter((r) => r > hole.r);
  return [...new Set([Math.min(...radii), outermost(radii)])].flatMap((out) =>
    ([0, 1] as const).map((mouth): Curve => {
      const at = (share: number): Place => {
        const { a, round } = onEdge(hole, out, mouth, share);
        return placeOn(solid, a, out, round);
      };
      return { of, at, shape: 'round', pen: 'edge' };
    }),
  );
}

/** Its walls in a cut that goes along it. */
function holeCuts(solid: Solid, of: number, hole: Hole): readonly Curve[] {
  const radii = radiiAt(solid, hole.a);
  const [inner, outer] = [radii.length > 1 ? Math.min(...radii) : 0, outermost(radii)];
  return solid.whole
    ? []
    : roundsOf(solid)
        .filter((round) => Math.abs(Math.sin(round - hole.round)) < ALIKE)
        .flatMap((round) =>
          [hole.a - hole.r, hole.a + hole.r].map((a) =>
            cut(straight(of, placeOn(solid, a, inner, round), placeOn(solid, a, outer, round))),
          ),
        );
}
const ALIKE = 1e-6;

/** Where a level solid goes into the one that stands round the others, and where its bore comes out at its inner end. */
function meetings({ solids }: Scene): readonly Curve[] {
  const [round] = solids;
  if (!round) return [];
  return solids.flatMap((solid, of) => {
    if (solid.way === 'up' || solid.way === 'down') return [];
    const height = within(round, solid.origin).a;
    const outside = outermost(radiiAt(round, height));
    return [
      meeting(solid, of, outside, outermost(radiiAt(solid, alongAt(solid, outside * JUST_IN)))),
      meeting(solid, of, solid.clear, Math.min(...radiiAt(solid, alongAt(solid, solid.clear)))),
    ].flat();
  });
}

const JUST_IN = 0.99;
const outermost = (radii: readonly number[]): number => Math.max(0, ...radii);
/** Its own place along, where it is so far out from the upright axis. */
const alongAt = ({ way, origin }: Solid, out: number): number => {
  const x = out * sideOf(origin);
  return way === 'right' ? x - origin.x : origin.x - x;
};
const radiiAt = ({ bands }: Solid, a: number): readonly number[] =>
  bands.filter(({ a0, a1 }) => a0 !== a1 && (a - a0) * (a - a1) <= 0).map(({ a0, r0, a1, r1 }) => r0 + ((r1 - r0) * (a - a0)) / (a1 - a0));

/** A cylinder of radius `r` with the upright one of `into`. */
function meeting(solid: Solid, of: number, into: number, r: number): readonly Curve[] {
  if (!(r > 0 && r < into)) return [];
  const at = (share: number): Place => {
    const p = placeOn(solid, 0, r, ROUND * share);
    return { ...p, x: sideOf(solid.origin) * Math.sqrt(into * into - p.z * p.z) };
  };
  return [{ of, at, shape: 'round', pen: 'edge' }];
}

function ballContour({ at, r }: { readonly at: Place; readonly r: number }, eye: Eye): Curve {
  const to = less(eye.at, at);
  const far = long(to);
  const toward = along({ x: 0, y: 0, z: 0 }, 1 / far, to);
  const side = cross(toward, eye.up);
  const [u, v] = [along({ x: 0, y: 0, z: 0 }, 1 / long(side), side), cross(toward, along({ x: 0, y: 0, z: 0 }, 1 / long(side), side))];
  const middle = along(at, (r * r) / far, toward);
  const out = r * Math.sqrt(1 - (r / far) ** 2);
  return {
    ...{ of: -1, shape: 'round', pen: 'edge' },
    at: (share) => along(along(middle, out * Math.cos(ROUND * share), u), out * Math.sin(ROUND * share), v),
  };
}
