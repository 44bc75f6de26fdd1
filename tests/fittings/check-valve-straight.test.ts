/**
 * A check valve with inlet and outlet in line, over random duties: every passage on the water's way, the lift, walls and the ends worked out again
 * from the parts as they are drawn, by plain means, or a refusal that names what to change. Then each of its ends, planned and proved.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import { compile } from '../../src/compile.ts';
import { type CheckValveAsked, SERVES } from '../../src/fittings/check-valve/asked.ts';
import { CHECK_VALVE_PLACES } from '../../src/fittings/check-valve/places.ts';
import { DESIGNS } from '../../src/fittings/designs.ts';
import { END_FORMS } from '../../src/fittings/ends.ts';
import type { Cylinder, Fitting, Part, SideFeature } from '../../src/model/part.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { readWorkshop } from '../../src/phases/read.ts';
import { at, bars, disc, figure, part, surface } from '../fixtures/made-fitting.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const BENCH = { name: 'bench-lathe.yaml', text: readFileSync(join(ROOT, 'specs', 'workshops', 'bench-lathe.yaml'), 'utf8') };
const SPEC = readFileSync(join(ROOT, 'specs', 'fittings', 'hand-pump-delivery-check.yaml'), 'utf8');
const shop = readWorkshop(BENCH).value as Workshop;
/** A shelf that has everything, so that no bar is what refuses. */
const workshop: Workshop = { ...shop, shelf: [...bars('PB102', 'round'), ...bars('PB102', 'hexagon')] };

const asked: fc.Arbitrary<CheckValveAsked> = fc
  .record({
    serves: fc.constantFrom(...SERVES),
    pressure: fc.integer({ min: 1, max: 15 }),
    outside: fc.integer({ min: 30, max: 120 }),
    wall: fc.constantFrom(5, 7, 8, 10),
    ball: fc.option(fc.integer({ min: 20, max: 120 }), { nil: undefined }),
    bore: fc.option(fc.integer({ min: 14, max: 90 }), { nil: undefined }),
    lift: fc.option(fc.integer({ min: 3, max: 30 }), { nil: undefined }),
    speed: fc.integer({ min: 20, max: 400 }),
    outlet: fc.constantFrom(...END_FORMS),
    cap: fc.option(fc.constantFrom('M8x1', 'M12x1', 'M16x1', 'M20x1'), { nil: undefined, freq: 3 }),
  })
  .map(({ serves, pressure, outside, wall, ball, bore, lift, speed, outlet, cap }) => ({
    title: 'any',
    pattern: 'straight',
    duty: { serves, pressure, ...(serves.endsWith('pump') ? { pump: { bore: mm(9), stroke: mm(15), speed } } : {}) },
    pipe: { outside: mm(outside / 10), wall: mm(wall / 10) },
    material: 'PB102',
    ends: { outlet },
    ...(ball === undefined ? {} : { ball: mm(ball / 10) }),
    ...(bore === undefined ? {} : { bore: mm(bore / 10) }),
    ...(lift === undefined ? {} : { lift: mm(lift / 10) }),
    ...(cap === undefined ? {} : { threads: { cap } }),
  }));

const hole = (p: Part, name: string): Cylinder => surface<Cylinder>(p, name);

/** A ring of a cone, cut into narrow strips: between the rim of diameter `a` and that of diameter `b`, `apart` along the axis. */
function strips(a: number, b: number, apart: number): number {
  const n = 2000;
  const step = Math.hypot(apart, (a - b) / 2) / n;
  return Array.from({ length: n }, (_, i) => Math.PI * (a + ((b - a) * (i + 0.5)) / n) * step).reduce((sum, one) => sum + one);
}

/** Ring as tightened; the plain clearance band of a turned stem. */
const [RING, BAND] = [0.9, 0.1];

