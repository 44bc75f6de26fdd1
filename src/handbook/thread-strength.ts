/**
 * What a metric thread carries: tensile stress area, and the areas that shear before it strips (form of FED-STD-H28/2B), at the worst of
 * limits. Areas in mm2. Strength of threads never governs in fittings of this size; leaking and torque do.
 */
import { type Len, toMm } from '../base/units.ts';
import type { ThreadLimits } from './iso965-metric.ts';

/** pi/4 (d - 0.938194 P)², ISO 898 (from memory). */
export function stressArea(nominal: Len, pitch: Len): number {
  return (Math.PI / 4) * (toMm(nominal) - STRESS_DEPTH * toMm(pitch)) ** 2;
}

/** The bolt's threads shear where the nut's minor diameter is greatest and the bolt's pitch diameter least. */
export function outsideShear(outside: ThreadLimits, inside: ThreadLimits, engaged: Len): number {
  return shear(toMm(inside.minor.hi), toMm(outside.pitchDiameter.lo) - toMm(inside.minor.hi), toMm(outside.pitch), toMm(engaged));
}

/** The nut's threads shear where the bolt's major diameter is least and the nut's pitch diameter greatest. */
export function insideShear(outside: ThreadLimits, inside: ThreadLimits, engaged: Len): number {
  return shear(toMm(outside.major.lo), toMm(outside.major.lo) - toMm(inside.pitchDiameter.hi), toMm(outside.pitch), toMm(engaged));
}

/** Threads of basic size: 3/4 and 7/8 of the cylinder at the minor and the major diameter. */
export function basicShear(nominal: Len, pitch: Len, engaged: Len): { readonly outside: number; readonly inside: number } {
  const minor = toMm(nominal) - (5 / 4) * HEIGHT * toMm(pitch);
  const round = Math.PI * toMm(engaged);
  return { outside: (3 / 4) * round * minor, inside: (7 / 8) * round * toMm(nominal) };
}

const STRESS_DEPTH = 0.938194;
/** Of the sharp triangle, in pitches. */
const HEIGHT = Math.sqrt(3) / 2;
const TAN_30 = 1 / Math.sqrt(3);

/** On a cylinder of diameter `at`, threads are half a pitch thick at the pitch line and gain tan 30° a side with depth from it. */
function shear(at: number, fromPitchLine: number, pitch: number, engaged: number): number {
  return Math.PI * (engaged / pitch) * at * (pitch / 2 + TAN_30 * fromPitchLine);
}
