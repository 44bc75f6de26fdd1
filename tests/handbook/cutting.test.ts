/** Speeds, feeds, passes and allowances against printed figures; materials; what each process holds. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Len, len, mm, toMm } from '../../src/base/units.ts';
import { capability, held } from '../../src/handbook/capability.ts';
import { type CuttingOperation, type CuttingTool, cuttingData, surfaceSpeed, turnsAMinute } from '../../src/handbook/cutting.ts';
import { SPEEDS } from '../../src/handbook/cutting-speeds.ts';
import { deepHole, drillFeed, pecks, probableOversize } from '../../src/handbook/drilling.ts';
import { lubricantFor } from '../../src/handbook/lubricants.ts';
import { findMaterial, materials, nearestMaterial } from '../../src/handbook/materials.ts';
import { partingBlade, partingDepth } from '../../src/handbook/parting.ts';
import { MOST_STOCK, reamingStock } from '../../src/handbook/reaming.ts';
import { firstPass, modifiedInfeed, passCount } from '../../src/handbook/thread-passes.ts';

/** Published ranges in m/min that our usual speed must lie in. T.O. 1-1A-9 is for stock of 1 in and up. */
const PUBLISHED: readonly (readonly [
  material: string,
  operation: CuttingOperation,
  tool: CuttingTool,
  lo: number,
  hi: number,
  source: string,
])[] = [
  ['303', 'turn-finish', 'HSS', 19.8, 32, 'USAF T.O. 1-1A-9 table 2-8, finishing'],
  ['303', 'turn-rough', 'carbide', 53.3, 106.7, 'USAF T.O. 1-1A-9 table 2-8, roughing to finishing'],
  ['316', 'turn-finish', 'HSS', 15.2, 24.4, 'USAF T.O. 1-1A-9 table 2-8, finishing'],
  ['316', 'turn-rough', 'carbide', 45.7, 61, 'USAF T.O. 1-1A-9 table 2-8, roughing'],
  ['316', 'drill', 'HSS', 9.1, 12.2, 'US Navy NAVEDTRA 14345, stainless'],
  ['303', 'drill', 'HSS', 9.1, 24.4, 'drill card, free-machining stainless'],
  ['303', 'tap', 'HSS', 4.6, 9.1, 'htpipe.com, data sheet of 303'],
  ['303', 'ream', 'HSS', 10, 16.8, 'htpipe.com 10.7 finishing; protocutter.com 16.8 annealed'],
  ['CW614N', 'turn-rough', 'HSS', 45, 120, 'university tutorial, scribd 615349553'],
  ['CW614N', 'drill', 'HSS', 45.7, 91.4, 'drill card, ordinary brass'],
  ['CW614N', 'tap', 'HSS', 18, 30, 'tap-die.com'],
  ['LG2', 'tap', 'HSS', 15, 18, 'tap-die.com, gunmetal'],
  ['PB102', 'drill', 'HSS', 21.3, 45.7, 'drill card, bronze of high strength'],
  ['PB102', 'tap', 'HSS', 9, 12, 'tap-die.com, bronze'],
  ['copper', 'turn-rough', 'HSS', 30, 76, 'workshop handout, docslib 5103932'],
  ['230M07', 'turn-rough', 'HSS', 25, 45, 'university tutorial, scribd 615349553'],
  ['230M07', 'drill', 'HSS', 24.4, 33.5, 'US Navy NAVEDTRA 14345, low-carbon steel'],
  ['silver steel', 'drill', 'HSS', 15.2, 18.3, 'drill card, tool steel of 1.2 % carbon'],
  ['silver steel', 'tap', 'HSS', 4.6, 7.6, 'tap-die.com'],
  ['6082', 'drill', 'HSS', 61, 91.4, 'US Navy NAVEDTRA 14345'],
  ['6082', 'tap', 'HSS', 15, 21, 'tap-die.com'],
];
const OPERATIONS: readonly CuttingOperation[] = [
  'turn-rough',
  'turn-finish',
  'face',
  'bore',
  'drill',
  'centre',
  'ream',
  'd-bit',
  'screw-cut',
  'tap',
  'die',
  'part-off',
  'groove',
  'chamfer',
  'cone',
];

