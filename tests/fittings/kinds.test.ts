/**
 * Spindles, unions, plugs and tooling asked for by themselves, at random: each gives parts that hold when they are measured as drawn, or a
 * refusal that names a key to change; some of them are planned and proved whole.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import { words } from '../../src/base/words.ts';
import { compile } from '../../src/compile.ts';
import { loadWords } from '../../src/files.ts';
import { DESIGNS, PLACES } from '../../src/fittings/designs.ts';
import { FITTING_KINDS } from '../../src/fittings/kinds.ts';
import type { Cone, Cylinder, Fitting } from '../../src/model/part.ts';
import type { Workshop } from '../../src/model/workshop.ts';
import { read, readWorkshop } from '../../src/phases/read.ts';
import { across, at, bars, part, surface } from '../fixtures/made-fitting.ts';

const FILE = join(import.meta.dirname, '..', '..', 'specs', 'workshops', 'bench-lathe.yaml');
const WORKSHOP = { name: 'bench-lathe.yaml', text: readFileSync(FILE, 'utf8') };
const shop = readWorkshop(WORKSHOP).value as Workshop;
/** A shelf that has everything, so that no bar is what refuses. */
const workshop: Workshop = {
  ...shop,
  shelf: [...shop.shelf, ...bars('PB102', 'round'), ...bars('PB102', 'hexagon'), ...bars('316', 'round')],
};
const WORDS = words(loadWords('en'));

const tenths = (min: number, max: number) => fc.integer({ min, max }).map((n) => `${n / 10} mm`);
const maybe = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: undefined });
type Keys = Readonly<Record<string, string | Readonly<Record<string, string | undefined>> | undefined>>;

/** As a file: JSON is YAML. */
const text = (fitting: string, keys: Keys): string => JSON.stringify({ fitting, title: 'Any', ...keys });

/** Sizes that go together more often than not. */
const spindles = fc
  .record({
    bore: fc.integer({ min: 30, max: 90 }),
    angle: maybe(fc.constantFrom('60 deg', '90 deg')),
    over: maybe(fc.integer({ min: -5, max: 30 })),
    long: maybe(tenths(60, 150)),
    size: maybe(fc.constantFrom('M5', 'M6', 'M8')),
    thin: maybe(fc.integer({ min: 50, max: 75 })),
    square: maybe(fc.integer({ min: 60, max: 100 })),
    lengths: fc.tuple(tenths(80, 200), tenths(100, 300), tenths(40, 90)),
  })
  .map(({ bore, angle, over, long, size, thin, square, lengths: [thread, stem, flats] }): Keys => {
    const across = thin === undefined ? 4 : Math.max(2, Math.round((bore * thin) / 50) / 20);
    return {
      bore: `${bore / 10} mm`,
      ...(angle ? { cone: { angle } } : {}),
      plug: { ...(over === undefined ? {} : { across: `${(bore + over) / 10} mm` }), ...(long ? { length: long } : {}) },
      thread: { ...(size ? { size } : {}), length: thread },
      stem: { across: `${across} mm`, length: stem },
      square: { ...(square === undefined ? {} : { across: `${Math.round(across * square) / 100} mm` }), length: flats },
    };
  });
const unions = fc.record({
  pipe: fc.record({
    outside: fc.constantFrom('3 mm', '4 mm', '6 mm', '8 mm', '10 mm', '12 mm'),
    wall: fc.constantFrom('0.5 mm', '0.8 mm', '1 mm'),
  }),
  thread: maybe(fc.constantFrom('M8x1', 'M10x1', 'M12x1', 'M16x1', '3/8-32 ME', '1/2-26 BSB')),
  into: maybe(fc.record({ wall: tenths(15, 250), hole: maybe(tenths(40, 140)) })),
});
const plugs = fc.record({
  closes: fc.constantFrom('hole', 'coupling', 'pump'),
  thread: fc.constantFrom('M8x1', 'M10x1', 'M12x1', 'M16x1'),
  pipe: maybe(fc.record({ outside: fc.constantFrom('4 mm', '6 mm', '8 mm', '12 mm'), wall: fc.constant('0.8 mm') })),
  pump: maybe(fc.constantFrom('M5', 'M6', 'M8', '1/4-40 ME')),
  bore: maybe(tenths(10, 40)),
});

/** The design of a file, its refusals looked at: each has words that say what to do, and a key to stand at. */
function designed(kind: string, keys: Keys): Fitting | undefined {
  const job = read({ fitting: { name: 'any.yaml', text: text(kind, keys) } }, WORKSHOP, FITTING_KINDS);
  expect(job.found).toEqual([]);
  const { value, found } = DESIGNS[kind]?.(job.value?.asked, workshop) ?? { found: [] };
  expect(value === undefined).toBe(found.some((d) => d.severity === 'error'));
  for (const { code, grounds } of found) {
    expect(PLACES[kind]?.[code]).toBeDefined();
    expect(WORDS.say(`error.${code}.do`, grounds)).not.toBe('');
  }
  return value;
}

