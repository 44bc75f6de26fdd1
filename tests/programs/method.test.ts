/** The page on the method tells the figures of the demo as it is planned now. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { everyPlan } from '../fixtures/every-plan.ts';
import { judgeChart } from './chart/judge.ts';
import { readChart } from './chart/read.ts';
import { workedExample } from './method/example.ts';

const page = readFileSync(new URL('../../docs/method.md', import.meta.url), 'utf8');

describe('docs/method.md', () => {
  it('has the worked example as it is now (else: npm run method)', () => {
    const demo = everyPlan.find(({ spec }) => spec === 'launch-feed-check-valve')?.plan;
    const planned = demo?.parts.find(({ part }) => part.id === 'seat-piece');
    if (!planned) throw new Error('no seat piece');
    expect(page).toContain(`<!-- example -->\n${workedExample(planned)}\n<!-- end of example -->`);
  });
  it('shows a chart that can be read and holds', () => {
    const text = /```json\n([\s\S]*?)```/.exec(page)?.[1] ?? '';
    const { holds, dimensions } = judgeChart(readChart(text));
    expect([holds, dimensions.map((one) => one.asPrinted)]).toEqual([true, [true]]);
  });
});
