/** The painted half-section against polygons: the same cuts, as differences of areas, by an independent library. */
import { area, difference, FillRule, type Path64 } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaOf, isMetalAt, isTakenBy } from '../../src/geometry/section/ask.ts';
import { at, type Line, level, meeting, reaches, steepness } from '../../src/geometry/section/lines.ts';
import { outlinesOf, polygonsOf } from '../../src/geometry/section/outline.ts';
import { piecesOf } from '../../src/geometry/section/pieces.ts';
import { isSolid, type Mark, METAL, type Paint, paint, type Region, type Section, startBar } from '../../src/geometry/section.ts';
import type { Outline } from '../../src/model/stage.ts';

const LENGTH = 300;
const ACROSS = 120;
const BAR: Mark = { surface: '', stage: 'bar', by: '' };

// ---- random cuts ----------------------------------------------------------------------------------------------------------------
type Cut = { readonly from: number; readonly to: number; readonly lower?: Line; readonly upper?: Line };
const z = fc.integer({ min: -20, max: LENGTH + 20 });
const d = fc.integer({ min: 1, max: ACROSS + 10 });
const angle = fc.constantFrom(60, 82, 90, 118, 140);
const stretch = fc
  .tuple(z, z)
  .filter(([a, b]) => a !== b)
  .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
const bore = (at_: number, size: number, point: number, from: 'first' | 'second'): readonly Cut[] => {
  const way = from === 'first' ? 1 : -1;
  const line: Line = { z: at_, d: size, slope: -way * steepness(point) };
  const tip = reaches(line, 0) ?? at_;
  const straight = from === 'first' ? { from: -50, to: at_ } : { from: at_, to: LENGTH + 50 };
  return [
    { ...straight, upper: level(size) },
    { from: Math.min(at_, tip), to: Math.max(at_, tip), upper: line },
  ];
};
const cone = (at_: number, mouth: number, until: number, point: number, way: 1 | -1): readonly Cut[] => {
  const line: Line = { z: at_, d: mouth, slope: (until > mouth ? 1 : -1) * way * steepness(point) };
  const end = reaches(line, until) ?? at_;
  return [{ from: Math.min(at_, end), to: Math.max(at_, end), ...(until > mouth ? { lower: line } : { upper: line }) }];
};
const cuts: fc.Arbitrary<readonly Cut[]> = fc
  .array(
    fc.oneof(
      fc.tuple(stretch, d).map(([[from, to], size]): readonly Cut[] => [{ from, to, lower: level(size) }]),
      fc.tuple(stretch, d).map(([[from, to], size]): readonly Cut[] => [{ from, to, upper: level(size) }]),
      fc.tuple(z, d, angle, fc.constantFrom('first' as const, 'second' as const)).map((args) => bore(...args)),
      fc.tuple(z, d, d, angle, fc.constantFrom(1 as const, -1 as const)).map((args) => cone(...args)),
    ),
    { minLength: 1, maxLength: 12 },
  )
  .map((list) => list.flat());

const mark = (i: number, which: string): Mark => ({ surface: `${i}/${which}`, stage: 'final', by: `${i}` });
function regionOf(cut: Cut, i: number): Region {
  return {
    ...{ from: cut.from, to: cut.to },
    ...(cut.lower ? { lower: { line: cut.lower, mark: mark(i, 'lower') } } : {}),
    ...(cut.upper ? { upper: { line: cut.upper, mark: mark(i, 'upper') } } : {}),
    ...{ first: { as: 'made', mark: mark(i, 'first') }, second: { as: 'made', mark: mark(i, 'second') } },
    paint: (old: Paint) => (isSolid(old) ? { state: 'taken', by: `${i}` } : old),
  };
}
const painted = (list: readonly Cut[]): Section => list.map(regionOf).reduce(paint, startBar(0, LENGTH, ACROSS, BAR));