describe('speeds', () => {
  it.each(PUBLISHED)('%s %s %s lies in %d to %d m/min (%s)', (material, operation, tool, lo, hi) => {
    const vc = Number(cuttingData(material, operation, tool)?.vcNom);
    expect(vc >= lo && vc <= hi).toBe(true);
  });
  it.each(materials)('$id has every operation with HSS, low to high', ({ id }) => {
    for (const operation of OPERATIONS) {
      const data = cuttingData(id, operation, 'HSS');
      expect(data && data.vcLo > 0 && data.vcLo <= data.vcNom && data.vcNom <= data.vcHi).toBe(true);
      expect(data?.source && data.ranges.length > 0).toBeTruthy();
    }
  });
  it('carbide turns faster than HSS, and does not drill or tap here', () => {
    for (const { id } of materials) {
      for (const operation of ['turn-rough', 'turn-finish', 'face', 'bore', 'part-off', 'screw-cut'] as const) {
        expect(Number(cuttingData(id, operation, 'carbide')?.vcNom)).toBeGreaterThan(Number(cuttingData(id, operation, 'HSS')?.vcNom));
      }
      for (const operation of ['drill', 'centre', 'ream', 'tap', 'die'] as const)
        expect(cuttingData(id, operation, 'carbide')).toBeUndefined();
    }
  });
  it('silver steel cuts as a D-bit only, slower than a reamer', () => {
    expect(cuttingData('PB102', 'turn-rough', 'silver steel')).toBeUndefined();
    expect(Number(cuttingData('PB102', 'd-bit', 'silver steel')?.vcNom)).toBeLessThan(Number(cuttingData('PB102', 'ream', 'HSS')?.vcNom));
  });
  it('what no table holds says that it is derived', () => {
    expect([cuttingData('PB102', 'turn-rough', 'carbide'), cuttingData('PB102', 'bore', 'carbide')].map((d) => d?.standing)).toEqual([
      'common practice',
      'derived',
    ]);
  });
  it('an unknown material gives nothing', () => expect(cuttingData('unobtainium', 'drill', 'HSS')).toBeUndefined());
  it('no row of the table stands twice', () => {
    for (const rows of Object.values(SPEEDS))
      expect(new Set(rows.map(([operation, tool]) => `${operation} ${tool}`)).size).toBe(rows.length);
  });
  it.each([
    [50, 15, 1061, 'lzqtool.com: a drill of 15 mm at 50 m/min'],
    [15.08, 12, 400, 'textbook example, gearcalculation.blogspot.com: 400 a minute on 12 mm'],
  ])('%d m/min on %d mm is %d a minute (%s)', (vc, d, n) => expect(Math.abs(turnsAMinute(vc, mm(d)) - n)).toBeLessThan(0.1));
  it('speed of a speed is itself', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 300, noNaN: true }), fc.integer({ min: 100, max: 500_000 }).map(len), (vc, d) => {
        expect(surfaceSpeed(turnsAMinute(vc, d), d)).toBeCloseTo(vc, 9);
      }),
    );
  });
});

