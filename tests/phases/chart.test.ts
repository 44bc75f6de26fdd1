import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Len, len, mm, toMm } from '../../src/base/units.ts';
import { words } from '../../src/base/words.ts';
import { held } from '../../src/handbook/capability.ts';
import type { OwnWeights } from '../../src/handbook/difficulty.ts';
import type { Part } from '../../src/model/part.ts';
import type { Chart, Route, Verb, Working } from '../../src/model/plan.ts';
import { chart } from '../../src/phases/chart.ts';
import { weighBy } from '../../src/rules/difficulty.ts';
import type { Capability } from '../../src/rules/working.ts';
import { fittingFor, routeOf } from '../fixtures/shop.ts';
import { id, type SetUpAsk, smallPart, smallRoute } from './small-part.ts';

const holds = (band: number) => (): Len => mm(band);
const made = (part: Part, route: Route, band: number): Chart => {
  const { value, found } = chart(part, route, holds(band));
  expect(found).toEqual([]);
  if (!value) throw new Error('no chart');
  return value;
};
const show = (one: Working): string =>
  `${one.id.slice(5)} from ${one.from.replace('plug/', '')} ${one.toward === 1 ? '+' : '-'} ${toMm(one.limits.lo)}..${toMm(one.limits.hi)} at ${toMm(one.limits.target)}`;

/** Own case: faces A, shoulder T, seat S, end B. A-B 20 +/-0.10, seat from B 8 +/-0.10, T from A 6 +/-0.15. */
const PLUG = smallPart(
  [
    ['A', 0, 'first'],
    ['T', 6, 'first'],
    ['S', 12, 'first'],
    ['B', 20, 'second'],
  ],
  [
    ['A', 'B', 19.9, 20.1],
    ['S', 'B', 7.9, 8.1],
    ['A', 'T', 5.85, 6.15],
  ],
);
const FIRST: SetUpAsk = { grip: 'bar', out: 'first', cuts: ['A', 'T', 'S', 'B+0.5'] };

describe('the reversal', () => {
  it('measured from A: the seat depth is shared by its two cuts, 1 to 1.2 as the second is held again', () => {
    const { working, drawing } = made(PLUG, smallRoute([FIRST, { grip: 'jaws', out: 'second', datum: 'A', cuts: ['B'] }]), 0.05);
    expect(working.map(show)).toEqual([
      'bar-A from bar end + 0.05..2 at 1',
      'A-T from A + 5.85..6.15 at 6',
      'A-S from A + 11.96..12.04 at 12',
      'A-B.rough from A + 20.3..20.7 at 20.5',
      'A-B from A + 19.95..20.05 at 20',
    ]);
    expect(drawing.map((path) => [path.of.slice(5), path.links.length, path.met])).toEqual([
      ['A-B', 1, true],
      ['S-B', 2, true],
      ['A-T', 1, true],
    ]);
  });

  it('a shop that finds its own work in the jaws three times as hard gives it three shares, as far as the other keeps its least', () => {
    const route = smallRoute([FIRST, { grip: 'jaws', out: 'second', datum: 'A', cuts: ['B'], verb: 'bore' }]);
    const bands = (own: OwnWeights): readonly number[] => {
      const working = chart(PLUG, route, holds(0.02), weighBy(own)).value?.working ?? [];
      return ['plug/A-S', 'plug/A-B'].map((one) => {
        const limits = working.find((each) => each.id === one)?.limits;
        return limits ? toMm(len(limits.hi - limits.lo)) : Number.NaN;
      });
    };
    // of 0.20: a bore is 2, held again 1.2: 2.4 of 3.4 is 0.141; easy 1.2 of 2.2 is 0.109; hard 12 of 13 would be 0.184
    expect(bands([])).toEqual([0.04, 0.14]);
    expect(bands([{ process: 'bore', weight: 1 }])).toEqual([0.08, 0.1]);
    expect(bands([{ process: 'bore', weight: 10 }])).toEqual([0.02, 0.18]);
  });

  it('measured from the shoulder: three links, and what they may have is a third each', () => {
    const { working } = made(PLUG, smallRoute([FIRST, { grip: 'jaws', out: 'second', datum: 'T', cuts: ['B'] }]), 0.05);
    expect(working.filter((one) => ['plug/A-T', 'plug/A-S', 'plug/T-B'].includes(one.id)).map(show)).toEqual([
      'A-T from A + 5.97..6.03 at 6',
      'A-S from A + 11.97..12.03 at 12',
      'T-B from T + 13.97..14.03 at 14',
    ]);
  });

  const fromShoulder = smallRoute([FIRST, { grip: 'jaws', out: 'second', datum: 'T', cuts: ['B'] }]);
  it('with coarser cuts the seat is measured from the shoulder too: a link less', () => {
    const { working } = made(PLUG, fromShoulder, 0.08);
    expect(working.map((one) => one.id)).toContain('plug/T-S');
  });

  it('with cuts coarser still it is refused: which, by how much, through which cuts', () => {
    const { value, found } = chart(PLUG, fromShoulder, holds(0.11));
    expect(value).toBeUndefined();
    const seen = found.map((one) => [one.code, one.grounds.dimension, one.grounds.short, one.grounds.through]);
    expect(seen).toContainEqual(['chart.cannot-be-met', 'S-B', '0.01', 'T-S, T-B']);
  });
});

