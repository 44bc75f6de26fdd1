/** Offsets in a text to lines and columns, both from 1; a column is a UTF-16 code unit, as editors count. */
import type { Place } from '../diagnostics.ts';

export function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}

/** `from` up to, not with, `to`. `endCol` is given where the stretch ends on the same line. */
export function placeAt(file: string, text: string, starts: readonly number[], from: number, to: number): Place {
  const start = Math.max(0, Math.min(from, text.length));
  const line = lineOf(starts, start);
  const lineStart = starts[line - 1] ?? 0;
  const lineEnd = starts[line] === undefined ? text.length : (starts[line] ?? 0) - 1;
  const end = Math.min(to, lineEnd);
  const place = { file, line, col: start - lineStart + 1 };
  return end > start ? { ...place, endCol: end - lineStart + 1 } : place;
}

/** The line that holds the offset, from 1, by halving. */
export function lineOf(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle;
  }
  return low + 1;
}
