/** A route carried out again on the half-section. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { len, mm } from '../../src/base/units.ts';
import { finishedOutline } from '../../src/geometry/nominal.ts';
import { replay, replayer, stageAfter, stageAtEnd, tookOf } from '../../src/geometry/replay.ts';
import { finishedOf } from '../../src/geometry/ring.ts';
import { areaOf } from '../../src/geometry/section/ask.ts';
import { outlinesOf } from '../../src/geometry/section/outline.ts';
import { isSolid } from '../../src/geometry/section.ts';
import type { Part } from '../../src/model/part.ts';
import type { Chart, Route, Sweep } from '../../src/model/plan.ts';
import type { Outline, Polygon } from '../../src/model/stage.ts';
import { prove } from '../../src/phases/prove.ts';
import { mirrorChart, mirrorPart, mirrorRoute } from '../fixtures/mirror.ts';
import { id, seatChart, seatPiece, seatRoute, seatWorkshop } from '../fixtures/seat-piece.ts';

const sound = replay(seatPiece, seatRoute, seatChart);
const rounded = (outline: Outline) =>
  outline.map(({ a, b, surface }) => [surface, Math.round(a.z), Math.round(a.d), Math.round(b.z), Math.round(b.d)].join(' ')).sort();
/** Stretches of one face that different tools made, as one. */
function merged(outline: Outline): Outline {
  const found: Outline[number][] = [];
  for (const edge of outline) {
    const last = found.at(-1);
    if (last && last.surface === edge.surface && last.a.z === edge.b.z) found[found.length - 1] = { ...last, b: edge.b };
    else found.push(edge);
  }
  return found;
}
const shoelace = (points: Polygon): number =>
  Math.abs(
    points.reduce(
      (sum, p, i) => sum + p.d * (points[(i + 1) % points.length]?.z ?? 0) - p.z * (points[(i + 1) % points.length]?.d ?? 0),
      0,
    ),
  ) / 2;

describe('the end', () => {
  it('at every target is the drawing', () => {
    const [outline, ...others] = outlinesOf(sound.end, isSolid);
    expect(others).toEqual([]);
    expect(rounded(merged(outline ?? []))).toEqual(rounded(finishedOutline(seatPiece)));
    expect(finishedOf(seatPiece, sound.end).ring).toEqual(seatPiece.ring);
  });
  it('of a part that stays in the chuck is closed through its bar', () => {
    const bar = { lo: mm(16), hi: mm(16), target: mm(16), from: { kind: 'stock', as: 'bar' } } as const;
    const common = { role: 'free', side: 'outside' } as const;
    const plug: Part = {
      ...{ id: 'plug', kind: 'plug', quantity: 1, use: 'tooling made in place', length: mm(10), staysInChuck: true },
      ...{
        stock: { from: 'bar', section: 'round', across: mm(16), material: 'steel' },
        features: [],
        dimensions: [],
        ring: ['Q', 'spigot', 'M', 'skin'],
      },
      surfaces: [
        { ...common, shape: 'face', id: 'Q', feature: 'Q', air: 'first', z: mm(0) },
        { ...common, shape: 'cylinder', id: 'spigot', feature: 'spigot', size: { ...bar, target: mm(8) }, from: mm(0), to: mm(4) },
        { ...common, shape: 'face', id: 'M', feature: 'M', air: 'first', z: mm(4) },
        { ...common, shape: 'cylinder', id: 'skin', feature: 'skin', size: bar, from: mm(4), to: mm(10), asStock: true },
      ],
    };
    expect(finishedOutline(plug).map(({ a, b, surface }) => [surface, a.z, a.d, b.z, b.d].join(' '))).toEqual([
      ...['Q 0 0 0 80000', 'spigot 0 80000 40000 80000', 'M 40000 80000 40000 160000', 'skin 40000 160000 100000 160000'],
      ...[' 100000 160000 100000 0', ' 100000 0 0 0'],
    ]);
  });
  it('of a part made from the other end is its mirror, and as well proved', () => {
    const part = mirrorPart(seatPiece);
    const [route, chart] = [mirrorRoute(seatRoute, seatPiece.length), mirrorChart(seatChart)];
    const run = replay(part, route, chart);
    const flipped = (outlinesOf(run.end, isSolid)[0] ?? []).map((edge) => ({
      ...edge,
      a: { z: seatPiece.length - edge.b.z, d: edge.b.d },
      b: { z: seatPiece.length - edge.a.z, d: edge.a.d },
    }));
    expect(rounded(flipped)).toEqual(rounded(outlinesOf(sound.end, isSolid)[0] ?? []));
    const claims = prove({ part, route, chart, workshop: seatWorkshop }).claims;
    expect(claims.filter((one) => !one.holds)).toEqual([]);
    expect(claims.length).toBe(prove({ part: seatPiece, route: seatRoute, chart: seatChart, workshop: seatWorkshop }).claims.length);
  });
  it.each([
    ['A-E', { E: 500 }],
    // the relief's wall hangs on B, and goes with it
    ['A-B', { B: 500, 'coupling.wall': 500 }],
    // S is where everything in the first grip is measured from
    ['S-S', { S: 1000, N: 1000, A: 1000, 'seat-thread.wall': 1000, B: 1000, 'coupling.wall': 1000, E: 1000 }],
  ])('moves by %s what hangs on it: %j', (dim, moved) => {
    const working = seatChart.working.find((one) => one.id === id(dim));
    const run = replay(seatPiece, seatRoute, seatChart, { [id(dim)]: working?.limits.hi ?? 0 });
    const places = [...run.places.faces].map(
      ([face, { z }]) => [face.slice(seatPiece.id.length + 1), z - (sound.places.faces.get(face)?.z ?? 0)] as const,
    );
    expect(Object.fromEntries(places.filter(([, by]) => Math.abs(by) > 0.01))).toEqual(moved);
  });
  it('is the same whether the beginning is done again or not', () => {
    const again = replayer(seatPiece, seatRoute, seatChart);
    const values = fc.record(
      Object.fromEntries(seatChart.working.map(({ id: dim, limits }) => [dim, fc.integer({ min: limits.lo, max: limits.hi })])),
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(values, (some) => {
        const given = some as Record<string, number>;
        expect(again(given).end).toEqual(replay(seatPiece, seatRoute, seatChart, given).end);
      }),
      { numRuns: 25, seed: 3 },
    );
  });
});

