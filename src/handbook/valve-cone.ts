/**
 * A ball on a cone, and a cone on the sharp edge of a bore. Lengths mm, areas mm2, angles in degrees, included. Geometry, derived here. A
 * frustum of shortest lines is taken for the flow area; the least of all frusta is up to 5 % smaller at full area (1 % at a third of it).
 */
import type { Standing } from './fact.ts';
import { cite } from './sources.ts';
import { boreArea, type Relation } from './valve-ball.ts';

/** Diameter of the circle on which a ball touches a cone. */
export function coneContact(ball: number, included: number): number {
  return ball * Math.cos(half(included));
}

/** Flow area between a ball and the cone it was lifted from, while the foot of the shortest line is still on the cone. */
export function ballConeArea(ball: number, included: number, lift: number): number {
  const a = half(included);
  return Math.PI * lift * Math.sin(a) * Math.cos(a) * (ball + lift * Math.sin(a));
}

/** Its inverse. */
export function ballConeLift(ball: number, included: number, area: number): number {
  const a = half(included);
  const share = area / (Math.PI * Math.sin(a) * Math.cos(a));
  return (2 * share) / (ball + Math.sqrt(ball ** 2 + 4 * Math.sin(a) * share));
}

/** Flow area between a cone-ended plug and a sharp-edged bore. Nothing once the cone's foot has left the bore (lift over d / sin 2a). */
export function plugArea(bore: number, included: number, lift: number): number | undefined {
  const a = half(included);
  if (!(lift >= 0) || lift > bore / Math.sin(2 * a)) return undefined;
  return Math.PI * lift * Math.sin(a) * (bore - lift * Math.sin(a) * Math.cos(a));
}

/** Its inverse, on the rising branch. Nothing for more area than the plug ever gives. */
export function plugLift(bore: number, included: number, area: number): number | undefined {
  const a = half(included);
  const [s, c] = [Math.sin(a), Math.cos(a)];
  const under = bore ** 2 - (4 * c * area) / Math.PI;
  return under < 0 ? undefined : (2 * area) / (Math.PI * s) / (bore + Math.sqrt(under));
}

/** Lift at which the plug passes as much as its bore: 0.732 d at 60 degrees, 0.459 d at 90. */
export function plugFullLift(bore: number, included: number): number {
  const a = half(included);
  return (bore * (1 - Math.sqrt(1 - Math.cos(a)))) / (2 * Math.sin(a) * Math.cos(a));
}

/** A flat disc passes its bore at a quarter of it. */
export function discArea(bore: number, lift: number): number {
  return Math.PI * bore * lift;
}

/** Turns of the spindle until the plug passes as much as its bore. `lead`: pitch times starts. */
export function turnsToFull(bore: number, included: number, lead: number): number {
  return plugFullLift(bore, included) / lead;
}

/** Share of the bore that the plug passes at a lift, 1 at most. */
export function plugShare(bore: number, included: number, lift: number): number {
  return lift >= plugFullLift(bore, included) ? 1 : (plugArea(bore, included, lift) ?? 0) / boreArea(bore);
}

function half(included: number): number {
  if (!(included > 0 && included < 180)) throw new RangeError(`no cone of ${included} degrees`);
  return (included / 2) * (Math.PI / 180);
}

const derived: { readonly source: string; readonly standing: Standing } = { source: cite('here'), standing: 'derived' };
export const coneRelations: readonly Relation[] = [
  { id: 'cone-contact', formula: 'D cos α', unit: 'mm', ...derived },
  { id: 'ball-on-cone', formula: 'A = π h sin α cos α (D + h sin α)', unit: 'mm²', ...derived },
  { id: 'cone-on-edge', formula: 'A = π h sin α (d − h sin α cos α)', unit: 'mm²', ...derived },
  { id: 'cone-full-lift', formula: 'h = d (1 − sqrt(1 − cos α)) / (2 sin α cos α)', unit: 'mm', ...derived },
];