describe('what would meet it is tried', () => {
  it('another datum, a cut from the other end, wider limits: charted again, each is met', () => {
    const [one] = chart(PLUG, smallRoute([FIRST, { grip: 'jaws', out: 'second', datum: 'T', cuts: ['B'] }]), holds(0.11)).found;
    expect([one?.grounds.datum, one?.grounds.hold, one?.grounds.moves, one?.grounds.limit]).toEqual(['A', 'grip.2', '', true]);
    const byFace = smallRoute([FIRST, { grip: 'jaws', out: 'second', datum: 'A', cuts: ['B'] }]);
    expect(chart(PLUG, byFace, holds(0.08)).found).toEqual([]);
  });
  it('what charts and does not prove is not told', () => {
    const route = smallRoute([FIRST, { grip: 'jaws', out: 'second', datum: 'T', cuts: ['B'] }]);
    const broken = { kind: 'held', about: 'plug', holds: false, grounds: {} } as const;
    const [one] = chart(PLUG, route, holds(0.11), undefined, { fails: () => [broken], routeBy: () => undefined }).found;
    expect([one?.grounds.datum, one?.grounds.moves, one?.grounds.process, one?.grounds.limit]).toEqual(['', '', '', false]);
  });
  it('a closer process', () => {
    const drilled = smallRoute([
      { ...FIRST, cuts: ['A', 'T', 'B+0.5'] },
      { grip: 'jaws', out: 'second', datum: 'A', cuts: ['S'], verb: 'drill' },
      { grip: 'jaws', out: 'second', datum: 'A', cuts: ['B'] },
    ]);
    const by = (operation: string, verb: Verb) => ({
      ...drilled,
      chosen: drilled.chosen.map((method) => ({
        ...method,
        operations: method.operations.map((one) => (one.id === operation ? { ...one, verb } : one)),
      })),
    });
    const capability: Capability = (verb) => mm(verb === 'drill' ? 0.3 : 0.05);
    const { found } = chart(PLUG, drilled, capability, undefined, { fails: () => [], routeBy: by });
    expect(chart(PLUG, drilled, capability).found.map((each) => each.grounds.process)).toEqual(['']);
    expect(found.map((each) => [each.grounds.dimension, each.grounds.process])).toEqual([['S-B', 'd-bit S/2.1']]);
  });
  it('a cut made from the other end', () => {
    const route = smallRoute([FIRST, { grip: 'jaws', out: 'second', datum: 'A', cuts: ['B'] }]);
    const both = route.chosen.map((method) => ({
      ...method,
      operations: method.operations.map((one) =>
        one.feature === id('S') && one.ways.first ? { ...one, ways: { ...one.ways, second: one.ways.first } } : one,
      ),
    }));
    const [one] = chart(PLUG, { ...route, chosen: both }, holds(0.15)).found;
    expect([one?.grounds.dimension, one?.grounds.moves, one?.grounds.to]).toEqual(['S-B', 'S/1.3', 'grip.2']);
  });
});

