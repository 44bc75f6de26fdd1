/** Where things stand along the axis of a stop valve, foot at 0, and the lengths that parts must agree on. */
import { add, type Len, len, minus } from '../../base/units.ts';
import { barrelFor, spigotFor } from '../branch.ts';
import { half, MM, ratio, size, TENTH, tidy, times } from '../limits.ts';
import { reliefOf, screwedLength, type ThreadPair } from '../threads.ts';
import type { StopValveSizes } from './shared.ts';

export type BodyLayout = {
  readonly inlet: Len;
  /** Flat floor of the lower chamber, and the seat's face above the web. */
  readonly floor: Len;
  readonly seat: Len;
  readonly outlet: Len;
  /** Floor of the bonnet's socket. */
  readonly socket: Len;
  readonly length: Len;
  readonly barrel: Len;
  readonly spigot: Len;
  readonly hole: Len;
  /** How deep a branch's spigot sits in its hole, where the barrel is thinnest. */
  readonly overlap: Len;
  readonly plugThreadEnd: Len;
  readonly bonnetThreadEnd: Len;
};

export function layOutBody(sizes: StopValveSizes): BodyLayout {
  const ring = size('joint.ring.tight');
  const clear = size('stop.inlet.clear');
  const hole = sizes.crossHole;
  const spigot = spigotFor(hole);
  const reach = minus(screwedLength(sizes.bonnet), ring);
  const threadEnd = add(reach, size('socket.thread.clear'));
  const inlet = tidy(add(add(add(threadEnd, dead(sizes.bonnet)), clear), half(hole)), half(MM), 'up');
  const floor = tidy(add(add(inlet, half(hole)), clear), half(MM), 'up');
  const seat = tidy(add(floor, webOf(sizes)), half(MM), 'up');
  const outlet = tidy(add(add(seat, half(hole)), clear), half(MM), 'up');
  const socket = tidy(add(add(outlet, half(hole)), size('socket.floor.clear')), half(MM), 'up');
  const length = tidy(add(socket, add(threadEnd, dead(sizes.bonnet))), half(MM), 'up');
  const barrel = barrelOf(sizes);
  const overlap = half(minus(barrel, widestOf(sizes)));
  return {
    inlet,
    floor,
    seat,
    outlet,
    socket,
    length,
    barrel,
    spigot,
    hole,
    overlap,
    plugThreadEnd: threadEnd,
    bonnetThreadEnd: minus(length, threadEnd),
  };
}

/** A wall round the bonnet's thread, and for a branch's solder three walls of its spigot. */
function barrelOf(sizes: StopValveSizes): Len {
  const walled = tidy(add(sizes.bonnet.outside.major.hi, add(size('body.wall'), size('body.wall'))), MM, 'near');
  return len(Math.max(walled, barrelFor(widestOf(sizes), sizes)));
}

/** What the branches' holes open into. */
const widestOf = ({ chamber, bonnet }: StopValveSizes): Len => len(Math.max(chamber, bonnet.inside.minor.target));

export const webOf = (sizes: StopValveSizes): Len => len(Math.max(times(sizes.bore, ratio('stop.web.share')), size('stop.web.least')));
const dead = (thread: ThreadPair): Len => times(thread.inside.pitch, ratio('thread.dead'));

/** How far a tool that bores the seat from the bonnet's side has to reach: through the web and a little past it. */
export function seatDepth(sizes: StopValveSizes): Len {
  const at = layOutBody(sizes);
  return add(minus(at.length, at.floor), size('bore.past'));
}

/** From the seat's face up to the underside of the bonnet, its ring tightened: the room for plug and travel. */
export function roomAboveSeat(sizes: StopValveSizes): Len {
  const at = layOutBody(sizes);
  return minus(add(at.length, size('joint.ring.tight')), add(at.seat, screwedLength(sizes.bonnet)));
}

export type SpindleLayout = {
  /** Whole plug with its cone, running thread with its relief, stem, square, end thread. */
  readonly plug: Len;
  readonly thread: Len;
  readonly stem: Len;
  readonly square: Len;
  readonly end: Len;
};

