/**
 * Writes templates/fonts/advances.json, the table with which every output measures text, from the font files beside it.
 * Run (Node 20 has no type stripping): npx esbuild tests/programs/write-advances.ts --bundle --platform=node --format=esm --packages=external --outfile=out/write-advances.mjs && node out/write-advances.mjs
 */
/// <reference path="./fontkit.d.ts" />
import { readFileSync, writeFileSync } from 'node:fs';
import { create } from 'fontkit';
import type { Advances, Font } from '../../src/model/display.ts';

export const FONT_FILES: Readonly<Record<Font, string>> = {
  text: 'IBMPlexSans-Regular.ttf',
  'text-bold': 'IBMPlexSans-SemiBold.ttf',
  narrow: 'IBMPlexSansCondensed-Medium.ttf',
  'narrow-bold': 'IBMPlexSansCondensed-SemiBold.ttf',
};
const FONTS: readonly Font[] = ['text', 'text-bold', 'narrow', 'narrow-bold'];
/** Latin, Latin-1 and Latin Extended-A in whole; then the signs of the trade. Signs that a font lacks are left out, never guessed. */
const LATIN = { from: 0x20, to: 0x17f } as const;
const SIGNS = '×±−·–—°øØµμ≤≥≈→←↑↓′″½¼¾⅓⅔⅛⅜⅝⅞‘’‚“”„…•‹›«»€™ΔΩαβπρ√✓\u00a0\u2009\u202f';

/** The table as the font files say it, in thousandths of the font size. Keys are code points in decimal. */
export function readAdvances(folder: string): Advances {
  const rows = FONTS.map((font) => [font, readFont(`${folder}/${FONT_FILES[font]}`)] as const);
  return Object.fromEntries(rows) as Advances;
}

function readFont(file: string): Advances[Font] {
  const font = create(readFileSync(file));
  const thousandths = (units: number): number => Math.round((units * 1000) / font.unitsPerEm);
  const advances: Record<string, number> = {};
  for (const point of points()) {
    if (font.hasGlyphForCodePoint(point)) advances[String(point)] = thousandths(font.glyphForCodePoint(point).advanceWidth);
  }
  return { advances, ascent: thousandths(font.ascent), descent: thousandths(-font.descent) };
}

function points(): readonly number[] {
  const latin = Array.from({ length: LATIN.to - LATIN.from + 1 }, (_, i) => LATIN.from + i);
  const signs = [...SIGNS].map((sign) => sign.codePointAt(0) ?? 0);
  // controls 0x7f-0x9f have no glyph of their own
  return [...new Set([...latin, ...signs])].filter((p) => p < 0x7f || p > 0x9f).sort((a, b) => a - b);
}

if (process.argv[1]?.includes('write-advances')) {
  const folder = `${process.cwd()}/templates/fonts`;
  writeFileSync(`${folder}/advances.json`, `${JSON.stringify(readAdvances(folder))}\n`);
}
