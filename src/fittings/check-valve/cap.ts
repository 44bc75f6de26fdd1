/** The cap: closes the top; its stem limits the lift and is cut last, to a measured sum. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, minus } from '../../base/units.ts';
import type { Chain, Part } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { barFor, nextBar } from '../bar.ts';
import { liftChain } from '../chains.ts';
import { about, general, half, MM, size, stock, TENTH, tidy } from '../limits.ts';
import { ballOnSeat, drawn, ringTightened } from '../links.ts';
import { type OutlineAsk, partFrom, type Section } from '../outline.ts';
import { outsideThread, reliefOf, screwedLength } from '../threads.ts';
import { layOutBody } from './body.ts';
import type { CheckValveSizes } from './sizes.ts';

/** From the tip of the stem to the face under the hexagon, ball lifted and ring tightened: the drawing's guess at the measured sum. */
export function stemLength(sizes: CheckValveSizes): Len {
  return tidy(minus(add(ballDepth(sizes), size('joint.ring.tight')), sizes.lift), TENTH, 'near');
}

/** Its end is cut when body and seat piece are there to be measured. */
export const FITTED_LAST: NonNullable<OutlineAsk['waitsFor']> = [
  { feature: 'Q', part: 'body', why: 'measure-and-fit' },
  { feature: 'Q', part: 'seat-piece', why: 'measure-and-fit' },
];

export function cap(sizes: CheckValveSizes, material: string, workshop: Workshop, found: Diagnostic[]): Part {
  const thread = sizes.cap.outside;
  const relief = reliefOf(thread).width;
  const threaded = screwedLength(sizes.cap);
  const stem = minus(stemLength(sizes), threaded);
  const least = tidy(add(thread.major.hi, add(size('body.wall'), size('body.wall'))), MM, 'near');
  const across = nextBar({ material, section: 'hexagon' }, least, workshop);
  const head = size('cap.head');
  return partFrom({
    id: 'cap',
    kind: 'cap',
    quantity: 1,
    use: 'fitting',
    stock: barFor({ part: 'cap', material, section: 'hexagon', across, turned: false }, workshop, found),
    first: { letter: 'Q', role: 'register', fitted: true },
    second: { letter: 'T', role: 'clearance' },
    sections: sectionsOf(sizes, stem, threaded, across),
    lengths: [
      { from: 'Q', to: 'A', limits: about(add(stem, threaded), half(size('band.length')), 'measure and fit') },
      { from: 'N', to: 'A', limits: general(threaded) },
      { from: 'cap-thread.wall', to: 'A', limits: relief },
      { from: 'A', to: 'T', limits: general(head) },
    ],
    waitsFor: FITTED_LAST,
  });
}

function sectionsOf(sizes: CheckValveSizes, stem: Len, threaded: Len, across: Len): readonly Section[] {
  const thread = sizes.cap.outside;
  const head = size('cap.head');
  return [
    {
      name: 'stem',
      role: 'clearance',
      size: about(sizes.stem, size('band.clearance'), 'stem'),
      length: stem,
      shoulder: { letter: 'N', role: 'free' },
    },
    {
      name: 'cap-thread',
      role: 'thread',
      size: thread.major,
      length: threaded,
      thread: outsideThread(thread, 'first'),
      shoulder: { letter: 'A', role: 'sealing' },
    },
    { name: 'head', role: 'free', size: stock(across), length: head, section: 'hexagon', asStock: true },
  ];
}

export type Lifted = { readonly body: Part; readonly seatPiece: Part; readonly cap: Part };

/** Lift: what is left between the stem and the ball. The depth to the ball is read at once, on the body with seat piece and ball in it. */
export function lift(sizes: CheckValveSizes, { body, seatPiece, cap: closing }: Lifted): Chain {
  return liftChain({
    ...{ id: 'lift', reading: 'link.depth-to-ball' },
    depth: [
      drawn(body, 'P', 'T', 1),
      ringTightened('joint-ring', 1),
      drawn(seatPiece, 'S', 'A', -1),
      ballOnSeat('ball', sizes.ball, about(sizes.bore, size('band.bore.seat'), 'seat bore'), -1),
    ],
    between: [ringTightened(sizes.seat.name === sizes.cap.name ? 'joint-ring' : 'cap-ring', 1, 'link.ring-tightened')],
    ...{ stop: drawn(closing, 'Q', 'A', -1), stopDim: 'cap/Q-A' },
    asks: about(sizes.lift, size('band.length'), 'lift'),
  });
}

/** From the body's top face down to the top of the ball, ball on its seat and ring tightened; the drawing's guess. */
export function ballDepth(sizes: CheckValveSizes): Len {
  const at = layOutBody(sizes);
  return tidy(minus(at.length, add(at.seat, add(sizes.centre, half(sizes.ball)))), TENTH, 'near');
}
