/**
 * British Association threads 0 to 16, BS 93:1951. The table rules: pitch 0.9^n and major 6 p^1.2, rounded, explain it but for 13 BA. Limits by
 * the standard's formulas, to the micrometre; nuts have one class.
 */
import { len, mm, toMm } from '../base/units.ts';
import type { ThreadLimits } from './iso965-metric.ts';
import { cite } from './sources.ts';
import { BA_FORM, micron, type ThreadRecord, type Usual } from './thread-form.ts';

/** mm. */
const ROWS: readonly (readonly [number: number, pitch: number, major: number, effective: number, minor: number])[] = [
  [0, 1, 6, 5.4, 4.8],
  [1, 0.9, 5.3, 4.76, 4.22],
  [2, 0.81, 4.7, 4.215, 3.73],
  [3, 0.73, 4.1, 3.66, 3.22],
  [4, 0.66, 3.6, 3.205, 2.81],
  [5, 0.59, 3.2, 2.845, 2.49],
  [6, 0.53, 2.8, 2.48, 2.16],
  [7, 0.48, 2.5, 2.21, 1.92],
  [8, 0.43, 2.2, 1.94, 1.68],
  [9, 0.39, 1.9, 1.665, 1.43],
  [10, 0.35, 1.7, 1.49, 1.28],
  [11, 0.31, 1.5, 1.315, 1.13],
  [12, 0.28, 1.3, 1.13, 0.96],
  [13, 0.25, 1.2, 1.05, 0.9],
  [14, 0.23, 1, 0.86, 0.72],
  [15, 0.21, 0.9, 0.775, 0.65],
  [16, 0.19, 0.79, 0.675, 0.56],
];
/** Tapping drills that were seen: millimetres for 0 to 2 (a model engineers' list); number drills for 0 to 10 are in thousandths of a mm here. */
const DRILLS: Readonly<Record<number, readonly number[]>> = {
  0: [5.1, 4.9149],
  1: [4.5, 4.3942],
  2: [4, 3.8608],
  3: [3.4544],
  4: [2.9464],
  5: [2.6416],
  6: [2.2606],
  7: [2.0574],
  // number 50 (1.778) is tight by a builder's note; 1.8 to 1.85 goes
  8: [1.778, 1.8],
  9: [1.5113],
  10: [1.3208],
};
/** Tolerances in pitches and mm: a share of the pitch and a rest. */
type Share = readonly [share: number, rest: number];
type Bolt = { readonly major: Share; readonly pitch: Share; readonly minor: Share };
const CLOSE: Bolt = { major: [0.15, 0], pitch: [0.08, 0.02], minor: [0.16, 0.04] };
const NORMAL: Bolt = { major: [0.2, 0], pitch: [0.1, 0.025], minor: [0.2, 0.05] };
const SMALL: Bolt = { ...NORMAL, major: [0.25, 0] };
const NUT = { pitch: [0.12, 0.03], minor: [0.375, 0] } as const;
/** Normal bolts to 10 BA are this much under, mm. */
const ALLOWANCE = 0.025;
const LAST_WITH_ALLOWANCE = 10;

export const baThreads: readonly ThreadRecord[] = ROWS.map(([number, pitch, major, effective, minor]) => {
  const self: ThreadRecord = {
    name: `${number}BA`,
    family: 'BA',
    form: BA_FORM,
    nominal: mm(major),
    pitch: mm(pitch),
    basic: { major: mm(major), pitchDiameter: mm(effective), minor: mm(minor), root: mm(minor) },
    outside: ['normal', 'close'],
    inside: ['normal'],
    usual: (DRILLS[number] ?? []).map(usual),
    source: cite('bs-93'),
    standing: 'standard',
    limits: (side, cls) => (side === 'outside' ? bolt(self, number, cls) : nut(self, cls)),
  };
  return self;
});

function usual(drill: number): Usual {
  return { drill: mm(drill), source: cite('model-threads'), standing: 'common practice' };
}

function bolt(thread: ThreadRecord, number: number, cls: string): ThreadLimits | undefined {
  if (cls !== 'close' && cls !== 'normal') return undefined;
  const under = cls === 'normal' && number <= LAST_WITH_ALLOWANCE ? ALLOWANCE : 0;
  const row = cls === 'close' ? CLOSE : number <= LAST_WITH_ALLOWANCE ? NORMAL : SMALL;
  const pair = (basic: number, share: Share) => {
    const hi = toMm(len(basic)) - under;
    return { lo: micron(hi - tolerance(thread, share)), hi: micron(hi) };
  };
  const minor = pair(thread.basic.minor, row.minor);
  return {
    ...frame(thread, cls, 'outside'),
    major: pair(thread.basic.major, row.major),
    pitchDiameter: pair(thread.basic.pitchDiameter, row.pitch),
    minor,
    root: minor.lo,
  };
}

function nut(thread: ThreadRecord, cls: string): ThreadLimits | undefined {
  if (cls !== 'normal') return undefined;
  const pair = (basic: number, share: Share) => ({ lo: len(basic), hi: micron(toMm(len(basic)) + tolerance(thread, share)) });
  const pitchDiameter = pair(thread.basic.pitchDiameter, NUT.pitch);
  const top = len(thread.basic.major + pitchDiameter.hi - pitchDiameter.lo);
  return {
    ...frame(thread, cls, 'inside'),
    major: { lo: thread.basic.major, hi: top },
    majorOpen: true,
    pitchDiameter,
    minor: pair(thread.basic.minor, NUT.minor),
    root: top,
  };
}

function tolerance({ pitch }: ThreadRecord, [share, rest]: Share): number {
  return share * toMm(pitch) + rest;
}

function frame(
  thread: ThreadRecord,
  cls: string,
  side: ThreadLimits['side'],
): Omit<ThreadLimits, 'major' | 'pitchDiameter' | 'minor' | 'root'> {
  const { name, nominal, pitch } = thread;
  return {
    ...{ name, cls, side, nominal, pitch, hand: 'right', flankAngle: BA_FORM.flankAngle },
    ...{ listed: 'standard', source: cite('bs-93'), standing: 'standard' },
  };
}
