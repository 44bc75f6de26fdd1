/** An arc as a chain of chords: how near the circle it lies, and what it holds by Pappus' theorem. */
import { describe, expect, it } from 'vitest';
import { mm, toMm, UNITS_PER_MM } from '../../src/base/units.ts';
import { arcPoints, CHORD_ERROR, chordLine, chordsOf } from '../../src/geometry/section/arc.ts';
import { at } from '../../src/geometry/section/lines.ts';
import type { Arc } from '../../src/model/part.ts';
import type { Point } from '../../src/model/stage.ts';

const arc = (bends: Arc['bends'], radius: number, into: Arc['into'] = 'second'): Arc => ({
  ...{ shape: 'arc', id: 'p/a', feature: 'p/a', role: 'free', side: 'outside', bends, at: 'p/A', into, until: 'p/c' },
  across: { lo: mm(2 * radius), hi: mm(2 * radius), target: mm(2 * radius), from: { kind: 'stated', as: String(radius) } },
});
/** From the face at z = 0 to a cylinder of 60 mm. */
const D = mm(60);
const chain = (bends: Arc['bends'], radius: number, into?: Arc['into']): readonly Point[] =>
  arcPoints(arc(bends, radius, into), 0, D, mm(2 * radius));

const BENDS = ['round', 'fillet'] as const;
const CASES = [0.1, 0.5, 1, 2.05, 3.75, 5, 10, 25].flatMap((radius) => BENDS.map((bends) => [bends, radius] as const));

describe('a chain of chords', () => {
  it.each(CASES)('of a %s of R%d lies within a micrometre of its circle, corners and middles', (bends, radius) => {
    const points = chain(bends, radius);
    const [r, centre] = [mm(radius), { z: mm(radius), d: bends === 'round' ? D - mm(2 * radius) : D + mm(2 * radius) }];
    const off = ({ z, d }: Point): number => Math.abs(Math.hypot(z - centre.z, (d - centre.d) / 2) - r);
    const middles = points.slice(1).map((b, i) => ({ z: (b.z + (points[i]?.z ?? 0)) / 2, d: (b.d + (points[i]?.d ?? 0)) / 2 }));
    expect(Math.max(...[...points, ...middles].map(off))).toBeLessThanOrEqual(CHORD_ERROR);
    expect(points.every(({ z, d }) => Number.isInteger(z) && Number.isInteger(d))).toBe(true);
  });
  it.each(CASES)('of a %s of R%d begins on the face and ends on the cylinder, and never turns back', (bends, radius) => {
    const points = chain(bends, radius);
    expect(points[0]).toEqual({ z: 0, d: bends === 'round' ? D - mm(2 * radius) : D + mm(2 * radius) });
    expect(points.at(-1)).toEqual({ z: mm(radius), d: D });
    expect(points.slice(1).every((b, i) => b.z > (points[i]?.z ?? 0))).toBe(true);
    const lines = points.slice(1).map((b, i) => [chordLine(points[i] ?? b, b), b] as const);
    for (const [line, b] of lines) expect(Math.abs(at(line, b.z) - b.d)).toBeLessThan(1e-6);
  });
  it('toward the first end is its mirror image', () =>
    expect(chain('round', 2, 'first').map(({ z, d }) => ({ z: z === 0 ? 0 : -z, d }))).toEqual(chain('round', 2)));
  it('has as many chords as it needs and not twice as many', () => {
    for (const radius of [0.5, 2, 10]) {
      const sagitta = (n: number): number => mm(radius) * (1 - Math.cos(Math.PI / (4 * n)));
      expect([sagitta(chordsOf(mm(2 * radius))) < CHORD_ERROR, sagitta(chordsOf(mm(2 * radius)) / 2) > CHORD_ERROR]).toEqual([true, true]);
    }
  });
});

describe('volume', () => {
  /** Of what lies under the chain, by frustums: cubic millimetres. */
  const under = (points: readonly Point[]): number =>
    points.slice(1).reduce((sum, b, i) => {
      const a = points[i] ?? b;
      const [h, p, q] = [toMm(mm((b.z - a.z) / UNITS_PER_MM)), a.d / UNITS_PER_MM, b.d / UNITS_PER_MM];
      return sum + ((Math.PI / 4) * h * (p * p + p * q + q * q)) / 3;
    }, 0);
  // Pappus: a spandrel of area (1 - pi/4) R^2 with its centroid (10 - 3 pi)/(3 (4 - pi)) R from either side, turned round the axis
  it.each(CASES)('of a %s of R%d differs from the square corner by what Pappus says', (bends, radius) => {
    const area = (1 - Math.PI / 4) * radius ** 2;
    const off = ((10 - 3 * Math.PI) / (3 * (4 - Math.PI))) * radius;
    const way = bends === 'round' ? -1 : 1;
    const spandrel = 2 * Math.PI * (toMm(D) / 2 + way * off) * area;
    const square = (Math.PI / 4) * toMm(D) ** 2 * radius;
    // a micrometre along the whole arc, round the axis
    const most = 0.001 * (Math.PI / 2) * radius * Math.PI * (toMm(D) + 2 * radius);
    expect(Math.abs(under(chain(bends, radius)) - (square + way * spandrel))).toBeLessThan(most);
  });
});
