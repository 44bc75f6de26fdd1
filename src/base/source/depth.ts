/** Guards the YAML library, which goes through nested things by recursion and can bring the whole process down with it. */

/** Brackets in brackets, dashes after dashes, columns of indentation: far more than a description has, far less than a stack holds. */
const MOST_BRACKETS = 60;
const MOST_INDICATORS = 20;
const MOST_INDENT = 200;
/** Letters on one line: a line may hold a key within a key within a key, or a bracket, every second letter. */
export const MOST_ON_LINE = 2000;

/**
 * Where the text first nests too deep to be handed on; nothing when it is fit. Quotes and comments are not told apart: a bracket in
 * them counts as well, which only matters where dozens stay open.
 */
export function tooDeepAt(text: string): number | undefined {
  const rows = new RegExp(`^(?: {${MOST_INDENT}}|[ \\t]*(?:[-?:][ \\t]+){${MOST_INDICATORS}})`, 'm').exec(text);
  let open = 0;
  for (let at = 0; at < text.length; at += 1) {
    const c = text[at];
    if (c === '[' || c === '{') open += 1;
    else if ((c === ']' || c === '}') && open > 0) open -= 1;
    if (open > MOST_BRACKETS) return rows && rows.index < at ? rows.index : at;
  }
  return rows?.index;
}

/** The first line that is too long to be one that a person wrote. */
export function tooLongAt(text: string): { readonly at: number; readonly length: number } | undefined {
  let at = 0;
  for (const line of text.split('\n')) {
    if (line.length > MOST_ON_LINE) return { at, length: line.length };
    at += line.length + 1;
  }
  return undefined;
}
