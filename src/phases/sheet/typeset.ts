/** Words as they are set: a thread's name inside a sentence is printed as everywhere else, whoever wrote the sentence: 'M10x1' as 'M10×1'. */
import type { Words } from '../../base/words.ts';

/** Ids inside marks ('{sheet:…}') stay. */
export function typeset(words: Words): Words {
  return { ...words, say: (id, grounds) => unbroken(words.say(id, grounds)).replace(/(?<!\{[^}]*)\b(M\d+(?:\.\d+)?)x(?=\d)/g, '$1\u00d7') };
}

/** '1 7/8' stays on its line: broken, it reads as 1. */
const unbroken = (text: string): string => text.replace(/(?<=\b\d+) (?=\d+\/\d+\b)/g, '\u00a0');
