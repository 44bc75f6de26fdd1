/** A hole right across a part, and the bore that it breaks into: which stands first, and what becomes of the burr (common practice, no source). */
import { describe, expect, it } from 'vitest';
import { type Change, ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';

const nozzle = (bore: string): readonly string[] => [
  ...[
    'first: { letter: A }',
    'second: { letter: B }',
    'outside:',
    '  - { name: nose, diameter: 10 mm, length: 8 mm, shoulder: { letter: C } }',
  ],
  ...['  - { name: barrel, diameter: 16 mm, length: 16 mm }', 'inside:', `  - { name: bore, ${bore} }`],
  ...['side:', '  - { name: jet, cross-hole: 2.4 mm, on: nose, at: 4 mm }'],
];
/** Steps of bore and cross hole as they are done; what is cleared by hand, and with what. */
function steps(bore: string) {
  const planned = ownPart(planOwn(nozzle(bore)));
  expect(planned.proof.holds).toBe(true);
  const operations = planned.route.setUps.flatMap((s) => s.operations).map((op) => op.slice('part/'.length));
  const cleared = planned.route.chosen.flatMap((m) => m.operations).find((o) => o.id === 'part/jet/clear-bore');
  return { order: operations.filter((op) => op.startsWith('bore/') || op.startsWith('jet/')), cleared };
}

describe('a hole right across', () => {
  it.each(['from: second, depth: 22 mm', 'from: first, depth: through'])(
    'into a bore that a drill has left (%s): after the drill, which then goes through by hand',
    (deep) => {
      const { order, cleared } = steps(`diameter: 4.5 mm, ${deep}, role: clearance`);
      expect(order).toEqual(['bore/centre', 'bore/drill-to-size', 'jet/cross-drill', 'jet/clear-bore']);
      expect(cleared?.tool).toMatchObject({ kind: 'hand-drill', size: 45_000 });
    },
  );
  it('into a bore with limits: before its last cut, which takes the burr away', () => {
    const { order, cleared } = steps('diameter: 6 H9, from: first, depth: through, role: running');
    expect(order.at(-1)).not.toBe('jet/cross-drill');
    expect(order.indexOf('jet/cross-drill')).toBeGreaterThan(order.indexOf('bore/centre'));
    expect(cleared).toBeUndefined();
  });
});

describe('a hole across that is asked for closer than a drill holds', () => {
  const pin = (size: string): readonly string[] => [
    ...['first: { letter: A }', 'second: { letter: B }', 'outside: [{ name: barrel, diameter: 16 mm, length: 24 mm }]'],
    `side: [{ name: pin, cross-hole: ${size}, on: barrel, at: 12 mm }]`,
  ];
  const NO_REAMER: Change = [/ {2}reamers: .*\n/, '  reamers: [3, 6]\n'];
  const made = (size: string) =>
    ownPart(planOwn(pin(size)))
      .route.chosen.flatMap((m) => m.operations)
      .filter((o) => o.feature === 'part/pin')
      .map((o) => [o.verb, o.tool.size]);
  it.each(['4 mm', '4 H11'])('no closer (%s): drilled, and left so', (size) => expect(made(size)).toEqual([['cross-drill', 40_000]]));
  it.each(['4 H8', '4 H9', '4 +0.03 -0'])('closer (%s): drilled under size and reamed in the same hold', (size) => {
    expect(made(size)).toEqual([
      ['cross-drill', 38_000],
      ['cross-ream', 40_000],
    ]);
    const { route, proof } = ownPart(planOwn(pin(size)));
    const hold = route.setUps.find((s) => s.operations.includes('part/pin/cross-ream'));
    expect([hold?.grip.kind, hold?.operations]).toEqual(['vee-block', ['part/pin/cross-drill', 'part/pin/cross-ream']]);
    expect(proof.holds).toBe(true);
  });
  it('is refused where no reamer is of that size: what band is asked, what a drill wants (IT11 of ISO 286-1: 75 um at 4 mm)', () => {
    const compiled = planOwn(pin('4 H8'), [NO_REAMER]);
    expect(compiled.plan).toBeUndefined();
    const refused = refusedOf(compiled).filter((r) => r.because.rule === 'cross-hole-close');
    expect(refused.map(({ has, wants }) => [has, wants])).toEqual([[180, 750]]);
    expect(compiled.noRoutes?.[0]?.wouldHelp.map((r) => r.because.rule)).toEqual(['cross-hole-close']);
    // the advice, followed
    expect(ownPart(planOwn(pin('4 H11'), [NO_REAMER])).proof.holds).toBe(true);
  });
  it('is refused where no drill is of its size', () => {
    const compiled = planOwn(pin('13.7 mm'));
    expect(refusedOf(compiled).find((r) => r.because.rule === 'cross-hole-size')?.wants).toBe(137_000);
  });
});
