/** What hangs on the floor of a groove, held beyond it (common practice, no source: as far out as a bar of that diameter may stand). */
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';

const bobbin = (neck: number, far = 12) =>
  planOwn([
    ...['first: { letter: A }', 'second: { letter: B }', 'outside:', '  - { name: near, diameter: 16 mm, length: 12 mm }'],
    ...[`  - { name: neck, diameter: ${neck} mm, length: 3 mm, groove: yes }`, `  - { name: far, diameter: 16 mm, length: ${far} mm }`],
  ]);
const slender = (compiled: ReturnType<typeof bobbin>) => refusedOf(compiled).filter(({ because }) => because.rule === 'neck-slender');

describe('a part with a neck', () => {
  it('is faced beyond it where the neck is stiff', () => {
    expect(slender(bobbin(8))).toEqual([]);
    expect(ownPart(bobbin(8)).proof.holds).toBe(true);
  });
  it('is held on the piece that is to be faced where the neck is thin', () => {
    const compiled = bobbin(2);
    // 12 mm and the 3 mm of the groove, against four diameters of the neck
    expect(slender(compiled)[0]).toMatchObject({ has: mm(15), most: mm(8) });
    const { route, proof } = ownPart(compiled);
    const { from, to } = route.setUps.at(-1)?.grip ?? {};
    expect([from, to].every((at) => at !== undefined && at >= mm(15))).toBe(true);
    expect(proof.holds).toBe(true);
  });
  it('or is held beside it before the neck is cut, not after', () => {
    const { candidates, proof } = ownPart(bobbin(2));
    const early = candidates.grips.filter(({ id }) => id.endsWith('.before-neck'));
    expect(early.length).toBeGreaterThan(0);
    for (const { gone } of early) expect(gone).toContain('part/neck/groove');
    expect(proof.holds).toBe(true);
  });
  it('leaves the short end for last where no hold beyond is long enough', () => {
    const { route, proof } = ownPart(bobbin(1, 3));
    expect(route.setUps.at(-1)?.grip.out).toBe('first');
    expect(proof.holds).toBe(true);
  });
});
