/** Rounded edges and fillets in use: by which tool, in what order, how wide, and that whatever is planned is proved. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import type { Operation } from '../../src/model/plan.ts';
import { stairsOf } from '../../src/rules/methods/radii.ts';
import { type Change, ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';

const ENDS = ['first: { letter: A }', 'second: { letter: B }'];
const part = (...outside: readonly string[]): readonly string[] => [...ENDS, 'outside:', ...outside.map((line) => `  - { ${line} }`)];
const knob = (radius: string) => part(`name: knob, diameter: 20 mm, length: 18 mm, radius: ${radius}, radius-at: first`);
const arcOps = (lines: readonly string[], changes: readonly Change[] = []): readonly Operation[] =>
  ownPart(planOwn(lines, changes)).route.chosen.flatMap((m) => m.operations.filter((o) => o.verb === 'form' || o.verb === 'steps'));
const DRAWER: Change = ['  files: yes', '  files: yes\n  radius-tools: [1 mm, 2 mm]\n  round-nosed: [0.6 mm]'];

describe('a radius', () => {
  // common practice, no source: a form tool up to 5 mm wide on a small lathe
  it.each([
    ['in the drawer', '2 mm', [DRAWER], 'form', 'radius', 2],
    ['near enough to one in the drawer', '1.9 mm', [DRAWER], 'form', 'radius', 2],
    ['too far from all in the drawer', '1.9 ±0.05', [DRAWER], 'form', 'radius-to-grind', 1.9],
    ['in a shop without such tools', '2 mm', [], 'form', 'radius-to-grind', 2],
    ['as wide as a form tool goes', '5 ±0.2', [], 'form', 'radius-to-grind', 5],
  ] as const)('%s', (_, radius, changes, verb, kind, size) => {
    const [op] = arcOps(knob(radius), changes);
    expect([op?.verb, op?.tool.kind, op?.tool.size]).toEqual([verb, kind, mm(size)]);
  });
  it('too wide for a form tool is turned in steps and filed, and the form tool is refused with its figures', () => {
    const planned = planOwn(knob('7 ±0.2'));
    expect(arcOps(knob('7 ±0.2')).map((o) => o.verb)).toEqual(['steps']);
    const refused = refusedOf(planned).find((r) => r.because.rule === 'form-wide');
    expect([refused?.has, refused?.wants]).toEqual([mm(5), mm(7)]);
  });
  it('in steps leaves metal over the whole curve, and not much', () => {
    const planned = ownPart(planOwn(knob('7 ±0.2'))).part;
    const arc = planned.surfaces.find((s) => s.shape === 'arc');
    if (arc?.shape !== 'arc') throw new Error('no arc');
    const curve = (z: number): number => 20 - 14 + 2 * Math.sqrt(7 ** 2 - (7 - z) ** 2);
    const stairs = stairsOf(planned, arc).map(({ far, diameter }) => [toMm(far), toMm(diameter)] as const);
    expect(stairs.length).toBe(13);
    for (const [z, d] of stairs) expect([d >= curve(z), d < curve(z) + 0.5]).toEqual([true, true]);
  });
});

describe('a fillet', () => {
  const pin = part('name: pin, diameter: 6 mm, length: 16 mm, fillet: 0.6 ±0.1', 'name: head, diameter: 12 mm, length: 5 mm');
  it('is left by the turning tool and finished by a round nose, after face and cylinder', () => {
    const planned = ownPart(planOwn(pin, [DRAWER]));
    const order = planned.route.setUps.flatMap((s) => s.operations);
    expect(order.indexOf('part/pin/turn')).toBeLessThan(order.indexOf('part/pin.second-fillet/form'));
    const turn = planned.route.chosen.flatMap((m) => m.operations).find((o) => o.id === 'part/pin/turn');
    expect(turn?.ways.first?.sweeps[0]).toMatchObject({ take: 'turn', spares: 'part/pin.second-fillet' });
    expect(arcOps(pin, [DRAWER]).map((o) => o.tool.kind)).toEqual(['round-nosed']);
    expect(planned.proof.holds).toBe(true);
  });
  it('holds its radius at every corner of the limits of what it blends into', () => {
    const { claims } = ownPart(planOwn(pin)).proof;
    const claim = claims.find((c) => c.kind === 'dimension' && c.about === 'part/pin.second-fillet');
    expect([claim?.holds, claim?.worst?.lo, claim?.worst?.hi]).toEqual([true, mm(1), mm(1.4)]);
  });
});

describe('any pin with a head, its fillet and its edges', () => {
  const tenths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 10);
  it('is refused with a reason, or planned and proved', () => {
    let proved = 0;
    const sizes = fc.record({ d: tenths(40, 90), step: tenths(10, 40), fillet: tenths(2, 15), edge: tenths(3, 12) });
    fc.assert(
      fc.property(sizes, ({ d, step, fillet, edge }) => {
        const high = Math.round((d + 2 * step) * 10) / 10;
        const compiled = planOwn(
          part(
            `name: pin, diameter: ${d} mm, length: 14 mm, fillet: ${fillet} ±0.1, radius: ${edge} ±0.1, radius-at: first`,
            `name: head, diameter: ${high} mm, length: 6 mm, radius: ${edge} ±0.1`,
          ),
        );
        if (!compiled.plan) return compiled.found.length > 0;
        proved += 1;
        return compiled.plan.parts.every(({ proof }) => proof.holds);
      }),
      { numRuns: 20, seed: 7 },
    );
    expect(proved).toBeGreaterThan(3);
  });
});
