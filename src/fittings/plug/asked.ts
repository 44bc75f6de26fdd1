/** What a person may ask of a plug, or of the parts for the day of the test: the keys of `fitting: plug`. */
import * as z from 'zod';
import { choice, count, length, line, madeOnce, present, record } from '../../base/asking.ts';
import type { Len } from '../../base/units.ts';
import { bounds } from '../../handbook/reading.ts';
import { thread } from '../../handbook/thread-name.ts';

/** A plug closes a threaded hole; a blank nipple closes a coupling, held by its union nut; a pump adaptor leads the test pump into one. */
export const CLOSES = ['hole', 'coupling', 'pump'] as const;
export type Closes = (typeof CLOSES)[number];
const USUAL = { material: 'PB102', quantity: 1 } as const;

export type PlugAsked = {
  readonly title: string;
  readonly closes: Closes;
  /** Of the hole, or of the coupling. */
  readonly thread: string;
  /** Pipe whose union nut holds a blank nipple or an adaptor. */
  readonly pipe?: { readonly outside: Len; readonly wall: Len };
  /** Thread on which the test pump's own union goes. */
  readonly pump?: string;
  /** How far a plug screws in, relief and all. */
  readonly screwed?: Len;
  readonly bore?: Len;
  readonly material: string;
  readonly quantity: number;
};

export const plugSchema = madeOnce(() =>
  record({
    fitting: z.literal('plug'),
    title: line(),
    closes: choice(CLOSES),
    thread: thread(),
    pipe: record({ outside: length(bounds('pipe.outside')), wall: length(bounds('pipe.wall')) }).optional(),
    pump: thread().optional(),
    screwed: length(bounds('part.length')).optional(),
    bore: length(bounds('hole')).optional(),
    material: line().optional(),
    quantity: count(bounds('part.quantity')).optional(),
  }).transform(
    ({ title, closes, thread: named, pipe, pump, screwed, bore, material, quantity }): PlugAsked => ({
      title,
      closes,
      thread: named,
      material: material ?? USUAL.material,
      quantity: quantity ?? USUAL.quantity,
      ...present({ pipe, pump, screwed, bore }),
    }),
  ),
);
