/** Wide and short: a flange that is longer than jaws need and shorter than a sleeve does, and a wheel whose drawing leaves three tenths open. */
import { describe, expect, it } from 'vitest';
import { holdsOf, ownPart, planOwn } from '../fixtures/own-part.ts';

const THICK: readonly [string, string] = ['18, 20, 22, 25], length: 300 mm }', '18, 20, 22, 25, 28, 36], length: 300 mm }'];
const PARTED: readonly [string, string] = ['largest: 30 mm }', 'largest: 40 mm }'];

/** 26 mm wants 7.8 mm of a sleeve; the hole is too small for a spigot to hold so wide a disc. */
const flange = [
  ...['first: { letter: A, role: sealing }', 'second: { letter: B, role: register }'],
  'outside: [{ name: rim, diameter: 26 mm, length: 4 mm }]',
  'inside: [{ name: bore, diameter: 8.6 +0.05 -0, from: first, depth: through, role: register }]',
];

describe('a thin flange', () => {
  it('is faced on its other side in soft jaws bored with a step', () => {
    const compiled = planOwn(flange, [THICK, PARTED]);
    expect(holdsOf(compiled)).toEqual(['bar', 'bored-jaws']);
    expect(ownPart(compiled).proof.holds).toBe(true);
  });
  it('is refused without them, with the sleeve that is too short', () => {
    const { noRoutes } = planOwn(flange, [THICK, PARTED, ['soft-jaws: yes', 'soft-jaws: no']]);
    const rules = noRoutes?.[0]?.refused.map((one) => one.because.rule);
    expect(rules).toContain('grip-short');
    expect(rules).not.toContain('in-bored-jaws');
  });
});

describe('a wheel of 32 mm', () => {
  it('is held where jaws are bored to it as it came out, over all that ISO 2768-1 m leaves open', () => {
    const compiled = planOwn(
      [
        ...['first: { letter: A }', 'second: { letter: B }'],
        'outside:',
        '  - { name: hub, diameter: 10 mm, length: 3 mm }',
        '  - { name: rim, diameter: 32 mm, length: 6 mm, knurl: yes }',
        'inside: [{ name: hole, diameter: 5 +0.1 -0, from: first, depth: through }]',
      ],
      [THICK, PARTED],
    );
    expect(holdsOf(compiled)).toEqual(['bar', 'bored-jaws']);
    expect(ownPart(compiled).proof.claims.filter((one) => !one.holds)).toEqual([]);
  });
});
