/** Ball and seat bore: wide enough for pipe and flow, a pair that sits well, of a ball that is sold and a tool that is in the drawer. */
import { type Len, len, mm, toMm } from '../../base/units.ts';
import { ballSizes } from '../../handbook/balls.ts';
import { dutyFacts } from '../../handbook/duty.ts';
import { boreSpeed, contactAngle, ringChamber } from '../../handbook/valve-ball.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Book, CUSTOM, note, refuse, warn } from '../book.ts';
import { isInchPipe } from '../choose-thread.ts';
import { widestBore } from '../ends.ts';
import { ratio, TENTH, tidy, times } from '../limits.ts';
import type { CheckValveAsked } from './asked.ts';
import { type Flow, pipeBore } from './flow.ts';

export type Seat = { readonly ball: Len; readonly bore: Len };

export function chooseSeat(asked: CheckValveAsked, flow: Flow | undefined, workshop: Workshop, book: Book): Seat {
  const pipe = pipeBore(asked);
  if (pipe <= 0) refuse(book, 'design.pipe-wall', { outside: asked.pipe.outside, wall: asked.pipe.wall });
  const least = leastBore(asked, flow, pipe, book);
  const pair = pairFor(asked, least, workshop);
  const { ball, bore } = pair ?? { ball: largest(asked), bore: least };
  if (!pair) {
    refuse(book, 'design.no-ball', { bore, ball, most: times(ball, ratio('ball.bore.high')) });
    return { ball, bore };
  }
  const drawn = toolsOf(workshop).includes(bore);
  note(book, 'ball', [toMm(ball), 'mm', 'd / 0.80 <= D <= d / 0.72', { d: toMm(bore) }, CUSTOM], asked.ball);
  const formula = drawn ? 'd in the drawer, 0.72 D to 0.80 D' : 'd = 0.76 D';
  note(book, 'bore', [toMm(bore), 'mm', formula, { D: toMm(ball), least: toMm(least) }, CUSTOM], asked.bore);
  checkRatio(ball, bore, book);
  if (flow) checkSpeed(asked, flow, bore, book);
  if (bore > 0 && ball > bore)
    note(book, 'contact', [contactAngle(toMm(ball), toMm(bore)), 'deg', 'acos(d/D)', { D: toMm(ball), d: toMm(bore) }]);
  return { ball, bore };
}

/** Not tighter than the pipe, and no faster through it than is printed. */
function leastBore(asked: CheckValveAsked, flow: Flow | undefined, pipe: Len, book: Book): Len {
  if (!flow) return len(Math.max(pipe, 0));
  const row = fastest(asked);
  const least = Math.sqrt(flow.peak / 1000 / row.value / (Math.PI / (2 * 2)));
  note(book, 'bore-least', [least, 'mm', 'sqrt(4 Q / (pi v))', { Q: flow.peak, v: row.value }, row.source]);
  return len(Math.max(pipe, mm(least), 0));
}

/** Where nothing pushes but a head of water, the slower of the two printed speeds. */
const fastest = ({ duty }: CheckValveAsked) => dutyFacts.row(duty.serves === 'gravity' ? 'speed.better' : 'speed.most');

function checkSpeed(asked: CheckValveAsked, flow: Flow, bore: Len, book: Book): void {
  const row = fastest(asked);
  const speed = boreSpeed(flow.peak, toMm(bore));
  note(book, 'speed', [speed, 'm/s', 'Q / (pi/4 d^2)', { Q: flow.peak, d: toMm(bore) }, row.source]);
  const least = tidy(mm(Math.sqrt(flow.peak / 1000 / row.value / (Math.PI / (2 * 2)))), TENTH, 'up');
  if (speed > row.value) warn(book, 'design.water-fast', { bore, speed, most: row.value, least });
}

/** What makes a true seat: a reamer's size is that of silver steel and of tools; a rod becomes a D-bit. */
const toolsOf = ({ tools }: Workshop): readonly Len[] => [...tools.silverSteel, ...tools.dBits, ...tools.reamers];

