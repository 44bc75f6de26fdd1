/** Run-out of each re-grip as its own chain: a seat to its register, a cone to its stem. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import { words } from '../../src/base/words.ts';
import { held } from '../../src/handbook/capability.ts';
import type { Part } from '../../src/model/part.ts';
import type { Grip, Route } from '../../src/model/plan.ts';
import { truthPaths } from '../../src/phases/chart/truths.ts';
import { chart } from '../../src/phases/chart.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { id, seatPiece, seatRoute } from '../fixtures/seat-piece.ts';

const asked = (a: string, b: string, most: number): Part => ({
  ...seatPiece,
  truths: [{ id: id(`true.${a}-${b}`), a: id(a), b: id(b), asks: mm(most), from: { kind: 'role', as: 'test' } }],
});
const onGrip = (no: number, change: Partial<Grip>): Route => ({
  ...seatRoute,
  setUps: seatRoute.setUps.map((setUp) => (setUp.no === no ? { ...setUp, grip: { ...setUp.grip, ...change } } : setUp)),
});

describe('a chain of re-grips', () => {
  it.each<readonly [string, string, string, Route, readonly string[], number]>([
    ['both in one grip: nothing between', 'nose', 'seat-thread', seatRoute, [], 0],
    ['the seat bore to the thread that the mandrel holds', 'seat-thread', 'bore', seatRoute, ['seat-thread.thread.mandrel.second'], 0.05],
    [
      'the cone, by a three-jaw on the rim',
      'nose',
      'cone',
      onGrip(3, { on: [id('flange')], runout: mm(0.1) }),
      ['seat-thread.thread.mandrel.second'],
      0.1,
    ],
    [
      'held by the bar’s skin: out of the first jaws and into the second',
      ...(['nose', 'cone', onGrip(3, { on: [], runout: mm(0.1) })] as const),
      ['bar.first', 'seat-thread.thread.mandrel.second'],
      0.2,
    ],
  ])('%s', (_, a, b, route, links, worst) => {
    const [path] = truthPaths(asked(a, b, 1), route);
    expect(path?.links.map((link) => link.grip)).toEqual(links.map(id));
    expect(toMm(path?.worst ?? mm(9))).toBe(worst);
  });
  it.each([
    [0.05, true],
    [0.049, false],
  ])('%f asked: met %s', (most, met) => expect(truthPaths(asked('seat-thread', 'bore', most), seatRoute)[0]?.met).toBe(met));
  it('of a cone to the stem that was bought as it is: through the first jaws', () => {
    const needle = everyPlan.find(({ spec }) => spec === 'parts/needle')?.plan.parts[0];
    expect(needle?.chart.truths?.map((path) => [toMm(path.worst), path.met])).toContainEqual([0.1, true]);
  });
});

describe('what cannot be kept true', () => {
  const said = words({ 'numbers.hbs': readFileSync(new URL('../../templates/en/numbers.hbs', import.meta.url), 'utf8') });
  it('is refused: what, by how much, through which holds, and which hold would keep it', () => {
    const { value, found } = chart(asked('seat-thread', 'cone', 0.03), seatRoute, held);
    expect(value).toBeUndefined();
    const one = found.find((each) => each.code === 'chart.not-true');
    expect(said.say('error.chart.not-true', one?.grounds)).toBe(
      'cone of the seat-piece may run out by 0.05 mm to seat-thread, and 0.03 mm is allowed: 0.02 mm too much, through 1 re-grip (seat-thread.thread.mandrel.second).',
    );
    expect(said.say('error.chart.not-true.do', one?.grounds)).toBe(
      'Cut both in one grip, or hold the work by a collet instead: tried, and it comes within.',
    );
  });
  it('and where no hold alone would: in one grip', () => {
    const [one] = chart(asked('seat-thread', 'cone', 0.01), seatRoute, held).found.filter((each) => each.code === 'chart.not-true');
    expect(said.say('error.chart.not-true.do', one?.grounds)).toBe('Cut both in one grip.');
  });
});
