/** Reasoning as a person reads it in a terminal: words are `figure.*`, `size.*` and those of findings. */
import { ownWords } from '../base/own-words.ts';
import type { Words } from '../base/words.ts';
import type { NextSize, SizeFigure, SizeView, VaryRow, VaryView } from '../model/size.ts';

const STEP = '  ';

/** Every figure with its formula, inputs and source; under what was chosen the next size down and up. */
export function showSize(view: SizeView, words: Words): string {
  const figures = view.figures.flatMap((one) => [...figureLines(one, words), '']);
  const more = view.vary.length === 0 ? [] : [words.say('size.vary', { any: view.vary.join(', ') })];
  return `${[view.title, '', ...figures, ...more].join('\n')}\n`;
}

/** One size taken through its values, a line each. */
export function showVary(view: VaryView, words: Words): string {
  const heads = [
    withUnit(nameOf(view.of, words), view.unit, words),
    ...view.columns.map(({ of, unit }) => withUnit(nameOf(of, words), unit, words)),
    '',
  ];
  const letters = heads.map((_, i) => (i === 0 ? 'x' : String.fromCharCode('a'.charCodeAt(0) + i - 1)));
  const legend = heads.slice(0, -1).map((head, i) => `${STEP}${letters[i]}  ${head}`);
  const rows = view.rows.map((row) => cellsOf(row, words));
  const table = [[...letters.slice(0, -1), ''], ...rows];
  const widths = letters.map((_, i) => Math.max(...table.map((cells) => (cells[i] ?? '').length)));
  const lines = table.map((cells) =>
    cells
      .map((cell, i) => (i < cells.length - 1 ? cell.padStart(widths[i] ?? 0) : cell))
      .join(STEP)
      .trimEnd(),
  );
  return `${[view.title, '', ...legend, '', ...lines].join('\n')}\n`;
}

function cellsOf(row: VaryRow, words: Words): readonly string[] {
  const said = [
    ...(row.now ? [words.say('size.now')] : []),
    ...row.refused.map((code) => words.say('size.refused', { code })),
    ...row.warned.map((code) => words.say('size.warned', { code })),
  ];
  return [plain(row.value), ...row.figures.map((f) => (f === undefined ? words.say('size.none') : plain(f))), said.join('; ')];
}

function figureLines(one: SizeFigure, words: Words): readonly string[] {
  const inputs = Object.entries(one.inputs).map(([letter, value]) => words.say('size.input', { letter, value: plain(value) }));
  const how = [
    ownWords('formula', one.formula, words),
    ...(inputs.length > 0 ? [words.say('size.with', { inputs: inputs.join(', ') })] : []),
  ].join(' ');
  return [
    words.say('size.figure', { name: nameOf(one.of, words), value: withUnit(plain(one.value), one.unit, words), stated: one.stated }),
    STEP + how,
    ...(one.source === '' ? [] : [STEP + words.say('size.source', { source: ownWords('source', one.source, words) })]),
    ...one.next.map((next) => STEP + nextLine(next, words)),
  ];
}

function nextLine(next: NextSize, words: Words): string {
  const changes = next.changes.map(({ of, from, to, unit }) =>
    words.say('size.change', { name: nameOf(of, words), from: plain(from), to: withUnit(plain(to), unit, words) }),
  );
  const said = [
    ...next.refused.map((code) => words.say('size.refused', { code })),
    ...next.warned.map((code) => words.say('size.warned', { code })),
    ...changes,
  ];
  const what = said.length === 0 ? words.say('size.no-change') : said.join('; ');
  return words.say('size.next', { down: next.way === 'down', value: withUnit(plain(next.value), next.unit, words), what });
}

const nameOf = (of: string, words: Words): string => (words.has(`figure.${of}`) ? words.say(`figure.${of}`) : of);
const withUnit = (value: string, unit: string, words: Words): string =>
  unit === '' || unit === 'ratio' ? value : `${value} ${ownWords('unit', unit, words)}`;
/** Four places that count: more than a sheet prints, as one size is held against the next. */
const plain = (value: number): string => String(Number(value.toPrecision(4)));
