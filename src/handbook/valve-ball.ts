/**
 * A ball on the sharp edge of a bore: where it sits, what it passes, how it falls back. Everything is geometry or plain mechanics,
 * derived here; lengths are mm, areas mm2, pressures bar unless said. D ball, d bore, R and r their halves, h lift from the seat.
 */

import type { Standing } from './fact.ts';
import { cite, type SourceId } from './sources.ts';

/** A relation as it may be printed: its formula in these symbols and what it rests on. */
export type Relation = {
  readonly id: string;
  readonly formula: string;
  readonly unit: string;
  readonly source: string;
  readonly standing: Standing;
};

/** Angle between the ball's tangent at the edge and the axis, in degrees. */
export function contactAngle(ball: number, bore: number): number {
  requireSeated(ball, bore);
  return (Math.acos(bore / ball) * 180) / Math.PI;
}

/** Its inverse: the bore on which that ball meets its edge at so many degrees. */
export function boreAtContact(ball: number, degrees: number): number {
  return ball * Math.cos((degrees / 180) * Math.PI);
}

/** Ball's centre above the edge, ball down. */
export function centreAboveEdge(ball: number, bore: number): number {
  requireSeated(ball, bore);
  return Math.sqrt(ball ** 2 - bore ** 2) / 2;
}

/** How deep the ball sinks below the plane of the edge. */
export function sinkBelowEdge(ball: number, bore: number): number {
  return ball / 2 - centreAboveEdge(ball, bore);
}

/** Flow area between ball and edge at lift `lift` >= 0: the frustum of the shortest lines between them. */
export function curtainArea(ball: number, bore: number, lift: number): number {
  const q = 2 * centreAboveEdge(ball, bore) * lift + lift ** 2;
  return (Math.PI * (bore / 2) * q) / Math.sqrt((ball / 2) ** 2 + q);
}

/** Lift at which the curtain passes `area`; the inverse of `curtainArea`. */
export function liftForArea(ball: number, bore: number, area: number): number {
  const c0 = centreAboveEdge(ball, bore);
  const share = area / (Math.PI * (bore / 2));
  const fromEdge = (share + Math.sqrt(share ** 2 + ball ** 2)) / 2;
  return Math.sqrt(fromEdge ** 2 - (bore / 2) ** 2) - c0;
}

/** Lift at which the curtain equals the bore; beyond it the bore governs. */
export function liftForFullArea(ball: number, bore: number): number {
  return liftForArea(ball, bore, boreArea(bore));
}

export function boreArea(bore: number): number {
  return (Math.PI / 4) * bore ** 2;
}

/** Least chamber round the ball whose ring passes as much as the bore. */
export function ringChamber(ball: number, bore: number): number {
  return Math.sqrt(ball ** 2 + bore ** 2);
}

/** Area of the ring round a ball (or a stem) in a chamber. */
export function ringArea(chamber: number, inner: number): number {
  return boreArea(chamber) - boreArea(inner);
}

/** Densities in kg/m3. Result in m/s2: how a ball falls in still water, drag left out, half the water's mass moving with it. */
export function fallAcceleration(ballDensity: number, waterDensity: number): number {
  return (GRAVITY * (ballDensity - waterDensity)) / (ballDensity + waterDensity / 2);
}

/** Seconds in which a ball lifted `lift` mm is back on its seat. Densities in kg/m3; a ball that floats never is: Infinity. */
export function fallBackTime(lift: number, ballDensity: number, waterDensity: number): number {
  const rate = fallAcceleration(ballDensity, waterDensity);
  return rate <= 0 ? Number.POSITIVE_INFINITY : Math.sqrt((2 * lift) / 1000 / rate);
}

/** Degrees of crank that pass in `seconds` at `speed` turns a minute. */
export function crankDegrees(seconds: number, speed: number): number {
  return 6 * speed * seconds;
}

/** Grams. Density in kg/m3. */
export function ballMass(ball: number, density: number): number {
  return ((Math.PI / 6) * ball ** 3 * density) / 1e6;
}

/** Pascal needed under a ball to lift it in water. Densities in kg/m3. */
export function crackingPressure(ball: number, bore: number, ballDensity: number, waterDensity: number): number {
  return ((2 / 3) * (ballDensity - waterDensity) * GRAVITY * (ball / 1000) ** 3) / (bore / 1000) ** 2;
}

