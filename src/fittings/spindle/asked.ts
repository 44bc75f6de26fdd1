/** What a person may ask of a spindle by itself, for any valve: the keys of `fitting: spindle`. */
import * as z from 'zod';
import { length, line, madeOnce, present, quantity, record } from '../../base/asking.ts';
import type { Len } from '../../base/units.ts';
import { bounds } from '../../handbook/reading.ts';
import { thread } from '../../handbook/thread-name.ts';

const USUAL_MATERIAL = '316';

export type SpindleAsked = {
  readonly title: string;
  readonly material: string;
  /** Diameter of the rod that it is made from; the smallest of the shelf that cleans up when absent. */
  readonly rod?: Len;
  /** of the seat that it shuts */
  readonly bore: Len;
  /** From the edge of that seat up to the underside of the bonnet, its joint tight. */
  readonly room?: Len;
  readonly cone: { readonly angle?: number; readonly tip?: Len };
  readonly plug: { readonly across?: Len; readonly length?: Len };
  readonly thread: { readonly size?: string; readonly length: Len };
  readonly stem: { readonly across?: Len; readonly length: Len };
  readonly square: { readonly across?: Len; readonly length: Len };
  readonly end: { readonly size?: string; readonly length?: Len };
};

const along = () => length(bounds('part.length'));
const across = () => length(bounds('part.diameter')).optional();

export const spindleSchema = madeOnce(() =>
  record({
    fitting: z.literal('spindle'),
    title: line(),
    material: line().optional(),
    rod: length(bounds('bar.across')).optional(),
    bore: length(bounds('seat-bore')),
    room: length(bounds('part.length')).optional(),
    cone: record({ angle: quantity('angle', bounds('cone.angle')).optional(), tip: across() }).optional(),
    plug: record({ across: across(), length: along().optional() }).optional(),
    thread: record({ size: thread().optional(), length: along() }),
    stem: record({ across: length(bounds('stem')).optional(), length: along() }),
    square: record({ across: across(), length: along() }),
    end: record({ size: thread().optional(), length: along().optional() }).optional(),
  }).transform(
    ({ title, material, rod, bore, room, cone = {}, plug = {}, thread: running, stem, square, end = {} }): SpindleAsked => ({
      title,
      material: material ?? USUAL_MATERIAL,
      bore,
      ...present({ rod, room }),
      cone: present(cone),
      plug: present(plug),
      thread: { length: running.length, ...present({ size: running.size }) },
      stem: { length: stem.length, ...present({ across: stem.across }) },
      square: { length: square.length, ...present({ across: square.across }) },
      end: present(end),
    }),
  ),
);
