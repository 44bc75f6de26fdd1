/** Fits, grades and general tolerances against printed figures. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import { fitLimits, toleranceGrade } from '../../src/handbook/iso286.ts';
import { CHAMFER, generalTolerance, LINEAR, lookUpChamfer, lookUpGeneral } from '../../src/handbook/iso2768.ts';

/** ISO 286-1 table 1: mm, grade, um, where printed. */
const GRADES: readonly (readonly [size: number, grade: number, um: number, source: string])[] = [
  [10, 7, 15, 'engineersvault.blogspot.com 2007/02'],
  [6, 6, 8, 'engineersvault.blogspot.com 2007/02'],
  [18, 9, 43, 'engineersvault.blogspot.com 2007/02'],
  [10, 11, 90, 'engineersvault.blogspot.com 2007/02'],
  [3, 8, 14, 'Hartner catalogue p. 463, h8 of drills'],
  [6, 8, 18, 'Hartner catalogue p. 463, h8 of drills'],
  [10, 8, 22, 'Hartner catalogue p. 463, h8 of drills'],
  [18, 8, 27, 'Hartner catalogue p. 463, h8 of drills'],
];
describe('tolerance grades', () => {
  it.each(GRADES)('%d mm IT%d is %d um (%s)', (size, grade, um) => expect(toleranceGrade(mm(size), grade)).toBe(mm(um / 1000)));
  it.each([
    [0, 7],
    [-1, 7],
    [30.0001, 7],
    [10, 4],
    [10, 15],
    [10, 7.5],
  ])('none for %d mm IT%d', (size, grade) => expect(toleranceGrade(mm(size), grade)).toBeUndefined());
  it('bands rise with the grade and with the size', () => {
    const sizes = [1, 3, 3.0001, 6, 6.0001, 10, 10.0001, 18, 18.0001, 30].map(mm);
    for (const grade of [5, 6, 7, 8, 9, 10, 11, 12, 13]) {
      const here = sizes.map((s) => Number(toleranceGrade(s, grade)));
      const next = sizes.map((s) => Number(toleranceGrade(s, grade + 1)));
      expect(here).toEqual([...here].sort((a, b) => a - b));
      expect(here.every((v, i) => v < Number(next[i]))).toBe(true);
    }
  });
  it('follow the formula i = 0.45 cbrt(D) + 0.001 D within the rounding that the standard allows itself, over 3 mm', () => {
    const multiples: Readonly<Record<number, number>> = { 5: 7, 6: 10, 7: 16, 8: 25, 9: 40, 10: 64, 11: 100, 12: 160, 13: 250, 14: 400 };
    for (const [lo, hi] of [
      [3, 6],
      [6, 10],
      [10, 18],
      [18, 30],
    ] as const) {
      const d = Math.sqrt(lo * hi);
      const i = 0.45 * Math.cbrt(d) + 0.001 * d;
      for (const [grade, k] of Object.entries(multiples)) {
        const um = Number(toleranceGrade(mm(hi), Number(grade))) / 10;
        expect(Math.abs(um - k * i)).toBeLessThan(Math.max(1, 0.05 * k * i));
      }
    }
  });
});

