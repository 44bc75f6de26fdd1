/** The body: ball chamber, sockets for seat piece and cap, the branch soldered into its side. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len, minus } from '../../base/units.ts';
import type { Limits, Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor } from '../bar.ts';
import { barrelFor, branchSides } from '../branch.ts';
import { spannerFlats } from '../flats.ts';
import { about, between, general, half, MM, ratio, size, TENTH, tidy, times } from '../limits.ts';
import { type Hole, type OutlineAsk, partFrom, type Side } from '../outline.ts';
import { insideChamfer, reliefOf, screwedLength, type ThreadPair } from '../threads.ts';
import { layOutSeatPiece } from './seat-piece.ts';
import type { CheckValveSizes } from './sizes.ts';
import { type LiftStop, layOutStop } from './stop.ts';

export type BodyLayout = {
  /** Seat face above the body's lower face, ring tightened. */
  readonly seat: Len;
  readonly floor: Len;
  /** Middle of the branch's hole; absent where the outlet is in line, through the cap. */
  readonly outlet?: Len;
  /** Top of the chamber, floor of the cap's socket. */
  readonly upper: Len;
  /** Where the top of the lifted ball, and with it the stem, comes to be. */
  readonly stopped: Len;
  readonly length: Len;
  readonly barrel: Len;
  /** How far the seat piece's and the cap's thread reach in. */
  readonly seatThreadEnd: Len;
  readonly capThreadEnd: Len;
};

export function layOutBody(sizes: CheckValveSizes): BodyLayout {
  const piece = layOutSeatPiece(sizes);
  const ring = size('joint.ring.tight');
  const seat = minus(piece.reach, ring);
  const floor = add(seat, size('socket.gap'));
  const equator = add(add(seat, sizes.centre), sizes.lift);
  const stopped = add(equator, half(sizes.ball));
  const capReach = minus(
    add(reliefOf(sizes.cap.outside).width.target, times(sizes.cap.outside.major.hi, ratio('seat-piece.engagement'))),
    ring,
  );
  const capThreadEnd = add(capReach, size('socket.thread.clear'));
  const { outlet, upper } = sizes.stop ? { upper: tidy(add(equator, size('outlet.clear')), TENTH, 'up') } : besideBranch(sizes, equator);
  const threaded = add(upper, add(capThreadEnd, dead(sizes.cap)));
  const length = tidy(len(Math.max(threaded, sizes.stop ? overStop(sizes, sizes.stop, stopped) : 0)), half(MM), 'up');
  const seatThreadEnd = minus(floor, dead(sizes.seat));
  const wide = Math.max(sizes.seat.outside.major.hi, sizes.cap.outside.major.hi);
  const walled = tidy(add(len(wide), add(size('body.wall'), size('body.wall'))), MM, 'near');
  const barrel = sizes.stop ? walled : len(Math.max(walled, barrelFor(sizes.chamber.hi, sizes)));
  return { seat, floor, ...(outlet === undefined ? {} : { outlet }), upper, stopped, length, barrel, seatThreadEnd, capThreadEnd };
}

/** The lower lip of the branch stays above the equator of the lifted ball; the socket's floor clears its hole. */
function besideBranch(sizes: CheckValveSizes, equator: Len): { readonly outlet: Len; readonly upper: Len } {
  const outlet = tidy(add(add(equator, half(sizes.outlet)), size('outlet.clear')), half(MM), 'up');
  return { outlet, upper: tidy(add(add(outlet, half(sizes.crossHole)), size('socket.floor.clear')), half(MM), 'up') };
}

/** As high as the cap's shoulder comes when there is room under its thread for the whole stop. */
const overStop = (sizes: CheckValveSizes, stop: LiftStop, stopped: Len): Len =>
  minus(add(stopped, add(screwedLength(sizes.cap), layOutStop(stop, sizes.outlet).length)), size('joint.ring.tight'));

const dead = (thread: ThreadPair): Len => times(thread.inside.pitch, ratio('thread.dead'));

export function body(sizes: CheckValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const at = layOutBody(sizes);
  return partFrom({
    id: 'body',
    kind: 'body',
    quantity: 1,
    use: 'fitting',
    stock: barFor({ part: 'body', material, section: 'round', across: at.barrel, turned: true }, workshop, found),
    first: { letter: 'P', role: 'sealing' },
    second: { letter: 'T', role: 'sealing' },
    sections: [{ name: 'barrel', role: 'free', size: general(at.barrel), length: at.length }],
    holes: [
      socket('seat-socket', sizes.seat, len(0), at.floor, 'first', at.seatThreadEnd, 'F'),
      { name: 'chamber', role: 'clearance', size: chamberLimits(sizes), from: at.floor, to: at.upper, opens: ['first', 'second'] },
      socket('cap-socket', sizes.cap, at.upper, at.length, 'second', minus(at.length, at.capThreadEnd), 'G'),
    ],
    sides: sidesOf(sizes, at),
    lengths: lengthsOf(at),
    waitsFor: joined(sizes),
  });
}

/** Branch, and flange on it, are finished before they are soldered in. In straight pattern nothing is. */
function joined({ stop, end }: CheckValveSizes): NonNullable<OutlineAsk['waitsFor']> {
  if (stop) return [];
  const flange = { feature: 'branch-flange', part: 'pipe-flange', why: 'joined' } as const;
  return [{ feature: 'branch', part: 'branch', why: 'joined' }, ...(end.form === 'flanged' ? [flange] : [])];
}

function sidesOf(sizes: CheckValveSizes, { barrel, outlet }: BodyLayout): readonly Side[] {
  const flatHalf = half(size('flats.body'));
  const flats = spannerFlats('barrel', barrel, add(size('jaw.clearance'), flatHalf), flatHalf);
  if (outlet === undefined) return [flats];
  const wall = half(minus(barrel, sizes.chamber.target));
  return [flats, ...branchSides({ ...sizes, hole: sizes.crossHole, wall }, 'barrel', { hole: 'outlet', branch: 'branch' }, outlet)];
}

function lengthsOf(at: BodyLayout): OutlineAsk['lengths'] {
  const band = size('band.length');
  return [
    { from: 'P', to: 'T', limits: general(at.length) },
    { from: 'P', to: 'F', limits: about(at.floor, band, 'gap') },
    {
      from: 'G',
      to: 'T',
      limits: between(minus(minus(at.length, at.upper), band), add(minus(at.length, at.upper), band), minus(at.length, at.upper), 'socket'),
    },
  ];
}

const chamberLimits = (sizes: CheckValveSizes): Limits =>
  between(sizes.chamber.lo, sizes.chamber.hi, sizes.chamber.target, 'ring round the ball');

/** A threaded socket: bored to the thread's minor limits with a flat floor. */
function socket(name: string, pair: ThreadPair, from: Len, to: Len, opens: 'first' | 'second', threadTo: Len, letter: string): Hole {
  return {
    name,
    role: 'thread',
    size: pair.inside.minor,
    from,
    to,
    opens: [opens],
    floor: { letter, role: 'free' },
    thread: { size: pair.inside, to: threadTo, chamfer: insideChamfer(pair.inside) },
  };
}
