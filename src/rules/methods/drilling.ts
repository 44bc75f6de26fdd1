/** Centring and drilling: from which end, how deep, and through which smaller hole. */
import { add, type Len, len, minus, mm } from '../../base/units.ts';
import { pointLength } from '../../handbook/drills.ts';
import type { End } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Because, Bound, Cut, Operation, Way } from '../../model/plan.ts';
import { type Context, depthFrom, ENDS, fact, farther, type Hole, length, nearer, operation, scaled, waysBy } from '../context.ts';
import { centreDrill, drill, drillUnder, drillWithin } from '../tools.ts';
import { seatPilot } from './seat.ts';

const ZERO = 0 as Len;

/** What the drill is for names its step, so that one id never stands for two drills. */
export type Drilling = { readonly step: 'drill' | 'drill-to-size' | 'drill-for-reamer' | 'drill-for-d-bit'; readonly stage: Cut['stage'] };
export const UNDER: Drilling = { step: 'drill', stage: 'rough' };
export const TO_SIZE: Drilling = { step: 'drill-to-size', stage: 'final' };
export const FOR_REAMER: Drilling = { step: 'drill-for-reamer', stage: 'rough' };

export function drilling(c: Context, f: Hole, size: Len, as: Drilling): readonly Operation[] {
  const ahead = wideAhead(c, f);
  if (ahead) return drillingOn(c, { ...f, opens: [ahead.end] }, size, as);
  const smaller = pilotHole(c, f);
  const solid = smaller === undefined || goesAhead(c, f, smaller);
  const centre = solid ? centring(c, f, size) : [];
  const pilot = solid && size > length('drill.pilot-above') ? drillUnder(c.workshop, scaled(size, 'drill.pilot-ratio')) : undefined;
  const first = pilot ? [drillOp(c, f, 'drill-pilot', pilot, 'rough', 'small-drill-first')] : [];
  // a reamer's lead goes past the far end: in a bar that is not parted yet the drill makes room for it
  const room = as === FOR_REAMER ? length('ream.lead') : ZERO;
  return [...centre, ...first, drillOp(c, f, as.step, size, as.stage, 'drill', room)];
}

export function centring(c: Context, f: Hole, size: Len): readonly Operation[] {
  const room = roomForCentre(c, f, size);
  const tool = centreDrill(c.workshop, size, room);
  // a shallow dimple is drilled without: what is longer would leave its mark in the bottom
  if (!tool || (f.blind && room !== undefined && tool.long > room)) return [];
  const ways = waysBy((end) => {
    const face = f.opens.includes(end) ? c.end(end)?.face : undefined;
    return face === undefined
      ? undefined
      : {
          cuts: [],
          sweeps: [
            {
              take: 'bore',
              cylinder: f.cylinder,
              diameter: mouthUnder(tool.mouth, size),
              to: { face, beyond: ZERO },
              point: fact('coupling.cone'),
            },
          ],
        };
  });
  return [operation({ feature: f.id, step: 'centre', verb: 'centre', tool: tool.tool, ways }, [{ rule: 'centre-small', grounds: {} }])];
}

/** It starts in the point that the larger drill has left, which centres it. */
function drillingOn(c: Context, f: Hole, size: Len, as: Drilling): readonly Operation[] {
  const room = as === FOR_REAMER ? length('ream.lead') : ZERO;
  return [drillOp(c, f, as.step, size, as.stage, 'drill-on-from-point', room)];
}

/**
 * The larger hole that is drilled before this one, and from where: its drill's point stays as the step between them, and this one would be deep
 * for its drill from the end of the part.
 */
export function wideAhead(c: Context, f: Hole): { readonly wide: Hole; readonly end: End } | undefined {
  const { size, to, from } = c.cylinder(f.cylinder);
  if (f.role === 'seat' || f.centre) return undefined;
  for (const end of f.opens) {
    const wide = c.holes.find((h) => h.blind && h.opens.includes(end) && smallerBeyond(c, h, end)?.id === f.id);
    if (wide && depthFrom(end, farther(end, { from, to }), c.part) > scaled(size.target, 'drill.ahead')) return { wide, end };
  }
  return undefined;
}

/** Is `wide` drilled before the smaller hole that goes on from it? */
export const goesAhead = (c: Context, wide: Hole, smaller: Hole): boolean => wideAhead(c, smaller)?.wide.id === wide.id;

/** A floor that is bored flat, or the drill's own point, takes away what the centre drill leaves. */
function roomForCentre(c: Context, f: Hole, size: Len): Len | undefined {
  if (f.blind) return len(floorDepth(c, f) + pointLength(size));
  return f.floor === undefined ? undefined : minus(floorDepth(c, f), length('drill.short'));
}