export function layOutSpindle(sizes: StopValveSizes): SpindleLayout {
  const land = minus(minus(roomAboveSeat(sizes), sizes.travel), sizes.coneAbove);
  const relief = reliefOf(sizes.spindle.outside).width.target;
  const engaged = times(sizes.spindle.outside.major.hi, ratio('stop.engagement'));
  const thread = tidy(add(add(engaged, sizes.travel), relief), half(MM), 'up');
  const bonnet = layOutBonnet(sizes);
  const above = add(add(add(bonnet.length, glandStands(sizes)), size('spindle.free')), sizes.travel);
  const square = minus(add(size('wheel.rim'), size('wheel.hub')), size('square.in-wheel'));
  return {
    plug: add(tidy(add(sizes.coneBelow, sizes.coneAbove), TENTH, 'near'), tidy(land, TENTH, 'down')),
    thread,
    stem: tidy(minus(above, thread), half(MM), 'up'),
    square,
    end: size('spindle.end'),
  };
}

export type BonnetLayout = {
  readonly screwed: Len;
  readonly hexagon: Len;
  readonly neck: Len;
  readonly length: Len;
  /** The running thread, from the underside up: full, and its drilled hole. */
  readonly thread: Len;
  readonly bore: Len;
  readonly boxFloor: Len;
};

export function layOutBonnet(sizes: StopValveSizes): BonnetLayout {
  const screwed = screwedLength(sizes.bonnet);
  const engaged = times(sizes.spindle.outside.major.hi, ratio('stop.engagement'));
  const thread = tidy(add(add(engaged, sizes.travel), size('socket.thread.clear')), half(MM), 'up');
  const bore = tidy(add(thread, dead(sizes.spindle)), half(MM), 'up');
  const boxFloor = add(bore, size('stop.back'));
  const neck = neckLength(sizes);
  const length = tidy(len(Math.max(add(boxFloor, sizes.boxDepth), add(add(screwed, size('bonnet.hexagon')), neck))), half(MM), 'up');
  return { screwed, hexagon: minus(minus(length, neck), screwed), neck, length, thread, bore, boxFloor: minus(length, sizes.boxDepth) };
}

/** Thread for the gland nut: five full turns when the packing is new, the take-up, the relief. */
export function neckLength(sizes: StopValveSizes): Len {
  const full = times(sizes.gland.outside.pitch, ratio('gland.threads'));
  const relief = reliefOf(sizes.gland.outside).width.target;
  return tidy(add(add(full, takeUp(sizes)), relief), half(MM), 'up');
}

/** How far the follower goes in while the packing is pressed: a width at least. */
export function takeUp(sizes: StopValveSizes): Len {
  const pressed = times(sizes.packing, sizes.rings * ratio('packing.squeeze'));
  return tidy(len(Math.max(pressed, sizes.packing)), TENTH, 'up');
}

/** Depth of the nut's thread side: five full turns on the neck, what stands between neck and nut's floor when the packing is new. */
export function nutDepth(sizes: StopValveSizes): Len {
  const full = times(sizes.gland.outside.pitch, ratio('gland.threads'));
  return tidy(add(add(full, size('gland.flange')), minus(noseLength(sizes), size('gland.enter'))), half(MM), 'up');
}

/** The gland nut stands above the bonnet by its floor, the follower's flange, and what its nose has not gone in yet. */
export function glandStands(sizes: StopValveSizes): Len {
  return add(add(size('nut.floor'), size('gland.flange')), minus(noseLength(sizes), size('gland.enter')));
}

export const noseLength = (sizes: StopValveSizes): Len => tidy(times(sizes.packing, ratio('gland.nose')), TENTH, 'up');

/** In angle pattern: the way in from below, a little wider than the seat. */
export const inletAcross = ({ bore }: Pick<StopValveSizes, 'bore'>): Len => add(bore, size('stop.bore.step'));
