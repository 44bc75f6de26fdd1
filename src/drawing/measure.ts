/** How wide a text is on paper, and where it breaks, from the same table of advances for every output (no kerning, no ligatures). */
import type { Advances, Font } from '../model/display.ts';

/** Height of capitals and figures as a share of the font size: 698/1000, read from the font files (OS/2 sCapHeight, all four). */
const CAP_HEIGHT = 0.698;
const THOUSANDTHS = 1000;
/** Sums of advances carry binary dust: a line may be this much (mm) over its width. */
const DUST = 1e-6;

/** Width in mm of `text` at font size `size` (mm). Throws Error for a sign that the table lacks: ask `missing` first where the text is a user's. */
export function textWidth(advances: Advances, font: Font, size: number, text: string): number {
  const table = advances[font].advances;
  let sum = 0;
  for (const sign of text) {
    const advance = table[keyOf(sign)] ?? (isMark(sign) ? 0 : undefined);
    if (advance === undefined) throw new Error(`font '${font}' has no sign '${sign}' (in '${text}')`);
    sum += advance;
  }
  return (sum * size) / THOUSANDTHS;
}

/** The signs of `text` that the font lacks, each once, in their order. */
export function missing(advances: Advances, font: Font, text: string): readonly string[] {
  const table = advances[font].advances;
  return [...new Set(text)].filter((sign) => sign !== '\n' && table[keyOf(sign)] === undefined);
}

/**
 * Lines no wider than `width` (mm), broken at blanks; a word wider than that is broken between signs. '\n' always breaks, U+00A0 never.
 * An empty text is one empty line.
 */
export function wrap(advances: Advances, font: Font, size: number, text: string, width: number): readonly string[] {
  const fits = (line: string): boolean => textWidth(advances, font, size, line) <= width + DUST;
  return text.split('\n').flatMap((paragraph) => wrapParagraph(paragraph, fits));
}

function wrapParagraph(paragraph: string, fits: (line: string) => boolean): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of paragraph.split(' ').filter((w) => w !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = breakWord(word, fits);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
  }
  lines.push(line);
  return lines;
}

/** At least one sign a piece, so that it ends however narrow the column. */
function breakWord(word: string, fits: (line: string) => boolean): readonly string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const sign of word) {
    if (piece !== '' && !fits(piece + sign)) {
      pieces.push(piece);
      piece = '';
    }
    piece += sign;
  }
  return [...pieces, piece];
}

/** The first of `sizes` (largest first) at which `text` is no wider than `width`; undefined if none is. */
export function fitSize(advances: Advances, font: Font, sizes: readonly number[], text: string, width: number): number | undefined {
  return sizes.find((size) => textWidth(advances, font, size, text) <= width + DUST);
}

/** mm above the baseline, by the font's own ascent. */
export function ascent(advances: Advances, font: Font, size: number): number {
  return (advances[font].ascent * size) / THOUSANDTHS;
}

/** mm below the baseline, positive. */
export function descent(advances: Advances, font: Font, size: number): number {
  return (advances[font].descent * size) / THOUSANDTHS;
}

/** mm from the baseline to the top of capitals and figures. */
export function capHeight(size: number): number {
  return CAP_HEIGHT * size;
}

/** Signs for private use mark links in a text (sheet/meant.ts): they are not printed. */
function isMark(sign: string): boolean {
  return sign >= '\ue000' && sign <= '\uf8ff';
}

function keyOf(sign: string): string {
  return String(sign.codePointAt(0));
}
