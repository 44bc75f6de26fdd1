/**
 * A hole of two diameters whose step is the larger drill's point: 118 degrees, DIN 338 type N (from memory, as the handbook has it). Which of the
 * two is drilled first is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { len, mm, toMm } from '../../src/base/units.ts';
import { finishedStage } from '../../src/drawing/part-outline.ts';
import { finishedOutline } from '../../src/geometry/nominal.ts';
import type { PlannedPart, Sweep } from '../../src/model/plan.ts';
import { prove } from '../../src/phases/prove.ts';
import { ownPart, planOwn } from '../fixtures/own-part.ts';

const stepped = (wide: string, small: string, outside = 'name: body, diameter: 14 mm, length: 30 mm'): readonly string[] => [
  ...['first: { letter: A }', 'second: { letter: B }', 'outside:', `  - { ${outside} }`, 'inside:'],
  ...[`  - { name: well, from: first, ${wide} }`, `  - { name: way, from: first, ${small} }`],
];
const shallow = planOwn(stepped('diameter: 8 mm, depth: 14 mm, bottom: point', 'diameter: 6.5 mm, depth: through'));
const deep = planOwn(stepped('diameter: 8 mm, depth: 14 mm, bottom: point', 'diameter: 3 mm, depth: through'));
const orderOf = (planned: PlannedPart): readonly string[] => planned.route.setUps.flatMap((one) => one.operations);
const codes = (lines: readonly string[]): readonly string[] => planOwn(lines).found.map((one) => one.code);
/** (8 - 3) / 2 / tan 59 degrees, and the same of the other pair. */
const RUN = { deep: 1.502, shallow: 0.451 };

describe("a drill's point between two holes", () => {
  it('is planned with drills alone, and proved', () => {
    for (const compiled of [shallow, deep]) {
      const planned = ownPart(compiled);
      expect(planned.proof.holds).toBe(true);
      const tools = planned.route.chosen.flatMap((one) => one.operations.map((op) => op.tool.kind));
      expect(tools.filter((kind) => kind === 'boring' || kind === 'counterbore')).toEqual([]);
    }
  });
  it('stands in both outlines as a cone over the smaller hole', () => {
    const { part } = ownPart(deep);
    for (const outline of [finishedOutline(part), finishedStage(part, 'first').outlines[0] ?? []]) {
      const ends = outline.flatMap(({ a, b }) => [a, b]).filter(({ d }) => Math.round(d) === mm(3));
      const near = Math.min(...ends.map(({ z }) => z));
      expect(toMm(len(Math.round(near)))).toBeCloseTo(14 + RUN.deep, 3);
    }
  });
  it('is compared with what the angle makes it, at the limits of both holes', () => {
    const claim = ownPart(shallow).proof.claims.find((one) => one.about === 'part/well.point');
    expect(claim?.holds).toBe(true);
    // 8 and 6.5, each 0.2 either way
    const run = (narrows: number) => Math.round(mm(narrows / 2 / Math.tan((59 * Math.PI) / 180)));
    expect([claim?.worst?.limits.lo, claim?.worst?.limits.hi]).toEqual([run(1.1), run(1.9)]);
    expect(toMm(claim?.worst?.limits.target ?? mm(0))).toBeCloseTo(RUN.shallow, 3);
  });
  it.each([
    ['flat', undefined],
    ['90 degrees', 90],
  ])('is refused by the proof where the tool leaves it %s', (_, point) => {
    const { part, route, chart } = ownPart(deep);
    const ground = (sweep: Sweep): Sweep => {
      if (sweep.take !== 'bore' || sweep.cylinder !== 'part/well') return sweep;
      const { point: _own, ...flat } = sweep;
      return point === undefined ? flat : { ...flat, point };
    };
    const chosen = route.chosen.map((method) => ({
      ...method,
      operations: method.operations.map((op) => ({
        ...op,
        ways: Object.fromEntries(Object.entries(op.ways).map(([end, way]) => [end, { ...way, sweeps: way.sweeps.map(ground) }])),
      })),
    }));
    if (!deep.plan) throw new Error('no plan');
    const { claims } = prove({ part, route: { ...route, chosen }, chart, workshop: deep.plan.workshop });
    expect(claims.filter((one) => !one.holds).map((one) => one.about)).toContain('part/well.point');
  });
});

describe('which of the two is drilled first', () => {
  it('is the smaller where it is short for its drill: the larger follows it, held back', () => {
    const order = orderOf(ownPart(shallow));
    expect(order.indexOf('part/way/drill-to-size')).toBeLessThan(order.indexOf('part/well/drill-to-size'));
  });
  it('is the larger where the smaller would be deep: it starts in the point that was left, without a centre of its own', () => {
    const planned = ownPart(deep);
    const order = orderOf(planned);
    expect(order.indexOf('part/well/drill-to-size')).toBeLessThan(order.indexOf('part/way/drill-to-size'));
    expect(order).not.toContain('part/way/centre');
    // ten diameters from the face, and some five from the point
    const pecks = planned.figures.find(({ op }) => op === 'part/way/drill-to-size')?.pecks ?? [];
    expect(toMm(len(pecks.reduce((sum, one) => sum + one, 0)))).toBeLessThan(17);
  });
  it('takes an inside thread over a passage: tapped into the point', () => {
    const stem = 'name: body, diameter: 14 mm, length: 24 mm';
    const planned = ownPart(planOwn(stepped('thread: M6, depth: 10 mm, bottom: point', 'diameter: 2 mm, depth: 18 mm', stem)));
    expect(planned.proof.holds).toBe(true);
    expect(planned.part.features.find((one) => one.id === 'part/way')).toMatchObject({ blind: true });
  });
});

describe('a point that has no room', () => {
  it('is refused where the smaller hole ends in it', () => {
    expect(codes(stepped('diameter: 8 mm, depth: 14 mm, bottom: point', 'diameter: 3 mm, depth: 15.5 mm, bottom: flat'))).toContain(
      'design.part-point-into-hole',
    );
    expect(codes(stepped('diameter: 8 mm, depth: 14 mm, bottom: point', 'diameter: 3 mm, depth: 17 mm, bottom: flat'))).not.toContain(
      'design.part-point-into-hole',
    );
  });
});