/** Nothing where no ball that is listed is large enough. */
function pairFor(asked: CheckValveAsked, least: Len, workshop: Workshop): Seat | undefined {
  if (asked.ball !== undefined) return { ball: asked.ball, bore: asked.bore ?? boreFor(asked.ball, least, workshop) };
  if (asked.bore !== undefined) return { ball: ballFor(asked.bore, asked), bore: asked.bore };
  const offered = ballsFor(asked).flatMap((ball) => drawerBores(ball, workshop).map((bore): Seat => ({ ball, bore })));
  const wide = offered.filter(({ bore }) => bore >= least);
  const most = mostBore(asked);
  return wide.find(({ bore }) => bore <= (most ?? bore)) ?? madePair(asked, least, most) ?? wide[0] ?? madePair(asked, least);
}

/** A pipe that is soldered into its end comes to stand on a ledge round the bore. */
const mostBore = ({ ends, pipe }: CheckValveAsked): Len | undefined => (ends?.outlet === 'plain' ? widestBore(pipe) : undefined);

/** With a tool that is yet to be made or bought: the ball on which the bore need be least over what is wanted. */
function madePair(asked: CheckValveAsked, least: Len, most?: Len): Seat | undefined {
  const made = ballsFor(asked).map((ball): Seat => {
    const low = Math.max(least, TENTH, times(ball, ratio('ball.bore.low')));
    return { ball, bore: tidy(len(low), TENTH, 'up') };
  });
  return made.filter((pair) => sits(pair) && pair.bore <= (most ?? pair.bore)).sort((a, b) => a.bore - b.bore || a.ball - b.ball)[0];
}

/** Inside the usual band, and with a chamber, bored to a tenth, that passes the water and still guides the ball. */
function sits({ ball, bore }: Seat): boolean {
  const inBand = bore >= times(ball, ratio('ball.bore.low')) && bore <= times(ball, ratio('ball.bore.high'));
  return inBand && tidy(mm(ringChamber(toMm(ball), toMm(bore))), TENTH, 'up') <= times(ball, ratio('ball.chamber.most'));
}

/** Of the drawer, inside the band, nearest the usual share; one that is wide enough before one that is not. */
function boreFor(ball: Len, least: Len, workshop: Workshop): Len {
  const fits = drawerBores(ball, workshop);
  return fits.find((bore) => bore >= least) ?? fits[0] ?? tidy(times(ball, ratio('ball.bore.usual')), TENTH, 'near');
}

function drawerBores(ball: Len, workshop: Workshop): readonly Len[] {
  const usual = times(ball, ratio('ball.bore.usual'));
  return toolsOf(workshop)
    .filter((bore) => sits({ ball, bore }))
    .sort((a, b) => Math.abs(a - usual) - Math.abs(b - usual) || a - b);
}

/** Those of the pipe's own system, small before large. */
function ballsFor({ pipe }: CheckValveAsked): readonly Len[] {
  const system = isInchPipe(pipe) ? 'inch' : 'metric';
  return ballSizes.filter((ball) => ball.system === system).map((ball) => ball.diameter);
}

const largest = (asked: CheckValveAsked): Len => len(Math.max(...ballsFor(asked)));

/** The sold ball on which a bore is nearest the usual share; where it sits well on none, the smallest that it does not crowd. */
function ballFor(bore: Len, asked: CheckValveAsked): Len {
  const wanted = times(bore, 1 / ratio('ball.bore.usual'));
  const all = ballsFor(asked);
  const near = [...all].sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted) || a - b);
  return near.find((ball) => sits({ ball, bore })) ?? all.find((ball) => bore <= times(ball, ratio('ball.bore.high'))) ?? largest(asked);
}

function checkRatio(ball: Len, bore: Len, book: Book): void {
  const share = bore / ball;
  const grounds = { ball, bore, ratio: share, least: times(ball, ratio('ball.bore.low')), most: times(ball, ratio('ball.bore.high')) };
  if (share > ratio('ball.bore.refuse-high')) refuse(book, 'design.ball-crowds-seat', grounds);
  else if (share < ratio('ball.bore.refuse-low')) refuse(book, 'design.bore-too-small', grounds);
  else if (share > ratio('ball.bore.accept-high') || share < ratio('ball.bore.accept-low')) warn(book, 'design.bore-unusual', grounds);
}
