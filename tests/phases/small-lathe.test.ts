/** The lathe on which the demo is refused: it says what is short, and with the three things that its file names the whole is made. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { compile } from '../../src/compile.ts';
import { demoFitting, demoWorkshop } from '../fixtures/shop.ts';

const text = readFileSync(join(import.meta.dirname, '..', '..', 'specs', 'workshops', 'small-lathe.yaml'), 'utf8');
const on = (workshop: string) =>
  compile({ fitting: demoFitting, workshop: { name: 'small-lathe.yaml', text: workshop } }, { workshop: demoWorkshop });
const bored = text.replace(/^( +)(- \{ smallest: 4 mm, reach: 8 mm \})/m, '$1$2\n$1- { smallest: 5.5 mm, reach: 28 mm }');
const both = bored.replace('largest: 12 mm', 'largest: 20 mm');
const all = both.replace(/^( +)(- \{ from: 1 mm, to: 6 mm, by: 0.1 mm \})/m, '$1$2\n$1- 7.1 mm');
describe('the demo on the small lathe', () => {
  it('is refused, and of each part the refusals name the boring tool that is short', () => {
    const { plan, found, noRoutes } = on(text);
    expect(plan).toBeUndefined();
    expect(new Set(found.map(({ code }) => code))).toEqual(new Set(['plan.no-route']));
    expect(noRoutes?.map(({ part }) => part)).toContain('body');
    for (const { part, refused } of noRoutes ?? []) {
      const reach = refused.filter((r) => r.what.endsWith('/bore'));
      expect(reach.length, part).toBeGreaterThan(0);
      for (const { has, wants } of reach) expect(has !== undefined && wants !== undefined && has < wants, part).toBe(true);
    }
  });
  it('with the boring tool alone it is the body that wants a wider blade', () => {
    expect(on(bored).noRoutes?.map(({ part }) => part)).toEqual(['body']);
    const blade = on(bored).noRoutes?.[0]?.refused.find(({ what }) => what.includes('bar/part-off'));
    expect([blade?.has, blade?.wants]).toEqual([mm(12), mm(18)]);
  });
  it('with all three it is planned, and every claim holds', () => {
    const { plan, found } = on(all);
    expect(found).toEqual([]);
    expect(plan?.parts.flatMap((p) => p.proof.claims.filter((claim) => !claim.holds))).toEqual([]);
    expect(plan?.parts.length).toBeGreaterThan(10);
  }, 60_000);
  it('they are what the file itself names', () => {
    expect(text).toContain('{ smallest: 5.5 mm, reach: 28 mm }');
    expect(text).toContain('largest: 20 mm');
    expect(text).toContain('a drill of 7.1 mm');
  });
});

describe('a thread to be gauged, on a lathe that parts off no bar of the gauge nut', () => {
  const screw = [
    'fitting: turned-part',
    'title: Screw',
    'name: screw',
    'material: PB102',
    'first: { letter: A }',
    'second: { letter: B }',
    'outside:',
    '  - { name: thread, thread: M8, starts: first, length: 9 mm, shoulder: { letter: C } }',
    '  - { name: head, diameter: 14 mm, length: 4 mm }',
  ].join('\n');
  it('has its nut sawn off: no length of it matters so closely', () => {
    const { plan } = compile(
      { fitting: { name: 'screw.yaml', text: screw }, workshop: { name: 'small-lathe.yaml', text } },
      { workshop: demoWorkshop },
    );
    const nut = plan?.parts.find(({ part }) => part.kind === 'gauge-nut');
    expect(nut?.route.chosen.flatMap((method) => method.operations.map(({ verb }) => verb))).toContain('saw-off');
    expect(plan?.parts.every(({ proof }) => proof.holds)).toBe(true);
  });
});
