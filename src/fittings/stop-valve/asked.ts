/** What a person may ask of a globe-style stop valve: the keys of `fitting: stop-valve`. */
import * as z from 'zod';
import { choice, length, line, madeOnce, present, quantity, record } from '../../base/asking.ts';
import type { Len } from '../../base/units.ts';
import { bounds } from '../../handbook/reading.ts';
import { thread } from '../../handbook/thread-name.ts';
import { END_FORMS, type EndForm } from '../ends.ts';

/** What the valve stops: it decides the cone's angle where none is asked. */
export const STOPS = ['whistle', 'blower', 'supply', 'blow-down', 'injector-steam', 'feed'] as const;
export type Stops = (typeof STOPS)[number];
export const PATTERNS = ['straight', 'angle'] as const;
export type Pattern = (typeof PATTERNS)[number];
const USUAL = { material: 'PB102', spindle: '316' } as const;

export type StopValveAsked = {
  readonly title: string;
  readonly duty: {
    readonly serves: Stops;
    /** bar gauge */
    readonly pressure: number;
  };
  readonly pattern: Pattern;
  readonly pipe: { readonly outside: Len; readonly wall: Len };
  /** How each end meets its pipe; unions where nothing is said. */
  readonly ends?: { readonly inlet?: EndForm; readonly outlet?: EndForm };
  /** of the seat */
  readonly bore?: Len;
  /** included angle of the plug's cone, degrees */
  readonly cone?: number;
  /** how far the plug lifts, to its back stop */
  readonly lift?: Len;
  readonly stem?: Len;
  readonly packing?: Len;
  readonly wheel?: Len;
  readonly material: string;
  readonly spindleMaterial: string;
  readonly threads?: { readonly bonnet?: string; readonly spindle?: string; readonly gland?: string; readonly coupling?: string };
};

const threads = () =>
  record({
    bonnet: thread().optional(),
    spindle: thread().optional(),
    gland: thread().optional(),
    coupling: thread().optional(),
  });

const written = () =>
  record({
    fitting: z.literal('stop-valve'),
    title: line(),
    duty: record({ serves: choice(STOPS), pressure: quantity('pressure', bounds('duty.pressure')) }),
    pattern: choice(PATTERNS).optional(),
    pipe: record({ outside: length(bounds('pipe.outside')), wall: length(bounds('pipe.wall')) }),
    ends: record({ inlet: choice(END_FORMS).optional(), outlet: choice(END_FORMS).optional() }).optional(),
    bore: length(bounds('seat-bore')).optional(),
    cone: quantity('angle', bounds('cone.angle')).optional(),
    lift: length(bounds('plug-lift')).optional(),
    stem: length(bounds('stem')).optional(),
    packing: length(bounds('packing')).optional(),
    wheel: length(bounds('wheel')).optional(),
    material: line().optional(),
    'spindle-material': line().optional(),
    threads: threads().optional(),
  });

export const stopValveSchema = madeOnce(() =>
  written().transform(
    ({
      title,
      duty,
      pattern,
      pipe,
      ends,
      bore,
      cone,
      lift,
      stem,
      packing,
      wheel,
      material,
      'spindle-material': spindle,
      threads: named,
    }): StopValveAsked => ({
      title,
      duty,
      pattern: pattern ?? 'straight',
      pipe,
      material: material ?? USUAL.material,
      spindleMaterial: spindle ?? USUAL.spindle,
      ...present({ ends: ends && present(ends), bore, cone, lift, stem, packing, wheel, threads: named && present(named) }),
    }),
  ),
);
