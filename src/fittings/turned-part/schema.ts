/**
 * A turned part described feature by feature: the keys of `fitting: turned-part`. What can be said of the description without knowing the
 * workshop is said here, at its place in the file.
 */
import * as z from 'zod';
import { ask, choice, count, flag, length, line, list, madeOnce, present, quantity, record } from '../../base/asking.ts';
import { type Problem, readQuantity } from '../../base/quantity.ts';
import { type Size, size } from '../../base/size.ts';
import { len } from '../../base/units.ts';
import { shown } from '../../base/written.ts';
import { bounds } from '../../handbook/reading.ts';
import { threadSize } from '../../handbook/thread-name.ts';
import { type AskedBar, ENDS, ROLES, type TurnedPartAsked } from './asked.ts';
import { meaningOf } from './meaning.ts';
import type { Meant } from './meant.ts';

const word = (pattern: RegExp, problem: string) =>
  ask({ type: 'string' }, (value): string | Problem => {
    if (typeof value === 'string' && pattern.test(value)) return value;
    return { problem, grounds: { word: shown(String(value)) } };
  });
/** Of parts and features: it stands in ids and, without its hyphens, on the sheet. */
const name = () => word(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'read.not-a-name');
const letter = () => word(/^[A-Z][0-9]?$/, 'read.not-a-letter');
const role = () => choice(ROLES).optional();
const slot = () => record({ width: size(bounds('part.length')), depth: length(bounds('part.length')) });
const end = () =>
  record({ letter: letter().optional(), role: role(), centre: choice(['may', 'must not']).optional(), slot: slot().optional() });
const angle = () => quantity('angle', bounds('cone.angle'));
const across = () => size(bounds('part.diameter'));

/** 'hexagon 14 mm', 'round 16'. */
const bar = () =>
  z
    .any()
    .meta({ type: 'string' })
    .transform((value: unknown, context): AskedBar => {
      const match = /^(round|hexagon) +(\S.*)$/.exec(typeof value === 'string' ? value.trim() : '');
      const read = match ? readQuantity(match[2] ?? '', 'length') : undefined;
      if (match && typeof read === 'number') return { section: match[1] === 'hexagon' ? 'hexagon' : 'round', across: len(read) };
      const problem: Problem = typeof read === 'object' ? read : { problem: 'read.not-a-bar', grounds: { word: shown(String(value)) } };
      context.addIssue({ code: 'custom', params: problem, input: value });
      return z.NEVER;
    });

/** 'through', or a depth from the end. */
const depth = () =>
  z
    .any()
    .meta({ type: ['number', 'string'] })
    .transform((value: unknown, context): Size | 'through' => {
      if (value === 'through') return 'through';
      const read = size(bounds('part.length')).safeParse(value);
      if (read.success) return read.data;
      for (const issue of read.error.issues) {
        if (issue.code === 'custom') context.addIssue({ code: 'custom', params: issue.params, input: value });
      }
      return z.NEVER;
    });

const section = () =>
  record({
    name: name(),
    diameter: across().optional(),
    thread: threadSize().optional(),
    'as-bar': flag().optional(),
    length: size(bounds('part.length')),
    role: role(),
    shoulder: record({ letter: letter().optional(), role: role() }).optional(),
    starts: choice(ENDS).optional(),
    relief: flag().optional(),
    groove: flag().optional(),
    knurl: flag().optional(),
    chamfer: size(bounds('chamfer')).optional(),
    'chamfer-at': choice(['first', 'second', 'both']).optional(),
    radius: size(bounds('radius')).optional(),
    'radius-at': choice(ENDS).optional(),
    'full-round': choice(ENDS).optional(),
    fillet: size(bounds('radius')).optional(),
    cone: record({
      ...{ at: choice(['first', 'second', 'both']), angle: angle().optional(), length: length(bounds('part.length')).optional() },
      ...{ tip: across(), role: role() },
    }).optional(),
  });
const hole = () =>
  record({
    name: name(),
    diameter: across().optional(),
    thread: threadSize().optional(),
    from: choice(ENDS),
    depth: depth(),
    full: length(bounds('part.length')).optional(),
    bottom: choice(['flat', 'point']).optional(),
    letter: letter().optional(),
    'floor-role': role(),
    role: role(),
    groove: size(bounds('part.length')).optional(),
    relief: flag().optional(),
    cone: record({ at: choice(['both']).optional(), angle: angle(), mouth: across(), role: role() }).optional(),
    radius: size(bounds('radius')).optional(),
    fillet: size(bounds('radius')).optional(),
  });
const side = () =>
  record({
    name: name(),
    on: name(),
    flats: across().optional(),
    square: across().optional(),
    hexagon: across().optional(),
    'cross-hole': across().optional(),
    at: length(bounds('part.length')),
    length: length(bounds('part.length')).optional(),
    role: role(),
  });

const written = () =>
  record({
    fitting: z.literal('turned-part'),
    title: line(),
    name: name(),
    material: line(),
    quantity: count(bounds('part.quantity')).optional(),
    bar: bar().optional(),
    first: end(),
    second: end(),
    outside: list(section()),
    inside: list(hole()).optional(),
    side: list(side()).optional(),
    lengths: list(record({ from: letter(), to: letter(), size: size(bounds('part.length')) })).optional(),
    coaxial: list(record({ of: name(), to: name(), within: length(bounds('runout')) })).optional(),
  });
export const turnedPartSchema = madeOnce(() => written().transform(understood));

function understood(raw: z.output<ReturnType<typeof written>>, context: z.RefinementCtx): Meant {
  const { title, name: id, material, quantity: many, bar: stock, first, second, outside, inside, side: sides, lengths, coaxial } = raw;
  const asked: TurnedPartAsked = {
    ...{ title, name: id, material, quantity: many ?? 1, first: present(first), second: present(second) },
    ...present({ bar: stock }),
    outside: outside.map(({ name: own, length: long, shoulder, cone, ...rest }) => ({
      ...{ name: own, length: long, ...present(rest) },
      ...(shoulder ? { shoulder: present(shoulder) } : {}),
      ...(cone ? { cone: { at: cone.at, tip: cone.tip, ...present({ angle: cone.angle, length: cone.length, role: cone.role }) } } : {}),
    })),
    inside: (inside ?? []).map(({ name: own, from, depth: deep, cone, ...rest }) => ({
      ...{ name: own, from, depth: deep, ...present(rest) },
      ...(cone ? { cone: { angle: cone.angle, mouth: cone.mouth, ...present({ at: cone.at, role: cone.role }) } } : {}),
    })),
    side: (sides ?? []).map(({ name: own, on, at, ...rest }) => ({ name: own, on, at, ...present(rest) })),
    lengths: lengths ?? [],
    coaxial: coaxial ?? [],
  };
  const { value, faults } = meaningOf(asked);
  for (const { path, ...params } of faults) {
    context.addIssue({ code: 'custom', path: [...path], params, input: raw });
  }
  return value ?? z.NEVER;
}
