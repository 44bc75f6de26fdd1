/** An answer of the handbook as lines for a terminal: labels left, figures right of them, the sources below. */
import type { PlainWords } from '../base/plain-words.ts';
import { toMm } from '../base/units.ts';
import type { Answer, Part, Value } from '../handbook/look/answer.ts';
import { wrap } from './help.ts';

const INDENT = 2;
const GAP = 2;
const PLACES = 3;

export function answerText(answer: Answer, words: PlainWords): string {
  const labels = answer.parts.flatMap((p) => p.rows.map((r) => label(words, r)));
  const wide = Math.max(...labels.map((l) => l.length)) + GAP;
  const parts = answer.parts.filter((p) => p.rows.length > 0).map((p) => partText(p, words, wide));
  const notes = answer.notes.flatMap((id) => wrap(words.say(`look.note.${id}`), 0));
  const sources = answer.sources.flatMap(({ source, standing }) => {
    const [first = '', ...rest] = wrap(words.say('look.source', { source, standing: words.say(`look.standing.${standing}`) }), INDENT * 2);
    return [`${' '.repeat(INDENT)}- ${first.trimStart()}`, ...rest];
  });
  const blocks = [
    [words.say(`look.title.${answer.subject}`, { about: answer.name })],
    ...parts,
    ...(notes.length > 0 ? [notes] : []),
    [words.say('look.sources'), ...sources],
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function partText(part: Part, words: PlainWords, wide: number): readonly string[] {
  const rows = part.rows.map(
    (r) => `${' '.repeat(INDENT)}${label(words, r).padEnd(wide)}${r.values.map((v) => valueText(v, words)).join('  ')}`,
  );
  return [words.say(`look.part.${part.title}`, { about: part.about ?? '' }), ...rows];
}

function label(words: PlainWords, row: Part['rows'][number]): string {
  return words.say(`look.row.${row.label}`, { about: row.about ?? '' });
}

function valueText(value: Value, words: PlainWords): string {
  switch (value.kind) {
    case 'length':
      return `${toMm(value.value).toFixed(PLACES)} mm`;
    case 'limits':
      return words.say('look.span', { from: toMm(value.lo).toFixed(PLACES), to: `${toMm(value.hi).toFixed(PLACES)} mm` });
    case 'number':
      return withUnit(value.value.toFixed(value.places), value.unit);
    case 'span':
      return words.say('look.span', { from: value.lo.toFixed(value.places), to: withUnit(value.hi.toFixed(value.places), value.unit) });
    case 'name':
      return value.name;
    case 'word':
      return words.say(`look.word.${value.id}`);
  }
}

function withUnit(number: string, unit: string): string {
  if (unit === '') return number;
  return unit === '%' || unit === '°' ? `${number}${unit === '%' ? ' %' : unit}` : `${number} ${unit}`;
}
