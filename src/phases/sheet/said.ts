/** What a sheet is written with: sentences, and how its lengths are written in them and beside them. */
import { ownWords } from '../../base/own-words.ts';
import { mm } from '../../base/units.ts';
import type { Lengths, Words } from '../../base/words.ts';
import type { Manner, Units } from '../../drawing/sheet/manner.ts';
import { mannerOf } from '../../drawing/sheet/metric.ts';
import { typeset } from './typeset.ts';

/** `plain`: a length that another room wrote in millimetres. */
export type SheetWords = Words & Manner & { plain(mm: string): string };

export function wordsIn(words: Words, units: Units): SheetWords {
  const manner = mannerOf(units);
  const plain = (text: string): string => (units === 'mm' || Number.isNaN(Number(text)) ? text : manner.size(mm(Number(text))));
  const derived = (value: number, unit: string): string => inOwnUnit(manner.derived(value, unit), words);
  return { ...typeset(units === 'mm' ? words : words.written(inInches(manner))), ...manner, derived, plain };
}

/** '10.2 times': the unit behind the figure as the language has it. */
function inOwnUnit(text: string, words: Words): string {
  const blank = text.indexOf(' ');
  return blank < 0 ? text : `${text.slice(0, blank)} ${ownWords('unit', text.slice(blank + 1), words)}`;
}

function inInches(manner: Manner): Lengths {
  return {
    bare: (value) => manner.about(mm(value)),
    withUnit: (value) => `${manner.about(mm(value))} in`,
    sold: (value) => manner.named(mm(value)),
    pick: (_, inch) => inch,
  };
}
