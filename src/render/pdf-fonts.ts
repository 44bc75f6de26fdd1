/** Fonts as pdfkit opens and embeds them, with codes of our own (pdf-codes.ts). */
import type { Font } from '../model/display.ts';
import { CMAP_ENTRIES, type Codes, codesOfFont, glyphMap, signMap } from './pdf-codes.ts';
import { asWritten, type EmbeddedFont, type PrivateDocument, writeStream } from './pdf-private.ts';
import { unhinted } from './pdf-unhinted.ts';
import { inString, ref } from './pdf-write.ts';

/** One opened font: its name in resources, and how a text becomes glyph codes. */
export type OpenFont = {
  /** Name in the page's resources: 'F1'. */
  readonly name: string;
  /** Those signs that the font has no glyph for, each once. */
  missing(signs: Iterable<string>): readonly string[];
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
  embedWith(doc, opened, codes);
  fonts[opened.id] = ref(opened.ref().id);
  return {
    name: opened.id,
    missing: (signs) => [...new Set(signs)].filter((sign) => !opened.font.hasGlyphForCodePoint(codeOf(sign))),
    encode: (text) => `(${Array.from(text, codeFor).join('')})`,
  };
}

/** Its number in the font of the file. */
function glyphOf(font: EmbeddedFont, codePoint: number): number {
  const glyph = font.font.glyphForCodePoint(codePoint);
  const own = font.subset.includeGlyph(glyph.id);
  font.widths[own] ??= glyph.advanceWidth * font.scale;
  return own;
}

/** pdfkit writes the font's dictionary last, with maps of its own: in their place stand those of its codes. The font goes without hints. */
function embedWith(doc: PrivateDocument, font: EmbeddedFont, codes: Codes): void {
  font.toUnicodeCmap = () => {
    const written = doc.ref({});
    written.end(signMap(codes));
    return written;
  };
  const encode = font.subset.encode.bind(font.subset);
  font.subset.encode = () => unhinted(encode());
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
