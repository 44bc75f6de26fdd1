/**
 * Everything that touches private fields of pdfkit 0.20.2 (pinned: they may change with any release). Each has a test of its own.
 * - the info dictionary goes into XMP unescaped: wrapped here;
 * - there is no call for page labels: written into the catalog;
 * - `text()` shapes and positions word by word: here one sign is one glyph at the advance that the layout measured with;
 * - whether a font has a glyph is asked of the font file underneath.
 * Works on Node and, bundled, in a browser: bytes are Uint8Array, never Buffer.
 */
import type { Font } from '../model/display.ts';

/** One opened font: its name in page resources, and how a text becomes glyph codes. */
export type OpenFont = {
  /** Name in the page's resources: 'F1'. */
  readonly name: string;
  /** Signs of `text` that the font has no glyph for, each once. */
  missing(text: string): readonly string[];
  /** Hexadecimal glyph codes; adds what it uses to the embedded subset. */
  encode(text: string): string;
  /** Puts the font into the resources of the page that is open. */
  use(): void;
};
export type PdfInfo = {
  readonly title: string;
  readonly keywords: string;
  readonly language: string;
  readonly producer: string;
  readonly date: Date;
};
export type Pdf = {
  addPage(width: number, height: number): void;
  /** Content stream operators for the page that is open. */
  write(operators: string): void;
  openFont(font: Font, bytes: Uint8Array): OpenFont;
  /** An entry in the outline that shows the whole of the page that is open. */
  mark(heading: string): void;
  labelPages(labels: readonly string[]): void;
  /** Whole file. Throws Error when it was cut short. */
  finish(): Promise<Uint8Array>;
};

type Glyph = { readonly id: number; readonly advanceWidth: number; readonly codePoints: readonly number[] };
type EmbeddedFont = {
  readonly id: string;
  readonly scale: number;
  readonly font: { hasGlyphForCodePoint(codePoint: number): boolean; glyphForCodePoint(codePoint: number): Glyph };
  readonly subset: { includeGlyph(id: number): number };
  readonly widths: (number | undefined)[];
  readonly unicode: (readonly number[] | undefined)[];
  ref(): unknown;
};
type Info = Record<string, string | Date>;
type PrivateDocument = {
  _font: EmbeddedFont;
  readonly _root: { readonly data: Record<string, unknown> };
  info: Info;
  /** Objects begun and not yet written out. */
  readonly _waiting: number;
  _addInfo(): void;
  readonly page: { readonly fonts: Record<string, unknown> };
  readonly outline: { addItem(title: string, options: { readonly fit: true }): unknown };
  registerFont(name: string, source: Uint8Array): unknown;
  font(name: string): unknown;
  addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): unknown;
  addContent(operators: string): unknown;
  on(event: 'data', listener: (chunk: Uint8Array) => void): unknown;
  on(event: 'end', listener: () => void): unknown;
  on(event: 'error', listener: (error: Error) => void): unknown;
  end(): void;
};
type Constructor = new (options: Record<string, unknown>) => unknown;

const HEX = 16;
const CODE_DIGITS = 4;

/** pdfkit is loaded here and not before: it is the largest import of a short command. `compress: 'no'` is for tests that read the bytes. */
export async function openPdf(info: PdfInfo, compress: 'yes' | 'no' = 'yes'): Promise<Pdf> {
  const { default: PDFDocument } = (await import('pdfkit')) as unknown as { readonly default: Constructor };
  const doc = new PDFDocument({
    pdfVersion: '1.7',
    autoFirstPage: false,
    font: null, // else Helvetica is loaded from a file that a bundle lacks
    compress: compress === 'yes',
    lang: info.language,
    displayTitle: true,
    // the order of the keys is the order in the file; /ID is made of these alone, hence the mark among them
    info: {
      Title: info.title,
      Keywords: info.keywords,
      Producer: info.producer,
      Creator: info.producer,
      CreationDate: info.date,
      ModDate: info.date,
    },
  }) as PrivateDocument;
  escapeInfoInXmp(doc);
  const chunks = collect(doc);
  return {
    addPage: (width, height) => void doc.addPage({ size: [width, height], margin: 0 }),
    write: (operators) => void doc.addContent(operators),
    openFont: (font, bytes) => openFont(doc, font, bytes),
    mark: (heading) => void doc.outline.addItem(heading, { fit: true }),
    labelPages: (labels) => labelPages(doc, labels),
    finish: async () => {
      doc.end();
      // an object left open would keep 'end' from ever firing, and the process would leave without a word
      if (doc._waiting !== 0) throw new Error(`pdf: ${doc._waiting} objects were never ended`);
      return chunks.then(joined);
    },
  };
}

function openFont(doc: PrivateDocument, font: Font, bytes: Uint8Array): OpenFont {
  doc.registerFont(font, bytes);
  doc.font(font);
  const opened = doc._font;
  return {
    name: opened.id,
    missing: (text) => [...new Set(text)].filter((sign) => !opened.font.hasGlyphForCodePoint(codeOf(sign))),
    encode: (text) => [...text].map((sign) => encodeSign(opened, codeOf(sign))).join(''),
    use: () => {
      doc.page.fonts[opened.id] ??= opened.ref();
    },
  };
}

function encodeSign(font: EmbeddedFont, codePoint: number): string {
  const glyph = font.font.glyphForCodePoint(codePoint);
  const code = font.subset.includeGlyph(glyph.id);
  font.widths[code] ??= glyph.advanceWidth * font.scale;
  // a glyph may stand for several signs (space and no-break space): the first one used is what a reader copies
  font.unicode[code] ??= [codePoint];
  return code.toString(HEX).padStart(CODE_DIGITS, '0');
}

function codeOf(sign: string): number {
  return sign.codePointAt(0) ?? 0;
}

/** pdfkit puts info into the XMP packet as it is; a title with '&' would break the XML. */
function escapeInfoInXmp(doc: PrivateDocument): void {
  const add = doc._addInfo;
  doc._addInfo = () => {
    const plain = doc.info;
    doc.info = Object.fromEntries(Object.entries(plain).map(([key, value]) => [key, typeof value === 'string' ? escapeXml(value) : value]));
    add.call(doc);
    doc.info = plain;
  };
}

function escapeXml(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}

function labelPages(doc: PrivateDocument, labels: readonly string[]): void {
  // a String object is what pdfkit writes as a PDF string; a plain string becomes a name
  const texts = labels.flatMap((label, i) => [i, { P: Object(label) as unknown }]);
  doc._root.data.PageLabels = { Nums: texts };
}

function collect(doc: PrivateDocument): Promise<readonly Uint8Array[]> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk) => void chunks.push(chunk));
    doc.on('end', () => resolve(chunks));
    doc.on('error', reject);
  });
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.byteLength, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.byteLength;
  }
  return bytes;
}
