/** Bending of a flange: a ring-shaped plate held up round its bolt circle, its inner edge free, pulled along that inner edge. mm, N, MPa. */
import { cite } from './sources.ts';

/** Of the table; bronze has a little more, which changes the moment by one or two in a hundred. */
const POISSON = 0.3;

/**
 * Moment round the inner edge over (load a unit of length times outer radius), the greatest in the plate: case 1a, the load on the inner
 * edge, from the table's constants C7 and L9. Throws RangeError where there is no plate.
 */
export function ringPlateFactor(outer: number, inner: number): number {
  if (!(inner > 0 && outer > inner)) throw new RangeError(`no plate from ${inner} to ${outer}`);
  const share = inner / outer;
  const slope = ((1 + POISSON) / 2) * Math.log(1 / share) + ((1 - POISSON) / 4) * (1 - share ** 2);
  return (2 * slope) / (1 / share - share);
}

/** Stress of a plate as thick as `thick` under a moment a unit of length. */
export const plateStress = (moment: number, thick: number): number => (6 * moment) / thick ** 2;

/** The whole `pull` shared out along the inner edge. */
export function ringPlateStress(plate: { readonly outer: number; readonly inner: number; readonly thick: number }, pull: number): number {
  const load = pull / (2 * Math.PI * plate.inner);
  return plateStress(ringPlateFactor(plate.outer, plate.inner) * load * plate.outer, plate.thick);
}

export const FLANGE_SOURCE = cite('roark');
