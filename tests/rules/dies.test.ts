/** A die follows the bar (common practice, no source): what has to run true is screw-cut where the lathe can; elsewhere the row says what a die asks for. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';
import type { Figures, PlannedPart } from '../../src/model/plan.ts';

const read = (path: string): string => readFileSync(new URL(`../../specs/${path}`, import.meta.url), 'utf8');
const INCH = read('workshops/inch-lathe.yaml');
const fitting = { name: 'valve.yaml', text: read('fittings/hand-pump-check-valve.yaml') };
const UNTOOLED = INCH.replace('threading-outside: yes', 'threading-outside: no');

const seatPiece = (workshop: string): PlannedPart => {
  const { plan, found } = compile({ fitting }, { workshop: { name: 'workshop.yaml', text: workshop } });
  const part = plan?.parts.find((one) => one.part.id === 'seat-piece');
  if (!part) throw new Error(JSON.stringify(found));
  return part;
};
const verbOf = ({ route }: PlannedPart, feature: string): string | undefined =>
  route.chosen.flatMap((method) => method.operations).find((one) => one.feature === feature)?.verb;
const figuresOf = ({ figures }: PlannedPart, op: string): Figures | undefined => figures.find((one) => one.op === op);

describe('a thread that a seat has to run true to', () => {
  const part = seatPiece(INCH);
  it('is screw-cut where the lathe can, with its wheels; the coupling beside it is left to the die', () => {
    expect(verbOf(part, 'seat-piece/seat-thread.thread')).toBe('screw-cut');
    expect(verbOf(part, 'seat-piece/coupling.thread')).toBe('die');
    // 8 threads an inch on the leadscrew, 32 on the work: one in four
    const wheels = figuresOf(part, 'seat-piece/seat-thread.thread/screw-cut')?.wheels;
    const product = (teeth: readonly number[] = []): number => teeth.reduce((all, one) => all * one, 1);
    expect(4 * product(wheels?.drivers)).toBe(product(wheels?.driven));
    expect(part.candidates.refused.map(({ what, because }) => [what, because.rule])).toContainEqual([
      'seat-piece/seat-thread.thread/die',
      'die-not-true',
    ]);
    expect(part.proof.holds).toBe(true);
  });
  it('is cut with the die where nothing screw-cuts it, and tried by indicator', () => {
    expect(UNTOOLED).not.toBe(INCH);
    const without = seatPiece(UNTOOLED);
    expect(verbOf(without, 'seat-piece/seat-thread.thread')).toBe('die');
    const said = (thread: string) => figuresOf(without, `seat-piece/${thread}.thread/die`)?.says?.map(({ id }) => id);
    expect(said('seat-thread')).toEqual(['say.die', 'say.die.true']);
    expect(said('coupling')).toEqual(['say.die']);
  });
});
