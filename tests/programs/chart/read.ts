/**
 * A chart written as cuts and dimensions, from JSON. The form is told in docs/method.md. Sizes become whole units on the way in: tenths
 * of a micrometre, or millionths of an inch.
 */
import { type Len, len, roundHalfEven } from '../../../src/base/units.ts';
import type { Pair } from '../../../src/geometry/chain.ts';

/** `limits` absent: to be found, from the dimensions that hang on it. */
export type WrittenCut = {
  readonly name: string;
  readonly makes: string;
  readonly from: string;
  readonly toward: 1 | -1;
  readonly limits?: Pair;
};
/** `hi` absent: it only must not be less (stock to remove). `printed`: what the source says it comes to. */
export type WrittenDimension = {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly asks?: { readonly lo?: Len; readonly hi?: Len };
  readonly printed?: Pair;
  /** Half of the band that the source prints for the statistical figure, and its last digit. */
  readonly statistical?: { readonly half: number; readonly digit: number };
};
export type WrittenChart = {
  readonly title: string;
  readonly source: string;
  readonly unit: 'mm' | 'in';
  readonly cuts: readonly WrittenCut[];
  readonly dimensions: readonly WrittenDimension[];
};

/** Whole units in a unit of the file: nothing is converted, so no figure of a chart in inches is rounded. */
export const PER: Readonly<Record<WrittenChart['unit'], number>> = { mm: 10_000, in: 1_000_000 };

/** Throws Error, with the place, when the text is no such chart or a size is finer than a whole unit. */
export function readChart(text: string): WrittenChart {
  const top = record(JSON.parse(text), 'the file');
  const unit = top.unit ?? 'mm';
  if (unit !== 'mm' && unit !== 'in') throw new Error("unit: 'mm' or 'in'");
  return {
    ...{ title: word(top.title, 'title'), source: word(top.source, 'source'), unit },
    cuts: list(top.cuts, 'cuts').map((one, i) => cutOf(one, `cuts[${i}]`, unit)),
    dimensions: list(top.dimensions, 'dimensions').map((one, i) => dimensionOf(one, `dimensions[${i}]`, unit)),
  };
}

function cutOf(value: unknown, at: string, unit: WrittenChart['unit']): WrittenCut {
  const one = record(value, at);
  const toward = one.toward;
  if (toward !== 'left' && toward !== 'right') throw new Error(`${at}.toward: 'left' or 'right'`);
  const name = word(one.name, `${at}.name`);
  const plain = {
    name,
    makes: word(one.makes, `${at}.makes`),
    from: word(one.from, `${at}.from`),
    toward: toward === 'right' ? 1 : -1,
  } as const;
  return one.limits === undefined ? plain : { ...plain, limits: pairOf(one.limits, `${at}.limits`, unit) };
}

function dimensionOf(value: unknown, at: string, unit: WrittenChart['unit']): WrittenDimension {
  const one = record(value, at);
  const asks = one.asks === undefined ? undefined : record(one.asks, `${at}.asks`);
  return {
    ...{ name: word(one.name, `${at}.name`), from: word(one.from, `${at}.from`), to: word(one.to, `${at}.to`) },
    ...(asks ? { asks: boundsOf(asks, `${at}.asks`, unit) } : {}),
    ...(one.printed === undefined ? {} : { printed: pairOf(one.printed, `${at}.printed`, unit) }),
    ...(one.statistical === undefined ? {} : { statistical: figureOf(one.statistical, `${at}.statistical`) }),
  };
}

function boundsOf(asks: Readonly<Record<string, unknown>>, at: string, unit: WrittenChart['unit']): { lo?: Len; hi?: Len } {
  return {
    ...(asks.lo === undefined ? {} : { lo: size(asks.lo, `${at}.lo`, unit) }),
    ...(asks.hi === undefined ? {} : { hi: size(asks.hi, `${at}.hi`, unit) }),
  };
}

function pairOf(value: unknown, at: string, unit: WrittenChart['unit']): Pair {
  const [lo, hi, ...more] = list(value, at);
  const pair = { lo: size(lo, at, unit), hi: size(hi, at, unit) };
  if (more.length > 0 || pair.lo > pair.hi) throw new Error(`${at}: the least and the greatest, in that order`);
  return pair;
}

/** A figure as printed, in text, so that its last digit is known. */
function figureOf(value: unknown, at: string): { readonly half: number; readonly digit: number } {
  const text = word(value, at);
  if (!/^\d*\.\d+$/.test(text)) throw new Error(`${at}: a decimal figure in quotation marks, as printed`);
  return { half: Number(text), digit: 10 ** -(text.split('.')[1] ?? '').length };
}

function size(value: unknown, at: string, unit: WrittenChart['unit']): Len {
  if (typeof value !== 'number' || !Number.isFinite(value)) throw new Error(`${at}: a number`);
  const units = value * PER[unit];
  if (Math.abs(units - Math.round(units)) > 1e-3) throw new Error(`${at}: ${value} is finer than ${1 / PER[unit]} ${unit}`);
  return len(roundHalfEven(units));
}

function record(value: unknown, at: string): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new Error(`${at}: a record`);
  return value as Readonly<Record<string, unknown>>;
}
function list(value: unknown, at: string): readonly unknown[] {
  if (!Array.isArray(value)) throw new Error(`${at}: a list`);
  return value;
}
function word(value: unknown, at: string): string {
  if (typeof value !== 'string' || value === '') throw new Error(`${at}: a text`);
  return value;
}
