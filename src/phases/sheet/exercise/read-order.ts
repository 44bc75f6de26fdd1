/** An order as a person writes it: a letter a line, or several; what stands after a letter and a full stop or blank, and lines with '#', count for nothing. */
import type { Diagnostic, Outcome } from '../../../base/diagnostics.ts';
import { nearest } from '../../../base/nearest.ts';
import { shown } from '../../../base/written.ts';
import type { Strip } from './strips.ts';

type Word = { readonly text: string; readonly line: number; readonly col: number };

/** `file`: its name for the places of what is found. Every mistake is told at once. */
export function readOrder(text: string, file: string, strips: readonly Strip[]): Outcome<readonly Strip[]> {
  const byLetter = new Map(strips.map((strip) => [strip.letter, strip]));
  const found: Diagnostic[] = [];
  const order: Strip[] = [];
  for (const word of wordsOf(text, new Set(byLetter.keys()))) {
    const strip = byLetter.get(word.text.toUpperCase());
    const at = { severity: 'error', place: { file, line: word.line, col: word.col, endCol: word.col + word.text.length } } as const;
    if (!strip)
      found.push({
        ...at,
        code: 'order.unknown-strip',
        grounds: {
          word: shown(word.text),
          any: [...byLetter.keys()].join(', '),
          near: nearest(word.text.toUpperCase(), [...byLetter.keys()]) ?? '',
        },
      });
    else if (order.includes(strip)) found.push({ ...at, code: 'order.strip-twice', grounds: { word: strip.letter } });
    else order.push(strip);
  }
  const missing = strips
    .filter((strip) => !order.includes(strip))
    .map((strip) => strip.letter)
    .sort();
  if (order.length === 0 && found.length === 0)
    return { found: [{ code: 'order.empty', severity: 'error', grounds: { file, example: strips.map((s) => s.letter).join(' ') } }] };
  if (missing.length > 0)
    found.push({ code: 'order.strips-missing', severity: 'error', grounds: { n: missing.length, missing: missing.join(', ') } });
  return found.length > 0 ? { found } : { value: order, found };
}

/**
 * A line of nothing but letters, right or mistyped, is an order in itself; of any other line the first word is the letter, and the rest says
 * what it is.
 */
function wordsOf(text: string, letters: ReadonlySet<string>): readonly Word[] {
  const longest = Math.max(...[...letters].map((letter) => letter.length));
  return text.split(/\r\n|\r|\n/).flatMap((line, i) => {
    if (/^\s*#/.test(line)) return [];
    const words = [...line.matchAll(/[^\s,;]+/g)].map((m): Word => ({ text: m[0].replace(/[.):]$/, ''), line: i + 1, col: m.index + 1 }));
    const all = words.every((word) => word.text.length <= longest);
    return all ? words : words.slice(0, 1);
  });
}
