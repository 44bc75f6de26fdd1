/**
 * Unified threads, small sizes, classes 2A and 2B, by the formulas and the rounding of ASME B1.1: pitch to 8 places, tolerances to 6, limits to
 * 4 (2B minor diameters to 3 from #6 up). Four 2B minor diameters are printed otherwise in FED-STD-H28/2B: the printed figure rules.
 */
import { inch, roundHalfEven } from '../base/units.ts';
import type { ThreadLimits } from './iso965-metric.ts';
import { cite } from './sources.ts';
import { type Family, ISO_FORM, inchSize, printed, type ThreadRecord } from './thread-form.ts';

type Series = Extract<Family, 'UNC' | 'UNF' | 'UNEF'>;
const ROWS: readonly (readonly [size: string, coarse: number, fine: number, extra: number])[] = [
  ['#0', 0, 80, 0],
  ['#1', 64, 72, 0],
  ['#2', 56, 64, 0],
  ['#3', 48, 56, 0],
  ['#4', 40, 48, 0],
  ['#5', 40, 44, 0],
  ['#6', 32, 40, 0],
  ['#8', 32, 36, 0],
  ['#10', 24, 32, 0],
  ['#12', 24, 28, 32],
  ['1/4', 20, 28, 32],
  ['5/16', 18, 24, 32],
  ['3/8', 16, 24, 32],
  ['7/16', 14, 20, 28],
  ['1/2', 13, 20, 28],
  ['9/16', 12, 18, 0],
];
/** FED-STD-H28/2B, table II.A.1: 2B minor, least and greatest, where the formula gives another last figure. */
const PRINTED_MINOR: Readonly<Record<string, readonly [number, number]>> = {
  '#1-64 UNC': [0.0561, 0.0623],
  '#1-72 UNF': [0.058, 0.0635],
  '#2-64 UNF': [0.0691, 0.0753],
  '#10-24 UNC': [0.145, 0.156],
};
/** From here the tolerance of 2B minor diameters has another formula; from number 6 they have three places. */
const LARGE = 0.25;
const NUMBER_6 = 0.138;

export const unifiedThreads: readonly ThreadRecord[] = ROWS.flatMap(([size, coarse, fine, extra]) =>
  (
    [
      ['UNC', coarse],
      ['UNF', fine],
      ['UNEF', extra],
    ] as const
  ).flatMap(([series, perInch]) => (perInch > 0 ? [record(size, series, perInch)] : [])),
);

/** Diameter in inches: number n is 0.060 + 0.013 n. */
export function unifiedSize(size: string): number | undefined {
  const number = /^#(\d+)$/.exec(size)?.[1];
  return number === undefined ? inchSize(size) : 0.06 + 0.013 * Number(number);
}

/** Tolerance on the pitch diameter, 2A, in inches, to six places. Engaged nine pitches for extra fine, else one diameter. */
export function pitchTolerance2A(diameter: number, pitch: number, series: Series): number {
  const engaged = series === 'UNEF' ? 9 * pitch : diameter;
  return places(0.0015 * Math.cbrt(diameter) + 0.0015 * Math.sqrt(engaged) + 0.015 * Math.cbrt(pitch ** 2), 6);
}

function record(size: string, series: Series, perInch: number): ThreadRecord {
  const d = unifiedSize(size) ?? 0;
  const p = places(1 / perInch, 8);
  const self: ThreadRecord = {
    name: `${size}-${perInch} ${series}`,
    family: series,
    form: ISO_FORM,
    nominal: inch(d),
    pitch: inch(1 / perInch),
    perInch,
    basic: {
      major: inch(d),
      pitchDiameter: printed(d - 0.64951905 * p),
      minor: printed(d - 1.08253175 * p),
      root: printed(d - 1.19078493 * p),
    },
    outside: ['2A'],
    inside: ['2B'],
    usual: [],
    source: cite('asme-b1-1'),
    standing: 'standard',
    limits: (side, cls) => (side === 'outside' ? bolt(self, series, cls) : nut(self, series, cls)),
  };
  return self;
}

function bolt(thread: ThreadRecord, series: Series, cls: string): ThreadLimits | undefined {
  if (cls !== '2A') return undefined;
  const { d, p } = inches(thread);
  const tolerance = pitchTolerance2A(d, p, series);
  const top = d - places(0.3 * tolerance, 4);
  const pitchTop = places(top - places(0.649519 * p, 6), 4);
  const low = pitchTop - tolerance;
  return {
    ...frame(thread, '2A', 'outside'),
    major: { lo: printed(top - places(0.06 * Math.cbrt(p ** 2), 4)), hi: printed(top) },
    pitchDiameter: { lo: printed(low), hi: printed(pitchTop) },
    // greatest: rounded root (UNR); least: the sharp corner of a flat of P/8 under the least pitch diameter
    minor: { lo: printed(low - 0.649519 * p), hi: printed(top - 1.190785 * p) },
    root: printed(low - 0.649519 * p),
  };
}

function nut(thread: ThreadRecord, series: Series, cls: string): ThreadLimits | undefined {
  if (cls !== '2B') return undefined;
  const { d, p } = inches(thread);
  const basic = places(d - places(0.649519 * p, 6), 4);
  const high = basic + 1.3 * pitchTolerance2A(d, p, series);
  const [least, greatest] = PRINTED_MINOR[thread.name] ?? minor2B(d, p);
  return {
    ...frame(thread, '2B', 'inside'),
    major: { lo: thread.basic.major, hi: printed(high + 0.793857 * p) },
    majorOpen: true,
    pitchDiameter: { lo: printed(basic), hi: printed(high) },
    minor: { lo: inch(least), hi: inch(greatest) },
    root: printed(high + 0.793857 * p),
  };
}

function minor2B(d: number, p: number): readonly [number, number] {
  const digits = d >= NUMBER_6 ? 3 : 4;
  const core = d - places(1.082532 * p, 6);
  const least = places(core, digits);
  const coarse = 0.25 * p - 0.4 * p ** 2;
  const small = 0.05 * Math.cbrt(p ** 2) + (0.03 * p) / d - 0.002;
  const tolerance = d >= LARGE ? coarse : Math.max(coarse, Math.min(0.394 * p, small));
  return [least, places(core + tolerance, digits)];
}

function inches({ nominal, perInch = 1 }: ThreadRecord): { readonly d: number; readonly p: number } {
  return { d: places(nominal / inch(1), 4), p: places(1 / perInch, 8) };
}

function places(value: number, digits: number): number {
  return roundHalfEven(value * 10 ** digits) / 10 ** digits;
}

function frame(
  thread: ThreadRecord,
  cls: string,
  side: ThreadLimits['side'],
): Omit<ThreadLimits, 'major' | 'pitchDiameter' | 'minor' | 'root'> {
  const { name, nominal, pitch } = thread;
  return {
    ...{ name, cls, side, nominal, pitch, hand: 'right', flankAngle: ISO_FORM.flankAngle },
    ...{ listed: 'standard', source: cite('asme-b1-1'), standing: 'standard' },
  };
}
