/** Dangers at the foot of a page: each with the signs that were chosen for it, said in words too; and they cost the page no room. */
import { describe, expect, it } from 'vitest';
import { words as wordsOf } from '../../src/base/words.ts';
import { layOut, numbered } from '../../src/drawing/sheet/layout.ts';
import { pageOf } from '../../src/drawing/sheet/page.ts';
import { loadWords } from '../../src/files.ts';
import { signedCautions, signsOf } from '../../src/handbook/signs.ts';
import type { Item } from '../../src/model/display.ts';
import type { SheetView } from '../../src/model/sheet.ts';
import { viewOf } from '../../src/phases/sheet.ts';
import { everyPlan, oneInThree } from '../fixtures/every-plan.ts';
import { ADVANCES } from '../render/assets.ts';

/** mm: common practice, no source: what is told apart at arm's length. */
const LEAST_SIGN = 4;
const NOTHING = { width: 0, height: 0, items: [], boxes: [], alt: '' };
const none = { grip: () => undefined, strip: () => [], lesson: () => undefined, parts: () => [] };
const means = { ...none, page: pageOf({}), advances: ADVANCES, whole: () => NOTHING, arrangement: () => NOTHING };

const gripsOf = (spec: string, language: string): SheetView => {
  const { plan } = everyPlan.find((one) => one.spec === spec) ?? expect.fail(spec);
  const view = numbered(viewOf(plan, { words: wordsOf(loadWords(language)), language }), {});
  return { ...view, pages: view.pages.filter(({ kind }) => kind === 'grip') };
};
const headings = (view: SheetView): readonly string[] => layOut(view, means).document.pages.map(({ heading }) => heading);
const unsigned = (view: SheetView): SheetView => ({
  ...view,
  pages: view.pages.map((page) => ({ ...page, cautions: page.cautions.map((caution) => ({ ...caution, signs: [] })) })),
});
const altOf = (item: Item): string | undefined => item.within?.flatMap((m) => (m.is === 'figure' ? [m.alt] : []))[0];

describe.each(oneInThree(1).map(({ spec }) => spec))('%s', (spec) => {
  it.each(['en', 'de'])('no grip takes a sheet more for its signs (%s)', (language) => {
    const view = gripsOf(spec, language);
    expect(headings(view)).toEqual(headings(unsigned(view)));
  });
});

describe('at the foot of the grips of the demo', () => {
  const view = gripsOf('launch-feed-check-valve', 'en');
  const { pages } = layOut(view, means).document;

  it('every page carries the signs of its cautions, in their order, described', () => {
    for (const page of view.pages) {
      const asked = page.cautions.flatMap(({ signs }) => (signs.length > 0 ? [signs.map(({ name }) => name).join(' · ')] : []));
      const drawn = pages.filter(({ heading }) => heading === page.heading).map(({ items }) => items.flatMap((i) => altOf(i) ?? []));
      expect(asked.length).toBeGreaterThan(0);
      for (const alts of drawn)
        expect(alts.filter((alt, i) => /^[MPW]\d{3} /.test(alt) && alt !== alts[i - 1])).toEqual(
          asked.filter((name, i) => name !== asked[i - 1]),
        );
    }
  });

  it('none is drawn smaller than a person makes out', () => {
    for (const { items } of pages) {
      const discs = items.filter((item) => altOf(item)?.startsWith('M'));
      const ys = discs.flatMap((item) => (item.kind === 'path' ? item.segments.flatMap((s) => (s.to === 'close' ? [] : [s.y])) : []));
      // a disc is drawn to 0.96 of its frame
      if (ys.length > 0) expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThanOrEqual(0.95 * LEAST_SIGN);
    }
  });

  it('at a spindle eyes are covered and no gloves worn; at the bench neither is asked', () => {
    const signs = (name: RegExp): readonly string[] =>
      view.pages.filter(({ heading }) => name.test(heading)).flatMap((p) => p.cautions.flatMap((c) => c.signs.map(({ id }) => id)));
    expect(signs(/Seat piece.*First grip/i)).toEqual(expect.arrayContaining(['M004', 'P028', 'W022']));
    expect(signs(/bench/i)).toEqual(expect.arrayContaining(['W017', 'W023']));
    expect(signs(/bench/i)).not.toContain('P028');
  });
});

describe('every caution that the words have', () => {
  const blocks = Object.values(loadWords('en')).flatMap((text) =>
    [...text.matchAll(/inline "([^"]+\.caution)"/g)].map(([, id = '']) => id),
  );
  it('has had its signs chosen, or that it has none', () => {
    expect(blocks.length).toBeGreaterThan(20);
    expect(blocks.filter((id) => !signedCautions.includes(id))).toEqual([]);
    expect(blocks.filter((id) => signsOf(id).length > 0).length).toBeGreaterThan(20);
  });
});