describe('a moment', () => {
  it.each([1, 3])('set-up %i: what stands, what is thread and what was taken is what there was', (no) => {
    const [setUp] = seatRoute.setUps.filter((one) => one.no === no);
    if (!setUp) throw new Error(`no set-up ${no}`);
    const stage = stageAtEnd(sound, setUp);
    const first = sound.steps.find((step) => step.setUp.no === no);
    const last = sound.steps.findLast((step) => step.setUp.no === no);
    const sum = (polygons: readonly Polygon[]): number => polygons.reduce((all, one) => all + shoelace(one), 0);
    const metal = sum(stage.outlines.map((outline) => outline.map((edge) => edge.a)));
    const bands = sum(stage.threads.map((one) => one.polygon));
    expect(metal + bands).toBeCloseTo(areaOf(last?.after ?? sound.end, isSolid), -2);
    const dropped = areaOf(last?.after ?? sound.end, (paint) => paint.state === 'dropped' && paint.by === id('bar/part-off-second'));
    const fell = no === 1 ? dropped : 0;
    expect(metal + bands + fell + sum(stage.taken.map((one) => one.polygon))).toBeCloseTo(
      areaOf(first?.before ?? sound.start, isSolid),
      -2,
    );
    expect(stage.out).toBe(no === 1 ? 'first' : 'second');
    expect(stage.threads.map((one) => one.surface)).toEqual(no === 1 ? [id('seat-thread')] : [id('seat-thread'), id('coupling')]);
  });
  it('shows what is taken grow operation by operation', () => {
    const counts = sound.steps
      .filter((step) => step.setUp.no === 1)
      .map((_, i) => new Set(stageAfter(sound, i).taken.map((one) => one.by)).size);
    // the thread is no metal taken: its band is shown as thread
    expect(counts).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 9, 10]);
  });
  it.each([
    // bar 18, sawn end 0.7 off: area in mm of z times mm of diameter
    ['S/face', 0.7 * 18],
    // ring between 18 and 16 from S to 1 beyond B
    ['flange/turn', 2 * 16.4],
    // between 16 and 11.9 from S to A
    ['seat-thread/turn', 4.1 * 10.4],
    ['nose/turn', 1.3 * 3],
    // 4.2 to 4.5 from where the start bore ended, 7 in, to S
    ['bore/d-bit', 0.3 * 17.4],
  ])('%s takes %d', (op, area) => {
    const step = sound.steps.find((one) => one.operation.id === id(op));
    expect(step ? tookOf(step) : []).toHaveLength(1);
    expect((step ? (tookOf(step)[0] ?? 0) : 0) / mm(1) / mm(1)).toBeCloseTo(area, 6);
  });
});