// ---- the same as polygons -------------------------------------------------------------------------------------------------------
const SCALE = 1e6;
const FAR = 10_000;
const path = (points: readonly (readonly [number, number])[]): Path64 =>
  points.map(([x, y]) => ({ x: Math.round(x * SCALE), y: Math.round(y * SCALE) }));
function polygonOf(cut: Cut): Path64 {
  const low = cut.lower ?? level(-FAR);
  const high = cut.upper ?? level(FAR);
  const cross = meeting(low, high);
  const ends = [cut.from, cut.to].map((x) => [x, at(low, x), at(high, x)] as const);
  const [a, b] = ends;
  if (!a || !b) throw new Error('two ends');
  const open = (end: readonly [number, number, number]) => end[2] > end[1];
  const corner = cross === undefined ? [] : [[cross, at(low, cross)] as const];
  if (open(a) && open(b))
    return path([
      [a[0], a[1]],
      [b[0], b[1]],
      [b[0], b[2]],
      [a[0], a[2]],
    ]);
  if (open(a)) return path([[a[0], a[1]], ...corner, [a[0], a[2]]]);
  return open(b) ? path([[b[0], b[1]], [b[0], b[2]], ...corner]) : [];
}
function cutAway(list: readonly Cut[]): number {
  const bar = path([
    [0, 0],
    [LENGTH, 0],
    [LENGTH, ACROSS],
    [0, ACROSS],
  ]);
  const tools = list
    .map(polygonOf)
    .filter((one) => one.length > 2)
    .map((one) => (area(one) < 0 ? [...one].reverse() : one));
  const left = tools.reduce<Path64[]>((metal, tool) => difference(metal, [tool], FillRule.NonZero), [bar]);
  return left.reduce((sum, one) => sum + area(one), 0) / SCALE / SCALE;
}

const shoelace = (outline: Outline): number => outline.reduce((sum, { a, b }) => sum + a.d * b.z - a.z * b.d, 0) / 2;

describe('a painted half-section', () => {
  it('keeps the metal that differences of polygons keep', () => {
    fc.assert(
      fc.property(cuts, (list) => {
        expect(areaOf(painted(list), isSolid)).toBeCloseTo(cutAway(list), 2);
      }),
      { numRuns: 3000, seed: 11 },
    );
  });
  it('is bounded by closed loops that hold just that metal', () => {
    fc.assert(
      fc.property(cuts, (list) => {
        const section = painted(list);
        const outlines = outlinesOf(section, isSolid);
        for (const outline of outlines)
          outline.forEach((edge, i) => {
            const next = outline[(i + 1) % outline.length];
            expect(Math.hypot((next?.a.z ?? Number.NaN) - edge.b.z, (next?.a.d ?? Number.NaN) - edge.b.d)).toBeLessThan(0.01);
          });
        expect(outlines.reduce((sum, one) => sum + shoelace(one), 0)).toBeCloseTo(areaOf(section, isSolid), 1);
        expect(outlines.filter((one) => shoelace(one) > 0).length).toBeGreaterThanOrEqual(piecesOf(section).count);
      }),
      { numRuns: 150, seed: 12 },
    );
  });
  it('names each edge after a cut that has a side there, with metal on its right hand and none on its left', () => {
    fc.assert(
      fc.property(cuts, (list) => {
        const section = painted(list);
        for (const { a, b, surface } of outlinesOf(section, isSolid).flat()) {
          const long = Math.hypot(b.z - a.z, b.d - a.d);
          const middle = { z: (a.z + b.z) / 2, d: (a.d + b.d) / 2 };
          if (long < 0.5 || middle.d < 0.01) continue;
          const side = { z: (b.d - a.d) / long / 250, d: -(b.z - a.z) / long / 250 };
          expect(isMetalAt(section, middle.z + side.z, middle.d + side.d)).toBe(true);
          expect(isMetalAt(section, middle.z - side.z, middle.d - side.d)).toBe(false);
          if (surface !== '') expect(offSide(list, surface, middle)).toBeLessThan(0.01);
        }
      }),
      { numRuns: 100, seed: 13 },
    );
  });
  it('splits what is taken between the cuts, each by the first that met it', () => {
    fc.assert(
      fc.property(cuts, (list) => {
        const section = painted(list);
        let before = LENGTH * ACROSS;
        list.forEach((_, i) => {
          const left = areaOf(painted(list.slice(0, i + 1)), isSolid);
          expect(areaOf(section, isTakenBy(`${i}`))).toBeCloseTo(before - left, 3);
          before = left;
        });
      }),
      { numRuns: 60, seed: 14 },
    );
  });
});

