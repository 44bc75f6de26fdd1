/**
 * A stop valve over random duties: every figure that matters worked out again from the parts as they are drawn, by plain means, or a
 * refusal that names what to change. The parts are measured here, not the design's own sizes.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import { DESIGNS } from '../../src/fittings/designs.ts';
import type { StopValveAsked } from '../../src/fittings/stop-valve/asked.ts';
import type { Cone, Cylinder, Fitting, Part } from '../../src/model/part.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { readWorkshop } from '../../src/phases/read.ts';
import { across, at, bars, disc, part, surface } from '../fixtures/made-fitting.ts';

const FILE = join(import.meta.dirname, '..', '..', 'specs', 'workshops', 'bench-lathe.yaml');
const shop = readWorkshop({ name: 'bench-lathe.yaml', text: readFileSync(FILE, 'utf8') }).value as Workshop;
/** A shelf that has everything, so that no bar is what refuses. */
const workshop: Workshop = { ...shop, shelf: [...bars('PB102', 'round'), ...bars('PB102', 'hexagon'), ...bars('316', 'round')] };

const design = (asked: StopValveAsked) => {
  const make = DESIGNS['stop-valve'];
  if (!make) throw new Error('no stop valve');
  return make(asked, workshop);
};

const asked: fc.Arbitrary<StopValveAsked> = fc
  .record({
    serves: fc.constantFrom('whistle', 'blower', 'supply', 'blow-down', 'injector-steam', 'feed' as const),
    pressure: fc.integer({ min: 1, max: 15 }),
    pattern: fc.constantFrom('straight', 'angle' as const),
    outside: fc.integer({ min: 30, max: 120 }),
    wall: fc.constantFrom(5, 7, 8, 10),
    bore: fc.option(fc.integer({ min: 30, max: 120 }), { nil: undefined }),
    cone: fc.option(fc.constantFrom(60, 75, 90), { nil: undefined }),
  })
  .map(({ serves, pressure, pattern, outside, wall, bore, cone }) => ({
    title: 'any',
    duty: { serves, pressure },
    pattern,
    pipe: { outside: mm(outside / 10), wall: mm(wall / 10) },
    material: 'PB102',
    spindleMaterial: '316',
    ...(bore === undefined ? {} : { bore: mm(bore / 10) }),
    ...(cone === undefined ? {} : { cone }),
  }));

/** Least ring between a cone lifted by `lift` and the seat's edge: shortest line from the edge to the cone, in small steps, turned round. */
function openArea(bore: number, included: number, lift: number, plug: number): number {
  const slope = Math.tan(((included / 2) * Math.PI) / 180);
  let least = Number.POSITIVE_INFINITY;
  for (let r = 0; r <= plug / 2; r += plug / 4000) {
    const z = lift + (r - bore / 2) / slope;
    least = Math.min(least, Math.PI * (bore / 2 + r) * Math.hypot(bore / 2 - r, z));
  }
  return least;
}

