/** How much of work and hold is shown: long bars are broken off in the headstock, long jaws are drawn short. All in mm of the work. */
import type { Len } from '../base/units.ts';
import type { GripKind } from '../model/plan.ts';
import type { Polygon } from '../model/stage.ts';
import { along, clippedRing, corners, type Edge, envelope, metalAt, placed, ring, type Sketch, type UR } from './sketch.ts';

/**
 * Who holds the part. `from`, `to`, `diameter`: the held stretch, as in Grip. `tooling`: half-section of a mandrel, stub or sleeve in
 * the part's own z, where it is known; without it a plain one is drawn. `datum`: the face that lengths are measured from.
 */
export type Hold = {
  readonly kind: GripKind;
  readonly from: Len;
  readonly to: Len;
  readonly diameter: Len;
  /** The tailstock centre runs in the free end. */
  readonly centre?: true;
  readonly tooling?: Tooling;
  /** What fills the work's bore under the hold; `vent`: the hole through it, 0 for none. */
  readonly plug?: { readonly from: Len; readonly to: Len; readonly diameter: Len; readonly vent: Len };
  readonly datum?: { readonly z: Len; readonly letter: string };
  /** Drills that stand over work in a vee-block: where along it, and how thick. */
  readonly drills?: readonly { readonly z: Len; readonly size: Len }[];
};
/** In the part's own z: its half-section without its threads, their bands, and where the jaws hold it. */
export type Tooling = {
  readonly outline: Polygon;
  readonly threads?: readonly Polygon[];
  readonly held?: { readonly from: Len; readonly to: Len; readonly diameter: Len };
};
/** Radius and stretch that jaws (or a collet) close on. `step`: bored in jaws behind the work's end; it reaches so far back and in. */
export type Clamp = { readonly from: number; readonly to: number; readonly radius: number; readonly step?: number };
/** `toolingCut`: the tooling is broken off there. `centre`: radius at the right end at which a tailstock centre meets the work. `cutAt`: the work is broken off there. `rim`: largest radius of work, now or before, that is shown. */
export type Window = {
  readonly from: number;
  readonly right: number;
  readonly cutAt?: number;
  readonly clamp?: Clamp;
  readonly tooling: readonly UR[];
  readonly toolingThreads?: readonly (readonly UR[])[];
  readonly toolingCut?: number;
  readonly plug?: readonly UR[];
  /** The work lies in a vee-block along so much of itself; drills over it. */
  readonly vee?: { readonly from: number; readonly to: number; readonly radius: number; readonly drills: readonly Drill[] };
  readonly centre?: number;
  /** Likewise at the left end: the work runs between two, and `clamp` is what its dog covers. */
  readonly leftCentre?: number;
  readonly rim: number;
};

/** Shares of the stick-out: so long are jaws at most, and so much of the work is shown behind them where it is broken off. */
const JAWS_SHARE = 0.45;
const TAIL_SHARE = 0.12;
const LEAST_SHOWN = 3;
/** Work no longer than so many stick-outs, or so many held radii, is shown whole. */
const WHOLE_SHARE = 2.2;
const WHOLE_WIDTH = 3.2;
/** A plain mandrel where its outline is not known: how thick, how far behind the work, how much of it the jaws take. */
const MANDREL_WALL = 1.5;
const MANDREL_BEHIND = 0.25;
const MANDREL_HELD = 0.7;

export type Drill = { readonly u: number; readonly radius: number };

/** `shown`: places u that must not be broken away, being measured from or to. */
export function windowOf(sketch: Sketch, hold: Hold, shown: readonly number[] = []): Window {
  const bare = heldWindow(sketch, hold, shown);
  const window = hold.plug ? { ...bare, plug: plugRing(sketch, hold.plug, bare.from) } : bare;
  return hold.centre && window.clamp ? { ...window, centre: centreRadius(sketch, window.clamp, window.right) } : window;
}

/** Broken off with the work, where that is. */
function plugRing(sketch: Sketch, plug: NonNullable<Hold['plug']>, from: number): readonly UR[] {
  const ends = [along(plug.from, sketch.out), along(plug.to, sketch.out)] as const;
  const radius = (diameter: Len): number => placed({ z: 0, d: diameter }, sketch.out).r;
  return box(Math.max(from, Math.min(...ends)), Math.max(...ends), radius(plug.vent), radius(plug.diameter));
}

