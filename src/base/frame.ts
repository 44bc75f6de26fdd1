/** A few lines of a person's file with a mark under the place that is spoken of, as plain text. */
import type { Place } from './diagnostics.ts';

/** Lines shown before the one that is meant, and the widest piece of a line. */
const BEFORE = 1;
const WIDEST = 100;

/** Lines end with \n; empty when the place is beyond the text. */
export function frame(text: string, place: Place): string {
  const lines = text.split(/\r?\n/);
  const meant = lines[place.line - 1];
  if (meant === undefined) return '';
  const shift = Math.max(0, Math.min(place.col - 1 - WIDEST / 2, meant.length - WIDEST));
  const margin = String(place.line).length;
  const out: string[] = [];
  for (let line = Math.max(1, place.line - BEFORE); line <= place.line; line += 1) {
    out.push(`  ${String(line).padStart(margin)} | ${cut(lines[line - 1] ?? '', line === place.line ? shift : 0)}`.trimEnd());
  }
  const under = cut(meant, shift);
  const start = place.col - 1 - shift + (shift > 0 ? 1 : 0);
  const width = Math.max(1, Math.min((place.endCol ?? place.col + 1) - place.col, under.length - start));
  out.push(`  ${' '.repeat(margin)} | ${' '.repeat(Math.max(0, start))}${'^'.repeat(width)}`);
  return out.map((line) => `${line}\n`).join('');
}

/** A window on a line: tabs as one space, an ellipsis where it was cut; controls as a dot. */
function cut(line: string, shift: number): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not reach a screen
  const plain = line.replace(/\t/g, ' ').replace(/[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '·');
  const piece = plain.slice(shift, shift + WIDEST);
  return `${shift > 0 ? '…' : ''}${piece}${shift + WIDEST < plain.length ? '…' : ''}`;
}
