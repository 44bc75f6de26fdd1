/**
 * Walls under pressure: Lamé's thick cylinder, the pressure that a copper pipe may carry, and what heat leaves of annealed copper's strength.
 * Pressures and stresses in MPa here (1 MPa = 10 bar), gauge; radii in mm.
 */
import type { Standing } from './fact.ts';
import { cite } from './sources.ts';

export type Hoop = { readonly inside: number; readonly outside: number; readonly axial: number };

/** Stress round the wall at either radius, and along it with closed ends. Throws RangeError where there is no wall. */
export function lame(inner: number, outer: number, within: number, without: number = 0): Hoop {
  if (!(inner > 0 && outer > inner)) throw new RangeError(`no wall from ${inner} to ${outer}`);
  const [a, b] = [inner ** 2, outer ** 2];
  const mean = (within * a - without * b) / (b - a);
  const swing = ((within - without) * a * b) / (b - a);
  return { inside: mean + swing / a, outside: mean + swing / b, axial: mean };
}

/** Outer radius that keeps the stress at the bore to `stress`; nothing where the pressure is as great as that. */
export function outerRadius(inner: number, pressure: number, stress: number): number | undefined {
  return pressure < stress ? inner * Math.sqrt((stress + pressure) / (stress - pressure)) : undefined;
}

/** Bar that a pipe may carry at a stress of `stress` MPa: 20 F t / (D - t) (EN 1057, UK Copper Board). */
export function pipePressure(outside: number, wall: number, stress: number): number {
  return (20 * stress * wall) / (outside - wall);
}

/** Permissible stress of annealed copper, MPa, linear between the rows as the rules allow; 41.2 below 50 °C, nothing over 200 °C. */
export function copperStress(
  celsius: number,
): { readonly stress: number; readonly source: string; readonly standing: Standing } | undefined {
  const upper = COPPER.findIndex(([t]) => celsius <= t);
  const [t1, s1] = COPPER[upper] ?? [];
  if (t1 === undefined || s1 === undefined) return undefined;
  const [t0, s0] = COPPER[upper - 1] ?? [t1, s1];
  const stress = t1 === t0 ? s1 : s0 + ((s1 - s0) * (celsius - t0)) / (t1 - t0);
  return { stress, source: cite('lr-ssc'), standing: 'standard' };
}

/** °C, MPa. */
const COPPER: readonly (readonly [celsius: number, stress: number])[] = [
  [50, 41.2],
  [75, 41.2],
  [100, 40.2],
  [125, 40.2],
  [150, 34.3],
  [175, 27.5],
  [200, 18.6],
];
