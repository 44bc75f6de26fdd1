/** Quantities as written: what each is worth, and what cannot be. */
import { describe, expect, it } from 'vitest';
import { type QuantityKind, readQuantity, unitsOf } from '../../src/base/quantity.ts';
import { mm } from '../../src/base/units.ts';

describe('lengths, in units of 0.1 um', () => {
  it.each<[string | number, number]>([
    ['6 mm', 60_000],
    ['6mm', 60_000],
    [6, 60_000],
    ['6', 60_000],
    [0.8, 8_000],
    ['.5 mm', 5_000],
    ['1.2 cm', 120_000],
    ['1 in', 254_000],
    ['1"', 254_000],
    ['1/4 in', 63_500],
    ['1/4"', 63_500],
    ['1/4″', 63_500],
    ['1 1/2 in', 381_000],
    ['1-1/2 in', 381_000],
    ['1½ in', 381_000],
    ['¼ in', 63_500],
    ['3/16 inch', 47_625],
    // 15.875 / 4 = 3.96875 mm: a half, to the even unit
    ['5/32 in', 39_688],
    // 25.4 / 64 = 0.396875 mm
    ['1/64 in', 3_969],
    ['0.5 thou', 127],
    ['25 thou', 6_350],
    ['1/2 mm', 5_000],
    ['0.00005 mm', 0],
    ['0.00015 mm', 2],
    ['-0.05 mm', -500],
    ['−0.05 mm', -500],
    ['6 MM', 60_000],
    ['6\u00a0mm', 60_000],
  ])('%s', (written, units) => expect(readQuantity(written, 'length')).toBe(units));
  it('rounds as the rest of the program does', () => expect(readQuantity('2.12 mm', 'length')).toBe(mm(2.12)));
});

describe('other kinds', () => {
  // 1 psi = 6894.757 Pa and 1 hp = 745.6999 W: NIST SP 811, appendix B.8, from memory; further digits from the definitions
  it.each<[string, QuantityKind, number]>([
    ['7 bar', 'pressure', 7],
    ['100 psi', 'pressure', 6.894757293168],
    ['700 kPa', 'pressure', 7],
    ['0.7 MPa', 'pressure', 7],
    ['240 /min', 'speed', 240],
    ['240/min', 'speed', 240],
    ['240 rpm', 'speed', 240],
    ['45 deg', 'angle', 45],
    ['45°', 'angle', 45],
    ['400 W', 'power', 400],
    ['0.4 kW', 'power', 400],
    ['1/2 hp', 'power', 372.84993579],
    ['170 °C', 'temperature', 170],
    ['170 ℃', 'temperature', 170],
  ])('%s as %s', (written, kind, value) => expect(readQuantity(written, kind)).toBeCloseTo(value, 8));
  it.each<[string | number, number]>([
    [40, 40],
    ['40', 40],
    [0, 0],
  ])('%s as a count', (written, value) => expect(readQuantity(written, 'count')).toBe(value));
});

describe('what cannot be', () => {
  it.each<[string | number, QuantityKind, string]>([
    ['7 mm', 'pressure', 'read.wrong-unit'],
    ['7 bar', 'length', 'read.wrong-unit'],
    ['45 deg', 'temperature', 'read.wrong-unit'],
    ['20 mm', 'count', 'read.count-with-unit'],
    [7, 'pressure', 'read.unit-missing'],
    ['240', 'speed', 'read.unit-missing'],
    ['7 bra', 'pressure', 'read.unknown-unit'],
    ["6'", 'length', 'read.unknown-unit'],
    ['6 mm 7', 'length', 'read.unknown-unit'],
    ['1/4', 'length', 'read.fraction-without-unit'],
    ['0,8 mm', 'length', 'read.decimal-comma'],
    ['1,000', 'count', 'read.decimal-comma'],
    [2.5, 'count', 'read.not-whole'],
    ['six', 'length', 'read.not-a-quantity'],
    ['', 'length', 'read.not-a-quantity'],
    ['mm', 'length', 'read.not-a-quantity'],
    ['1/0 in', 'length', 'read.not-a-quantity'],
    ['#40', 'length', 'read.not-a-quantity'],
    ['9'.repeat(50), 'length', 'read.not-a-quantity'],
    ['9999999999 mm', 'length', 'read.huge-number'],
    [Number.NaN, 'length', 'read.huge-number'],
    [Number.POSITIVE_INFINITY, 'count', 'read.huge-number'],
  ])('%s as %s: %s', (written, kind, problem) => expect(readQuantity(written, kind)).toMatchObject({ problem }));
  it('names the unit that may have been meant, and those that there are', () => {
    expect(readQuantity('7 bra', 'pressure')).toMatchObject({ grounds: { near: 'bar', units: 'bar, psi, kPa, MPa' } });
    expect(unitsOf('count')).toBe('');
  });
});
