/** How the valve works on its duty: lift, how late the ball comes down, what that costs in back-flow and hammer, what stands on the seat. */
import { add, type Len, mm, toMm } from '../../base/units.ts';
import { findBallMaterial } from '../../handbook/balls.ts';
import { dutyFacts } from '../../handbook/duty.ts';
import { cite } from '../../handbook/sources.ts';
import {
  boreArea,
  boreSpeed,
  crackingPressure,
  crankDegrees,
  curtainArea,
  edgeLoad,
  fallBackTime,
  hammer,
  liftForFullArea,
  seatForce,
  waveSpeed,
} from '../../handbook/valve-ball.ts';
import { type Book, note, refuse, warn } from '../book.ts';
import { half, ratio, TENTH, tidy, times } from '../limits.ts';
import { type CheckValveAsked, isPumped } from './asked.ts';
import { type Flow, pipeBore } from './flow.ts';
import type { Seat } from './seat.ts';

/** A pump wants little lift, so that the ball is down before the stroke turns; steady flow wants the whole bore. */
export function chooseLift(asked: CheckValveAsked, { ball, bore }: Seat, book: Book): Len {
  const [D, d] = [toMm(ball), toMm(bore)];
  const pumped = isPumped(asked.duty.serves);
  const low = pumped ? times(ball, ratio('ball.lift.pump.low')) : mm(liftForFullArea(D, d));
  const high = pumped ? times(ball, ratio('ball.lift.pump.high')) : ball;
  const lift = asked.lift ?? (pumped ? tidy(half(add(low, high)), TENTH, 'near') : tidy(low, half(TENTH), 'up'));
  if (pumped) note(book, 'lift', [toMm(lift), 'mm', 'h between D/8 and D/6', { D }, cite('perry')], asked.lift);
  else note(book, 'lift', [toMm(lift), 'mm', 'A(h) = pi/4 d^2', { D, d }], asked.lift);
  const grounds = { lift, ball, low, high };
  if (lift <= 0 || lift > ball) refuse(book, 'design.lift', grounds);
  else {
    if (lift > high) warn(book, 'design.lift-late', grounds);
    // by less than the tenth that a lift is given in: nobody measures that
    if (lift < low - TENTH / 2) warn(book, pumped ? 'design.lift-low' : 'design.lift-chokes', grounds);
    note(book, 'curtain', [(100 * curtainArea(D, d, toMm(lift))) / boreArea(d), '%', 'A(h) / (pi/4 d^2)', { D, d, h: toMm(lift) }]);
  }
  return lift;
}

/** Stainless ball in cold water: what it takes to lift it, and how soon it is back. */
export function noteBall(asked: CheckValveAsked, { ball, bore }: Seat, lift: Len, flow: Flow | undefined, book: Book): void {
  const [D, d, h] = [toMm(ball), toMm(bore), toMm(lift)];
  const p = asked.duty.pressure;
  const density = findBallMaterial(BALL)?.density ?? 0;
  const water = dutyFacts.value('water.cold');
  note(book, 'crack', [crackingPressure(D, d, density, water) / 100, 'mbar', '(2/3) (B - W) g D^3 / d^2', { D, d, B: density, W: water }]);
  const seconds = fallBackTime(h, density, water);
  note(book, 'fall', [seconds * 1000, 'ms', 'sqrt(2 h (B + W/2) / (g (B - W)))', { h, B: density, W: water }]);
  const lag = noteLag(asked, seconds, lift, book);
  note(book, 'seat-force', [seatForce(d, p), 'N', 'pi/4 d^2 p', { d, p }]);
  note(book, 'edge-load', [edgeLoad(D, d, p), 'N/mm', 'p d / (4 sqrt(1 - (d/D)^2))', { D, d, p }]);
  if (flow) noteHammer(asked, flow, lag, book);
}
const BALL = '316';

/** Degrees of crank that pass meanwhile; nothing where no crank turns. */
function noteLag({ duty }: CheckValveAsked, seconds: number, lift: Len, book: Book): number | undefined {
  if (!duty.pump || !isPumped(duty.serves)) return undefined;
  const lag = crankDegrees(seconds, duty.pump.speed);
  const most = dutyFacts.value('lag.most');
  note(book, 'lag', [lag, 'deg', '6 n t', { n: duty.pump.speed, t: seconds }]);
  if (lag > most) warn(book, 'design.lag', { lag, most, speed: duty.pump.speed, lift });
  return lag;
}

/** What is stopped is no faster than the plunger when the ball comes down; without a crank, the whole flow. An upper bound: shut at once. */
function noteHammer(asked: CheckValveAsked, flow: Flow, lag: number | undefined, book: Book): void {
  const [bore, wall] = [toMm(pipeBore(asked)), toMm(asked.pipe.wall)];
  if (bore <= 0) return;
  const quarter = dutyFacts.value('quarter');
  const share = lag === undefined ? 1 : Math.sin((Math.min(lag, quarter) / quarter) * (Math.PI / 2));
  const speed = boreSpeed(flow.peak, bore) * share;
  const density = dutyFacts.value('water.cold');
  const wave = waveSpeed(bore, wall, { bulk: dutyFacts.value('water.bulk'), density }, dutyFacts.value('copper.modulus'));
  note(book, 'wave', [
    wave,
    'm/s',
    'sqrt(K/W) / sqrt(1 + K d / (E t))',
    { d: bore, t: wall, K: dutyFacts.value('water.bulk'), E: dutyFacts.value('copper.modulus'), W: density },
    cite('joukowsky'),
  ]);
  const rise = hammer(density, wave, speed);
  note(book, 'hammer', [rise, 'bar', 'W c v', { W: density, c: wave, v: speed }, cite('joukowsky')]);
}
