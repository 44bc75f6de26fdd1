/** A lesson's picture is as high as usual where its sheet is full; what a sheet has left goes to its pictures, the same to each. */
import { describe, expect, it } from 'vitest';
import { polyline } from '../../src/drawing/display.ts';
import { layOut } from '../../src/drawing/sheet/layout.ts';
import { pageOf } from '../../src/drawing/sheet/page.ts';
import type { LessonShown, SheetView } from '../../src/model/sheet.ts';
import { ADVANCES } from '../render/assets.ts';

const lesson = (step: number, words: string): LessonShown => ({
  ...{ part: 'plug' as LessonShown['part'], step, number: `${step}0`, title: 'Face', note: '', signs: [], facts: [] },
  boxes: [{ heading: 'Why here', text: words }],
});
const view = (lessons: readonly LessonShown[]): SheetView => ({
  ...{ title: 'Plug', language: 'en', mark: '0', foot: 'mm', sheetNo: '{n} of {of}', goesOn: 'continued', toSheet: '{n} {heading}' },
  pages: [
    {
      ...{ kind: 'plain', key: 'lessons', heading: 'Plug', name: 'Plug', about: '', right: '', cautions: [] },
      sections: [{ kind: 'lessons', title: '', legend: { made: 'new', taken: 'taken' }, lessons }],
    },
  ],
});

/** The picture is so much of its frame high: a line from the top. `frames`, `widths`: the last that was asked for each lesson. */
function laid(lessons: readonly LessonShown[], share = 1) {
  const frames = new Map<number, number>();
  const widths = new Map<number, number>();
  const empty = { width: 0, height: 0, items: [], boxes: [], alt: '' };
  const { pages } = layOut(view(lessons), {
    ...{ page: pageOf({}), advances: ADVANCES, grip: () => undefined, strip: () => [], parts: () => [] },
    ...{ whole: () => empty, arrangement: () => empty },
    lesson: ({ step }, { width, height }) => {
      frames.set(step, height);
      widths.set(step, width);
      const line = [0, share * height].map((y) => ({ x: 1, y }));
      return { width, height, items: [polyline(line, { ink: 'black', width: 0.3 })], boxes: [], alt: 'a line' };
    },
  }).document;
  const tenths = (all: Iterable<number>): readonly number[] => [...all].map((mm) => Math.round(mm * 10) / 10);
  return { sheets: pages.length, frames: tenths(frames.values()), widths: tenths(widths.values()) };
}

describe('pictures of lessons', () => {
  it('of one alone: as wide as the page, as high as makes it clearer, and no higher', () => {
    expect(laid([lesson(1, 'Nothing after it spoils it.')])).toEqual({ sheets: 1, frames: [150], widths: [184] });
  });
  it('of one alone with much to say: beside its figures', () => {
    const { sheets, widths } = laid([lesson(1, 'Word '.repeat(900))]);
    expect(sheets).toBe(1);
    expect(widths).toEqual([124]);
  });
  it('of work that is long and thin: as wide as the page, though two share the sheet', () => {
    const two = [1, 2].map((step) => lesson(step, 'Short.'));
    expect(laid(two).widths).toEqual([124, 124]);
    expect(laid(two, 0.2)).toMatchObject({ sheets: 1, widths: [184, 184] });
  });
  it('of two: the same more for each, so much that the sheet is full', () => {
    const { sheets, frames } = laid([lesson(1, 'Short.'), lesson(2, 'Short.')]);
    const [one = 0, two = 0] = frames;
    expect(sheets).toBe(1);
    expect(one).toBe(two);
    expect(one).toBeGreaterThan(80);
    // three stand on one sheet as well: what two leave is not lost
    expect(laid([1, 2, 3].map((step) => lesson(step, 'Short.'))).sheets).toBe(1);
  });
  it('of as many as fill a sheet: no lower than usual', () => {
    const { sheets, frames } = laid([1, 2, 3, 4, 5, 6, 7].map((step) => lesson(step, 'Word '.repeat(120))));
    expect(sheets).toBeGreaterThan(1);
    expect(Math.min(...frames)).toBeGreaterThanOrEqual(47);
  });
});
