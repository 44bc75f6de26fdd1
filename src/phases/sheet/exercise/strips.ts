/** The operations of a part as strips to be put in order, each under a letter; shuffled the same way for the same plan. */
import { markOf } from '../../../base/mark.ts';
import { isRight } from '../../../base/orders.ts';
import type { OpId } from '../../../model/ids.ts';
import type { Row, StripToSort } from '../../../model/sheet.ts';
import { gripName } from '../grip.ts';
import type { Desk } from '../lookup.ts';
import { partName } from '../names.ts';
import { NOTHING_COMMON } from '../once.ts';
import { rowsOf } from '../operations.ts';
import type { SheetWords } from '../said.ts';
import type { Puzzle } from './musts.ts';

export type Strip = StripToSort & { readonly op: OpId; readonly place: number };

/** `mark`: the plan's. The order in which they lie is a wrong one wherever there is a wrong one. */
export function stripsOf(desk: Desk, puzzle: Puzzle, mark: string, words: SheetWords): readonly Strip[] {
  const { setUps } = desk.planned.route;
  const rows = new Map(
    setUps.flatMap((setUp) =>
      rowsOf(desk, setUp, NOTHING_COMMON, withoutSheets(words)).map(
        (row) => [row.op, { row, hold: gripName(desk, setUp, words) }] as const,
      ),
    ),
  );
  const part = partName(desk.part, words);
  return shuffled(puzzle, `${mark} ${desk.part.id}`).map((place, i): Strip => {
    const op = puzzle.ops[place] ?? '';
    const found = rows.get(op);
    if (!found) throw new Error(`'${op}' has no row`);
    return { op, place, letter: letterOf(i), ...faceOf(found.row), hold: found.hold, part };
  });
}

/** An exercise is by itself: no text of it names a sheet. */
const withoutSheets = (words: SheetWords): SheetWords => ({
  ...words,
  say: (id, facts) => words.say(id, facts && 'sums' in facts ? { ...facts, sums: '' } : facts),
});

function faceOf(row: Row): Pick<StripToSort, 'title' | 'note' | 'size'> {
  const [first] = row.sizes;
  return { title: row.title, note: row.note, size: first ? [first.text, first.after].filter((piece) => piece !== '').join(' ') : '' };
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
/** A to Z, then AA, AB ... */
function letterOf(i: number): string {
  const last = ALPHABET[i % ALPHABET.length] ?? '';
  return i < ALPHABET.length ? last : letterOf(Math.floor(i / ALPHABET.length) - 1) + last;
}

const TRIES = 10;

function shuffled({ ordering }: Puzzle, seed: string): readonly number[] {
  for (let n = 0; n < TRIES; n += 1) {
    const order = shuffle(ordering.count, `${seed} ${n}`);
    if (!isRight(ordering, order)) return order;
  }
  return shuffle(ordering.count, seed);
}

/** Drawn one after the other out of those that are left, by a mark of the seed and how many there are. */
function shuffle(count: number, seed: string): readonly number[] {
  const left = Array.from({ length: count }, (_, i) => i);
  return Array.from({ length: count }, (_, i) => left.splice(Number(`0x${markOf(`${seed} ${i}`)}`) % left.length, 1)[0] ?? 0);
}