function check(fitting: Fitting, wanted: CheckValveAsked): void {
  const [seat, body, cap] = [part(fitting, 'seat-piece'), part(fitting, 'body'), part(fitting, 'cap')];
  const [bore, chamber] = [toMm(hole(seat, 'bore').size.target), toMm(hole(body, 'chamber').size.target)];
  const ball = Number(fitting.bought.find((b) => b.kind === 'ball')?.grounds.diameter);
  const lift = figure(fitting, 'lift');
  const [stem, socket] = [hole(cap, 'stem').size, toMm(hole(body, 'cap-socket').size.lo)];
  const across = cap.features.find((f): f is SideFeature => f.kind === 'side' && f.does === 'cross-hole');
  const water = toMm(across?.size?.lo ?? mm(0));
  // round the ball; from the chamber's rim past the nose; round the stem; through the holes, each at both ends; up the cap: none under the seat's
  const seated = at(seat, 'A') - at(seat, 'S') - RING + Math.sqrt((ball / 2) ** 2 - (bore / 2) ** 2);
  const nose = seated + lift + ball / 2;
  const rise = strips(chamber, toMm(stem.hi), nose - at(body, 'G'));
  const ring = disc(socket) - disc(toMm(stem.hi));
  const mouths = 2 * (across?.count ?? 0) * disc(water);
  const least = disc(bore) * 0.999;
  for (const area of [disc(chamber) - disc(ball), rise, ring, mouths, disc(toMm(hole(cap, 'bore').size.lo))])
    expect(area).toBeGreaterThanOrEqual(least);
  expect(figure(fitting, 'stop-rise')).toBeCloseTo((100 * rise) / disc(bore), 1);
  expect(figure(fitting, 'stop-ring')).toBeCloseTo((100 * ring) / disc(bore), 6);
  expect(figure(fitting, 'stop-holes')).toBeCloseTo((100 * mouths) / disc(bore), 6);
  // the chamber still steers the ball when it is up, and nothing of it is as wide as the seat of a second valve: the nose is solid
  expect(at(body, 'G')).toBeGreaterThanOrEqual(seated + lift + 0.29);
  expect(at(body, 'G')).toBeLessThan(seated + lift + ball / 2);
  const point = (0.5 * toMm(hole(cap, 'bore').size.hi)) / Math.tan((59 * Math.PI) / 180);
  expect(toMm(hole(cap, 'bore').from) - point).toBeGreaterThanOrEqual(1.4);
  // the holes open into the bore over their whole width, and stand clear of thread and nose
  const [low, high] = [toMm(across?.at ?? mm(0)) - water / 2, toMm(across?.at ?? mm(0)) + water / 2];
  expect(low - toMm(hole(cap, 'bore').from)).toBeGreaterThanOrEqual(0.49);
  expect(at(cap, 'N') - high).toBeGreaterThanOrEqual(0.79);
  // in the socket, above its floor, when all is screwed up
  expect(nose + low).toBeGreaterThan(at(body, 'G'));
  const tapered = Math.asin(Math.min(1, water / toMm(hole(cap, 'bore').size.target)));
  expect((toMm(hole(cap, 'bore').size.target) / 2) * (Math.PI / 2 - 2 * tapered)).toBeGreaterThanOrEqual(0.29);
  // the measured sum: what is left between the nose and the ball, ball down and rings tightened
  expect(Math.abs(at(body, 'T') + RING - (at(cap, 'A') - at(cap, 'Q')) - (seated + ball / 2) - lift)).toBeLessThan(0.11);
  checkWalls(fitting, bore);
  checkEnd(fitting, wanted);
}

/** A millimetre at the least where pressure stands, and no wall loaded more than an eighth of annealed bronze's 325 N/mm2. */
function checkWalls(fitting: Fitting, bore: number): void {
  const [cap, body] = [part(fitting, 'cap'), part(fitting, 'body')];
  const p = figure(fitting, 'pressure') / 10;
  const outlet = toMm(hole(cap, 'bore').size.target);
  const walls = [
    [outlet, toMm(hole(cap, 'cap-thread.relief').size.lo)],
    [bore, toMm(hole(part(fitting, 'seat-piece'), 'seat-thread.relief').size.lo)],
    [toMm(hole(body, 'seat-socket').size.hi), toMm(hole(body, 'barrel').size.target) - 2],
    ...(cap.surfaces.some((s) => s.id === 'cap/coupling.relief') ? [[outlet, toMm(hole(cap, 'coupling.relief').size.lo)]] : []),
  ] as const;
  for (const [inside = 0, outside = 0] of walls) {
    const [ri, ro] = [inside / 2, outside / 2];
    expect(ro - ri).toBeGreaterThan(0.99);
    expect((p * (ro * ro + ri * ri)) / (ro * ro - ri * ri)).toBeLessThan(325 / 8);
  }
  // stem: wall round its bore at the worst
  expect((toMm(hole(cap, 'stem').size.lo) - toMm(hole(cap, 'bore').size.hi)) / 2).toBeGreaterThanOrEqual(1 - BAND - 0.08);
}

