/** Tooling asked for by itself: the keys of `fitting: mandrel`, `fitting: d-bit` and `fitting: gauge-nut`. */
import * as z from 'zod';
import { choice, length, line, madeOnce, present, record } from '../../base/asking.ts';
import type { Len } from '../../base/units.ts';
import { bounds } from '../../handbook/reading.ts';
import { thread } from '../../handbook/thread-name.ts';

export const TAKES = ['outside-thread', 'inside-thread'] as const;
export const ENDS = ['sloped', 'flat'] as const;

export type MandrelAsked = {
  readonly title: string;
  /** of the work */
  readonly thread: string;
  readonly takes: (typeof TAKES)[number];
  /** Length of the work's thread, relief and all. */
  readonly depth: Len;
  /** Diameter of the work where it stands against the mandrel. */
  readonly rim?: Len;
};
export type DBitAsked = {
  readonly title: string;
  readonly diameter: Len;
  /** How deep it is to work. */
  readonly depth: Len;
  readonly end: (typeof ENDS)[number];
};
export type GaugeNutAsked = { readonly title: string; readonly thread: string; readonly length?: Len };

export const mandrelSchema = madeOnce(() =>
  record({
    fitting: z.literal('mandrel'),
    title: line(),
    thread: thread(),
    takes: choice(TAKES),
    depth: length(bounds('part.length')),
    rim: length(bounds('part.diameter')).optional(),
  }).transform(
    ({ title, thread: named, takes, depth, rim }): MandrelAsked => ({ title, thread: named, takes, depth, ...present({ rim }) }),
  ),
);

export const dBitSchema = madeOnce(() =>
  record({
    fitting: z.literal('d-bit'),
    title: line(),
    diameter: length(bounds('hole')),
    depth: length(bounds('part.length')),
    end: choice(ENDS).optional(),
  }).transform(({ title, diameter, depth, end }): DBitAsked => ({ title, diameter, depth, end: end ?? 'sloped' })),
);

export const gaugeNutSchema = madeOnce(() =>
  record({
    fitting: z.literal('gauge-nut'),
    title: line(),
    thread: thread(),
    length: length(bounds('part.length')).optional(),
  }).transform(({ title, thread: named, length: long }): GaugeNutAsked => ({ title, thread: named, ...present({ length: long }) })),
);
