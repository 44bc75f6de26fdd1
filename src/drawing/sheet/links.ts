/** Links in texts: the marks that they leave, written and read. */
/** Signs that no font has and no measure counts: the first says which sheet the figures after it lead to, the last ends them. */
const FIRST = 0xe000;
const END = '\uf8ff';
const MARKS = /[\ue000-\uf8ff]/g;
const MARK = /[\ue000-\uf8ff]/;

/** `shown`, marked as a link to that sheet (from 0 to 6000). */
export function linked(shown: string, sheet: number): string {
  return `${String.fromCharCode(FIRST + sheet)}${shown}${END}`;
}

/** Without marks, for what is not set as a paragraph: descriptions, headings. */
export function unlinked(text: string): string {
  return text.replace(MARKS, '');
}

export type Span = { readonly text: string; readonly sheet?: number };
/** A line in stretches, linked and not. `open`: the link in which the line before broke off. */
export function spansOf(line: string, open?: number): { readonly spans: readonly Span[]; readonly open?: number } {
  if (open === undefined && !MARK.test(line)) return { spans: line === '' ? [] : [{ text: line }] };
  const spans: Span[] = [];
  let sheet = open;
  let text = '';
  const close = (): void => {
    if (text !== '') spans.push(sheet === undefined ? { text } : { text, sheet });
    text = '';
  };
  for (const sign of line) {
    const code = sign.charCodeAt(0);
    if (sign !== END && (code < FIRST || code > END.charCodeAt(0))) text += sign;
    else {
      close();
      sheet = sign === END ? undefined : code - FIRST;
    }
  }
  close();
  return sheet === undefined ? { spans } : { spans, open: sheet };
}
