/**
 * Everything that touches private fields of pdfkit 0.20.2 (pinned: they may change with any release). Each has a test of its own.
 * - its metadata is not used: info goes into it unescaped, and it knows PDF/A or PDF/UA, not both; nor its name tree for files, which sorts by
 *   the machine's language; nor its forms, whose boxes have no appearance;
 * - there is no call for page labels, tags by number, or catalog entries: written into the catalog as text;
 * - what is no stream goes into object streams (ISO 32000-1, 7.5.7), which it does not know: a tagged sheet has thousands of objects; its own
 *   are caught as it writes them; so the cross-reference table becomes a stream;
 * - it writes two bytes a sign, in hexadecimal: here a font brings its own map of codes (pdf-codes.ts);
 * - `text()` shapes and positions word by word: here one sign is one glyph at the advance that the layout measured with;
 * - whether a font has a glyph is asked of the font file underneath.
 * Works on Node and, bundled, in a browser: bytes are Uint8Array, never Buffer.
 */
import type { Font } from '../model/display.ts';
import { CMAP_ENTRIES, type Codes, codesOfFont, glyphMap, signMap } from './pdf-codes.ts';
import { type Packed, PREDICTOR, packObjects, type Where, WIDTHS, xrefRows } from './pdf-objects.ts';
import { array, bytesAsHex, inString, ref } from './pdf-write.ts';

