/** What a stop valve passes, and what the hand feels at its wheel: force on the seat, torque, the pull at the rim, the spindle's stresses. */
import { mm, toMm } from '../../base/units.ts';
import { dutyFacts } from '../../handbook/duty.ts';
import { flowFacts, kvOfArea } from '../../handbook/flow.ts';
import { STANDARD_ATMOSPHERE } from '../../handbook/if97-saturation.ts';
import { cite } from '../../handbook/sources.ts';
import { packingFriction, raisingTorque, seatLoad, spindleFacts, squareShear } from '../../handbook/spindle.ts';
import { boreArea, seatForce } from '../../handbook/valve-ball.ts';
import { type Book, note, warn } from '../book.ts';
import { TENTH, tidy } from '../limits.ts';
import type { StopValveAsked } from './asked.ts';
import { enoughLift, steamThrough, wayThrough } from './opening.ts';
import type { StopValveSizes } from './shared.ts';

export function noteStopWorking(asked: StopValveAsked, sizes: StopValveSizes, book: Book): void {
  notePassed(asked, sizes, book);
  const { force, drag } = noteForce(asked, sizes, book);
  const torque = noteTorque(sizes, force, drag, book);
  const wheel = toMm(sizes.wheel);
  const rim = torque / (wheel / 2);
  note(book, 'rim', [rim, 'N', '2 T / w', { T: torque, w: wheel }]);
  const most = dutyFacts.value('rim.most');
  if (rim > most) warn(book, 'design.rim-hard', { rim, most, wheel: sizes.wheel });
  note(book, 'square-shear', [squareShear(torque, toMm(sizes.square)), 'N/mm2', 'T / (0.208 s^3)', { T: torque, s: toMm(sizes.square) }]);
  const core = boreArea(toMm(sizes.spindle.outside.minor.lo));
  note(book, 'spindle-stress', [force / core, 'N/mm2', 'F / (pi/4 d3^2)', { F: force, A: core }]);
}

/** Wide open, lifted to the back stop, the narrowest way governs: as water in m3/h at 1 bar, and as steam let out to the air. */
function notePassed(asked: StopValveAsked, sizes: StopValveSizes, book: Book): void {
  const [whole, area] = [boreArea(toMm(sizes.bore)), wayThrough(sizes, toMm(sizes.travel))];
  note(book, 'opens', [
    (100 * area) / whole,
    '%',
    'least of A(t), bore, branches',
    { A: area, d: toMm(sizes.bore), o: toMm(sizes.outlet) },
  ]);
  const enough = enoughLift(sizes);
  if (toMm(sizes.travel) < enough)
    warn(book, 'design.opens-little', { travel: sizes.travel, share: (100 * area) / whole, enough: tidy(mm(enough), TENTH, 'up') });
  const pitch = toMm(sizes.spindle.outside.pitch);
  note(book, 'turns-to-stop', [toMm(sizes.travel) / pitch, 'turns', 't / P', { t: toMm(sizes.travel), P: pitch }]);
  const sharp = flowFacts.row('cd.sharp');
  note(book, 'kv', [kvOfArea(sharp.value, area), 'm3/h', 'Kv = 0.0509 Cd A', { Cd: sharp.value, A: area }, sharp.source]);
  const steam = steamThrough(asked, area);
  const p = asked.duty.pressure + STANDARD_ATMOSPHERE;
  if (steam !== undefined) note(book, 'steam-flow', [steam, 'kg/h', 'Cd 0.5244 p A', { Cd: sharp.value, p, A: area }, cite('napier')]);
}

/** N along the spindle when it is shut tight against pressure under the plug: pressure, seat, packing. */
function noteForce(asked: StopValveAsked, sizes: StopValveSizes, book: Book): { readonly force: number; readonly drag: number } {
  const d = toMm(sizes.bore);
  const pushed = seatForce(d, asked.duty.pressure);
  const ring = dutyFacts.value('seat.ring');
  const seat = seatLoad(d + ring, ring, dutyFacts.value('seat.stress'));
  const depth = sizes.rings * toMm(sizes.packing);
  const drag = packingFriction(toMm(sizes.stem), depth, dutyFacts.value('packing.stress'), dutyFacts.value('packing.friction'));
  const force = pushed + seat + drag;
  note(book, 'close-force', [
    force,
    'N',
    'p pi/4 d^2 + pi d w q + packing',
    { d, p: asked.duty.pressure, w: ring, packing: drag },
    cite('pvs-2017'),
  ]);
  return { force, drag };
}

function noteTorque(sizes: StopValveSizes, force: number, drag: number, book: Book): number {
  const { pitchDiameter, pitch, flankAngle } = sizes.spindle.outside;
  const screw = { mean: toMm(pitchDiameter.target), lead: toMm(pitch), flankAngle, friction: spindleFacts.value('friction.screw') };
  const torque = raisingTorque(force, screw) + (drag * toMm(sizes.stem)) / 2;
  const inputs = { F: force, m: screw.mean, l: screw.lead, f: screw.friction };
  note(book, 'torque', [torque, 'N mm', 'F m/2 (l + pi f m sec b) / (pi m - f l sec b) + packing', inputs, cite('shigley')]);
  return torque;
}
