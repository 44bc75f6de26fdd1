/** A slot sawn across an end for a screwdriver (common practice, no source): after all turning, in the vice, its burrs taken off. */
import { describe, expect, it } from 'vitest';
import { len, mm, toMm } from '../../src/base/units.ts';
import { drawSides, sideShown } from '../../src/drawing/sides.ts';
import type { SideFeature } from '../../src/model/part.ts';
import type { PlannedPart } from '../../src/model/plan.ts';
import { prove } from '../../src/phases/prove.ts';
import { ownPart, planOwn, refusedOf } from '../fixtures/own-part.ts';

const screw = (slot: string, end: 'first' | 'second' = 'second', more = ''): readonly string[] => [
  `first: { letter: A${end === 'first' ? `, slot: ${slot}` : ''} }`,
  `second: { letter: B${end === 'second' ? `${more}, slot: ${slot}` : ''} }`,
  'outside:',
  '  - { name: thread, thread: M5, starts: first, length: 10 mm, shoulder: { letter: C } }',
  '  - { name: head, diameter: 8 mm, length: 4 mm }',
];
const SLOT = '{ width: 1.2 mm, depth: 1.6 mm }';
const compiled = planOwn(screw(SLOT));
const planned = ownPart(compiled);
const slotIn = ({ part }: PlannedPart, id: string) => part.features.find((f): f is SideFeature => f.id === id && f.kind === 'side');
const saysOf = (one: PlannedPart): readonly string[] =>
  one.route.chosen.flatMap((m) => m.operations.filter((o) => o.verb === 'saw-slot').flatMap((o) => o.says.map((s) => s.rule)));
const codes = (lines: readonly string[]): readonly string[] => planOwn(lines).found.map((one) => one.code);

describe('a slot across an end', () => {
  it('lies in that end, as wide and deep as it is asked', () => {
    const slot = slotIn(planned, 'part/B.slot');
    expect(slot && [slot.on, toMm(slot.at), toMm(slot.half), toMm(slot.size?.target ?? len(0))]).toEqual(['part/head', 13.2, 0.8, 1.2]);
    expect(toMm(slotIn(ownPart(planOwn(screw(SLOT, 'first'))), 'part/A.slot')?.at ?? len(0))).toBe(0.8);
  });
  it('is sawn at the bench when all turning is done, and the plan is proved', () => {
    const last = planned.route.setUps.at(-1);
    expect([last?.grip.kind, last?.operations]).toEqual(['bench', ['part/B.slot/saw-slot']]);
    expect(planned.proof.holds).toBe(true);
  });
  it('has its burrs taken off, and is opened where one blade saws narrower', () => {
    expect(saysOf(planned)).toEqual(['slot-opened', 'slot-burrs']);
    expect(saysOf(ownPart(planOwn(screw('{ width: 1 mm, depth: 1.6 mm }'))))).toEqual(['slot-burrs']);
  });
  it('through a thread has the die run over it again', () => {
    expect(saysOf(ownPart(planOwn(screw('{ width: 1 mm, depth: 1 mm }', 'first'))))).toEqual(['slot-through-thread']);
  });
  it('is refused where it is narrower than the finest blade', () => {
    const refused = refusedOf(planOwn(screw('{ width: 0.5 mm, depth: 1 mm }'))).find((one) => one.because.rule === 'slot-narrow');
    expect(refused && [refused.has, refused.wants]).toEqual([mm(0.6), mm(0.8)]);
  });
  it('sawn before the turning is refused by the proof', () => {
    const { part, route, chart } = planned;
    const bench = route.setUps.at(-1);
    const rest = route.setUps.slice(0, -1);
    const [first] = rest;
    if (!bench || !first || !compiled.plan) throw new Error('no plan');
    const setUps = [first, bench, ...rest.slice(1)];
    const failing = prove({ part, route: { ...route, setUps }, chart, workshop: compiled.plan.workshop }).claims.filter((c) => !c.holds);
    expect(failing.map((c) => [c.kind, c.about])).toContainEqual(['order', 'slot-last']);
  });
});

describe('what a slot would spoil', () => {
  it.each([
    ['nothing is left beside it', screw('{ width: 7.8 mm, depth: 1.6 mm }'), 'design.part-slot-wide'],
    ['it goes through its piece', screw('{ width: 1.2 mm, depth: 4 mm }'), 'design.part-slot-deep'],
    ['the face is to seal', screw(SLOT, 'second', ', role: sealing'), 'design.part-slot-leaks'],
  ])('is told: %s', (_, lines, code) => {
    expect(codes(lines)).toEqual([code]);
  });
});

describe('its picture', () => {
  const paper = { scale: 2, u0: -20, left: 0, axis: 50 };
  const boxOf = (out: 'first' | 'second') => {
    const slot = slotIn(planned, 'part/B.slot');
    const shown = slot && sideShown(slot, mm(8), 'before');
    const outline = shown && drawSides([shown], out, paper).items.at(-1);
    if (outline?.kind !== 'path') throw new Error('no outline');
    const points = outline.segments.flatMap((s) => ('x' in s ? [{ x: s.x as number, y: s.y as number }] : []));
    return { x: points.map((p) => p.x), y: points.map((p) => p.y) };
  };
  // 1.2 wide at 2:1; its open end at z = 14, its bottom at 12.4
  it('is a notch on both sides of the axis, open at its end, whichever way the work lies', () => {
    for (const [out, open, bottom] of [
      ['second', 68, 64.8],
      ['first', 12, 15.2],
    ] as const) {
      const { x, y } = boxOf(out);
      expect([Math.min(...y), Math.max(...y)].map((v) => Math.round(v * 100) / 100)).toEqual([48.8, 51.2]);
      expect([x[0], x[1], x.at(-1)].map((v) => Math.round((v ?? 0) * 100) / 100)).toEqual([open, bottom, open]);
    }
  });
});
