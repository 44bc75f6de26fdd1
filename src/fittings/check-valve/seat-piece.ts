/** The seat piece: seat face on a plain nose, thread into the body, flange with spanner flats, pipe coupling below. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len, minus } from '../../base/units.ts';
import type { Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor } from '../bar.ts';
import { couplingCone, couplingLength, couplingSection } from '../coupling.ts';
import { spannerFlats } from '../flats.ts';
import { about, between, general, half, MM, ratio, size, TENTH, tidy, times } from '../limits.ts';
import { type Hole, type OutlineAsk, partFrom, type Section } from '../outline.ts';
import { outsideThread, reliefOf } from '../threads.ts';
import type { CheckValveSizes } from './sizes.ts';

export type SeatPieceLayout = { readonly nose: Len; readonly thread: Len; readonly reach: Len; readonly flange: Len; readonly rim: Len };

/** Lengths that the body needs to know too: `reach` is from the seat face to the shoulder under the flange. */
export function layOutSeatPiece(sizes: CheckValveSizes): SeatPieceLayout {
  const thread = sizes.seat.outside;
  const full = times(thread.major.hi, ratio('seat-piece.engagement'));
  const relief = reliefOf(thread).width.target;
  const reach = tidy(add(add(size('seat-piece.nose'), full), relief), MM, 'up');
  const threaded = add(tidy(full, TENTH, 'near'), relief);
  return {
    nose: minus(reach, threaded),
    thread: threaded,
    reach,
    flange: size('seat-piece.flange'),
    rim: tidy(add(thread.major.hi, size('flange.over-thread')), MM, 'near'),
  };
}

export const pieceLength = (sizes: CheckValveSizes): Len => {
  const at = layOutSeatPiece(sizes);
  return add(add(at.reach, at.flange), couplingLength(sizes.coupling));
};

export function seatPiece(sizes: CheckValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const at = layOutSeatPiece(sizes);
  const length = pieceLength(sizes);
  return partFrom({
    id: 'seat-piece',
    kind: 'seat-piece',
    quantity: 1,
    use: 'fitting',
    stock: barFor({ part: 'seat-piece', material, section: 'round', across: at.rim, turned: true }, workshop, found),
    first: { letter: 'S', role: 'seat' },
    second: { letter: 'E', role: 'sealing' },
    sections: sectionsOf(sizes, at),
    holes: holesOf(sizes, length),
    sides: [spannerFlats('flange', at.rim, add(at.reach, half(at.flange)), half(at.flange))],
    lengths: lengthsOf(sizes, at, length),
  });
}

/** One bore right through; or a land at the seat, and an inlet that a drill opens up to it. */
function holesOf(sizes: CheckValveSizes, length: Len): readonly Hole[] {
  const { land } = sizes;
  const bore: Hole = {
    ...{ name: 'bore', role: 'seat', from: len(0), to: land?.length ?? length, opens: ['first', 'second'], edge: 'S' },
    size: about(sizes.bore, size('band.bore.seat'), 'seat bore'),
  };
  const cone = couplingCone(sizes.coupling, 'second');
  if (!land) return [{ ...bore, cone }];
  const inlet: Hole = {
    ...{ name: 'inlet', role: 'clearance', from: land.length, to: length, opens: ['second'], blind: true, cone },
    size: between(land.inlet, add(land.inlet, size('band.drilled')), land.inlet, 'drilled'),
  };
  return [bore, inlet];
}

function sectionsOf(sizes: CheckValveSizes, at: SeatPieceLayout): readonly Section[] {
  const nose = minus(tidy(sizes.seat.outside.root, TENTH, 'down'), size('band.clearance'));
  const noseLimits = about(nose, size('band.clearance'), 'passes the thread');
  return [
    { name: 'nose', role: 'clearance', size: noseLimits, length: at.nose, shoulder: { letter: 'N', role: 'free' } },
    {
      name: 'seat-thread',
      role: 'thread',
      size: sizes.seat.outside.major,
      length: at.thread,
      thread: outsideThread(sizes.seat.outside, 'first', noseLimits.hi),
      shoulder: { letter: 'A', role: 'register' },
    },
    { name: 'flange', role: 'free', size: general(at.rim), length: at.flange, shoulder: { letter: 'B', role: 'free' } },
    couplingSection(sizes.coupling, 'second'),
  ];
}

function lengthsOf(sizes: CheckValveSizes, at: SeatPieceLayout, length: Len): OutlineAsk['lengths'] {
  const band = size('band.length');
  return [
    { from: 'S', to: 'A', limits: about(at.reach, band, 'lift') },
    { from: 'A', to: 'B', limits: about(at.flange, band, 'flange') },
    { from: 'A', to: 'E', limits: about(minus(length, at.reach), band, 'coupling') },
    { from: 'S', to: 'N', limits: general(at.nose) },
    { from: 'seat-thread.wall', to: 'A', limits: reliefOf(sizes.seat.outside).width },
    { from: 'B', to: 'coupling.wall', limits: reliefOf(sizes.coupling.outside).width },
  ];
}
