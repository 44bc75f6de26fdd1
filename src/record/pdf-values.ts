/** One value of a PDF (ISO 32000-1, 7.3) from its text. Broken text gives null, never an exception: the file is a stranger's. */

export type Dictionary = ReadonlyMap<string, Value>;
export type Value =
  | null
  | boolean
  | number
  | { readonly name: string }
  | { readonly ref: number }
  /** a string's bytes */
  | Uint8Array
  | readonly Value[]
  | Dictionary;
/** `end`: where the next thing begins. */
export type Parsed = { readonly value: Value; readonly end: number };

/** Nobody nests deeper; who does wants to bring a reader down. */
const DEEPEST = 40;
const HEX = 16;
const SPACE = /(?:[\s\0]|%[^\r\n]*)*/y;
const REFERENCE = /(\d{1,9})\s+\d{1,5}\s+R(?![A-Za-z])/y;
const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)/y;
const NAME = /\/([^\s\0()<>[\]{}/%]*)/y;
const WORD = /[A-Za-z]+/y;
const HEXADECIMAL = /<([0-9A-Fa-f\s]*)>/y;

export const isDictionary = (value: Value | undefined): value is Dictionary => value instanceof Map;

/** `bytes`: of the same places as `text`, for strings. */
export function parseValue(text: string, from: number, bytes: Uint8Array, depth = 0): Parsed {
  const at = skip(text, from);
  if (depth > DEEPEST || at >= text.length) return { value: null, end: text.length };
  if (text.startsWith('<<', at)) return parseDictionary(text, at + 2, bytes, depth);
  if (text[at] === '[') return parseArray(text, at + 1, bytes, depth);
  if (text[at] === '(') return parseString(at + 1, bytes);
  return parseSimple(text, at);
}

function parseSimple(text: string, at: number): Parsed {
  const reference = match(REFERENCE, text, at);
  if (reference) return { value: { ref: Number(reference[1]) }, end: at + reference[0].length };
  const number = match(NUMBER, text, at);
  if (number) return { value: Number(number[0]), end: at + number[0].length };
  const name = match(NAME, text, at);
  if (name) return { value: { name: plainName(name[1] ?? '') }, end: at + name[0].length };
  const hex = match(HEXADECIMAL, text, at);
  if (hex) return { value: fromHex(hex[1] ?? ''), end: at + hex[0].length };
  const word = match(WORD, text, at);
  if (word) return { value: word[0] === 'true' ? true : word[0] === 'false' ? false : null, end: at + word[0].length };
  return { value: null, end: at + 1 };
}

function parseDictionary(text: string, from: number, bytes: Uint8Array, depth: number): Parsed {
  const entries = new Map<string, Value>();
  let at = skip(text, from);
  while (at < text.length && !text.startsWith('>>', at)) {
    const key = match(NAME, text, at);
    if (!key) return { value: entries, end: at + 1 };
    const parsed = parseValue(text, at + key[0].length, bytes, depth + 1);
    entries.set(plainName(key[1] ?? ''), parsed.value);
    at = skip(text, parsed.end);
  }
  return { value: entries, end: at + 2 };
}

function parseArray(text: string, from: number, bytes: Uint8Array, depth: number): Parsed {
  const items: Value[] = [];
  let at = skip(text, from);
  while (at < text.length && text[at] !== ']') {
    const parsed = parseValue(text, at, bytes, depth + 1);
    items.push(parsed.value);
    at = skip(text, parsed.end);
  }
  return { value: items, end: at + 1 };
}

const [OPEN, CLOSE, ESCAPE] = [0x28, 0x29, 0x5c] as const;
const ESCAPED: Readonly<Record<string, number>> = { n: 10, r: 13, t: 9, b: 8, f: 12 };

function parseString(from: number, bytes: Uint8Array): Parsed {
  const out: number[] = [];
  let depth = 1;
  let at = from;
  for (; at < bytes.length; at++) {
    const byte = bytes[at] ?? 0;
    if (byte === ESCAPE) {
      const { taken, gives } = escaped(bytes, at + 1);
      out.push(...gives);
      at += taken;
      continue;
    }
    if (byte === OPEN) depth += 1;
    if (byte === CLOSE) depth -= 1;
    if (depth === 0) break;
    out.push(byte);
  }
  return { value: Uint8Array.from(out), end: at + 1 };
}

function escaped(bytes: Uint8Array, at: number): { readonly taken: number; readonly gives: readonly number[] } {
  const sign = String.fromCharCode(bytes[at] ?? 0);
  const octal = /^[0-7]{1,3}/.exec(String.fromCharCode(...bytes.slice(at, at + 3)))?.[0];
  if (octal) return { taken: octal.length, gives: [Number.parseInt(octal, 8) & 255] };
  if (sign === '\n' || sign === '\r') return { taken: 1, gives: [] };
  return { taken: 1, gives: [ESCAPED[sign] ?? bytes[at] ?? 0] };
}

function skip(text: string, from: number): number {
  SPACE.lastIndex = from;
  return from + (SPACE.exec(text)?.[0].length ?? 0);
}

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function plainName(raw: string): string {
  return raw.replace(/#([0-9A-Fa-f]{2})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, HEX)));
}

function fromHex(digits: string): Uint8Array {
  const plain = digits.replace(/\s/g, '');
  const even = plain.length % 2 === 0 ? plain : `${plain}0`;
  return Uint8Array.from({ length: even.length / 2 }, (_, i) => Number.parseInt(even.slice(2 * i, 2 * i + 2), HEX));
}

/** UTF-16 with its mark, UTF-8 with its own, else taken as Latin 1. */
export function textOf(value: Value | undefined): string | undefined {
  if (!(value instanceof Uint8Array)) return undefined;
  if (value[0] === 0xfe && value[1] === 0xff) return new TextDecoder('utf-16be').decode(value);
  if (value[0] === 0xef && value[1] === 0xbb) return new TextDecoder('utf-8').decode(value);
  return String.fromCharCode(...value);
}
