/** How a stop valve opens, turn by turn: against plain sums of its own, and against what is printed of cones (60 and 90 degrees). */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/base/units.ts';
import { FITTING_KINDS } from '../../src/fittings/kinds.ts';
import { SIZINGS } from '../../src/fittings/sizings.ts';
import type { StopValveAsked } from '../../src/fittings/stop-valve/asked.ts';
import { designStopValve } from '../../src/fittings/stop-valve/design.ts';
import { enoughLift, type Opening, wayThrough } from '../../src/fittings/stop-valve/opening.ts';
import type { Curve } from '../../src/model/part.ts';
import type { Job } from '../../src/model/workshop.ts';
import { read } from '../../src/phases/read.ts';
import { namesOf, vary } from '../../src/phases/size.ts';

const SPECS = join(import.meta.dirname, '..', '..', 'specs');
const WORKSHOP = { name: 'bench-lathe.yaml', text: readFileSync(join(SPECS, 'workshops', 'bench-lathe.yaml'), 'utf8') };
const job = (name: string): Job => {
  const text = readFileSync(join(SPECS, 'fittings', `${name}.yaml`), 'utf8');
  const { value } = read({ fitting: { name, text } }, WORKSHOP, FITTING_KINDS);
  if (!value) throw new Error(`${name} can't be read`);
  return value;
};
const curveOf = (name: string, more: Partial<StopValveAsked> = {}): Curve => {
  const { asked, workshop } = job(name);
  const curve = designStopValve({ ...(asked as StopValveAsked), ...more }, workshop).value?.curves?.[0];
  if (!curve) throw new Error(`${name} has no curve`);
  return curve;
};
const STOPS = ['whistle-stop-valve', 'blow-down-valve', 'steam-supply-valve'];

/** mm2, by turning many short lines about the axis: from the bore's edge square onto the cone. */
function ringRoundCone(bore: number, included: number, lift: number): number {
  const a = ((included / 2) * Math.PI) / 180;
  const gap = lift * Math.sin(a);
  const steps = 10_000;
  let area = 0;
  for (let i = 0; i < steps; i++) {
    const r = bore / 2 - ((i + 1 / 2) / steps) * gap * Math.cos(a);
    area += 2 * Math.PI * r * (gap / steps);
  }
  return area;
}

const wide = (cone: number): Opening => ({
  ...{ bore: mm(6), cone, plug: mm(7.5), chamber: mm(12), outlet: mm(10), travel: mm(6) },
});

describe('the way through a stop valve', () => {
  it.each([
    [60, 0.5],
    [60, 2],
    [90, 0.5],
    [90, 2],
    [120, 1],
  ])('round a cone of %d degrees lifted %d mm, by steps', (cone, lift) => {
    expect(wayThrough(wide(cone), lift)).toBeCloseTo(ringRoundCone(6, cone, lift), 4);
  });
  it('the whole bore at 0.732 d for 60 degrees and 0.459 d for 90 (published: x = (1 - sqrt(1 - cos a)) / (2 sin a cos a))', () => {
    expect(enoughLift(wide(60)) / 6).toBeCloseTo(0.73205, 5);
    expect(enoughLift(wide(90)) / 6).toBeCloseTo(0.4588, 4);
  });
  it('90 degrees opens 1.41 times as fast as 60 from shut', () => {
    const [blunt, sharp] = [90, 60].map((cone) => wayThrough(wide(cone), 0.001));
    expect((blunt ?? 0) / (sharp ?? 1)).toBeCloseTo(Math.SQRT2, 3);
  });
  it('branches that are narrower than the seat cut it off, at the lift where the cone passes as much', () => {
    const narrow: Opening = { ...wide(60), outlet: mm(4.4) };
    const area = (Math.PI / 4) * 4.4 ** 2;
    expect(wayThrough(narrow, 6)).toBeCloseTo(area, 6);
    expect(ringRoundCone(6, 60, enoughLift(narrow))).toBeCloseTo(area, 3);
  });
  it('so does the ring round the plug', () => {
    expect(wayThrough({ ...wide(60), chamber: mm(8) }, 6)).toBeCloseTo((Math.PI / 4) * (8 ** 2 - 7.5 ** 2), 6);
  });
});