/** One opened font: its name in page resources, and how a text becomes glyph codes. */
export type OpenFont = {
  /** Name in the page's resources: 'F1'. */
  readonly name: string;
  /** Those signs that the font has no glyph for, each once. */
  missing(signs: Iterable<string>): readonly string[];
  /** As a string of a content stream; adds what it uses to the embedded subset. */
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
export type Entries = Readonly<Record<string, string>>;
export type Pdf = {
  addPage(width: number, height: number): void;
  /** Content stream operators for the page that is open. */
  write(operators: string): void;
  openFont(font: Font, bytes: Uint8Array): OpenFont;
  /** An entry in the outline that shows the whole of the page that is open. */
  mark(heading: string): void;
  /** Number of the page object that is open. */
  page(): number;
  /** What the open page points to: its key in the structure's way back, and its annotations. */
  tagPage(key: number, annotations: readonly number[]): void;
  /** A number for an object that is packed later, or not at all. */
  reserve(): number;
  /** An object as it is to be written, in a stream with others. Never itself a stream. */
  pack(id: number, text: string): void;
  /** A stream of its own; `entries` without length and filter. 'open': never compressed. */
  stream(entries: Entries, content: Uint8Array | string, manner?: 'open'): number;
  /** Puts a form into the resources of the page that is open: its name there. */
  useForm(id: number): string;
  /** Entries of the catalog and of its names. */
  catalog(entries: Entries): void;
  names(entries: Entries): void;
  /** Whole file. Throws Error when it was cut short. */
  finish(): Promise<Uint8Array>;
};

type Glyph = { readonly id: number; readonly advanceWidth: number };
type EmbeddedFont = {
  readonly id: string;
  readonly scale: number;
  readonly font: { hasGlyphForCodePoint(codePoint: number): boolean; glyphForCodePoint(codePoint: number): Glyph };
  readonly subset: { includeGlyph(id: number): number };
  readonly widths: (number | undefined)[];
  ref(): Reference;
  toUnicodeCmap(): Reference;
};
type Data = Record<string, unknown>;
type Reference = { readonly id: number; readonly data: Data; compress: boolean; end(content?: Uint8Array | string): void };
type PrivateDocument = {
  _font: EmbeddedFont;
  readonly _root: { readonly id: number; readonly data: Data & { readonly Names: { readonly data: Data } } };
  readonly _info: { readonly id: number };
  readonly _id: Uint8Array;
  /** Byte where each object begins, by its number less one. */
  readonly _offsets: (number | null)[];
  readonly _offset: number;
  /** Objects begun and not yet written out. */
  readonly _waiting: number;
  _ended: boolean;
  _write(line: string | Uint8Array): void;
  _finalize(): void;
  endMetadata(): void;
  endAcroForm(): void;
  ref(data: Data): Reference;
  push(end: null): void;
  readonly page: { readonly fonts: Data; readonly xobjects: Data; readonly dictionary: { readonly id: number; readonly data: Data } };
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

/** `compress: 'no'` is for tests that read the bytes. */
export async function openPdf(info: PdfInfo, compress: 'yes' | 'no' = 'yes'): Promise<Pdf> {
  const doc = await begin(info, compress);
  const chunks = collect(doc);
  const packed: Packed[] = [];
  catchObjects(doc, packed);
  const late: Data = {};
  // written when its own tags and forms have been: it would take these entries for its own
  doc.endMetadata = () => void Object.assign(doc._root.data, late);
  doc.endAcroForm = () => undefined;
  return {
    ...pagesOf(doc),
    openFont: (font, bytes) => openFont(doc, font, bytes),
    reserve: () => doc._offsets.push(null),
    pack: (id, text) => void packed.push({ id, text }),
    stream: (entries, content, manner) => writeStream(doc, entries, content, manner),
    catalog: (entries) => void Object.assign(late, asWritten(entries)),
    names: (entries) => void Object.assign(doc._root.data.Names.data, asWritten(entries)),
    finish: async () => {
      doc._finalize = () => {
        doc._ended = false; // else the end of the next stream would end the file again
        writeXref(
          doc,
          packObjects(packed, (entries, content) => writeStream(doc, entries, content)),
        );
      };
      doc.end();
      // an object left open would keep 'end' from ever firing, and the process would leave without a word
      if (doc._waiting !== 0) throw new Error(`pdf: ${doc._waiting} objects were never ended`);
      return chunks.then(joined);
    },
  };
}

/** pdfkit is loaded here and not before: it is the largest import of a short command. */
async function begin(info: PdfInfo, compress: 'yes' | 'no'): Promise<PrivateDocument> {
  const { default: PDFDocument } = (await import('pdfkit')) as unknown as { readonly default: Constructor };
  return new PDFDocument({
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
}

function pagesOf(doc: PrivateDocument): Pick<Pdf, 'addPage' | 'write' | 'mark' | 'page' | 'tagPage' | 'useForm'> {
  return {
    addPage: (width, height) => void doc.addPage({ size: [width, height], margin: 0 }),
    write: (operators) => void doc.addContent(operators),
    mark: (heading) => void doc.outline.addItem(heading, { fit: true }),
    page: () => doc.page.dictionary.id,
    useForm: (id) => {
      const name = `X${id}`;
      Object.assign(doc.page.xobjects, asWritten({ [name]: ref(id) }));
      return name;
    },
    tagPage: (key, annotations) => {
      const annots = annotations.length === 0 ? {} : { Annots: array(annotations.map(ref)) };
      // in the order of the structure
      Object.assign(doc.page.dictionary.data, asWritten({ StructParents: String(key), Tabs: '/S', ...annots }));
    },
  };
}

/** Texts that pdfkit writes as they are: it takes a plain string for a name. */
function asWritten(entries: Entries): Data {
  return Object.fromEntries(Object.entries(entries).map(([key, text]) => [key, { [Symbol.toStringTag]: 'Written', toString: () => text }]));
}

function writeStream(doc: PrivateDocument, entries: Entries, content: Uint8Array | string, manner?: 'open'): number {
  const stream = doc.ref(asWritten(entries));
  if (manner === 'open') stream.compress = false;
  stream.end(content);
  return stream.id;
}

/** pdfkit writes an object as its number, its text, and where it is a stream that; what turns out to be none is kept for later. */
function catchObjects(doc: PrivateDocument, packed: Packed[]): void {
  const write = doc._write.bind(doc);
  let held: readonly string[] = [];
  doc._write = (line) => {
    const id = typeof line === 'string' ? /^(\d+) 0 obj$/.exec(line)?.[1] : undefined;
    if (typeof line === 'string' && (held.length === 1 || (held.length === 0 && id !== undefined))) {
      held = [...held, line];
      return;
    }
    const [head = '', text = ''] = held;
    held = [];
    if (head !== '' && line === 'endobj') packed.push({ id: Number.parseInt(head, 10), text });
    else for (const each of head === '' ? [line] : [head, text, line]) write(each);
  };
}

/** In place of pdfkit's table, which has no word for objects that stand in streams. */
function writeXref(doc: PrivateDocument, places: ReadonlyMap<number, Where>): void {
  const at = doc._offset;
  const id = bytesAsHex(doc._id);
  const stream = doc.ref(
    asWritten({
      ...{ Type: '/XRef', Size: String(doc._offsets.length + 2), W: WIDTHS, DecodeParms: PREDICTOR },
      ...{ Root: ref(doc._root.id), Info: ref(doc._info.id), ID: array([id, id]) },
    }),
  );
  doc._offsets[stream.id - 1] = at;
  stream.compress = true;
  stream.end(xrefRows(doc._offsets.map((offset, i) => places.get(i + 1) ?? (offset === null ? undefined : { offset }))));
  doc._write('startxref');
  doc._write(String(at));
  doc._write('%%EOF');
  doc.push(null);
}

function openFont(doc: PrivateDocument, font: Font, bytes: Uint8Array): OpenFont {
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
  return {
    name: opened.id,
    missing: (signs) => [...new Set(signs)].filter((sign) => !opened.font.hasGlyphForCodePoint(codeOf(sign))),
    encode: (text) => `(${Array.from(text, codeFor).join('')})`,
    use: () => {
      doc.page.fonts[opened.id] ??= opened.ref();
    },
  };
}

/** Its number in the font of the file. */
function glyphOf(font: EmbeddedFont, codePoint: number): number {
  const glyph = font.font.glyphForCodePoint(codePoint);
  const own = font.subset.includeGlyph(glyph.id);
  font.widths[own] ??= glyph.advanceWidth * font.scale;
  return own;
}

/** pdfkit writes the font's dictionary last, with maps of its own: in their place stand those of its codes. */
function embedWith(doc: PrivateDocument, font: EmbeddedFont, codes: Codes): void {
  font.toUnicodeCmap = () => {
    const written = doc.ref({});
    written.end(signMap(codes));
    return written;
  };
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
