/** Chains across parts: worst case, measured and fitted, and what is said where neither will do. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/base/units.ts';
import { words } from '../../src/base/words.ts';
import type { Chain, Fitting } from '../../src/model/part.ts';
import { chart } from '../../src/phases/chart.ts';
import { stack } from '../../src/phases/stack.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { id, limits, smallPart, smallRoute } from './small-part.ts';

const PLUG = smallPart(
  [
    ['A', 0, 'first'],
    ['T', 6, 'first'],
    ['B', 20, 'second'],
  ],
  [
    ['A', 'B', 19.9, 20.1],
    ['A', 'T', 5.95, 6.05],
  ],
);
const route = smallRoute([{ grip: 'bar', out: 'first', cuts: ['A', 'T', 'B'] }]);
const charted = chart(PLUG, route, () => mm(0.05)).value;
if (!charted) throw new Error('no chart');
const PARTS = [{ part: PLUG, chart: charted }];

const link = (a: string, b: string, nominal: number, sign: 1 | -1) => ({ part: 'plug', a: id(a), b: id(b), nominal: mm(nominal), sign });
const bought = { part: 'ring', a: 'ring/a', b: 'ring/b', nominal: mm(1), sign: -1 as const, limits: limits(0.95, 1.05) };
const chainOf = (lo: number, hi: number, how: Chain['how']): Chain => ({
  ...{ id: 'play', links: [link('A', 'B', 20, 1), link('A', 'T', 6, -1), bought], asks: limits(lo, hi), how },
  ...(how === 'blind' ? {} : { fitted: { part: 'plug', dim: id('A-T') } }),
});
const fittingOf = (chain: Chain): Fitting => ({
  ...{ kind: 'test', title: '', parts: [PLUG], bought: [], chains: [chain], derivations: [], assembly: [], tests: [], cautions: [] },
});

describe('a chain across parts', () => {
  it.each([
    ['blind, wide enough: 20 ±0.1 less 6 ±0.05 less 1 ±0.05', 12.8, 13.2, 'blind', true, [12.8, 13.2]],
    ['blind, a hundredth too close', 12.81, 13.2, 'blind', false, [12.8, 13.2]],
    ['fitted: the band of the last cut is left, and two readings of ±0.02', 12.91, 13.09, 'measure and fit', true, [12.91, 13.09]],
    ['fitted, and still too coarse', 12.92, 13.08, 'measure and fit', false, [12.91, 13.09]],
  ] as const)('%s', (_, lo, hi, how, met, comes) => {
    const { value, found } = stack(fittingOf(chainOf(lo, hi, how)), PARTS);
    const path = value?.[0];
    const pair = path?.fitted ?? path;
    expect([path?.met, toMm(pair?.lo ?? mm(0)), toMm(pair?.hi ?? mm(0))]).toEqual([met, ...comes]);
    expect(found.map((one) => one.code)).toEqual(met ? [] : [how === 'blind' ? 'chain.cannot-be-held' : 'chain.cannot-be-fitted']);
    expect(path?.links.map((one) => one.from)).toEqual(['chart', 'chart', 'stated']);
  });
  it('the statistical figure stands beside it: root of 0.2² + 0.1² + 0.1² is a band of 0.2450', () => {
    const likely = stack(fittingOf(chainOf(12.8, 13.2, 'blind')), PARTS).value?.[0]?.likely;
    expect([toMm(likely?.lo ?? mm(0)), toMm(likely?.hi ?? mm(0))]).toEqual([12.8775, 13.1225]);
  });
  it('says what would hold it', () => {
    const said = words({ 'chains.hbs': readFileSync(new URL('../../templates/en/chains.hbs', import.meta.url), 'utf8') });
    const [one] = stack(fittingOf(chainOf(12.93, 13.07, 'blind')), PARTS).found;
    expect(said.say('error.chain.cannot-be-held', one?.grounds)).toBe(
      "The sum play can't be held blind: it may come to anything from 12.80 to 13.20 mm, and 12.93 to 13.07 mm is asked: 0.13 mm too far, through 3 lengths (plug A-B, plug A-T, ring a-b).",
    );
    expect(said.say('error.chain.cannot-be-held.do', one?.grounds)).toMatch(/cut plug A-B last, to their sum: tried, and 0.13 mm/);
    const [fit] = stack(fittingOf(chainOf(12.99, 13.01, 'measure and fit')), PARTS).found;
    expect(said.say('error.chain.cannot-be-fitted', fit?.grounds)).toContain(
      '0.08 mm too far. The last cut leaves 0.10 mm, 2 readings 0.08 mm.',
    );
    expect(said.say('error.chain.cannot-be-fitted.do', fit?.grounds)).not.toBe('');
  });
  it.each([
    [
      'a ring as tightened can not be measured before: its limits stay',
      'tightened',
      undefined,
      [12.88, 13.12],
      { read: 0.04, reckoned: 0.1 },
    ],
    ['unless it is read with what it stands in', 'tightened', 'reading', [12.91, 13.09], { read: 0.08, reckoned: 0 }],
    ['packing likewise', 'packed', undefined, [12.88, 13.12], { read: 0.04, reckoned: 0.1 }],
  ] as const)('%s', (_, by, together, comes, left) => {
    const chain = chainOf(12, 14, 'measure and fit');
    const links = chain.links.map((one) => (one === bought ? { ...one, by, ...(together ? { together } : {}) } : one));
    const path = stack(fittingOf({ ...chain, links }), PARTS).value?.[0];
    expect([toMm(path?.fitted?.lo ?? NONE), toMm(path?.fitted?.hi ?? NONE)]).toEqual(comes);
    expect([toMm(path?.left?.read ?? NONE), toMm(path?.left?.reckoned ?? NONE)]).toEqual([left.read, left.reckoned]);
  });
  it('what is read together is one reading', () => {
    const chain = chainOf(12, 14, 'measure and fit');
    const links = chain.links.map((one) => (one.a === id('A') && one.b === id('B') ? one : { ...one, together: 'depth' }));
    const left = stack(fittingOf({ ...chain, links, fitted: { part: 'plug', dim: id('A-B') } }), PARTS).value?.[0]?.left;
    expect([left?.readings, toMm(left?.read ?? NONE)]).toEqual([1, 0.04]);
  });
  it('of rivals the least sum is the play, and says that it governs: 20 ±0.1 less 8, against 6 ±0.05 and 6', () => {
    const other = { ...bought, sign: 1 as const, nominal: mm(6), limits: limits(5.9, 6.1) };
    const chain: Chain = { ...chainOf(11, 11, 'blind'), rivals: [[link('A', 'T', 6, 1), other]], open: 'above' };
    const path = stack(fittingOf(chain), PARTS).value?.[0];
    expect([path?.governs, toMm(path?.lo ?? NONE), toMm(path?.hi ?? NONE), path?.met]).toEqual([1, 11.85, 12.15, true]);
  });
  it('a length that the drawing does not give is the path between its faces: T-B is 20 ±0.1 less 6 ±0.05', () => {
    const path = stack(fittingOf({ ...chainOf(13, 15, 'blind'), links: [link('T', 'B', 14, 1)] }), PARTS).value?.[0];
    expect(path?.links.map((one) => [toMm(one.lo), toMm(one.hi), one.from])).toEqual([[13.85, 14.15, 'chart']]);
  });
  it('the lift of the check valve is measured and fitted, and held', () => {
    const lift = everyPlan.find(({ spec }) => spec === 'launch-feed-check-valve')?.plan.stacks?.[0];
    expect([lift?.of, lift?.how, lift?.met]).toEqual(['lift', 'measure and fit', true]);
  });
});
const NONE = mm(999);