describe('what a length is measured from', () => {
  it('the face that the drawing names, cut in the same grip: one link', () => {
    const part = smallPart(
      [
        ['A', 0, 'first'],
        ['T', 6, 'first'],
        ['S', 12, 'first'],
        ['B', 20, 'second'],
      ],
      [
        ['T', 'S', 5.97, 6.03],
        ['A', 'S', 11.8, 12.2],
        ['A', 'B', 19.8, 20.2],
      ],
    );
    const { working } = made(part, smallRoute([{ grip: 'bar', out: 'first', cuts: ['A', 'T', 'S', 'B'] }]), 0.05);
    expect(working.map((one) => [one.id.slice(5), String(one.from).replace('plug/', '')])).toEqual([
      ['bar-A', 'bar end'],
      ['A-T', 'A'],
      ['T-S', 'T'],
      ['A-B', 'A'],
    ]);
  });

  it('where that leaves another dimension short it is measured from another face of the grip', () => {
    // ranked by its narrowest length S hangs on T; but U-S is then three cuts of 0.05 a side; with U from T as well it is two
    const part = smallPart(
      [
        ['A', 0, 'first'],
        ['T', 6, 'first'],
        ['U', 9, 'first'],
        ['S', 12, 'first'],
        ['B', 20, 'second'],
      ],
      [
        ['T', 'S', 5.9, 6.1],
        ['U', 'S', 2.89, 3.11],
        ['A', 'U', 8.8, 9.2],
        ['A', 'B', 19.8, 20.2],
        ['A', 'T', 5.8, 6.2],
      ],
    );
    const { working, drawing } = made(part, smallRoute([{ grip: 'bar', out: 'first', cuts: ['A', 'T', 'U', 'S', 'B'] }]), 0.1);
    expect(working.map((one) => one.id)).toEqual(['plug/bar-A', 'plug/A-T', 'plug/T-U', 'plug/T-S', 'plug/A-B']);
    expect(drawing.every((path) => path.met)).toBe(true);
  });

  it('the end faced again after drilling: from itself, and from then on it is the datum', () => {
    const route = smallRoute([
      { grip: 'bar', out: 'second', cuts: ['B+0.3', 'B', 'T', 'S', 'A+0.4'] },
      { grip: 'jaws', out: 'first', datum: 'B', cuts: ['A'] },
    ]);
    const { working } = made(PLUG, route, 0.05);
    expect(working.slice(0, 3).map(show)).toEqual([
      'bar-B.rough from bar end - 0.05..2 at 1',
      'B-B from B - 0.2..0.4 at 0.3',
      'B-T from B - 13.94..14.06 at 14',
    ]);
    expect(working.filter((one) => one.makes === id('A')).map((one) => [one.id, one.from])).toEqual([
      ['plug/B-A.rough', id('B')],
      ['plug/B-A', id('B')],
    ]);
  });
});

describe('limits and targets', () => {
  it.each([
    [31.38, 32, 31.7],
    [27, 27.14, 27.1],
    [9.64, 10, 9.8],
    [9.995, 10.045, 10.02],
  ])('a length of one cut has the limits of the drawing %f..%f and aims at %f', (lo, hi, target) => {
    const part = smallPart(
      [
        ['A', 0, 'first'],
        ['B', (lo + hi) / 2, 'second'],
      ],
      [['A', 'B', lo, hi]],
    );
    const { working } = made(part, smallRoute([{ grip: 'bar', out: 'first', cuts: ['A', 'B'] }]), 0.02);
    expect(working[1]?.limits).toMatchObject({ lo: mm(lo), hi: mm(hi), target: mm(target) });
  });

  it('a face that the drawing does not place has its general tolerance from the nearest one (ISO 2768-1 m: 0.1 to 3 mm)', () => {
    const part = smallPart(
      [
        ['A', 0, 'first'],
        ['T', 6, 'first'],
        ['W', 8, 'second'],
        ['B', 20, 'second'],
      ],
      [
        ['A', 'B', 19.9, 20.1],
        ['A', 'T', 5.9, 6.1],
      ],
    );
    const { working, drawing } = made(part, smallRoute([{ grip: 'bar', out: 'first', cuts: ['A', 'T', 'W', 'B'] }]), 0.05);
    expect(working.map(show)).toContain('T-W from T + 1.9..2.1 at 2');
    expect(drawing.at(-1)?.asks).toMatchObject({ lo: mm(1.9), hi: mm(2.1), from: { kind: 'general' } });
  });

  it('a face that nothing finishes is named', () => {
    const { found } = chart(PLUG, smallRoute([{ grip: 'bar', out: 'first', cuts: ['A', 'T', 'B+0.5'] }]), holds(0.05));
    expect(found.map((one) => [one.code, one.grounds.face])).toEqual([
      ['chart.not-located', 'S'],
      ['chart.not-located', 'B'],
    ]);
  });

  it('where the next cut might find no metal, more is left for it', () => {
    const route = smallRoute([
      { ...FIRST, cuts: ['A', 'T', 'S', 'B+0.1'] },
      { grip: 'jaws', out: 'second', datum: 'A', cuts: ['B'] },
    ]);
    const { working } = made(PLUG, route, 0.06);
    // 0.03 and 0.03 of limits and 0.05 of metal want 0.11: 0.15 is left, and the 0.10 over the metal is shared, 1 to 1.2; up as far as down
    expect(working.filter((one) => one.makes === id('B')).map(show)).toEqual([
      'A-B.rough from A + 20.11..20.29 at 20.2',
      'A-B from A + 19.95..20.05 at 20',
    ]);
  });
});

