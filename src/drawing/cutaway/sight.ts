/** Whether a place is seen: the line from it to the eye meets no metal. */
import type { XY } from '../display.ts';
import { type Hole, meetsHole } from './holes.ts';
import { alongIn, type Ball, type Band, isMetal, isThere, outIn, outOf, placeOn, type Scene, type Solid, within } from './solids.ts';
import { along, dot, type Eye, less, type Place, seenBy } from './space.ts';

/** What an eye sees of a scene, and the box on the picture that holds each solid and each of its bands, and the ball: what is not in it is not met. */
export type Sight = { readonly scene: Scene; readonly eye: Eye; readonly boxes: readonly SolidBoxes[]; readonly ball?: Box };
type SolidBoxes = { readonly all: Box; readonly bands: readonly Box[] };
export type Box = { readonly west: number; readonly east: number; readonly top: number; readonly foot: number };

export function sightOf(scene: Scene, eye: Eye): Sight {
  const boxes = scene.solids.map((solid): SolidBoxes => {
    const rim = rimBoxes(eye, solid);
    const bands = solid.bands.map((band) =>
      around([rim(band.a0, outOf({ ...band, r1: band.r0 })), rim(band.a1, outOf({ ...band, r0: band.r1 }))]),
    );
    return { all: around(bands), bands };
  });
  const { ball } = scene;
  return ball ? { scene, eye, boxes, ball: onPicture(eye, cubeRound(ball)) } : { scene, eye, boxes };
}

const cubeRound = ({ at, r }: Ball): readonly Place[] =>
  [-r, r].flatMap((x) => [-r, r].flatMap((y) => [-r, r].map((z) => ({ x: at.x + x, y: at.y + y, z: at.z + z }))));

/** The box that holds all between these places, as they are seen. */
export function onPicture(eye: Eye, places: readonly Place[]): Box {
  let [west, east, top, foot] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const p of places) {
    const { x, y } = seenBy(eye, p);
    if (x < west) west = x;
    if (x > east) east = x;
    if (y < top) top = y;
    if (y > foot) foot = y;
  }
  return { west, east, top, foot };
}

/** Places round a rim, and how much wider a ring through as many corners is that goes round it. */
const ROUNDS = 24;
const WIDER = 1 / Math.cos(Math.PI / ROUNDS);

/** The box that holds a rim, so far along and so far out; one end of a band is the beginning of the next, and is looked at once. */
function rimBoxes(eye: Eye, solid: Solid): (a: number, r: number) => Box {
  const known = new Map<string, Box>();
  return (a, r) => {
    const key = `${a} ${r}`;
    const found = known.get(key) ?? onPicture(eye, ringOf(solid, a, r * WIDER));
    known.set(key, found);
    return found;
  };
}

const ringOf = (solid: Solid, a: number, r: number): readonly Place[] =>
  Array.from({ length: ROUNDS }, (_, k) => placeOn(solid, a, r, (2 * Math.PI * k) / ROUNDS));

export const around = (boxes: readonly Box[]): Box => ({
  west: Math.min(...boxes.map((b) => b.west)),
  east: Math.max(...boxes.map((b) => b.east)),
  top: Math.min(...boxes.map((b) => b.top)),
  foot: Math.max(...boxes.map((b) => b.foot)),
});

const holds = (box: Box | undefined, { x, y }: XY): boolean =>
  box !== undefined && x >= box.west && x <= box.east && y >= box.top && y <= box.foot;

/** A sight line: from `p` by `by`, which ends at the eye; its places are told by a share of it. `seen`: all of it, on the picture. */
type Ray = { readonly p: Place; readonly by: Place; readonly seen: XY };

/** Nearer than this to where it starts, a line only leaves its own surface: a share of the way to the eye. */
const LEAVING = 2e-4;

/** What may hide a place: of the scene's solids, by their places in it; and whether the ball may. */
export type Hiders = { readonly solids: readonly number[]; readonly ball: boolean };

/** `onCut`: it lies on one of the two cuts, and nothing but what is left whole can stand before it. */
export function isSeen(sight: Sight, p: Place, onCut: boolean, by: Hiders): boolean {
  const { scene, eye, boxes } = sight;
  const ray = { p, by: less(eye.at, p), seen: seenBy(eye, p) };
  if (by.ball && scene.ball && holds(sight.ball, ray.seen) && meetsBall(ray, scene.ball)) return false;
  if (!onCut && leavesByCut(ray, sight, by)) return false;
  const found: number[] = [];
  for (const i of by.solids) {
    const [solid, box] = [scene.solids[i], boxes[i]];
    if (!solid || !box || !holds(box.all, ray.seen)) continue;
    found.length = 0;
    meets(ray, solid, box, found);
    for (const t of found) if (isThere(scene, i, along(p, t, ray.by))) return false;
  }
  return true;
}

function meetsBall({ p, by }: Ray, { at, r }: Ball): boolean {
  const from = less(p, at);
  const [a, b, c] = [dot(by, by), dot(from, by), dot(from, from) - r * r];
  const root = b * b - a * c;
  return root > 0 && (-b + Math.sqrt(root)) / a > LEAVING;
}

