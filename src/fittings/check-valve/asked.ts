/** What a person may ask of a ball check valve: the keys of `fitting: check-valve`. */
import * as z from 'zod';
import { choice, length, line, madeOnce, present, quantity, record } from '../../base/asking.ts';
import type { Len } from '../../base/units.ts';
import { bounds } from '../../handbook/reading.ts';
import { thread } from '../../handbook/thread-name.ts';
import { END_FORMS, type EndForm } from '../ends.ts';

export const SERVES = ['feed-pump', 'hand-pump', 'injector', 'by-pass', 'gravity'] as const;
export type Serves = (typeof SERVES)[number];
/** A plunger pump delivers in strokes: its size and speed decide the lift of the ball. */
const PUMPS: readonly Serves[] = ['feed-pump', 'hand-pump'];
export const isPumped = (serves: Serves): boolean => PUMPS.includes(serves);
/** The ball falls shut: how the valve stands is asked only to be told that there is no other way. */
export const MOUNTINGS = ['upright', 'horizontal', 'inverted'] as const;
export type Mounting = (typeof MOUNTINGS)[number];
/** Where the outlet is: a branch at the side, or in line above, through the cap. */
export const PATTERNS = ['angle', 'straight'] as const;
export type Pattern = (typeof PATTERNS)[number];
const USUAL_MATERIAL = 'PB102';

export type CheckValveAsked = {
  readonly title: string;
  readonly duty: {
    readonly serves: Serves;
    /** bar gauge */
    readonly pressure: number;
    /** `speed`: strokes a minute; always there for a feed pump or a hand pump */
    /** ml/min, delivered */
    readonly flow?: number;
    /** kg/h that the boiler steams, or cm2 of heating surface that it steams by */
    readonly evaporation?: number;
    readonly surface?: number;
    readonly pump?: { readonly bore: Len; readonly stroke: Len; readonly speed: number };
  };
  readonly mounting?: Mounting;
  /** Angle where nothing is said. */
  readonly pattern?: Pattern;
  readonly pipe: { readonly outside: Len; readonly wall: Len };
  /** Unions where nothing is said. */
  readonly ends?: { readonly inlet?: EndForm; readonly outlet?: EndForm };
  readonly ball?: Len;
  /** of the seat */
  readonly bore?: Len;
  /** of the seat's bore that is finished to size; the whole of it where there is no need for less */
  readonly land?: Len;
  readonly lift?: Len;
  readonly material: string;
  /** 'M12x1' with a pitch, 'M12' for the coarse one */
  readonly threads?: { readonly seat?: string; readonly cap?: string; readonly coupling?: string };
};

const pump = () =>
  record({
    bore: length(bounds('pump.bore')),
    stroke: length(bounds('pump.stroke')),
    speed: quantity('speed', bounds('pump.speed')),
  });
const duty = () =>
  record({
    serves: choice(SERVES),
    pressure: quantity('pressure', bounds('duty.pressure')),
    flow: quantity('flow', bounds('duty.flow')).optional(),
    evaporation: quantity('steaming', bounds('duty.evaporation')).optional(),
    'heating-surface': quantity('area', bounds('duty.surface')).optional(),
    pump: pump().optional(),
  }).refine(hasItsPump, {
    path: ['pump'],
    params: { problem: 'read.pump-needed', grounds: {} },
    when: () => true,
  });

/** Asked even where another key of the duty is wrong, so that all is said at once; so nothing is taken for granted of the value. */
function hasItsPump(value: unknown): boolean {
  if (typeof value !== 'object' || value === null || !('serves' in value)) return true;
  return !PUMPS.some((serves) => serves === value.serves) || Object.hasOwn(value, 'pump');
}

export const checkValveSchema = madeOnce(() =>
  record({
    fitting: z.literal('check-valve'),
    title: line(),
    duty: duty(),
    mounting: choice(MOUNTINGS).optional(),
    pattern: choice(PATTERNS).optional(),
    pipe: record({ outside: length(bounds('pipe.outside')), wall: length(bounds('pipe.wall')) }),
    ends: record({ inlet: choice(END_FORMS).optional(), outlet: choice(END_FORMS).optional() }).optional(),
    ball: length(bounds('ball')).optional(),
    bore: length(bounds('seat-bore')).optional(),
    land: length(bounds('part.length')).optional(),
    lift: length(bounds('lift')).optional(),
    material: line().optional(),
    threads: record({ seat: thread().optional(), cap: thread().optional(), coupling: thread().optional() }).optional(),
  }).transform(
    ({ title, duty: wanted, mounting, pattern, pipe, ends, ball, bore, land, lift, material, threads }): CheckValveAsked => ({
      title,
      duty: dutyOf(wanted),
      pipe,
      material: material ?? USUAL_MATERIAL,
      ...present({ mounting, pattern, ends: ends && present(ends), ball, bore, land, lift, threads: threads && present(threads) }),
    }),
  ),
);

function dutyOf({ serves, pressure, 'heating-surface': surface, ...rest }: z.output<ReturnType<typeof duty>>): CheckValveAsked['duty'] {
  return { serves, pressure, ...present({ ...rest, surface }) };
}
