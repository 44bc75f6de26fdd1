/**
 * The cap of the straight pattern: it closes the top and carries the outlet. Its stem is the lift stop: hollow, with a solid nose that is cut last,
 * to a measured sum, and holes right across behind it, by which the water gets into the bore and on to the pipe.
 */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len, minus } from '../../base/units.ts';
import type { Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor, nextBar } from '../bar.ts';
import { type EndOutline, endOf } from '../ends.ts';
import { about, between, general, half, MM, ratio, size, stock, tidy } from '../limits.ts';
import { type Hole, type OutlineAsk, partFrom, type Section, type Side } from '../outline.ts';
import { outsideThread, reliefOf, screwedLength } from '../threads.ts';
import { FITTED_LAST, stemLength } from './cap.ts';
import type { CheckValveSizes } from './sizes.ts';
import { type LiftStop, layOutStop } from './stop.ts';

/** Places from the nose up. */
type CapLayout = {
  readonly stem: Len;
  readonly threaded: Len;
  readonly across: Len;
  /** Height of the hexagon: with a plain end it runs on round the pipe's socket. */
  readonly head: Len;
  /** What stands between hexagon and spigot of a flange: room for nuts. */
  readonly neck: Len;
  readonly end: EndOutline;
  readonly length: Len;
};

export function straightCap(sizes: CheckValveSizes, stop: LiftStop, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const at = layOut(sizes, material, workshop);
  const { across } = at;
  return partFrom({
    ...{ id: 'cap', kind: 'cap', quantity: 1, use: 'fitting' },
    stock: barFor({ part: 'cap', material, section: 'hexagon', across, turned: false }, workshop, found),
    first: { letter: 'Q', role: 'register', fitted: true },
    second: at.end.end,
    sections: sectionsOf(sizes, stop, at),
    holes: [boreOf(sizes, stop, at), ...at.end.holes(at.length, workshop)],
    sides: [holesAcross(sizes, stop, at)],
    lengths: lengthsOf(sizes, at),
    waitsFor: FITTED_LAST,
  });
}

function layOut(sizes: CheckValveSizes, material: string, workshop: Workshop): CapLayout {
  const end = endOf({ ...sizes.end, coupling: sizes.coupling, bore: sizes.outlet }, beforeEnd(sizes));
  const head = add(size('cap.head'), end.sections.length === 0 ? end.length : len(0));
  const threaded = screwedLength(sizes.cap);
  const neck = sizes.end.form === 'flanged' ? size('flange.neck') : len(0);
  return {
    ...{ stem: minus(stemLength(sizes), threaded), threaded, head, neck, end },
    across: nextBar({ material, section: 'hexagon' }, leastAcross(sizes), workshop),
    length: add(add(stemLength(sizes), size('cap.head')), add(neck, end.length)),
  };
}

/** The hexagon closes the socket in the body, and stands over what the end needs. */
export function leastAcross(sizes: CheckValveSizes): Len {
  const wall = size('body.wall');
  const { collar } = endOf({ ...sizes.end, coupling: sizes.coupling, bore: sizes.outlet }, beforeEnd(sizes));
  return tidy(len(Math.max(add(sizes.cap.outside.major.hi, add(wall, wall)), collar)), MM, 'near');
}

/** The shoulder that the end begins at: of the hexagon, or of the neck that stands on it. */
const beforeEnd = ({ end }: CheckValveSizes): string => (end.form === 'flanged' ? 'D' : 'B');

function sectionsOf(sizes: CheckValveSizes, stop: LiftStop, { stem, threaded, across, head, neck, end }: CapLayout): readonly Section[] {
  const thread = sizes.cap.outside;
  const last = neck === 0 && end.sections.length === 0;
  return [
    {
      ...{ name: 'stem', role: 'clearance', length: stem, shoulder: { letter: 'N', role: 'free' } },
      size: about(stop.across, size('band.clearance'), 'stem'),
    },
    {
      ...{ name: 'cap-thread', role: 'thread', size: thread.major, length: threaded },
      thread: outsideThread(thread, 'first'),
      shoulder: { letter: 'A', role: 'sealing' },
    },
    {
      ...{ name: 'head', role: 'free', size: stock(across), length: head, section: 'hexagon', asStock: true },
      ...(last ? {} : { shoulder: { letter: 'B', role: 'free' as const } }),
    },
    ...(neck > 0 ? [neckOf(neck, end)] : []),
    ...end.sections,
  ];
}

/** Before the spigot of a flange, which lies against it. */
const neckOf = (neck: Len, { collar }: EndOutline): Section => ({
  ...{ name: 'neck', role: 'free', size: general(collar), length: neck },
  shoulder: { letter: 'D', role: 'register' },
});

/** From the outlet's end down past the holes; it ends in the drill's point, and the nose stays solid. */
function boreOf(sizes: CheckValveSizes, stop: LiftStop, { stem, length, end }: CapLayout): Hole {
  const { outlet } = sizes;
  return {
    ...{ name: 'bore', role: 'clearance', opens: ['second'], blind: true },
    ...{ from: minus(stem, layOutStop(stop, outlet).bored), to: minus(length, end.socket ?? len(0)) },
    size: between(outlet, add(outlet, size('band.drilled')), outlet, 'drilled'),
    ...(end.cone ? { cone: end.cone } : {}),
  };
}

const holesAcross = (sizes: CheckValveSizes, stop: LiftStop, { stem }: CapLayout): Side => ({
  ...{ name: 'water-holes', does: 'cross-hole', on: 'stem', role: 'clearance', size: stop.hole, count: ratio('lift-stop.across') },
  ...{ at: minus(stem, layOutStop(stop, sizes.outlet).hole), half: half(stop.hole.target) },
});

function lengthsOf(sizes: CheckValveSizes, { stem, threaded, head, neck, end }: CapLayout): OutlineAsk['lengths'] {
  return [
    { from: 'Q', to: 'A', limits: about(add(stem, threaded), half(size('band.length')), 'measure and fit') },
    { from: 'N', to: 'A', limits: general(threaded) },
    { from: 'cap-thread.wall', to: 'A', limits: reliefOf(sizes.cap.outside).width },
    { from: 'A', to: end.sections.length === 0 ? 'E' : 'B', limits: general(head) },
    ...lengthsAbove(neck, end),
    ...end.lengths,
  ];
}

/** Above the hexagon. */
function lengthsAbove(neck: Len, { sections, length }: EndOutline): OutlineAsk['lengths'] {
  if (sections.length === 0) return [];
  if (neck === 0) return [{ from: 'B', to: 'E', limits: general(length) }];
  return [
    { from: 'B', to: 'D', limits: general(neck) },
    { from: 'D', to: 'E', limits: about(length, size('band.length'), 'short of the face of its flange') },
  ];
}