/** How often a kind is made of `runs`, each checked. */
function made(kind: string, asks: fc.Arbitrary<Keys>, check: (fitting: Fitting, keys: Keys) => void): number {
  let count = 0;
  fc.assert(
    fc.property(asks, (keys) => {
      const fitting = designed(kind, keys);
      if (!fitting) return;
      count += 1;
      check(fitting, keys);
    }),
    { numRuns: 200, seed: 11 },
  );
  return count;
}
const written = (length: unknown): number => Number(String(length).replace(' mm', ''));

describe('asked for by itself, measured as drawn or refused with what to change:', () => {
  it('a spindle shuts its seat, is captive, and its wheel goes on', () => {
    const count = made('spindle', spindles, (fitting, keys) => {
      const spindle = part(fitting, 'spindle');
      const bore = written(keys.bore);
      const cone = surface<Cone>(spindle, 'plug.cone');
      // the seat's edge meets the cone between its flat and its full diameter
      expect(toMm(cone.mouth.target)).toBeLessThan(bore);
      expect(across(spindle, 'plug')).toBeGreaterThan(bore);
      const long = (across(spindle, 'plug') - toMm(cone.mouth.target)) / (2 * Math.tan((cone.includedAngle / 2) * (Math.PI / 180)));
      expect(at(spindle, 'B')).toBeGreaterThanOrEqual(long + 0.95);
      expect(across(spindle, 'plug')).toBeGreaterThan(across(spindle, 'running'));
      expect(across(spindle, 'running')).toBeGreaterThan(across(spindle, 'stem'));
      const square = spindle.features.find((f) => f.kind === 'side' && f.does === 'square');
      const flats = square?.kind === 'side' ? toMm(square.size?.target ?? mm(0)) : 0;
      expect(flats).toBeLessThan(across(spindle, 'stem'));
      expect(across(spindle, 'end')).toBeLessThanOrEqual(flats);
    });
    expect(count).toBeGreaterThan(20);
  });
  it('a union passes its nut over its nipple, and keeps its walls', () => {
    const count = made('union', unions, (fitting, keys) => {
      const [nut, nipple] = [part(fitting, 'union-nut'), part(fitting, 'nipple')];
      expect(across(nut, 'hole')).toBeGreaterThan(toMm(surface<Cylinder>(nipple, 'tail').size.hi) - 0.001);
      expect(across(nut, 'hole')).toBeLessThan(across(nipple, 'head'));
      expect(toMm(surface<Cylinder>(nipple, 'head').size.hi)).toBeLessThan(toMm(surface<Cylinder>(nut, 'socket').size.lo));
      // AWS C3.1: three times the thinner part; and as deep as the pipe is thick, to 20 mm
      const { outside, wall } = keys.pipe as Record<string, string>;
      const overlap = at(nipple, 'E') - at(nipple, 'L');
      expect(overlap).toBeGreaterThanOrEqual(3 * written(wall));
      expect(overlap).toBeGreaterThanOrEqual(Math.min(20, written(outside)) - 1e-9);
      if (keys.into === undefined) return;
      const end = part(fitting, 'coupling-end');
      expect(across(end, 'spigot') - across(end, 'bore')).toBeGreaterThan(1.8);
      expect(at(end, 'C') - at(end, 'K')).toBeGreaterThan(written((keys.into as Record<string, string>).wall));
    });
    expect(count).toBeGreaterThan(60);
  });
  it('a plug closes what it is for', () => {
    const count = made('plug', plugs, (fitting, keys) => {
      const [only] = fitting.parts;
      if (!only) throw new Error('no part');
      if (keys.closes === 'hole') {
        expect(at(only, 'A') - at(only, 'N')).toBeGreaterThan(4);
        return;
      }
      const through = only.surfaces.some((s) => s.id === `${only.id}/bore`);
      expect(through).toBe(keys.closes === 'pump');
      expect(across(only, 'head')).toBeGreaterThan(across(only, 'tail'));
      // the nut's 11.5 mm and a grip for the spanner stand on the tail
      if (!through) expect(at(only, 'E') - at(only, 'H')).toBeGreaterThan(11.5);
      else expect(toMm(surface<Cylinder>(only, 'coupling').size.hi)).toBeLessThanOrEqual(across(only, 'tail') + 0.11);
    });
    expect(count).toBeGreaterThan(40);
  });
});

const WHOLE = [
  ['spindle', spindles],
  ['union', unions],
  ['plug', plugs],
] as const;
describe('planned and proved whole, or refused:', () => {
  it.each(WHOLE)('%s', (kind, asks) => {
    let proved = 0;
    for (const keys of fc.sample(asks as fc.Arbitrary<Keys>, { numRuns: 12, seed: 3 })) {
      const { plan, found } = compile({ fitting: { name: 'any.yaml', text: text(kind, keys) } }, { workshop: WORKSHOP });
      if (!plan) {
        expect(found.some((d) => d.severity === 'error')).toBe(true);
        continue;
      }
      expect(plan.parts.flatMap(({ part: { id }, proof }) => proof.claims.filter((c) => !c.holds).map((c) => `${id} ${c.about}`))).toEqual(
        [],
      );
      proved += 1;
    }
    expect(proved).toBeGreaterThan(0);
  });
});
