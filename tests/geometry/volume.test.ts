/**
 * Volumes of the half-section against a 3-D solid library: each spec's parts are cut out of their bar as solids. Round solids are
 * prisms of many sides there; a prism of n sides holds (n / 2 pi) sin(2 pi / n) of its circle, and all else is to agree.
 */
import Module, { type Manifold, type SimplePolygon } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { UNITS_PER_MM } from '../../src/base/units.ts';
import { finishedOutline } from '../../src/geometry/nominal.ts';
import { replay } from '../../src/geometry/replay.ts';
import { volumeOf } from '../../src/geometry/section/ask.ts';
import { polygonsOf } from '../../src/geometry/section/outline.ts';
import { isSolid, type Section } from '../../src/geometry/section.ts';
import type { Part } from '../../src/model/part.ts';
import type { Polygon } from '../../src/model/stage.ts';
import { everyPlan } from '../fixtures/every-plan.ts';

const SIDES = 48;
const SHARE = (SIDES / (2 * Math.PI)) * Math.sin((2 * Math.PI) / SIDES);
/** Relative; the library works in doubles and merges what lies closer than about a millionth of the whole. */
const NEAR = 2e-5;

let solids: Awaited<ReturnType<typeof Module>>;
beforeAll(async () => {
  solids = await Module();
  solids.setup();
});

/** Half-sections in units to millimetres: radius across, place up. */
const flat = (polygon: Polygon): SimplePolygon => polygon.map(({ z, d }) => [d / 2 / UNITS_PER_MM, z / UNITS_PER_MM]);
function turned(polygons: readonly Polygon[]): Manifold {
  const section = solids.CrossSection.ofPolygons(polygons.map(flat), 'EvenOdd');
  return solids.Manifold.revolve(section, SIDES);
}
const cubic = (section: Section): number => volumeOf(section, isSolid) / UNITS_PER_MM ** 3;

const PARTS = everyPlan.flatMap(({ spec, plan }) =>
  plan.parts.filter(({ part }) => part.stock.from === 'bar').map((planned) => [spec, planned.part.id, planned] as const),
);

describe('volumes against solids', () => {
  it.each(PARTS)('%s: %s, cut out of its bar step by step', (_, __, { part, route, chart, proof }) => {
    const run = replay(part, route, chart);
    let work = turned(polygonsOf(run.start, isSolid));
    for (const step of run.steps) {
      const gone = polygonsOf(
        step.after,
        (paint) => (paint.state === 'taken' || paint.state === 'dropped') && paint.by === step.operation.id,
      );
      if (gone.length > 0) work = work.subtract(turned(gone));
      expect(Math.abs(work.volume() / SHARE / cubic(step.after) - 1)).toBeLessThan(NEAR);
    }
    expect(Math.abs(work.volume() / SHARE / (proof.volume ?? 0) - 1)).toBeLessThan(NEAR);
  });
  /** A drill's point is metal gone that no drawing shows. */
  const isPointed = (part: Part): boolean =>
    part.features.some((feature) => feature.kind === 'hole' && feature.floor === undefined && (feature.blind || feature.centre));
  const DRAWN = PARTS.filter(([, , { part }]) => !part.staysInChuck);
  /** What a collet closes on is turned to that, and not to what the drawing would aim at. */
  const aimed = ({ part, chart }: (typeof DRAWN)[number][2]): Part => ({
    ...part,
    surfaces: part.surfaces.map((surface) => {
      const held = chart.working.find((one) => one.makes === surface.id && one.stage === 'final' && one.limits.from.kind === 'chart');
      return surface.shape === 'cylinder' && held ? { ...surface, size: held.limits } : surface;
    }),
  });
  it.each(DRAWN)('%s: %s, as drawn', (_, __, planned) => {
    const { part, route, chart } = planned;
    const drawn = turned([finishedOutline(aimed(planned)).map((edge) => edge.a)]).volume() / SHARE;
    const made = cubic(replay(part, route, chart).end);
    // aims are round figures and may lie a few hundredths off the drawing's own
    if (isPointed(part)) expect([drawn >= made, drawn / made < 1.05]).toEqual([true, true]);
    else expect(Math.abs(drawn / made - 1)).toBeLessThan(0.01);
  });
});
