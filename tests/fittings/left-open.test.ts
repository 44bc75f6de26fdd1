/**
 * What is left out is chosen, and what a design has chosen itself it does not refuse: for every pipe that is drawn for small boilers, in a
 * workshop with the usual tools and a shelf that has everything. A person who states nothing has nothing to take back.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inch, mm, toMm } from '../../src/base/units.ts';
import { SERVES } from '../../src/fittings/check-valve/asked.ts';
import { DESIGNS } from '../../src/fittings/designs.ts';
import { END_FORMS } from '../../src/fittings/ends.ts';
import { STOPS } from '../../src/fittings/stop-valve/asked.ts';
import { threadPair } from '../../src/fittings/threads.ts';
import type { Fitting } from '../../src/model/part.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { readWorkshop } from '../../src/phases/read.ts';
import { across, bars, figure, part } from '../fixtures/made-fitting.ts';

const named = (name: string): Workshop => {
  const text = readFileSync(join(import.meta.dirname, '..', '..', 'specs', 'workshops', name), 'utf8');
  const shop = readWorkshop({ name, text }).value as Workshop;
  return { ...shop, shelf: ['PB102', '316'].flatMap((metal) => [...bars(metal, 'round'), ...bars(metal, 'hexagon')]) };
};
const [bench, inchLathe] = [named('bench-lathe.yaml'), named('inch-lathe.yaml')];

const METRIC = [3, 4, 5, 6, 8, 10, 12, 15].map((outside) => ({ outside: mm(outside), wall: mm(outside < 6 ? 0.5 : 1) }));
const INCH = [1 / 8, 5 / 32, 3 / 16, 7 / 32, 1 / 4, 5 / 16, 3 / 8].map((outside) => ({ outside: inch(outside), wall: inch(0.028) }));
const PIPES = [...METRIC.map((pipe) => ({ pipe, shop: bench })), ...INCH.map((pipe) => ({ pipe, shop: inchLathe }))];

const pump = { bore: mm(8), stroke: mm(15), speed: 120 };
const refusals = (kind: string, asked: object, shop: Workshop): readonly string[] =>
  (DESIGNS[kind]?.({ title: 'any', material: 'PB102', spindleMaterial: '316', ...asked } as never, shop).found ?? [])
    .filter((one) => one.severity === 'error')
    .map((one) => one.code);
const made = (kind: string, asked: object, shop: Workshop): Fitting =>
  DESIGNS[kind]?.({ title: 'any', material: 'PB102', spindleMaterial: '316', ...asked } as never, shop).value as Fitting;

describe.each(PIPES)('for a pipe of $pipe.outside', ({ pipe, shop }) => {
  it.each(SERVES)('a check valve for a %s is not refused for what was chosen for it', (serves) => {
    const duty = { serves, pressure: 6, ...(serves.endsWith('pump') ? { pump } : {}) };
    expect(refusals('check-valve', { duty, pipe }, shop)).toEqual([]);
  });
  it.each(STOPS)('nor is a stop valve for %s', (serves) => {
    for (const pattern of ['straight', 'angle'])
      expect(refusals('stop-valve', { duty: { serves, pressure: 6 }, pattern, pipe }, shop)).toEqual([]);
  });
  it.each(END_FORMS)('nor is one whose outlet is %s', (outlet) => {
    const asked = { duty: { serves: 'supply', pressure: 6 }, pattern: 'angle', pipe, ends: { outlet } };
    expect(refusals('stop-valve', asked, shop)).toEqual([]);
  });
  it('nor is a union', () => expect(refusals('union', { pipe, quantity: 1 }, shop)).toEqual([]));
});

describe('what is proposed', () => {
  const valve = (pipe: object, shop: Workshop): Fitting => made('check-valve', { duty: { serves: 'by-pass', pressure: 6 }, pipe }, shop);

  it('threads of the drawer, also where that is in inches', () => {
    const threads = valve(INCH[2] as object, inchLathe).parts.flatMap((p) =>
      p.features.flatMap((f) => (f.kind === 'thread' ? [f.thread.name] : [])),
    );
    expect(threads.length).toBeGreaterThan(3);
    for (const name of threads) expect(inchLathe.tools.taps.map((tap) => threadPair(tap)?.name)).toContain(name);
  });
  it('a hole for the branch with a drill of the rack, the spigot turned to it, and a joint as deep as three of its walls', () => {
    const fitting = valve({ outside: mm(8), wall: mm(1) }, bench);
    const body = part(fitting, 'body');
    const hole = body.features.find((f) => f.kind === 'side' && f.does === 'cross-hole');
    expect(bench.tools.drills).toContain(hole?.kind === 'side' ? hole.size?.target : undefined);
    expect(fitting.derivations.find((one) => one.of === 'solder-overlap.branch')?.value).toBeGreaterThanOrEqual(1);
  });
  it('a ball that a bore of 13 mm sits well on: 18 mm, between 0.72 and 0.80', () => {
    const fitting = valve({ outside: mm(15), wall: mm(1) }, bench);
    expect([figure(fitting, 'bore'), figure(fitting, 'ball')]).toEqual([13, 18]);
  });
  it('a nipple for 15 mm pipe whose wall stands a collet, and a nut for M22 whose walls stand the jaws', () => {
    const fitting = made('union', { pipe: { outside: mm(15), wall: mm(0.7) }, thread: 'M22x1.5', quantity: 1 }, bench);
    const nipple = part(fitting, 'nipple');
    expect(across(nipple, 'tail') - across(nipple, 'socket')).toBeGreaterThanOrEqual(0.1 * across(nipple, 'tail'));
    const { stock } = part(fitting, 'union-nut');
    expect(stock.from === 'bar' && toMm(stock.across) * 0.8).toBeGreaterThanOrEqual(22.4);
  });
});

describe('a spindle by itself', () => {
  const lengths = {
    thread: { length: mm(13) },
    stem: { across: mm(4), length: mm(28) },
    square: { length: mm(7) },
    end: {},
    cone: {},
    plug: {},
  };
  it('has its plug over a thread that is stated, so that it cannot be wound out', () => {
    const spindle = part(made('spindle', { ...lengths, bore: mm(5), thread: { size: 'M8', length: mm(13) } }, bench), 'spindle');
    expect(across(spindle, 'plug')).toBe(9);
    const usual = part(made('spindle', { ...lengths, bore: mm(5), thread: { size: 'M6', length: mm(13) } }, bench), 'spindle');
    expect(across(usual, 'plug')).toBe(6.5);
  });
  it('is refused where a plug is stated that does not', () => {
    const asked = { ...lengths, bore: mm(5), plug: { across: mm(7) }, thread: { size: 'M8', length: mm(13) } };
    expect(refusals('spindle', asked, bench)).toContain('design.spindle-thread-over-plug');
  });
});
