/** Every size of a ball check valve: what was stated is kept and checked, what is open is derived, with formula, inputs and source. */
import { add, type Len, len, mm, toMm } from '../../base/units.ts';
import { centreAboveEdge, ringChamber } from '../../handbook/valve-ball.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Book, CUSTOM, note, refuse, refused } from '../book.ts';
import { crossHoleFor } from '../branch.ts';
import { fineThread } from '../choose-thread.ts';
import { couplingThread } from '../coupling.ts';
import { type EndForm, noteEnd } from '../ends.ts';
import { ratio, size, TENTH, tidy, times } from '../limits.ts';
import { isClearOf, type ThreadPair, threadPair, wallIn } from '../threads.ts';
import type { CheckValveAsked } from './asked.ts';
import { flowOf } from './flow.ts';
import { chooseSeat, type Seat } from './seat.ts';
import { chooseStop, type LiftStop, socketRound } from './stop.ts';
import { chooseLift, noteBall } from './working.ts';

export type CheckValveSizes = {
  readonly ball: Len;
  readonly bore: Len;
  /** Length of the bore that is finished, and the wider inlet behind it; absent where the whole bore is. */
  readonly land?: { readonly length: Len; readonly inlet: Len };
  readonly lift: Len;
  readonly chamber: { readonly lo: Len; readonly hi: Len; readonly target: Len };
  readonly outlet: Len;
  /** In the barrel, for a branch's spigot. */
  readonly crossHole: Len;
  /** How the branch meets its pipe. The seat piece has a union: nothing that holds a seat goes into the fire. */
  readonly end: { readonly form: EndForm; readonly pipe: CheckValveAsked['pipe'] };
  readonly seat: ThreadPair;
  readonly cap: ThreadPair;
  readonly coupling: ThreadPair;
  /** Ball centre above the seat's edge, ball down. */
  readonly centre: Len;
  readonly stem: Len;
  /** Straight pattern: the stem is hollow, and the outlet goes up through it. Absent where a branch is the outlet. */
  readonly stop?: LiftStop;
};

/** Nothing where a size is refused: the book says which. */
export function sizeCheckValve(asked: CheckValveAsked, workshop: Workshop, book: Book): CheckValveSizes | undefined {
  if (asked.mounting !== undefined && asked.mounting !== 'upright') refuse(book, 'design.not-upright', { mounting: asked.mounting });
  const flow = flowOf(asked, book);
  const seat = chooseSeat(asked, flow, workshop, book);
  const { ball, bore } = seat;
  if (refused(book)) return undefined;
  const lift = chooseLift(asked, seat, book);
  const centre = mm(centreAboveEdge(toMm(ball), toMm(bore)));
  note(book, 'centre', [toMm(centre), 'mm', 'c0 = sqrt((D/2)^2 - (d/2)^2)', { D: toMm(ball), d: toMm(bore) }]);
  const chamber = chooseChamber(ball, bore, book);
  const way = asked.pattern === 'straight' ? throughCap(bore, workshop, book) : bySide(seat, chamber.target, workshop, book);
  if (!refused(book)) noteBall(asked, seat, lift, flow, book);
  const socket = way.stop && socketRound(way.stem, bore, chamber.hi);
  const threads = chooseThreads(asked, { bore, chamber: chamber.hi, outlet: way.outlet, socket }, workshop, book);
  const crossHole = crossHoleFor(way.outlet, workshop);
  const end = { form: chooseEnd(asked, book), pipe: asked.pipe };
  if (threads) noteEnd({ ...end, coupling: threads.coupling, bore: way.outlet }, asked.duty.pressure, book);
  if (threads && socket !== undefined && threads.cap.inside.minor.lo < socket)
    refuse(book, 'design.stop-chokes', {
      thread: threads.cap.name,
      minor: threads.cap.inside.minor.lo,
      stem: way.stem,
      bore,
      least: socket,
    });
  return threads && !refused(book) ? { ball, bore, lift, chamber, crossHole, end, centre, ...way, ...threads } : undefined;
}

/** How the water leaves, and what stops the ball. */
type WayOut = Pick<CheckValveSizes, 'outlet' | 'stem' | 'stop'>;

const bySide = ({ ball, bore }: Seat, chamber: Len, workshop: Workshop, book: Book): WayOut => ({
  outlet: chooseOutlet(ball, bore, workshop, book),
  stem: tidy(times(chamber, ratio('stem.chamber')), TENTH, 'near'),
});

