/**
 * Limits of an ISO metric thread by name and class. Tables of ISO 965-1 where they hold the pair of diameter and pitch; elsewhere the
 * standard's formulas at the diameter itself, which the result's standing says. Nothing is interpolated between rows.
 */
import { type Len, len, mm, roundHalfEven } from '../base/units.ts';
import type { Standing } from './fact.ts';
import { metricSizes } from './iso261-sizes.ts';
import { type CrestRow, crests, type DeviationRow, deviations, pitches } from './iso965-tables.ts';
import { cite } from './sources.ts';

export type Pair = { readonly lo: Len; readonly hi: Len };
/**
 * `major.hi` of an inside thread: the standard sets no greatest; the figure here is the greatest that a tool of the basic profile
 * leaves (D2 max + 0.793857 P), and `majorOpen` is there to say so.
 */
export type ThreadLimits = {
  readonly name: string;
  readonly cls: string;
  readonly side: 'outside' | 'inside';
  readonly major: Pair;
  readonly majorOpen?: true;
  readonly pitchDiameter: Pair;
  readonly minor: Pair;
  /** What a relief must clear: outside the least root (round, d2 min - 0.616025 P), inside the greatest (D2 max + 0.793857 P). */
  readonly root: Len;
  readonly nominal: Len;
  readonly pitch: Len;
  readonly hand: 'right' | 'left';
  /** degrees, included */
  readonly flankAngle: number;
  /** Where the pair of diameter and pitch is listed. */
  readonly listed: 'ISO 261' | 'standard' | 'trade' | 'nowhere';
  readonly source: string;
  readonly standing: Standing;
};

/** Diameters of the basic profile. */
export type BasicThread = { readonly major: Len; readonly pitchDiameter: Len; readonly minor: Len; readonly root: Len };

export const FLANK_ANGLE = 60;

/**
 * `name`: 'M10', 'M10x1', 'M10×1', with ' LH' for left hand, and perhaps the class behind it ('M10x1-6H'); `cls`: '6g' (given none and
 * none in the name), '6H', '4h6h' ... Nothing when there is no such thread between M1.6 and M30, or no such class of it.
 */
export function metricThread(name: string, cls?: string): ThreadLimits | undefined {
  const asked = readName(name);
  if (!asked) return undefined;
  const as = cls ?? asked.cls ?? '6g';
  const split = /^(\d)([a-hGH])(?:(\d)([a-hGH]))?$/.exec(as);
  if (!split) return undefined;
  const [, grade = '', position = '', crestGrade = grade, crestPosition = position] = split;
  const wanted: Wanted = { ...asked, as, grade, position, crestGrade, crestPosition };
  if (isInside(position) !== isInside(crestPosition)) return undefined;
  return isInside(position) ? insideThread(wanted) : outsideThread(wanted);
}

/** The name as this handbook writes it: 'M10' for a coarse pitch, else 'M10x1'; nothing when there is no such thread. */
export function metricName(name: string): string | undefined {
  return readName(name)?.name;
}

/** Every listed name, coarse and fine, in order of diameter and falling pitch. */
export const metricNames: readonly string[] = metricSizes.flatMap(({ diameter, coarse, fine, trade }) => [
  ...(coarse === undefined ? [] : [`M${diameter}`]),
  ...[...fine, ...trade].map((pitch) => `M${diameter}x${pitch}`),
]);

/** Diameters of the basic profile, ISO 68-1, to the nearest micrometre; `root` is that of a rounded outside thread. mm. */
export function basicThread(diameter: number, pitch: number): BasicThread {
  const h = height(pitch);
  return {
    major: um(diameter),
    pitchDiameter: um(diameter - (3 / 4) * h),
    minor: um(diameter - (5 / 4) * h),
    root: um(diameter - (17 / 12) * h),
  };
}

