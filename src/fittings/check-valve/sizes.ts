/** Every size of a ball check valve: what was stated is kept and checked, what is open is derived, with formula, inputs and source. */
import type { Diagnostic } from '../../base/diagnostics.ts';
import { add, type Len, minus, mm, toMm } from '../../base/units.ts';
import { centreAboveEdge, contactAngle, liftForFullArea, ringChamber } from '../../handbook/valve-ball.ts';
import type { Derivation } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { half, MM, ratio, size, TENTH, tidy, times } from '../limits.ts';
import { type ThreadPair, threadPair } from '../threads.ts';
import type { CheckValveAsked } from './asked.ts';

export type CheckValveSizes = {
  readonly ball: Len;
  readonly bore: Len;
  readonly lift: Len;
  readonly chamber: { readonly lo: Len; readonly hi: Len; readonly target: Len };
  readonly outlet: Len;
  readonly seat: ThreadPair;
  readonly cap: ThreadPair;
  readonly coupling: ThreadPair;
  /** Ball centre above the seat's edge, ball down. */
  readonly centre: Len;
  readonly stem: Len;
};
export type Sizing = {
  readonly sizes?: CheckValveSizes;
  readonly derivations: readonly Derivation[];
  readonly found: readonly Diagnostic[];
};

export function sizeCheckValve(asked: CheckValveAsked, workshop: Workshop): Sizing {
  const book: Book = { derivations: [], found: [] };
  const ball = chooseBall(asked, book);
  const bore = chooseBore(asked, ball, workshop, book);
  checkRatio(ball, bore, book);
  const lift = chooseLift(asked, ball, bore, book);
  const centre = mm(centreAboveEdge(toMm(ball), toMm(bore)));
  note(book, 'centre', toMm(centre), 'mm', 'c0 = sqrt((D/2)^2 - (d/2)^2)', { D: toMm(ball), d: toMm(bore) }, DERIVED, false);
  const chamber = chooseChamber(ball, bore, book);
  const outlet = chooseOutlet(ball, bore, book);
  const stem = tidy(times(chamber.target, ratio('stem.chamber')), TENTH, 'near');
  checkStem(chamber.lo, stem, bore, book);
  const threads = chooseThreads(asked, workshop, book);
  if (!threads || book.found.some((d) => d.severity === 'error')) return { derivations: book.derivations, found: book.found };
  return { sizes: { ball, bore, lift, chamber, outlet, centre, stem, ...threads }, derivations: book.derivations, found: book.found };
}

type Book = { readonly derivations: Derivation[]; readonly found: Diagnostic[] };
const DERIVED = 'derived here (geometry)';

function note(
  book: Book,
  of: string,
  value: number,
  unit: string,
  formula: string,
  inputs: Readonly<Record<string, number>>,
  source: string,
  stated: boolean,
): void {
  book.derivations.push({ of, value, unit, formula, inputs, source, stated });
}

function refuse(book: Book, code: string, grounds: Diagnostic['grounds']): void {
  book.found.push({ code, severity: 'error', grounds });
}

/** Flow through the pipe first: the seat should not be tighter than the pipe that it serves. */
function chooseBall(asked: CheckValveAsked, book: Book): Len {
  const inside = minus(asked.pipe.outside, add(asked.pipe.wall, asked.pipe.wall));
  if (inside <= 0) refuse(book, 'design.pipe-wall', { outside: asked.pipe.outside, wall: asked.pipe.wall });
  const least = tidy(times(inside, 1 / ratio('ball.bore.usual')), MM, 'up');
  const ball = asked.ball ?? least;
  note(
    book,
    'ball',
    toMm(ball),
    'mm',
    'D >= pipe bore / 0.76',
    { pipe: toMm(inside) },
    'common practice, no source',
    asked.ball !== undefined,
  );
  noteFlow(asked, book);
  return ball;
}

/** Mean and peak flow of the pump; a single-acting pump's peak is pi times its mean. */
function noteFlow(asked: CheckValveAsked, book: Book): void {
  const pump = asked.duty.pump;
  if (!pump) return;
  const inputs = { b: toMm(pump.bore), s: toMm(pump.stroke), n: pump.speed };
  const mean = ((Math.PI * toMm(pump.bore) ** 2 * toMm(pump.stroke)) / CYLINDER) * pump.speed;
  note(book, 'flow', mean / MM3_PER_ML, 'ml/min', 'Q = pi/4 b^2 s n', inputs, DERIVED, false);
}
const CYLINDER = 2 * 2;
const MM3_PER_ML = 1000;

/** From the drawer first: a reamer, or silver steel for a D-bit, inside the band and nearest the usual ratio. */
function chooseBore(asked: CheckValveAsked, ball: Len, workshop: Workshop, book: Book): Len {
  const usual = times(ball, ratio('ball.bore.usual'));
  const inDrawer = [...workshop.tools.reamers, ...workshop.tools.silverSteel, ...workshop.tools.dBits]
    .filter((d) => d >= times(ball, ratio('ball.bore.low')) && d <= times(ball, ratio('ball.bore.high')))
    .sort((a, b) => Math.abs(a - usual) - Math.abs(b - usual) || a - b)[0];
  const bore = asked.bore ?? inDrawer ?? tidy(usual, TENTH, 'near');
  note(
    book,
    'bore',
    toMm(bore),
    'mm',
    inDrawer && !asked.bore ? 'd in the drawer, 0.72 D to 0.80 D' : 'd = 0.76 D',
    { D: toMm(ball) },
    'common practice, no source',
    asked.bore !== undefined,
  );
  note(book, 'contact', contactAngle(toMm(ball), toMm(bore)), 'deg', 'acos(d/D)', { D: toMm(ball), d: toMm(bore) }, DERIVED, false);
  return bore;
}

