import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { readAlong, readCross } from '../../src/rules/dials.ts';
import { splitPasses } from '../../src/rules/passes.ts';

const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);
const tenths = (list: readonly number[]): number[] => list.map((one) => one / 10_000);

describe('cuts that end on size', () => {
  it.each([
    [2, 0.5, 0.15, [0.5, 0.5, 0.5, 0.35, 0.15]],
    [1.15, 0.5, 0.15, [0.5, 0.5, 0.15]],
    [0.1, 0.5, 0.15, [0.1]],
    [0.6, 0.3, 0, [0.3, 0.3]],
  ])('%f a side, %f at most, %f to finish', (stock, deepest, finish, cuts) => {
    expect(tenths(splitPasses({ stock: mm(stock), deepest: mm(deepest), finish: mm(finish) }))).toEqual(cuts);
  });
  const asks = fc.record({ stock: fc.nat(60_000), deepest: fc.integer({ min: 300, max: 15_000 }), finish: fc.nat(2000) });
  it('add up to the stock; none deeper than may be; none of nothing', () => {
    fc.assert(
      fc.property(asks, ({ stock, deepest, finish }) => {
        const cuts = splitPasses({ stock: len(stock), deepest: len(deepest), finish: len(finish) });
        expect(sum(cuts)).toBe(stock);
        for (const cut of cuts) expect(cut > 0 && cut <= deepest).toBe(true);
      }),
      { seed: 7 },
    );
  });
  it('a deeper cut never asks for more of them', () => {
    fc.assert(
      fc.property(asks, fc.nat(10_000), ({ stock, deepest, finish }, more) => {
        const count = (most: number): number => splitPasses({ stock: len(stock), deepest: len(most), finish: len(finish) }).length;
        expect(count(deepest + more)).toBeLessThanOrEqual(count(deepest));
      }),
      { seed: 8 },
    );
  });
});

const dial = (reads: 'diameter' | 'travel', division: number, turn: number) => ({ reads, division: mm(division), turn: mm(turn) });
const dials = (reads: 'diameter' | 'travel'): Workshop['lathe']['dials'] => ({
  cross: dial(reads, 0.02, 2),
  top: dial('travel', 0.02, 1),
  tailstock: dial('travel', 0.05, 2),
});

describe('dials', () => {
  it('16.40 to 15.00 on a dial of travel, 0.02 a division: 0.70 of slide, 35 divisions', () => {
    expect(readCross(dials('travel'), mm(1.4))).toEqual({ which: 'cross', turns: 0, divisions: 35, total: mm(0.7) });
  });
  it('the same on a dial that reads diameter: 70 divisions', () => {
    expect(readCross(dials('diameter'), mm(1.4))).toEqual({ which: 'cross', turns: 0, divisions: 70, total: mm(1.4) });
  });
  it('14.35 of drilling: seven turns and seven divisions', () => {
    expect(readAlong(dials('travel'), 'tailstock', mm(14.35))).toEqual({ which: 'tailstock', turns: 7, divisions: 7, total: mm(14.35) });
  });
  it('a carriage without a dial: the top slide', () => expect(readAlong(dials('travel'), 'carriage', mm(0.3)).which).toBe('top'));
  it('turns and divisions add up to the movement', () => {
    fc.assert(
      fc.property(fc.nat(600_000), fc.constantFrom('diameter' as const, 'travel' as const), (change, reads) => {
        const ours = dials(reads);
        const { turns, divisions, total } = readCross(ours, len(change));
        expect(turns * ours.cross.turn + divisions * ours.cross.division).toBeCloseTo(total, 6);
        expect(divisions * ours.cross.division).toBeLessThan(ours.cross.turn);
        expect(Math.abs(total - (reads === 'diameter' ? change : change / 2))).toBeLessThan(1);
      }),
      { seed: 10 },
    );
  });
});
