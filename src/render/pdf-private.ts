/** Private fields of pdfkit 0.20.2 that are used here: they may change with any release. */

type Glyph = { readonly id: number; readonly advanceWidth: number };
export type EmbeddedFont = {
  readonly id: string;
  readonly scale: number;
  readonly font: { hasGlyphForCodePoint(codePoint: number): boolean; glyphForCodePoint(codePoint: number): Glyph };
  readonly subset: { readonly glyphs: readonly number[]; includeGlyph(id: number): number; encode(): Uint8Array };
  readonly widths: (number | undefined)[];
  ref(): Reference;
  toUnicodeCmap(): Reference;
};
export type Data = Record<string, unknown>;
export type Reference = {
  readonly id: number;
  readonly data: Data;
  compress: boolean;
  /** What has been written to it. */
  buffer: readonly Uint8Array[];
  end(content?: Uint8Array | string): void;
  finalize(): void;
};
export type PrivateDocument = {
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
  ref: (data: Data) => Reference;
  push(end: null): void;
  readonly page: { readonly resources: Reference; readonly dictionary: { readonly id: number; readonly data: Data } };
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
export type Constructor = new (options: Record<string, unknown>) => unknown;
export type Entries = Readonly<Record<string, string>>;

/** Texts that pdfkit writes as they are: it takes a plain string for a name. */
export function asWritten(entries: Entries): Data {
  return Object.fromEntries(Object.entries(entries).map(([key, text]) => [key, { [Symbol.toStringTag]: 'Written', toString: () => text }]));
}

export function writeStream(doc: PrivateDocument, entries: Entries, content: Uint8Array | string, manner?: 'open'): number {
  const stream = doc.ref(asWritten(entries));
  if (manner === 'open') stream.compress = false;
  stream.end(content);
  return stream.id;
}
