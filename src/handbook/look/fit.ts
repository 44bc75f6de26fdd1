/** `look fit`: limits of a shaft, of a hole, or of both with the play between them. */
import { readQuantity } from '../../base/quantity.ts';
import { type Len, len, showMm } from '../../base/units.ts';
import { type FitLimits, fitLimits } from '../iso286.ts';
import { generalTolerance, lookUpGeneral } from '../iso2768.ts';
import { type Ask, type Found, figure, grounds, length, limits, type Part, row, rowAbout } from './answer.ts';

/** '10 h7', '10 mm H7/g6', '10H7'; '25 m' for ISO 2768. */
export function lookFit({ words }: Ask): Found {
  const read = /^(.*?)\s*([a-zA-Z]{1,2}\d{1,2})(?:\s*\/?\s*([a-zA-Z]{1,2}\d{1,2}))?$/.exec(words.trim());
  const general = /^(.*\d(?:\s*mm)?)\s+(?:ISO 2768-?)?\s*([fmc])$/i.exec(words.trim());
  if (!read && general) return generalFit(words, general[1] ?? '', (general[2] ?? '').toLowerCase());
  const size = sizeOf(read?.[1] ?? '');
  if (!read || size === undefined) return { unknown: words, near: ['10 h7', '10 H7/g6', '25 m'] };
  const asked = [read[2], read[3]].filter((fit) => fit !== undefined);
  const sides = asked.map((fit) => fitLimits(size, fit));
  if (sides.some((s) => s === undefined)) return { unknown: words, near: nearFits(size, asked.find((f) => !fitLimits(size, f)) ?? '') };
  const all = sides.flatMap((s) => (s ? [s] : []));
  return {
    answer: {
      subject: 'fit',
      name: `${showMm(size, 0)} ${asked.join('/')}`,
      parts: [...all.map(sidePart), ...playPart(all)],
      notes: [],
      sources: grounds(...all),
    },
  };
}

function sidePart(fit: FitLimits): Part {
  return {
    title: isHole(fit) ? 'hole' : 'shaft',
    about: fit.as,
    rows: [
      row('limits', limits(fit)),
      row('deviations', figure(fit.lower / 10, 'µm', 0), figure(fit.upper / 10, 'µm', 0)),
      row('band', figure((fit.upper - fit.lower) / 10, 'µm', 0)),
    ],
  };
}

function playPart(all: readonly FitLimits[]): readonly Part[] {
  const [hole, shaft] = [all.find(isHole), all.find((f) => !isHole(f))];
  if (!hole || !shaft) return [];
  const rows = [row('play', figure((hole.lo - shaft.hi) / 10, 'µm', 0), figure((hole.hi - shaft.lo) / 10, 'µm', 0))];
  return [{ title: 'together', rows }];
}

function generalFit(words: string, text: string, cls: string): Found {
  const size = sizeOf(text);
  const found = size === undefined ? undefined : lookUpGeneral(size, cls as 'f' | 'm' | 'c');
  if (size === undefined || !found) return { unknown: words, near: ['25 f', '25 m', '25 c'] };
  const half = generalTolerance(size, cls as 'f' | 'm' | 'c');
  const rows = [rowAbout('general', cls, length(half)), row('limits', limits({ lo: len(size - half), hi: len(size + half) }))];
  return {
    answer: { subject: 'fit', name: `${showMm(size, 0)} ${cls}`, parts: [{ title: 'general', rows }], notes: [], sources: grounds(found) },
  };
}

function isHole(fit: FitLimits): boolean {
  return fit.as[0] === fit.as[0]?.toUpperCase();
}

function sizeOf(text: string): Len | undefined {
  const size = readQuantity(text.trim(), 'length');
  return typeof size === 'number' && size > 0 ? len(size) : undefined;
}

/** The same letter in other grades, and the grade in other letters. */
function nearFits(size: Len, fit: string): readonly string[] {
  const [, letter = 'h', grade = '7'] = /^([a-zA-Z]+)(\d+)$/.exec(fit) ?? [];
  const others = [...GRADES.map((g) => `${letter}${g}`), ...LETTERS.map((l) => `${l}${grade}`), 'h7', 'H7'];
  return [...new Set(others)]
    .filter((f) => fitLimits(size, f))
    .slice(0, 5)
    .map((f) => `${showMm(size, 0)} ${f}`);
}
const GRADES: readonly number[] = [6, 7, 8, 9, 11];
const LETTERS: readonly string[] = ['f', 'g', 'h', 'm', 'p', 'H'];
