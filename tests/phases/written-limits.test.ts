/** Limits for everything: a person writes them as on a drawing, the text is kept, and the limits are whole units. */
import { describe, expect, it } from 'vitest';
import { toMm } from '../../src/base/units.ts';
import { compile } from '../../src/compile.ts';
import { demoWorkshop } from '../fixtures/shop.ts';

const spec = (diameter: string, length: string): string => `fitting: turned-part
title: Plug
name: plug
material: PB102
first: { letter: A }
second: { letter: B }
outside:
  - { name: tail, diameter: ${diameter}, length: ${length}, shoulder: { letter: C } }
  - { name: head, diameter: 16 mm, length: 12 mm }
`;
/** A lathe that holds closer than the usual one: grade 7 is under the division of its dial. */
const CLOSE = { name: 'close.yaml', text: `${demoWorkshop.text.trimEnd()}\nholds: [{ process: turn, diameter: 0.015 mm }]\n` };
function planned(diameter: string, length: string) {
  const { plan, found } = compile(
    { fitting: { name: 'plug.yaml', text: spec(diameter, length) }, workshop: CLOSE },
    { workshop: demoWorkshop },
  );
  const part = plan?.parts[0]?.part;
  if (!part) throw new Error(JSON.stringify(found));
  return part;
}

describe('limits as they are written', () => {
  it.each([
    ['12 f7', 'fit', 'f7', 11.966, 11.984], // ISO 286-2: f7 over 10 to 18 is -16 -34
    ['11.00 +0 -0.05', 'stated', '11.00 +0 -0.05', 10.95, 11],
    ['8 ±0.1', 'stated', '8 ±0.1', 7.9, 8.1],
    ['12', 'general', 'ISO 2768-1 m', 11.8, 12.2],
    ['12.00', 'general', 'ISO 2768-1 m', 11.8, 12.2], // trailing zeros mean nothing by themselves
  ])('diameter: %s', (written, kind, as, lo, hi) => {
    const tail = planned(written, '9 mm').surfaces.find((one) => one.id === 'plug/tail');
    const size = tail?.shape === 'cylinder' ? tail.size : undefined;
    expect([size?.from.kind, size?.from.as, toMm(size?.lo ?? NONE), toMm(size?.hi ?? NONE)]).toEqual([kind, as, lo, hi]);
  });
  it.each([
    ['1/2 in h9', '1/2 in h9', 12.657, 12.7], // ISO 286-2: h9 over 10 to 18 is 0 -43
    ['12.00 h9', '12.00 h9', 11.957, 12],
    ['12 h9', undefined, 11.957, 12],
  ])('a fit as it was written stays beside its limits: %s', (written, kept, lo, hi) => {
    const tail = planned(written, '9 mm').surfaces.find((one) => one.id === 'plug/tail');
    const size = tail?.shape === 'cylinder' ? tail.size : undefined;
    expect([size?.from.as, size?.from.written, toMm(size?.lo ?? NONE), toMm(size?.hi ?? NONE)]).toEqual(['h9', kept, lo, hi]);
  });
  it('closer than the lathe holds: refused with the figures, unless the workshop says that it holds them', () => {
    const { found } = compile({ fitting: { name: 'plug.yaml', text: spec('12 f7', '9 mm') } }, { workshop: demoWorkshop });
    expect(found.map((one) => [one.code, one.grounds.needs, one.grounds.allows])).toEqual([['chart.cannot-be-met', '0.027', '0.018']]);
  });
  it.each([
    ['9.00 +0.05 -0', 'stated', '9.00 +0.05 -0', 9, 9.05],
    ['9 ±0.08', 'stated', '9 ±0.08', 8.92, 9.08],
    ['9 mm', 'general', 'ISO 2768-1 m', 8.8, 9.2],
  ])('length: %s', (written, kind, as, lo, hi) => {
    const one = planned('12', written).dimensions.find(({ a, b }) => [a, b].includes('plug/A') && [a, b].includes('plug/C'));
    expect([one?.limits.from.kind, one?.limits.from.as, toMm(one?.limits.lo ?? NONE), toMm(one?.limits.hi ?? NONE)]).toEqual([
      kind,
      as,
      lo,
      hi,
    ]);
  });
});
const NONE = 0 as never;
