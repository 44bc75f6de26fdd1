/** Of a TrueType font those glyphs that a file shows, numbered anew (OpenType, tables glyf, loca, hmtx, hhea, maxp), without hints. */
import { outlinesIn, type Tables, tableOf, tablesOf, unhintedOf, viewOf, withParts } from './pdf-unhinted.ts';

/** `glyphs`: by their new numbers; grows as `includeGlyph`, which gives the new number, is asked for the parts of composite ones. */
export type Subset = { readonly glyphs: readonly number[]; includeGlyph(id: number): number };

/** Tables that a PDF asks for (ISO 32000-1, 9.9) and that go as they stand but for how many glyphs they count. */
const KEPT = ['head', 'hhea', 'maxp'] as const;
/** First word of a file of TrueType outlines: 'true'. */
const VERSION = 0x74727565;
const METRIC = 4;
/** Where hhea counts metrics, and maxp glyphs. */
const METRICS = 34;
const GLYPHS = 4;

export function subsetOf(font: Uint8Array, subset: Subset): Uint8Array {
  const tables = tablesOf(font);
  const all = outlinesIn(tables);
  const outlines: Uint8Array[] = [];
  // a list that grows under way
  for (const id of subset.glyphs) outlines.push(withParts(all[id] ?? new Uint8Array(), (part) => subset.includeGlyph(part)));
  const own = new Map<string, Uint8Array>(KEPT.map((name) => [name, tableOf(tables, name).slice()]));
  viewOf(tableOf(own, 'hhea')).setUint16(METRICS, outlines.length);
  viewOf(tableOf(own, 'maxp')).setUint16(GLYPHS, outlines.length);
  own.set('hmtx', metricsOf(tables, subset.glyphs));
  return unhintedOf(own, outlines, VERSION);
}

/** Advance and bearing of each; glyphs beyond the counted metrics have the last one's advance. */
function metricsOf(tables: Tables, glyphs: readonly number[]): Uint8Array {
  const count = viewOf(tableOf(tables, 'hhea')).getUint16(METRICS);
  const from = viewOf(tableOf(tables, 'hmtx'));
  const to = new DataView(new ArrayBuffer(glyphs.length * METRIC));
  for (const [i, id] of glyphs.entries()) {
    to.setUint16(i * METRIC, from.getUint16(Math.min(id, count - 1) * METRIC));
    to.setInt16(i * METRIC + 2, from.getInt16(id < count ? id * METRIC + 2 : count * METRIC + (id - count) * 2));
  }
  return new Uint8Array(to.buffer);
}
