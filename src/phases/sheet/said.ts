/** What a sheet is written with: sentences, and how its lengths are written in them and beside them. */
import { mm } from '../../base/units.ts';
import type { Lengths, Words } from '../../base/words.ts';
import { type Manner, mannerOf, type Units } from '../../drawing/sheet/manner.ts';
import { typeset } from './typeset.ts';

/** `plain`: a length that another room wrote in millimetres. */
export type SheetWords = Words & Manner & { plain(mm: string): string };

export function wordsIn(words: Words, units: Units): SheetWords {
  const manner = mannerOf(units);
  const plain = (text: string): string => (units === 'mm' || Number.isNaN(Number(text)) ? text : manner.size(mm(Number(text))));
  return { ...typeset(units === 'mm' ? words : words.written(inInches(manner))), ...manner, plain };
}

function inInches(manner: Manner): Lengths {
  return {
    bare: (value) => manner.about(mm(value)),
    withUnit: (value) => `${manner.about(mm(value))} in`,
    sold: (value) => manner.named(mm(value)),
    pick: (_, inch) => inch,
  };
}
