/** Small objects together in compressed streams, and the cross-reference stream that finds them (ISO 32000-1, 7.5.7 and 7.5.8). */
import { array, dictionary } from './pdf-write.ts';

export type Packed = { readonly id: number; readonly text: string };
/** Writes a stream object and gives its number. */
export type StreamMaker = (entries: Readonly<Record<string, string>>, content: string) => number;
/** Where an object stands: the byte where it begins, or the stream that holds it and its place there. */
export type Where = { readonly offset: number } | { readonly stream: number; readonly place: number };

/** More in a stream would make a reader unpack much for little; fewer are packed less small. */
const IN_A_STREAM = 4000;

/** Gives where each now stands: in the order of their numbers, which is told in fewest bytes. */
export function packObjects(packed: readonly Packed[], make: StreamMaker): ReadonlyMap<number, Where> {
  const objects = [...packed].sort((a, b) => a.id - b.id);
  const places = new Map<number, Where>();
  for (let from = 0; from < objects.length; from += IN_A_STREAM) {
    const lot = objects.slice(from, from + IN_A_STREAM);
    let at = 0;
    const index = lot.map(({ id, text }) => {
      const entry = `${id} ${at}`;
      at += text.length + 1;
      return entry;
    });
    const head = `${index.join(' ')}\n`;
    const entries = { Type: '/ObjStm', N: String(lot.length), First: String(head.length) };
    const stream = make(entries, `${head}${lot.map(({ text }) => text).join('\n')}\n`);
    for (const [place, { id }] of lot.entries()) places.set(id, { stream, place });
  }
  return places;
}

/** Bytes of the fields of a row: kind, offset or stream, place in the stream. */
export const FIELDS = [1, 4, 2] as const;
const ROW = FIELDS[0] + FIELDS[1] + FIELDS[2];
/** PNG's "up": each byte less the one above it, so that rows that count up become alike. */
export const PREDICTOR = dictionary({ Predictor: '12', Columns: String(ROW) });
export const WIDTHS = array(FIELDS.map(String));

/** Rows for object 0 (which is free) and those after it, each with its predictor's sign. Throws Error where an object stands nowhere. */
export function xrefRows(objects: readonly (Where | undefined)[]): Uint8Array {
  const rows = new Uint8Array((objects.length + 1) * (ROW + 1));
  const view = new DataView(rows.buffer);
  for (const [i, where] of [undefined, ...objects].entries()) {
    if (!where && i > 0) throw new Error(`object ${i} was never written`);
    const at = i * (ROW + 1);
    view.setUint8(at, 2);
    if (!where) continue;
    view.setUint8(at + 1, 'stream' in where ? 2 : 1);
    view.setUint32(at + 2, 'stream' in where ? where.stream : where.offset);
    view.setUint16(at + 6, 'stream' in where ? where.place : 0);
  }
  for (let at = rows.length - 1; at > ROW; at--) {
    if (at % (ROW + 1) !== 0) rows[at] = ((rows[at] ?? 0) - (rows[at - ROW - 1] ?? 0)) & 255;
  }
  return rows;
}