// ---- any part, any route ------------------------------------------------------------------------------------------------------
type Drawn = { readonly part: Part; readonly route: Route };
const drawn: fc.Arbitrary<Drawn> = fc
  .record({
    gaps: fc.array(fc.integer({ min: 2, max: 9 }), { minLength: 2, maxLength: 5 }),
    bands: fc.array(fc.integer({ min: 3, max: 40 }), { minLength: 12, maxLength: 12 }),
    near: fc.array(fc.nat(9), { minLength: 12, maxLength: 12 }),
    turned: fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }),
  })
  .map(({ gaps, bands, near, turned }) => {
    const zs = [0];
    for (const gap of gaps) zs.push((zs.at(-1) ?? 0) + gap);
    const name = (i: number): string => 'ABCDEFGH'[i] ?? '';
    const last = zs.length - 1;
    const faces = zs.map((z, i) => [name(i), z, i === 0 ? 'first' : i === last || turned[i] ? 'second' : 'first'] as const);
    const lengths = zs.slice(1).map((z, k) => {
      const from = (near[k] ?? 0) % (k + 1);
      const size = z - (zs[from] ?? 0);
      const band = (bands[k] ?? 0) / 100;
      return [name(from), name(k + 1), size - band, size + 2 * band] as const;
    });
    const inFirst = zs.map((_, i) => i).filter((i) => i === 0 || (i < last && !turned[i]));
    const inSecond = zs.map((_, i) => i).filter((i) => !inFirst.includes(i) && i !== last);
    const route = smallRoute([
      { grip: 'bar', out: 'first', cuts: ['A+0.3', ...inFirst.map(name), `${name(last)}+0.6`] },
      { grip: 'jaws', out: 'second', datum: 'A', cuts: [name(last), ...inSecond.map(name)] },
    ]);
    return { part: smallPart(faces, lengths), route };
  });

/** Places after each cut, for one choice of every working dimension: nothing of the chart's own sums is used. */
function place(
  working: readonly Working[],
  value: (one: Working, i: number) => number,
  air: (face: string) => number,
): { readonly z: Map<string, number>; readonly stock: number[] } {
  const z = new Map<string, number>([['bar end', 0]]);
  const stock: number[] = [];
  working.forEach((one, i) => {
    const at = (z.get(one.from) ?? Number.NaN) + one.toward * value(one, i);
    const before = one.from === 'bar end' ? 0 : z.get(one.makes);
    if (before !== undefined) stock.push((at - before) * air(one.makes));
    z.set(one.makes, at);
  });
  return { z, stock };
}

