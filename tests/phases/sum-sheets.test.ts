/** A face that is cut to a measured sum names the sheet on which that sum stands, as other references do. */
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { loadWords } from '../../src/files.ts';
import { sheet } from '../../src/phases/sheet.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { ADVANCES } from '../render/assets.ts';

const isFitted = ({ plan }: (typeof everyPlan)[number]): boolean =>
  plan.fitting.parts.some(({ features }) => features.some((f) => f.kind === 'end' && f.fitted));
const [one] = everyPlan.filter(isFitted);
const [other] = everyPlan.filter((spec) => !isFitted(spec));

describe.each([
  ['en', /see Assembly, sheet (\d+)/],
  ['de', /siehe Zusammenbau, Blatt (\d+)/],
] as const)('the sheet of a measured sum, in %s', (language, named) => {
  const made = (spec: typeof one) => {
    if (!spec) throw new Error('no such spec');
    return sheet(spec.plan, spec.stages, { words: words(loadWords(language)), advances: ADVANCES, language });
  };
  it('is the one where the sum stands', () => {
    const { view, document } = made(one);
    const notes = view.pages.flatMap((page) =>
      page.kind === 'grip' ? page.blocks.flatMap(({ rows }) => rows.map(({ note }) => note)) : [],
    );
    const numbers = notes.flatMap((note) => named.exec(note)?.[1] ?? []);
    expect(numbers).toHaveLength(1);
    const sections = view.pages.flatMap((page) => (page.kind === 'plain' ? page.sections : []));
    const sum = sections.find(({ key }) => key === 'sums');
    const page = document.pages[Number(numbers[0]) - 1];
    expect(sum?.title).toBeTruthy();
    expect(JSON.stringify(page?.items)).toContain(sum?.title);
  });
  it('is named nowhere else', () => expect(JSON.stringify(made(other).view)).not.toMatch(named));
});
