/** Of two holds that cost the same, the stiffer: on mandrels, by how far the neck lets a tool at the free end push the work aside. */
import { describe, expect, it } from 'vitest';
import { contextOf } from '../../src/rules/context.ts';
import { compareKeys, gripKey } from '../../src/rules/likes.ts';
import { ownPart, planOwn } from '../fixtures/own-part.ts';

/** Threaded outside and inside at its first end, turned from its second end: nothing else to hold by. */
const bonnet = [
  'first: { letter: A }',
  'second: { letter: B, role: register }',
  'outside:',
  '  - { name: thread, thread: M12x1, length: 10 mm, starts: first, shoulder: { letter: C, role: register } }',
  '  - { name: collar, diameter: 16 mm, length: 6 mm, shoulder: { letter: D } }',
  '  - { name: neck, thread: M10x1, length: 12 mm, starts: second }',
  'inside:',
  '  - { name: running, thread: M6, from: first, depth: through }',
  'side: [{ name: flats, flats: 14 mm, on: collar, at: 3 mm, length: 5 mm }]',
];

describe('two mandrels that cost the same', () => {
  const compiled = planOwn(bonnet);
  const part = ownPart(compiled);
  const mandrels = part.candidates.grips.filter((g) => g.kind === 'threaded-mandrel' && g.out === 'second');
  it('are both offered, and the thicker one is liked better', () => {
    const [thick, thin] = ['M12x1', 'M6'].map((name) =>
      mandrels.find((g) => g.tooling && 'thread' in g.tooling && g.tooling.thread.name === name),
    );
    if (!thick || !thin || !compiled.plan) throw new Error(`offered: ${mandrels.map((g) => g.id).join()}`);
    const c = contextOf(part.part, compiled.plan.workshop);
    expect([thick.runout, thick.out]).toEqual([thin.runout, thin.out]);
    expect(compareKeys(gripKey(c, thick), gripKey(c, thin))).toBeLessThan(0);
    // the third power of what stands out over the fourth of what carries it: 18 on 12 against 28 on 5
    const [stiff = 0, slack = 0] = [thick, thin].map((g) => gripKey(c, g)[3]);
    expect(slack / stiff).toBeGreaterThan(10);
  });
  it('and it is the one that the plan takes', () => {
    const taken = part.route.setUps.find((s) => s.grip.kind === 'threaded-mandrel')?.grip.tooling;
    expect(taken && 'thread' in taken ? taken.thread.name : '').toBe('M12x1');
    expect(part.proof.holds).toBe(true);
  });
});
