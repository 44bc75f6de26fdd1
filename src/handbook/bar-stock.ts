/**
 * Bar as it is commonly sold, round and hexagon, metric and inch. A stockholder's list is no standard: from memory, and for each user to
 * change; a workshop's own shelf comes first.
 */
import { inch, type Len, len, mm, roundHalfEven } from '../base/units.ts';
import type { Standing } from './fact.ts';
import { cite } from './sources.ts';

export type Section = 'round' | 'hexagon';
export type Bar = {
  readonly section: Section;
  readonly name: string;
  readonly across: Len;
  readonly source: string;
  readonly standing: Standing;
};

/** Smallest bar of the list that is at least this much across (over flats for a hexagon). */
export function barAtLeast(section: Section, across: Len, system: 'metric' | 'inch'): Bar | undefined {
  return (system === 'metric' ? metricBars : inchBars).find((bar) => bar.section === section && bar.across >= across);
}

/** Across corners of a sharp hexagon, 2/√3 of its flats. */
export function hexagonCorners(flats: Len): Len {
  return len(roundHalfEven((2 / Math.sqrt(3)) * flats));
}

/** Largest hexagon inside a round bar: its inverse. */
export function hexagonWithin(corners: Len): Len {
  return len(roundHalfEven((Math.sqrt(3) / 2) * corners));
}

/** Across flats of the largest full-cornered square in a round bar; and its inverse, across corners of a square. */
export function squareWithin(diameter: Len): Len {
  return len(roundHalfEven(diameter / Math.SQRT2));
}
export function squareCorners(flats: Len): Len {
  return len(roundHalfEven(Math.SQRT2 * flats));
}

/** Off each flat of a section of this size across flats, cut on a round bar. */
export function flatDepth(diameter: Len, flats: Len): Len {
  return len(roundHalfEven((diameter - flats) / 2));
}

/** Width of a flat on a round bar, where its corners stay round. 0 where there is no flat. */
export function flatWidth(diameter: Len, flats: Len): Len {
  return flats >= diameter ? len(0) : len(roundHalfEven(Math.sqrt(diameter ** 2 - flats ** 2)));
}

const ROUND_MM: readonly number[] = [2, 2.5, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 18, 20, 22, 24, 25, 28, 30];
const HEXAGON_MM: readonly number[] = [4, 5, 5.5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 19, 20, 22, 24, 27, 30];
/** Sixty-fourths of an inch. */
const ROUND_INCH: readonly number[] = [4, 6, 8, 10, 12, 14, 16, 18, 20, 24, 28, 32, 36, 40, 44, 48, 56, 64, 72, 80];
const HEXAGON_INCH: readonly number[] = [8, 10, 12, 14, 16, 18, 20, 24, 28, 32, 36, 40, 44, 48, 56, 64];
/** Hexagons of BA (BS 57) and Whitworth (BS 1083) nuts, inches across flats. */
const HEXAGON_NUTS: readonly (readonly [name: string, inches: number, source: 'mh31' | 'bar-list'])[] = [
  ['BA 0', 0.413, 'bar-list'],
  ['BA 1', 0.365, 'bar-list'],
  ['BA 2', 0.324, 'bar-list'],
  ['BA 3', 0.282, 'bar-list'],
  ['BA 4', 0.248, 'bar-list'],
  ['BA 5', 0.22, 'bar-list'],
  ['BA 6', 0.193, 'bar-list'],
  ['BA 7', 0.172, 'bar-list'],
  ['BA 8', 0.152, 'bar-list'],
  ['BA 10', 0.117, 'bar-list'],
  ['BSW/BSF 1/4', 0.445, 'mh31'],
  ['BSW/BSF 5/16', 0.525, 'mh31'],
  ['BSW/BSF 3/8', 0.6, 'mh31'],
  ['BSW/BSF 7/16', 0.71, 'mh31'],
  ['BSW/BSF 1/2', 0.82, 'mh31'],
];

export const metricBars: readonly Bar[] = [...ROUND_MM.map((d) => metric('round', d)), ...HEXAGON_MM.map((d) => metric('hexagon', d))];
export const inchBars: readonly Bar[] = [...ROUND_INCH.map((n) => inches('round', n)), ...HEXAGON_INCH.map((n) => inches('hexagon', n))];
export const nutHexagons: readonly Bar[] = HEXAGON_NUTS.map(([name, size, source]) => ({
  section: 'hexagon',
  name,
  across: inch(size),
  source: cite(source),
  standing: source === 'mh31' ? 'standard' : 'from memory',
}));

function metric(section: Section, size: number): Bar {
  return { section, name: `${size} mm`, across: mm(size), source: cite('bar-list'), standing: 'from memory' };
}

function inches(section: Section, n: number): Bar {
  return { section, name: `${n}/64 in`, across: inch(n / 64), source: cite('bar-list'), standing: 'from memory' };
}