/** Nothing draws the ball aside: the smallest drill of the rack that is as wide as the seat. */
function throughCap(bore: Len, workshop: Workshop, book: Book): WayOut {
  const outlet = [...workshop.tools.drills].sort((a, b) => a - b).find((d) => d >= bore) ?? bore;
  note(book, 'outlet-bore', [toMm(outlet), 'mm', 'o >= d', { d: toMm(bore) }, CUSTOM]);
  const stop = chooseStop(bore, outlet, workshop, book);
  return { outlet, stem: stop.across, stop };
}

/** Wide enough to pass the bore's area round the ball, narrow enough that the ball cannot hang beside its seat. */
function chooseChamber(ball: Len, bore: Len, book: Book): CheckValveSizes['chamber'] {
  const lo = mm(ringChamber(toMm(ball), toMm(bore)));
  const hi = times(ball, ratio('ball.chamber.most'));
  const target = tidy(lo, TENTH, 'up');
  note(book, 'chamber', [toMm(target), 'mm', 'sqrt(D^2 + d^2) <= C <= 1.3 D', { D: toMm(ball), d: toMm(bore) }]);
  if (lo >= hi || target > hi) refuse(book, 'design.chamber-chokes', { ball, bore, least: lo, most: hi });
  const aim = target === lo && add(target, TENTH) <= hi ? add(target, TENTH) : target;
  return { lo, hi, target: aim };
}

/** As wide as the seat at least: the smallest drill of the rack that is, while the ball is not drawn to it. */
function chooseOutlet(ball: Len, bore: Len, workshop: Workshop, book: Book): Len {
  const most = times(ball, ratio('ball.outlet.most'));
  const drill = [...workshop.tools.drills].sort((a, b) => a - b).find((d) => d >= bore && d <= most);
  const outlet = drill ?? bore;
  note(book, 'outlet', [toMm(outlet), 'mm', 'd <= o < 0.8 D', { D: toMm(ball), d: toMm(bore) }, CUSTOM]);
  if (outlet > most) refuse(book, 'design.outlet-draws-ball', { ball, bore, most });
  return outlet;
}

/** A plain end or a flange is soldered on: the branch stands that, the seat piece does not. */
function chooseEnd({ ends }: CheckValveAsked, book: Book): EndForm {
  if (ends?.inlet !== undefined && ends.inlet !== 'union') refuse(book, 'design.seat-in-the-fire', { end: ends.inlet });
  return ends?.outlet ?? 'union';
}

type Threads = Pick<CheckValveSizes, 'seat' | 'cap' | 'coupling'>;
/** What the threads go round; `socket`: as wide as the cap's has to be, where water goes round a stem in it. */
type Inside = { readonly bore: Len; readonly chamber: Len; readonly outlet: Len; readonly socket: Len | undefined };

/** What is not asked for is proposed: of threads that leave walls and stand clear of the chamber. */
function chooseThreads(
  asked: CheckValveAsked,
  { bore, chamber, outlet, socket }: Inside,
  workshop: Workshop,
  book: Book,
): Threads | undefined {
  const { pipe, threads: named } = asked;
  const least = add(pipe.outside, pipe.outside);
  const clear = (t: ThreadPair): boolean => isClearOf(t, chamber);
  const seat = findThread(
    'seat',
    named?.seat ?? fineThread({ least, pipe, suits: (t) => clear(t) && wallIn(t, bore) >= size('wall.least') }, workshop),
    book,
  );
  const round = (t: ThreadPair): boolean =>
    socket === undefined ? clear(t) : t.inside.minor.lo >= socket && wallIn(t, outlet) >= size('wall.least');
  const alike = seat && (socket === undefined || round(seat)) ? named?.seat : undefined;
  const cap = findThread('cap', named?.cap ?? alike ?? fineThread({ least, pipe, suits: round }, workshop), book);
  const passes = socket === undefined ? bore : len(Math.max(bore, outlet));
  const coupling = findThread(
    'coupling',
    named?.coupling ?? couplingThread(pipe, workshop, (t) => wallIn(t, passes) >= size('wall.least')),
    book,
  );
  return seat && cap && coupling && { seat, cap, coupling };
}

function findThread(which: string, name: string, book: Book): ThreadPair | undefined {
  const pair = threadPair(name);
  if (!pair) refuse(book, 'design.thread-unknown', { which, name });
  return pair;
}