type Asked = {
  readonly name: string;
  readonly diameter: number;
  readonly pitch: number;
  readonly listed: ThreadLimits['listed'];
  readonly hand: 'right' | 'left';
  readonly cls?: string;
};
type Wanted = Asked & {
  readonly as: string;
  readonly grade: string;
  readonly position: string;
  readonly crestGrade: string;
  readonly crestPosition: string;
};

/** Multiples of Td2(6) and the factors of the sharp profile, as the standard gives them. */
const OUTSIDE_FACTOR: Readonly<Record<string, number>> = { 3: 0.5, 4: 0.63, 5: 0.8, 6: 1, 7: 1.25, 8: 1.6, 9: 2 };
const INSIDE_FACTOR: Readonly<Record<string, number>> = { 4: 0.85, 5: 1.06, 6: 1.32, 7: 1.7, 8: 2.12 };
const MINOR_FLAT = 0.433013;
const ROOT_ROUND = 0.616025;
const ROOT_INSIDE = 0.793857;
/** One step of R40 in ten; the series is this with the standard's own rounding. */
const R40: readonly number[] = [
  100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315, 335, 355, 375, 400, 425, 450,
  475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850, 900, 950, 1000,
];
const LEAST_DIAMETER = 1.6;
const GREATEST_DIAMETER = 30;

function readName(name: string): Asked | undefined {
  const read =
    /^\s*M\s*(\d+(?:\.\d+)?)(?:\s*[x×*]\s*(\d+(?:\.\d+)?))?(?:\s*-?\s*(LH))?(?:\s*-\s*(\d[a-hGH](?:\d[a-hGH])?))?(?:\s*-?\s*(LH))?\s*$/i.exec(
      name,
    );
  if (!read) return undefined;
  const [, written = '', writtenPitch, left, cls, leftAfter] = read;
  const diameter = Number(written);
  const size = metricSizes.find((s) => s.diameter === diameter);
  const pitch = writtenPitch === undefined ? size?.coarse : Number(writtenPitch);
  if (pitch === undefined || !isKnown(diameter, pitch)) return undefined;
  const hand = left === undefined && leftAfter === undefined ? 'right' : 'left';
  const plain = pitch === size?.coarse ? `M${diameter}` : `M${diameter}x${pitch}`;
  const listed = pitch === size?.coarse || size?.fine.includes(pitch) ? 'ISO 261' : size?.trade.includes(pitch) ? 'trade' : 'nowhere';
  return { name: hand === 'left' ? `${plain} LH` : plain, diameter, pitch, listed, hand, ...(cls === undefined ? {} : { cls }) };
}

/** A pitch of the standard's series, and not so coarse that the core is gone. */
function isKnown(diameter: number, pitch: number): boolean {
  return (
    diameter >= LEAST_DIAMETER && diameter <= GREATEST_DIAMETER && pitch * 4 <= diameter && deviations.some((row) => row.pitch === pitch)
  );
}

function outsideThread(w: Wanted): ThreadLimits | undefined {
  const es = deviation(w.pitch, w.position);
  const crestEs = deviation(w.pitch, w.crestPosition);
  const crest = crestOf(w.pitch)?.outside[w.crestGrade];
  const tolerance = pitchTolerance(w, 'outside');
  if (!isFigure(es) || !isFigure(crestEs) || !isFigure(crest) || !tolerance) return undefined;
  const { diameter, pitch } = w;
  const top = diameter - (3 / 4) * height(pitch) + es;
  const bottom = top - tolerance.mm;
  const verified = w.crestGrade === '6' && !/[ef]/.test(w.position + w.crestPosition);
  return {
    ...frame(w, 'outside', verified, tolerance.byFormula),
    major: { lo: um(diameter + crestEs - crest / 1000), hi: um(diameter + crestEs) },
    pitchDiameter: { lo: um(bottom), hi: um(top) },
    minor: { lo: um(bottom - ROOT_ROUND * pitch), hi: um(top - MINOR_FLAT * pitch) },
    root: um(bottom - ROOT_ROUND * pitch),
  };
}

