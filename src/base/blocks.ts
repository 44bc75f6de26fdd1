/** Template files cut into their blocks, and how Handlebars is to read a block, now or when the command is built. */
import { BLOCK, plainStretches, type Stretches } from './plain-words.ts';

/** `knownHelpers`: those of ours (words.ts); a helper of any other name is an error when the block is read. */
export const READING = {
  strict: true,
  noEscape: true,
  knownHelpersOnly: true,
  knownHelpers: { plural: true, is: true, mm: true, rounded: true, 'in-units': true, 'with-unit': true, 'as-sold': true, 'by-units': true },
};

const COMMENT = /\{\{!--[\s\S]*?--\}\}|\{\{![^}]*\}\}/g;

/** Id and text of every block of a file, found by their marks. Throws Error where anything but blocks and comments stands in it. */
export function blocksIn(name: string, text: string): readonly (readonly [id: string, body: string])[] {
  const blocks: [string, string][] = [];
  const rest = text.replace(BLOCK, (_, id: string, body: string) => {
    blocks.push([id, body]);
    return '';
  });
  if (rest.replace(COMMENT, '').trim() !== '') throw new Error(`${name}: only inline blocks may stand here`);
  return blocks;
}

/** A block without fields is its own text. */
export const hasFields = (body: string): boolean => body.includes('{{');

/** Of a block in which stands nothing but words and fields. The others are for the engine. */
export function stretchesOf(body: string): Stretches | undefined {
  const stretches = plainStretches(body);
  return stretches?.names.some((name) => Object.hasOwn(READING.knownHelpers, name)) ? undefined : stretches;
}
