/** How numbers, strings, names and dictionaries are written in a PDF. */

const PLACES = 5;
const HEX = 16;

/** No exponent, no -0, no more places than paper shows. Throws Error for what is no number. */
export function number(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`not a number on paper: ${value}`);
  const text = value.toFixed(PLACES).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

/** Text for a reader: as it stands where it is plain ASCII, else UTF-16 with its mark, in hexadecimal. */
export function string(text: string): string {
  if (/^[\x20-\x7e]*$/.test(text)) return `(${text.replace(/[\\()]/g, '\\$&')})`;
  const units = Array.from({ length: text.length }, (_, i) => text.charCodeAt(i).toString(HEX).padStart(4, '0'));
  return `<feff${units.join('')}>`;
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
  const written = Object.entries(entries).flatMap(([key, value]) => (value === undefined ? [] : [`/${key} ${value}`]));
  return `<<${written.join('')}>>`;
}