function insideThread(w: Wanted): ThreadLimits | undefined {
  const ei = deviation(w.pitch, w.position);
  const crestEi = deviation(w.pitch, w.crestPosition);
  const crest = crestOf(w.pitch)?.inside[w.crestGrade];
  const tolerance = pitchTolerance(w, 'inside');
  if (!isFigure(ei) || !isFigure(crestEi) || !isFigure(crest) || !tolerance) return undefined;
  const { diameter, pitch } = w;
  const h = height(pitch);
  const bottom = diameter - (3 / 4) * h + ei;
  const top = bottom + tolerance.mm;
  const core = diameter - (5 / 4) * h + crestEi;
  return {
    ...frame(w, 'inside', w.grade === '6' && w.crestGrade === '6', tolerance.byFormula),
    major: { lo: um(diameter + ei), hi: um(top + ROOT_INSIDE * pitch) },
    majorOpen: true,
    pitchDiameter: { lo: um(bottom), hi: um(top) },
    minor: { lo: um(core), hi: um(core + crest / 1000) },
    root: um(top + ROOT_INSIDE * pitch),
  };
}

function frame(
  w: Wanted,
  side: ThreadLimits['side'],
  verified: boolean,
  byFormula: boolean,
): Omit<ThreadLimits, 'major' | 'pitchDiameter' | 'minor' | 'root'> {
  const { name, hand, listed } = w;
  const table = verified ? cite('iso-965-1') : cite('iso-965-1-rest');
  return {
    name,
    cls: w.as,
    side,
    nominal: mm(w.diameter),
    pitch: mm(w.pitch),
    hand,
    flankAngle: FLANK_ANGLE,
    listed,
    source: byFormula ? cite('iso-965-1-formulas') : table,
    standing: byFormula ? 'derived' : verified ? 'standard' : 'from memory',
  };
}

/** Signed, in mm. */
function deviation(pitch: number, position: string): number | undefined {
  if (position === 'h' || position === 'H') return 0;
  const row: DeviationRow | undefined = deviations.find((r) => r.pitch === pitch);
  const letter = position as 'e' | 'f' | 'g' | 'G';
  const value = row?.[letter];
  return value === undefined ? undefined : value / 1000;
}

function crestOf(pitch: number): CrestRow | undefined {
  return crests.find((row) => row.pitch === pitch);
}

/** From the table where its range of diameters holds the pitch; a blank of the table is no such grade. Else by formula at `diameter`. */
function pitchTolerance(w: Wanted, side: ThreadLimits['side']): { readonly mm: number; readonly byFormula: boolean } | undefined {
  const row = pitches.find((r) => w.diameter > r.over && w.diameter <= r.to && r.pitch === w.pitch);
  if (row) {
    const value = row[side][w.grade];
    return isFigure(value) ? { mm: value / 1000, byFormula: false } : undefined;
  }
  const factor = (side === 'outside' ? OUTSIDE_FACTOR : INSIDE_FACTOR)[w.grade];
  return factor === undefined ? undefined : { mm: preferred(factor * 90 * w.pitch ** 0.4 * w.diameter ** 0.1) / 1000, byFormula: true };
}

/** The nearest of the R40 series. */
function preferred(value: number): number {
  const decade = 10 ** Math.floor(Math.log10(value) - 2);
  const near = [...R40].sort((a, b) => Math.abs(a * decade - value) - Math.abs(b * decade - value) || a - b)[0] ?? value;
  return near * decade;
}

function isInside(position: string): boolean {
  return position === 'G' || position === 'H';
}

function isFigure(value: number | undefined): value is number {
  return value !== undefined && !Number.isNaN(value);
}

/** Height of the sharp triangle. */
function height(pitch: number): number {
  return (Math.sqrt(3) / 2) * pitch;
}

/** Limits are whole micrometres. */
function um(millimetres: number): Len {
  return len(roundHalfEven(millimetres * 1000) * 10);
}