/** Newton that `pressure` (bar) sets on the seat. */
export function seatForce(bore: number, pressure: number): number {
  return (boreArea(bore) * pressure) / 10;
}

/** Newton a mm of edge under `pressure` (bar). */
export function edgeLoad(ball: number, bore: number, pressure: number): number {
  return ((pressure / 10) * bore) / (4 * Math.sqrt(1 - (bore / ball) ** 2));
}

/** Speed of a pressure wave in a pipe full of water, m/s. `bore`, `wall` in mm; moduli in GPa; density in kg/m3. */
export function waveSpeed(
  bore: number,
  wall: number,
  water: { readonly bulk: number; readonly density: number },
  pipeModulus: number,
): number {
  const free = Math.sqrt((water.bulk * 1e9) / water.density);
  return free / Math.sqrt(1 + (water.bulk * bore) / (pipeModulus * wall));
}

/** Rise of pressure in bar when a column that moves at `speed` m/s is stopped at once. */
export function hammer(density: number, wave: number, speed: number): number {
  return (density * wave * speed) / 1e5;
}

/** Millilitres a minute of a single-acting pump, `yields` of what it sweeps. Bore and stroke in mm, speed in turns a minute. */
export function pumpFlow(bore: number, stroke: number, speed: number, yields: number): number {
  return (boreArea(bore) * stroke * speed * yields) / 1000;
}

/** Highest flow of that pump's stroke, mm3/s: pi times the mean that it sweeps, for a long connecting rod. */
export function pumpPeak(bore: number, stroke: number, speed: number): number {
  return (Math.PI * boreArea(bore) * stroke * speed) / 60;
}

/** m/s through a round hole. `flow` in mm3/s. */
export function boreSpeed(flow: number, bore: number): number {
  return flow / boreArea(bore) / 1000;
}

/** Standard acceleration of free fall, m/s2, exact. */
export const GRAVITY = 9.80665;

const ROWS: readonly (readonly [id: string, formula: string, unit: string, source: SourceId, standing: Standing])[] = [
  ['contact', 'acos(d / D)', 'deg', 'here', 'derived'],
  ['centre', 'c0 = sqrt(R² − r²)', 'mm', 'here', 'derived'],
  ['sink', 'R − c0', 'mm', 'here', 'derived'],
  ['curtain', 'q = 2 c0 h + h²; A = π r q / sqrt(R² + q)', 'mm²', 'here', 'derived'],
  ['full-lift', 'q = (r² + sqrt(r⁴ + 4 r² R²)) / 2; h = −c0 + sqrt(c0² + q)', 'mm', 'here', 'derived'],
  ['chamber', 'C ≥ sqrt(D² + d²)', 'mm', 'here', 'derived'],
  ['fall', "t = sqrt(2 h / g'), g' = g (1 − ρw/ρb) / (1 + ½ ρw/ρb)", 's', 'here', 'derived'],
  ['lag', '6 n t', 'deg', 'here', 'derived'],
  ['crack', '(2/3) (ρb − ρw) g D³ / d²', 'Pa', 'here', 'derived'],
  ['seat-force', 'π/4 d² p', 'N', 'here', 'derived'],
  ['edge-load', 'p d / (4 sqrt(1 − (d/D)²))', 'N/mm', 'here', 'derived'],
  ['wave', 'sqrt(K/ρ) / sqrt(1 + K d / (E t))', 'm/s', 'joukowsky', 'derived'],
  ['hammer', 'Δp = ρ c Δv', 'bar', 'joukowsky', 'derived'],
  ['pump', 'Q = π/4 b² s n η', 'ml/min', 'here', 'derived'],
  ['pump-peak', 'π × mean swept', 'mm³/s', 'here', 'derived'],
];

export const ballRelations: readonly Relation[] = ROWS.map(([id, formula, unit, source, standing]) => ({
  id,
  formula,
  unit,
  source: cite(source),
  standing,
}));

/** Formula text and source of one relation. Throws Error on an id that is not there. */
export function ballRelation(id: string): Relation {
  const found = ballRelations.find((r) => r.id === id);
  if (!found) throw new Error(`no relation '${id}'`);
  return found;
}

/** A ball that falls through its bore has no seat: the design refuses it before it asks for figures. */
function requireSeated(ball: number, bore: number): void {
  if (!(bore > 0 && ball > bore)) throw new RangeError(`no ball of ${ball} sits on a bore of ${bore}`);
}
