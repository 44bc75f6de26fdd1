/** Fonts as pdfkit opens and embeds them, with codes of our own (pdf-codes.ts). */
import type { Font } from '../model/display.ts';
import { CMAP_ENTRIES, type Codes, codesOfFont, glyphMap, signMap } from './pdf-codes.ts';
import { asWritten, type EmbeddedFont, type PrivateDocument, writeStream } from './pdf-private.ts';
import { subsetOf } from './pdf-subset.ts';
import { inString, ref } from './pdf-write.ts';

/** One opened font: its name in resources, and how a text becomes glyph codes. */
export type OpenFont = {
  /** Name in the page's resources: 'F1'. */
  readonly name: string;
  /** Those signs of the texts that the font has no glyph for, each once. */
  missing(texts: Iterable<string>): readonly string[];
  /** As a string of a content stream; adds what it uses to the embedded subset. */
  encode(text: string): string;
};

/** `fonts`: where its name among the resources is told. */
export function openFont(doc: PrivateDocument, font: Font, bytes: Uint8Array, fonts: Record<string, string>): OpenFont {
  doc.registerFont(font, bytes);
  doc.font(font);
  const opened = doc._font;
  const codes = codesOfFont();
  const known = new Map<string, string>();
  const codeFor = (sign: string): string => {
    const code = known.get(sign) ?? inString(codes.code(codeOf(sign), glyphOf(opened, codeOf(sign))));
    known.set(sign, code);
    return code;
  };
  // words come again and again; glyphs are numbered in the order in which the texts have them
  const codesFor = (word: string): string => {
    const found = known.get(word);
    if (found !== undefined) return found;
    let written = '';
    for (const sign of word) written += known.get(sign) ?? codeFor(sign);
    known.set(word, written);
    return written;
  };
  embedWith(doc, opened, bytes, codes);
  fonts[opened.id] = ref(opened.ref().id);
  return {
    name: opened.id,
    missing: (texts) => [...signsOf(texts)].filter((sign) => !opened.font.hasGlyphForCodePoint(codeOf(sign))),
    encode: (text) => {
      const [first = '', ...more] = text.split(BLANK);
      let written = codesFor(first);
      for (const word of more) written += codesFor(BLANK) + codesFor(word);
      return `(${written})`;
    },
  };
}

const BLANK = ' ';

function signsOf(texts: Iterable<string>): ReadonlySet<string> {
  const words = new Set<string>();
  for (const text of texts) for (const word of text.split(BLANK)) words.add(word);
  const signs = new Set<string>();
  for (const word of words) for (const sign of word) signs.add(sign);
  return signs.add(BLANK);
}

/** Its number in the font of the file. */
function glyphOf(font: EmbeddedFont, codePoint: number): number {
  const glyph = font.font.glyphForCodePoint(codePoint);
  const own = font.subset.includeGlyph(glyph.id);
  font.widths[own] ??= glyph.advanceWidth * font.scale;
  return own;
}

/** pdfkit writes the font's dictionary last, with maps of its own: in their place stand those of its codes. The font goes without hints. */
function embedWith(doc: PrivateDocument, font: EmbeddedFont, bytes: Uint8Array, codes: Codes): void {
  font.toUnicodeCmap = () => {
    const written = doc.ref({});
    written.end(signMap(codes));
    return written;
  };
  // its own reads each outline to copy it
  font.subset.encode = () => subsetOf(bytes, font.subset);
  const dictionary = font.ref();
  const end = dictionary.end.bind(dictionary);
  dictionary.end = () => {
    dictionary.data.Encoding = asWritten({ map: ref(writeStream(doc, CMAP_ENTRIES, glyphMap(codes))) }).map;
    end();
  };
}

function codeOf(sign: string): number {
  return sign.codePointAt(0) ?? 0;
}
