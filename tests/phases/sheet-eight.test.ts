/**
 * The demo on A4 and Letter, in usual and big type, in millimetres and inches, for the bench, and the two of them that differ most for the learner,
 * the larger also in German: on every page of every one no text on another, over a frame or outside the margins, no word of a title broken, no mark
 * of a picture on another or outside its frame, every balloon and the datum placed.
 */
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { collisions } from '../../src/drawing/collisions.ts';
import { textBox } from '../../src/drawing/display.ts';
import { overlap } from '../../src/drawing/plane.ts';
import { loadWords } from '../../src/files.ts';
import type { Box, Page, PathItem, TextItem } from '../../src/model/display.ts';
import { WISHES } from '../../src/model/wish.ts';
import { sheet } from '../../src/phases/sheet.ts';
import { faultsOf } from '../drawing/sheet-boxes.ts';
import { everyPlan } from '../fixtures/every-plan.ts';
import { ADVANCES, allWords } from '../render/assets.ts';

const demo = everyPlan.find(({ spec }) => spec === 'launch-feed-check-valve');
if (!demo) throw new Error('the demo has no plan');
const { plan, stages } = demo;
const german = words(loadWords('de'));

const bench = WISHES.paper.flatMap((paper) =>
  WISHES.type.flatMap((type) => WISHES.units.map((units) => ({ paper, type, units, edition: 'bench' as const }))),
);
/** The learner's has three times the pages: the pair that differs in all of it. */
const learner = bench.filter((one) => (one.paper === 'a4') === (one.type === 'usual') && (one.paper === 'a4') === (one.units === 'mm'));
const inEnglish = [...bench, ...learner.map((one) => ({ ...one, edition: 'learner' as const }))].map((one) => ({ ...one, language: 'en' }));
/** Long words where there is least room for them. */
const longest = learner.filter((one) => one.type === 'big').map((one) => ({ ...one, edition: 'learner' as const, language: 'de' }));
const made = [...inEnglish, ...longest].map((wish) => ({
  ...wish,
  ...sheet(plan, stages, { words: wish.language === 'de' ? german : allWords(), advances: ADVANCES, ...wish }),
}));
const textsOf = (page: Page): readonly TextItem[] => page.items.filter((item) => item.kind === 'text');

describe.each(made)('$paper, $type type, $units, $edition, $language', ({ paper, type, document, drawn, view }) => {
  it('has no text on another or outside the margins', () => {
    expect(document.pages.flatMap((page, i) => faultsOf(page).map((fault) => `${i + 1}: ${fault}`))).toEqual([]);
  });
  it('has nothing on anything else in its pictures, nothing outside their frames, every balloon and the datum in its place', () => {
    expect(drawn.length).toBeGreaterThan(10);
    const found = drawn.flatMap(({ key, picture }) => [
      ...collisions(picture).map(([a, b]) => `${key}: ${a.what} on ${b.what}`),
      ...picture.unplaced.map((id) => `${key}: ${id} has no place`),
    ]);
    expect(found).toEqual([]);
  });
  it('breaks no word of what its sheets are called', () => {
    const called = view.pages.flatMap((page) => [page.name, page.kind === 'grip' ? page.grip : page.right]);
    const known = new Set(called.flatMap((words) => words.split(/\s+/)));
    const titles = document.pages
      .flatMap(textsOf)
      .filter((item) => item.font === 'narrow-bold' && item.size > (type === 'big' ? 6.7 : 5.35));
    expect(titles.length).toBeGreaterThan(document.pages.length);
    expect(titles.flatMap(({ text }) => text.split(/\s+/)).filter((word) => !known.has(word) && /[A-Z]{3}/.test(word))).toEqual([]);
  });
  it('writes over no frame', () => {
    const over = document.pages.flatMap((page, i) => {
      const frames = page.items.flatMap((item) => (item.kind === 'path' && isRounded(item) ? [extentOf(item)] : []));
      return textsOf(page).flatMap((item) => {
        const box = textBox(item);
        return frames.some((frame) => overlap(box, frame) && !isIn(box, frame)) ? [`${i + 1}: ${item.text}`] : [];
      });
    });
    expect(over).toEqual([]);
  });
  it('is of that paper, and says the same as on any other', () => {
    const sizes = new Set(document.pages.map(({ width, height }) => `${width}×${height}`));
    expect([...sizes]).toEqual([paper === 'a4' ? '210×297' : '215.9×279.4']);
    const least = type === 'big' ? 1.25 : 1;
    expect(Math.min(...document.pages.flatMap(textsOf).map((item) => item.size))).toBeGreaterThanOrEqual(2.5 * least - 0.01);
    expect(view.mark).toBe(plan.mark);
  });
});

/** A box with its corners taken off, as words stand in; no circle. */
const isRounded = ({ segments, stroke }: PathItem): boolean =>
  stroke !== undefined && segments.some((s) => s.to === 'line') && segments.filter((s) => s.to === 'curve').length === 4;

function extentOf({ segments }: PathItem): Box {
  const [xs, ys] = [segments.flatMap((s) => ('x' in s ? [s.x] : [])), segments.flatMap((s) => ('y' in s ? [s.y] : []))];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, w: Math.max(...xs) - x, h: Math.max(...ys) - y, what: 'frame' };
}

const isIn = (a: Box, b: Box): boolean => a.x >= b.x && a.y >= b.y && a.x + a.w <= b.x + b.w && a.y + a.h <= b.y + b.h;

describe('big type', () => {
  it('sets every operation with a size a quarter larger', () => {
    const largest = (type: 'usual' | 'big'): number => {
      const pages = made.filter((m) => m.type === type && m.edition === 'bench').flatMap((m) => m.document.pages);
      return Math.max(
        ...pages
          .flatMap(textsOf)
          .filter((item) => /^Ø \d/.test(item.text))
          .map((item) => item.size),
      );
    };
    expect(largest('big')).toBeCloseTo(1.25 * largest('usual'), 5);
  });
  it('tells the scale of a picture as it is printed', () => {
    const scales = made.flatMap((m) => m.document.pages.flatMap(textsOf)).flatMap((item) => /(\S+):1$/.exec(item.text)?.[1] ?? []);
    expect(new Set(scales.map(Number)).size).toBeGreaterThan(3);
    expect(scales.filter((scale) => ![20, 15, 12, 10, 8, 6, 5, 4, 3.5, 3, 2.5, 2, 1.5, 1.25, 1].includes(Number(scale)))).toEqual([]);
  });
});
