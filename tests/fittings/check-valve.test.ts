/**
 * A check valve over random duties: areas, walls, threads, guides and the measured sum worked out again from the parts as they are drawn, by
 * plain means, or a refusal that names what to change. Then what the trade does, coming out of the engine.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Len, mm, toMm } from '../../src/base/units.ts';
import { type CheckValveAsked, SERVES } from '../../src/fittings/check-valve/asked.ts';
import { CHECK_VALVE_PLACES } from '../../src/fittings/check-valve/places.ts';
import { reasonCheckValve } from '../../src/fittings/check-valve/reason.ts';
import { DESIGNS } from '../../src/fittings/designs.ts';
import { END_FORMS } from '../../src/fittings/ends.ts';
import type { Cylinder, Fitting, Part } from '../../src/model/part.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { readWorkshop } from '../../src/phases/read.ts';
import { across, at, bars, disc, figure, part, surface } from '../fixtures/made-fitting.ts';

const FILE = join(import.meta.dirname, '..', '..', 'specs', 'workshops', 'bench-lathe.yaml');
const shop = readWorkshop({ name: 'bench-lathe.yaml', text: readFileSync(FILE, 'utf8') }).value as Workshop;
/** A shelf that has everything, so that no bar is what refuses. */
const workshop: Workshop = { ...shop, shelf: [...bars('PB102', 'round'), ...bars('PB102', 'hexagon')] };

const asked: fc.Arbitrary<CheckValveAsked> = fc
  .record({
    serves: fc.constantFrom(...SERVES),
    pressure: fc.integer({ min: 1, max: 15 }),
    outside: fc.integer({ min: 30, max: 120 }),
    wall: fc.constantFrom(5, 7, 8, 10),
    ball: fc.option(fc.integer({ min: 30, max: 120 }), { nil: undefined }),
    bore: fc.option(fc.integer({ min: 20, max: 90 }), { nil: undefined }),
    lift: fc.option(fc.integer({ min: 3, max: 30 }), { nil: undefined }),
    plunger: fc.integer({ min: 50, max: 160 }),
    stroke: fc.integer({ min: 80, max: 250 }),
    speed: fc.integer({ min: 20, max: 400 }),
    flow: fc.option(fc.integer({ min: 20, max: 900 }), { nil: undefined }),
    outlet: fc.option(fc.constantFrom(...END_FORMS), { nil: undefined }),
    land: fc.option(fc.integer({ min: 20, max: 150 }), { nil: undefined, freq: 2 }),
  })
  .map(({ serves, pressure, outside, wall, ball, bore, lift, plunger, stroke, speed, flow, outlet, land }) => ({
    title: 'any',
    duty: {
      serves,
      pressure,
      ...(serves.endsWith('pump') ? { pump: { bore: mm(plunger / 10), stroke: mm(stroke / 10), speed } } : {}),
      ...(flow === undefined ? {} : { flow }),
    },
    pipe: { outside: mm(outside / 10), wall: mm(wall / 10) },
    material: 'PB102',
    ...(ball === undefined ? {} : { ball: mm(ball / 10) }),
    ...(bore === undefined ? {} : { bore: mm(bore / 10) }),
    ...(lift === undefined ? {} : { lift: mm(lift / 10) }),
    ...(outlet === undefined ? {} : { ends: { outlet } }),
    ...(land === undefined ? {} : { land: mm(land / 10) }),
  }));

/** Ring between a lifted ball and the seat's edge: the frustum of the shortest line, in small steps round the ball. */
function openRing(ball: number, bore: number, lift: number): number {
  const centre = Math.sqrt((ball / 2) ** 2 - (bore / 2) ** 2) + lift;
  let least = { gap: Number.POSITIVE_INFINITY, r: 0 };
  for (let i = 0; i <= 20_000; i++) {
    const angle = (i / 20_000) * (Math.PI / 2);
    const [r, z] = [(ball / 2) * Math.sin(angle), centre - (ball / 2) * Math.cos(angle)];
    const gap = Math.hypot(bore / 2 - r, z);
    if (gap < least.gap) least = { gap, r };
  }
  return Math.PI * (bore / 2 + least.r) * least.gap;
}

