/** Millimetres, as they are usually written; and which manner is whose. */
import { len, UNITS_PER_MM } from '../../base/units.ts';
import { depth, diameter, figureWithUnit, limits, passes, range, short, size } from './format.ts';
import { gaugeName, INCH, inchPitch } from './inch.ts';
import type { Manner, Units } from './manner.ts';

export const mannerOf = (units: Units): Manner => (units === 'mm' ? METRIC : INCH);

const TENTH = UNITS_PER_MM / 10;

const tenths = (n: number): string => short(len(Math.max(0, n) * TENTH));

/** Drills and bar that are no millimetres go by their own name here too, their size beside it. */
const METRIC: Manner = {
  units: 'mm',
  target: (asked) => size(asked.target),
  ...{ limits, size, diameter, short, range, depth, passes },
  nominal: size,
  ...{ least: short, most: short, atLeast: size, atMost: size },
  named: (of) => (gaugeName(of) === undefined ? short(of) : `${gaugeName(of)} (${short(of)})`),
  stamp: gaugeName,
  barAcross: size,
  bar: (length, side) => tenths(side === 'over' ? Math.ceil(length / TENTH) : Math.floor(length / TENTH)),
  barLeft: (bar, takes) => tenths(takes.reduce((left, take) => left - Math.ceil(take / TENTH), Math.floor(bar / TENTH))),
  about: short,
  feed: String,
  pitch: (pitch) => inchPitch(pitch) ?? String(pitch),
  derived: figureWithUnit,
};
