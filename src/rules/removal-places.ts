/** Where faces, ends and sweeps lie while a route is walked for what it takes away. */
import { type Len, len, mm } from '../base/units.ts';
import { type Span, stretchesOver } from '../geometry/profile.ts';
import { pointLength } from '../handbook/drills.ts';
import { numbersTable } from '../handbook/numbers.ts';
import type { End, SurfaceId } from '../model/ids.ts';
import { other } from '../model/ids.ts';
import type { Face, Part } from '../model/part.ts';
import type { Bound, Cut, Operation, Sweep, Way } from '../model/plan.ts';
import type { State } from './removal-state.ts';

export const beyond = (z: Len, way: End, by: Len): Len => len(way === 'first' ? z - by : z + by);
export const toward = (way: End, z: Len): Span =>
  way === 'first' ? { from: Number.NEGATIVE_INFINITY, to: z } : { from: z, to: Number.POSITIVE_INFINITY };
export const between = (a: Len, b: Len): Span => ({ from: Math.min(a, b), to: Math.max(a, b) });

/** From the bound out to the end in use. */
export function outward(state: State, out: End, to: Bound): Span {
  return toward(out, beyond(placeOf(state, to.face), other(out), to.beyond ?? len(0)));
}

/** The cone at a drill's end counts as drilled: what it leaves goes with the floor, not with the wall. */
export function withPoint(state: State, out: End, sweep: Extract<Sweep, { take: 'bore' }>): Span {
  const { face, beyond: by = len(0) } = sweep.to;
  const tenth = mm(numbersTable.value('tidy.coarse'));
  const point = sweep.point === undefined ? 0 : Math.ceil(pointLength(sweep.diameter, sweep.point) / tenth) * tenth;
  return outward(state, out, { face, beyond: len(by + point) });
}

/** How far the blade's farther side goes from the end in use: the length that it leaves, and its own width; nothing where that end is raw. */
export function bladeReach(
  state: State,
  { out, operation, way }: { readonly out: End; readonly operation: Operation; readonly way: Way },
  sweep: Extract<Sweep, { take: 'part' }>,
): { readonly along?: Len } {
  const cut = way.cuts.find((one) => one.makes === sweep.face);
  const end = state.ends.get(out);
  if (end === undefined) return {};
  const made = cut ? madePlace(state, operation, cut) : placeOf(state, sweep.face);
  const far = beyond(made, faceOf(state.part, sweep.face).air, len((sweep.stub ?? 0) + sweep.kerf));
  return { along: len(Math.abs(far - end)) };
}

/** Past the point of a drill there is no metal. */
export function comesOut(state: State, out: End, sweep: Extract<Sweep, { take: 'bore' }>): boolean {
  const { from, to } = withPoint(state, out, sweep);
  const past = toward(other(out), len(out === 'first' ? to : from));
  return stretchesOver(state.profile, past).every((one) => one.inside >= sweep.diameter);
}

export function kerfOf(state: State, sweep: Extract<Sweep, { take: 'part' }>): Span {
  const { air } = faceOf(state.part, sweep.face);
  const face = beyond(placeOf(state, sweep.face), air, sweep.stub ?? len(0));
  return between(face, beyond(face, air, sweep.kerf));
}

/** Of a face as it is now; of one not cut yet, the drawing's place. */
export const placeOf = (state: State, face: SurfaceId): Len => state.places.get(face) ?? faceOf(state.part, face).z;

/** Where this cut puts its face when it comes out as aimed at. */
export function madePlace(state: State, operation: Operation, cut: Cut): Len {
  const face = faceOf(state.part, cut.makes);
  const working = state.working.get(`${operation.id} ${cut.makes}`);
  const from = working && state.places.get(working.from);
  if (!working || from === undefined) return beyond(face.z, face.air, cut.leaves);
  return len(from + working.toward * working.limits.target);
}

export function faceOf(part: Part, id: SurfaceId): Face {
  const face = part.surfaces.find((one) => one.id === id);
  if (face?.shape !== 'face') throw new Error(`'${id}' is no face`);
  return face;
}

export function farEnd(part: Part, out: End): SurfaceId | undefined {
  const end = part.features.find((feature) => feature.kind === 'end' && feature.end === other(out));
  return end?.kind === 'end' ? end.face : undefined;
}

export const endPlace = (part: Part, end: End): Len => (end === 'first' ? len(0) : part.length);

/** What the chart aims at for this cut, else the drawing's. */
export function targetOf(state: State, operation: Operation, id: SurfaceId): Len {
  const surface = state.part.surfaces.find((one) => one.id === id);
  if (surface?.shape !== 'cylinder') throw new Error(`'${id}' is no cylinder`);
  return state.working.get(`${operation.id} ${id}`)?.limits.target ?? surface.size.target;
}

/** Of the end in use, where its face is cut again later: what still stands on it, over the drawing. */
export function standsOn(state: State, out: End): { readonly stands?: Len } {
  const end = state.ends.get(out);
  const over = end === undefined ? 0 : Math.abs(end - endPlace(state.part, out));
  return over > 0 ? { stands: len(over) } : {};
}

/** The major one. Throws Error when there is no such thread. */
export function threadDiameter(part: Part, id: string): Len {
  const thread = part.features.find((one) => one.id === id);
  if (thread?.kind !== 'thread') throw new Error(`'${id}' is no thread`);
  return thread.thread.major.target;
}
