/** Work between two centres: the textbook's beam, and one of steps against a plain sum of slices. */
import { describe, expect, it } from 'vitest';
import { giveBetween, type Length } from '../../src/handbook/bending.ts';
import { secondMoment } from '../../src/handbook/stiffness.ts';

const round = (long: number, outside: number): Length => ({ long, outside, inside: 0 });

describe('work between centres', () => {
  it.each([
    [10, 100, 50],
    [8, 110, 20],
    [12, 60, 45],
  ])('%d mm thick, %d long, pushed at %d: F a² b² / (3 E I L), theory of beams', (thick, long, at) => {
    const far = long - at;
    const book = (100 * at ** 2 * far ** 2) / (3 * 2e5 * secondMoment(thick) * long);
    expect(giveBetween([round(long, thick)], at, long, 2e5, 100)).toBeCloseTo(book, 12);
  });
  it('gives nothing at a centre', () => expect(giveBetween([round(80, 9)], 80, 80, 2e5, 100)).toBe(0));
  it('in steps, as slices of a thousandth add up', () => {
    const lengths = [round(20, 8), round(70, 9), round(20, 8)];
    const [at, end, slices] = [40, 110, 1e5];
    const thick = (x: number): number => (x < 20 || x > 90 ? 8 : 9);
    let sum = 0;
    for (let i = 0; i < slices; i += 1) {
      const x = ((i + 0.5) * end) / slices;
      const moment = x < at ? ((end - at) * x) / end : (at * (end - x)) / end;
      sum += (moment ** 2 / secondMoment(thick(x))) * (end / slices);
    }
    expect(giveBetween(lengths, at, end, 1e5, 50)).toBeCloseTo((50 / 1e5) * sum, 6);
  });
});
