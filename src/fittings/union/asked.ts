/** What a person may ask of a union: the keys of `fitting: union`. */
import * as z from 'zod';
import { count, length, line, madeOnce, present, record } from '../../base/asking.ts';
import type { Len } from '../../base/units.ts';
import { bounds } from '../../handbook/reading.ts';
import { thread } from '../../handbook/thread-name.ts';

const USUAL = { material: 'PB102', quantity: 1 } as const;

export type UnionAsked = {
  readonly title: string;
  readonly pipe: { readonly outside: Len; readonly wall: Len };
  /** of the coupling and its nut */
  readonly thread?: string;
  /** What the coupling end is silver-soldered into: the wall that its spigot goes through, and the hole in it. Absent: nut and nipple alone. */
  readonly into?: { readonly wall: Len; readonly hole?: Len };
  /** of the coupling end; the pipe's when absent */
  readonly bore?: Len;
  readonly material: string;
  readonly quantity: number;
};

export const unionSchema = madeOnce(() =>
  record({
    fitting: z.literal('union'),
    title: line(),
    pipe: record({ outside: length(bounds('pipe.outside')), wall: length(bounds('pipe.wall')) }),
    thread: thread().optional(),
    into: record({ wall: length(bounds('part.length')), hole: length(bounds('hole')).optional() }).optional(),
    bore: length(bounds('hole')).optional(),
    material: line().optional(),
    quantity: count(bounds('part.quantity')).optional(),
  }).transform(
    ({ title, pipe, thread: named, into, bore, material, quantity }): UnionAsked => ({
      title,
      pipe,
      material: material ?? USUAL.material,
      quantity: quantity ?? USUAL.quantity,
      ...present({ thread: named, bore, into: into && { wall: into.wall, ...present({ hole: into.hole }) } }),
    }),
  ),
);
