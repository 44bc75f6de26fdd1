/** From a description to surfaces: what holes leave of one another, which letters and lengths faces get, and no description that throws. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSize, type Size } from '../../src/base/size.ts';
import { len, mm, showMm } from '../../src/base/units.ts';
import { partFrom } from '../../src/fittings/outline.ts';
import type { AskedHole, AskedSection, TurnedPartAsked } from '../../src/fittings/turned-part/asked.ts';
import { limitsOf } from '../../src/fittings/turned-part/limits.ts';
import { meaningOf } from '../../src/fittings/turned-part/meaning.ts';
import type { Meant } from '../../src/fittings/turned-part/meant.ts';

const size = (text: string | number): Size => {
  const read = readSize(text);
  if ('problem' in read) throw new Error(`'${text}': ${read.problem}`);
  return read;
};
const section = (name: string, diameter: string | number, length: number, more: Partial<AskedSection> = {}): AskedSection => ({
  ...{ name, diameter: size(diameter), length: size(length) },
  ...more,
});
const hole = (
  name: string,
  diameter: string | number,
  from: 'first' | 'second',
  depth: number | 'through',
  more: Partial<AskedHole> = {},
): AskedHole => ({
  ...{ name, diameter: size(diameter), from, depth: depth === 'through' ? depth : size(depth) },
  ...more,
});
const asked = (
  outside: readonly AskedSection[],
  inside: readonly AskedHole[] = [],
  more: Partial<TurnedPartAsked> = {},
): TurnedPartAsked => ({
  ...{
    title: 'T',
    name: 'p',
    material: 'PB102',
    quantity: 1,
    first: { letter: 'A' },
    second: { letter: 'B' },
    outside,
    inside,
    side: [],
    lengths: [],
    coaxial: [],
  },
  ...more,
});
const meant = (a: TurnedPartAsked): Meant => {
  const { value, faults } = meaningOf(a);
  expect(faults).toEqual([]);
  if (!value) throw new Error('nothing meant');
  return value;
};
const part = (m: Meant) =>
  partFrom({
    ...{ id: m.name, kind: m.name, quantity: 1, use: 'fitting' as const, ...m.outline },
    stock: { from: 'bar', section: 'round', across: mm(50), material: 'PB102' },
  });

describe('limits of a size', () => {
  // ISO 286-1 for f7, h8, H7 of these sizes; ISO 2768-1 m for plain ones
  it.each([
    ['12 f7', 'shaft', 11.966, 11.984, 'fit'],
    ['4 h8', 'shaft', 3.982, 4, 'fit'],
    ['6 H7', 'hole', 6, 6.012, 'fit'],
    ['12', 'shaft', 11.8, 12.2, 'general'],
    ['5', 'hole', 4.9, 5.1, 'general'],
    ['11.00 +0 -0.05', 'shaft', 10.95, 11, 'stated'],
    ['8 ±0.1', 'length', 7.9, 8.1, 'stated'],
  ] as const)('%s of a %s', (text, of, lo, hi, kind) => {
    const limits = limitsOf(size(text), of, 'x', [], []);
    expect(limits).toMatchObject({ lo: mm(lo), hi: mm(hi), from: { kind } });
    expect(limits && limits.lo <= limits.target && limits.target <= limits.hi).toBe(true);
  });
});

describe('holes', () => {
  const spans = (inside: readonly AskedHole[]) =>
    meant(asked([section('s', 30, 40)], inside)).outline.holes?.map(
      (h) => `${h.name} ${showMm(h.from, 0)}-${showMm(h.to, 0)} ${h.opens.join('+')}${h.floor ? ' flat' : ''}${h.blind ? ' point' : ''}`,
    );
  it.each<readonly [string, readonly AskedHole[], readonly string[]]>([
    ['through', [hole('a', 5, 'first', 'through')], ['a 0-40 first+second']],
    ['blind', [hole('a', 5, 'first', 10)], ['a 0-10 first point']],
    ['blind and flat', [hole('a', 5, 'second', 10, { bottom: 'flat' })], ['a 30-40 second flat']],
    ['a counterbore', [hole('a', 5, 'first', 'through'), hole('b', 8, 'first', 10)], ['a 10-40 first+second', 'b 0-10 first flat']],
    [
      'from both ends',
      [hole('a', 5, 'first', 'through'), hole('b', 8, 'first', 10), hole('c', 12, 'second', 6)],
      ['a 10-34 first+second', 'b 0-10 first flat', 'c 34-40 second flat'],
    ],
    ['one into the other', [hole('a', 5, 'first', 30), hole('b', 8, 'second', 15)], ['a 0-25 first+second', 'b 25-40 second flat']],
    [
      'steps',
      [hole('a', 5, 'first', 30), hole('b', 8, 'first', 20), hole('c', 12, 'first', 10)],
      ['a 20-30 first point', 'b 10-20 first flat', 'c 0-10 first flat'],
    ],
    ['metal between', [hole('a', 5, 'first', 15), hole('b', 8, 'second', 15)], ['a 0-15 first point', 'b 25-40 second point']],
  ])('%s', (_, inside, expected) => expect(spans(inside)).toEqual(expected));
});

describe('letters and lengths', () => {
  const steps = [section('a', 10, 8), section('b', 20, 6, { shoulder: { letter: 'S' } }), section('c', 12, 30)];
  const lengths = (more: Partial<TurnedPartAsked> = {}) =>
    meant(asked(steps, [], more)).outline.lengths.map(
      (l) => `${l.from}-${l.to} ${showMm(l.limits.lo)} ${showMm(l.limits.hi)} ${l.limits.from.kind}`,
    );
  it('ends first, then shoulders, each once', () => {
    expect(lengths()).toEqual(['A-B 43.70 44.30 general', 'A-C 7.80 8.20 general', 'A-S 13.80 14.20 general']);
    expect(lengths({ lengths: [{ from: 'S', to: 'B', size: size('30 ±0.1') }] })).toEqual([
      'S-B 29.90 30.10 stated',
      'A-B 43.70 44.30 general',
      'S-C 5.90 6.10 general',
    ]);
  });
});

const Section = fc.record({
  d: fc.constantFrom('4 h8', '6', '8 f8', '10', '12 -0.1 -0.3', '14', '18', '22', '26'),
  l: fc.integer({ min: 1, max: 30 }),
  thread: fc.option(fc.constantFrom('M4', 'M6', 'M8', 'M10x1', 'M10x0.33'), { nil: undefined, freq: 1 }),
  starts: fc.option(fc.constantFrom('first' as const, 'second' as const), { nil: undefined }),
  groove: fc.constantFrom(true, false, false, false, false, false),
  cone: fc.option(
    fc.record({
      at: fc.constantFrom('first' as const, 'second' as const),
      angle: fc.integer({ min: 10, max: 120 }),
      tip: fc.integer({ min: 1, max: 9 }),
    }),
    {
      nil: undefined,
      freq: 4,
    },
  ),
});
const Hole = fc.record({
  d: fc.constantFrom('1', '2 H8', '3', '5 +0.1 0', '7'),
  from: fc.constantFrom('first' as const, 'second' as const),
  depth: fc.option(fc.integer({ min: 1, max: 30 }), { nil: 'through' as const }),
  thread: fc.option(fc.constantFrom('M3', 'M5'), { nil: undefined, freq: 1 }),
  bottom: fc.option(fc.constantFrom('flat' as const, 'point' as const), { nil: undefined }),
});
const Described = fc
  .record({ outside: fc.array(Section, { minLength: 1, maxLength: 4 }), inside: fc.array(Hole, { maxLength: 2 }) })
  .map(({ outside, inside }) =>
    asked(
      outside.map(
        ({ d, l, thread, starts, groove, cone }, i): AskedSection => ({
          ...{ name: `s${i}`, length: size(l) },
          ...(thread ? { thread: size(thread) } : { diameter: size(d) }),
          ...(thread && starts ? { starts } : {}),
          ...(groove && !thread ? { groove } : {}),
          ...(cone ? { cone: { ...cone, tip: size(cone.tip) } } : {}),
        }),
      ),
      inside.map(
        ({ d, from, depth, thread, bottom }, i): AskedHole => ({
          ...{ name: `h${i}`, from, depth: depth === 'through' ? depth : size(depth) },
          ...(thread ? { thread: size(thread) } : { diameter: size(d) }),
          ...(bottom ? { bottom } : {}),
        }),
      ),
    ),
  );

describe('any description', () => {
  it('is faulted at its place, or becomes a part whose every face is placed once', () => {
    let parts = 0;
    fc.assert(
      fc.property(Described, (description) => {
        const { value, faults } = meaningOf(description);
        expect(value === undefined).toBe(faults.length > 0);
        if (!value) return;
        parts += 1;
        const made = part(value);
        const faces = made.surfaces.filter((s) => s.shape === 'face');
        expect(made.dimensions.length).toBeGreaterThanOrEqual(faces.length - 1);
        expect(new Set(made.ring).size).toBe(made.surfaces.length);
        expect(made.length).toBe(len(description.outside.reduce((sum, s) => sum + s.length.nominal, 0)));
      }),
      { numRuns: 2000 },
    );
    expect(parts).toBeGreaterThan(100);
  });
});
