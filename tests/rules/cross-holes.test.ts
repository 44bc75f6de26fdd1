/** A hole right across a part, and the bore that it breaks into: which stands first, and what becomes of the burr (common practice, no source). */
import { describe, expect, it } from 'vitest';
import { ownPart, planOwn } from '../fixtures/own-part.ts';

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
