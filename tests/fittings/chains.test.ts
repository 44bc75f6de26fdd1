/** Ready-made chains on small made-up fittings: each sum worked by hand beside its row, from the drawn limits. */
import { describe, expect, it } from 'vitest';
import { type Len, len, mm, toMm } from '../../src/base/units.ts';
import {
  atLeast,
  clearanceChain,
  engagementChain,
  liftChain,
  nominalOf,
  offBy,
  takeUpChains,
  travelChain,
} from '../../src/fittings/chains.ts';
import { about, between } from '../../src/fittings/limits.ts';
import { across, ballOnSeat, drawn, packingLoose, packingPacked, ringBought, ringTightened, stated } from '../../src/fittings/links.ts';
import type { Chain, Cylinder, Face, Fitting, Limits, Part } from '../../src/model/part.ts';
import type { Chart, Working } from '../../src/model/plan.ts';
import { stack } from '../../src/phases/stack.ts';

type Length = readonly [a: string, b: string, size: number, band: number];
const of = (part: string, name: string): string => `${part}/${name}`;

/** A part of some lengths, the first face at 0, and diameters; only what a chain looks at is filled in. */
function partOf(
  id: string,
  lengths: readonly Length[],
  diameters: readonly (readonly [name: string, lo: number, hi: number])[] = [],
): Part {
  const places = new Map<string, number>();
  for (const [a, b, size] of lengths) {
    if (!places.has(a)) places.set(a, 0);
    places.set(b, (places.get(a) ?? 0) + size);
  }
  const faces = [...places].map(
    ([name, z]): Face => ({
      shape: 'face',
      id: of(id, name),
      feature: of(id, name),
      role: 'free',
      side: 'outside',
      air: 'first',
      z: mm(z),
    }),
  );
  const cylinders = diameters.map(
    ([name, lo, hi]): Cylinder => ({
      ...{ shape: 'cylinder', id: of(id, name), feature: of(id, name), role: 'running', side: 'outside', from: len(0), to: len(1) },
      size: between(mm(lo), mm(hi), mm(lo), 'test'),
    }),
  );
  return {
    ...{ id, kind: id, quantity: 1, use: 'fitting', stock: { from: 'bought', what: 'test' }, ring: [], features: [], length: len(0) },
    surfaces: [...faces, ...cylinders],
    dimensions: lengths.map(([a, b, size, band]) => ({
      ...{ id: of(id, `${a}-${b}`), a: of(id, a), b: of(id, b) },
      limits: about(mm(size), mm(band), 'test'),
    })),
  };
}

/** As though each drawn length were one cut, to its own limits. */
function charted(part: Part): { readonly part: Part; readonly chart: Chart } {
  const cut = (id: string, makes: string, from: string, measures: Working['measures'], limits: Limits): Working => ({
    ...{ id, op: id, makes, from, measures, limits, stage: 'final', toward: 1, holds: len(limits.hi - limits.lo) },
  });
  const working = [
    ...part.dimensions.map((one) => cut(one.id, one.b, one.a, 'length', one.limits)),
    ...part.surfaces.flatMap((one) => (one.shape === 'cylinder' ? [cut(`${one.id}.D`, one.id, 'axis', 'diameter', one.size)] : [])),
  ];
  const drawing = part.dimensions.map(({ id, limits }) => ({
    ...{ of: id, links: [{ dim: id, sign: 1 } as const], lo: limits.lo, hi: limits.hi, asks: limits, met: true },
  }));
  return { part, chart: { part: part.id, working, drawing } };
}

function judged(chain: Chain, parts: readonly Part[]) {
  const fitting: Fitting = {
    ...{ kind: 'test', title: '', parts, bought: [], chains: [chain], derivations: [], assembly: [], tests: [], cautions: [] },
  };
  const { value, found } = stack(fitting, parts.map(charted));
  const path = value?.[0];
  if (!path) throw new Error('no path');
  return { path, codes: found.map((one) => one.code), sum: [toMm(path.lo), toMm(path.hi)] };
}
const pair = ({ lo, hi }: { readonly lo: Len; readonly hi: Len }) => [toMm(lo), toMm(hi)];

