/** What a person wrote, made fit to be shown to him again: short, on one line, without characters that steer a screen. */

/** Longest piece of a person's own text that a message repeats. */
const LONGEST = 60;
/** Enough of a text to be sure that it is longer. */
const BEYOND = 1000;

// Controls but tab and line ends; and the marks that turn the direction of writing, which can make a line look like another one.
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const STEERING = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/;
const EACH = new RegExp(STEERING, 'g');

/** The first character that has no place in a text file. */
export function looksBinary(text: string): { readonly at: number; readonly character: string } | undefined {
  const at = text.search(STEERING);
  return at < 0 ? undefined : { at, character: name(text.charCodeAt(at)) };
}

/** Latin letters with their marks, and the signs beside them that every font of the sheet has. */
// biome-ignore lint/suspicious/noMisleadingCharacterClass: marks are looked for by themselves
const NOT_PRINTED = /[^\u0020-\u007e\u00a0-\u017f\u0300-\u036f\u03c0–—‘’‚“”„•…′″‹›€™⅓⅔⅛⅜⅝⅞←↑→↓−√≈≤≥✓]/u;

/** The first character of a person's own words that the sheet cannot print: a steering one by its number, any other as it is. */
export function notPrinted(text: string): string | undefined {
  return looksBinary(text)?.character ?? NOT_PRINTED.exec(text)?.[0];
}

/** One line, at most 60 characters; steering characters are named instead of written. */
export function shown(text: string): string {
  const line = text
    .slice(0, BEYOND)
    .replace(/\s+/g, ' ')
    .trim()
    .replace(EACH, (c) => name(c.charCodeAt(0)));
  const letters = [...line];
  return letters.length > LONGEST ? `${letters.slice(0, LONGEST - 1).join('')}…` : line;
}

function name(code: number): string {
  return `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
}
