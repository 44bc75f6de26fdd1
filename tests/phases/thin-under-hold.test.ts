/**
 * A wall that is thin for a short way under a hold, at a thread's chamfer or a groove in a bore: the hold keeps off it where there is room
 * enough beside, else it is refused; the proof finds none that gives.
 */
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { type Proved, prove } from '../../src/phases/prove.ts';
import { ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';

const ring = (across: string, long: string): readonly string[] => [
  ...['first: { letter: A }', 'second: { letter: B }', 'outside:', `  - { name: rim, diameter: ${across}, length: ${long} }`],
  ...['inside: [{ name: bore, thread: M12x1, from: first, depth: through }]', 'side:'],
  '  - { name: flats, flats: 13.5 mm, on: rim, at: 4 mm, length: 4.8 mm }',
];

describe('a ring that is threaded right through', () => {
  const compiled = planOwn(ring('14.13 mm', '8 ±0.2'));
  const planned = ownPart(compiled);
  const again = planned.route.setUps.find(({ grip }) => grip.kind !== 'bar' && grip.on.includes('part/rim'));
  it('is held behind the chamfer of its thread, where the wall is a tenth of its diameter', () => {
    const cone = planned.part.surfaces.find((one) => one.shape === 'cone' && one.side === 'inside' && one.into === again?.grip.out);
    expect(cone).toBeDefined();
    expect(again?.grip.from).toBeGreaterThanOrEqual(mm(0.6));
    expect(planned.proof.holds).toBe(true);
  });
  it('held over the chamfer, the proof refuses it', () => {
    if (!again || !compiled.plan) throw new Error('no hold');
    const setUps = planned.route.setUps.map((s) => (s.no === again.no ? { ...s, grip: { ...s.grip, from: mm(0) } } : s));
    const { part, route, chart, figures } = planned;
    const asked: Proved = { part, chart, figures, workshop: compiled.plan.workshop, route: { ...route, setUps } };
    const failed = prove(asked).claims.filter(({ holds }) => !holds);
    expect(failed.map(({ kind, grounds }) => [kind, grounds.reason])).toContainEqual(['grip', 'thin']);
  });
  it('is held over all its length where its wall bears it', () => {
    const stout = ownPart(planOwn(ring('16 mm', '8 ±0.2').map((line) => line.replace('13.5 mm', '15 mm'))));
    const grips = stout.candidates.grips.filter(({ on, out, kind }) => kind !== 'bar' && on.includes('part/rim') && out === 'second');
    expect(grips.map(({ from }) => from)).toContain(0);
  });
  it('is refused with its figures where nothing is left beside', () => {
    const short = planOwn(ring('14.13 mm', '4.4 mm').map((line) => line.replace('at: 4 mm, length: 4.8 mm', 'at: 2 mm, length: 2 mm')));
    expect(short.plan?.parts.flatMap(({ proof }) => proof.claims.filter(({ holds }) => !holds)) ?? []).toEqual([]);
    expect(refusedOf(short).map(({ because }) => because.rule)).toContain('grip-short');
  });
});