describe('lift', () => {
  const body = partOf('body', [['P', 'T', 40, 0.2]]);
  const piece = partOf('piece', [['S', 'A', 12, 0.1]]);
  const cap = partOf('cap', [['Q', 'A', 23, 0.05]]);
  const ball = ballOnSeat('ball', mm(6), about(mm(4.6), mm(0.03), 'seat'), -1);
  const lift = (asks: Limits) =>
    liftChain({
      ...{ id: 'lift', reading: 'link.depth-to-ball', asks, stop: drawn(cap, 'Q', 'A', -1), stopDim: 'cap/Q-A' },
      depth: [drawn(body, 'P', 'T', 1), ringTightened('ring', 1), drawn(piece, 'S', 'A', -1), ball],
      between: [ringTightened('ring', 1, 'link.ring-tightened')],
    });
  it('a ball on its seat: (√(D² − d²) + D) / 2, least at D 5.975 and d 4.63, most at D 6.025 and d 4.57', () => {
    // grade 200: ±25 um (ABMA Std 10); √(36 − 21.16) = 3.8523; √(35.7006 − 21.4369) = 3.7767; √(36.3006 − 20.8849) = 3.92628
    expect(toMm(ball.nominal)).toBe(4.9261);
    expect(ball.limits && pair(ball.limits)).toEqual([4.8759, 4.9756]);
  });
  it('blind: 40 + 0.9 − 12 − 4.926 + 0.9 − 23 = 1.874, and all limits add up', () => {
    const { path, sum, codes } = judged(lift(about(mm(1.87), mm(0.1), 'lift')), [body, piece, cap]);
    // 39.8 + 0.87 − 12.1 − 4.9756 + 0.87 − 23.05; 40.2 + 0.93 − 11.9 − 4.8759 + 0.93 − 22.95
    expect(sum).toEqual([1.4144, 2.3341]);
    // fitted: ±0.05 by the last cut, ±0.02 by the one reading, ±0.03 by the ring under the cap
    expect(path.fitted && pair(path.fitted)).toEqual([1.77, 1.97]);
    expect([path.left?.readings, codes]).toEqual([1, []]);
  });
  it('a hundredth closer can not be fitted', () =>
    expect(judged(lift(about(mm(1.87), mm(0.09), 'lift')), [body, piece, cap]).codes).toEqual(['chain.cannot-be-fitted']));
});

describe('take-up of a gland', () => {
  const bonnet = partOf('bonnet', [['M', 'F', 10, 0.1]]);
  const gland = partOf('gland', [['N', 'S', 6, 0.1]]);
  const packing = { item: 'packing', rings: 3, width: mm(3), sign: 1 } as const;
  const ask = {
    ...{ id: 'take-up', packed: packingPacked(packing), loose: packingLoose(packing) },
    ...{ nose: drawn(gland, 'N', 'S', 1), box: drawn(bonnet, 'M', 'F', -1) },
  };
  it('three rings of 3: 9 ±0.9 loose, compressed by 25 to 35 %: 5.85 to 6.75', () => {
    expect(ask.loose.limits && pair(ask.loose.limits)).toEqual([8.1, 9.9]);
    expect(ask.packed.limits && pair(ask.packed.limits)).toEqual([5.85, 6.75]);
  });
  it('shoulder off the box: 6.3 + 6 − 10 = 2.3; 5.85 + 5.9 − 10.1 = 1.65; room over loose packing: 9.9 − 9.9 = 0', () => {
    const [takeUp, entry] = takeUpChains({ ...ask, least: mm(1.6), entry: mm(0.5) });
    if (!takeUp || !entry) throw new Error('no chains');
    expect(judged(takeUp, [bonnet, gland])).toMatchObject({ sum: [1.65, 2.95], codes: [] });
    expect(judged(entry, [bonnet, gland])).toMatchObject({ sum: [0, 2], codes: ['chain.cannot-be-held'] });
    expect(offBy(takeUp)).toBe(mm(-0.7));
  });
  it('where the thread runs out first, that governs', () => {
    const thread = stated({ item: 'gland', from: 'thread', to: 'end', limits: about(mm(2), mm(0.5), 'test'), sign: 1, by: 'bench' });
    const [takeUp] = takeUpChains({ ...ask, rivals: [[thread]], least: mm(1.6), entry: mm(0) });
    if (!takeUp) throw new Error('no chain');
    const { path, sum, codes } = judged(takeUp, [bonnet, gland]);
    expect([path.governs, sum, codes]).toEqual([1, [1.5, 2.5], ['chain.cannot-be-held']]);
  });
});

