/**
 * Parts as they come, on the three workshops that are shipped: each is refused with a code, and where nothing makes it with what is refused; or it
 * is planned, and the proof accepts the plan. Nothing throws.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';
import { anyPart, INCH, METRIC, type Stocked } from '../fixtures/any-part.ts';

const shop = (name: string) => ({ name, text: readFileSync(new URL(`../../specs/workshops/${name}`, import.meta.url), 'utf8') });
const SHOPS: readonly (readonly [name: string, stocked: Stocked])[] = [
  ['bench-lathe.yaml', METRIC],
  ['inch-lathe.yaml', INCH],
  ['small-lathe.yaml', METRIC],
];

describe.each(SHOPS)('any part on %s', (name, stocked) => {
  const workshop = shop(name);
  const planned = (lines: readonly string[]) =>
    compile(
      { fitting: { name: 'part.yaml', text: ['fitting: turned-part', 'title: Part', 'name: part', ...lines].join('\n') }, workshop },
      { workshop },
    );

  it('is refused with a code and its reasons, or planned and proved', () => {
    const seen = { proved: 0, refused: 0 };
    fc.assert(
      fc.property(anyPart(stocked), (lines) => {
        const { plan, found, noRoutes } = planned(lines);
        seen[plan ? 'proved' : 'refused'] += 1;
        const failing = plan?.parts.flatMap(({ part, proof }) =>
          proof.claims.flatMap((one) => (one.holds ? [] : [`${part.id}: ${one.kind} ${one.about}`])),
        );
        expect(failing ?? [], lines.join('\n')).toEqual([]);
        if (!plan) expect(found.filter((one) => one.severity === 'error' && one.code !== '').length).toBeGreaterThan(0);
        for (const none of noRoutes ?? []) expect(none.refused.length, lines.join('\n')).toBeGreaterThan(0);
      }),
      { numRuns: 25, seed: 3, endOnFailure: true },
    );
    expect(seen.refused).toBeGreaterThan(0);
    expect(seen.proved).toBeGreaterThan(0);
  });
});