/** mm, fit, um: lower, upper. ISO 286 tables as above; m6 of 3 mm printed for pins. */
const FITS: readonly (readonly [size: number, fit: string, lower: number, upper: number])[] = [
  [3, 'h9', -25, 0],
  [6, 'h6', -8, 0],
  [6, 'g6', -12, -4],
  [12, 'h9', -43, 0],
  [16, 'f7', -34, -16],
  [10, 'f7', -28, -13],
  [6, 'k6', 1, 9],
  [8, 'n6', 10, 19],
  [10, 'p6', 15, 24],
  [3, 'm6', 2, 8],
  [5, 'm6', 4, 12],
  [8, 'm6', 6, 15],
  [8, 'd9', -76, -40],
  [6, 'e8', -38, -20],
  [6, 'H7', 0, 12],
  [8, 'H8', 0, 22],
  [10, 'H7', 0, 15],
  [12, 'H11', 0, 110],
  [20, 'h11', -130, 0],
  // holes by the rule of delta, ISO 286-1 (from memory)
  [8, 'K7', -10, 5],
  [8, 'N7', -19, -4],
  [8, 'M7', -15, 0],
  [8, 'P7', -24, -9],
  [2, 'K7', -10, 0],
  [10, 'JS7', -7.5, 7.5],
  [10, 'js6', -4.5, 4.5],
];
describe('fits', () => {
  it.each(FITS)('%d %s is %d to %d um', (size, fit, lower, upper) => {
    const limits = fitLimits(mm(size), fit);
    expect([limits?.lower, limits?.upper]).toEqual([mm(lower / 1000), mm(upper / 1000)]);
    expect([limits?.lo, limits?.hi]).toEqual([mm(size + lower / 1000), mm(size + upper / 1000)]);
  });
  it.each(['z6', 'h', '6', 'h4', 'h15', 'K9', 'hh6', '', 'h6h6'])('%s is not tabled', (fit) =>
    expect(fitLimits(mm(10), fit)).toBeUndefined(),
  );
  it.each([0, -5, 30.1, 100])('no fit for %d mm', (size) => expect(fitLimits(mm(size), 'h9')).toBeUndefined());
  it('what was not seen says so', () => {
    expect(['g6', 'H7', 'k6', 'c11', 'K7', 'h14'].map((fit) => fitLimits(mm(8), fit)?.standing)).toEqual([
      'standard',
      'standard',
      'from memory',
      'from memory',
      'from memory',
      'from memory',
    ]);
  });
  it('holes mirror shafts; a clearance fit clears, h touches H', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300_000 }).map(len),
        fc.constantFrom('c', 'd', 'e', 'f', 'g', 'h'),
        fc.integer({ min: 5, max: 13 }),
        (size, letter, grade) => {
          const shaft = fitLimits(size, `${letter}${grade}`);
          const hole = fitLimits(size, `${letter.toUpperCase()}${grade}`);
          expect(shaft && hole && shaft.upper === 0 - hole.lower && shaft.lower === 0 - hole.upper).toBe(true);
          expect(Number(shaft?.hi)).toBeLessThanOrEqual(Number(fitLimits(size, 'H7')?.lo));
        },
      ),
      { numRuns: 200 },
    );
  });
});

/** ISO 2768-1. */
const GENERAL: readonly (readonly [size: number, cls: 'f' | 'm' | 'c', half: number, source: string])[] = [
  [25, 'm', 0.2, 'table 1, scribd 585640440'],
  [5, 'f', 0.05, 'table 1, scribd 585640440'],
  [0.5, 'm', 0.1, 'table 1, scribd 585640440'],
  [3, 'm', 0.1, 'table 1, scribd 585640440'],
  [6, 'm', 0.1, 'table 1, scribd 585640440'],
  [6.0001, 'm', 0.2, 'table 1, scribd 585640440'],
  [30, 'm', 0.2, 'table 1, scribd 585640440'],
  [120, 'm', 0.3, 'table 1, scribd 585640440'],
  [400, 'm', 0.5, 'table 1, scribd 585640440'],
  [400, 'f', 0.2, 'table 1, scribd 585640440'],
  [50, 'c', 0.8, 'table 1, from memory'],
];
describe('general tolerances', () => {
  it.each(GENERAL)('%d mm %s is ±%d (%s)', (size, cls, half) => {
    expect(lookUpGeneral(mm(size), cls)?.half).toBe(mm(half));
    expect(generalTolerance(mm(size), cls)).toBe(mm(half));
  });
  it('a chamfer of 1 mm, m, is ±0.2 (table 2, camcut-group.com)', () => expect(lookUpChamfer(mm(1), 'm')?.half).toBe(mm(0.2)));
  it.each([0, 0.4999, 400.0001, -1])('nothing for %d mm', (size) => {
    expect(lookUpGeneral(mm(size), 'm')).toBeUndefined();
    expect(lookUpChamfer(mm(size), 'm')).toBeUndefined();
    expect(() => generalTolerance(mm(size), 'm')).toThrow(RangeError);
  });
  it.each([LINEAR, CHAMFER])('rows follow on, grow, and coarser is wider', (...table) => {
    table.forEach((row, i) => {
      expect(row.f <= row.m && row.m <= row.c && row.over < row.to).toBe(true);
      const before = table[i - 1];
      if (before) expect(before.to === row.over && before.m <= row.m).toBe(true);
    });
  });
  it('class c of table 1 says that it is from memory', () => expect(lookUpGeneral(mm(5), 'c')?.standing).toBe('from memory'));
});
