/** What a person may call his work is what the sheet can print: of every sign there is it is told alike by the reader and by the fonts. */
import { describe, expect, it } from 'vitest';
import { notPrinted } from '../../src/base/written.ts';
import { missing } from '../../src/drawing/measure.ts';
import { loadAssets } from '../../src/files.ts';
import type { Font } from '../../src/model/display.ts';

const { advances } = loadAssets();
const FONTS = Object.keys(advances) as readonly Font[];
/** U+0300 to U+036F: marks over the letter before, which take no room of their own. */
const isMark = (code: number): boolean => code >= 0x300 && code <= 0x36f;

describe('a sign in a title', () => {
  it('is taken where every font has it, and refused by itself where one has not', () => {
    const wrong: string[] = [];
    for (let code = 0x20; code < 0x10000; code++) {
      if ((code >= 0xd800 && code < 0xe000) || isMark(code)) continue;
      const sign = String.fromCodePoint(code);
      const has = FONTS.every((font) => missing(advances, font, sign).length === 0);
      if (has && notPrinted(sign) !== undefined) wrong.push(`refused: ${sign}`);
      if (!has && notPrinted(`plug ${sign}`) === undefined) wrong.push(`taken: U+${code.toString(16)}`);
    }
    expect(wrong).toEqual([]);
  });
  it.each([
    ['Emoji 🚂 plug', '🚂'],
    ['Ελληνικά', 'Ε'],
    ['\u001b[31m', 'U+001B'],
    ['Straße, Łódź: Ø 6 → ½ in', undefined],
  ])('%s', (title, first) => expect(notPrinted(title)).toBe(first));
});
