/** The body: lower chamber, seat in its web, upper chamber and the bonnet's thread in one line; two branches soldered into its side. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, len, minus, mm } from '../../base/units.ts';
import { proving } from '../../handbook/proving.ts';
import type { Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor } from '../bar.ts';
import { branchSides } from '../branch.ts';
import { couplingCone, couplingLength, couplingSection } from '../coupling.ts';
import { spannerFlats } from '../flats.ts';
import { about, between, general, half, size } from '../limits.ts';
import { type Hole, type OutlineAsk, partFrom, type Section, type Side } from '../outline.ts';
import { insideChamfer, reliefOf, type ThreadPair } from '../threads.ts';
import { branchAsk, joined } from './ends.ts';
import { type BodyLayout, inletAcross, layOutBody } from './layout.ts';
import type { StopValveSizes } from './shared.ts';

export function straightBody(sizes: StopValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const at = layOutBody(sizes);
  return partFrom({
    ...common(at, material, workshop, found),
    first: { letter: 'P', role: 'sealing' },
    sections: [{ name: 'barrel', role: 'free', size: general(at.barrel), length: at.length }],
    holes: [
      socket({ name: 'lower', pair: sizes.bonnet, from: len(0), to: at.floor, opens: 'first', threadTo: at.plugThreadEnd, floor: 'L' }),
      seatHole(sizes, at.floor, at.seat),
      ...upperHoles(sizes, at),
    ],
    sides: [
      flatsAt(at, len(0)),
      ...branchSides(branchAsk(sizes, 'inlet'), 'barrel', { hole: 'inlet', branch: 'inlet-branch' }, at.inlet),
      ...branchSides(branchAsk(sizes, 'outlet'), 'barrel', { hole: 'outlet', branch: 'outlet-branch', opposite: 'inlet' }, at.outlet),
    ],
    lengths: [...upperLengths(at), { from: 'P', to: 'T', limits: general(at.length) }, { from: 'P', to: 'L', limits: general(at.floor) }],
    waitsFor: [...joined(sizes, 'inlet', 'inlet-branch'), ...joined(sizes, 'outlet', 'outlet-branch')],
  });
}

/** The inlet comes in line, from below: a coupling in place of chamber and plug. */
export function angleBody(sizes: StopValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const at = layOutBody(sizes);
  return partFrom({
    ...common(at, material, workshop, found),
    first: { letter: 'E', role: 'sealing' },
    sections: angleSections(sizes, at),
    holes: [inletBore(sizes, at), seatHole(sizes, at.floor, at.seat), ...upperHoles(sizes, at)],
    sides: [
      flatsAt(at, couplingLength(sizes.coupling)),
      ...branchSides(
        { coupling: sizes.coupling, hole: at.hole, wall: at.overlap },
        'barrel',
        { hole: 'outlet', branch: 'branch' },
        at.outlet,
      ),
    ],
    lengths: [
      ...upperLengths(at),
      { from: 'E', to: 'L', limits: general(at.floor) },
      { from: 'E', to: 'B', limits: general(couplingLength(sizes.coupling)) },
      { from: 'E', to: 'T', limits: general(at.length) },
      { from: 'coupling.wall', to: 'B', limits: reliefOf(sizes.coupling.outside).width },
    ],
    waitsFor: joined(sizes, 'outlet', 'branch'),
  });
}

/** A little wider than the seat, so that the seat is a short land which is bored from above. */
function inletBore(sizes: StopValveSizes, at: BodyLayout): Hole {
  const across = inletAcross(sizes);
  return {
    ...{ name: 'inlet', role: 'clearance', from: len(0), to: at.floor, opens: ['first'] },
    size: between(minus(across, size('band.clearance')), add(across, size('band.clearance')), across, 'inlet'),
    floor: { letter: 'L', role: 'free' },
    cone: couplingCone(sizes.coupling, 'first'),
  };
}

const common = (
  at: BodyLayout,
  material: string,
  workshop: Workshop,
  found: Diagnostic[],
): Pick<OutlineAsk, 'id' | 'kind' | 'quantity' | 'use' | 'stock' | 'second' | 'truths'> => ({
  id: 'body',
  kind: 'body',
  quantity: 1,
  use: 'fitting',
  stock: barFor({ part: 'body', material, section: 'round', across: at.barrel, turned: true }, workshop, found),
  second: { letter: 'T', role: 'sealing' },
  // The bonnet steers the plug: the seat has to be true to its thread.
  truths: [{ a: 'socket', b: 'seat', asks: mm(proving.value('truth.seat')) }],
});

const angleSections = (sizes: StopValveSizes, at: BodyLayout): readonly Section[] => {
  const coupling = couplingSection(sizes.coupling, 'first');
  return [
    { ...coupling, shoulder: { letter: 'B', role: 'free' } },
    { name: 'barrel', role: 'free', size: general(at.barrel), length: minus(at.length, coupling.length) },
  ];
};

/** A spanner holds the body while bonnet or plug is tightened. */
function flatsAt(at: BodyLayout, from: Len): Side {
  const flatHalf = half(size('flats.length'));
  return spannerFlats('barrel', at.barrel, add(from, add(size('jaw.clearance'), flatHalf)), flatHalf);
}

function seatHole(sizes: StopValveSizes, from: Len, to: Len): Hole {
  const limits = about(sizes.bore, size('band.bore.seat'), 'seat bore');
  return { name: 'seat', role: 'seat', size: limits, from, to, opens: ['first', 'second'], edge: 'W', takes: 'cone' };
}

function upperHoles(sizes: StopValveSizes, at: BodyLayout): readonly Hole[] {
  const chamber = between(
    minus(sizes.chamber, size('band.clearance')),
    add(sizes.chamber, size('band.clearance')),
    sizes.chamber,
    'room round the plug',
  );
  return [
    {
      name: 'chamber',
      role: 'clearance',
      size: chamber,
      from: at.seat,
      to: at.socket,
      opens: ['second'],
      floor: { letter: 'W', role: 'seat' },
    },
    socket({
      name: 'socket',
      pair: sizes.bonnet,
      from: at.socket,
      to: at.length,
      opens: 'second',
      threadTo: at.bonnetThreadEnd,
      floor: 'G',
    }),
  ];
}

function upperLengths(at: BodyLayout): OutlineAsk['lengths'] {
  const band = size('band.length');
  return [
    { from: 'W', to: 'T', limits: about(minus(at.length, at.seat), band, 'travel') },
    { from: 'G', to: 'T', limits: about(minus(at.length, at.socket), band, 'socket') },
  ];
}

type SocketAsk = {
  readonly name: string;
  readonly pair: ThreadPair;
  readonly from: Len;
  readonly to: Len;
  readonly opens: 'first' | 'second';
  readonly threadTo: Len;
  readonly floor: string;
};
/** A threaded socket: bored to the thread's minor limits with a flat floor. */
function socket({ name, pair, from, to, opens, threadTo, floor }: SocketAsk): Hole {
  return {
    ...{ name, role: 'thread', size: pair.inside.minor, from, to, opens: [opens] },
    floor: { letter: floor, role: 'free' },
    thread: { size: pair.inside, to: threadTo, chamfer: insideChamfer(pair.inside) },
  };
}
