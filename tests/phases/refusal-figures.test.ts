/** Whatever is refused with figures: there is less than it wants, or more than it may be, and it can be seen from what is printed. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { mm, showMm } from '../../src/base/units.ts';
import { compile } from '../../src/compile.ts';
import type { Refusal } from '../../src/model/plan.ts';
import { candidates } from '../../src/phases/candidates.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { partOf, routeOf, type shop, withTools } from '../fixtures/shop.ts';

const SPECS = join(import.meta.dirname, '..', '..', 'specs');
const file = (name: string) => ({ name, text: readFileSync(join(SPECS, name), 'utf8') });

const isFalse = ({ has, wants, most }: Refusal): boolean => {
  if (has === undefined) return wants !== undefined && most !== undefined;
  const other = wants ?? most;
  if (has <= 0 || other === undefined || (wants !== undefined && most !== undefined)) return true;
  return showMm(has) === showMm(other) || (wants !== undefined ? has > wants : has < other);
};
const told = (refused: readonly Refusal[]) => {
  const withFigures = refused.filter((r) => r.has !== undefined || r.wants !== undefined || r.most !== undefined);
  expect(
    withFigures.filter(isFalse).map(({ what, because, has, wants, most }) => ({ what, rule: because.rule, has, wants, most })),
  ).toEqual([]);
  return withFigures.length;
};

describe('figures of refusals', () => {
  it('are true in every plan', () => {
    const counts = everyPlan.map(({ plan }) => told(plan.parts.flatMap(({ candidates: { refused } }) => refused)));
    expect(counts.reduce((sum, n) => sum + n, 0)).toBeGreaterThan(200);
  });

  it.each(['small-lathe', 'inch-lathe'])('are true on the %s, where much is refused', (lathe) => {
    const names = readdirSync(join(SPECS, 'fittings', 'parts')).filter((_, i) => i % 2 === 0);
    const counts = names.map((name) => {
      const { plan, noRoutes = [] } = compile(
        { fitting: file(`fittings/parts/${name}`), workshop: file(`workshops/${lathe}.yaml`) },
        { workshop: file('workshops/bench-lathe.yaml') },
      );
      return told([...(plan?.parts ?? []).flatMap((one) => one.candidates.refused), ...noRoutes.flatMap((none) => none.refused)]);
    });
    expect(counts.reduce((sum, n) => sum + n, 0)).toBeGreaterThan(30);
  });

  it('name the hole that no boring tool enters', () => {
    const refusedWith = (boring: typeof shop.tools.boring) =>
      candidates(partOf('seat-piece'), withTools({ boring })).refused.find((r) => r.what === 'seat-piece/bore/bore-start');
    expect(
      routeOf('seat-piece')
        .chosen.flatMap((m) => m.operations)
        .find((o) => o.id === 'seat-piece/bore/drill')?.tool.size,
    ).toBe(mm(4.2));
    expect(refusedWith([{ smallest: mm(6), reach: mm(30) }])).toMatchObject({
      because: { rule: 'no-boring-tool' },
      has: mm(6),
      most: mm(4.2),
    });
    expect(refusedWith([])).toMatchObject({ because: { rule: 'no-boring-tool' }, most: mm(4.2) });
    expect(refusedWith([])?.has).toBeUndefined();
    expect(refusedWith([{ smallest: mm(4), reach: mm(2) }])).toMatchObject({ because: { rule: 'boring-reach' }, has: mm(2) });
  });
});
