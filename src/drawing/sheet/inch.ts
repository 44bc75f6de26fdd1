/**
 * Inches as an inch turner reads them: thousandths, tenths of them where the limits hold no whole one, fractions for bar and drills, number
 * and letter drills by their names. What has limits is rounded inside them, and its deviations count from what is printed.
 */
import { inch, type Len, mm, toMm, UNITS_PER_MM } from '../../base/units.ts';
import { letterDrills, numberDrills } from '../../handbook/drills.ts';
import { perInch } from '../../handbook/pitches.ts';
import type { Limits } from '../../model/part.ts';
import { figureWithUnit } from './format.ts';
import type { Manner } from './manner.ts';

const MINUS = '\u2212';
const MM = 25.4;
/** Steps of rounding as shares of an inch, coarsest first; places that each needs. */
const STEPS = [
  { per: 1_000, places: 3 },
  { per: 10_000, places: 4 },
  { per: 100_000, places: 5 },
  { per: 1_000_000, places: 6 },
] as const;
type Step = (typeof STEPS)[number];
const [THOU, TENTH, FINEST] = STEPS;
/** Units of 0.1 um carry the rounding of what was stated in inches: a step this near to a limit, in units, is at it. */
const DUST = 0.5;

export const INCH: Manner = {
  units: 'inch',
  target: (asked) => {
    const { n, step } = turnedTo(asked);
    return shown(n, step);
  },
  limits: deviations,
  size: (length) => exact(length),
  diameter: (length) => `\u00d8 ${exact(length)}`,
  short: (length) => bare(near(length, length < FINE ? TENTH : THOU)),
  least: (length) => bare(roundedTo(length, THOU, 'up')),
  most: (length) => bare(roundedTo(length, THOU, 'down')),
  atLeast: (length) => roundedTo(length, TENTH, 'up'),
  atMost: (length) => roundedTo(length, TENTH, 'down'),
  range: rangeOf,
  nominal: (length) => near(length, THOU),
  depth: (length) => bare(shown(Math.round(inches(length) * DEPTHS) * (THOU.per / DEPTHS), THOU)),
  passes: passesOf,
  named: (size) => stamp(size) ?? exact(size),
  stamp: (size) => stamp(size),
  barAcross: (size) => stamp(size) ?? exact(size),
  bar: (length, side) => mixed(side === 'over' ? sawn(length) : kept(length), SIXTEENTHS),
  barLeft: (bar, takes) =>
    mixed(
      Math.max(
        0,
        takes.reduce((left, take) => left - sawn(take), kept(bar)),
      ),
      SIXTEENTHS,
    ),
  about: (length) => bare(near(length, length < ROUGH ? TENTH : THOU)),
  feed: (feed) => bare(shown(Math.max(1, Math.round((feed / MM) * FEEDS)) * (TENTH.per / FEEDS), TENTH)),
  pitch: (pitch) => inchPitch(pitch) ?? `${pitch} mm`,
  derived: (value, unit) => {
    const fraction = unit === 'mm' ? sixtyFourths(mm(value)) : undefined;
    if (fraction !== undefined) return `${fraction} in`;
    const [other, into] = OTHER_UNITS[unit === 'm/s' && value > FAST ? 'm/s, fast' : unit] ?? [unit, (same: number) => same];
    return figureWithUnit(into(value), other);
  },
};
/** What stands beside inches in place of metric units. 1 in = 25.4 mm and 1 lb = 0.45359237 kg exactly; a pound weighs 4.4482216 N (9.80665 m/s2). */
const POUND = 4.4482216;
const OTHER_UNITS: Readonly<Record<string, readonly [unit: string, into: (value: number) => number]>> = {
  mm: ['in', (value) => value / MM],
  mm2: ['sq in', (value) => value / MM ** 2],
  'm/s': ['ft/min', (value) => (value * 60) / 0.3048],
  'm/s, fast': ['ft/s', (value) => value / 0.3048],
  'm/min': ['ft/min', (value) => value / 0.3048],
  N: ['lbf', (value) => value / POUND],
  'N/mm': ['lbf/in', (value) => (value * MM) / POUND],
  'N/mm2': ['psi', (value) => (value * MM ** 2) / POUND],
  bar: ['psi', (value) => (value * 0.1 * MM ** 2) / POUND],
  mbar: ['psi', (value) => (value * 0.0001 * MM ** 2) / POUND],
  degC: ['degF', (value) => value * 1.8 + 32],
};
/** m/s: over it a speed is told by the second. */
const FAST = 100;
/** Under a hundredth of an inch tenths count. */
const FINE = 2540;
/** Under this a thousandth would be a third out. */
const ROUGH = 200;
/** Depths of drills in steps of five thousandths, feeds of half a thousandth. */
const DEPTHS = 200;
const FEEDS = 2_000;
/** What is made to the millimetre comes in twentieths of it. */
const METRIC_SIZES = UNITS_PER_MM / 20;
const SIXTEENTHS = 16;

const inches = (length: number): number => length / (MM * UNITS_PER_MM);
const units = (n: number, step: Step): number => (n * MM * UNITS_PER_MM) / step.per;

/** The coarsest step that has a whole number inside the limits, and of these the one nearest the size asked for. */
function turnedTo({ lo, hi, target }: Limits): { readonly n: number; readonly step: Step } {
  for (const step of STEPS) {
    const [least, most] = [Math.ceil(over(lo - DUST, step)), Math.floor(over(hi + DUST, step))];
    if (least <= most) return { n: Math.min(most, Math.max(least, Math.round(over(target, step)))), step };
  }
  const finest = STEPS[STEPS.length - 1] ?? TENTH;
  return { n: Math.round(over(target, finest)), step: finest };
}

