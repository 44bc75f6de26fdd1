/** Sheets in the other languages: all that a sheet says can be said, and longer words neither meet nor leave the page. */
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { collisions } from '../../src/drawing/collisions.ts';
import { languages, loadWords } from '../../src/files.ts';
import { exercisePages } from '../../src/phases/sheet/exercise.ts';
import { sheet } from '../../src/phases/sheet.ts';
import { faultsOf } from '../drawing/sheet-boxes.ts';
import { everyPlan, oneInThree } from '../fixtures/every-plan.ts';
import { ADVANCES } from '../render/assets.ts';

const DEMO = 'launch-feed-check-valve';

describe.each(languages().filter((language) => language !== 'en'))('in %s', (language) => {
  const means = { words: words(loadWords(language)), advances: ADVANCES, language };

  it.each(oneInThree(1).map(({ spec }) => spec))('%s: no text on another or outside the margins', (spec) => {
    const { plan, stages } = everyPlan.find((one) => one.spec === spec) ?? expect.fail(spec);
    const { document } = sheet(plan, stages, means);
    expect(document.language).toBe(language);
    expect(document.pages.flatMap((page, i) => faultsOf(page).map((fault) => `${i + 1}: ${fault}`))).toEqual([]);
  });

  it.each(['bench', 'learner'] as const)('the demo for the %s: nothing in a picture on anything else or outside its frame', (edition) => {
    const { plan, stages } = everyPlan.find(({ spec }) => spec === DEMO) ?? expect.fail(DEMO);
    const { document, drawn } = sheet(plan, stages, { ...means, edition });
    expect(drawn.length).toBeGreaterThan(10);
    expect(drawn.flatMap(({ key, picture }) => collisions(picture).map(([a, b]) => `${key}: ${a.what} on ${b.what}`))).toEqual([]);
    expect(drawn.flatMap(({ key, picture }) => picture.unplaced.map((id) => `${key}: ${id}`))).toEqual([]);
    expect(document.pages.flatMap((page, i) => faultsOf(page).map((fault) => `${i + 1}: ${fault}`))).toEqual([]);
  });

  it('the exercise of the demo: no text on another or outside the margins', () => {
    const { plan } = everyPlan.find(({ spec }) => spec === DEMO) ?? expect.fail(DEMO);
    const { document } = exercisePages(
      plan,
      plan.parts.map(({ part }) => part.id),
      means,
    );
    expect(document.pages.flatMap((page, i) => faultsOf(page).map((fault) => `${i + 1}: ${fault}`))).toEqual([]);
  });

  it('what a design states in its own words is said in the language', () => {
    const own = /[a-z]{3,}/g;
    const sums = ['sqrt', 'acos', 'asin', 'atan', 'sin', 'cos', 'tan', 'min', 'max', 'sec', 'log'];
    const formulas = everyPlan.flatMap(({ plan }) => plan.fitting.derivations.map((d) => d.formula));
    const worded = formulas.filter((formula) => (formula.match(own) ?? []).some((word) => !sums.includes(word)));
    expect(worded.length).toBeGreaterThan(5);
    const slug = (text: string): string =>
      text
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-|-$/g, '');
    expect([...new Set(worded)].filter((formula) => !means.words.has(`formula.${slug(formula)}`))).toEqual([]);
  });
});
