/**
 * An ICC profile (ICC.1:2004-10, version 4.2) of the colours that the pages are written in: sRGB as IEC 61966-2-1 has it. Written here, so that
 * no file has to be found for it. Primaries and white of the standard, brought to D50 by the linear Bradford transform, as the ICC asks; a test
 * works them out again.
 */

/** Columns X, Y, Z of red, green, blue, relative to D50. */
export const COLORANTS: readonly (readonly [number, number, number])[] = [
  [0.43607, 0.22249, 0.01392],
  [0.38515, 0.71687, 0.09708],
  [0.14307, 0.06061, 0.7141],
];
/** From the standard's white, D65, to D50, row by row. */
export const ADAPTATION: readonly number[] = [1.04788, 0.02292, -0.05022, 0.02959, 0.99048, -0.01707, -0.00925, 0.01508, 0.75168];
const D50: readonly number[] = [0.9642, 1, 0.8249];
/** Y = ((a X + b)^g) from d on, c X below (IEC 61966-2-1): g, a, b, c, d. */
const CURVE: readonly number[] = [2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045];

const HEADER = 128;
const ENTRY = 12;
const WORD = 4;
const SIXTEENTH_BITS = 0x10000;
const VERSION = 0x04200000;

export function srgbProfile(): Uint8Array {
  const [red, green, blue] = COLORANTS.map((xyz) => data('XYZ ', xyz.map(fixed)));
  const curve = data('para', [3 * SIXTEENTH_BITS, ...CURVE.map(fixed)]);
  const tags: readonly (readonly [string, Uint8Array | undefined])[] = [
    ['desc', words('sRGB IEC61966-2.1')],
    ['cprt', words('No copyright, use freely')],
    ['wtpt', data('XYZ ', D50.map(fixed))],
    ['chad', data('sf32', ADAPTATION.map(fixed))],
    ['rXYZ', red],
    ['gXYZ', green],
    ['bXYZ', blue],
    ['rTRC', curve],
    ['gTRC', curve],
    ['bTRC', curve],
  ];
  return assembled(tags.flatMap(([sign, body]) => (body ? [{ sign, body }] : [])));
}

function assembled(tags: readonly { readonly sign: string; readonly body: Uint8Array }[]): Uint8Array {
  const places = new Map<Uint8Array, number>();
  let end = HEADER + WORD + tags.length * ENTRY;
  for (const { body } of tags) {
    if (places.has(body)) continue;
    places.set(body, end);
    end += Math.ceil(body.length / WORD) * WORD;
  }
  const bytes = new Uint8Array(end);
  const view = new DataView(bytes.buffer);
  header(view, end);
  view.setUint32(HEADER, tags.length);
  for (const [i, { sign, body }] of tags.entries()) {
    const at = HEADER + WORD + i * ENTRY;
    const place = places.get(body) ?? 0;
    letters(view, at, sign);
    view.setUint32(at + WORD, place);
    view.setUint32(at + 2 * WORD, body.length);
    bytes.set(body, place);
  }
  return bytes;
}

/** ICC.1:2004-10, 7.2: places from the table there. */
function header(view: DataView, size: number): void {
  view.setUint32(0, size);
  view.setUint32(8, VERSION);
  letters(view, 12, 'mntrRGB XYZ ');
  // a date is asked for; it is the same as the sheet's own
  for (const [i, part] of [2000, 1, 1, 0, 0, 0].entries()) view.setUint16(24 + 2 * i, part);
  letters(view, 36, 'acsp');
  for (const [i, part] of D50.entries()) view.setUint32(68 + WORD * i, fixed(part));
}

function letters(view: DataView, at: number, text: string): void {
  for (let i = 0; i < text.length; i++) view.setUint8(at + i, text.charCodeAt(i));
}

/** s15Fixed16Number, as an unsigned word. */
function fixed(value: number): number {
  return Math.round(value * SIXTEENTH_BITS) >>> 0;
}

function data(sign: string, numbers: readonly number[]): Uint8Array {
  const bytes = new Uint8Array(2 * WORD + numbers.length * WORD);
  const view = new DataView(bytes.buffer);
  letters(view, 0, sign);
  for (const [i, value] of numbers.entries()) view.setUint32(2 * WORD + i * WORD, value);
  return bytes;
}

/** One text in English: 'mluc' of ICC.1:2004-10, 10.13. */
function words(text: string): Uint8Array {
  const at = 28;
  const bytes = new Uint8Array(at + 2 * text.length);
  const view = new DataView(bytes.buffer);
  letters(view, 0, 'mluc');
  view.setUint32(8, 1);
  view.setUint32(12, ENTRY);
  letters(view, 16, 'enUS');
  view.setUint32(20, 2 * text.length);
  view.setUint32(24, at);
  for (let i = 0; i < text.length; i++) view.setUint16(at + 2 * i, text.charCodeAt(i));
  return bytes;
}
