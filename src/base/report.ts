/** Findings as a person reads them on a terminal: where, what and why, the lines themselves, what to do. */
import { askedWords } from './asked-words.ts';
import type { Diagnostic } from './diagnostics.ts';
import { frame } from './frame.ts';
import type { Grounds, Words } from './words.ts';

/** Nobody reads further; the rest is only counted. */
const MOST_SHOWN = 50;

/**
 * `texts`: file name to its text, for the few lines around a place. Errors come in the order of file and place, warnings after them in
 * the same order; findings without a place come last. Ends with a newline, or is empty.
 * Throws Error where words are missing: our fault.
 */
export function report(found: readonly Diagnostic[], texts: Readonly<Record<string, string>>, words: Words): string {
  const all = inOrder(found);
  const more = all.length - MOST_SHOWN;
  const shown = all.slice(0, MOST_SHOWN).map((d) => one(d, texts, words));
  return [...shown, ...(more > 0 ? [`${words.say('report.more', { more })}\n`] : [])].join('\n');
}

function one(d: Diagnostic, texts: Readonly<Record<string, string>>, words: Words): string {
  const grounds = enriched(d, words);
  const where = d.place ? `${d.place.file}:${d.place.line}:${d.place.col}: ` : '';
  const head = `${where}${words.say(`report.${d.severity}`)}: ${words.say(`error.${d.code}`, grounds)}\n`;
  const text = d.place && Object.hasOwn(texts, d.place.file) ? texts[d.place.file] : undefined;
  const lines = d.place && text !== undefined ? frame(text, d.place) : '';
  return `${head}${lines}  ${words.say('report.do')}: ${words.say(`error.${d.code}.do`, grounds)}\n`;
}

/**
 * Kinds (`asked`, `given`) become 'a length', 'a pressure'; `ask`, the id of a key, adds `what` the key is for and an `example` of it.
 * The same for text, JSON and any other way to show a finding.
 */
export function enriched(d: Diagnostic, words: Words): Grounds {
  const out: Record<string, unknown> = { ...d.grounds };
  for (const kind of ['asked', 'given'])
    if (typeof out[kind] === 'string' && words.has(`want.${out[kind]}`)) out[kind] = words.say(`want.${out[kind]}`);
  if (typeof out.ask === 'string') Object.assign(out, askedWords(words, out.ask));
  return out;
}

function inOrder(found: readonly Diagnostic[]): readonly Diagnostic[] {
  const rank = (d: Diagnostic) => (d.severity === 'error' ? 0 : 1);
  const files = [...new Set(found.flatMap((d) => (d.place ? [d.place.file] : [])))];
  const file = (d: Diagnostic) => (d.place ? files.indexOf(d.place.file) : files.length);
  return found
    .map((d, i) => ({ d, i }))
    .sort(
      (a, b) =>
        rank(a.d) - rank(b.d) ||
        file(a.d) - file(b.d) ||
        (a.d.place?.line ?? 0) - (b.d.place?.line ?? 0) ||
        (a.d.place?.col ?? 0) - (b.d.place?.col ?? 0) ||
        a.i - b.i,
    )
    .map(({ d }) => d);
}