function check(fitting: Fitting, wanted: CheckValveAsked): void {
  const [seat, body, cap] = [part(fitting, 'seat-piece'), part(fitting, 'body'), part(fitting, 'cap')];
  const [bore, chamber] = [across(seat, 'bore'), across(body, 'chamber')];
  const ball = Number(fitting.bought.find((b) => b.kind === 'ball')?.grounds.diameter);
  const lift = figure(fitting, 'lift');
  expect(bore / ball).toBeGreaterThan(0.49);
  expect(bore / ball).toBeLessThan(0.92);
  // areas: round the ball, round the stem, and at the lift what the figure says
  expect(disc(chamber) - disc(ball)).toBeGreaterThanOrEqual(disc(bore) * 0.999);
  expect(disc(chamber) - disc(across(cap, 'stem'))).toBeGreaterThanOrEqual(disc(bore) * 0.999);
  expect((100 * openRing(ball, bore, lift)) / disc(bore)).toBeCloseTo(figure(fitting, 'curtain'), 1);
  // guide: the ball cannot hang beside its seat, and the outlet's lip is above its equator when it is lifted
  expect(chamber).toBeLessThanOrEqual(1.3 * ball + 0.001);
  const face = at(seat, 'A') - at(seat, 'S') - 0.9;
  const equator = face + Math.sqrt((ball / 2) ** 2 - (bore / 2) ** 2) + lift;
  const outlet = body.features.find((f) => f.kind === 'side' && f.id === 'body/outlet') as { at: Len; half: Len } | undefined;
  expect(toMm(outlet?.at ?? mm(0)) - bore / 2).toBeGreaterThanOrEqual(equator + 0.29);
  // the measured sum: what is left between stem and ball, ball down and rings tightened
  const depth = at(body, 'T') - (face + Math.sqrt((ball / 2) ** 2 - (bore / 2) ** 2) + ball / 2);
  const stem = at(cap, 'A') - at(cap, 'Q');
  expect(Math.abs(depth + 0.9 - stem - lift)).toBeLessThan(0.11);
  checkStrength(fitting, wanted, bore, ball);
  checkEnd(fitting, wanted);
  if (wanted.land !== undefined) checkLand(seat, bore, toMm(wanted.land));
}

/** A land steers its D-bit over a diameter at least; the inlet behind it is wider, and leaves a millimetre under the threads. */
function checkLand(seat: Part, bore: number, land: number): void {
  const [own, inlet] = [surface<Cylinder>(seat, 'bore'), surface<Cylinder>(seat, 'inlet')];
  expect(toMm(own.to)).toBeCloseTo(land, 6);
  expect(land).toBeGreaterThanOrEqual(bore);
  expect([inlet.from, inlet.to]).toEqual([own.to, seat.length]);
  expect(toMm(inlet.size.target)).toBeGreaterThanOrEqual(bore + 0.5);
  for (const name of ['coupling.relief', 'seat-thread.relief'])
    expect((toMm(surface<Cylinder>(seat, name).size.lo) - toMm(inlet.size.target)) / 2).toBeGreaterThanOrEqual(0.99);
}

/** As the branch is drawn: a socket that takes the pipe, or a spigot for a flange whose bolts clear collar and rim. */
function checkEnd(fitting: Fitting, { pipe, ends }: CheckValveAsked): void {
  const branch = part(fitting, 'branch');
  const form = ends?.outlet ?? 'union';
  const nuts = fitting.parts.find((p) => p.id === 'union-nut')?.quantity;
  expect(nuts).toBe(form === 'union' ? 2 : 1);
  expect(fitting.parts.some((p) => p.id === 'pipe-flange')).toBe(form === 'flanged');
  if (form === 'plain') {
    const socket = surface<Cylinder>(branch, 'socket');
    expect(toMm(socket.size.lo) - toMm(pipe.outside)).toBeCloseTo(0.1, 6);
    expect(toMm(socket.to) - toMm(socket.from)).toBeGreaterThanOrEqual(
      Math.min(20, Math.max(toMm(pipe.outside), 3 * toMm(pipe.wall))) - 1e-9,
    );
    expect((across(branch, 'collar') - across(branch, 'socket')) / 2).toBeGreaterThanOrEqual(0.99);
    expect((across(branch, 'socket') - across(branch, 'bore')) / 2).toBeGreaterThanOrEqual(0.29);
  }
  if (form !== 'flanged') return;
  const flange = part(fitting, 'pipe-flange');
  const [hole, spigot] = [surface<Cylinder>(flange, 'bore').size, surface<Cylinder>(branch, 'flange-spigot').size];
  expect(toMm(hole.lo) - toMm(spigot.hi)).toBeGreaterThanOrEqual(0.079);
  expect(toMm(hole.hi) - toMm(spigot.lo)).toBeLessThanOrEqual(0.181);
  const bolts = flange.features.find((f) => f.kind === 'side' && f.does === 'bolt-holes');
  const circle =
    bolts?.kind === 'side' && bolts.circle && bolts.size
      ? { at: toMm(bolts.circle.lo), most: toMm(bolts.circle.hi), d: toMm(bolts.size.hi) }
      : undefined;
  if (!circle) throw new Error('no bolt holes');
  // the corners of an M3 nut, 6.01 (ISO 4032, from memory), clear the collar; the holes leave half of themselves to the rim
  expect(circle.at / 2 - 6.01 / 2).toBeGreaterThanOrEqual(across(branch, 'collar') / 2);
  expect(across(flange, 'rim') / 2 - circle.most / 2 - circle.d / 2).toBeGreaterThanOrEqual(circle.d * 0.4);
  // a joint inside the bolts still bears on the face
  expect(circle.at - circle.d).toBeGreaterThan(toMm(hole.hi) + 4);
}

