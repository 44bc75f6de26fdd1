/**
 * Threads of Whitworth form: BSW and BSF (BS 84), and the trade's Model Engineer (40, 32, 26 an inch) and brass (26 an inch) threads, which
 * no standard holds. Basic sizes by the form; limits by the tolerances of BS 84, which are from memory; for the trade's threads they are
 * borrowed, and the standing says so. Inches rounded to 0.0001, as printed.
 */
import { inch, mm } from '../base/units.ts';
import type { ThreadLimits } from './iso965-metric.ts';
import { cite, type SourceId } from './sources.ts';
import { type Family, inchSize, printed, type ThreadRecord, type Usual, WHITWORTH_FORM } from './thread-form.ts';

type Series = Extract<Family, 'ME' | 'brass' | 'BSW' | 'BSF'>;
/** Drills in mm: as a model engineers' list has them; as BS 1157 has them. 0: none printed. */
type Row = readonly [size: string, perInch: number, drill: number, bs1157: number];

const ROWS: Readonly<Record<Series, readonly Row[]>> = {
  ME: [
    ['1/8', 40, 2.6, 0],
    ['5/32', 40, 3.3, 0],
    ['3/16', 40, 4.1, 0],
    ['7/32', 40, 5, 0],
    ['1/4', 40, 5.8, 0],
    ['9/32', 40, 0, 0],
    ['5/16', 40, 0, 0],
    ['3/8', 40, 0, 0],
    ['7/16', 40, 0, 0],
    ['1/2', 40, 0, 0],
    ['3/16', 32, 0, 0],
    ['7/32', 32, 0, 0],
    ['1/4', 32, 0, 0],
    ['9/32', 32, 6.35, 0],
    ['5/16', 32, 7.15, 0],
    ['3/8', 32, 8.75, 0],
    ['7/16', 32, 0, 0],
    ['1/2', 32, 0, 0],
    ['7/16', 26, 10.1, 0],
    ['1/2', 26, 11.9, 0],
  ],
  brass: [
    ['1/8', 26, 0, 0],
    ['3/16', 26, 0, 0],
    ['1/4', 26, 5.6, 0],
    ['9/32', 26, 6.35, 0],
    ['5/16', 26, 7.15, 0],
    ['3/8', 26, 8.8, 0],
    ['7/16', 26, 10.3, 0],
    ['1/2', 26, 11.9, 0],
    ['5/8', 26, 0, 0],
  ],
  BSW: [
    ['1/16', 60, 1.15, 0],
    ['3/32', 48, 1.9, 0],
    ['1/8', 40, 2.6, 2.55],
    ['5/32', 32, 3.2, 0],
    ['3/16', 24, 3.8, 3.7],
    ['7/32', 24, 4.6, 0],
    ['1/4', 20, 5.2, 5.1],
    ['5/16', 18, 6.6, 6.5],
    ['3/8', 16, 8, 7.9],
    ['7/16', 14, 9.3, 9.3],
    ['1/2', 12, 10.7, 10.5],
    ['5/8', 11, 0, 0],
  ],
  // 3/16: 32 an inch by BS 84; one list prints 28
  BSF: [
    ['3/16', 32, 4, 0],
    ['7/32', 28, 4.7, 0],
    ['1/4', 26, 5.4, 0],
    ['9/32', 26, 6.2, 0],
    ['5/16', 22, 6.9, 0],
    ['3/8', 20, 8.3, 0],
    ['7/16', 18, 9.8, 0],
    ['1/2', 16, 11.1, 0],
    ['5/8', 14, 0, 0],
  ],
};

const BASIC: Readonly<Record<Series, SourceId>> = { ME: 'model-threads', brass: 'model-threads', BSW: 'bs-84', BSF: 'bs-84' };
/** Multiples of T and of sqrt(p) on the bolt: effective, major, minor. */
const BOLTS: Readonly<Record<string, { readonly share: number; readonly minor: number }>> = {
  close: { share: 2 / 3, minor: 0.013 },
  medium: { share: 1, minor: 0.02 },
  free: { share: 3 / 2, minor: 0.02 },
};
const NUTS: Readonly<Record<string, number>> = { medium: 1, normal: 3 / 2 };
const MAJOR_TERM = 0.01;
/** Least threads an inch, and what is added to a fifth of the pitch for the nut's minor diameter. */
const NUT_MINOR: readonly (readonly [perInch: number, more: number])[] = [
  [26, 0.004],
  [22, 0.005],
  [0, 0.007],
];

