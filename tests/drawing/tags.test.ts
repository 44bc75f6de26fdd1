/** Balloons: the assignment against all permutations; leaders that never cross. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assign } from '../../src/drawing/assign.ts';
import { balloonTag } from '../../src/drawing/balloons.ts';
import { surroundings } from '../../src/drawing/leaders.ts';
import { cross, distance } from '../../src/drawing/plane.ts';
import { placeTags } from '../../src/drawing/tags.ts';
import { ADVANCES } from './stages.ts';

function leastOf(costs: readonly (readonly number[])[], row = 0, used: readonly number[] = []): number {
  if (row === costs.length) return 0;
  const columns = (costs[row] ?? []).map((_, j) => j).filter((j) => !used.includes(j));
  return Math.min(...columns.map((j) => (costs[row]?.[j] ?? 0) + leastOf(costs, row + 1, [...used, j])));
}

describe('assignment', () => {
  const matrix = fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 2 })).chain(([rows, more]) =>
    fc.array(fc.array(fc.integer({ min: 0, max: 40 }), { minLength: rows + more, maxLength: rows + more }), {
      minLength: rows,
      maxLength: rows,
    }),
  );

  it('is as cheap as the best of all permutations, each row with a column of its own', () => {
    fc.assert(
      fc.property(matrix, (costs) => {
        const columns = assign(costs);
        expect(new Set(columns).size).toBe(costs.length);
        const cost = columns.reduce((sum, column, row) => sum + (costs[row]?.[column] ?? Number.NaN), 0);
        expect(cost).toBe(leastOf(costs));
      }),
    );
  });

  it('refuses more rows than columns', () => {
    expect(() => assign([[1], [2]])).toThrow(RangeError);
  });
});

describe('balloons', () => {
  /** Places on a bar across the frame, 2 mm apart at least. */
  const anchors = fc.uniqueArray(fc.tuple(fc.integer({ min: 10, max: 70 }), fc.constantFrom(30, 36, 44, 50)), {
    minLength: 1,
    maxLength: 12,
    selector: String,
  });

  it('stand free with straight leaders that do not cross', () => {
    fc.assert(
      fc.property(anchors, (places) => {
        const tags = places.map(([x, y], i) => balloonTag(ADVANCES, String(10 * (i + 1)), [String(10 * (i + 1))], [{ x: 2 * x, y }]));
        const work = { x: 18, y: 30, w: 124, h: 20, what: 'work' };
        const lattice = { width: 160, height: 85, step: 8.2, phase: { x: 0, y: 0 }, places: 200 };
        const placing = placeTags(tags, lattice, surroundings([work]));
        expect(placing.left).toEqual([]);
        const legs = placing.standing.map((s) => s.leader);
        legs.forEach((p, i) => {
          for (const q of legs.slice(i + 1)) expect(cross(p, q)).toBe(false);
        });
        placing.standing.forEach((s, i) => {
          for (const other of placing.standing.slice(i + 1)) expect(distance(s.middle, other.middle)).toBeGreaterThan(s.tag.height);
          expect(s.middle.y < 30 || s.middle.y > 50 || s.middle.x < 18 || s.middle.x > 142).toBe(true);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('of one surface share a leader', () => {
    const tag = balloonTag(ADVANCES, 'bore', ['160', '180'], [{ x: 80, y: 40 }]);
    const placing = placeTags([tag], { width: 160, height: 85, step: 8.2, phase: { x: 0, y: 0 }, places: 200 }, surroundings([]));
    expect(placing.standing).toHaveLength(1);
    expect(placing.standing[0]?.tag.draw({ x: 0, y: 0 }).filter((item) => item.kind === 'text')).toHaveLength(2);
  });
});
