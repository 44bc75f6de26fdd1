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
import { type OpenFont, openFont } from './pdf-fonts.ts';
import { type Packed, PREDICTOR, packObjects, type Where, WIDTHS, xrefRows } from './pdf-objects.ts';
import { asWritten, type Constructor, type Data, type Entries, type PrivateDocument, writeStream } from './pdf-private.ts';
import { array, bytesAsHex, dictionary, ref } from './pdf-write.ts';

export type PdfInfo = {
  readonly title: string;
  readonly keywords: string;
  readonly language: string;
  readonly producer: string;
  readonly date: Date;
};
/** Left, top, right and low edge of what a form may paint. */
export type Box = readonly [number, number, number, number];
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
  /** A form that has no words and shows no other: its name on all pages and in pictures. */
  form(content: string, box: Box): string;
  /** A form that shows what a page may, but no other picture: its name on all pages. */
  picture(content: string, box: Box): string;
  /** Entries of the catalog and of its names. */
  catalog(entries: Entries): void;
  names(entries: Entries): void;
  /** Whole file. Throws Error when it was cut short. */
  finish(): Promise<Uint8Array>;
};

/** How streams are packed: as pdfkit does it, not at all (for tests that read the bytes), or by that, as zlib packs (RFC 1950). */
export type Packing = 'yes' | 'no' | Pack;
type Pack = (bytes: Uint8Array) => Uint8Array;

export async function openPdf(info: PdfInfo, packing: Packing = 'yes'): Promise<Pdf> {
  const doc = await begin(info, packing === 'no' ? 'no' : 'yes');
  if (typeof packing === 'function') packBy(doc, packing);
  const chunks = collect(doc);
  const packed: Packed[] = [];
  const freed: Freed = { all: new Set(), spare: [] };
  const reserve = (): number => freed.spare.pop() ?? doc._offsets.push(null);
  const shared: Shared = { fonts: {}, forms: {}, pictures: {}, ofPages: reserve(), ofPictures: reserve() };
  catchObjects(doc, packed, freed.all);
  const late: Data = {};
  // written when its own tags and forms have been: it would take these entries for its own
  doc.endMetadata = () => void Object.assign(doc._root.data, late);
  doc.endAcroForm = () => undefined;
  return {
    ...pagesOf(doc, shared, freed),
    ...formsOf(doc, shared),
    openFont: (font, bytes) => openFont(doc, font, bytes, shared.fonts),
    reserve,
    pack: (id, text) => void packed.push({ id, text }),
    stream: (entries, content, manner) => writeStream(doc, entries, content, manner),
    catalog: (entries) => void Object.assign(late, asWritten(entries)),
    names: (entries) => void Object.assign(doc._root.data.Names.data, asWritten(entries)),
    finish: async () => {
      doc._finalize = () => {
        packResources(shared, packed);
        for (const id of freed.spare) packed.push({ id, text: 'null' });
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

/** Of each stream that pdfkit would pack itself, just before it does. */
function packBy(doc: PrivateDocument, pack: Pack): void {
  const ref = doc.ref.bind(doc);
  doc.ref = (data) => {
    const made = ref(data);
    const finalize = made.finalize.bind(made);
    made.finalize = () => {
      if (made.compress && made.buffer.length > 0) {
        made.buffer = [pack(joined(made.buffer))];
        made.compress = false;
      }
      finalize();
    };
    return made;
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

/**
 * What pages and pictures are drawn with, by name: one dictionary for all pages and one for all pictures. Pictures have their own, for a form
 * had better not be among what it is drawn with itself.
 */
type Shared = {
  readonly fonts: Record<string, string>;
  readonly forms: Record<string, string>;
  readonly pictures: Record<string, string>;
  readonly ofPages: number;
  readonly ofPictures: number;
};

function packResources({ fonts, forms, pictures, ofPages, ofPictures }: Shared, packed: Packed[]): void {
  const Font = dictionary(fonts);
  packed.push({ id: ofPages, text: dictionary({ Font, XObject: dictionary({ ...forms, ...pictures }) }) });
  packed.push({ id: ofPictures, text: dictionary({ Font, XObject: dictionary(forms) }) });
}

/** Numbers of objects that pdfkit would write and that are not wanted: others take them. `spare`: not taken yet. */
type Freed = { readonly all: Set<number>; readonly spare: number[] };

/** pdfkit gives each page resources of its own: here all have the same. */
function pagesOf(doc: PrivateDocument, { ofPages }: Shared, freed: Freed): Pick<Pdf, 'addPage' | 'write' | 'mark' | 'page' | 'tagPage'> {
  return {
    addPage: (width, height) => {
      doc.addPage({ size: [width, height], margin: 0 });
      freed.all.add(doc.page.resources.id);
      freed.spare.push(doc.page.resources.id);
      Object.assign(doc.page.dictionary.data, asWritten({ Resources: ref(ofPages) }));
    },
    write: (operators) => void doc.addContent(operators),
    mark: (heading) => void doc.outline.addItem(heading, { fit: true }),
    page: () => doc.page.dictionary.id,
    tagPage: (key, annotations) => {
      const annots = annotations.length === 0 ? {} : { Annots: array(annotations.map(ref)) };
      // in the order of the structure
      Object.assign(doc.page.dictionary.data, asWritten({ StructParents: String(key), Tabs: '/S', ...annots }));
    },
  };
}

function formsOf(doc: PrivateDocument, { forms, pictures, ofPictures }: Shared): Pick<Pdf, 'form' | 'picture'> {
  const written = (content: string, box: Box, among: Record<string, string>, Resources: string): string => {
    const id = writeStream(doc, { Subtype: '/Form', BBox: array(box.map(String)), Resources }, content);
    const name = `X${id}`;
    among[name] = ref(id);
    return name;
  };
  return {
    form: (content, box) => written(content, box, forms, '<<>>'),
    picture: (content, box) => written(content, box, pictures, ref(ofPictures)),
  };
}

/** pdfkit writes an object as its number, its text, and where it is a stream that; what turns out to be none is kept for later. */
function catchObjects(doc: PrivateDocument, packed: Packed[], freed: ReadonlySet<number>): void {
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
    const none = head !== '' && line === 'endobj';
    if (none && !freed.has(Number.parseInt(head, 10))) packed.push({ id: Number.parseInt(head, 10), text });
    else if (!none) for (const each of head === '' ? [line] : [head, text, line]) write(each);
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
