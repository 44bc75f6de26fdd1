/**
 * Lengths, and the rounding that happens once on the way in.
 * A length along the axis and a DIAMETER are both whole units of 0.1 um; nothing is ever halved.
 */

/** Whole units of 0.1 um (10 000 to the millimetre). */
export type Len = number & { readonly unit: '0.1 um' };

export const UNITS_PER_MM = 10_000;

/** A number that is already in whole units. Throws RangeError when it is not a whole number. */
export function len(units: number): Len {
  if (!Number.isSafeInteger(units)) throw new RangeError(`not a whole number of 0.1 um: ${units}`);
  return (units === 0 ? 0 : units) as Len;
}

/** Millimetres to units, rounded once, half to even. */
export function mm(value: number): Len {
  return len(roundHalfEven(value * UNITS_PER_MM));
}

/** Inches to units, rounded once, half to even (1 in = 25.4 mm exactly). */
export function inch(value: number): Len {
  return len(roundHalfEven(value * 254_000));
}

export function toMm(length: Len): number {
  return length / UNITS_PER_MM;
}

/** Nearest whole number, half to even. Values within 1e-6 of a half count as a half. */
export function roundHalfEven(x: number): number {
  const floor = Math.floor(x);
  const part = x - floor;
  if (Math.abs(part - 0.5) < 1e-6) return floor % 2 === 0 ? floor : floor + 1;
  return Math.round(x);
}

/** `length` to the nearest multiple of `step`, half away from zero; both in units. */
export function toStep(length: Len, step: Len): Len {
  const sign = length < 0 ? -1 : 1;
  return len(sign * Math.floor((Math.abs(length) + step / 2) / step) * step);
}

/** Millimetres as a person reads them: at least `places` decimals, more only when needed to be exact to 0.001. */
export function showMm(length: Len, places = 2): string {
  const exact = toMm(length).toFixed(3);
  const wanted = toMm(length).toFixed(places);
  const text = Number(exact) === Number(wanted) ? wanted : exact;
  return Number(text) === 0 ? text.replace('-', '') : text;
}

export const add = (a: Len, b: Len): Len => len(a + b);
export const minus = (a: Len, b: Len): Len => len(a - b);