describe('any part and route', () => {
  it('is met at every corner, finds metal at every cut, and is never finer than its process; or it is refused with a figure', () => {
    let met = 0;
    fc.assert(
      fc.property(drawn, fc.integer({ min: 200, max: 1500 }), ({ part, route }, band) => {
        const { value, found } = chart(part, route, () => len(band));
        expect(value === undefined).toBe(found.length > 0);
        for (const one of found) expect(Number(one.grounds.short)).toBeGreaterThanOrEqual(0);
        if (!value) return;
        met += 1;
        for (const { limits } of value.working) {
          expect(limits.hi - limits.lo).toBeGreaterThanOrEqual(band);
          expect(limits.lo <= limits.target && limits.target <= limits.hi).toBe(true);
        }
        const air = (face: string): number =>
          part.surfaces.find((one) => one.id === face && one.shape === 'face' && one.air === 'first') ? 1 : -1;
        for (let corner = 0; corner < 2 ** value.working.length; corner += 1) {
          const { z, stock } = place(value.working, (one, i) => (corner & (1 << i) ? one.limits.hi : one.limits.lo), air);
          const bad = part.dimensions.filter(({ a, b, limits }) => {
            const size = (z.get(b) ?? Number.NaN) - (z.get(a) ?? Number.NaN);
            return !(size >= limits.lo && size <= limits.hi);
          });
          expect(bad).toEqual([]);
          expect(Math.min(...stock.slice(1))).toBeGreaterThanOrEqual(mm(0.05));
        }
      }),
      { numRuns: 60, seed: 11 },
    );
    expect(met).toBeGreaterThan(15);
  });

  it('does not depend on the order of the drawing’s lists', () => {
    fc.assert(
      fc.property(drawn, ({ part, route }) => {
        const turned = { ...part, dimensions: [...part.dimensions].reverse(), surfaces: [...part.surfaces].reverse() };
        expect(chart(turned, route, holds(0.05))).toEqual(chart(part, route, holds(0.05)));
      }),
      { numRuns: 40, seed: 12 },
    );
  });
});

/** Least and greatest of each dimension over all corners of the lengths that it hangs on; diameters don't move a face. */
describe('the demo’s parts', () => {
  it.each(fittingFor().parts.map((part) => [part.id, part] as const))(
    '%s: every dimension met at every corner, every face located',
    (name, part) => {
      const { value, found } = chart(part, routeOf(name), held);
      expect(found).toEqual([]);
      const working = (value?.working ?? []).filter((one) => one.measures === 'length');
      const located = new Set(working.filter((one) => one.stage === 'final').map((one) => one.makes));
      expect(part.surfaces.filter((one) => one.shape === 'face' && !located.has(one.id))).toEqual([]);
      expect(working.length).toBeLessThan(16);
      for (let corner = 0; corner < 2 ** working.length; corner += 1) {
        const { z } = place(
          working,
          (one, i) => (corner & (1 << i) ? one.limits.hi : one.limits.lo),
          () => 1,
        );
        const bad = part.dimensions.filter(({ a, b, limits }) => {
          const size = (z.get(b) ?? Number.NaN) - (z.get(a) ?? Number.NaN);
          return !(size >= limits.lo && size <= limits.hi);
        });
        expect(bad).toEqual([]);
      }
      for (const one of working) expect(one.limits.hi - one.limits.lo).toBeGreaterThanOrEqual(one.holds);
    },
  );
});

describe('words', () => {
  const said = words({ 'numbers.hbs': readFileSync(new URL('../../templates/en/numbers.hbs', import.meta.url), 'utf8') });
  const short = chart(PLUG, smallRoute([FIRST, { grip: 'jaws', out: 'second', datum: 'T', cuts: ['B'] }]), holds(0.11)).found[0]?.grounds;
  it('a length that can’t be met', () => {
    expect(said.say('error.chart.cannot-be-met', short)).toBe(
      "The length A-B of the plug can't be met: it allows 0.10 mm to one side, and the 2 cuts that add up to it (A-T, T-B) need 0.11 mm: 0.01 mm short.",
    );
    expect(said.say('error.chart.cannot-be-met.do', short)).toBe(
      'Set by A instead in grip.2, it comes out. With its limits 0.01 mm wider to either side, it comes out.',
    );
  });
  it('a change of end or of process is told where it was tried and met, and none where none was', () => {
    const base = { ...short, datum: '', hold: '', moves: '', to: '', process: '', limit: false };
    const told = (change: object): string => said.say('error.chart.cannot-be-met.do', { ...base, ...change });
    expect(told({ moves: 'S/1.3', to: 'grip.2' })).toBe('With S/1.3 done in grip.2, it comes out.');
    expect(told({ process: 'bore S/1.3' })).toBe('With a closer process (bore S/1.3), it comes out.');
    expect(told({})).toBe('No single change that was tried meets it: cut both of its faces in one grip.');
  });
  it.each(['stock', 'diameter'])('the same of a %s', (what) => {
    const grounds = { ...short, what };
    expect(said.say('error.chart.cannot-be-met', grounds)).toContain('0.01 mm');
    expect(said.say('error.chart.cannot-be-met.do', grounds)).not.toBe('');
  });
});