describe('travel of a spindle', () => {
  const body = partOf('body', [['S', 'T', 30, 0.1]]);
  const bonnet = partOf('bonnet', [['A', 'C', 5, 0.1]]);
  const spindle = partOf('spindle', [['K', 'L', 32, 0.1]]);
  const housing = [drawn(body, 'S', 'T', 1), ringTightened('ring', 1), drawn(bonnet, 'A', 'C', 1)];
  const moving = [drawn(spindle, 'K', 'L', -1)];
  it.each([
    ['at least 3.5', 3.5, []],
    ['at least 3.6', 3.6, ['chain.cannot-be-held']],
  ] as const)('30 + 0.9 + 5 − 32 = 3.9; least 29.9 + 0.87 + 4.9 − 32.1 = 3.57: %s', (_, least, codes) => {
    const chain = travelChain({ id: 'travel', housing, moving, asks: atLeast(mm(least), 'travel'), open: 'above' });
    expect(toMm(nominalOf(chain.links))).toBe(3.9);
    expect(judged(chain, [body, bonnet, spindle])).toMatchObject({ sum: [3.57, 4.23], codes });
  });
  it('measured and fitted: ±0.1 by the last cut, two readings of ±0.02, ±0.03 by the ring', () => {
    const fitted = { part: 'spindle', dim: 'spindle/K-L' };
    const chain = travelChain({ id: 'travel', housing, moving, asks: about(mm(3.9), mm(0.17), 'travel'), fitted, proof: 'sum.proof' });
    const { path, codes } = judged(chain, [body, bonnet, spindle]);
    expect([path.fitted && pair(path.fitted), chain.proof, codes]).toEqual([[3.73, 4.07], 'sum.proof', []]);
  });
});

describe('engagement of two threads', () => {
  const plug = partOf('plug', [
    ['A', 'E', 12, 0.1],
    ['A', 'W', 2.8, 0.05],
  ]);
  const body = partOf('body', [['T', 'F', 10, 0.1]]);
  const start = (item: string, size: number, sign: 1 | -1) =>
    stated({ item, from: 'mouth', to: 'full', limits: about(mm(size), mm(0.1), 'thread start'), sign, by: 'bench' });
  const ring = ringTightened('ring', -1);
  const chain = engagementChain({
    id: 'engagement',
    // into the hole, from its face: the plug stands off by its ring
    outside: { begins: [drawn(plug, 'A', 'W', 1), ring], ends: [drawn(plug, 'A', 'E', 1), start('plug', 0.6, -1), ring] },
    inside: { begins: [start('body', 0.5, 1)], ends: [drawn(body, 'T', 'F', 1)] },
    least: mm(7.9),
  });
  it('four sums: 10 − 2.8 + 0.9 = 8.1; 12 − 0.6 − 2.8 = 8.6 (the ring in neither); 10 − 0.5 = 9.5; 12 − 0.6 − 0.9 − 0.5 = 10', () =>
    expect([chain.links, ...(chain.rivals ?? [])].map((way) => toMm(nominalOf(way)))).toEqual([8.1, 8.6, 9.5, 10]));
  it('least 9.9 − 2.85 + 0.87 = 7.92, most 10.1 − 2.75 + 0.93 = 8.28', () =>
    expect(judged(chain, [plug, body])).toMatchObject({ sum: [7.92, 8.28], codes: [] }));
  it('a shorter thread governs in its turn', () => {
    const short = partOf('plug', [
      ['A', 'E', 11.4, 0.1],
      ['A', 'W', 2.8, 0.05],
    ]);
    const [link] = chain.rivals ?? [];
    // 11.3 − 0.7 − 2.85 = 7.75
    expect(link?.length).toBe(3);
    expect(judged(chain, [short, body])).toMatchObject({ path: { governs: 1 }, sum: [7.75, 8.25], codes: ['chain.cannot-be-held'] });
  });
});

describe('clearance of a fit', () => {
  it('8 H8 on 8 f7: least 8.000 − 7.987 = 0.013, greatest 8.022 − 7.972 = 0.050 (ISO 286-2: H8 +22 0; f7 −13 −28)', () => {
    const box = partOf('box', [], [['bore', 8, 8.022]]);
    const stem = partOf('stem', [], [['rod', 7.972, 7.987]]);
    const asks = between(mm(0.013), mm(0.05), mm(0.03), 'running');
    const chain = clearanceChain({ id: 'clearance', hole: across(box, 'bore', 1), shaft: across(stem, 'rod', 1), asks });
    expect(judged(chain, [box, stem])).toMatchObject({ sum: [0.013, 0.05], codes: [] });
  });
});

describe('links', () => {
  const plug = partOf('plug', [['A', 'B', 5, 0.1]], [['rod', 4, 4.1]]);
  it('a joint ring is bought at 1 ±0.05 and comes to 0.9 ±0.03', () =>
    expect([ringBought('ring', 1), ringTightened('ring', 1)].map((one) => one.limits && pair(one.limits))).toEqual([
      [0.95, 1.05],
      [0.87, 0.93],
    ]));
  it.each([
    ['a length to no face', () => drawn(plug, 'A', 'rod', 1), /no face/],
    ['a diameter of a face', () => across(plug, 'A', 1), /no cylinder/],
  ])('%s is our mistake', (_, make, said) => expect(make).toThrow(said));
  it('a length between faces that the drawing does not join is that of their places', () => {
    const two = partOf('plug', [
      ['A', 'B', 5, 0.1],
      ['A', 'C', 7, 0.1],
    ]);
    expect(toMm(drawn(two, 'B', 'C', 1).nominal)).toBe(2);
  });
});