function heldWindow(sketch: Sketch, hold: Hold, shown: readonly number[]): Window {
  const points = [...sketch.loops, ...sketch.before].flat().flatMap((e) => [e.a, e.b]);
  const right = Math.max(...points.map((p) => p.u));
  const left = Math.min(...points.map((p) => p.u));
  const ends = [along(hold.from, sketch.out), along(hold.to, sketch.out)] as const;
  const held = { from: Math.min(...ends), to: Math.max(...ends), radius: placed({ z: 0, d: hold.diameter }, sketch.out).r };
  if (hold.kind === 'vee-block') {
    const drills = (hold.drills ?? []).map(({ z, size }) => ({ u: along(z, sketch.out), radius: placed({ z: 0, d: size }, sketch.out).r }));
    return withRim(sketch, { from: left, right, tooling: [], rim: 0, vee: { ...held, drills } });
  }
  if (hold.kind === 'bench') return withRim(sketch, { from: left, right, tooling: [], rim: 0 });
  if (hold.kind === 'threaded-mandrel' || hold.tooling) return withRim(sketch, onTooling(sketch, hold, held, left, right));
  if (hold.kind === 'between-centres') return withRim(sketch, onCentres(sketch, held, left, right));
  const needed = Math.min(...shown, right);
  const short = right - left <= Math.max(WHOLE_SHARE * (right - held.to), WHOLE_WIDTH * held.radius);
  const whole = left >= needed || (hold.kind !== 'bar' && short);
  const window = whole ? { from: Math.min(left, held.from), right, clamp: held, tooling: [], rim: 0 } : inJaws(held, left, right, needed);
  if (hold.kind === 'bored-jaws') return withRim(sketch, withStep(window, held, left));
  return withRim(sketch, window);
}

/** Soft jaws bored to the work have a step that its end stands against. */
function withStep(window: Window, held: Clamp, left: number): Window {
  if (held.from > left || !window.clamp) return window;
  const step = STEP_SHARE * held.radius;
  return { ...window, from: Math.min(window.from, left - step), clamp: { ...window.clamp, step } };
}
const STEP_SHARE = 0.15;

/** The mouth of the centre hole, where there is a hole; else a small one is supposed. */
function centreRadius(sketch: Sketch, held: Clamp, right: number): number {
  const mouth = envelope(sketch.loops.flat(), 'inner').find((p) => p.b.u === right);
  const rim = envelope(sketch.loops.flat(), 'outer').find((p) => p.b.u === right)?.b.r ?? held.radius;
  return mouth && mouth.b.r > 0 ? mouth.b.r : CENTRE_SHARE * rim;
}
const CENTRE_SHARE = 0.3;

/** Whole, with a centre in either end. */
function onCentres(sketch: Sketch, held: Clamp, left: number, right: number): Window {
  const mouth = envelope(sketch.loops.flat(), 'inner').find((p) => p.a.u === left);
  const rim = envelope(sketch.loops.flat(), 'outer').find((p) => p.a.u === left)?.a.r ?? held.radius;
  const leftCentre = mouth && mouth.a.r > 0 ? mouth.a.r : CENTRE_SHARE * rim;
  return { from: left, right, clamp: held, tooling: [], rim: 0, centre: centreRadius(sketch, held, right), leftCentre };
}

function inJaws(held: Clamp, left: number, right: number, needed: number): Window {
  const stickOut = Math.max(right - held.to, LEAST_SHOWN);
  const shown = Math.min(held.to - held.from, Math.max(JAWS_SHARE * stickOut, LEAST_SHOWN));
  const clamp = { ...held, from: held.to - shown };
  const cutAt = Math.min(clamp.from, needed) - TAIL_SHARE * stickOut;
  return left >= cutAt
    ? { from: Math.min(left, clamp.from), right, clamp, tooling: [], rim: 0 }
    : { from: cutAt, right, cutAt, clamp, tooling: [], rim: 0 };
}

function onTooling(sketch: Sketch, hold: Hold, held: Clamp, left: number, right: number): Window {
  const given = hold.tooling;
  if (given?.held) return onHeldTooling(sketch, given, clampOf(sketch, given.held), left, right);
  const tooling = given ? ring(given.outline, sketch.out) : plainMandrel(sketch, hold, held, left);
  const us = tooling.map((p) => p.u);
  const rim = Math.max(...tooling.map((p) => p.r));
  const [from, to] = [Math.min(...us), Math.max(...us)];
  return { from: Math.min(from, left), right, clamp: { from, to: from + MANDREL_HELD * (to - from), radius: rim }, tooling, rim };
}

