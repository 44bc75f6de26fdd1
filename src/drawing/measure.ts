/** How wide a text is on paper, and where it breaks, from the same table of advances for every output (no kerning, no ligatures). */
import type { Advances, Font } from '../model/display.ts';

/** Height of capitals and figures as a share of the font size: 698/1000, read from the font files (OS/2 sCapHeight, all four). */
const CAP_HEIGHT = 0.698;
const THOUSANDTHS = 1000;
/** Sums of advances carry binary dust: a line may be this much (mm) over its width. */
const DUST = 1e-6;

/** Width in mm of `text` at font size `size` (mm). Throws Error for a sign that the table lacks: ask `missing` first where the text is a user's. */
export function textWidth(advances: Advances, font: Font, size: number, text: string): number {
  return (widthOf(advances, font, text) * size) / THOUSANDTHS;
}

/** In thousandths of the font size: whole numbers, so that sums of parts are the sum of the whole. */
function widthOf(advances: Advances, font: Font, text: string): number {
  const units = unitsOf(advances[font].advances);
  let sum = 0;
  for (let i = 0; i < text.length; i++) {
    const advance = units[text.charCodeAt(i)] ?? LACKS;
    if (advance === LACKS) return widthBySigns(advances, font, text);
    sum += advance;
  }
  return sum;
}

/** The same for what may have signs of two code units, or such as the font lacks. */
function widthBySigns(advances: Advances, font: Font, text: string): number {
  const table = advances[font].advances;
  let sum = 0;
  for (const sign of text) {
    const advance = table[keyOf(sign)] ?? (isMark(sign) ? 0 : undefined);
    if (advance === undefined) throw new Error(`font '${font}' has no sign '${sign}' (in '${text}')`);
    sum += advance;
  }
  return sum;
}

const LACKS = -1;
const CODE_UNITS = 0x10000;
/** A table by code unit; made once a table. */
const known = new WeakMap<Readonly<Record<string, number>>, Int16Array>();

function unitsOf(table: Readonly<Record<string, number>>): Int16Array {
  const before = known.get(table);
  if (before) return before;
  const units = new Int16Array(CODE_UNITS).fill(LACKS).fill(0, FIRST_MARK, LAST_MARK + 1);
  for (const [code, advance] of Object.entries(table)) if (Number(code) < CODE_UNITS) units[Number(code)] = advance;
  known.set(table, units);
  return units;
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
  const measure: Measure = {
    of: (words) => widthOf(advances, font, words),
    fits: (units) => (units * size) / THOUSANDTHS <= width + DUST,
  };
  return text.split('\n').flatMap((paragraph) => wrapParagraph(paragraph, measure));
}

type Measure = { of(words: string): number; fits(units: number): boolean };

function wrapParagraph(paragraph: string, measure: Measure): readonly string[] {
  if (!LOOSE_BLANKS.test(paragraph) && measure.fits(measure.of(paragraph))) return [paragraph];
  const lines: string[] = [];
  const blank = measure.of(' ');
  let [line, wide] = ['', 0];
  for (const word of paragraph.split(' ').filter((w) => w !== '')) {
    const own = measure.of(word);
    const longer = line === '' ? own : wide + blank + own;
    if (measure.fits(longer)) {
      line = line === '' ? word : `${line} ${word}`;
      wide = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = breakWord(word, measure);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
    wide = measure.of(line);
  }
  lines.push(line);
  return lines;
}

/** Blanks that are not kept. */
const LOOSE_BLANKS = /^ | $| {2}/;

/** At least one sign a piece, so that it ends however narrow the column. */
function breakWord(word: string, measure: Measure): readonly string[] {
  if (measure.fits(measure.of(word))) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const sign of word) {
    if (piece !== '' && !measure.fits(measure.of(piece + sign))) {
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

const FIRST_MARK = 0xe000;
const LAST_MARK = 0xf8ff;
/** Signs for private use mark links in a text (sheet/meant.ts): they are not printed. */
function isMark(sign: string): boolean {
  const code = sign.charCodeAt(0);
  return code >= FIRST_MARK && code <= LAST_MARK;
}

function keyOf(sign: string): string {
  return String(sign.codePointAt(0));
}
