/** Texts are measured as the font files say: the table against fontkit, which pdfkit writes with. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { create } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { fitSize, missing, textWidth, wrap } from '../../src/drawing/measure.ts';
import type { Font } from '../../src/model/display.ts';
import { FONT_FILES, readAdvances } from '../programs/write-advances.ts';
import { ADVANCES } from './stages.ts';

const FOLDER = new URL('../../templates/fonts', import.meta.url).pathname;
const FONTS: readonly Font[] = ['text', 'text-bold', 'narrow', 'narrow-bold'];
const UNLINKED = { kern: false, liga: false, clig: false, calt: false, ccmp: false };

describe('the table of advances', () => {
  it('is what the font files say', () => {
    expect(ADVANCES).toEqual(readAdvances(FOLDER));
  });

  it.each(FONTS)('measures lines of %s as fontkit lays them out without kerning and ligatures', (font) => {
    const file = create(readFileSync(`${FOLDER}/${FONT_FILES[font]}`));
    for (const words of [
      'Turn for M10×1, 6g',
      'Ø 9.90 +0.05 −0.08',
      'first fit: AVATAR, flüchtig, ½″ ≤ 3′',
      'Öl, Größe, déjà; 118° ±0.5 µm',
    ]) {
      const laid = file.layout(words, UNLINKED).advanceWidth / file.unitsPerEm;
      expect(textWidth(ADVANCES, font, 10, words)).toBeCloseTo(laid * 10, 6);
    }
  });

  it.each(FONTS)('has figures of one width in %s, so that columns of sizes line up', (font) => {
    expect(new Set([...'0123456789'].map((sign) => textWidth(ADVANCES, font, 1, sign))).size).toBe(1);
  });

  it.each(FONTS)('has the signs that the sheets use in %s, and lacks those that are drawn as paths', (font) => {
    expect(missing(ADVANCES, font, '×±−·–—°øØµ≤≥→′″½¼¾⅛⅜⅝⅞äöüÄÖÜßéèêàçœ„“”‘’\u00a0')).toEqual([]);
    expect(missing(ADVANCES, font, '☐a☑⌀▽☐')).toEqual(['☐', '☑', '⌀', '▽']);
  });

  it('refuses to guess the width of a sign that it lacks', () => {
    expect(() => textWidth(ADVANCES, 'text', 3, 'tick ☐')).toThrow(/no sign '☐'/);
  });
});

describe('wrapping', () => {
  const word = fc.string({ unit: fc.constantFrom(...'abcdefgMW×0123.,'), minLength: 1, maxLength: 14 });

  it('keeps every word in order and no line wider than asked, unless it is one sign', () => {
    fc.assert(
      fc.property(fc.array(word, { maxLength: 20 }), fc.integer({ min: 1, max: 60 }), (words, width) => {
        const lines = wrap(ADVANCES, 'text', 3, words.join(' '), width);
        expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''));
        for (const line of lines) if ([...line].length > 1) expect(textWidth(ADVANCES, 'text', 3, line)).toBeLessThanOrEqual(width + 1e-6);
      }),
    );
  });

  it.each([
    ['breaks at a forced break and keeps an empty line', 'one\n\ntwo', 50, ['one', '', 'two']],
    ['gives one empty line for an empty text', '', 10, ['']],
  ])('%s', (_, words, width, lines) => {
    expect(wrap(ADVANCES, 'text', 3, words, width)).toEqual(lines);
  });

  it('does not break at a no-break blank', () => {
    const width = textWidth(ADVANCES, 'text', 3, 'cutting 0.5') + 1;
    expect(wrap(ADVANCES, 'text', 3, 'cutting 0.5 mm', width)).toEqual(['cutting 0.5', 'mm']);
    expect(wrap(ADVANCES, 'text', 3, 'cutting 0.5\u00a0mm', width)).toEqual(['cutting', '0.5\u00a0mm']);
  });

  it('takes the largest size that fits', () => {
    const width = textWidth(ADVANCES, 'narrow', 4, 'Second grip');
    expect(fitSize(ADVANCES, 'narrow', [6, 5, 4, 3], 'Second grip', width)).toBe(4);
    expect(fitSize(ADVANCES, 'narrow', [6, 5], 'Second grip', width)).toBeUndefined();
  });
});
