/** The pocket of a thin pipe, too small for any boring tool of the drawer: refused with a drill that would do ground flat, and made with it. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import { compile } from '../../src/compile.ts';
import { type Change, refusedOf, workshopText } from '../fixtures/own-part.ts';

const INCH = readFileSync(new URL('../../specs/workshops/inch-lathe.yaml', import.meta.url), 'utf8');
const union = (pipe: string, workshop: string) =>
  compile(
    { fitting: { name: 'union.yaml', text: `fitting: union\ntitle: Union\npipe: ${pipe}\n` } },
    { workshop: { name: 'workshop.yaml', text: workshop } },
  );
const SMALL = '{ outside: 4 mm, wall: 0.5 mm }';
const FLAT: Change = ['flat-d-bits: [6.7 mm]', 'flat-d-bits: [6.7 mm, 4.1 mm]'];
const SQUARED = 'nipple/socket/flat-d-bit';
const squared = (compiled: ReturnType<typeof union>) =>
  compiled.plan?.parts
    .filter(({ part, route }) => part.id === 'nipple' && route.setUps.some((s) => s.operations.includes(SQUARED)))
    .flatMap(({ candidates }) => candidates.methods.flatMap(({ any }) => any.flatMap((method) => method.operations)))
    .find((o) => o.id === SQUARED);

describe('the pocket of a thin pipe', () => {
  it('is refused with the drill that would do, its end ground flat', () => {
    const { plan, noRoutes } = union(SMALL, workshopText([]));
    expect(plan).toBeUndefined();
    const help = noRoutes?.flatMap((none) => none.wouldHelp) ?? [];
    expect(help.map((r) => [r.what, r.because.rule, r.because.grounds])).toContainEqual([
      'nipple/socket/flat-d-bit',
      'no-flat-d-bit',
      { size: '4.1' },
    ]);
    // the overlap of a pipe of 4 mm: its own outside, 5 mm at least
    expect(help.find((r) => r.what === 'nipple/socket/bore')?.because.grounds.reach).toBe('5');
  });
  it('is made with it, taken at its word', () => {
    const compiled = union(SMALL, workshopText([FLAT]));
    expect(compiled.plan?.parts.filter((p) => !p.proof.holds)).toEqual([]);
    expect(toMm(squared(compiled)?.tool?.size ?? mm(0))).toBe(4.1);
  });
  it('is as wide as a number drill leaves it, where that is what is ground', () => {
    // number 10 is 0.1935 in; the pocket of a pipe of 3/16 in is 4.8625 to 5.0125 mm
    const compiled = union(
      '{ outside: 3/16 in, wall: 0.028 in }',
      INCH.replace('  files: yes', '  flat-d-bits: [0.1935 in]\n  files: yes'),
    );
    expect(compiled.plan?.parts.filter((p) => !p.proof.holds)).toEqual([]);
    expect(toMm(squared(compiled)?.tool?.size ?? mm(0))).toBe(4.9149);
  });
  it('is bored where a tool goes in, and nothing else is wanted', () => {
    const compiled = union('{ outside: 6 mm, wall: 0.8 mm }', workshopText([]));
    expect(compiled.plan?.parts.filter((p) => !p.proof.holds)).toEqual([]);
    expect(squared(compiled)).toBeUndefined();
    expect(refusedOf(compiled).map((r) => r.because.rule)).not.toContain('no-flat-d-bit');
  });
});
