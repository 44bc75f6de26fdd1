/** Broken edges and tapers of a described part: which corners, how wide at the face, at what angle; and a ring that closes round them. */
import { describe, expect, it } from 'vitest';
import { readSize, type Size } from '../../src/base/size.ts';
import { mm, toMm } from '../../src/base/units.ts';
import { partFrom } from '../../src/fittings/outline.ts';
import type { AskedHole, AskedSection, TurnedPartAsked } from '../../src/fittings/turned-part/asked.ts';
import { meaningOf } from '../../src/fittings/turned-part/meaning.ts';
import { finishedOutline } from '../../src/geometry/nominal.ts';
import type { Cone, Part } from '../../src/model/part.ts';

const size = (text: string | number): Size => {
  const read = readSize(text);
  if ('problem' in read) throw new Error(`'${text}': ${read.problem}`);
  return read;
};
const piece = (name: string, diameter: string | number, length: number, more: Partial<AskedSection> = {}): AskedSection => ({
  ...{ name, length: size(length), ...(more['as-bar'] ? {} : { diameter: size(diameter) }) },
  ...more,
});
const END = { letter: 'A' };
function partOf(outside: readonly AskedSection[], more: Partial<TurnedPartAsked> = {}): Part {
  const plain = { title: 'T', name: 'p', material: 'PB102', quantity: 1, first: END, second: { letter: 'B' } };
  const { value, faults } = meaningOf({ ...plain, outside, inside: [], side: [], lengths: [], coaxial: [], ...more });
  expect(faults).toEqual([]);
  if (!value) throw new Error('nothing meant');
  const stock = { from: 'bar', section: 'round', across: mm(50), material: 'PB102' } as const;
  return partFrom({ ...{ id: 'p', kind: 'p', quantity: 1, use: 'fitting', ...value.outline }, stock });
}
const conesOf = (part: Part): readonly Cone[] => part.surfaces.filter((s): s is Cone => s.shape === 'cone');
const inMm = ({ id, mouth, includedAngle, at }: Cone) => [id, includedAngle, at, toMm(mouth.lo), toMm(mouth.target), toMm(mouth.hi)];
const chamfer = (text: string | number, more: Partial<AskedSection> = {}) => ({ chamfer: size(text), ...more });

describe('a chamfer', () => {
  // height on the radius: ISO 2768-1 table 2, class m, ±0.2 from 0.5 to 3 mm; stated limits; 0.1 on diameter below the table
  it.each([
    ['0.5', 7, 6.6, 7.4],
    ['1', 6, 5.6, 6.4],
    ['0.5 ±0.1', 7, 6.8, 7.2],
    ['0.3', 7.4, 7.3, 7.5],
  ] as const)('of %s on 8 mm', (text, target, lo, hi) => {
    expect(conesOf(partOf([piece('s', 8, 20, chamfer(text, { 'chamfer-at': 'first' }))])).map(inMm)).toEqual([
      ['p/s.first-chamfer', 90, 'p/A', lo, target, hi],
    ]);
  });
  it('stands at every free corner, and not in one under a higher piece', () => {
    const part = partOf([piece('nose', 8, 10, chamfer(1)), piece('head', 14, 6, chamfer(1)), piece('tail', 10, 10, chamfer(1))]);
    expect(conesOf(part).map((c) => c.id)).toEqual([
      'p/nose.first-chamfer',
      'p/head.first-chamfer',
      'p/head.second-chamfer',
      'p/tail.second-chamfer',
    ]);
  });
  it('on a hexagon is at 30 degrees to its face, its circle inside the flats', () => {
    const bar = { section: 'hexagon', across: mm(17) } as const;
    const part = partOf([piece('stem', 10, 10), piece('head', 0, 7, chamfer(0.5, { 'as-bar': true, 'chamfer-at': 'second' }))], { bar });
    expect(conesOf(part).map(inMm)).toEqual([['p/head.second-chamfer', 120, 'p/B', 15.6, 16, 16.4]]);
  });
  it('opens both mouths of a thread that goes right through, and one of a thread that does not', () => {
    const threaded = (depth: AskedHole['depth']): readonly AskedHole[] => [{ name: 't', thread: size('M10x1'), from: 'first', depth }];
    const names = (depth: AskedHole['depth']) => conesOf(partOf([piece('s', 20, 12)], { inside: threaded(depth) })).map((c) => c.id);
    expect(names('through')).toEqual(['p/t.chamfer', 'p/t.far-chamfer']);
    expect(names(size(8))).toEqual(['p/t.chamfer']);
  });
  it('is an edge of the finished outline, as long as it is high', () => {
    const outline = finishedOutline(partOf([piece('s', 8, 20, chamfer(1))]));
    const edges = outline.filter((edge) => edge.surface.endsWith('-chamfer'));
    expect(edges.map(({ a, b }) => [Math.round(Math.abs(a.z - b.z)), Math.round(Math.abs(a.d - b.d))])).toEqual([
      [mm(1), mm(2)],
      [mm(1), mm(2)],
    ]);
  });
});

describe('a taper by its length', () => {
  // half the angle is atan of half the difference over the length; the top slide is set to a hundredth of a degree
  it.each([
    [10, 8, 15, 7.62],
    [5, 2.5, 18, 7.94],
    [12, 6, 3, 90],
  ])('%d to %d mm over %d mm', (large, small, long, angle) => {
    const cone = { at: 'first', length: mm(long), tip: size(small) } as const;
    const [found] = conesOf(partOf([piece('s', large, 2 * long, { cone })]));
    expect(found?.includedAngle).toBeCloseTo(angle, 6);
  });
});