/** Of the floor, from the end that the hole is met from. */
const floorDepth = (c: Context, f: Hole): Len => {
  const end = f.opens[0] ?? 'first';
  return depthFrom(end, farther(end, c.cylinder(f.cylinder)), c.part);
};

/** A centre drill is sunk to its mouth only where the drill that follows takes the mouth away. */
const mouthUnder = (mouth: Len, size: Len): Len => len(Math.min(mouth, size - length('centre.under-drill')));

/** `room`: so much deeper where it comes out, for what follows it. */
export function drillOp(c: Context, f: Hole, step: string, size: Len, stage: Cut['stage'], rule: string, room: Len = ZERO): Operation {
  const nominal = c.cylinder(f.cylinder).size.target;
  const ways = waysBy((end): Way | undefined => {
    const to = f.opens.includes(end) ? drillTo(c, f, end, size, room) : undefined;
    if (!to) return undefined;
    const cut: Cut = { makes: f.cylinder, stage, measures: 'diameter', leaves: stage === 'final' ? ZERO : minus(nominal, size) };
    return { cuts: [cut], sweeps: [{ take: 'bore', cylinder: f.cylinder, diameter: size, to, point: fact('drill.point') }] };
  });
  return operation({ feature: f.id, step, verb: 'drill', tool: drill(size), ways }, [{ rule, grounds: {} }], breaksOut(c, f));
}

/** Where its feed is held back: as it comes out, or where it opens out a hole that goes on. */
function breaksOut(c: Context, f: Hole): readonly Because[] {
  const [end = 'first'] = f.opens;
  const smaller = smallerBeyond(c, f, end);
  if (f.blind) return smaller ? stepSaid(c, f, smaller) : [];
  if (!f.floor) return [{ rule: 'drill-break-through', grounds: {}, comesOut: true }];
  return smaller ? [{ rule: 'drill-opens-out', grounds: {} }] : [];
}

/** The step is what its point leaves. */
const stepSaid = (c: Context, f: Hole, smaller: Hole): readonly Because[] => [
  { rule: 'step-of-point', grounds: {} },
  ...(goesAhead(c, f, smaller) ? [] : [{ rule: 'drill-opens-out', grounds: {} }]),
];

/** Right through where everything beyond is open; else until the point reaches the floor. */
export function drillTo(c: Context, f: Hole, end: End, size: Len, room: Len = ZERO): Bound | undefined {
  const face = c.end(end)?.face;
  // counted from the end, also where the hole begins behind a larger one
  if (f.blind) return face === undefined ? undefined : { face, beyond: depthFrom(end, farther(end, c.cylinder(f.cylinder)), c.part) };
  if (f.floor) return { face: f.floor, beyond: len(-pointRoom(size) - length('drill.short')) };
  const beyond = c.end(other(end));
  return beyond && { face: beyond.face, beyond: add(length('drill.past'), room) };
}

/** Room for the drill's point: its length up to the next tenth of a millimetre. */
export function pointRoom(size: Len): Len {
  const tenth = mm(1 / 10);
  return len(Math.ceil(pointLength(size) / tenth) * tenth);
}

/** The hole that goes on, smaller, from this one's floor or far side. */
export function smallerBeyond(c: Context, f: Hole, end: End): Hole | undefined {
  const mine = c.cylinder(f.cylinder);
  return c.holes.find(
    (h) => nearer(end, c.cylinder(h.cylinder)) === farther(end, mine) && c.cylinder(h.cylinder).size.target < mine.size.target,
  );
}

/** A smaller hole through which this one's tool may start: it is drilled first. */
export function pilotHole(c: Context, f: Hole): Hole | undefined {
  for (const end of ENDS) {
    const found = f.opens.includes(end) ? smallerBeyond(c, f, end) : undefined;
    if (found) return found;
  }
  return undefined;
}

/** A branch is soldered into its side, and its spigot is trimmed by the last cut. */
export const isTrimmed = (c: Context, f: Hole): boolean => {
  const { from, to } = c.cylinder(f.cylinder);
  return c.part.features.some((s) => s.kind === 'side' && s.does === 'branch' && from < s.at && s.at < to);
};

/** Diameter that the pilot's drill leaves. */
export function startOf(c: Context, pilot: Hole): Len | undefined {
  const size = c.cylinder(pilot.cylinder).size;
  if (pilot.role === 'seat') return seatPilot(c, pilot);
  if (pilot.role !== 'running' && !isTrimmed(c, pilot))
    return drillWithin(c.workshop, size) ?? drillUnder(c.workshop, minus(size.target, length('drill.for-bore')));
  return drillUnder(c.workshop, minus(size.target, length('drill.for-bore')));
}
