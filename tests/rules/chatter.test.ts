/** A wide edge far from its hold: the bar is to be drawn in, or the work steadied; by hand from two diameters. */
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { farForEdge } from '../../src/rules/chatter.ts';
import type { Beam } from '../../src/rules/give.ts';
import type { Removal } from '../../src/rules/removal.ts';
import { ownPart, planOwn } from '../fixtures/own-part.ts';

const cut = (edge: number, beam: Beam): Removal =>
  ({ operation: { tool: { kind: 'radius', key: 'r', size: mm(edge), material: 'HSS' } }, beam, branched: false }) as unknown as Removal;
const rod = (out: number, more: Partial<Beam> = {}): Beam => ({ lengths: [{ long: out, outside: 9, inside: 0 }], at: out, ...more });

describe('an edge wider than a blade', () => {
  // common practice, no source: wider than 2 mm within two diameters of the hold
  it('36 mm out of 9 mm work is far; 18 mm is not', () => {
    expect(farForEdge(cut(4.1, rod(36)))).toEqual({ out: mm(36), most: mm(18) });
    expect(farForEdge(cut(4.1, rod(18)))).toBeUndefined();
  });
  it('a narrow one, and one beside a centre, is not judged', () => {
    expect(farForEdge(cut(2, rod(36)))).toBeUndefined();
    expect(farForEdge(cut(4.1, rod(36, { centre: 36 })))).toBeUndefined();
  });
  it('what is thin beyond the cut does not count', () => {
    const beam: Beam = {
      lengths: [
        { long: 16, outside: 9, inside: 0 },
        { long: 20, outside: 3, inside: 0 },
      ],
      at: 16,
    };
    expect(farForEdge(cut(4.1, beam))).toBeUndefined();
  });
});

describe('on the sheet', () => {
  const handle = (length: number, radius: string): readonly string[] => [
    ...['first: { letter: A }', 'second: { letter: B, role: free }', 'outside:'],
    `  - { name: grip, diameter: 9 mm, length: ${length} mm, radius: ${radius}, radius-at: first }`,
  ];
  const said = (length: number, radius: string): readonly string[] =>
    (ownPart(planOwn(handle(length, radius))).figures ?? []).flatMap((one) => (one.says ?? []).map(({ id }) => id));
  it('the bar is drawn in for a wide radius at the end of long work, and only there', () => {
    expect(said(30, '3 ±0.2')).toContain('say.form.draw-in');
    expect(said(30, '1 ±0.2')).not.toContain('say.form.draw-in');
    expect(said(10, '3 ±0.2')).not.toContain('say.form.draw-in');
  });
});