function checkRatio(ball: Len, bore: Len, book: Book): void {
  const share = bore / ball;
  const grounds = { ball, bore, ratio: share, least: times(ball, ratio('ball.bore.low')), most: times(ball, ratio('ball.bore.high')) };
  if (share > ratio('ball.bore.refuse-high')) refuse(book, 'design.ball-crowds-seat', grounds);
  else if (share < ratio('ball.bore.refuse-low')) refuse(book, 'design.bore-too-small', grounds);
  else if (share > ratio('ball.bore.accept-high') || share < ratio('ball.bore.accept-low'))
    book.found.push({ code: 'design.bore-unusual', severity: 'warning', grounds });
}

/** A reciprocating pump wants little lift, so that the ball is back before the stroke turns. */
function chooseLift(asked: CheckValveAsked, ball: Len, bore: Len, book: Book): Len {
  if (!asked.duty.pump) return fullLift(asked, ball, bore, book);
  const low = times(ball, ratio('ball.lift.pump.low'));
  const high = times(ball, ratio('ball.lift.pump.high'));
  const lift = asked.lift ?? tidy(half(add(low, high)), TENTH, 'near');
  note(
    book,
    'lift',
    toMm(lift),
    'mm',
    'h between D/8 and D/6',
    { D: toMm(ball) },
    'published D/8 to D/6 for a reciprocating pump (from memory of the design notes)',
    asked.lift !== undefined,
  );
  if (lift <= 0 || lift > ball) refuse(book, 'design.lift', { lift, ball, low, high });
  return lift;
}

/** Steady flow: the lift at which the ring under the ball passes as much as the bore. */
function fullLift(asked: CheckValveAsked, ball: Len, bore: Len, book: Book): Len {
  const full = mm(liftForFullArea(toMm(ball), toMm(bore)));
  const lift = asked.lift ?? tidy(full, TENTH, 'up');
  note(book, 'lift', toMm(lift), 'mm', 'curtain area = pi/4 d^2', { D: toMm(ball), d: toMm(bore) }, DERIVED, asked.lift !== undefined);
  if (lift <= 0 || lift > ball) refuse(book, 'design.lift', { lift, ball, low: full, high: ball });
  return lift;
}

/** Wide enough to pass the bore's area round the ball, narrow enough that the ball cannot hang beside its seat. */
function chooseChamber(ball: Len, bore: Len, book: Book): CheckValveSizes['chamber'] {
  const lo = mm(ringChamber(toMm(ball), toMm(bore)));
  const hi = times(ball, ratio('ball.chamber.most'));
  const target = tidy(lo, TENTH, 'up');
  note(book, 'chamber', toMm(target), 'mm', 'sqrt(D^2 + d^2) <= C <= 1.3 D', { D: toMm(ball), d: toMm(bore) }, DERIVED, false);
  if (lo >= hi || target > hi) refuse(book, 'design.chamber-chokes', { ball, bore, least: lo, most: hi });
  const aim = target === lo && add(target, TENTH) <= hi ? add(target, TENTH) : target;
  return { lo, hi, target: aim };
}

function chooseOutlet(ball: Len, bore: Len, book: Book): Len {
  const most = times(ball, ratio('ball.outlet.most'));
  note(book, 'outlet', toMm(bore), 'mm', 'd <= o < 0.8 D', { D: toMm(ball), d: toMm(bore) }, 'common practice, no source', false);
  if (bore > most) refuse(book, 'design.outlet-draws-ball', { ball, bore, most });
  return bore;
}

/** The annulus round the stem passes at least the bore's area. */
function checkStem(chamber: Len, stem: Len, bore: Len, book: Book): void {
  const area = toMm(chamber) ** 2 - toMm(stem) ** 2;
  if (area < toMm(bore) ** 2) refuse(book, 'design.stem-chokes', { chamber, stem, bore });
}

/** What is not asked for is proposed: the smallest fine thread in the drawer that is large enough, else the size itself. */
function chooseThreads(
  asked: CheckValveAsked,
  workshop: Workshop,
  book: Book,
): Pick<CheckValveSizes, 'seat' | 'cap' | 'coupling'> | undefined {
  const twice = add(asked.pipe.outside, asked.pipe.outside);
  const seat = findThread('seat', asked.threads?.seat ?? fineThread(twice, workshop), book);
  const cap = findThread('cap', asked.threads?.cap ?? asked.threads?.seat ?? fineThread(twice, workshop), book);
  const over = add(asked.pipe.outside, size('coupling.over-pipe'));
  const coupling = findThread('coupling', asked.threads?.coupling ?? fineThread(over, workshop), book);
  return seat && cap && coupling && { seat, cap, coupling };
}

function fineThread(least: Len, workshop: Workshop): string {
  const inDrawer = workshop.tools.taps
    .flatMap((name) => threadPair(name) ?? [])
    .filter((t) => t.inside.pitch === MM && t.inside.major.lo >= least);
  return inDrawer.sort((a, b) => a.inside.major.lo - b.inside.major.lo)[0]?.name ?? `M${toMm(tidy(least, MM, 'up'))}x1`;
}

function findThread(which: string, name: string, book: Book): ThreadPair | undefined {
  const pair = threadPair(name);
  if (!pair) refuse(book, 'design.thread-unknown', { which, name });
  return pair;
}
