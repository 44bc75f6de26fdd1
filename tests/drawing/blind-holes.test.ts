/** A hole that is open at one end alone, as the finished part is drawn: it ends in the drill's point, and the metal beyond it stays. */
import { describe, expect, it } from 'vitest';
import { finishedStage } from '../../src/drawing/part-outline.ts';
import { ownPart, planOwn } from '../fixtures/own-part.ts';

const outside = [
  'first: { letter: A }',
  'second: { letter: B }',
  'outside:',
  '  - { name: barrel, diameter: 14 mm, length: 30 mm }',
  'inside:',
];
const outlineOf = (...inside: readonly string[]) => {
  const { part } = ownPart(planOwn([...outside, ...inside.map((one) => `  - { ${one} }`)]));
  return finishedStage(part, 'second')
    .outlines.flat()
    .map(({ a }) => [a.z / 10_000, a.d / 10_000] as const);
};
/** Of a 118 degree point: half its diameter over the tangent of 59 degrees. */
const point = (d: number): number => d / 2 / Math.tan((59 * Math.PI) / 180);
const has = (corners: readonly (readonly [number, number])[], z: number, d: number): boolean =>
  corners.some(([x, y]) => Math.abs(x - z) < 0.001 && Math.abs(y - d) < 0.001);

describe('a blind hole in the drawing of the finished part', () => {
  it.each([
    ['second', 30 - 12, -1],
    ['first', 12, 1],
  ] as const)('from the %s end', (end, z, way) => {
    const corners = outlineOf(`name: hole, diameter: 5 mm, from: ${end}, depth: 12 mm, role: clearance`);
    expect(has(corners, z, 5)).toBe(true);
    expect(has(corners, z + way * point(5), 0)).toBe(true);
    expect(has(corners, end === 'second' ? 0 : 30, 5)).toBe(false);
  });
  it('from either end, with metal between', () => {
    const corners = outlineOf(
      'name: low, diameter: 5 mm, from: first, depth: 9 mm, role: clearance',
      'name: high, diameter: 6 mm, from: second, depth: 10 mm, role: clearance',
    );
    for (const [z, d] of [
      [9, 5],
      [9 + point(5), 0],
      [20, 6],
      [20 - point(6), 0],
    ] as const)
      expect(has(corners, z, d)).toBe(true);
  });
  it('that a smaller one goes on from has a step, and no point', () => {
    const corners = outlineOf(
      'name: wide, diameter: 8 mm, from: second, depth: 10 mm, bottom: flat, role: clearance',
      'name: narrow, diameter: 4 mm, from: first, depth: through, role: clearance',
    );
    expect(has(corners, 20, 8) && has(corners, 20, 4)).toBe(true);
    expect(corners.filter(([, d]) => d === 0)).toEqual([]);
  });
});