function checkStrength(fitting: Fitting, { duty, pipe }: CheckValveAsked, bore: number, ball: number): void {
  const [seat, body] = [part(fitting, 'seat-piece'), part(fitting, 'body')];
  const p = duty.pressure / 10;
  const thin = (['coupling.relief', 'seat-thread.relief'] as const).map((name) => [bore / 2, across(seat, name) / 2] as const);
  const rim = [across(body, 'seat-socket') / 2, (across(body, 'barrel') - 2) / 2] as const;
  for (const [ri, ro] of [...thin, rim]) expect(ro - ri).toBeGreaterThan(0.99);
  // no wall is loaded more than an eighth of annealed bronze's 325 N/mm2
  for (const [ri, ro] of thin) expect((p * (ro * ro + ri * ri)) / (ro * ro - ri * ri)).toBeLessThan(325 / 8);
  const [outside, wall] = [toMm(pipe.outside), toMm(pipe.wall)];
  if (fitting.derivations.some((d) => d.of === 'pipe-carries'))
    expect((20 * 18.6 * wall) / (outside - wall)).toBeLessThan(figure(fitting, 'pipe-carries') + 1e-9);
  expect(figure(fitting, 'seat-force')).toBeCloseTo(disc(bore) * p, 6);
  const tangent = Math.acos(bore / ball);
  expect(figure(fitting, 'edge-load')).toBeCloseTo((p * bore) / 4 / Math.sin(tangent), 6);
}

describe('a check valve', () => {
  it('of any duty holds when it is worked out again, or says what to change', () => {
    const make = DESIGNS['check-valve'];
    let made = 0;
    const met = new Set<string>();
    fc.assert(
      fc.property(asked, (wanted) => {
        const { value, found } = make?.(wanted, workshop) ?? { found: [] };
        const errors = found.filter((d) => d.severity === 'error');
        if (!value) {
          expect(errors.length).toBeGreaterThan(0);
          // each names a key of the file that may be changed, but the nut's, which names two
          for (const { code } of errors) expect([...Object.keys(CHECK_VALVE_PLACES), 'design.nut-has-no-floor']).toContain(code);
          return;
        }
        made += 1;
        met.add(wanted.ends?.outlet ?? 'union').add(wanted.land === undefined ? 'bore' : 'land');
        check(value, wanted);
      }),
      { numRuns: 300, seed: 11 },
    );
    expect(made).toBeGreaterThan(60);
    expect([...met].sort()).toEqual(['bore', 'flanged', 'land', 'plain', 'union']);
  });
});

const duty = (serves: CheckValveAsked['duty']['serves'], more: Partial<CheckValveAsked['duty']> = {}): CheckValveAsked['duty'] => ({
  serves,
  pressure: 7,
  ...more,
});
const plain = (more: Partial<CheckValveAsked> = {}): CheckValveAsked => ({
  ...{ title: 't', material: 'PB102', duty: duty('injector'), pipe: { outside: mm(5), wall: mm(0.7) } },
  ...more,
});
const drawer = (sizes: readonly number[]): Workshop => ({
  ...workshop,
  tools: { ...workshop.tools, reamers: [], dBits: [], silverSteel: sizes.map(mm), drills: [mm(3.6), mm(3.7)] },
});
const got = (wanted: CheckValveAsked, shelf: Workshop, of: string): number | undefined =>
  reasonCheckValve(wanted, shelf).book.derivations.find((d) => d.of === of)?.value;

