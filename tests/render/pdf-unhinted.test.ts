/** A font without hints is the same font: its outlines as another program reads them. */
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import type { Font } from '../../src/model/display.ts';
import { unhinted } from '../../src/render/pdf-unhinted.ts';
import { FONTS } from './assets.ts';

type Read = {
  readonly numGlyphs: number;
  readonly directory: { readonly tables: Readonly<Record<string, unknown>> };
  getGlyph(id: number): { readonly path: { toSVG(): string }; readonly advanceWidth: number };
};
const { create } = createRequire(createRequire(import.meta.url).resolve('pdfkit'))('fontkit') as { create(bytes: Uint8Array): Read };

const outlines = (font: Read): readonly string[] =>
  Array.from({ length: font.numGlyphs }, (_, id) => `${font.getGlyph(id).advanceWidth} ${font.getGlyph(id).path.toSVG()}`);

describe.each<Font>(['text', 'narrow-bold'])('%s without hints', (name) => {
  const whole = FONTS[name];
  const bare = unhinted(whole);
  const font = create(bare);
  it('has every glyph as it was, composed ones among them', () => {
    const drawn = outlines(font);
    expect(drawn).toEqual(outlines(create(whole)));
    expect(drawn.filter((outline) => outline.includes('Q') || outline.includes('L')).length).toBeGreaterThan(200);
  });
  it('has no program, and is the smaller for it', () => {
    expect(Object.keys(font.directory.tables)).not.toEqual(expect.arrayContaining(['fpgm']));
    expect(Object.keys(font.directory.tables)).toEqual(expect.arrayContaining(['glyf', 'loca', 'head', 'hmtx', 'maxp']));
    expect(bare.length).toBeLessThan(whole.length * 0.95);
    expect(unhinted(bare)).toEqual(bare);
  });
  it('says of each table what it adds up to (OpenType, table directory)', () => {
    const view = new DataView(bare.buffer, bare.byteOffset, bare.byteLength);
    for (let i = 0; i < view.getUint16(4); i++) {
      const [sum, from, size] = [4, 8, 12].map((more) => view.getUint32(12 + 16 * i + more));
      const words = Array.from({ length: Math.ceil((size ?? 0) / 4) }, (_, k) => view.getUint32((from ?? 0) + 4 * k));
      expect(words.reduce((all, word) => (all + word) % 2 ** 32, 0)).toBe(sum);
    }
  });
});
