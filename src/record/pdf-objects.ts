/**
 * The objects of a PDF, found one after the other without its table, so that a sheet that was ticked, saved again or appended to can still be
 * read: of two objects with one number the later one counts. Enough to find files inside the file; it draws nothing.
 */
import { inflate } from './inflate.ts';
import { type Dictionary, isDictionary, type Parsed, parseValue, type Value } from './pdf-values.ts';

export type PdfObject = { readonly value: Value; readonly stream?: Uint8Array };
export type PdfFile = {
  /** The last that names a catalog. */
  readonly trailer: Dictionary;
  get(value: Value | undefined): Value | undefined;
  /** Content of a stream, unpacked; undefined for what is none, or packed in a way that is not known here. */
  content(value: Value | undefined): Promise<Uint8Array | undefined>;
};

const OBJECT = /(?<![0-9])(\d{1,9})\s+(\d{1,5})\s+obj\b/g;
const STREAM = /\s*stream\r?\n/y;
const TRAILER = /\btrailer\s*(?=<<)/g;

/** Undefined where nothing in it says which object is the whole. */
export async function readObjects(bytes: Uint8Array): Promise<PdfFile | undefined> {
  const text = new TextDecoder('latin1').decode(bytes);
  const objects = topObjects(text, bytes);
  const trailers = [...text.matchAll(TRAILER)].map((found) => parseValue(text, found.index + found[0].length, bytes).value);
  const dictionaries = [...trailers, ...[...objects.values()].map((object) => object.value)].filter(isDictionary);
  const trailer = dictionaries.filter((each) => each.has('Root')).at(-1);
  if (!trailer) return undefined;
  const packed = new Map<number, PdfObject>();
  for (const object of objects.values()) await unpack(object, packed);
  // what stands by itself is newer: packed objects are not appended to
  for (const [id, object] of packed) if (!objects.has(id)) objects.set(id, object);
  return {
    trailer,
    get: (value) => resolved(value, objects),
    content: async (value) => {
      const object = isReference(value) ? objects.get(value.ref) : undefined;
      return object ? contentOf(object) : undefined;
    },
  };
}

function topObjects(text: string, bytes: Uint8Array): Map<number, PdfObject> {
  const objects = new Map<number, PdfObject>();
  OBJECT.lastIndex = 0;
  for (let found = OBJECT.exec(text); found; found = OBJECT.exec(text)) {
    const parsed = parseValue(text, OBJECT.lastIndex, bytes);
    const stream = isDictionary(parsed.value) ? streamAfter(parsed, parsed.value, text, bytes) : undefined;
    const id = Number(found[1]);
    objects.delete(id); // the later one also stands later
    objects.set(id, stream ? { value: parsed.value, stream: stream.bytes } : { value: parsed.value });
    OBJECT.lastIndex = Math.max(OBJECT.lastIndex, stream?.end ?? parsed.end);
  }
  return objects;
}

/** By its stated length where 'endstream' follows it, else up to the next 'endstream'. */
function streamAfter(
  { end }: Parsed,
  dictionary: Dictionary,
  text: string,
  bytes: Uint8Array,
): { readonly bytes: Uint8Array; readonly end: number } | undefined {
  STREAM.lastIndex = end;
  if (!STREAM.test(text)) return undefined;
  const from = STREAM.lastIndex;
  const stated = dictionary.get('Length');
  const fits = typeof stated === 'number' && /^\s*endstream/.test(text.slice(from + stated, from + stated + 'endstream'.length + 2));
  const to = fits ? from + stated : text.indexOf('endstream', from);
  return to < 0 ? undefined : { bytes: bytes.slice(from, to), end: to };
}

async function unpack(object: PdfObject, objects: Map<number, PdfObject>): Promise<void> {
  if (!isDictionary(object.value) || nameOf(object.value.get('Type')) !== 'ObjStm') return;
  const [count, first] = [object.value.get('N'), object.value.get('First')];
  const content = await contentOf(object);
  if (!content || typeof count !== 'number' || typeof first !== 'number') return;
  const text = new TextDecoder('latin1').decode(content);
  const index = text.slice(0, first).trim().split(/\s+/).map(Number);
  for (let i = 0; i < count; i++) {
    const [id, at] = [index[2 * i], index[2 * i + 1]];
    if (id !== undefined && at !== undefined) objects.set(id, { value: parseValue(text, first + at, content).value });
  }
}

async function contentOf({ value, stream }: PdfObject): Promise<Uint8Array | undefined> {
  if (!stream || !isDictionary(value)) return undefined;
  const filter = value.get('Filter');
  const only = Array.isArray(filter) && filter.length === 1 ? filter[0] : filter;
  if (only === undefined) return stream;
  return nameOf(only) === 'FlateDecode' && !value.has('DecodeParms') ? inflate(stream) : undefined;
}

const isReference = (value: Value | undefined): value is { readonly ref: number } =>
  typeof value === 'object' && value !== null && 'ref' in value;

function resolved(value: Value | undefined, objects: ReadonlyMap<number, PdfObject>): Value | undefined {
  let found = value;
  for (let steps = 0; isReference(found); steps++) found = steps > objects.size ? undefined : objects.get(found.ref)?.value;
  return found;
}

export function nameOf(value: Value | undefined): string | undefined {
  return typeof value === 'object' && value !== null && 'name' in value ? value.name : undefined;
}