describe.each(STOPS)('the curve of %s', (name) => {
  const { curve, bare, levels, stop, marks } = curveOf(name);
  it('begins shut, never falls, ends at the back stop, and passes no level', () => {
    expect(curve[0]).toEqual({ x: 0, y: 0 });
    expect(curve.at(-1)?.x).toBeCloseTo(stop, 9);
    for (const [i, p] of curve.entries()) {
      expect(p.y).toBeGreaterThanOrEqual((curve[i - 1]?.y ?? 0) - 1e-9);
      for (const level of levels) expect(p.y).toBeLessThanOrEqual(level.at + 1e-9);
    }
  });
  it('is the bare way round the cone as far as nothing else is narrower', () => {
    const least = Math.min(...levels.map((level) => level.at));
    for (const p of bare) if (p.y < least) expect(curve.find((q) => q.x === p.x)?.y).toBeCloseTo(p.y, 9);
  });
  it('tells points that lie on it', () => {
    expect(marks.length).toBeGreaterThan(2);
    for (const { at, say } of marks) {
      const before = curve.findLast((p) => p.x <= at.x + 1e-9);
      const after = curve.find((p) => p.x >= at.x - 1e-9);
      expect(at.y).toBeGreaterThanOrEqual((before?.y ?? 0) - 1e-9);
      expect(at.y).toBeLessThanOrEqual((after?.y ?? 100) + 1e-9);
      expect(say.grounds.share).toBe(at.y);
    }
  });
});

it('90 degrees opens 1.41 times as fast as 60 in one and the same valve, a tenth of a turn from shut', () => {
  const slope = (cone: number): number => curveOf('whistle-stop-valve', { cone }).curve[1]?.y ?? 0;
  expect(slope(90) / slope(60)).toBeCloseTo(1.41, 2);
});

it('a lift that is asked for is where the back stop stands', () => {
  const { stop, curve } = curveOf('whistle-stop-valve', { lift: mm(1.5) });
  expect(stop).toBeCloseTo(1.5, 9);
  expect(curve.at(-1)?.y).toBeCloseTo((100 * ringRoundCone(6, 60, 1.5)) / ((Math.PI / 4) * 36), 4);
});

describe('a size taken through its values', () => {
  it.each([
    ...['angle', 'cone', 'lift', 'pressure', 'bore'].map((key) => ['blow-down-valve', key] as const),
    ...['angle', 'lift', 'pressure', 'bore', 'ball'].map((key) => ['launch-feed-check-valve', key] as const),
  ])('%s: %s', (name, key) => {
    const wanted = job(name);
    const sizing = SIZINGS[wanted.fitting];
    if (!sizing) throw new Error('no reasoning');
    expect(namesOf(sizing)).toContain(key);
    const view = vary(wanted, sizing, key);
    expect(view?.rows.filter((row) => row.now)).toHaveLength(1);
    const whole = view?.rows.filter((row) => row.refused.length === 0) ?? [];
    expect(whole.length).toBeGreaterThan(3);
    expect(view?.columns.length).toBeGreaterThan(2);
    for (const row of whole) expect(row.figures.every((f) => f !== undefined && Number.isFinite(f))).toBe(true);
  });
  it('of a stop valve its lift: what it opens is the way through at that lift', () => {
    const wanted = job('steam-supply-valve');
    const sizing = SIZINGS[wanted.fitting];
    const view = sizing && vary(wanted, sizing, 'lift');
    const at = view?.columns.findIndex((column) => column.of === 'opens') ?? -1;
    const bore = sizing?.reason(wanted.asked, wanted.workshop).derivations.find((d) => d.of === 'bore')?.value ?? 0;
    const first = view?.rows[0];
    expect(first?.value).toBe(0.5);
    expect(first?.figures[at]).toBeCloseTo((100 * ringRoundCone(bore, 60, 0.5)) / ((Math.PI / 4) * bore ** 2), 4);
  });
});
