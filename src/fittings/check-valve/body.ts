/** The body: ball chamber, sockets for seat piece and cap, the branch soldered into its side. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len, minus } from '../../base/units.ts';
import type { Limits, Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor } from '../bar.ts';
import { branchSides, spigotFor } from '../branch.ts';
import { spannerFlats } from '../flats.ts';
import { about, between, general, half, MM, ratio, size, tidy, times } from '../limits.ts';
import { type Hole, type OutlineAsk, partFrom, type Side } from '../outline.ts';
import { insideChamfer, reliefOf, type ThreadPair } from '../threads.ts';
import { layOutSeatPiece } from './seat-piece.ts';
import type { CheckValveSizes } from './sizes.ts';

export type BodyLayout = {
  /** Seat face above the body's lower face, ring tightened. */
  readonly seat: Len;
  readonly floor: Len;
  readonly outlet: Len;
  readonly upper: Len;
  readonly length: Len;
  readonly barrel: Len;
  readonly spigot: Len;
  readonly hole: Len;
  /** How far the seat piece's and the cap's thread reach in. */
  readonly seatThreadEnd: Len;
  readonly capThreadEnd: Len;
};

export function layOutBody(sizes: CheckValveSizes): BodyLayout {
  const piece = layOutSeatPiece(sizes);
  const ring = size('joint.ring.tight');
  const seat = minus(piece.reach, ring);
  const floor = add(seat, size('socket.gap'));
  const hole = sizes.crossHole;
  const spigot = spigotFor(hole);
  const equator = add(add(seat, sizes.centre), sizes.lift);
  const outlet = tidy(add(add(equator, half(sizes.outlet)), size('outlet.clear')), half(MM), 'up');
  const upper = tidy(add(add(outlet, half(hole)), size('socket.floor.clear')), half(MM), 'up');
  const capReach = minus(
    add(reliefOf(sizes.cap.outside).width.target, times(sizes.cap.outside.major.hi, ratio('seat-piece.engagement'))),
    ring,
  );
  const capThreadEnd = add(capReach, size('socket.thread.clear'));
  const length = tidy(add(upper, add(capThreadEnd, dead(sizes.cap))), half(MM), 'up');
  const seatThreadEnd = minus(floor, dead(sizes.seat));
  const wide = Math.max(sizes.seat.outside.major.hi, sizes.cap.outside.major.hi);
  const barrel = tidy(add(len(wide), add(size('body.wall'), size('body.wall'))), MM, 'near');
  return { seat, floor, outlet, upper, length, barrel, spigot, hole, seatThreadEnd, capThreadEnd };
}

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
    waitsFor: [
      { feature: 'branch', part: 'branch', why: 'joined' },
      ...(sizes.end.form === 'flanged' ? [{ feature: 'branch-flange', part: 'pipe-flange', why: 'joined' as const }] : []),
    ],
  });
}

function sidesOf(sizes: CheckValveSizes, at: BodyLayout): readonly Side[] {
  const flatHalf = half(size('flats.body'));
  return [
    spannerFlats('barrel', at.barrel, add(size('jaw.clearance'), flatHalf), flatHalf),
    ...branchSides(
      { ...sizes, hole: at.hole, wall: half(minus(at.barrel, sizes.chamber.target)) },
      'barrel',
      { hole: 'outlet', branch: 'branch' },
      at.outlet,
    ),
  ];
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
