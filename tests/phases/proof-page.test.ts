/** The page of the proof: a sceptic finds every dimension at its worst, and the corner of every worst case that more than one cut makes. */
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { loadWords } from '../../src/files.ts';
import { proofPage } from '../../src/phases/sheet/proof.ts';
import { wordsIn } from '../../src/phases/sheet/said.ts';
import { everyPlan } from '../fixtures/every-plan.ts';

const said = wordsIn(words(loadWords()), 'mm');

describe('the proof’s page', () => {
  it.each(everyPlan.map(({ spec, plan }) => [spec, plan] as const))('%s: a row for each dimension through several cuts', (_, plan) => {
    const section = proofPage(plan, said).sections.find((one) => one.kind === 'table' && one.title === said.say('proof.corners'));
    const rows = section?.kind === 'table' ? section.rows : [];
    const several = plan.parts.flatMap(({ proof }) =>
      proof.claims.filter(({ worst }) => worst?.corners && Object.keys({ ...worst.corners.lo, ...worst.corners.hi }).length > 1),
    );
    expect(rows.filter((row) => row[4] !== '')).toHaveLength(several.length);
    for (const row of rows) expect(row[3]).not.toBe('');
  });
  it('tells which cuts stood at which end', () => {
    const demo = everyPlan.find(({ spec }) => spec === 'launch-feed-check-valve')?.plan;
    if (!demo) throw new Error('no demo');
    const cells = proofPage(demo, said).sections.flatMap((one) =>
      one.kind === 'table' ? one.rows.map((row) => row.slice(1).join(' | ')) : [],
    );
    expect(cells).toContain('C to D | 4.90 – 5.10 | D-K −, K-C + | D-K +, K-C −');
  });
});
