/** The words of a key that a file is asked for: what it is for, and how it may look. */
import type { Words } from './words.ts';

/**
 * `id` as `askId` gives it. Keys that mean the same wherever they stand ('division', 'by') have their words once, under 'ask.shared'.
 * Empty texts where there are none.
 */
export function askedWords(words: Words, id: string): { readonly what: string; readonly example: string } {
  const shared = `ask.shared.${id.split('.').at(-1)}`;
  const say = (end: string) =>
    [`ask.${id}${end}`, `${shared}${end}`].filter((block) => words.has(block)).map((block) => words.say(block))[0] ?? '';
  return { what: say(''), example: say('.example') };
}
