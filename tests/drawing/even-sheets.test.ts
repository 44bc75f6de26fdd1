/** What goes on over several sheets is shared out: none is left with a panel alone. */
import { describe, expect, it } from 'vitest';
import { layOut } from '../../src/drawing/sheet/layout.ts';
import { pageOf } from '../../src/drawing/sheet/page.ts';
import type { SheetView } from '../../src/model/sheet.ts';
import { ADVANCES } from '../render/assets.ts';

const view = (notes: number): SheetView => ({
  ...{ title: 'Plug', language: 'en', mark: '0', foot: 'mm', sheetNo: '{n} of {of}', goesOn: 'continued', toSheet: '{n} {heading}' },
  pages: [
    {
      ...{ kind: 'plain', key: 'cover', heading: 'Plug', name: 'Plug', about: '', right: '', cautions: [] },
      sections: [
        { kind: 'notes', title: 'Ready', items: Array.from({ length: notes }, (_, i) => `Thing ${i}`), manner: 'plain' },
        { kind: 'notes', title: 'Mind', items: ['The one panel at the end.'], manner: 'panel' },
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
});