describe('the usual figures come out of the engine', () => {
  it.each([
    ['with 3.8 silver steel and no 4.0: 5 mm ball on 3.8', [3, 3.8, 5], 5, 3.8],
    ['with both: 3.8 is nearer the usual share', [3, 3.8, 4, 5], 5, 3.8],
    ['with a 4.0 alone: 5 mm ball on 4.0', [3, 4, 5], 5, 4],
    ['with 4.5 alone: 6 mm ball on 4.5', [4.5], 6, 4.5],
  ])('%s (common practice, no source)', (_, sizes, ball, bore) => {
    const wanted = plain();
    expect([got(wanted, drawer(sizes), 'ball'), got(wanted, drawer(sizes), 'bore')]).toEqual([ball, bore]);
  });

  it.each([
    // Perry, nwmes.org.uk, technical articles: D/8 to D/6 for pumps, D/3 for an injector
    ['feed-pump', 5, 4, 5 / 8, 5 / 6],
    ['hand-pump', 6, 4.5, 6 / 8, 6 / 6],
    ['injector', 6, 4.5, 0.26 * 6, 6 / 3],
    ['injector', 5, 4, 0.26 * 5, 5 / 3],
  ] as const)('a %s lifts a %d mm ball on %d from %d to %d', (serves, ball, bore, low, high) => {
    const pump = { bore: mm(8), stroke: mm(12), speed: 60 };
    const wanted = plain({ ball: mm(ball), bore: mm(bore), duty: duty(serves, serves === 'injector' ? {} : { pump }) });
    const lift = got(wanted, workshop, 'lift') ?? 0;
    expect(lift).toBeGreaterThanOrEqual(low);
    expect(lift).toBeLessThanOrEqual(high);
  });

  it.each([
    // design notes, 2.3: 8 mm ram, 12 mm stroke, 300 a minute, 0.80: 144.8 ml/min; peak 9.475 ml/s; bore for 2.54 m/s 2.18 mm (derived; J. Rose for the speed)
    ['flow', 144.764589, 1e-5],
    ['peak', 9474.820225 * 0.06, 1e-4],
    ['bore-least', 2.1793, 1e-3],
  ])('a published pump gives %s %d', (of, value, within) => {
    const wanted = plain({ duty: duty('feed-pump', { pump: { bore: mm(8), stroke: mm(12), speed: 300 } }) });
    expect(Math.abs((got(wanted, workshop, of) ?? 0) - value)).toBeLessThan(within);
  });

  it('9 square feet steam 1 cubic foot of water an hour (Bourne, Catechism, Q. 271); the feed is half as much again', () => {
    const wanted = plain({ duty: duty('injector', { surface: 9 * 30.48 ** 2 }) });
    expect(got(wanted, workshop, 'steaming')).toBeCloseTo(28.3168 * 0.9982, 1);
    expect(got(wanted, workshop, 'flow')).toBeCloseTo((1.5 * 28316.8) / 60, -1);
  });

  it('a closing that stops 1 m/s in a 6 x 0.8 pipe costs 14.1 bar (Joukowsky, Korteweg; derived)', () => {
    // flow that runs at 1 m/s in a bore of 4.4
    const flow = (Math.PI / 4) * 4.4 ** 2 * 60;
    const wanted = plain({ pipe: { outside: mm(6), wall: mm(0.8) }, duty: duty('injector', { flow }) });
    expect(got(wanted, workshop, 'hammer')).toBeCloseTo(14.1075, 3);
    expect(got(wanted, workshop, 'wave')).toBeCloseTo(1413.2935, 3);
  });

  it('a lag in degrees is what a fall in small steps gives', () => {
    const wanted = plain({
      ball: mm(5),
      bore: mm(4),
      lift: mm(1),
      duty: duty('feed-pump', { pump: { bore: mm(8), stroke: mm(12), speed: 300 } }),
    });
    const [body, water, step] = [7950, 998.2, 1e-7];
    let [fallen, speed, time] = [0, 0, 0];
    const pull = (9.80665 * (body - water)) / (body + water / 2);
    while (fallen < 0.001) {
      speed += pull * step;
      fallen += speed * step;
      time += step;
    }
    expect(got(wanted, workshop, 'lag')).toBeCloseTo(6 * 300 * time, 1);
  });
});
