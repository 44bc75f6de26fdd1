/** Findings as a person reads them in a terminal: place, severity, sentence, and the line of the file that it is about. */
import type { Diagnostic, Place } from '../base/diagnostics.ts';
import type { Words } from '../base/words.ts';

/** How a stretch of text is set off; plain where there is no colour. */
export type Paint = Readonly<Record<'error' | 'warning' | 'dim' | 'strong', (text: string) => string>>;
export const PLAIN: Paint = { error: (t) => t, warning: (t) => t, dim: (t) => t, strong: (t) => t };
/** Texts of the user's files by the name that places use, and the path to print for each. */
export type Sources = Readonly<Record<string, { readonly path: string; readonly text: string }>>;

/** One finding after another, errors and warnings in the order in which they were found; '' when there are none. */
export function showFindings(found: readonly Diagnostic[], sources: Sources, words: Words, paint: Paint): string {
  return found.map((d) => showFinding(d, sources, words, paint)).join('');
}

/** The sentence of a finding: words `error.<code>`, told its grounds. */
export function sayFinding(d: Diagnostic, words: Words): string {
  return words.say(`error.${d.code}`, d.grounds);
}

function showFinding(d: Diagnostic, sources: Sources, words: Words, paint: Paint): string {
  const severity = paint[d.severity](`${words.say(`finding.${d.severity}`)}:`);
  const source = d.place && Object.hasOwn(sources, d.place.file) ? sources[d.place.file] : undefined;
  const at = d.place ? `${paint.strong(`${source?.path ?? d.place.file}:${d.place.line}:${d.place.col}:`)} ` : '';
  const frame = d.place && source ? codeFrame(d.place, source.text, paint) : '';
  return `${at}${severity} ${sayFinding(d, words)} ${paint.dim(`[${d.code}]`)}\n${frame}`;
}

/** The line itself and a row of carets under the stretch; line and column count from 1. '' when the file has no such line. */
function codeFrame(place: Place, text: string, paint: Paint): string {
  const line = text.split(/\r\n|\n|\r/)[place.line - 1];
  if (line === undefined) return '';
  const number = String(place.line);
  const wide = Math.max(1, Math.min((place.endCol ?? place.col + 1) - place.col, line.length - place.col + 1));
  // a tab stands as one space in both rows, so that the carets stay under their stretch
  const plain = visible(line);
  const under = `${' '.repeat(Math.max(0, place.col - 1))}${'^'.repeat(wide)}`;
  return `${paint.dim(`  ${number} |`)} ${plain}\n${paint.dim(`  ${' '.repeat(number.length)} |`)} ${paint.error(under)}\n`;
}

/** What a file holds may not steer the terminal: control characters are shown as a dot. */
function visible(line: string): string {
  return [...line].map((c) => (c === '\t' ? ' ' : isControl(c.codePointAt(0) ?? 0) ? '·' : c)).join('');
}

function isControl(point: number): boolean {
  return point < 0x20 || (point >= 0x7f && point < 0xa0);
}
