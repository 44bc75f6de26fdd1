/** Published charts, transfers and stacks, to the last printed digit, by the engine that charts our own parts. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { toMm } from '../../src/base/units.ts';
import { type Judgement, judgeChart } from './chart/judge.ts';
import { readChart } from './chart/read.ts';

const FOLDER = join(import.meta.dirname, '..', 'data', 'charts');
const judged = (name: string): Judgement => judgeChart(readChart(readFileSync(join(FOLDER, `${name}.json`), 'utf8')));
const links = ({ dimensions }: Judgement): Readonly<Record<string, string>> =>
  Object.fromEntries(dimensions.map((one) => [one.name, one.links.map((link) => (link.sign === 1 ? '+' : '-') + link.dim).join(' ')]));

describe('as printed', () => {
  it.each([
    ['sleeve', 6, 6],
    ['stack-spacers', 1, 1],
    ['stack-frame', 1, 1],
    ['stack-five', 1, 1],
    ['stack-ten', 1, 1],
    ['shaft-and-bearings', 1, 1],
    ['seat-from-shoulder', 4, 4],
    ['seat-from-face', 4, 4],
  ])('%s: %i of %i dimensions', (name, printed, all) => {
    const { dimensions } = judged(name);
    expect([dimensions.filter((one) => one.asPrinted === true).length, dimensions.length]).toEqual([printed, all]);
  });
  it('the sleeve’s chains; its last cut takes stock from the surface’s own earlier version', () => {
    expect(links(judged('sleeve'))).toEqual({
      'A-B 6 ±0.1': '+L5 -Z7',
      'A-D 32 0/-0.62': '+L5 +L4',
      'A-C 27 +0.14/0': '+L6',
      'stock 4, on D': '-L4 -L3 +L1',
      'stock 5, on A': '+L3 -L5',
      'stock 6, on C': '-L2 +L3 -L5 +L6',
    });
    expect(judged('sleeve').holds).toBe(true);
  });
});

describe('a seat located on a shoulder and on a face', () => {
  it.each([
    ['seat-from-shoulder', false, [0, 0.03, 0, 0]],
    ['seat-from-face', true, [0, 0, 0, 0]],
  ] as const)('%s: holds is %s', (name, holds, short) => {
    const judgement = judged(name);
    expect([judgement.holds, judgement.dimensions.map((one) => toMm(one.short))]).toEqual([holds, short]);
  });
});

describe('what one cut may have', () => {
  it.each([
    ['transfer-depth', 'depth', 40, 40.19],
    ['transfer-slot', 'slot', 34.75, 34.9],
    ['keyway', 'broach', 43.45, 43.715],
  ])('%s: %s %f to %f', (name, cut, lo, hi) => {
    const { found, holds } = judged(name);
    expect(found.map((one) => [one.cut, one.limits && [toMm(one.limits.lo), toMm(one.limits.hi)]])).toEqual([[cut, [lo, hi]]]);
    expect(holds).toBe(true);
  });
  it('nothing, where the link alone overruns it: 0.035 a side, 0.07 in all', () => {
    const { found, holds } = judged('transfer-impossible');
    expect([holds, found.map((one) => [one.limits, toMm(one.short)])]).toEqual([false, [[undefined, 0.07]]]);
  });
});

describe('files', () => {
  it.each(readdirSync(FOLDER))('%s names its source', (name) => {
    expect(readChart(readFileSync(join(FOLDER, name), 'utf8')).source.length).toBeGreaterThan(10);
  });
  const top = { title: 't', source: 's', cuts: [], dimensions: [] };
  it.each([
    ['no record', '[]', /the file: a record/],
    ['no list of cuts', JSON.stringify({ ...top, cuts: 1 }), /cuts: a list/],
    ['a way that is none', JSON.stringify({ ...top, cuts: [{ name: 'a', makes: 'b', from: 'c', toward: 'up' }] }), /cuts\[0\]\.toward/],
    [
      'limits turned round',
      JSON.stringify({ ...top, cuts: [{ name: 'a', makes: 'b', from: 'c', toward: 'left', limits: [2, 1] }] }),
      /least and the greatest/,
    ],
    [
      'a size too fine',
      JSON.stringify({ ...top, cuts: [{ name: 'a', makes: 'b', from: 'c', toward: 'left', limits: [1.00005, 2] }] }),
      /finer/,
    ],
  ])('%s is refused at its place', (_, text, message) => expect(() => readChart(text)).toThrow(message));
  it('a dimension that no chain joins is refused', () => {
    const text = JSON.stringify({ ...top, dimensions: [{ name: 'x', from: 'a', to: 'b' }] });
    expect(() => judgeChart(readChart(text))).toThrow(/no chain/);
  });
});
