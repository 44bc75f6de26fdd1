/**
 * How the signs of a font are written in a page's texts: a byte a sign where Latin 1 has it, so that texts are short and can be read in an
 * uncompressed file. A map from these codes to glyphs goes with each font (ISO 32000-1, 9.7.5), and one to signs for who copies text (9.10.3).
 */
import { dictionary } from './pdf-write.ts';

/** `code`: as its bytes, one or two of them. */
type Coded = { readonly code: readonly number[]; readonly glyph: number; readonly codePoint: number };
export type Codes = {
  /** Bytes for a sign that is shown by that glyph. */
  code(codePoint: number, glyph: number): readonly number[];
  all(): readonly Coded[];
};

/** Latin 1 without its control codes. */
const isLatin1 = (codePoint: number): boolean => (codePoint >= 0x20 && codePoint <= 0x7e) || (codePoint >= 0xa0 && codePoint <= 0xff);
/** The control codes that Latin 1 leaves: for the first other signs of a font. */
const SPARE = Array.from({ length: 0xa0 - 0x80 }, (_, i) => 0x80 + i);
/** First bytes of codes of two bytes, for whatever comes after. None is 0: some readers take a code for its number, however long it is. */
const LEADS = { from: 1, to: 8 } as const;
const BYTE = 256;
const MOST_IN_A_BLOCK = 100;
const HEX = 16;

/** Throws Error when a font is to show more signs than there are codes: some two thousand. */
export function codesOfFont(): Codes {
  const coded = new Map<number, Coded>();
  let others = 0;
  const next = (): readonly number[] => {
    const spare = SPARE[others];
    const beyond = others - SPARE.length;
    others += 1;
    const lead = LEADS.from + Math.floor(beyond / BYTE);
    if (lead > LEADS.to) throw new Error('a font shows more signs than there are codes for');
    return spare === undefined ? [lead, beyond % BYTE] : [spare];
  };
  return {
    code: (codePoint, glyph) => {
      const known = coded.get(codePoint);
      if (known) return known.code;
      const code = isLatin1(codePoint) ? [codePoint] : next();
      coded.set(codePoint, { code, glyph, codePoint });
      return code;
    },
    all: () => [...coded.values()].sort((a, b) => a.code.length - b.code.length || numberOf(a) - numberOf(b)),
  };
}

const numberOf = ({ code }: Coded): number => code.reduce((sum, byte) => sum * BYTE + byte, 0);
const hexOf = (bytes: readonly number[]): string => `<${bytes.map((byte) => byte.toString(HEX).padStart(2, '0')).join('')}>`;

const SYSTEM = dictionary({ Registry: '(Adobe)', Ordering: '(Identity)', Supplement: '0' });
/** Of the stream that holds the map to glyphs. */
export const CMAP_ENTRIES = { Type: '/CMap', CMapName: '/Valvewright', CIDSystemInfo: SYSTEM } as const;

/** Codes to glyphs; the glyphs of the font in the file are numbered as its subset numbers them. */
export function glyphMap(codes: Codes): string {
  const rows = codes.all().map((one) => `${hexOf(one.code)} ${one.glyph}`);
  return cmap(CMAP_ENTRIES.CMapName, 1, rows, 'cidchar');
}

/** Codes to UTF-16. */
export function signMap(codes: Codes): string {
  const units = (codePoint: number): readonly number[] =>
    Array.from(String.fromCodePoint(codePoint)).flatMap((sign) =>
      Array.from({ length: sign.length }, (_, i) => sign.charCodeAt(i)).flatMap((unit) => [Math.floor(unit / BYTE), unit % BYTE]),
    );
  return cmap(
    '/Adobe-Identity-UCS',
    2,
    codes.all().map((one) => `${hexOf(one.code)} ${hexOf(units(one.codePoint))}`),
    'bfchar',
  );
}

function cmap(name: string, type: 1 | 2, rows: readonly string[], kind: 'cidchar' | 'bfchar'): string {
  const blocks = Array.from({ length: Math.ceil(rows.length / MOST_IN_A_BLOCK) }, (_, i) => {
    const some = rows.slice(i * MOST_IN_A_BLOCK, (i + 1) * MOST_IN_A_BLOCK);
    return [`${some.length} begin${kind}`, ...some, `end${kind}`];
  });
  return [
    '/CIDInit /ProcSet findresource begin',
    '12 dict begin',
    'begincmap',
    `/CIDSystemInfo ${type === 1 ? SYSTEM : '<</Registry (Adobe)/Ordering (UCS)/Supplement 0>>'} def`,
    `/CMapName ${name} def`,
    `/CMapType ${type} def`,
    '2 begincodespacerange',
    `${hexOf([LEADS.from, 0])} ${hexOf([LEADS.to, BYTE - 1])}`,
    `${hexOf([LEADS.to + 1])} ${hexOf([BYTE - 1])}`,
    'endcodespacerange',
    ...blocks.flat(),
    'endcmap',
    'CMapName currentdict /CMap defineresource pop',
    'end',
    'end',
  ].join('\n');
}