/** A mandrel as it stands in the chuck since it was made: its bar is broken off behind the jaws, which are drawn short. */
function onHeldTooling(sketch: Sketch, given: Tooling, held: Clamp, left: number, right: number): Window {
  const whole = ring(given.outline, sketch.out);
  const stickOut = Math.max(right - held.to, LEAST_SHOWN);
  const shown = Math.min(held.to - held.from, Math.max(JAWS_ON_TOOLING * stickOut, LEAST_SHOWN));
  const clamp = { ...held, from: held.to - shown };
  const cutAt = Math.min(clamp.from, left) - TAIL_ON_TOOLING * stickOut;
  const broken = whole.some((p) => p.u < cutAt);
  const tooling = broken ? clippedRing(whole, cutAt) : whole;
  const threads = (given.threads ?? []).map((band) => ring(band, sketch.out));
  const us = tooling.map((p) => p.u);
  const from = Math.min(...us, left, clamp.from);
  return {
    ...{ from, right, clamp, tooling, toolingThreads: threads, rim: Math.max(...tooling.map((p) => p.r)) },
    ...(broken ? { toolingCut: cutAt } : {}),
  };
}
const JAWS_ON_TOOLING = 0.09;
const TAIL_ON_TOOLING = 0.02;

function clampOf(sketch: Sketch, held: { readonly from: Len; readonly to: Len; readonly diameter: Len }): Clamp {
  const ends = [along(held.from, sketch.out), along(held.to, sketch.out)] as const;
  return { from: Math.min(...ends), to: Math.max(...ends), radius: placed({ z: 0, d: held.diameter }, sketch.out).r };
}

/**
 * After parting off, the stage has the part alone; the bar that stays in the jaws is what was there before, beyond the kerf. Drawn with
 * it, so that the jaws do not hold air.
 */
export function withRemainder(sketch: Sketch, hold: Hold): Sketch {
  const heldTo = Math.max(along(hold.from, sketch.out), along(hold.to, sketch.out));
  const left = Math.min(...sketch.loops.flat().flatMap((e) => [e.a.u, e.b.u]));
  if (!REMAINS.includes(hold.kind) || left < heldTo || sketch.taken.length === 0) return sketch;
  const kerf = Math.min(...sketch.taken.flat().map((p) => p.u));
  const turned = (points: readonly UR[]): readonly UR[] => points.map((p) => ({ u: -p.u, r: p.r }));
  const rest = sketch.before.map((loop) => turned(clippedRing(turned(corners(loop)), -kerf))).filter((points) => points.length > 2);
  const loops = rest.map((points) =>
    points.map((a, i): Edge => ({ a, b: points[(i + 1) % points.length] ?? a, surface: '', made: false })),
  );
  return { ...sketch, loops: [...sketch.loops, ...loops] };
}

const REMAINS: readonly GripKind[] = ['bar', 'bar-and-centre', 'stub'];

/** A ring round an outside thread, or a spigot with a collar in an inside one. */
function plainMandrel(sketch: Sketch, hold: Hold, held: Clamp, left: number): readonly UR[] {
  const face = hold.datum ? along(hold.datum.z, sketch.out) : held.to;
  const length = held.to - held.from;
  const start = Math.min(left, held.from) - MANDREL_BEHIND * length;
  const inside = isInside(sketch, held);
  if (!inside) return box(start, Math.max(face, held.to), held.radius, held.radius * MANDREL_WALL);
  const collar = held.from - length * 0.1;
  const wide = Math.max(...envelope(sketch.loops.flat(), 'outer').map((p) => p.a.r), held.radius);
  return [
    { u: start - length / 2, r: 0 },
    { u: start - length / 2, r: wide },
    { u: Math.min(face, left), r: wide },
    { u: Math.min(face, left), r: held.radius },
    { u: Math.max(held.to, collar), r: held.radius },
    { u: Math.max(held.to, collar), r: 0 },
  ];
}

/** Whether the held surface is the wall of a hole: by its thread, else by where the metal is. */
function isInside(sketch: Sketch, held: Clamp): boolean {
  const middle = (held.from + held.to) / 2;
  const band = sketch.bands.find((b) => Math.min(...b.polygon.map((p) => p.u)) < middle && Math.max(...b.polygon.map((p) => p.u)) > middle);
  if (band) return band.side === 'inside';
  return metalAt(sketch.loops, { u: middle, r: held.radius * 1.02 }) && !metalAt(sketch.loops, { u: middle, r: held.radius * 0.98 });
}

export function box(from: number, to: number, low: number, high: number): readonly UR[] {
  return [
    { u: from, r: low },
    { u: from, r: high },
    { u: to, r: high },
    { u: to, r: low },
  ];
}

function withRim(sketch: Sketch, window: Window): Window {
  const shown = [...sketch.loops, ...sketch.before].flatMap((loop) => envelope(loop, 'outer')).filter((p) => p.b.u >= window.from);
  return { ...window, rim: Math.max(window.rim, ...shown.flatMap((p) => [p.a.r, p.b.r])) };
}
