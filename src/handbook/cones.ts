/** Cones by the top slide: the slide set over by half the included angle; how far it moves, and what that takes off the diameter. */
import { type Len, len, roundHalfEven, toMm } from '../base/units.ts';
import { cite } from './sources.ts';
import type { Relation } from './valve-ball.ts';

/** Growth of diameter a length, of an included angle in degrees: 2 tan(half). */
export function taperOf(angle: number): number {
  return 2 * Math.tan(half(angle));
}

/** Its inverse: included angle of a taper a length. */
export function angleOf(taper: number): number {
  return (2 * Math.atan(taper / 2) * 180) / Math.PI;
}

/** Travel of the top slide along a cone whose diameter changes by so much. */
export function slideAlong(change: Len, angle: number): Len {
  return len(roundHalfEven(change / 2 / Math.sin(half(angle))));
}

/** Length along the axis of that cone. */
export function coneLength(change: Len, angle: number): Len {
  return len(roundHalfEven(change / taperOf(angle)));
}

/** What the cross slide makes of an error on the diameter of a cone, along the axis: how far a gauge stands off. */
export function standOff(error: Len, angle: number): number {
  return toMm(error) / taperOf(angle);
}

const half = (angle: number): number => {
  if (!(angle > 0 && angle < 180)) throw new RangeError(`no cone of ${angle} degrees`);
  return (angle * Math.PI) / 360;
};

export const conesRelations: readonly Relation[] = [
  { id: 'taper', formula: 'T = 2 tan(α/2)', unit: 'ratio', source: cite('derry-collard'), standing: 'common practice' },
  { id: 'slide-along', formula: 's = ΔD / (2 sin(α/2))', unit: 'mm', source: cite('here'), standing: 'derived' },
];
