/** What a table or a design states in its own short words, in the reader's language; names of published works stay as they are printed. */
import type { Words } from './words.ts';

/**
 * `text` as the block '<kind>.<text in small letters and hyphens>' has it ('source.common-practice-no-source'), or as it is where there is
 * none. `kind`: 'source', 'formula', 'unit', 'material', 'title'.
 */
export function ownWords(kind: string, text: string, words: Pick<Words, 'has' | 'say'>): string {
  const id = `${kind}.${text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')}`;
  return words.has(id) ? words.say(id) : text;
}
