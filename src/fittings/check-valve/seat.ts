/** Ball and seat bore: wide enough for pipe and flow, a pair that sits well, of a ball that is sold and a tool that is in the drawer. */
import { add, type Len, len, mm, toMm } from '../../base/units.ts';
import { ballSizes } from '../../handbook/balls.ts';
import { dutyFacts } from '../../handbook/duty.ts';
import { boreSpeed, contactAngle } from '../../handbook/valve-ball.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Book, CUSTOM, note, refuse, warn } from '../book.ts';
import { ratio, TENTH, tidy, times } from '../limits.ts';
import type { CheckValveAsked } from './asked.ts';
import { type Flow, pipeBore } from './flow.ts';

export type Seat = { readonly ball: Len; readonly bore: Len };

export function chooseSeat(asked: CheckValveAsked, flow: Flow | undefined, workshop: Workshop, book: Book): Seat {
  const pipe = pipeBore(asked);
  if (pipe <= 0) refuse(book, 'design.pipe-wall', { outside: asked.pipe.outside, wall: asked.pipe.wall });
  const least = leastBore(asked, flow, pipe, book);
  const { ball, bore } = pairFor(asked, least, workshop);
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

function pairFor(asked: CheckValveAsked, least: Len, workshop: Workshop): Seat {
  if (asked.ball !== undefined) return { ball: asked.ball, bore: asked.bore ?? boreFor(asked.ball, least, workshop) };
  if (asked.bore !== undefined) return { ball: ballFor(asked.bore, asked), bore: asked.bore };
  const offered = ballsFor(asked).flatMap((ball) => drawerBores(ball, workshop).flatMap((bore) => (bore >= least ? [{ ball, bore }] : [])));
  const best = offered[0];
  if (best) return best;
  const usual = tidy(len(Math.max(least, TENTH)), TENTH, 'up');
  return { ball: ballFor(usual, asked), bore: usual };
}

/** Of the drawer, inside the band, nearest the usual share; one that is wide enough before one that is not. */
function boreFor(ball: Len, least: Len, workshop: Workshop): Len {
  const fits = drawerBores(ball, workshop);
  return fits.find((bore) => bore >= least) ?? fits[0] ?? tidy(times(ball, ratio('ball.bore.usual')), TENTH, 'near');
}

function drawerBores(ball: Len, workshop: Workshop): readonly Len[] {
  const usual = times(ball, ratio('ball.bore.usual'));
  return toolsOf(workshop)
    .filter((d) => d >= times(ball, ratio('ball.bore.low')) && d <= times(ball, ratio('ball.bore.high')))
    .sort((a, b) => Math.abs(a - usual) - Math.abs(b - usual) || a - b);
}

/** Sold balls, those of the pipe's own system first, small before large; those that are listed from memory last. */
function ballsFor({ pipe }: CheckValveAsked): readonly Len[] {
  const system = pipe.outside % TENTH === 0 ? 'metric' : 'inch';
  const inSystem = ballSizes.filter((ball) => ball.system === system && ball.standing !== 'from memory');
  return inSystem.map((ball) => ball.diameter);
}

/** The sold ball on which a bore is nearest the usual share. */
function ballFor(bore: Len, asked: CheckValveAsked): Len {
  const wanted = times(bore, 1 / ratio('ball.bore.usual'));
  const sizes = [...ballsFor(asked)].sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted) || a - b);
  const fits = sizes.find((ball) => bore >= times(ball, ratio('ball.bore.low')) && bore <= times(ball, ratio('ball.bore.high')));
  return fits ?? sizes[0] ?? add(bore, bore);
}

function checkRatio(ball: Len, bore: Len, book: Book): void {
  const share = bore / ball;
  const grounds = { ball, bore, ratio: share, least: times(ball, ratio('ball.bore.low')), most: times(ball, ratio('ball.bore.high')) };
  if (share > ratio('ball.bore.refuse-high')) refuse(book, 'design.ball-crowds-seat', grounds);
  else if (share < ratio('ball.bore.refuse-low')) refuse(book, 'design.bore-too-small', grounds);
  else if (share > ratio('ball.bore.accept-high') || share < ratio('ball.bore.accept-low')) warn(book, 'design.bore-unusual', grounds);
}