function check(fitting: Fitting, wanted: StopValveAsked): void {
  const [body, bonnet, spindle] = [part(fitting, 'body'), part(fitting, 'bonnet'), part(fitting, 'spindle')];
  const bore = across(body, 'seat');
  const plug = across(spindle, 'plug');
  const cone = surface<Cone>(spindle, 'plug.cone');
  const pipe = toMm(wanted.pipe.outside) - 2 * toMm(wanted.pipe.wall);
  expect(bore).toBeGreaterThanOrEqual(pipe - 0.0501);
  expect(plug).toBeGreaterThan(bore + 1);
  expect(disc(across(body, 'chamber')) - disc(plug)).toBeGreaterThanOrEqual(disc(bore) * 0.999);
  // shut: the cone stands on the seat's edge where it is as wide as the bore
  const slope = 2 * Math.tan(((cone.includedAngle / 2) * Math.PI) / 180);
  const tipBelow = (bore - toMm(cone.mouth.target)) / slope;
  const back = at(body, 'W') - tipBelow + at(spindle, 'B');
  const under = at(body, 'T') + 0.9 - (at(bonnet, 'A') - at(bonnet, 'N'));
  const travel = under - back;
  // the whole bore, to what frusta leave out: the least of all rings is up to 5 % smaller than the design's
  expect(openArea(bore, cone.includedAngle, travel, plug)).toBeGreaterThan(disc(bore) * 0.93);
  const thread = spindle.features.find((f) => f.kind === 'thread' && f.on === 'spindle/running');
  const nut = bonnet.features.find((f) => f.kind === 'thread' && f.on === 'bonnet/running');
  if (thread?.kind !== 'thread' || nut?.kind !== 'thread') throw new Error('no running threads');
  // places along the bonnet when shut: its underside is `travel` above the plug's back
  const [from, to] = [toMm(thread.from) - at(spindle, 'B') - travel, toMm(thread.to) - at(spindle, 'B') - travel];
  const engaged = Math.min(to, toMm(nut.to)) - Math.max(from, toMm(nut.from));
  expect(engaged).toBeGreaterThanOrEqual(toMm(thread.thread.major.lo) * 0.95);
  // wide open the thread does not run into the blind end of its hole
  expect(to + travel).toBeLessThanOrEqual(at(bonnet, 'I') + 0.01);
  // captive: the plug does not pass the bonnet's thread, the thread not the stem's hole
  expect(plug).toBeGreaterThan(toMm(nut.thread.major.hi));
  expect(toMm(thread.thread.major.lo)).toBeGreaterThan(across(bonnet, 'stem-hole'));
  expect(across(bonnet, 'stem-hole')).toBeGreaterThan(across(spindle, 'stem'));
  checkGland(fitting, bonnet, spindle);
}

function checkGland(fitting: Fitting, bonnet: Part, spindle: Part): void {
  const [follower, nut] = [part(fitting, 'follower'), part(fitting, 'gland-nut')];
  const packing = fitting.bought.find((b) => b.kind === 'packing');
  const width = Number(packing?.grounds.width);
  expect(across(bonnet, 'box') - across(spindle, 'stem')).toBeCloseTo(2 * width, 3);
  const depth = at(bonnet, 'U') - at(bonnet, 'X');
  const full = width * Number(packing?.quantity);
  expect(depth).toBeGreaterThanOrEqual(full);
  expect(toMm(surface<Cylinder>(follower, 'nose').size.hi)).toBeLessThan(toMm(surface<Cylinder>(bonnet, 'box').size.lo));
  // a third of the packing pressed away: the nose reaches it, the nut still has thread
  const pressed = full * 0.3;
  expect(at(follower, 'C')).toBeGreaterThanOrEqual(depth - full + pressed);
  const stands = at(follower, 'C') - (depth - full);
  const onNeck = at(nut, 'L') - toMm(surface<Cylinder>(follower, 'flange').to) + toMm(surface<Cylinder>(follower, 'flange').from) - stands;
  expect(onNeck).toBeGreaterThanOrEqual(
    5 * toMm((nut.features.find((f) => f.kind === 'thread') as { thread: { pitch: number } }).thread.pitch as never) - 0.01,
  );
}

describe('a stop valve', () => {
  it('of any duty holds when it is worked out again, or says what to change', () => {
    let made = 0;
    fc.assert(
      fc.property(asked, (wanted) => {
        const { value, found } = design(wanted);
        if (!value) {
          expect(found.some((d) => d.severity === 'error')).toBe(true);
          return;
        }
        made += 1;
        check(value, wanted);
      }),
      { numRuns: 300, seed: 7 },
    );
    expect(made).toBeGreaterThan(60);
  });

  it('of 90° opens 1.41 times as fast as one of 60° in its first tenths (sin 45° / sin 30°, derived)', () => {
    expect(openArea(6, 90, 0.1, 8) / openArea(6, 60, 0.1, 8)).toBeCloseTo(Math.SQRT2, 2);
  });
});
