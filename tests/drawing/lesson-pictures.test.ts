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

/** The picture fills its frame: a line from top to bottom. `frames`: the last that was asked for each lesson. */
function laid(lessons: readonly LessonShown[]) {
  const frames = new Map<number, number>();
  const empty = { width: 0, height: 0, items: [], boxes: [], alt: '' };
  const { pages } = layOut(view(lessons), {
    ...{ page: pageOf({}), advances: ADVANCES, grip: () => undefined, strip: () => [], parts: () => [] },
    ...{ whole: () => empty, arrangement: () => empty },
    lesson: ({ step }, { width, height }) => {
      frames.set(step, height);
      const line = [0, height].map((y) => ({ x: 1, y }));
      return { width, height, items: [polyline(line, { ink: 'black', width: 0.3 })], boxes: [], alt: 'a line' };
    },
  }).document;
  return { sheets: pages.length, frames: [...frames.values()].map((height) => Math.round(height * 10) / 10) };
}

describe('pictures of lessons', () => {
  it('of one alone: as high as makes it clearer, and no higher', () => {
    expect(laid([lesson(1, 'Nothing after it spoils it.')])).toEqual({ sheets: 1, frames: [95] });
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
