/** How numbers, strings, names and dictionaries are written in a PDF. */

/** Parts of a unit that are written: a thousandth of a millimetre on paper, of a point, or of full colour. */
const PARTS = 1_000;
/** Of a factor by which a whole page is multiplied. */
const FINE_PARTS = 100_000_000;
const HEX = 16;

/** No exponent, no -0, no more places than paper shows. Throws Error for what is no number. */
export function number(value: number): string {
  return inParts(value, PARTS);
}

/** A factor for lengths: over the height of a page it is out by less than a thousandth of a millimetre. */
export function factor(value: number): string {
  return inParts(value, FINE_PARTS);
}

/** A whole number of parts, divided, prints in no more places than the parts have; `+ 0` turns -0 into 0. */
function inParts(value: number, parts: number): string {
  if (!Number.isFinite(value)) throw new Error(`not a number on paper: ${value}`);
  return String(Math.round(value * parts) / parts + 0);
}

/**
 * Text for a reader, a byte a sign where the encoding of documents has it where Latin 1 does (ISO 32000-1, D.3), else UTF-16 with its mark, in
 * hexadecimal.
 */
export function string(text: string): string {
  if (/^(?!\xfe\xff|\xef\xbb\xbf)[\x20-\x7e\xa1-\xac\xae-\xff]*$/.test(text)) return `(${text.replace(/[\\()]/g, '\\$&')})`;
  const units = Array.from({ length: text.length }, (_, i) => text.charCodeAt(i).toString(HEX).padStart(4, '0'));
  return `<feff${units.join('')}>`;
}

/** Bytes as they stand in a string between brackets: a carriage return would be read as the end of a line. */
export function inString(bytes: readonly number[]): string {
  return String.fromCharCode(...bytes).replace(/[\\()\r]/g, (sign) => (sign === '\r' ? '\\r' : `\\${sign}`));
}

export function bytesAsHex(bytes: Uint8Array): string {
  return `<${Array.from(bytes, (byte) => byte.toString(HEX).padStart(2, '0')).join('')}>`;
}

/** What a name may not hold stands as '#xx'. */
export function name(text: string): string {
  return `/${text.replace(/[^A-Za-z0-9_.+-]/g, (sign) => `#${sign.charCodeAt(0).toString(HEX).padStart(2, '0')}`)}`;
}

export const ref = (id: number): string => `${id} 0 R`;
export const array = (items: readonly string[]): string => `[${items.join(' ')}]`;

/** Entries in the order given; those without a value are left out. */
export function dictionary(entries: Readonly<Record<string, string | undefined>>): string {
  let written = '';
  for (const key in entries) if (entries[key] !== undefined) written += `/${key} ${entries[key]}`;
  return `<<${written}>>`;
}
