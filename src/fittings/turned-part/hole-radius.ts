/** Radii of a hole: its mouth rounded where it opens at an end, a fillet in the corner at its flat floor; and whether there is room for them. */
import { add, type Len, len, minus } from '../../base/units.ts';
import { radiusFigure } from '../../handbook/radii.ts';
import type { Limits } from '../../model/part.ts';
import type { Hole, HoleArc } from '../outline.ts';
import type { AskedHole } from './asked.ts';
import { type Faults, fault, type Path } from './fault.ts';
import { acrossAsked } from './radius.ts';

type Bored = { readonly asked: AskedHole; readonly path: Path; readonly size: Limits; readonly from: Len; readonly to: Len };
/** `flat`: it ends in a floor. */
type Among = { readonly all: readonly Bored[]; readonly length: Len; readonly flat: boolean };

/** The arcs of a hole; faults where a corner or the room is missing. */
export function holeArcs(hole: Bored, among: Among, faults: Faults): readonly HoleArc[] {
  const arcs = [...mouthOf(hole, among, faults), ...footOf(hole, among, faults)];
  const [first] = arcs;
  if (!first) return [];
  const has = minus(hole.to, hole.from);
  const wants = arcs.reduce((sum, arc) => add(sum, len(arc.across.hi / 2)), radiusFigure('land.least'));
  const key = first.bends === 'fillet' ? 'fillet' : 'radius';
  const grounds = { feature: hole.asked.name, has, wants, count: arcs.length };
  if (has < wants) fault(faults, [...hole.path, key], 'radius-long', grounds);
  return arcs;
}

function mouthOf(hole: Bored, { length }: Among, faults: Faults): readonly HoleArc[] {
  const { asked, path } = hole;
  if (!asked.radius) return [];
  const at = [...path, 'radius'];
  const other = asked.thread ? 'thread' : asked.cone ? 'cone' : asked.role === 'seat' ? 'seat' : undefined;
  const opens = asked.from === 'first' ? hole.from === 0 : hole.to === length;
  if (other) fault(faults, at, 'mouth-taken', { feature: asked.name, by: other });
  else if (!opens) fault(faults, at, 'mouth-within', { feature: asked.name });
  const across = acrossAsked(asked.name, 'radius', asked.radius, at, faults);
  return across && !other && opens ? [{ bends: 'round', across }] : [];
}

/** Between the wall and whatever goes on from the floor, or the axis, some of the floor is left. */
function footOf(hole: Bored, { all, flat }: Among, faults: Faults): readonly HoleArc[] {
  const { asked, path } = hole;
  if (!asked.fillet) return [];
  const at = [...path, 'fillet'];
  const other = asked.thread ? 'thread' : undefined;
  if (other) fault(faults, at, 'two-kinds', { feature: asked.name, one: other, two: 'fillet' });
  else if (!flat) fault(faults, at, 'fillet-without-floor', { feature: asked.name });
  const across = acrossAsked(asked.name, 'fillet', asked.fillet, at, faults);
  if (!across || other || !flat) return [];
  const inner = asked.from === 'first' ? hole.to : hole.from;
  const next = all.find((one) => one !== hole && (asked.from === 'first' ? one.from : one.to) === inner);
  const least = add(next?.size.hi ?? len(0), radiusFigure('face.least'));
  const left = minus(hole.size.lo, across.hi);
  const by = len(Math.ceil(minus(least, left) / 2));
  if (left < least) fault(faults, at, 'fillet-over-floor', { feature: asked.name, other: next?.asked.name ?? '', by });
  return [{ bends: 'fillet', across }];
}

/** How wide a rounded mouth opens at the face; 0 where there is none. */
export function roundedMouth(hole: Hole): number {
  const round = hole.arcs?.find((arc) => arc.bends === 'round');
  return round ? add(hole.size.hi, round.across.hi) : 0;
}
