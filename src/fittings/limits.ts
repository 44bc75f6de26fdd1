/** Limits as a design states them: a band about a size, a role, a thread, a general tolerance. */
import { type Len, len, mm, toMm } from '../base/units.ts';
import { generalTolerance } from '../handbook/iso2768.ts';
import { practice } from '../handbook/practice.ts';
import type { LimitSource, Limits } from '../model/part.ts';

/** `half` to either side of `target`. */
export function about(target: Len, half: Len, as: string, kind: LimitSource['kind'] = 'role'): Limits {
  return { lo: len(target - half), hi: len(target + half), target, from: { kind, as } };
}

export function between(lo: Len, hi: Len, target: Len, as: string, kind: LimitSource['kind'] = 'role'): Limits {
  return { lo, hi, target, from: { kind, as } };
}

/** ISO 2768-1 class m about a plain size. */
export function general(target: Len): Limits {
  return about(target, generalTolerance(target, 'm'), 'ISO 2768-1 m', 'general');
}

/** As bought: a bar's own surface. Not cut, so its band is the general one and nothing is measured on it. */
export function stock(target: Len): Limits {
  return about(target, len(0), 'bar', 'stock');
}

/** A figure of the workshop in units: the fact's millimetres. */
export function size(id: string): Len {
  return mm(practice.value(id));
}

export function ratio(id: string): number {
  return practice.value(id);
}

/** Up, down, or nearest to a tenth of a millimetre (`step` 0.1), a half (0.5) or whole. */
export function tidy(length: Len, step: Len, way: 'up' | 'down' | 'near'): Len {
  const n = length / step;
  const whole = way === 'up' ? Math.ceil(n - SLACK) : way === 'down' ? Math.floor(n + SLACK) : Math.round(n);
  return len(whole * step);
}
const SLACK = 1e-9;

export const TENTH: Len = mm(0.1);
export const HUNDREDTH: Len = mm(0.01);
export const MM: Len = mm(1);
export const half = (length: Len): Len => mm(toMm(length) / 2);
export const times = (length: Len, factor: number): Len => mm(toMm(length) * factor);
