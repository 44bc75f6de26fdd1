/** Hatching stays inside what is cut, at its pitch. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../src/drawing/display.ts';
import { hatchLines } from '../../src/drawing/hatch.ts';
import { distance, part } from '../../src/drawing/plane.ts';

const square = (x: number, y: number, size: number): readonly XY[] => [
  { x, y },
  { x: x + size, y },
  { x: x + size, y: y + size },
  { x, y: y + size },
];

/** Winding by angle: slower and other arithmetic than the scan. */
function inside(p: XY, ring: readonly XY[]): boolean {
  let sum = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    const turn = Math.atan2(b.y - p.y, b.x - p.x) - Math.atan2(a.y - p.y, a.x - p.x);
    sum += Math.atan2(Math.sin(turn), Math.cos(turn));
  });
  return Math.abs(sum) > Math.PI;
}

/** Points round a centre at rising angles: a simple polygon, often concave. */
const star = fc.array(fc.integer({ min: 2, max: 30 }), { minLength: 3, maxLength: 14 }).map((radii) =>
  radii.map((r, i): XY => {
    const angle = (2 * Math.PI * i) / radii.length + 0.01;
    return { x: 40 + r * Math.cos(angle), y: 40 + r * Math.sin(angle) };
  }),
);

describe('hatching', () => {
  it('never leaves the polygon', () => {
    fc.assert(
      fc.property(star, fc.constantFrom<1 | -1>(1, -1), (ring, lean) => {
        for (const leg of hatchLines([ring], { pitch: 1.3, lean })) {
          for (const t of [0.05, 0.5, 0.95]) expect(inside(part(leg, 0, t).b, ring)).toBe(true);
        }
      }),
    );
  });

  it.each([1, -1] as const)('stands at 45 degrees and fills a square at its pitch, lean %d', (lean) => {
    const legs = hatchLines([square(3, 5, 20)], { pitch: 2, lean });
    // all lines together are as long as the area over the pitch, within what the ends can differ
    const total = legs.reduce((sum, l) => sum + distance(l.a, l.b), 0);
    expect(Math.abs(total - 400 / 2)).toBeLessThan(20);
    for (const l of legs) expect(l.b.y - l.a.y).toBeCloseTo(-lean * (l.b.x - l.a.x), 9);
  });

  it('leaves a hole free', () => {
    const hole = square(8, 8, 6);
    for (const leg of hatchLines([square(0, 0, 20), hole], { pitch: 1, lean: 1 })) {
      for (const t of [0.02, 0.5, 0.98]) expect(inside(part(leg, 0, t).b, hole)).toBe(false);
    }
  });
});
