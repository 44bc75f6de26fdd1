/** What the workshop file left out and what was taken in its place, a line for each of its sections. */
import { type Len, len, mm } from '../../base/units.ts';
import type { Words } from '../../base/words.ts';
import type { Taken } from '../../model/workshop.ts';

/**
 * 'lathe: nose screwed, half-nuts yes, over-slide 54' and so on, keys as the file writes them, in the order in which they were missed.
 * `length`: how a length is written.
 */
export function takenLines(taken: readonly Taken[], words: Pick<Words, 'say'>, length: (of: Len) => string): readonly string[] {
  const section = ({ key }: Taken): string => key.slice(0, key.indexOf('.'));
  return [...new Set(taken.map(section))].map((name) => {
    const own = taken.filter((one) => section(one) === name);
    const each = own.map((one) => words.say('taken.one', { key: one.key.slice(name.length + 1), ...shown(one, length) }));
    return words.say('taken.section', { name, list: each.join(', ') });
  });
}

/** `how`: 'yes' and 'no' for what is there or not, 'nothing' for what has no usual value, else 'figure'. A range is written '24-72'. */
function shown(
  { value, unit }: Taken,
  length: (of: Len) => string,
): { readonly how: string; readonly value: string; readonly unit: string } {
  if (typeof value === 'boolean') return { how: value ? 'yes' : 'no', value: '', unit: '' };
  if (value === '') return { how: 'nothing', value: '', unit: '' };
  if (unit !== 'mm') return { how: 'figure', value: String(value), unit };
  const ends = typeof value === 'number' ? [len(value)] : value.split('-').map((end) => mm(Number(end)));
  return { how: 'figure', value: ends.map(length).join('-'), unit: '' };
}
