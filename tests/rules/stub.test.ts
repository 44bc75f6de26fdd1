/** A chucking stub is long enough to hold by, however wide the blade that parts it. */
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import { compile } from '../../src/compile.ts';
import type { Part } from '../../src/model/part.ts';
import { stubLength } from '../../src/rules/stub.ts';
import { workshopText } from '../fixtures/own-part.ts';
import { demoFitting } from '../fixtures/shop.ts';

const long = (across: number, blade: number): number =>
  toMm(
    stubLength({ stock: { from: 'bar', across: mm(across) } } as Part, { kind: 'parting', key: 'blade', size: mm(blade), material: 'HSS' }),
  );

describe('a chucking stub', () => {
  it.each([
    // as long as its bar is thick; common practice, no source
    [18, 2, 18],
    [25, 2, 25],
    // eight tenths of the bar to hold by, the blade, and 1 mm that it stays from the jaws; common practice, no source
    [18, 3, 18.4],
    [12, 2, 12.6],
  ])('from bar of %s mm, by a blade of %s mm, is %s mm long', (across, blade, expected) =>
    expect(long(across, blade)).toBeCloseTo(expected, 4),
  );

  it('holds the body of the demo after a wide blade too', () => {
    const shop = { name: 'workshop.yaml', text: workshopText([['parting: { width: 2 mm,', 'parting: { width: 3 mm,']]) };
    const { plan, noRoutes } = compile({ fitting: demoFitting }, { workshop: shop });
    expect(noRoutes ?? []).toEqual([]);
    expect(plan?.parts.filter((p) => !p.proof.holds)).toEqual([]);
  });
});
