/** How far slender work and tools give way, and when a bar behind the spindle whips. N, mm, MPa; theory of beams. */

import { cite } from './sources.ts';
import type { Relation } from './valve-ball.ts';

/** mm4 of a round bar. */
export function secondMoment(diameter: number): number {
  return (Math.PI / 64) * diameter ** 4;
}

/** Give of a bar held at one end and pushed at the other: F L³ / (3 E I). */
export function cantilever(force: number, length: number, diameter: number, modulus: number): number {
  return (force * length ** 3) / (3 * modulus * secondMoment(diameter));
}

/** Give under the tool of a bar in a chuck and on a centre, pushed at `at` from the chuck. */
export function propped(force: number, length: number, at: number, diameter: number, modulus: number): number {
  const rest = length - at;
  return (force * at ** 3 * rest ** 2 * (4 * length - at)) / (12 * modulus * secondMoment(diameter) * length ** 3);
}

/** Stick-out at which a cantilever gives so much: the inverse. */
export function stickOutFor(give: number, force: number, diameter: number, modulus: number): number {
  return Math.cbrt((3 * modulus * secondMoment(diameter) * give) / force);
}

/** Turns a minute at which a bar that stands out `length` mm behind the spindle whirls. GPa, kg/m3. */
export function whipSpeed(diameter: number, length: number, modulus: number, density: number): number {
  const metres = length / 1000;
  return (60 / (2 * Math.PI)) * (FIRST_ROOT / metres ** 2) * (diameter / 1000 / 4) * Math.sqrt((modulus * 1e9) / density);
}
const FIRST_ROOT = 3.516;

/** mm that may stand out where it whirls at that many turns: the inverse. GPa, kg/m3. */
export function whipLength(diameter: number, turns: number, modulus: number, density: number): number {
  return 1000 * Math.sqrt(whipSpeed(diameter, 1000, modulus, density) / turns);
}

export const stiffnessRelations: readonly Relation[] = [
  { id: 'cantilever', formula: 'y = F L³ / (3 E I)', unit: 'mm', source: cite('beams'), standing: 'derived' },
  { id: 'propped', formula: 'y = F a³ (L − a)² (4 L − a) / (12 E I L³)', unit: 'mm', source: cite('beams'), standing: 'derived' },
  { id: 'whip', formula: 'n = (60 / 2π) 3.516 / L² d/4 sqrt(E / ρ)', unit: '/min', source: cite('beams'), standing: 'derived' },
];
