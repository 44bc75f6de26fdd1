/** What goes on over several sheets is shared out: none is left with a panel alone. */
import { describe, expect, it } from 'vitest';
import { layOut } from '../../src/drawing/sheet/layout.ts';
import { pageOf } from '../../src/drawing/sheet/page.ts';
import type { SheetView } from '../../src/model/sheet.ts';
import { ADVANCES } from '../render/assets.ts';

const view = (notes: number, last: readonly string[] = ['The one panel at the end.']): SheetView => ({
  ...{ title: 'Plug', language: 'en', mark: '0', foot: 'mm', sheetNo: '{n} of {of}', goesOn: 'continued', toSheet: '{n} {heading}' },
  pages: [
    {
      ...{ kind: 'plain', key: 'cover', heading: 'Plug', name: 'Plug', about: '', right: '', cautions: [] },
      sections: [
        { kind: 'notes', title: 'Ready', items: Array.from({ length: notes }, (_, i) => `Thing ${i}`), manner: 'plain' },
        { kind: 'notes', title: 'Mind', items: last, manner: last.length === 1 ? 'panel' : 'plain' },
      ],
    },
  ],
});
const means = {
  page: pageOf({}),
  advances: ADVANCES,
  grip: () => undefined,
  strip: () => [],
  lesson: () => undefined,
  whole: () => ({ width: 0, height: 0, items: [], boxes: [], alt: '' }),
  arrangement: () => ({ width: 0, height: 0, items: [], boxes: [], alt: '' }),
  parts: () => [],
};

describe('a page that goes on', () => {
  it.each([
    [30, 1],
    [46, 2],
    [47, 2],
    [60, 2],
    [95, 3],
  ])('%i notes and a panel on %i sheets, each at least half as full as the fullest', (notes, sheets) => {
    const { pages } = layOut(view(notes), means).document;
    const lines = pages.map((page) => page.items.filter((item) => item.kind === 'text' && /^Thing|^The one/.test(item.text)).length);
    expect(pages.length).toBe(sheets);
    expect(lines.reduce((sum, n) => sum + n, 0)).toBe(notes + 1);
    expect(Math.min(...lines) * 2).toBeGreaterThanOrEqual(Math.max(...lines));
  });

  it('parts no section where that costs no sheet and leaves none nearly empty', () => {
    const { pages } = layOut(
      view(
        38,
        Array.from({ length: 18 }, (_, i) => `The one ${i}`),
      ),
      means,
    ).document;
    const begins = pages.map((page) =>
      page.items.flatMap((item) => (item.kind === 'text' && /^Thing|^The one/.test(item.text) ? [item.text.slice(0, 5)] : [])),
    );
    expect(begins.map((all) => [...new Set(all)])).toEqual([['Thing'], ['The o']]);
    expect(begins.map((all) => all.length)).toEqual([38, 18]);
  });
});
