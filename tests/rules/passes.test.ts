import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { alongReadings, crossReadings, crossUnit, readAlong, readCross } from '../../src/rules/dials.ts';
import { splitPasses } from '../../src/rules/passes.ts';

const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);
const tenths = (list: readonly number[]): number[] => list.map((one) => one / 10_000);

describe('cuts that end on size', () => {
  it.each([
    ['a finishing cut last', 2, 0.5, 0.15, 0.01, 0.02, 1, [0.5, 0.5, 0.5, 0.35, 0.15]],
    ['roughing that comes out even', 1.15, 0.5, 0.15, 0.01, 0.02, 1, [0.5, 0.5, 0.15]],
    ['less than a finishing cut', 0.1, 0.5, 0.15, 0.01, 0.02, 1, [0.1]],
    ['nothing to finish', 0.6, 0.3, 0, 0.01, 0.02, 1, [0.3, 0.3]],
    ['the last two alike', 1.3, 0.5, 0.15, 0.01, 0.02, 2, [0.5, 0.5, 0.15, 0.15]],
    ['too little for two alike', 0.4, 0.5, 0.15, 0.01, 0.02, 2, [0.25, 0.15]],
    ['a dial of 0.025: whole divisions, what is left over at the end', 1.21, 0.5, 0.15, 0.025, 0.02, 1, [0.375, 0.375, 0.3, 0.16]],
    [
      'a short last roughing cut rather than odd figures',
      4.5,
      0.5,
      0.15,
      0.01,
      0.02,
      2,
      [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.2, 0.15, 0.15],
    ],
    ['an inch dial: whole thousandths', 1.016, 0.508, 0.1524, 0.0254, 0.02, 1, [0.508, 0.3556, 0.1524]],
    ['stainless: no cut under a tenth is left over', 0.2, 0.4, 0.15, 0.01, 0.1, 1, [0.1, 0.1]],
    ['stainless: one cut, where two would rub', 0.18, 0.4, 0.15, 0.01, 0.1, 1, [0.18]],
  ] as const)('%s: %f a side, %f at most, %f to finish', (_what, stock, deepest, finish, unit, least, alike, cuts) => {
    const ask = { stock: mm(stock), deepest: mm(deepest), finish: mm(finish), unit: mm(unit), least: mm(least), alike };
    expect(tenths(splitPasses(ask))).toEqual(cuts);
  });
  const asks = fc.record({
    ...{ stock: fc.nat(60_000), deepest: fc.integer({ min: 300, max: 15_000 }), finish: fc.nat(2000) },
    ...{ unit: fc.constantFrom(50, 100, 125, 200, 254), least: fc.constantFrom(200, 1000), alike: fc.constantFrom(1 as const, 2 as const) },
  });
  type Ask = Parameters<typeof splitPasses>[0];
  /** As the planner asks: a depth is a whole number of divisions, and no less than the least cut. */
  const asAsked = (ask: { readonly [K in keyof Ask]: number }): Ask =>
    ({ ...ask, deepest: Math.max(ask.least, ask.unit, ask.deepest - (ask.deepest % ask.unit)) }) as Ask;
  it('add up to the stock; none deeper than may be; none of nothing; none rubs, unless there is no more', () => {
    fc.assert(
      fc.property(asks, (plain) => {
        const ask = asAsked(plain);
        const cuts = splitPasses(ask);
        expect(sum(cuts)).toBe(ask.stock);
        for (const cut of cuts) expect(cut > 0 && cut <= ask.deepest).toBe(true);
      }),
      { seed: 7, numRuns: 500 },
    );
  });
  it('a deeper cut never asks for more of them', () => {
    fc.assert(
      fc.property(asks, fc.nat(10_000), (plain, more) => {
        const count = (deepest: number): number => splitPasses(asAsked({ ...plain, deepest })).length;
        expect(count(plain.deepest + more)).toBeLessThanOrEqual(count(plain.deepest));
      }),
      { seed: 8, numRuns: 500 },
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
  it('after each pass the dial stands where the passes so far have brought it; the last is the whole', () => {
    const passes = [0.5, 0.5, 0.35, 0.15].map(mm);
    const shown = (reads: 'diameter' | 'travel') =>
      crossReadings(dials(reads), passes, mm(3)).map(({ turns, divisions }) => [turns, divisions]);
    expect(shown('diameter')).toEqual([
      [0, 50],
      [1, 0],
      [1, 35],
      [1, 50],
    ]);
    expect(shown('travel')).toEqual([
      [0, 25],
      [0, 50],
      [0, 67.5],
      [0, 75],
    ]);
    expect(alongReadings(dials('travel'), 'top', [0.4, 0.6].map(mm)).map((r) => r.total)).toEqual([mm(0.4), mm(1)]);
  });
  it('a division takes half of what a dial of diameters says, or all of what one of travel says', () => {
    expect([crossUnit(dials('diameter')), crossUnit(dials('travel'))]).toEqual([mm(0.01), mm(0.02)]);
  });
});
