/**
 * A TrueType font without the instructions that move outlines onto the pixels of a coarse screen (OpenType, tables glyf, loca, fpgm, prep, cvt):
 * paper has no use for them, and they are half of a subset.
 */

const FOR_PIXELS: readonly string[] = ['fpgm', 'prep', 'cvt '];
const HEAD = 12;
const RECORD = 16;
const WORD = 4;
/** Of a composite glyph's part (OpenType, glyf): words for its place, more parts, how it is scaled, instructions at the end. */
const PART = { words: 0x1, scale: 0x8, more: 0x20, twoScales: 0x40, matrix: 0x80, instructed: 0x100 } as const;
/** Bytes of a glyph before its outline: how many contours, and its box. */
const BOX = 10;
/** Where head says how loca counts. */
const LOCA_FORMAT = 50;

export type Tables = ReadonlyMap<string, Uint8Array>;

export function unhinted(font: Uint8Array): Uint8Array {
  const tables = tablesOf(font);
  if (!tables.has('glyf')) return font;
  return unhintedOf(tables, outlinesIn(tables), viewOf(font).getUint32(0));
}

/** A font file of these outlines, with the other tables as they stand. `version`: the file's first word. */
export function unhintedOf(tables: Tables, outlines: readonly Uint8Array[], version: number): Uint8Array {
  const glyphs = outlines.map(withoutInstructions);
  const all = new Map([...tables].filter(([name]) => !FOR_PIXELS.includes(name)));
  all.set('glyf', together(glyphs));
  all.set('loca', placesOf(glyphs, isLong(tables)));
  return fileOf(all, version);
}

/** A glyph each. */
export function outlinesIn(tables: Tables): readonly Uint8Array[] {
  return cut(tableOf(tables, 'glyf'), tableOf(tables, 'loca'), isLong(tables));
}

const isLong = (tables: Tables): boolean => viewOf(tableOf(tables, 'head')).getInt16(LOCA_FORMAT) === 1;

export const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** Throws Error when the font has none of that name. */
export function tableOf(tables: Tables, name: string): Uint8Array {
  const table = tables.get(name);
  if (!table) throw new Error(`a font has no table '${name}'`);
  return table;
}

export function tablesOf(font: Uint8Array): Tables {
  const view = viewOf(font);
  return new Map(
    Array.from({ length: view.getUint16(WORD) }, (_, i) => {
      const at = HEAD + i * RECORD;
      const from = view.getUint32(at + 2 * WORD);
      const name = String.fromCharCode(...font.subarray(at, at + WORD));
      return [name, font.subarray(from, from + view.getUint32(at + 3 * WORD))];
    }),
  );
}

function cut(glyf: Uint8Array, loca: Uint8Array, long: boolean): readonly Uint8Array[] {
  const view = viewOf(loca);
  const place = (i: number): number => (long ? view.getUint32(i * WORD) : 2 * view.getUint16(2 * i));
  const count = loca.length / (long ? WORD : 2) - 1;
  return Array.from({ length: count }, (_, i) => glyf.subarray(place(i), place(i + 1)));
}

function withoutInstructions(glyph: Uint8Array): Uint8Array {
  if (glyph.length === 0) return glyph;
  const contours = viewOf(glyph).getInt16(0);
  const [kept, rest] = contours < 0 ? composite(glyph) : simple(glyph, BOX + 2 * contours);
  return together([kept, rest]); // whole words, so that loca can count them
}

/** `at`: where the number of its instructions stands. */
function simple(glyph: Uint8Array, at: number): readonly [Uint8Array, Uint8Array] {
  const kept = glyph.slice(0, at + 2);
  kept.fill(0, at);
  return [kept, glyph.subarray(at + 2 + viewOf(glyph).getUint16(at))];
}

function composite(glyph: Uint8Array): readonly [Uint8Array, Uint8Array] {
  const kept = glyph.slice();
  const view = viewOf(kept);
  const end = eachPart(glyph, (at) => view.setUint16(at, view.getUint16(at) & ~PART.instructed));
  return [kept.subarray(0, end), new Uint8Array()];
}

/** Other glyphs stand for the parts of a composite one. Gives it as it stands where it is none. */
export function withParts(glyph: Uint8Array, standIn: (id: number) => number): Uint8Array {
  if (glyph.length === 0 || viewOf(glyph).getInt16(0) >= 0) return glyph;
  const own = glyph.slice();
  const view = viewOf(own);
  eachPart(glyph, (at) => view.setUint16(at + 2, standIn(view.getUint16(at + 2))));
  return own;
}

/** `visit` with the place of each part: its flags, then its glyph. Gives where they end. */
function eachPart(glyph: Uint8Array, visit: (at: number) => void): number {
  const view = viewOf(glyph);
  let at = BOX;
  for (let more = true; more; ) {
    const flags = view.getUint16(at);
    visit(at);
    const scaled = flags & PART.scale ? 2 : flags & PART.twoScales ? WORD : flags & PART.matrix ? 2 * WORD : 0;
    at += WORD + (flags & PART.words ? WORD : 2) + scaled;
    more = (flags & PART.more) !== 0;
  }
  return at;
}

/** One after the other, each filled up to whole words. */
function together(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(filled(parts.reduce((sum, part) => sum + part.length, 0)));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

const filled = (length: number): number => Math.ceil(length / WORD) * WORD;

function placesOf(glyphs: readonly Uint8Array[], long: boolean): Uint8Array {
  const loca = new Uint8Array((glyphs.length + 1) * (long ? WORD : 2));
  const view = viewOf(loca);
  let at = 0;
  for (const [i, glyph] of [...glyphs, new Uint8Array()].entries()) {
    if (long) view.setUint32(i * WORD, at);
    else view.setUint16(2 * i, at / 2);
    at += glyph.length;
  }
  return loca;
}

/** The head of the file, then the tables by name, each with its sum. */
function fileOf(tables: Tables, version: number): Uint8Array {
  const names = [...tables.keys()].sort();
  const power = Math.floor(Math.log2(names.length));
  const head = new Uint8Array(HEAD + names.length * RECORD);
  const view = viewOf(head);
  view.setUint32(0, version);
  for (const [i, value] of [names.length, 2 ** power * RECORD, power, (names.length - 2 ** power) * RECORD].entries())
    view.setUint16(WORD + 2 * i, value);
  let place = head.length;
  const parts = names.map((name, i) => {
    const table = tables.get(name) ?? new Uint8Array();
    const at = HEAD + i * RECORD;
    head.set(
      [...name].map((sign) => sign.charCodeAt(0)),
      at,
    );
    for (const [k, value] of [sumOf(table), place, table.length].entries()) view.setUint32(at + WORD * (k + 1), value);
    place += filled(table.length);
    return together([table]);
  });
  return together([head, ...parts]);
}

function sumOf(table: Uint8Array): number {
  const view = viewOf(together([table]));
  let sum = 0;
  for (let at = 0; at < view.byteLength; at += WORD) sum = (sum + view.getUint32(at)) % 2 ** 32;
  return sum;
}
