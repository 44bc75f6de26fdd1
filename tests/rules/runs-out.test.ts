/** A hold that does not put work back as truly as is asked is told, and the truer hold that would make the part is tried. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const WORKSHOP = { name: 'bench-lathe.yaml', text: readFileSync(join(ROOT, 'specs', 'workshops', 'bench-lathe.yaml'), 'utf8') };
const bush = (within: string): string => `fitting: turned-part
title: Bush of the reversing lever
name: bush
material: PB102
first: { letter: A }
second: { letter: B }
outside:
  - { name: barrel, diameter: 18 h9, length: 30 mm }
inside:
  - { name: wide, diameter: 12 H8, from: first, depth: 10 mm, bottom: flat, letter: C }
  - { name: narrow, diameter: 9 H8, from: second, depth: 12 mm, bottom: flat, letter: D }
  - { name: passage, diameter: 7 mm, from: first, depth: through }
coaxial:
  - { of: narrow, to: wide, within: ${within} }
`;
const planned = (within: string) => compile({ fitting: { name: 'bush.yaml', text: bush(within) } }, { workshop: WORKSHOP });

describe('two bores in line, cut from opposite ends', () => {
  it('are made in a split sleeve, which runs out 0.05, where as much is allowed', () => {
    const { plan } = planned('0.05 mm');
    expect(plan?.parts.find(({ part }) => part.id === 'bush')?.route.setUps.map(({ grip }) => grip.kind)).toContain('sleeve');
  });
  it('are not where less is: either sleeve is told, and the truer one would do', () => {
    const { plan, noRoutes: none } = planned('0.03 mm');
    expect(plan).toBeUndefined();
    const told = none?.flatMap((one) => one.refused).filter(({ because }) => because.rule === 'hold-runs-out');
    expect(told?.map(({ what, has, most }) => [what, has, most])).toEqual([
      ['bush/barrel.sleeve.first', 500, 300],
      ['bush/barrel.sleeve.second', 500, 300],
    ]);
    expect(none?.flatMap((one) => one.wouldHelp.map(({ what }) => what))).toEqual([
      'bush/barrel.sleeve.first',
      'bush/barrel.sleeve.second',
    ]);
  });
});
