import { describe, expect, it } from 'vitest';
import { type Len, mm } from '../../src/base/units.ts';
import { depth, diameter, figureWithUnit, formula, limits, passes, range, short, size, thread } from '../../src/drawing/sheet/format.ts';

const between = (lo: number, target: number, hi: number): Parameters<typeof limits>[0] => ({
  lo: mm(lo),
  target: mm(target),
  hi: mm(hi),
  from: { kind: 'stated', as: '' },
});

describe('figures as a turner reads them', () => {
  it.each([
    ['even', between(13.95, 14, 14.05), '±0.05'],
    ['the form turned to', between(10.95, 11, 11), '+0 −0.05'],
    ['uneven', between(9.82, 9.9, 9.95), '+0.05 −0.08'],
    ['as many places either side', between(9.8, 9.9, 9.97), '+0.07 −0.10'],
    ['thousandths of a wide limit are let go, toward the size', between(9.794, 9.9, 9.974), '+0.07 −0.10'],
    ['thousandths of a close limit stay', between(3.992, 4, 4.012), '+0.012 −0.008'],
    ['never wider: just under a hundredth step', between(9.801, 9.9, 9.999), '±0.09'],
    ['general tolerance', between(15.8, 16, 16.2), '±0.2'],
  ])('%s: %j', (_, asked, shown) => {
    expect(limits(asked)).toBe(shown);
  });

  it.each<[string, string, string]>([
    ['size', size(mm(9.9)), '9.90'],
    ['size to a thousandth where it has one', size(mm(9.265)), '9.265'],
    ['less than nothing', size(mm(-0.5)), '−0.50'],
    ['diameter', diameter(mm(4.5)), 'Ø 4.50'],
    ['short', short(mm(4.2)), '4.2'],
    ['whole', short(mm(12)), '12'],
    ['depth to a tenth', depth(mm(7.358)), '7.4'],
    ['range', range(mm(9.794), mm(9.974)), '9.794 – 9.974'],
    ['thread', thread('M10x1'), 'M10×1'],
    ['formula', formula('c0 = sqrt((D/2)^2 - (d/2)^2) <= pi'), 'c0 = √((D/2)² − (d/2)²) ≤ π'],
    ['a derived length', figureWithUnit(1.6248, 'mm'), '1.625 mm'],
    ['what is no length', figureWithUnit(1.6248, 'N/mm2'), '1.62 N/mm²'],
    ['a large one', figureWithUnit(1413, 'm/s'), '1410 m/s'],
  ])('%s', (_, shown, wanted) => {
    expect(shown).toBe(wanted);
  });

  it.each<[readonly number[], string]>([
    [[], ''],
    [[0.3, 0.1], '0.3, 0.1'],
    [[0.5, 0.5, 0.5, 0.4, 0.15], '0.5 ×3, 0.4, 0.15'],
    [[0.1, 0.2, 0.1], '0.1, 0.2, 0.1'],
  ])('passes %j', (cuts, shown) => {
    expect(passes(cuts.map((cut): Len => mm(cut)))).toBe(shown);
  });
});
