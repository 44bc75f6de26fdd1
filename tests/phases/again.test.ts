/** What is planned when the proof refuses the best plan: by a judge that refuses what it is told to, besides what the proof itself refuses. */
import { describe, expect, it } from 'vitest';
import { type Diagnostic, failed } from '../../src/base/diagnostics.ts';
import { finishAll, type Judge } from '../../src/compile/finish.ts';
import { orderAll } from '../../src/compile/routed.ts';
import type { Claim, PlannedPart, Route } from '../../src/model/plan.ts';
import { order } from '../../src/phases/order.ts';
import { prove } from '../../src/phases/prove.ts';
import { why } from '../../src/phases/why.ts';
import { planOwn } from '../fixtures/own-part.ts';

/** A thin ring: its second face is cut in bored jaws; on a stub mandrel, for which tooling is made, it could be as well. */
const compiled = planOwn([
  'first: { letter: A, role: register }',
  'second: { letter: B, role: register }',
  'outside: [{ name: rim, diameter: 22 mm, length: 5 mm }]',
  'inside: [{ name: bore, diameter: 19 H8, from: first, depth: through, role: running }]',
]);
const plan = compiled.plan;
if (!plan) throw new Error(JSON.stringify(compiled.found));
const { workshop } = plan;
const roots = plan.parts.slice(0, 1).map((one) => one.part);

const refusing =
  (refused: (route: Route) => Claim | undefined, asked: Route[] = []): Judge =>
  (one) => {
    asked.push(one.route);
    const proof = prove(one);
    const claim = refused(one.route);
    return claim ? { ...proof, holds: false, claims: [...proof.claims, claim] } : proof;
  };
const planned = (judge: Judge): readonly PlannedPart[] => {
  const found: Diagnostic[] = [];
  const parts = finishAll(orderAll(roots, workshop, found).routed, roots, workshop, found, judge);
  expect(failed(found)).toBe(false);
  return parts;
};
const holds = (part: PlannedPart | undefined): readonly string[] => part?.route.setUps.map((s) => s.grip.kind) ?? [];
const claim = (about: string, at?: string): Claim => ({
  ...{ kind: 'held', about, holds: false },
  ...(at === undefined ? { kind: 'grip' } : { at }),
  grounds: {
    hold: about,
    operation: at ?? '',
    reason: 'in-the-hold',
    corner: '',
    kind: '',
    has: '',
    wants: '',
    diameter: '',
    surface: '',
    out: '',
    most: '',
  },
});
const inJaws = (route: Route) => route.setUps.find((s) => s.grip.kind === 'bored-jaws');

describe('a plan that the proof accepts', () => {
  it('is judged once, and nothing is told of it', () => {
    const asked: Route[] = [];
    const parts = planned(refusing(() => undefined, asked));
    expect(asked.length).toBe(parts.length);
    expect(parts.map((one) => one.insteadOf)).toEqual(parts.map(() => undefined));
    expect(holds(parts[0])).toEqual(['bar', 'bored-jaws']);
  });
});

describe('a plan that the proof refuses', () => {
  const byHold = refusing((route) => {
    const grip = inJaws(route)?.grip;
    return grip && claim(grip.id);
  });
  it('by its hold: the hold is left out, and the next best is taken and proved', () => {
    const [part] = planned(byHold);
    expect(holds(part)).not.toContain('bored-jaws');
    expect(part?.proof.holds).toBe(true);
    // first the other end of it in the same jaws, then neither
    const second = 'part/rim.bored-jaws.second.light';
    const first = 'part/rim.bored-jaws.first.light';
    expect(part?.insteadOf?.map((one) => [one.left, one.claims.map((c) => c.about)])).toEqual([
      [{ what: 'hold', grip: second }, [second]],
      [{ what: 'hold', grip: first }, [first]],
    ]);
  });
  it('is replaced by one whose tooling is planned and proved too', () => {
    const parts = planned(byHold);
    expect(holds(parts[0])).toEqual(['bar', 'stub-mandrel']);
    expect(parts.map((one) => [one.part.kind, one.proof.holds])).toEqual([
      ['part', true],
      ['stub-mandrel', true],
    ]);
  });
  it('by an operation in its hold: that is done in another', () => {
    const [part] = planned(
      refusing((route) => {
        const done = inJaws(route)?.operations[0];
        return done === undefined ? undefined : claim(done, done);
      }),
    );
    expect(part?.proof.holds).toBe(true);
    expect(part?.insteadOf?.map((one) => one.left.what)).toEqual(['in-hold', 'in-hold']);
    expect(inJaws(part?.route as Route)).toBeUndefined();
  });
  it('is given all the same, with what was refused of it, where no other holds: after a few tries', () => {
    const asked: Route[] = [];
    const [part] = planned(refusing((route) => claim(route.setUps.at(-1)?.grip.id ?? ''), asked));
    expect(part?.proof.holds).toBe(false);
    expect(part?.insteadOf).toBeUndefined();
    expect(holds(part)).toEqual(['bar', 'bored-jaws']);
    // the first, and four more
    expect(asked.length).toBeLessThanOrEqual(5);
    expect(asked.length).toBeGreaterThan(1);
  });
  it('is told of among the reasons, in the order in which plans were tried', () => {
    const parts = planned(byHold);
    const [told] = why({ ...plan, parts }).parts;
    expect(told?.insteadOf.map((one) => one.left.what)).toEqual(['hold', 'hold']);
  });
  it('gives the same plan each time', () =>
    expect(JSON.stringify(planned(byHold).map((one) => one.route))).toBe(JSON.stringify(planned(byHold).map((one) => one.route))));
});

describe('a plan that the proof itself refuses', () => {
  /** The body is long enough to be held by as it is drawn; at the short end of its limits it is not. The rear does as well. */
  const short = planOwn([
    'first: { letter: A, role: register }',
    'second: { letter: B, role: register }',
    'outside:',
    '  - { name: head, thread: M8, length: 8 mm, starts: first }',
    '  - { name: body, diameter: 11.8 mm, length: 10.5 mm }',
    '  - { name: rear, diameter: 9 mm, length: 12 mm }',
  ]);
  const part = short.plan?.parts[0];
  it('gives way to one that holds the part elsewhere, and says by how little it failed', () => {
    expect(part?.proof.holds).toBe(true);
    expect(part?.insteadOf?.map((one) => one.left)).toEqual([{ what: 'hold', grip: 'part/body.sleeve.second' }]);
    const [refused] = part?.insteadOf?.flatMap((one) => one.claims) ?? [];
    expect(refused).toMatchObject({ kind: 'grip', grounds: { reason: 'short', wants: '9.44' } });
    expect(Number(refused?.grounds.has)).toBeLessThan(9.44);
    expect(part?.route.setUps.map((s) => s.grip.id)).toEqual(['part/part-off-first.second', 'part/rear.sleeve.first']);
  });
  it('was cheaper than what is done instead', () => {
    const first = part && order(part.candidates, workshop).route;
    expect(first?.setUps.map((s) => s.grip.id)).toContain('part/body.sleeve.second');
    expect(first?.cost.setUps).toBe(part?.route.cost.setUps);
  });
});
