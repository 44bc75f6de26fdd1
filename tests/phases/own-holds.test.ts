/** What a shop says that its processes hold is what the chart reckons with. */
import { describe, expect, it } from 'vitest';
import { len, mm, toMm } from '../../src/base/units.ts';
import { FITTING_KINDS } from '../../src/fittings/kinds.ts';
import { held, heldBy, processes } from '../../src/handbook/capability.ts';
import { chart } from '../../src/phases/chart.ts';
import { read } from '../../src/phases/read.ts';
import { weighBy } from '../../src/rules/difficulty.ts';
import { demoFitting, demoWorkshop, partOf, routeOf } from '../fixtures/shop.ts';

const shopWith = (lines: string) => {
  const text = `${demoWorkshop.text.trimEnd()}\n${lines}\n`;
  return read({ fitting: demoFitting, workshop: { ...demoWorkshop, text } }, demoWorkshop, FITTING_KINDS);
};

describe('holds', () => {
  it.each([
    ['face', 'length', 'final', 0.02],
    ['face', 'length', 'rough', 0.1],
    ['face', 'diameter', 'final', undefined],
    ['turn', 'length', 'final', 0.05],
  ] as const)('%s %s %s', (process, measures, stage, band) => {
    const own = heldBy([{ process: 'face', length: mm(0.02) }]);
    if (band === undefined) expect(() => own(process, measures, stage, mm(10))).toThrow();
    else expect(toMm(own(process, measures, stage, mm(10)))).toBe(band);
  });
  it('are read from the workshop file', () => {
    const { value, found } = shopWith(
      'holds:\n  - { process: face, length: 0.02 mm }\n  - { process: bore, diameter: 0.03 mm, length: 0.2 mm }',
    );
    expect(found).toEqual([]);
    expect(value?.workshop.holds).toEqual([
      { process: 'face', length: mm(0.02) },
      { process: 'bore', diameter: mm(0.03), length: mm(0.2) },
    ]);
  });
  it('of a process that is none are refused', () => {
    expect(shopWith('holds: [{ process: mill, length: 0.02 mm }]').found.map((one) => one.code)).toEqual(['read.not-one-of']);
  });
  it('are what a working dimension is never finer than', () => {
    const part = partOf('seat-piece');
    const bands = (own: number) => {
      const working = chart(part, routeOf('seat-piece'), heldBy([{ process: 'groove', length: mm(own) }])).value?.working ?? [];
      return working.filter((one) => one.op.endsWith('groove') && one.measures === 'length').map((one) => toMm(one.holds));
    };
    expect([...new Set(bands(0.08))]).toEqual([0.08]);
    expect(chart(part, routeOf('seat-piece'), heldBy([{ process: 'groove', length: mm(0.3) }])).found.map((one) => one.code)).toContain(
      'chart.cannot-be-met',
    );
  });
  it('every process of the table can be named', () => {
    expect(processes()).toContain('part-off');
    for (const process of processes()) expect(process).toMatch(/^[a-z-]+$/);
    expect(held('face', 'length', 'final', len(1))).toBe(mm(0.05));
  });
});

describe('difficulty', () => {
  it('is read from the workshop file', () => {
    const { value, found } = shopWith('difficulty: [{ process: bore, weight: 4 }]');
    expect([found, value?.workshop.difficulty]).toEqual([[], [{ process: 'bore', weight: 4 }]]);
  });
  it.each([
    ['a process that is none', 'difficulty: [{ process: mill, weight: 4 }]', 'read.not-one-of'],
    ['a weight under the easiest', 'difficulty: [{ process: bore, weight: 0 }]', 'read.too-small'],
  ])('%s is refused', (_, lines, code) => expect(shopWith(lines).found.map((one) => one.code)).toEqual([code]));
  it.each([
    ['turn', 'final', 'outside', 10, 'bar', 100], // the easiest
    ['bore', 'final', 'inside', 10, 'bar', 300], // 2 × 1.5
    ['face', 'final', 'outside', 30, 'jaws', 180], // 1 × 1.5 × 1.2
    ['groove', 'final', 'outside', 10, 'threaded-mandrel', 210], // 1.5 × 1.4
    ['saw-off', 'rough', 'outside', 60, 'jaws', 100], // cut once more: nobody's dimension
    ['gauge', 'final', 'outside', 10, 'bar', 100], // not in the table: as easy as any
  ] as const)('%s (%s) %s %d in %s: %d', (verb, stage, side, length, kind, weight) => {
    const face = { shape: 'face', id: 'a', feature: 'a', role: 'free', side, air: 'first', z: mm(0) } as const;
    const operation = { verb } as never;
    expect(weighBy([])({ operation, stage, face, grip: { kind } as never, length: mm(length) })).toBe(weight);
  });
});