/** It comes out of metal into what was cut away: through either of the two cuts. */
function leavesByCut({ p, by, seen }: Ray, sight: Sight, among: Hiders): boolean {
  const tz = -p.z / by.z;
  const x = p.x + tz * by.x;
  if (tz > LEAVING && x >= 0 && isMetalAt(sight, seen, { x, y: p.y + tz * by.y, z: 0 }, among)) return true;
  const tx = -p.x / by.x;
  const z = p.z + tx * by.z;
  return tx > LEAVING && z >= 0 && isMetalAt(sight, seen, { x: 0, y: p.y + tx * by.y, z }, among);
}

function isMetalAt({ scene, boxes }: Sight, seen: XY, q: Place, among: Hiders): boolean {
  for (const i of among.solids) {
    const solid = scene.solids[i];
    if (solid && !solid.whole && holds(boxes[i]?.all, seen) && isCut(solid, q) && isThere(scene, i, q)) return true;
  }
  return false;
}

function isCut(solid: Solid, q: Place): boolean {
  const a = alongIn(solid, q);
  if (a <= solid.least || a >= solid.most) return false;
  const r = outIn(solid, q);
  return r < solid.wide && isMetal(solid, a, r);
}

/** Where the line meets the solid's surfaces, as if none of it were cut away. */
function meets({ p, by, seen }: Ray, solid: Solid, boxes: SolidBoxes, found: number[]): void {
  const [from, to] = [within(solid, p), within(solid, { x: p.x + by.x, y: p.y + by.y, z: p.z + by.z })];
  const line: Local = { a: from.a, c: from.c, s: from.s, da: to.a - from.a, dc: to.c - from.c, ds: to.s - from.s };
  if (misses(line, solid)) return;
  for (let i = 0; i < solid.bands.length; i++) {
    const band = solid.bands[i];
    if (!band || !holds(boxes.bands[i], seen)) continue;
    if (band.a0 === band.a1) ring(line, band, found);
    else if (band.sides) prism(line, band, band.sides, found);
    else cone(line, band, found);
  }
  for (const hole of solid.holes) throughWall(line, solid, hole, found);
}

type Local = { readonly a: number; readonly c: number; readonly s: number; readonly da: number; readonly dc: number; readonly ds: number };

/** The nearest that it comes to the axis is farther out than the solid, or it passes over or under all of it. */
function misses({ a, c, s, da, dc, ds }: Local, { least, most, wide }: Solid): boolean {
  if (Math.max(a, a + da) < least || Math.min(a, a + da) > most) return true;
  const t = Math.min(1, Math.max(0, -(c * dc + s * ds) / (dc * dc + ds * ds)));
  return (c + t * dc) ** 2 + (s + t * ds) ** 2 > wide * wide;
}

const counts = (t: number): boolean => t > LEAVING && t < 1;

/** The wall of a hole is met where there is metal round it. */
function throughWall({ a, c, s, da, dc, ds }: Local, solid: Solid, hole: Hole, found: number[]): void {
  for (const t of meetsHole(hole, { a, c, s }, { a: da, c: dc, s: ds }))
    if (counts(t) && isMetal(solid, a + t * da, Math.hypot(c + t * dc, s + t * ds))) found.push(t);
}

function ring({ a, c, s, da, dc, ds }: Local, { a0, r0, r1, sides }: Band, found: number[]): void {
  const t = (a0 - a) / da;
  if (!counts(t)) return;
  const [x, y] = [c + t * dc, s + t * ds];
  const [r, out] = [Math.sqrt(x * x + y * y), Math.max(r0, r1)];
  const inside = sides && r > out ? acrossFlats(x, y, sides) < out : r < out;
  if (inside && r > Math.min(r0, r1)) found.push(t);
}

/** How far out the flat through a place is that faces it. */
function acrossFlats(x: number, y: number, sides: number): number {
  const part = (2 * Math.PI) / sides;
  const round = Math.atan2(y, x);
  return Math.hypot(x, y) * Math.cos(round - part * (Math.floor(round / part) + 1 / 2));
}

/** A cylinder is a cone that does not widen: out from the axis by m + t n on the line. */
function cone({ a, c, s, da, dc, ds }: Local, { a0, r0, a1, r1 }: Band, found: number[]): void {
  const widens = (r1 - r0) / (a1 - a0);
  const [m, n] = [r0 + widens * (a - a0), widens * da];
  const [q, h, k] = [dc * dc + ds * ds - n * n, c * dc + s * ds - m * n, c * c + s * s - m * m];
  const root = h * h - q * k;
  if (root <= 0) return;
  for (const sign of [-1, 1]) {
    const t = (-h + sign * Math.sqrt(root)) / q;
    const at = a + t * da;
    if (counts(t) && (at - a0) * (at - a1) <= 0 && m + t * n >= 0) found.push(t);
  }
}

function prism({ a, c, s, da, dc, ds }: Local, { a0, r0, a1 }: Band, sides: number, found: number[]): void {
  let [enters, leaves] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let k = 0; k < sides; k++) {
    const face = (2 * Math.PI * (k + 1 / 2)) / sides;
    const [x, y] = [Math.cos(face), Math.sin(face)];
    const [here, by] = [c * x + s * y - r0, dc * x + ds * y];
    if (by < 0) enters = Math.max(enters, -here / by);
    else leaves = Math.min(leaves, -here / by);
  }
  for (const t of enters < leaves ? [enters, leaves] : []) if (counts(t) && (a + t * da - a0) * (a + t * da - a1) <= 0) found.push(t);
}