export const whitworthThreads: readonly ThreadRecord[] = (['ME', 'brass', 'BSW', 'BSF'] as const).flatMap((series) =>
  ROWS[series].map((row) => record(series, row)),
);

/** Tolerance of BS 84 in inches, engaged as long as it is thick: 0.002 D^(1/3) + 0.003 sqrt(D) + 0.005 sqrt(p). */
export function whitworthTolerance(diameter: number, pitch: number): number {
  return 0.002 * Math.cbrt(diameter) + 0.003 * Math.sqrt(diameter) + 0.005 * Math.sqrt(pitch);
}

function record(series: Series, [size, perInch, drill, bs1157]: Row): ThreadRecord {
  const diameter = inchSize(size) ?? 0;
  const depth = WHITWORTH_FORM.depth.inside / perInch;
  const minor = printed(diameter - 2 * depth);
  const drills: Usual[] = [];
  if (drill > 0) drills.push(usual(drill, 'model-threads'));
  if (bs1157 > 0) drills.push(usual(bs1157, 'bs-1157'));
  const self: ThreadRecord = {
    name: `${size}-${perInch} ${series}`,
    family: series,
    form: WHITWORTH_FORM,
    nominal: inch(diameter),
    pitch: inch(1 / perInch),
    perInch,
    basic: { major: inch(diameter), pitchDiameter: printed(diameter - depth), minor, root: minor },
    outside: ['medium', 'close', 'free'],
    inside: ['medium', 'normal'],
    usual: drills,
    source: cite(BASIC[series]),
    standing: series === 'ME' || series === 'brass' ? 'common practice' : 'standard',
    limits: (side, cls) => (side === 'outside' ? bolt(self, cls) : nut(self, cls)),
  };
  return self;
}

function usual(drill: number, source: SourceId): Usual {
  return { drill: mm(drill), source: cite(source), standing: 'common practice' };
}

function bolt(thread: ThreadRecord, cls: string): ThreadLimits | undefined {
  const row = BOLTS[cls];
  if (!row) return undefined;
  const { t, p, d } = inches(thread);
  const term = Math.sqrt(p);
  const { major, pitchDiameter, minor } = thread.basic;
  const least = { major: row.share * t + MAJOR_TERM * term, pitch: row.share * t, minor: row.share * t + row.minor * term };
  const depth = WHITWORTH_FORM.depth.inside * p;
  const low = printed(d - 2 * depth - least.minor);
  return {
    ...frame(thread, cls, 'outside'),
    major: { lo: printed(d - least.major), hi: major },
    pitchDiameter: { lo: printed(d - depth - least.pitch), hi: pitchDiameter },
    minor: { lo: low, hi: minor },
    root: low,
  };
}

function nut(thread: ThreadRecord, cls: string): ThreadLimits | undefined {
  const share = NUTS[cls];
  if (share === undefined) return undefined;
  const { t, p, d } = inches(thread);
  const depth = WHITWORTH_FORM.depth.inside * p;
  const more = NUT_MINOR.find(([perInch]) => (thread.perInch ?? 0) >= perInch)?.[1] ?? 0;
  const top = printed(d + share * t);
  return {
    ...frame(thread, cls, 'inside'),
    major: { lo: thread.basic.major, hi: top },
    majorOpen: true,
    pitchDiameter: { lo: thread.basic.pitchDiameter, hi: printed(d - depth + share * t) },
    minor: { lo: thread.basic.minor, hi: printed(d - 2 * depth + p / 5 + more) },
    root: top,
  };
}

function inches({ nominal, perInch = 1 }: ThreadRecord): { readonly d: number; readonly p: number; readonly t: number } {
  const [d, p] = [nominal / inch(1), 1 / perInch];
  return { d, p, t: whitworthTolerance(d, p) };
}

function frame(
  thread: ThreadRecord,
  cls: string,
  side: ThreadLimits['side'],
): Omit<ThreadLimits, 'major' | 'pitchDiameter' | 'minor' | 'root'> {
  const trade = thread.standing === 'common practice';
  return {
    name: thread.name,
    cls,
    side,
    nominal: thread.nominal,
    pitch: thread.pitch,
    hand: 'right',
    flankAngle: WHITWORTH_FORM.flankAngle,
    listed: trade ? 'trade' : 'standard',
    source: cite('bs-84-rest'),
    standing: 'from memory',
  };
}
