/** Is there room for the arcs: along each piece, on each face, at the axis, and round the holes that open in a rounded end? */
import { add, len, minus } from '../../base/units.ts';
import { radiusFigure } from '../../handbook/radii.ts';
import type { End } from '../../model/ids.ts';
import { size } from '../limits.ts';
import type { ArcAsk, Hole, Section } from '../outline.ts';
import type { TurnedPartAsked } from './asked.ts';
import { type Faults, fault, type Path } from './fault.ts';
import { roundedMouth } from './hole-radius.ts';

const ENDS: readonly End[] = ['first', 'second'];
type Room = { readonly asked: TurnedPartAsked; readonly sections: readonly Section[]; readonly faults: Faults };

export function checkArcs(room: Room, holes: readonly Hole[]): void {
  room.sections.forEach((section, i) => {
    if (section.arcs) checkLand(room, section, section.arcs, i);
    for (const arc of section.arcs ?? []) {
      const beside = arc.at === 'first' ? i - 1 : i + 1;
      if (arc.bends === 'fillet') checkStep(room, { low: i, high: beside, end: arc.at }, i);
      else if (room.sections[beside]) checkStep(room, { low: beside, high: i, end: arc.at === 'first' ? 'second' : 'first' }, i);
      else checkEnd(room, section, arc, i, holes);
    }
  });
}

const arcAt = (section: Section | undefined, end: End, bends: ArcAsk['bends']): ArcAsk | undefined =>
  section?.arcs?.find((arc) => arc.at === end && arc.bends === bends);
const nameOf = ({ asked }: Room, i: number): string => asked.outside[i]?.name ?? '';
const keyOf = ({ asked }: Room, i: number, arc: ArcAsk): Path => {
  const full = asked.outside[i]?.['full-round'] === arc.at;
  return ['outside', i, arc.bends === 'fillet' ? 'fillet' : full ? 'full-round' : 'radius'];
};

/** Along the piece: its arcs, its chamfers, and a land between them; no corner is asked for twice. */
function checkLand(room: Room, section: Section, arcs: readonly ArcAsk[], i: number): void {
  const chamfers = section.chamfers ?? [];
  const doubled = ENDS.find((end) => [...arcs, ...chamfers].filter((one) => one.at === end).length > 1);
  const [first] = arcs;
  if (!first) return;
  if (doubled) fault(room.faults, keyOf(room, i, first), 'radius-twice', { feature: nameOf(room, i), end: doubled });
  const high = chamfers.map((one) => len(Math.ceil(minus(section.size.target, one.mouth.lo) / 2)));
  const taken = [...arcs.map((arc) => len(arc.across.hi / 2)), ...high].reduce(add, len(0));
  const wants = add(taken, radiusFigure('land.least'));
  if (section.length < wants)
    fault(room.faults, keyOf(room, i, first), 'radius-long', { feature: nameOf(room, i), has: section.length, wants, count: arcs.length });
}

/** On the face between two pieces: what the fillet of the lower and the edge of the higher one leave of it, at their worst. `by`: who asks. */
function checkStep(room: Room, step: { readonly low: number; readonly high: number; readonly end: End }, by: number): void {
  const [low, high] = [room.sections[step.low], room.sections[step.high]];
  const far: End = step.end === 'first' ? 'second' : 'first';
  if (!low || !high) return;
  const [fillet, round] = [arcAt(low, step.end, 'fillet'), arcAt(high, far, 'round')];
  const chamfer = high.chamfers?.find((one) => one.at === far);
  const foot = len(low.size.hi + (fillet?.across.hi ?? 0));
  const edge = len(Math.min(high.size.lo - (round?.across.hi ?? 0), chamfer?.mouth.lo ?? high.size.lo));
  const short = add(foot, radiusFigure('face.least')) - edge;
  const own = by === step.low ? fillet : round;
  if (short <= 0 || !own) return;
  const problem = fillet && round ? 'radii-meet' : fillet ? 'fillet-high' : 'radius-past-step';
  const grounds = { feature: nameOf(room, by), other: nameOf(room, by === step.low ? step.high : step.low), by: len(Math.ceil(short / 2)) };
  // two radii on one face are told once
  if (problem !== 'radii-meet' || by === step.low) fault(room.faults, keyOf(room, by, own), problem, grounds);
}

/** At an end of the part the edge may not reach the axis, nor a hole that opens there. */
function checkEnd(room: Room, section: Section, arc: ArcAsk, i: number, holes: readonly Hole[]): void {
  const flat = minus(section.size.lo, arc.across.hi);
  const path = keyOf(room, i, arc);
  const feature = nameOf(room, i);
  const least = radiusFigure('face.least');
  const most = len(Math.floor(minus(section.size.lo, least) / 2));
  if (flat < least) fault(room.faults, path, 'radius-deep', { feature, hi: len(arc.across.hi / 2), most });
  for (const hole of holes) {
    if (!hole.opens.includes(arc.at)) continue;
    const round = hole.opens[0] === arc.at ? roundedMouth(hole) : 0;
    const mouth = len(
      Math.max(
        round,
        hole.size.hi,
        hole.cone && (hole.cone.at === arc.at || hole.cone.twin) ? hole.cone.mouth.hi : 0,
        hole.thread?.chamfer?.hi ?? 0,
      ),
    );
    const wall = size('part.wall.least');
    if (flat < mouth + 2 * wall) fault(room.faults, path, 'radius-in-hole', { feature, hole: hole.name, least: len(mouth + 2 * wall) });
  }
}
