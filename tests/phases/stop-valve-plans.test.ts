/**
 * Plans of the stop valves as a turner reads them: what the craft asks of the order, found in plans that know nothing of valves. Each plan
 * was read by eye; the facts below are common practice, no source, but for the two published ones that carry theirs.
 */
import { describe, expect, it } from 'vitest';
import type { PlannedPart } from '../../src/model/plan.ts';
import { everyPlan } from '../fixtures/every-plan.ts';

const VALVES = ['whistle-stop-valve', 'blow-down-valve', 'steam-supply-valve'] as const;
const planned = (spec: string, id: string): PlannedPart => {
  const found = everyPlan.find((one) => one.spec === spec)?.plan.parts.find(({ part }) => part.id === id);
  if (!found) throw new Error(`${spec} has no ${id}`);
  return found;
};
/** Set-ups as the short names of their operations. */
const setUps = ({ part, route }: PlannedPart): readonly (readonly string[])[] =>
  route.setUps.map(({ operations }) => operations.map((op) => op.slice(part.id.length + 1)));
const where = (one: PlannedPart, operation: string): number => setUps(one).findIndex((ops) => ops.some((op) => op.startsWith(operation)));
const order = (one: PlannedPart, operation: string): number =>
  setUps(one)
    .flat()
    .findIndex((op) => op.startsWith(operation));

describe.each(VALVES)('%s', (spec) => {
  const body = planned(spec, 'body');
  const bonnet = planned(spec, 'bonnet');
  const spindle = planned(spec, 'spindle');

  it('is proved whole', () => {
    const plan = everyPlan.find((one) => one.spec === spec)?.plan;
    expect(plan?.parts.filter(({ proof }) => !proof.holds)).toEqual([]);
    expect(plan?.stacks?.map((stack) => [stack.of, stack.met])).toEqual([
      ['travel', true],
      ['take-up', true],
      ['take-up.entry', true],
    ]);
  });
  it("bores the seat in one setting with the bonnet's thread, after the heat", () => {
    expect(where(body, 'seat/bore')).toBe(where(body, 'socket.thread/'));
    const solder = spec === 'blow-down-valve' ? 'branch/solder' : 'outlet-branch/solder';
    expect(order(body, solder)).toBeLessThan(order(body, 'seat/bore'));
    expect(order(body, solder)).toBeLessThan(order(body, 'socket/bore'));
    expect(order(body, 'outlet/cross-drill')).toBeLessThan(order(body, solder));
  });
  it("bores the seat after its face, and last of that setting's cuts", () => {
    expect(order(body, 'chamber/')).toBeLessThan(order(body, 'seat/bore'));
    const last = setUps(body)[where(body, 'seat/bore')]?.at(-1);
    expect(last).toBe('seat/bore');
  });
  it("cuts the bonnet's two threads in one setting", () =>
    expect(where(bonnet, 'running.thread/')).toBe(where(bonnet, 'bonnet-thread.thread/')));
  it('turns the stem end of the spindle before the cone, and files the square when all turning is done', () => {
    expect(order(spindle, 'stem/turn')).toBeLessThan(order(spindle, 'plug.cone/'));
    expect(setUps(spindle).flat().at(-1)).toBe('square/file-square');
  });
  it('marks the cone true to the stem, and the seat to the thread, within what is asked', () => {
    for (const one of [body, bonnet, spindle])
      for (const truth of one.chart.truths ?? []) expect([truth.of, truth.met]).toEqual([truth.of, true]);
    expect(spindle.chart.truths?.map((t) => t.of)).toContain('spindle/true.stem-plug.cone');
  });
});
