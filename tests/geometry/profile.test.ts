import fc from 'fast-check';
import { expect, it } from 'vitest';
import { len } from '../../src/base/units.ts';
import { barProfile, boreProfile, insideOver, outsideOver, type Profile, removeProfile, turnProfile } from '../../src/geometry/profile.ts';

type Step = { readonly take: 'turn' | 'bore' | 'remove'; readonly from: number; readonly to: number; readonly d: number };
const step: fc.Arbitrary<Step> = fc
  .record({ take: fc.constantFrom('turn', 'bore', 'remove'), a: fc.nat(20), b: fc.nat(20), d: fc.nat(30) })
  .map(({ take, a, b, d }) => ({ take, from: Math.min(a, b), to: Math.max(a, b), d }) as Step);

function apply(profile: Profile, { take, from, to, d }: Step): Profile {
  if (take === 'turn') return turnProfile(profile, { from, to }, len(d));
  if (take === 'bore') return boreProfile(profile, { from, to }, len(d));
  return removeProfile(profile, { from, to });
}

it('agrees with a plain row of cells', () => {
  fc.assert(
    fc.property(fc.array(step, { maxLength: 12 }), fc.nat(20), fc.nat(20), (steps, p, q) => {
      const cells = Array.from({ length: 20 }, () => ({ outside: 25, inside: 0 }));
      for (const { take, from, to, d } of steps) {
        for (const cell of cells.slice(from, to)) {
          if (take === 'turn') cell.outside = Math.min(cell.outside, d);
          if (take === 'bore') cell.inside = Math.max(cell.inside, d);
          if (take === 'remove') [cell.outside, cell.inside] = [0, 0];
        }
      }
      const profile = steps.reduce(apply, barProfile(len(25)));
      const span = { from: Math.min(p, q), to: Math.max(p, q) };
      const seen = cells.slice(span.from, span.to);
      const metal = seen.filter((cell) => cell.outside > cell.inside);
      expect(outsideOver(profile, span)).toBe(Math.max(0, ...seen.map((cell) => cell.outside)));
      expect(insideOver(profile, span)).toBe(metal.length > 0 ? Math.min(...metal.map((cell) => cell.inside)) : undefined);
    }),
    { numRuns: 200, seed: 5 },
  );
});
