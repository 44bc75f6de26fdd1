/**
 * The picture in perspective: what is seen is judged again by walking each line of sight through the metal in small steps, and what the
 * eye does to places is held against what perspective must do.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curvesOf } from '../../src/drawing/cutaway/lines.ts';
import { nearTo } from '../../src/drawing/cutaway/near.ts';
import { isSeen, sightOf } from '../../src/drawing/cutaway/sight.ts';
import { type Band, isMetal, isThere, type Scene, type Solid, within } from '../../src/drawing/cutaway/solids.ts';
import { along, type Eye, eyeOn, less, long, type Place, seenBy } from '../../src/drawing/cutaway/space.ts';
import { drawCutaway } from '../../src/drawing/cutaway.ts';
import type { Arrangement, Part } from '../../src/model/part.ts';
import { everyPlan } from '../fixtures/every-plan.ts';

const FRAME = { width: 80, height: 70 };
const eyeFor = (far: number): Eye => eyeOn({ x: 0, y: 10, z: 0 }, { turn: 56, rise: 24, far });

describe('the eye', () => {
  const places = fc.record({
    x: fc.double({ min: -20, max: 20, noNaN: true }),
    y: fc.double({ min: -20, max: 20, noNaN: true }),
    z: fc.double({ min: -20, max: 20, noNaN: true }),
  });
  it('sees straight lines straight', () => {
    fc.assert(
      fc.property(places, places, fc.double({ min: 0, max: 1, noNaN: true }), (p, q, share) => {
        const eye = eyeFor(200);
        const [a, b, c] = [p, q, along(p, share, less(q, p))].map((one) => seenBy(eye, one));
        if (!a || !b || !c) return false;
        return Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) < 1e-9 * (1 + Math.hypot(b.x - a.x, b.y - a.y) ** 2);
      }),
    );
  });
  it('sees the same size larger where it is nearer, as the distances are', () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (near) => {
        const eye = eyeFor(200);
        const at = along(eye.on, near, eye.toward);
        const size = seenBy(eye, along(at, 1, eye.right)).x - seenBy(eye, at).x;
        expect(size).toBeCloseTo(200 / (200 - near), 9);
      }),
    );
  });
  it('has axes of length one, square to each other', () => {
    const { right, up, toward } = eyeFor(100);
    for (const one of [right, up, toward]) expect(long(one)).toBeCloseTo(1, 12);
    expect(right.x * up.x + right.y * up.y + right.z * up.z).toBeCloseTo(0, 12);
  });
});

/** Bushes of random steps: one stands, one lies level in it. */
const bush = (bore: number, outs: readonly number[]): Pick<Solid, 'ring' | 'bands'> => {
  const steps = outs.flatMap((out, i) => [
    { a: i * 8, r: out },
    { a: (i + 1) * 8, r: out },
  ]);
  const end = outs.length * 8;
  const ring = [{ a: 0, r: bore }, ...steps, { a: end, r: bore }];
  const bands = ring.map((p, i): Band => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return { a0: p.a, r0: p.r, a1: q.a, r1: q.r };
  });
  return { ring, bands: bands.filter(({ a0, r0, a1, r1 }) => a0 !== a1 || r0 !== r1) };
};
const solid = (shape: Pick<Solid, 'ring' | 'bands'>, place: Pick<Solid, 'origin' | 'way' | 'clear' | 'whole'>): Solid => ({
  ...{ ...shape, ...place, chamfers: [], threads: [], holes: [], least: 0 },
  ...{ most: Math.max(...shape.ring.map(({ a }) => a)), wide: Math.max(...shape.ring.map(({ r }) => r)) },
});
const scenes = fc
  .record({
    bore: fc.integer({ min: 3, max: 5 }),
    outs: fc.array(fc.integer({ min: 8, max: 14 }), { minLength: 2, maxLength: 4 }),
    inner: fc.integer({ min: 1, max: 2 }),
    ball: fc.boolean(),
    across: fc.integer({ min: 0, max: 3 }),
    rod: fc.boolean(),
  })
  .map(({ bore, outs, inner, ball, rod, across }): Scene => {
    const holes = Array.from({ length: across }, (_, k) => ({ a: outs.length * 8 - 4, r: 1.5, round: (k * Math.PI) / across }));
    const stands = solid(bush(bore, outs), { origin: { x: 0, y: 0, z: 0 }, way: 'up', clear: 0, whole: false });
    const lies = solid(bush(inner, [3, 4]), { origin: { x: bore - 1, y: 8, z: 0 }, way: 'right', clear: bore, whole: false });
    const stem = solid(
      { ring: rodOf(bore), bands: bandsOf(rodOf(bore)) },
      { origin: { x: 0, y: 10, z: 0 }, way: 'up', clear: 0, whole: true },
    );
    const solids = [{ ...stands, holes }, lies, ...(rod ? [stem] : [])];
    return ball ? { solids, ball: { at: { x: 0, y: 4, z: 0 }, r: bore - 0.5 } } : { solids };
  });
