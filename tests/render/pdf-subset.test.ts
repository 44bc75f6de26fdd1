/** A subset shows its glyphs as the whole font does: outlines and advances as another program reads them (fontkit, which pdfkit reads fonts with). */
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import type { Font } from '../../src/model/display.ts';
import { subsetOf } from '../../src/render/pdf-subset.ts';
import { FONTS } from './assets.ts';

type Glyph = { readonly id: number; readonly path: { toSVG(): string }; readonly advanceWidth: number };
type Read = { readonly numGlyphs: number; getGlyph(id: number): Glyph; glyphForCodePoint(codePoint: number): Glyph };
const { create } = createRequire(createRequire(import.meta.url).resolve('pdfkit'))('fontkit') as { create(bytes: Uint8Array): Read };

const shown = (glyph: Glyph): string => `${glyph.advanceWidth} ${glyph.path.toSVG()}`;

function numbered(ids: readonly number[]): { readonly glyphs: number[]; includeGlyph(id: number): number } {
  const glyphs = [0, ...ids];
  return { glyphs, includeGlyph: (id) => (glyphs.includes(id) ? glyphs.indexOf(id) : glyphs.push(id) - 1) };
}

describe.each<Font>(['text', 'narrow-bold'])('of %s', (name) => {
  const whole = create(FONTS[name]);
  const ids = Array.from('aä ⌀Éi', (sign) => whole.glyphForCodePoint(sign.codePointAt(0) ?? 0).id);
  const subset = numbered(ids);
  const own = create(subsetOf(FONTS[name], subset));
  it('has the glyphs asked for as they were, and the parts of composite ones', () => {
    expect(subset.glyphs.length).toBeGreaterThan(ids.length + 1);
    expect(own.numGlyphs).toBe(subset.glyphs.length);
    expect(subset.glyphs.map((_, i) => shown(own.getGlyph(i)))).toEqual(subset.glyphs.map((id) => shown(whole.getGlyph(id))));
  });
  it('has the last glyph of the font with its advance', () => {
    const last = create(subsetOf(FONTS[name], numbered([whole.numGlyphs - 1])));
    expect(shown(last.getGlyph(1))).toBe(shown(whole.getGlyph(whole.numGlyphs - 1)));
  });
});