describe('drilling', () => {
  it.each([
    [1, 0.001, 0.002],
    [3.175, 0.001, 0.002],
    [3.2, 0.002, 0.004],
    [10, 0.004, 0.007],
    [20, 0.007, 0.015],
  ])('%d mm: %d to %d in a turn (US Navy NAVEDTRA 14345)', (d, lo, hi) => {
    const feed = drillFeed(mm(d));
    expect(feed && Math.abs(feed.lo - lo * 25.4) < 0.001 && Math.abs(feed.hi - hi * 25.4) < 0.001).toBe(true);
    expect(feed && feed.hand <= feed.hi).toBe(true);
  });
  it.each([0.3, 26, 0])('no feed for %d mm', (d) => expect(drillFeed(mm(d))).toBeUndefined());
  it.each([
    [2.9, 1, 1],
    [3, 0.9, 0.9],
    [4, 0.8, 0.9],
    [5.5, 0.7, 0.8],
    [6, 0.625, 0.8],
    [20, 0.625, 0.8],
  ])('%d diameters deep: speed × %d, feed × %d (drill card)', (ratio, speed, feed) => {
    const deep = deepHole(mm(5 * ratio), mm(5));
    expect(deep.speed).toBeCloseTo(speed, 9);
    expect(deep.feed).toBeCloseTo(feed, 9);
  });
  it('5 mm, 30 deep: 12.5, then fives, past five diameters halves', () => {
    expect(pecks(mm(30), mm(5)).map(toMm)).toEqual([12.5, 5, 5, 5, 2.5]);
  });
  it('pecks add up', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }).map(len), fc.integer({ min: 5000, max: 200_000 }).map(len), (depth, d) => {
        expect(sum(pecks(depth, d))).toBe(depth);
        expect(pecks(depth, d).every((p) => p > 0)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
  it.each([
    [5.105, 0.0038],
    [10.716, 0.0047],
  ])('a drill of %d mm cuts about %d in over (FED-STD-H28/2B)', (d, inches) => {
    expect(Math.abs(toMm(probableOversize(mm(d)) ?? len(0)) - inches * 25.4)).toBeLessThan(0.0001);
  });
  it('no guess outside what was published', () =>
    expect([probableOversize(mm(1)), probableOversize(mm(12))]).toEqual([undefined, undefined]));
});

describe('reaming and parting', () => {
  it.each([
    [4, 0.1, 0.2, 'GTZ, Manual reaming'],
    [5, 0.1, 0.2, 'GTZ, Manual reaming'],
    [5.1, 0.2, 0.3, 'GTZ, Manual reaming'],
    [20, 0.2, 0.3, 'GTZ, Manual reaming'],
    [25, 0.254, 0.397, 'Applied Science for Metal-Workers: 1/100 to 1/64 in'],
  ])('%d mm leaves %d to %d for a reamer (%s)', (d, lo, hi) => {
    expect([reamingStock(mm(d))?.lo, reamingStock(mm(d))?.hi]).toEqual([mm(lo), mm(hi)]);
    expect(mm(hi)).toBeLessThan(MOST_STOCK.hi);
  });
  it.each([0, 25.1])('no stock for %d mm', (d) => expect(reamingStock(mm(d))).toBeUndefined());
  it('a blade of 3 mm goes 24 deep (Ingersoll 2011, p. 1346)', () => expect(partingDepth(mm(3))).toBe(mm(24)));
  it.each([
    [12, 1.5],
    [12.1, 2],
    [25, 2],
    [30, 2.5],
  ])('%d mm is parted with %d, deep enough for its radius', (d, width) => {
    expect(partingBlade(mm(d))?.width).toBe(mm(width));
    expect(partingDepth(mm(width))).toBeGreaterThanOrEqual(mm(d / 2));
  });
  it('nothing over 30 mm', () => expect(partingBlade(mm(30.1))).toBeUndefined());
});

describe('screw-cutting passes', () => {
  it('pitch 1.5 in six: 0.23 0.42 0.59 0.73 0.84 0.94 in all (Sandvik p. 114, WIDIA 2017 p. 685)', () => {
    const printed = [0.23, 0.42, 0.59, 0.73, 0.84, 0.94];
    modifiedInfeed(mm(0.94), 6, len(1)).reduce((deep, pass, i) => {
      expect(Math.abs(toMm(len(deep + pass)) - Number(printed[i]))).toBeLessThan(0.006);
      return deep + pass;
    }, 0);
  });
  it('steel, pitch 1.5: 13 passes, the first 0.145, the last 0.039 (derived)', () => {
    const count = passCount(mm(0.92), mm(0.15), mm(0.03));
    const passes = modifiedInfeed(mm(0.92), count, len(1)).map(toMm);
    expect(count).toBe(13);
    expect([passes[0], passes[1], passes[12]].map((p) => p?.toFixed(3))).toEqual(['0.145', '0.120', '0.039']);
  });
  it('they add up, are whole steps, never deeper than the first where the count is free, never under the least', () => {
    const depth = fc.integer({ min: 1000, max: 20_000 }).map(len);
    fc.assert(
      fc.property(depth, fc.constantFrom('brass', 'bronze', '316'), (deep, group) => {
        const least = mm(0.03);
        const count = passCount(deep, firstPass(group), least);
        const passes = modifiedInfeed(deep, count, len(100));
        expect(sum(passes)).toBe(deep);
        expect(passes.slice(0, -1).every((p) => p % 100 === 0)).toBe(true);
        expect(Math.min(...passes)).toBeGreaterThanOrEqual(Math.min(least, deep) - 100);
      }),
      { numRuns: 200 },
    );
  });
  it('one pass takes all', () => expect(modifiedInfeed(mm(0.05), 1, len(100))).toEqual([mm(0.05)]));
});

describe('materials', () => {
  it.each([
    ['PB102', 'PB102'],
    ['pb 102', 'PB102'],
    ['CW451K', 'PB102'],
    ['gunmetal', 'LG2'],
    ['CZ121', 'CW614N'],
    ['AISI-303', '303'],
    ['Silver Steel', 'silver steel'],
    ['EN1A', '230M07'],
    ['1.4401', '316'],
  ])('%s is %s', (name, id) => expect(findMaterial(name)?.id).toBe(id));
  it.each([
    ['PB103', 'PB102'],
    ['gunmetl', 'gunmetal'],
    ['sliver steel', 'silver steel'],
  ])('%s: perhaps %s', (name, meant) => {
    expect(findMaterial(name)).toBeUndefined();
    expect(nearestMaterial(name)).toBe(meant);
  });
  it('no name means two', () => {
    const names = materials.flatMap((m) => [m.id, ...m.aliases]).map((n) => n.toLowerCase().replace(/[\s-]+/g, ''));
    expect(new Set(names).size).toBe(names.length);
  });
  it('lead asks for washed hands; much zinc is warned of (corrosion-doctors.org: 15 % at most)', () => {
    expect(materials.filter((m) => m.lead).map((m) => m.id)).toEqual(['LG2', 'CW614N', '230M07 leaded']);
    expect(materials.filter((m) => m.losesZinc).map((m) => m.id)).toEqual(['CW614N']);
    for (const m of materials) expect([m.lead, m.losesZinc]).toEqual([m.cautions.includes('lead'), m.cautions.includes('loses-zinc')]);
  });
  it.each([
    ['PB102', 460, 380, 'John Hood & Co., drawn 18-40 mm'],
    ['LG2', 200, 90, 'Kemper / EN 1982, sand cast'],
  ])('%s: %d and %d MPa (%s)', (name, tensile, proof) => expect(findMaterial(name)?.strength[0]).toMatchObject({ tensile, proof }));
  it('heat does not make anything stronger, proof is under tensile', () => {
    for (const { strength, annealed } of materials) {
      for (const s of strength) expect(s.proof < s.tensile && (annealed === undefined || annealed.proof <= s.proof)).toBe(true);
    }
  });
  it('brass is drilled dry, stainless never', () => {
    expect(lubricantFor('CW614N', 'turn-rough')?.id).toBe('dry');
    for (const operation of OPERATIONS) expect(lubricantFor('316', operation)?.id).toBe('sulphur-oil');
    expect(lubricantFor('unobtainium', 'drill')).toBeUndefined();
  });
});

const HELD: readonly (readonly [
  process: string,
  measures: 'diameter' | 'length',
  stage: 'rough' | 'final',
  mm: number,
  band: number,
  source: string,
])[] = [
  ['turn', 'diameter', 'final', 12, 0.027, 'IT8 of 10-18 mm; Narayana, Machine Drawing'],
  ['turn', 'diameter', 'rough', 12, 0.11, 'IT11 of 10-18 mm; aksan-tm.com'],
  ['turn', 'diameter', 'final', 3, 0.02, 'no finer than a division of the dial'],
  ['drill', 'diameter', 'final', 6, 0.075, 'IT11 of 3-6 mm; aksan-tm.com'],
  ['face', 'length', 'final', 20, 0.05, 'common practice, no source'],
  ['part-off', 'length', 'rough', 20, 0.33, 'IT13 of 18-30 mm'],
];
describe('what each process holds', () => {
  it.each(HELD)('%s, %s, %s of %d mm: %d (%s)', (process, measures, stage, size, band) =>
    expect(held(process, measures, stage, mm(size))).toBe(mm(band)),
  );
  it('bands never shrink with the size, also past 30 mm', () => {
    const sizes = [1, 3, 6, 10, 18, 30, 30.0001, 40, 80].map(mm);
    for (const [process, measures] of [
      ['turn', 'diameter'],
      ['bore', 'diameter'],
      ['part-off', 'length'],
    ] as const) {
      const bands = sizes.map((size) => held(process, measures, 'final', size));
      expect(bands).toEqual([...bands].sort((a, b) => a - b));
    }
  });
  it('rough is wider than final', () => {
    for (const process of ['turn', 'bore', 'face']) {
      const measures = process === 'face' ? 'length' : 'diameter';
      expect(held(process, measures, 'rough', mm(10))).toBeGreaterThan(held(process, measures, 'final', mm(10)));
    }
  });
  it('what is not known is our fault', () => expect(() => held('paint', 'length', 'final', mm(5))).toThrow('paint'));
  it('every row has a source', () => expect(capability.rows.filter((r) => r.source === '')).toEqual([]));
});

function sum(lengths: readonly Len[]): number {
  return lengths.reduce((all, l) => all + l, 0);
}