const rodOf = (bore: number): Solid['ring'] => [
  { a: 0, r: 0 },
  { a: 0, r: bore - 1 },
  { a: 30, r: bore - 1 },
  { a: 30, r: 0 },
];
const bandsOf = (ring: Solid['ring']): readonly Band[] =>
  ring.slice(1).map((q, i) => ({ a0: ring[i]?.a ?? 0, r0: ring[i]?.r ?? 0, a1: q.a, r1: q.r }));

/** Is there metal at a place in space? By the section alone: no surface is met here. */
function isFilled(scene: Scene, p: Place): boolean {
  const { ball } = scene;
  if (ball && long(less(p, ball.at)) < ball.r) return true;
  return scene.solids.some((one, i) => {
    const { a, c, s } = within(one, p);
    return isMetal(one, a, Math.hypot(c, s)) && isThere(scene, i, p);
  });
}

const STEP = 0.05;
/** How much metal the line of sight goes through, after the first little bit. */
function metalBefore(scene: Scene, p: Place, eye: Eye): number {
  const to = less(eye.at, p);
  const far = long(to);
  let metal = 0;
  for (let s = 0.1; s < Math.min(far, 60); s += STEP) if (isFilled(scene, along(p, s / far, to))) metal += STEP;
  return metal;
}

describe('what is seen', () => {
  it('has no metal before it, and what is hidden has', () => {
    const told = { seen: 0, hidden: 0, grazed: 0 };
    fc.assert(
      fc.property(scenes, (scene) => {
        const eye = eyeFor(180);
        const sight = sightOf(scene, eye);
        for (const curve of curvesOf(scene, eye, { hatch: 2, thread: 1 })) {
          const near = nearTo(curve, sight);
          for (const share of [0.13, 0.37, 0.61, 0.89]) {
            const p = curve.at(share);
            const there = curve.of < 0 || isThere(scene, curve.of, p);
            expect(near.isThere(p)).toBe(there);
            if (near.alone) expect(there).toBe(true);
            if (!there) continue;
            const seen = isSeen(sight, p, curve.onCut ?? false, near.hiders);
            if (near.alone) expect(seen).toBe(true);
            const metal = metalBefore(scene, p, eye);
            if (seen) expect(metal).toBeLessThan(0.5);
            if (!seen && metal === 0) told.grazed++;
            told[seen ? 'seen' : 'hidden']++;
          }
        }
      }),
      { numRuns: 12 },
    );
    expect(told.seen).toBeGreaterThan(500);
    expect(told.hidden).toBeGreaterThan(500);
    // a line along a surface touches it, and no step falls into the metal
    expect(told.grazed).toBeLessThan(told.hidden / 100);
  });
});

describe('the picture', () => {
  const arranged = everyPlan.flatMap(({ spec: name, plan }) =>
    plan?.fitting.arrangement ? [{ name, plan, arrangement: plan.fitting.arrangement }] : [],
  );
  const draw = (arrangement: Arrangement, parts: readonly Part[]) =>
    drawCutaway({ arrangement, part: (id) => parts.find((part) => part.id === id) as Part, frame: FRAME, alt: 'the valve cut open' });
  it('is there of several fittings', () => {
    expect(arranged.length).toBeGreaterThan(1);
  });
  it.each(arranged)('$name stays in its frame, fills it one way, and is the same twice', ({ plan, arrangement }) => {
    const parts = plan.parts.map(({ part }) => part);
    const picture = draw(arrangement, parts);
    const places = picture.items.flatMap((item) =>
      item.kind === 'path' ? item.segments.flatMap((s) => (s.to === 'close' ? [] : [{ x: s.x, y: s.y }])) : [],
    );
    const [xs, ys] = [places.map((p) => p.x), places.map((p) => p.y)];
    expect(Math.min(...xs, ...ys)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...xs)).toBeLessThanOrEqual(FRAME.width);
    expect(Math.max(...ys)).toBeLessThanOrEqual(FRAME.height);
    expect(Math.max((Math.max(...xs) - Math.min(...xs)) / FRAME.width, (Math.max(...ys) - Math.min(...ys)) / FRAME.height)).toBeGreaterThan(
      0.9,
    );
    expect(draw(arrangement, parts)).toEqual(picture);
  });
});
