/** Drills into holes with a floor: how deep they go where the hole begins behind a larger one, and how deep the centre drill before them. */
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { centreDrill } from '../../src/rules/tools.ts';
import { ownPart, planOwn } from '../fixtures/own-part.ts';
import { shop } from '../fixtures/shop.ts';

const part = (...inside: readonly string[]): readonly string[] => [
  ...['first: { letter: A }', 'second: { letter: B }', 'outside:', '  - { name: stem, diameter: 10 mm, length: 12 mm }'],
  ...['  - { name: body, diameter: 18 mm, length: 24 mm }', 'inside:', ...inside.map((line) => `  - { ${line} }`)],
];

describe('a blind hole behind a larger one', () => {
  it('is drilled as deep as it is drawn, counted from the end', () => {
    const planned = ownPart(
      planOwn(
        part(
          'name: mouth, diameter: 7.6 mm, from: second, depth: 8 mm, bottom: flat, role: clearance',
          'name: bore, diameter: 4 mm, from: second, depth: 16 mm, role: clearance',
        ),
      ),
    );
    const drill = planned.route.chosen.flatMap((m) => m.operations).find((o) => o.feature === 'part/bore' && o.verb === 'drill');
    expect(drill?.ways.second?.sweeps[0]).toMatchObject({ take: 'bore', to: { face: 'part/B', beyond: mm(16) } });
    expect(planned.proof.holds).toBe(true);
  });
});

describe('the centre drill before a shallow floor', () => {
  // ISO 866 A: A2.5 is 3.1 + 2.42 long to its mouth, A1 1.3 + 0.97
  it('is short enough to stay above it', () => {
    expect(centreDrill(shop, mm(8), mm(6))?.tool.name).toBe('A2.5/5.3');
    expect(centreDrill(shop, mm(8), mm(3.8))?.mouth).toBeLessThan(mm(5.3));
    expect(ownPart(planOwn(part('name: well, diameter: 12.1 mm, from: second, depth: 4 mm, bottom: flat'))).proof.holds).toBe(true);
  });
});

describe('a drill that opens out a smaller hole for the boring tool', () => {
  const steps = (depth: string): readonly string[] =>
    ownPart(
      planOwn(
        part(
          'name: bore, diameter: 8 H8, from: second, depth: through, role: running',
          `name: recess, diameter: 12 mm, from: second, depth: ${depth}, bottom: flat`,
        ),
      ),
    ).route.setUps.flatMap((s) => s.operations.filter((id) => id.startsWith('part/recess/')).map((id) => id.slice('part/recess/'.length)));
  it('is left out where its point would take up most of the depth: a 4 mm boring tool goes into 8 mm as it is', () => {
    expect(steps('4 mm')).toEqual(['bore']);
  });
  it('is used where it goes in at its full diameter most of the way', () => expect(steps('12 mm')).toEqual(['drill', 'bore']));
});