describe('what is not there', () => {
  const withSweep = (name: string, sweep: Sweep): Route => ({
    ...seatRoute,
    chosen: seatRoute.chosen.map((method) => ({
      ...method,
      operations: method.operations.map((one) => (one.id === id(name) ? { ...one, ways: { first: { cuts: [], sweeps: [sweep] } } } : one)),
    })),
  });
  const from = (dim: string, zero: string): Chart => ({
    ...seatChart,
    working: seatChart.working.map((one) => (one.id === id(dim) ? { ...one, from: zero.includes(' ') ? 'bar end' : id(zero) } : one)),
  });
  it.each<readonly [string, Route, Chart, string, string]>([
    ['a face not made yet', seatRoute, from('S-N', 'B'), 'nose/turn', 'from'],
    ['the bar end when it is gone', seatRoute, from('A-B', 'bar end'), 'coupling/turn', 'from'],
    [
      'a shoulder to turn up to',
      withSweep('nose/turn', { take: 'turn', cylinder: id('nose'), to: { face: id('B') } }),
      seatChart,
      'nose/turn',
      'bound',
    ],
    ['a face to start a cone from', withSweep('nose/turn', { take: 'cone', cone: id('cone') }), seatChart, 'nose/turn', 'bound'],
    [
      'a wall of a groove',
      withSweep('nose/turn', {
        take: 'groove',
        side: 'outside',
        floor: id('coupling.relief'),
        first: id('B'),
        second: id('coupling.wall'),
      }),
      seatChart,
      'nose/turn',
      'bound',
    ],
  ])('%s is told, and nothing is cut by it', (_, route, chart, op, what) => {
    const run = replay(seatPiece, route, chart);
    const step = run.steps.find((one) => one.operation.id === id(op));
    expect(step?.lacks.map((lack) => lack.what)).toEqual([what]);
    expect(step?.after).toBe(step?.before);
    const numbers = run.end.slabs.flatMap((slab) => [
      slab.from,
      slab.to,
      ...slab.bounds.flatMap(({ line }) => [line.z, line.d, line.slope]),
    ]);
    expect(numbers.filter((one) => Number.isNaN(one))).toEqual([]);
  });
});

describe('a face that was made and cut away', () => {
  // the nose is turned right up to A, so that N is gone as soon as it is made
  const far = seatRoute.chosen.map((method) => ({
    ...method,
    operations: method.operations.map((one) => {
      const way = one.ways.first;
      if (one.id !== id('nose/turn') || !way) return one;
      return { ...one, ways: { first: { ...way, sweeps: [{ take: 'turn', cylinder: id('nose'), to: { face: id('A') } } as const] } } };
    }),
  }));
  const chart: Chart = {
    ...seatChart,
    working: seatChart.working.map((one) => (one.id === id('A-seat-thread.wall') ? { ...one, from: id('N'), toward: 1 } : one)),
  };
  const run = replay(seatPiece, { ...seatRoute, chosen: far }, chart);
  it.each([
    ['is not measured from', 'seat-thread.relief/groove', 'from'],
    ['is not where a cone starts', 'seat-thread.chamfer/chamfer', 'bound'],
  ])('%s', (_, op, what) => {
    expect(run.steps.find((one) => one.operation.id === id(op))?.lacks.map((lack) => lack.what)).toEqual([what]);
  });
});

describe('leaving the bar', () => {
  const parting = (sweep: Partial<Extract<Sweep, { take: 'part' }>>): Route => ({
    ...seatRoute,
    setUps: seatRoute.setUps.slice(0, 1),
    chosen: seatRoute.chosen.map((method) => ({
      ...method,
      operations: method.operations.map((one) =>
        one.id === id('bar/part-off-second')
          ? { ...one, ways: { first: { cuts: [], sweeps: [{ take: 'part', face: id('E'), kerf: mm(2), ...sweep }] } } }
          : one,
      ),
    })),
  });
  it('with a stub leaves so much bar beyond the end', () => {
    const run = replay(seatPiece, parting({ stub: mm(15) }), seatChart);
    expect(run.end.slabs.findLast((slab) => slab.paints.some(isSolid))?.to).toBe(seatPiece.length + mm(15));
  });
  it('drops the bar, and its kerf is chips', () => {
    const step = sound.steps.find((one) => one.operation.id === id('bar/part-off-second'));
    const kerf = (step ? (tookOf(step)[0] ?? 0) : 0) / mm(1) / mm(1);
    // 2 wide through 18, less what the drill took: 4.2 to 25.4 and its point beyond
    expect(kerf).toBeLessThan(2 * 18 - 0.6 * 4.2);
    expect(kerf).toBeGreaterThan(2 * (18 - 4.2));
    expect(areaOf(sound.end, isSolid)).toBeLessThan(len(mm(25)) * mm(18));
  });
});
