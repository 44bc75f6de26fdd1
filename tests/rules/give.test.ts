/** How deep a cut slender work and a thin bar bear, by hand from the figures of beams (303, 6 by 40 under 30 N gives 0.0516). */
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { findMaterial } from '../../src/handbook/materials.ts';
import { type Beam, barGive, finishBound, roughBound, springs, workGive } from '../../src/rules/give.ts';

const ROD = [{ long: 40, outside: 6, inside: 0 }];
const free: Beam = { lengths: ROD, at: 40 };
/** 3563 N/mm2 at 0.08 (ISCAR, group 14, worked out), 1.3 for thin chips, 0.3 of it radial. */
const PUSH = 3563 * 1.3 * 0.08 * 0.3;
const modulus = findMaterial('303')?.modulus ?? Number.NaN;

describe('give', () => {
  it('of a free rod is as its beam’s', () => {
    expect(workGive(free, '303', 0.08) / ((0.0516 / 30) * PUSH * (195 / modulus))).toBeCloseTo(1, 2);
  });
  it('a centre takes nearly all of it away: 0.00152 where it is worst, for 30 N', () => {
    const held: Beam = { lengths: ROD, at: 24, centre: 40 };
    expect(workGive(held, '303', 0.08) / ((0.00152 / 30) * PUSH * (195 / modulus))).toBeCloseTo(1, 2);
  });
  it('of a metal that no table knows is not guessed', () => expect(workGive(free, 'unobtainium', 0.08)).toBe(0));
  it('a bar half as thick gives sixteen times as much', () => {
    expect(barGive(mm(3), mm(12), '303', 0.05) / barGive(mm(6), mm(12), '303', 0.05)).toBeCloseTo(16, 9);
  });
  it('a final cut pushes aside a quarter of the band, on diameter; a roughing cut half of what is left', () => {
    expect(finishBound(0.2, mm(0.08), 'bound.work-gives')[0]?.most).toBeCloseTo(0.05, 9);
    expect(roughBound(0.2, mm(0.15), 'bound.bar-gives')[0]?.most).toBeCloseTo(0.375, 9);
    expect(finishBound(0, mm(0.08), 'bound.work-gives')).toEqual([]);
  });
  it('asks for a spring pass from half of that', () => {
    expect([springs(0.2, mm(0.02), mm(0.08)), springs(0.2, mm(0.03), mm(0.08))]).toEqual([false, true]);
  });
});