const over = (length: number, step: Step): number => inches(length) * step.per;

/** '+0.003 \u22120.004', '\u00b10.004': let down toward the size; under two thousandths to tenths; next to nothing beside the other is nothing. */
function deviations(asked: Limits, from?: Len): string {
  const { n, step } = turnedTo(asked);
  const at = from ?? units(n, step);
  const up = deviation(asked.hi - at, asked);
  const down = deviation(at - asked.lo, asked);
  if (up === down) return `\u00b1${bare(shown(up, TENTH))}`;
  const places = Math.max(...[up, down].map((tenths) => (tenths % TENTHS === 0 ? THOU.places : TENTH.places)));
  const text = (tenths: number): string => (tenths === 0 ? '0' : (tenths / TENTH.per).toFixed(places));
  return `+${text(up)} ${MINUS}${text(down)}`;
}
const TENTHS = 10;
/** A deviation this small a share of the band is none: nobody could use it. */
const SLIGHT = 1 / 8;

/** In tenths of a thousandth. */
function deviation(units: number, { lo, hi }: Limits): number {
  if (units < (hi - lo) * SLIGHT) return 0;
  const tenths = Math.floor(over(units + DUST, TENTH));
  return tenths < 2 * TENTHS ? tenths : Math.floor(tenths / TENTHS) * TENTHS;
}

/** Nearest tenth, thousandths where it is a whole one. */
function exact(length: number): string {
  const tenths = Math.round(over(length, TENTH));
  return tenths % TENTHS === 0 ? shown(tenths / TENTHS, THOU) : shown(tenths, TENTH);
}

function near(length: number, step: Step): string {
  return shown(Math.round(over(length, step)), step);
}

/** Drawn in to tenths, as a proof may; where nothing is between them, the size itself as finely as it takes. */
function rangeOf(least: Len, greatest: Len): string {
  const [lo, hi] = [upTo(least, TENTH), downTo(greatest, TENTH)];
  if (lo <= hi) return `${shown(lo, TENTH)} \u2013 ${shown(hi, TENTH)}`;
  return `${near(least, FINEST)} \u2013 ${near(greatest, FINEST)}`;
}

const upTo = (length: number, step: Step): number => Math.ceil(over(length - DUST, step));
const downTo = (length: number, step: Step): number => Math.floor(over(length + DUST, step));

/** To the step, never under ('up') or never over ('down'). */
function roundedTo(length: number, step: Step, way: 'up' | 'down'): string {
  const n = way === 'up' ? upTo(length, step) : downTo(length, step);
  return n % TENTHS === 0 && step === TENTH ? shown(n / TENTHS, THOU) : shown(n, step);
}

const shown = (n: number, step: Step): string => (n / step.per).toFixed(step.places).replace('-', n === 0 ? '' : MINUS);

/** Without noughts at the end. */
const bare = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

function passesOf(cuts: readonly Len[]): string {
  const runs: { readonly cut: string; readonly times: number }[] = [];
  for (const cut of cuts.map(exact)) {
    const last = runs.at(-1);
    if (last?.cut === cut) runs[runs.length - 1] = { cut, times: last.times + 1 };
    else runs.push({ cut, times: 1 });
  }
  return runs.map((run) => (run.times === 1 ? run.cut : `${run.cut} \u00d7${run.times}`)).join(', ');
}

/** '9/32 in', 'No. 5', 'letter K': what is stamped on it; nothing for a size in millimetres, or one that no rack has. */
export function gaugeName(size: Len): string | undefined {
  const fraction = sixtyFourths(size);
  if (fraction !== undefined) return `${fraction} in`;
  if (size % METRIC_SIZES === 0) return undefined;
  const number = numberDrills.find((d) => d.diameter === size);
  if (number) return `No. ${number.name.slice(1)}`;
  const letter = letterDrills.find((d) => d.diameter === size);
  return letter && `letter ${letter.name}`;
}

/** In an inch rack what is made to the millimetre has a name too. */
function stamp(size: Len): string | undefined {
  return gaugeName(size) ?? (size % METRIC_SIZES === 0 ? `${toMm(size)} mm` : undefined);
}

/** '11/16', '1 1/8'; nothing for a size that is no sixty-fourth. */
function sixtyFourths(size: Len): string | undefined {
  const n = Math.round(inches(size) * SIXTY_FOUR);
  return n > 0 && inch(n / SIXTY_FOUR) === size ? mixed(n, SIXTY_FOUR) : undefined;
}
const SIXTY_FOUR = 64;

function mixed(n: number, under: number): string {
  const whole = Math.floor(n / under);
  let [top, bottom] = [n % under, under];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const part = top === 0 ? '' : `${top}/${bottom}`;
  return [whole === 0 && part !== '' ? '' : String(whole), part].filter((piece) => piece !== '').join(' ');
}

/** In sixteenths: what is sawn off, a little over, and what there is, a little under. */
const sawn = (length: number): number => Math.ceil(inches(length - DUST) * SIXTEENTHS);
const kept = (length: number): number => Math.floor(inches(length + DUST) * SIXTEENTHS);

/** '40 to the inch'; nothing for a pitch in millimetres. */
export function inchPitch(pitch: number): string | undefined {
  const count = perInch(mm(pitch));
  return count === undefined ? undefined : `${count} to the inch`;
}
