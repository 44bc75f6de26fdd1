/** `check` prints the chart: one row a dimension, a run-out, a chain across parts, with the figures that the plan has. */
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { plainChart, tellChart } from '../../src/cli/chart-table.ts';
import { loadWords } from '../../src/files.ts';
import type { Plan } from '../../src/model/plan.ts';
import { everyPlan } from '../fixtures/every-plan.ts';

const said = words(loadWords());
function table(plan: Plan): readonly string[] {
  let text = '';
  const paint = { error: (t: string) => t, warning: (t: string) => t, dim: (t: string) => t };
  tellChart(plan, said, { out: (t) => (text += t), err: () => undefined, paint });
  return text.trimEnd().split('\n');
}
const demo = everyPlan.find(({ spec }) => spec === 'launch-feed-check-valve')?.plan as Plan;
const columns = (line: string): readonly string[] => line.split(/ {2,}/);

describe('the chart as a table', () => {
  it.each(everyPlan.map(({ spec, plan }) => [spec, plan] as const))('%s: a row a dimension, each within what is asked', (_, plan) => {
    const asked = plan.parts.flatMap(({ part }) => [...part.dimensions, ...(part.truths ?? [])]).length + plan.fitting.chains.length;
    const rows = plainChart(plan);
    expect(rows.length).toBeGreaterThanOrEqual(asked);
    expect(table(plan)).toHaveLength(rows.length + 2);
    for (const row of rows)
      expect([row.dimension, row.met, row.worst.lo >= row.asked.lo && row.worst.hi <= (row.asked.hi ?? row.worst.hi)]).toEqual([
        row.dimension,
        true,
        true,
      ]);
  });
  it('is headed, and tells lengths, run-outs and chains across parts apart', () => {
    const lines = table(demo);
    expect(columns(lines[0] ?? '')).toEqual(['part', 'dimension', 'links', 'worst case', 'statistical', 'asked']);
    const row = (start: RegExp) => columns(lines.find((line) => start.test(line)) ?? '');
    expect(row(/^seat-piece +S-A/).slice(2)).toEqual(['+S-A', '11.90 to 12.10', '11.90 to 12.10', '11.90 to 12.10']);
    expect(row(/^seat-piece +cone true to/).slice(3)).toEqual(['at most 0.05', '–', 'at most 0.15']);
    expect(row(/^several +lift/)[1]).toBe('lift, measured and fitted');
  });
  it('says what is not met', () => {
    const [planned] = demo.parts;
    if (!planned) throw new Error('no part');
    const drawing = planned.chart.drawing.map((path) => ({ ...path, met: false }));
    const plan = { ...demo, parts: [{ ...planned, chart: { ...planned.chart, drawing } }], stacks: [] };
    expect(table(plan)[2]).toMatch(/: not met$/);
  });
});
