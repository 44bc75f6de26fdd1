/** The few kinds of thing that a file is asked for, as zod schemas. Their problems carry a code and grounds; their words are elsewhere. */
import * as z from 'zod';
import { nearest } from './nearest.ts';
import { type Problem, type QuantityKind, readQuantity } from './quantity.ts';
import { type Len, len, mm, toMm } from './units.ts';
import { looksBinary, notPrinted, shown } from './written.ts';

/** Millimetres, bar, /min, degrees, watts, °C or a count, by the kind that is asked. Both ends are allowed themselves. */
export type Bounds = { readonly least?: number; readonly most?: number };

/** As a JSON Schema has it. */
type Hint = { readonly type: string | readonly string[]; readonly enum?: readonly unknown[]; readonly minimum?: number };

const OWN_UNIT: Readonly<Record<QuantityKind, string>> = {
  length: ' mm',
  pressure: ' bar',
  speed: ' /min',
  angle: ' deg',
  power: ' W',
  temperature: ' °C',
  time: ' min',
  flow: ' ml/min',
  steaming: ' kg/h',
  area: ' cm2',
  count: '',
};
/** A title has to stay on one line of a page. */
const LONGEST_TEXT = 120;

/** Length in whole units of 0.1 um. `named`: sizes that go by a name of their own, such as those of number drills; asked first. */
export const length = (bounds: Bounds = {}, named: (word: string) => Len | undefined = () => undefined) =>
  ask({ type: ['number', 'string'] }, (value): Len | Problem => {
    const read = (typeof value === 'string' ? named(value) : undefined) ?? quantityOf(value, 'length');
    return typeof read === 'number' ? (outside(toMm(len(read)), 'length', bounds, value) ?? len(read)) : read;
  });

/** A pressure in bar, a speed in turns a minute, an angle in degrees, a power in watts, a temperature in °C, a time in minutes. */
export const quantity = (kind: Exclude<QuantityKind, 'length' | 'count'>, bounds: Bounds = {}) =>
  ask({ type: 'string' }, (value): number | Problem => {
    const read = quantityOf(value, kind);
    return typeof read === 'number' ? (outside(read, kind, bounds, value) ?? read) : read;
  });

/** A whole number without a unit. */
export const count = (bounds: Bounds = {}) =>
  ask({ type: 'integer' }, (value): number | Problem => {
    const read = quantityOf(value, 'count');
    return typeof read === 'number' ? (outside(read, 'count', bounds, value) ?? read) : read;
  });

/** yes or no, true or false. */
export const flag = () =>
  ask({ type: ['boolean', 'string'], enum: [true, false, 'yes', 'no'] }, (value): boolean | Problem => {
    if (typeof value === 'boolean') return value;
    if (value === 'yes' || value === 'no') return value === 'yes';
    return { problem: 'read.not-yes-or-no', grounds: {} };
  });

/** One line of text. */
export const line = () =>
  ask({ type: 'string' }, (value): string | Problem => {
    if (typeof value === 'number') return { problem: 'read.text-unquoted', grounds: { given: 'count' } };
    if (typeof value === 'boolean') return { problem: 'read.text-unquoted', grounds: { given: 'flag' } };
    if (typeof value !== 'string') return { problem: 'read.wrong-type', grounds: { asked: 'text' } };
    const text = value.trim();
    const odd = looksBinary(text);
    if (odd) return { problem: 'read.odd-character', grounds: { character: odd.character } };
    if (text === '') return { problem: 'read.empty-text', grounds: {} };
    if (text.length > LONGEST_TEXT || text.includes('\n')) return { problem: 'read.text-too-long', grounds: { most: LONGEST_TEXT } };
    const character = notPrinted(text);
    if (character !== undefined) return { problem: 'read.odd-character', grounds: { character } };
    return text;
  });

/** One of a few words. */
export const choice = <const W extends string>(words: readonly W[]) =>
  ask({ type: 'string', enum: words }, (value): W | Problem => {
    const found = words.find((w) => w === value);
    return found ?? { problem: 'read.not-one-of', grounds: { near: nearest(shown(String(value)), words) ?? '', words: words.join(', ') } };
  });

/** A record with these keys and no other. */
export const record = z.strictObject;
export const list = <T extends z.ZodType>(item: T) => z.array(item);

/** A schema of one's own: `read` gives the value or the problem; a missing key is dealt with before. */
export function ask<T extends string | number | boolean>(hint: Hint, read: (value: unknown) => T | Problem) {
  return z
    .any()
    .meta(hint as Record<string, unknown>)
    .transform((value: unknown, context): T => {
      const got: T | Problem = value === undefined ? { problem: 'read.missing-key', grounds: {} } : read(value);
      if (typeof got !== 'object') return got;
      context.addIssue({ code: 'custom', params: got, input: value });
      return z.NEVER;
    });
}

/** A schema takes longer to make than a small file to read: each is made when it is first asked for. */
export function madeOnce<S extends z.ZodType>(make: () => S): () => S {
  let made: S | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** A record without its undefined fields, as exactOptionalPropertyTypes wants it. */
export function present<T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}

function quantityOf(value: unknown, kind: QuantityKind): number | Problem {
  if (typeof value === 'number' || typeof value === 'string') return readQuantity(value, kind);
  return { problem: 'read.wrong-type', grounds: { asked: kind } };
}

function outside(value: number, kind: QuantityKind, { least, most }: Bounds, written: unknown): Problem | undefined {
  const limit = (bound: number) => `${bound}${OWN_UNIT[kind]}`;
  const same = kind === 'length' ? toMm(mm(value)) : value;
  const grounds = { asked: kind, word: shown(String(written)) };
  if (least !== undefined && same < least) return { problem: 'read.too-small', grounds: { ...grounds, least: limit(least) } };
  if (most !== undefined && same > most) return { problem: 'read.too-large', grounds: { ...grounds, most: limit(most) } };
  return undefined;
}
