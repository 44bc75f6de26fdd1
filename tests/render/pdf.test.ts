import { afterEach, describe, expect, it } from 'vitest';
import { packed } from '../../src/cli/packed.ts';
import { textWidth } from '../../src/drawing/measure.ts';
import type { Document, Font, Item, TextItem } from '../../src/model/display.ts';
import { writePdf } from '../../src/render/pdf.ts';
import { ADVANCES, FONTS } from './assets.ts';
import { readPdf } from './read-pdf.ts';

const words = (text: string, x: number, y: number, more: Partial<TextItem> = {}): TextItem => {
  const { font = 'text', size = 4 } = more;
  return { kind: 'text', text, x, y, size, font, ink: 'black', width: textWidth(ADVANCES, font, size, text), ...more };
};
const documentOf = (pages: readonly (readonly Item[])[], title = 'Trial'): Document => ({
  title,
  language: 'en',
  mark: '7c1e90d2',
  pages: pages.map((items, i) => ({ width: 210, height: 297, items, label: `S-${i + 1}`, heading: i < 2 ? 'First' : 'Second' })),
});

describe('what is written is read back', () => {
  it.each<[Font, string]>([
    ['text', 'from A; facing tool, HSS'],
    ['text-bold', 'Turn for M10×1'],
    ['narrow', '+0.05 −0.08 ±0.05 Ø 30° ½ fi fl AV'],
    ['narrow-bold', 'Ø 9.90'],
  ])('%s at its place, as wide as the table measured', async (font, text) => {
    const item = words(text, 23.4, 56.7, { font, size: 5.2 });
    const [page] = (await readPdf(await writePdf(documentOf([[item]]), FONTS))).pages;
    const [first] = page?.texts ?? [];
    expect(page?.texts.map((t) => t.text).join('')).toBe(text);
    expect(first?.x).toBeCloseTo(23.4, 2);
    expect(first?.y).toBeCloseTo(56.7, 2);
    expect(first?.size).toBeCloseTo(5.2, 2);
    const last = page?.texts.at(-1);
    expect((last?.x ?? 0) + (last?.width ?? 0) - 23.4).toBeCloseTo(item.width, 1);
  });

  it('a text that reads upward stands above its place, not beside it', async () => {
    const content = new TextDecoder('latin1').decode(await writePdf(documentOf([[words('12.00', 30, 40, { turn: 90 })]]), FONTS, 'no'));
    // text space: x goes up the page (negative y of a page that counts downward), letters' tops point to the left
    expect(content).toContain('0 -1 -1 0 3000 4000 Tm');
  });

  it('page size, labels, outline, title, language and mark', async () => {
    const bytes = await writePdf(documentOf([[words('a', 20, 20)], [words('b', 20, 20)], [words('c', 20, 20)]]), FONTS);
    const read = await readPdf(bytes);
    expect(read.pages.map((p) => [Math.round(p.width), Math.round(p.height)])).toEqual([
      [210, 297],
      [210, 297],
      [210, 297],
    ]);
    expect(read.labels).toEqual(['S-1', 'S-2', 'S-3']);
    expect(read.outline).toEqual(['First', 'Second']);
    expect(read.info).toMatchObject({ Title: 'Trial', Keywords: '7c1e90d2', Language: 'en', CreationDate: 'D:20000101000000Z' });
  });

  it('a title with signs that XML keeps for itself', async () => {
    const read = await readPdf(await writePdf(documentOf([[words('a', 20, 20)]], 'Valve & nut <6 mm>'), FONTS));
    expect(read.info).toMatchObject({ Title: 'Valve & nut <6 mm>' });
    expect(read.xmpTitle).toBe('Valve & nut <6 mm>');
  });

  it('the same bytes end with the end mark and hold device RGB only', async () => {
    const box: Item = {
      kind: 'path',
      segments: [
        { to: 'move', x: 1, y: 1 },
        { to: 'line', x: 9, y: 1 },
        { to: 'curve', x1: 9, y1: 2, x2: 8, y2: 3, x: 7, y: 3 },
        { to: 'close' },
      ],
      fill: 'taken',
      stroke: { ink: 'new', width: 0.5, dash: [2, 1] },
    };
    const text = new TextDecoder('latin1').decode(await writePdf(documentOf([[box, words('a', 20, 20)]]), FONTS, 'no'));
    expect(text.trimEnd().endsWith('%%EOF')).toBe(true);
    expect(text).toContain('100 100 m 900 100 l 900 200 800 300 700 300 c h B');
    expect(text).toContain('[200 100] 0 d');
    expect(text).not.toMatch(/DeviceCMYK|DeviceGray| k\b/);
  });
});

describe('same document, same bytes', () => {
  const zone = process.env.TZ;
  afterEach(() => {
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  });
  const document = documentOf([[words('Ø 9.90', 20, 20, { font: 'narrow-bold' }), words('sizes', 20, 30)]]);

  it('twice, and in another time zone', async () => {
    process.env.TZ = 'UTC';
    const here = await writePdf(document, FONTS);
    expect(await writePdf(document, FONTS)).toEqual(here);
    process.env.TZ = 'Asia/Tokyo';
    expect(new Date('2000-01-01T00:00:00Z').getTimezoneOffset()).toBe(-540);
    expect(await writePdf(document, FONTS)).toEqual(here);
  });

  it('packed by another means, it says the same, and every stream went through that', async () => {
    let streams = 0;
    const counted = (bytes: Uint8Array): Uint8Array => {
      streams++;
      return packed(bytes);
    };
    const other = await writePdf(document, FONTS, counted);
    const [usual, again] = [await readPdf(await writePdf(document, FONTS)), await readPdf(other)];
    expect(again.pages.map(({ texts }) => texts)).toEqual(usual.pages.map(({ texts }) => texts));
    expect(new TextDecoder('latin1').decode(other).split('/FlateDecode').length - 1).toBe(streams);
    expect(streams).toBeGreaterThan(5);
  });

  it('another mark gives another file id', async () => {
    const id = (bytes: Uint8Array): string | undefined => /\/ID \[<([0-9a-f]+)>/.exec(new TextDecoder('latin1').decode(bytes))?.[1];
    const one = id(await writePdf(document, FONTS));
    expect(one).toMatch(/^[0-9a-f]{32}$/);
    expect(id(await writePdf({ ...document, mark: '00000000' }, FONTS))).not.toBe(one);
  });
});

describe('what cannot be written is refused', () => {
  it.each<[string, Font, string]>([
    ['☐ tick', 'text', '☐ (text)'],
    ['⌀ 4', 'narrow-bold', '⌀ (narrow-bold)'],
  ])('%s: the fonts lack a sign', async (text, font, named) => {
    const item: TextItem = { kind: 'text', text, x: 20, y: 20, size: 4, font, ink: 'black', width: 10 };
    await expect(writePdf(documentOf([[item]]), FONTS)).rejects.toThrow(`the fonts lack these signs: ${named}`);
  });

  it('a place that is no number', async () => {
    await expect(writePdf(documentOf([[words('a', Number.NaN, 20)]]), FONTS)).rejects.toThrow('not a number on paper');
  });
});
