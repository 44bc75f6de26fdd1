/** Words as they are set: a thread's name inside a sentence is printed as everywhere else, whoever wrote the sentence: 'M10x1' as 'M10×1'. */
import type { Words } from '../../base/words.ts';

export function typeset(words: Words): Words {
  return { ...words, say: (id, grounds) => crossed(unbroken(words.say(id, grounds))) };
}

/** Ids inside marks ('{sheet:…}') stay. */
const crossed = (text: string): string => (text.includes('x') ? text.replace(/(?<!\{[^}]*)\b(M\d+(?:\.\d+)?)x(?=\d)/g, '$1\u00d7') : text);

/** '1 7/8' stays on its line: broken, it reads as 1. */
const unbroken = (text: string): string => (text.includes('/') ? text.replace(/(?<=\b\d+) (?=\d+\/\d+\b)/g, '\u00a0') : text);
