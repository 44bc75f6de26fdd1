/** A reamer's lead is under size: depth counts from behind it, and the drill before it leaves it room (DIN 212, from memory). */
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { ownPart, planOwn } from '../fixtures/own-part.ts';

const BUSH = [
  ...['first: { letter: A }', 'second: { letter: B }', 'outside: [{ name: barrel, diameter: 14 mm, length: 14 mm }]'],
  'inside: [{ name: bore, diameter: 8 H8, from: first, depth: through, role: running }]',
];

describe('a reamed hole', () => {
  const planned = ownPart(planOwn(BUSH));
  const made = (verb: string) =>
    planned.route.chosen.flatMap((m) => m.operations).find((o) => o.feature === 'part/bore' && o.verb === verb);
  it('is told from the end of the lead, so that no part of the hole stays under size', () => {
    const figures = planned.figures.find((one) => one.op === made('ream')?.id);
    expect(figures?.zero).toEqual({ at: 'lead' });
    expect(figures?.depth).toBe(mm(14.5));
  });
  it('is drilled so much deeper into the bar, past the far face', () => {
    const [sweep] = made('drill')?.ways.first?.sweeps ?? [];
    expect(sweep).toMatchObject({ take: 'bore', diameter: mm(7.8), to: { face: 'part/B', beyond: mm(2.5) } });
    expect(planned.proof.holds).toBe(true);
  });
});
