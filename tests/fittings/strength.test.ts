/** What a wall bears at the pressure asked for: shown with its margin, and refused where that is under 1. */
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { newBook } from '../../src/fittings/book.ts';
import { noteStrength } from '../../src/fittings/strength.ts';
import { findMaterial } from '../../src/handbook/materials.ts';

const material = findMaterial('PB102');
if (!material) throw new Error('no PB102');

function wall(inside: number, outside: number, pressure: number) {
  const book = newBook();
  const pipe = { outside: mm(6), wall: mm(0.8) };
  const walls = [{ where: 'body', inside: mm(inside), outside: mm(outside) }];
  noteStrength({ pressure, material: material as NonNullable<typeof material>, walls, joints: [], pipe, soldered: 'yes' }, book);
  const margin = book.derivations.find(({ of }) => of === 'wall-margin')?.value ?? Number.NaN;
  return { margin, refused: book.found.filter(({ code }) => code === 'design.bears-too-little') };
}

describe('a wall', () => {
  it('that bears its pressure is not refused', () => {
    const { margin, refused } = wall(10, 14, 10);
    expect(margin).toBeGreaterThan(1);
    expect(refused).toEqual([]);
  });
  it('that does not is refused, with what it would bear: pressure times margin', () => {
    const { margin, refused } = wall(40, 42, 20);
    expect(margin).toBeLessThan(1);
    // thin tube: p r / t = 2 x 20 / 1, N/mm2, to some per cent (Barlow)
    const thick = wall(40, 42, 10);
    expect(thick.margin / margin).toBeCloseTo(2, 9);
    expect(refused.map(({ severity, grounds }) => [severity, grounds.where, grounds.pressure])).toEqual([['error', 'body', 20]]);
    expect(Number(refused[0]?.grounds.carries)).toBeCloseTo(20 * margin, 9);
  });
});
