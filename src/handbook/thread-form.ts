/**
 * Forms of thread: how deep, how round at the root, how a hole's share of thread is reckoned. One record for every family, so that a look-up
 * treats them alike; each family's own file gives its sizes and limits.
 */
import { inch, type Len, len, mm, roundHalfEven } from '../base/units.ts';
import type { Standing } from './fact.ts';
import type { BasicThread, ThreadLimits } from './iso965-metric.ts';

export type Family = 'metric' | 'ME' | 'brass' | 'BSW' | 'BSF' | 'BA' | 'G' | 'UNC' | 'UNF' | 'UNEF';
export type FormName = 'ISO' | 'Whitworth' | 'BA';
export type Basis = '5/8 H' | '3/4 H' | 'Whitworth depth' | 'BA depth';
export type ThreadForm = {
  readonly name: FormName;
  /** degrees, included */
  readonly flankAngle: number;
  /** In pitches, a side. */
  readonly depth: { readonly outside: number; readonly inside: number };
  readonly rootRadius: number;
  /** What a share of thread is a share of, first the usual one. */
  readonly bases: readonly Basis[];
};
export type Usual = { readonly drill: Len; readonly source: string; readonly standing: Standing };
export type ThreadRecord = {
  /** As this handbook writes it: 'M10x1', '1/4-40 ME', '2BA', 'G3/8', '1/4-28 UNF'. */
  readonly name: string;
  readonly family: Family;
  readonly form: ThreadForm;
  readonly nominal: Len;
  readonly pitch: Len;
  readonly perInch?: number;
  readonly basic: BasicThread;
  /** Classes that there are, first the usual one. */
  readonly outside: readonly string[];
  readonly inside: readonly string[];
  /** Tapping drills that are printed for it. */
  readonly usual: readonly Usual[];
  readonly source: string;
  readonly standing: Standing;
  /** Limits of a class on one side; nothing for a class that there is not. */
  limits(side: ThreadLimits['side'], cls: string): ThreadLimits | undefined;
};

const ROOT_3 = Math.sqrt(3);
/** ISO 68-1, also unified: H = 0.866025 P; outside to the rounded root 17/24 H, inside 5/8 H; radius H/6. */
export const ISO_FORM: ThreadForm = {
  name: 'ISO',
  flankAngle: 60,
  depth: { outside: ((17 / 24) * ROOT_3) / 2, inside: ((5 / 8) * ROOT_3) / 2 },
  rootRadius: ROOT_3 / 2 / 6,
  bases: ['5/8 H', '3/4 H'],
};
/** BS 84. */
export const WHITWORTH_FORM: ThreadForm = {
  name: 'Whitworth',
  flankAngle: 55,
  depth: { outside: 0.640327, inside: 0.640327 },
  rootRadius: 0.137329,
  bases: ['Whitworth depth'],
};
/** BS 93. */
export const BA_FORM: ThreadForm = {
  name: 'BA',
  flankAngle: 47.5,
  depth: { outside: 0.6, inside: 0.6 },
  rootRadius: 2 / 11,
  bases: ['BA depth'],
};

/** Whole thread on diameter, in pitches. */
export const FULL_DEPTH: Readonly<Record<Basis, number>> = {
  '5/8 H': 1.25 * (ROOT_3 / 2),
  '3/4 H': 1.5 * (ROOT_3 / 2),
  'Whitworth depth': 2 * WHITWORTH_FORM.depth.inside,
  'BA depth': 2 * BA_FORM.depth.inside,
};

/** 1/4, 3/8, 1 1/2, 2 as an inch size; nothing for another text. */
export function inchSize(text: string): number | undefined {
  const read = /^(?:(\d+)[ -])?(\d+)\/(\d+)$|^(\d+)$/.exec(text.trim());
  if (!read) return undefined;
  const [, whole = '0', over = '0', under = '1', alone] = read;
  return Number(under) === 0 ? undefined : alone === undefined ? Number(whole) + Number(over) / Number(under) : Number(alone);
}

/** Inches as a standard prints them: to so many places. */
export function printed(inches: number, places = 4): Len {
  return inch(roundHalfEven(inches * 10 ** places) / 10 ** places);
}

/** Millimetres to the whole micrometre. */
export function micron(millimetres: number): Len {
  return len(roundHalfEven(millimetres * 1000) * 10);
}

/** Diameters of a symmetric form from its nominal size; `root` is the bottom of an outside thread. mm. */
export function basicOf(form: ThreadForm, diameter: number, pitch: number): BasicThread {
  const h = form.depth.inside * pitch;
  return { major: mm(diameter), pitchDiameter: micron(diameter - h), minor: micron(diameter - 2 * h), root: micron(diameter - 2 * h) };
}
