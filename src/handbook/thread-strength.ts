/**
 * What a thread carries: tensile stress area, and the areas that shear before it strips (form of FED-STD-H28/2B), at the worst of
 * limits. Areas in mm2. Strength of threads never governs in fittings of this size; leaking and torque do.
 */
import { type Len, toMm } from '../base/units.ts';
import type { BasicThread, ThreadLimits } from './iso965-metric.ts';
import type { Family, ThreadRecord } from './thread-form.ts';

/** Limits of one half of a pair of threads, as far as its strength asks. */
export type Pair = Pick<ThreadLimits, 'major' | 'pitchDiameter' | 'minor' | 'pitch' | 'flankAngle'>;

/** pi/4 (d - 0.938194 P)², ISO 898 (from memory). */
export function stressArea(nominal: Len, pitch: Len): number {
  return (Math.PI / 4) * (toMm(nominal) - STRESS_DEPTH * toMm(pitch)) ** 2;
}

/**
 * The same for any family: unified pi/4 (D - 0.9743/n)² (FED-STD-H28/2B); Whitworth and BA the circle of the mean of effective and minor
 * diameter, which is what the other two come from.
 */
export function stressAreaOf(thread: ThreadRecord): number {
  if (thread.family === 'metric') return stressArea(thread.nominal, thread.pitch);
  if (UNIFIED.includes(thread.family)) return (Math.PI / 4) * (toMm(thread.nominal) - UNIFIED_DEPTH * toMm(thread.pitch)) ** 2;
  return (Math.PI / 4) * ((toMm(thread.basic.pitchDiameter) + toMm(thread.basic.minor)) / 2) ** 2;
}
const UNIFIED: readonly Family[] = ['UNC', 'UNF', 'UNEF'];
const UNIFIED_DEPTH = 0.9743;

/** The bolt's threads shear where the nut's minor diameter is greatest and the bolt's pitch diameter least. */
export function outsideShear(outside: Pair, inside: Pair, engaged: Len): number {
  return shear(toMm(inside.minor.hi), toMm(outside.pitchDiameter.lo) - toMm(inside.minor.hi), outside, engaged);
}

/** The nut's threads shear where the bolt's major diameter is least and the nut's pitch diameter greatest. */
export function insideShear(outside: Pair, inside: Pair, engaged: Len): number {
  return shear(toMm(outside.major.lo), toMm(outside.major.lo) - toMm(inside.pitchDiameter.hi), outside, engaged);
}

/** Threads of basic size: 3/4 and 7/8 of the cylinder at the minor and the major diameter. */
export function basicShear(nominal: Len, pitch: Len, engaged: Len): { readonly outside: number; readonly inside: number } {
  const minor = toMm(nominal) - (5 / 4) * HEIGHT * toMm(pitch);
  const round = Math.PI * toMm(engaged);
  return { outside: (3 / 4) * round * minor, inside: (7 / 8) * round * toMm(nominal) };
}

/** The same for any symmetric form, crests taken as sharp-cornered: 3/4 and 7/8 for ISO, 5/6 and 5/6 for Whitworth. */
export function basicShearOf(basic: BasicThread, pitch: Len, flankAngle: number, engaged: Len): ReturnType<typeof basicShear> {
  const { major, pitchDiameter, minor } = basic;
  const thread = { pitch, flankAngle };
  return {
    outside: shear(toMm(minor), toMm(pitchDiameter) - toMm(minor), thread, engaged),
    inside: shear(toMm(major), toMm(major) - toMm(pitchDiameter), thread, engaged),
  };
}

const STRESS_DEPTH = 0.938194;
/** Of the sharp triangle, in pitches. */
const HEIGHT = Math.sqrt(3) / 2;

/** On a cylinder of diameter `at`, threads are half a pitch thick at the pitch line and gain the tangent of half the angle with depth. */
function shear(at: number, fromPitchLine: number, thread: Pick<ThreadLimits, 'pitch' | 'flankAngle'>, engaged: Len): number {
  const tangent = Math.tan((thread.flankAngle / 2) * (Math.PI / 180));
  return Math.PI * (engaged / thread.pitch) * at * (toMm(thread.pitch) / 2 + tangent * fromPitchLine);
}
