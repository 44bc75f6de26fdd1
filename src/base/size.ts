/**
 * Sizes as they stand on a drawing: `12`, `1/2 in`, `12 f7`, `11.00 +0 -0.05`, `8 ±0.1`, `M10x1-6g`. What the letters of a fit or the name
 * of a thread come to is asked of the handbook, by others.
 */
import * as z from 'zod';
import type { Bounds } from './asking.ts';
import { type Problem, readQuantity } from './quantity.ts';
import { add, type Len, len, toMm } from './units.ts';
import { shown } from './written.ts';

export type Size = {
  readonly nominal: Len;
  /** Signed, from the nominal size; both or neither. */
  readonly upper?: Len;
  readonly lower?: Len;
  /** 'f7' of a plain size, '6g' of a thread. */
  readonly fit?: string;
  /** 'M10x1', 'M10x1 LH' for left hand: the size is a thread's, and `nominal` its diameter. */
  readonly thread?: string;
  /** As the person wrote it. */
  readonly text: string;
};

/** A size in a file; in millimetres where no unit stands. `bounds` are of the nominal size. */
export const size = (bounds: Bounds = {}) => sizeBy((value) => within(bounds, value, readSize(value)));

/** The same with a reader of one's own. */
export const sizeBy = (read: (value: unknown) => Size | Problem) =>
  z
    .any()
    .meta({ type: ['number', 'string'] })
    .transform((value: unknown, context): Size => {
      const got = value === undefined ? { problem: 'read.missing-key', grounds: {} } : read(value);
      if (!('problem' in got)) return got;
      context.addIssue({ code: 'custom', params: got, input: value });
      return z.NEVER;
    });

/** Never throws. Deviations without a unit have the nominal size's own. */
export function readSize(value: unknown): Size | Problem {
  if (typeof value === 'number') return plain(value, String(value));
  if (typeof value !== 'string') return { problem: 'read.wrong-type', grounds: { asked: 'size' } };
  const text = shown(value);
  const line = text.replace(/[−–]/g, '-').replace(/\+ ?\/ ?-|\+-/g, '±');
  const thread = THREAD.exec(line);
  if (thread) return threaded(thread, text);
  const both = /^(.*?) ?± ?(.+)$/.exec(line);
  if (both) return eitherWay(both[1] ?? '', both[2] ?? '', text);
  const pair = PAIR.exec(line);
  if (pair) return stated(pair[1] ?? '', pair[2] ?? '', pair[3] ?? '', text);
  const one = /^(\S.*?) ([+-] ?\.?\d\S*(?: ?(?:mm|in|thou))?)$/.exec(line);
  if (one) return { problem: 'read.size-one-limit', grounds: { word: text, nominal: one[1] ?? '', limit: one[2] ?? '' } };
  const fit = /^(.*?\d.*?) ?\b([a-z]{1,2}) ?(\d{1,2})$/i.exec(spaced(line));
  if (fit) return fitted(fit[1] ?? '', `${fit[2]}${fit[3]}`, text);
  return plain(line, text);
}

const THREAD = /^m ?\d/i;
/** Two signed figures at the end; a nought needs no sign. A slash or a comma may stand between them. */
const PAIR =
  /^(\S.*?) ((?:[+-] ?|(?=0(?:\.0+)?(?: |$)))\.?\d\S*?(?: ?(?:mm|in|thou))?)(?: ?[/,] ?| )((?:[+-] ?|(?=0(?:\.0+)?(?: |$)))\.?\d\S*(?: ?(?:mm|in|thou))?)$/i;

/** '12f7' is '12 f7'; units keep their letters. */
const spaced = (line: string): string => line.replace(/^([\d./]+)([a-z]{1,2}\d{1,2})$/i, '$1 $2');

function plain(value: string | number, text: string): Size | Problem {
  const nominal = readQuantity(value, 'length');
  return typeof nominal === 'number' ? { nominal: len(nominal), text } : notASize(nominal, text);
}

/** What the quantity reader found, told of the whole size; where it saw no number at all, what a size may look like. */
const notASize = (problem: Problem, text: string): Problem =>
  problem.problem === 'read.not-a-quantity' ? { problem: 'read.not-a-size', grounds: { word: text } } : problem;

function threaded(match: RegExpExecArray, text: string): Size | Problem {
  const whole = /^m ?(\d{1,3}(?:\.\d{1,3})?)((?: ?[x×*] ?\d{1,2}(?:\.\d{1,3})?)?)(?: ?- ?(\d{1,2}[a-z]{1,2})|[ -](LH))*$/i.exec(
    match.input,
  );
  const nominal = whole ? readQuantity(Number(whole[1]), 'length') : undefined;
  if (!whole || typeof nominal !== 'number') return { problem: 'read.not-a-thread', grounds: { word: text, near: '' } };
  const thread = `M${whole[1]}${(whole[2] ?? '').replace(/[×*X]/g, 'x').replaceAll(' ', '')}`;
  return { nominal: len(nominal), thread: whole[4] ? `${thread} LH` : thread, text, ...(whole[3] ? { fit: whole[3] } : {}) };
}

function fitted(nominal: string, fit: string, text: string): Size | Problem {
  const size = plain(nominal, text);
  return 'problem' in size ? size : { ...size, fit };
}

function eitherWay(nominal: string, by: string, text: string): Size | Problem {
  const size = plain(nominal, text);
  if ('problem' in size) return size;
  const half = deviation(by, nominal);
  if (typeof half !== 'number') return notASize(half, text);
  if (half <= 0) return { problem: 'read.size-no-band', grounds: { word: text } };
  return { ...size, upper: half, lower: len(-half) };
}

function stated(nominal: string, first: string, second: string, text: string): Size | Problem {
  const size = plain(nominal, text);
  if ('problem' in size) return size;
  const upper = deviation(first, nominal);
  const lower = deviation(second, nominal);
  if (typeof upper !== 'number') return notASize(upper, text);
  if (typeof lower !== 'number') return notASize(lower, text);
  if (upper === lower) return { problem: 'read.size-no-band', grounds: { word: text } };
  if (upper < lower)
    return {
      problem: 'read.size-limits-backwards',
      grounds: { word: text, upper: first.trim(), lower: second.trim(), better: `${nominal.trim()} ${second.trim()} ${first.trim()}` },
    };
  return { ...size, upper, lower };
}

/** `of`: the nominal size as written, whose unit a bare figure takes. */
function deviation(written: string, of: string): Len | Problem {
  const word = written.replace(/^([+-]) /, '$1').trim();
  const unit = /[a-z"]+$/i.exec(of.trim())?.[0] ?? '';
  const read = readQuantity(/[a-z"]$/i.test(word) || unit === '' ? word : `${word} ${unit}`, 'length');
  return typeof read === 'number' ? len(read) : read;
}

function within({ least, most }: Bounds, value: unknown, size: Size | Problem): Size | Problem {
  if ('problem' in size) return size;
  const grounds = { asked: 'size', word: shown(String(value)) };
  if (least !== undefined && toMm(size.nominal) < least)
    return { problem: 'read.too-small', grounds: { ...grounds, least: `${least} mm` } };
  if (most !== undefined && toMm(size.nominal) > most) return { problem: 'read.too-large', grounds: { ...grounds, most: `${most} mm` } };
  return size;
}

/** The limits that were stated, if any were. */
export function statedLimits(size: Size): { readonly lo: Len; readonly hi: Len } | undefined {
  if (size.upper === undefined || size.lower === undefined) return undefined;
  return { lo: add(size.nominal, size.lower), hi: add(size.nominal, size.upper) };
}
