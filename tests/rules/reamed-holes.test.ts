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

describe('a hole with limits closer than a boring tool holds, and no role', () => {
  const with6 = (limits: string, more = '') =>
    ownPart(planOwn([...BUSH.slice(0, 3), `inside: [{ name: bore, diameter: ${limits}, from: first, depth: through${more} }]`]));
  const verbs = (part: ReturnType<typeof with6>) =>
    part.route.chosen.flatMap((m) => m.operations).flatMap((o) => (o.feature === 'part/bore' ? [o.verb] : []));
  it.each(['', ', role: clearance', ', cone: { at: both, angle: 60 deg, mouth: 9 mm, role: sealing }'])('is reamed%s', (more) => {
    // 6 H8 is 18 µm wide (ISO 286-2), a division of the dial 20
    const part = with6('6 H8', more);
    expect(verbs(part)).toContain('ream');
    expect(part.proof.holds).toBe(true);
  });
  it('and as before where it is wide enough', () => {
    expect(verbs(with6('6 H9'))).not.toContain('ream');
  });
});
