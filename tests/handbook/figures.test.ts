/** Published figures, a row a figure, the source in the row; and how many there are. */
import { describe, expect, it } from 'vitest';
import { boughtFigures } from './figures/bought.ts';
import { cuttingFigures } from './figures/cutting.ts';
import type { Figure } from './figures/figure.ts';
import { fitFigures } from './figures/fits.ts';
import { inchFigures } from './figures/inch.ts';
import { jointFigures } from './figures/joints.ts';
import { loadFigures } from './figures/loads.ts';
import { metricFigures } from './figures/metric.ts';
import { steamFigures } from './figures/steam.ts';
import { valveFigures } from './figures/valve.ts';

const GROUPS: readonly (readonly [group: string, rows: readonly Figure[]])[] = [
  ['metric threads', metricFigures],
  ['inch threads', inchFigures],
  ['fits', fitFigures],
  ['bought', boughtFigures],
  ['water and steam', steamFigures],
  ['valves', valveFigures],
  ['loads, bars, tapers', loadFigures],
  ['leaks, joints, squares', jointFigures],
  ['cutting', cuttingFigures],
];

describe.each(GROUPS)('%s', (_, rows) => {
  it.each(rows.map((row) => [`${row.what} is ${row.printed} (${row.source})`, row] as const))('%s', (_name, { got, printed, within }) => {
    expect(within).toBeGreaterThan(0);
    expect(Math.abs(got() - printed)).toBeLessThanOrEqual(within);
  });
});

describe('how much is checked', () => {
  const all = GROUPS.flatMap(([, rows]) => rows);
  const sources = new Set(all.map((row) => row.source));
  it(`${all.length} rows over ${sources.size} sources: 400 over 25 at least`, () => {
    expect(all.length).toBeGreaterThanOrEqual(400);
    expect(sources.size).toBeGreaterThanOrEqual(25);
  });
  it('no row stands twice', () => {
    const rows = all.map((row) => `${row.source}: ${row.what}`);
    expect(rows.filter((row, i) => rows.indexOf(row) !== i)).toEqual([]);
  });
});