function checkEnd(fitting: Fitting, { pipe, ends }: CheckValveAsked): void {
  const cap = part(fitting, 'cap');
  const form = ends?.outlet ?? 'union';
  expect(fitting.parts.some((p) => p.id === 'branch')).toBe(false);
  expect(fitting.parts.find((p) => p.id === 'union-nut')?.quantity).toBe(form === 'union' ? 2 : 1);
  expect(fitting.parts.some((p) => p.id === 'pipe-flange')).toBe(form === 'flanged');
  // the body is never in the fire
  expect(
    part(fitting, 'body')
      .features.filter((f) => f.kind === 'side')
      .map((f) => f.does),
  ).toEqual(['flats']);
  if (form === 'plain') {
    const socket = hole(cap, 'socket');
    expect(toMm(socket.size.lo) - toMm(pipe.outside)).toBeCloseTo(0.1, 6);
    expect(toMm(socket.to) - toMm(socket.from)).toBeGreaterThanOrEqual(
      Math.min(20, Math.max(toMm(pipe.outside), 3 * toMm(pipe.wall))) - 1e-9,
    );
    expect((toMm(hole(cap, 'head').size.target) - toMm(socket.size.target)) / 2).toBeGreaterThanOrEqual(0.99);
  }
  if (form !== 'flanged') return;
  const flange = part(fitting, 'pipe-flange');
  const [into, spigot] = [hole(flange, 'bore').size, hole(cap, 'flange-spigot').size];
  expect(toMm(into.lo) - toMm(spigot.hi)).toBeGreaterThanOrEqual(0.079);
  expect(toMm(into.hi) - toMm(spigot.lo)).toBeLessThanOrEqual(0.181);
  // it never stands out of the joint face; over three of its walls is in the flange
  const long = cap.dimensions.find((d) => d.a === 'cap/D' && d.b === 'cap/E')?.limits;
  expect(toMm(long?.hi ?? mm(9))).toBeLessThan(toMm(flange.length) - 0.05);
  expect(toMm(long?.lo ?? mm(0))).toBeGreaterThanOrEqual(2.9 * ((toMm(spigot.target) - toMm(hole(cap, 'bore').size.target)) / 2));
  // nuts of M3, 2.4 high (ISO 4032, from memory), and a spanner on them between hexagon and flange
  expect(at(cap, 'D') - at(cap, 'B')).toBeGreaterThanOrEqual(2 * 2.4);
}

describe('a straight check valve', () => {
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
          for (const { code } of errors) {
            expect([...Object.keys(CHECK_VALVE_PLACES), 'design.nut-has-no-floor']).toContain(code);
            met.add(code);
          }
          return;
        }
        made += 1;
        met.add(wanted.ends?.outlet ?? 'union');
        check(value, wanted);
      }),
      { numRuns: 400, seed: 7 },
    );
    expect(made).toBeGreaterThan(60);
    expect([...met]).toEqual(expect.arrayContaining(['union', 'plain', 'flanged', 'design.stop-chokes', 'design.stop-webs']));
  });

  it('in angle pattern is what it is without the key', () => {
    const angle = SPEC.replace('pattern: straight', 'pattern: angle');
    const silent = SPEC.replace(/^pattern: .*$/m, '');
    expect(angle).not.toBe(SPEC);
    expect(silent).not.toContain('\npattern');
    const [a, b] = [angle, silent].map((text) => compile({ fitting: { name: 'mine.yaml', text } }, { workshop: BENCH }).plan?.fitting);
    expect(a?.parts.map((p) => p.id)).toContain('branch');
    expect(a).toEqual(b);
  });
});

describe.each(END_FORMS)('its %s outlet', (form) => {
  const text = SPEC.replace('outlet: union', `outlet: ${form}`);
  const { plan, found } = compile({ fitting: { name: 'mine.yaml', text } }, { workshop: BENCH });
  const cap = plan?.parts.find((one) => one.part.id === 'cap');
  const order = cap?.route.setUps.flatMap((s) => s.operations).map((op) => op.slice('cap/'.length)) ?? [];
  it('is planned and proved', () => {
    expect(text).toContain(`outlet: ${form}`);
    expect(found).toEqual([]);
    expect(plan?.parts.length).toBeGreaterThan(5);
    expect(plan?.parts.filter(({ proof }) => !proof.holds)).toEqual([]);
  });
  it('is drilled down to the solid nose before the water holes break into it, and the burr is taken out', () => {
    const steps = ['bore/centre', 'bore/drill-to-size', 'water-holes/cross-drill', 'water-holes/clear-bore'];
    const places = steps.map((step) => order.indexOf(step));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  });
  it('has its nose cut last to the measured sum, when body and seat piece are there', () => {
    const fitted = plan?.fitting.chains.find((chain) => chain.id === 'lift');
    expect(fitted?.fitted).toEqual({ part: 'cap', dim: 'cap/Q-A' });
    expect(plan?.fitting.chains).toHaveLength(1);
    const day = plan?.sequence.map((one) => one.part) ?? [];
    expect(day.lastIndexOf('cap')).toBeGreaterThan(Math.max(day.lastIndexOf('body'), day.lastIndexOf('seat-piece')));
  });
  it('says how it is put together', () => {
    const steps = plan?.fitting.assembly.map((step) => step.id) ?? [];
    const own = { union: 'assembly.cap-union', plain: 'assembly.cap-plain-end', flanged: 'assembly.cap-flange' }[form];
    expect(steps.indexOf(own)).toBeGreaterThan(steps.indexOf('assembly.prove-lift'));
  });
});