/** How far a place is from the named side of the named cut. */
function offSide(list: readonly Cut[], surface: string, place: { readonly z: number; readonly d: number }): number {
  const [i = '', which = ''] = surface.split('/');
  const cut = list[Number(i)];
  if (!cut) return Number.POSITIVE_INFINITY;
  if (which === 'first') return Math.abs(cut.from - place.z);
  if (which === 'second') return Math.abs(cut.to - place.z);
  const line = which === 'lower' ? cut.lower : cut.upper;
  return line ? Math.abs(at(line, place.z) - place.d) : Number.POSITIVE_INFINITY;
}

describe('by hand', () => {
  const take =
    (by: string) =>
    (old: Paint): Paint =>
      isSolid(old) ? { state: 'taken', by } : old;
  const made = (surface: string, by: string) => ({ as: 'made', mark: { surface, stage: 'final', by } }) as const;
  const bar = startBar(0, 100, 40, BAR);
  const shoulder: Region = {
    ...{ from: Number.NEGATIVE_INFINITY, to: 30, lower: { line: level(20), mark: { surface: 'nose', stage: 'final', by: 'turn' } } },
    ...{ second: made('A', 'turn'), paint: take('turn') },
  };
  const names = (section: Section) => outlinesOf(section, isSolid).map((outline) => outline.map((edge) => edge.surface).join(' '));

  it('turns a shoulder', () => {
    const section = paint(bar, shoulder);
    expect(areaOf(section, isSolid)).toBe(100 * 40 - 30 * 20);
    expect(names(section)).toEqual([' nose A   ']);
    expect(polygonsOf(section, isTakenBy('turn'))).toEqual([
      [
        { z: 30, d: 20 },
        { z: 0, d: 20 },
        { z: 0, d: 40 },
        { z: 30, d: 40 },
      ],
    ]);
  });
  it('lets the later tool name what it passes, and not what it only comes up to', () => {
    const passed = paint(paint(bar, shoulder), {
      ...shoulder,
      lower: { line: level(20), mark: { surface: 'nose', stage: 'final', by: 'again' } },
      second: { as: 'met', mark: { surface: 'A', stage: 'final', by: 'again' } },
    });
    const by = outlinesOf(passed, isSolid)
      .flat()
      .map((edge) => `${edge.surface}:${edge.by}`);
    expect(by).toContain('nose:again');
    expect(by).toContain('A:turn');
    expect(by).not.toContain('A:again');
  });
  it('keeps two pieces apart that touch in a corner only', () => {
    const corner = paint(paint(bar, { from: 0, to: 50, lower: { line: level(20), mark: BAR }, paint: take('a') }), {
      ...{ from: 50, to: 100, upper: { line: level(20), mark: BAR }, paint: take('b') },
    });
    expect(piecesOf(corner).count).toBe(2);
    expect(outlinesOf(corner, isSolid)).toHaveLength(2);
  });
  it('walks a bore inside a bar as a hole only where it is closed in', () => {
    const hollow = paint(bar, {
      from: 40,
      to: 60,
      lower: { line: level(10), mark: BAR },
      upper: { line: level(20), mark: BAR },
      paint: take('a'),
    });
    const loops = outlinesOf(hollow, isSolid).map(shoelace);
    expect(loops.filter((one) => one < 0)).toEqual([-200]);
    expect(areaOf(hollow, (one) => one === METAL)).toBe(100 * 40 - 200);
  });
});
