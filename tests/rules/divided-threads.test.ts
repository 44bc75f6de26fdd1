/** One thread divided by a groove, and chamfers at a groove's walls: one cut, in the order that leaves no burr; proved. */
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { ownPart, planOwn } from '../fixtures/own-part.ts';

const part = (...outside: readonly string[]): readonly string[] => [
  'first: { letter: A }',
  'second: { letter: B }',
  'outside:',
  ...outside.map((line) => `  - { ${line} }`),
];
const divided = (front = 'M12x1', groove = '9.5 mm') =>
  part(
    `name: front, thread: ${front}, length: 6 mm`,
    `name: groove, diameter: ${groove}, length: 2.5 mm, groove: yes`,
    'name: back, thread: M12x1, length: 10 mm',
    'name: head, diameter: 18 mm, length: 14 mm',
  );

describe('a thread divided by a groove', () => {
  const planned = ownPart(planOwn(divided()));
  it('is one cylinder in two pieces, one chamfer, one relief, one thread', () => {
    const cylinder = planned.part.surfaces.find((s) => s.id === 'part/back');
    const relief = planned.part.surfaces.find((s) => s.id === 'part/back.relief');
    expect(cylinder?.shape === 'cylinder' && cylinder.pieces?.map(({ from, to }) => [from, to])).toEqual([
      [0, mm(6)],
      [mm(8.5), relief?.shape === 'cylinder' ? relief.from : 0],
    ]);
    expect(planned.part.features.filter((f) => f.kind === 'thread').map((f) => [f.id, f.from])).toEqual([['part/back.thread', 0]]);
    expect(planned.part.features.filter((f) => f.kind === 'cone').map((f) => f.id)).toEqual(['part/back.chamfer']);
    expect(planned.proof.holds).toBe(true);
  });
  it('is grooved before it is threaded', () => {
    const order = planned.route.setUps.flatMap((s) => s.operations);
    expect(order.indexOf('part/groove/groove')).toBeLessThan(order.findIndex((id) => id.startsWith('part/back.thread/')));
    expect(planned.route.befores.some((b) => b.because.rule === 'groove-before-thread' && b.force === 'strict')).toBe(true);
  });
  it('is no one cut where the two are of different pitch, nor where the groove is shallower than the root', () => {
    expect(planOwn(divided('M12')).found.map((d) => d.code)).toContain('design.part-alike-across-groove');
    expect(planOwn(divided('M12x1', '11 mm')).found.map((d) => d.code)).toContain('design.part-groove-in-thread');
  });
});

describe('chamfers at the walls of a groove', () => {
  const ringed = (width: string, at = 'both') =>
    part(
      `name: tip, diameter: 12 h9, length: 6 mm, chamfer: 0.5 mm, chamfer-at: ${at}`,
      `name: groove, diameter: 8 mm, length: ${width}, groove: yes`,
      'name: land, diameter: 12 h9, length: 20 mm, chamfer: 0.5 mm, chamfer-at: first',
      'name: head, diameter: 18 mm, length: 14 mm',
    );
  it('come after the groove, from whichever end, and are proved', () => {
    const planned = ownPart(planOwn(ringed('3.5 mm')));
    const order = planned.route.setUps.flatMap((s) => s.operations);
    for (const id of ['part/tip.second-chamfer/chamfer', 'part/land.first-chamfer/chamfer'])
      expect(order.indexOf(id)).toBeGreaterThan(order.indexOf('part/groove/groove'));
    const chamfer = planned.route.chosen.flatMap((m) => m.operations).find((o) => o.id === 'part/tip.second-chamfer/chamfer');
    expect(Object.keys(chamfer?.ways ?? {})).toEqual(['first', 'second']);
    expect(planned.proof.holds).toBe(true);
  });
  it('are refused where the tool finds no room, and are not there unless asked', () => {
    expect(planOwn(ringed('1.5 mm')).found.map((d) => d.code)).toContain('design.part-chamfer-in-groove');
    const plain = ownPart(
      planOwn(
        part(
          'name: tip, diameter: 12 h9, length: 6 mm, chamfer: 0.5 mm',
          ...['name: groove, diameter: 8 mm, length: 3 mm, groove: yes', 'name: body, diameter: 12 h9, length: 20 mm'],
        ),
      ),
    );
    expect(plain.part.features.filter((f) => f.kind === 'cone').map((f) => f.id)).toEqual(['part/tip.first-chamfer']);
  });
});
