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
    ['fitted: the band of the last cut is what is left', 12.95, 13.05, 'measure and fit', true, [12.95, 13.05]],
    ['fitted, and still too coarse', 12.96, 13.04, 'measure and fit', false, [12.95, 13.05]],
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
    const said = words({ 'numbers.hbs': readFileSync(new URL('../../templates/en/numbers.hbs', import.meta.url), 'utf8') });
    const [one] = stack(fittingOf(chainOf(12.9, 13.1, 'blind')), PARTS).found;
    expect(said.say('error.chain.cannot-be-held', one?.grounds)).toBe(
      "The sum play can't be held blind: it may come to anything from 12.80 to 13.20 mm, and 12.90 to 13.10 mm is asked: 0.10 mm too far, through 3 lengths (plug A-B, plug A-T, ring a-b).",
    );
    expect(said.say('error.chain.cannot-be-held.do', one?.grounds)).toMatch(/cut plug A-B last, to their sum: tried, and 0.05 mm/);
    const [fit] = stack(fittingOf(chainOf(12.99, 13.01, 'measure and fit')), PARTS).found;
    expect(said.say('error.chain.cannot-be-fitted', fit?.grounds)).toContain('0.04 mm too far');
    expect(said.say('error.chain.cannot-be-fitted.do', fit?.grounds)).not.toBe('');
  });
  it('the lift of the check valve is measured and fitted, and held', () => {
    const lift = everyPlan.find(({ spec }) => spec === 'launch-feed-check-valve')?.plan.stacks?.[0];
    expect([lift?.of, lift?.how, lift?.met]).toEqual(['lift', 'measure and fit', true]);
  });
});
