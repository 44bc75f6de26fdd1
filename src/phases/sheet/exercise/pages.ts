/** The exercise as pages: strips to cut out, and on a page of its own what must come before what and how many orders are right. */
import { countOrders } from '../../../base/orders.ts';
import type { Plan } from '../../../model/plan.ts';
import type { PlainPage, Section } from '../../../model/sheet.ts';
import { cautionSaid } from '../caution.ts';
import { sharedBy } from '../day.ts';
import type { Desk } from '../lookup.ts';
import { partName } from '../names.ts';
import type { SheetWords } from '../said.ts';
import { mustOf, toldPairs } from './marking.ts';
import type { Puzzle } from './musts.ts';
import type { Strip } from './strips.ts';

export type Exercise = { readonly desk: Desk; readonly puzzle: Puzzle; readonly strips: readonly Strip[] };

export function stripsPage(plan: Plan, { desk, strips }: Exercise, words: SheetWords): PlainPage {
  const section: Section = { kind: 'strips', title: '', text: words.say('exercise.how', { part: desk.part.id }), strips };
  return page(plan, desk, 'strips', [section], words);
}

export function answersPage(plan: Plan, exercise: Exercise, words: SheetWords): PlainPage {
  const { desk, strips } = exercise;
  const inOrder = [...strips].sort((a, b) => a.place - b.place);
  const orders: Section = {
    kind: 'notes',
    title: words.say('exercise.orders.title'),
    items: [
      countSaid(exercise, words),
      words.say('exercise.one', { letters: inOrder.map((strip) => strip.letter).join(' ') }),
      words.say('exercise.together'),
      ...sharedBy(plan, desk.part.id, words).map((facts) => words.say('exercise.day', facts)),
    ],
    manner: 'plain',
  };
  return page(plan, desk, 'answers', [orders, pairsTable(exercise, words)], words);
}

function page(plan: Plan, desk: Desk, which: 'strips' | 'answers', sections: readonly Section[], words: SheetWords): PlainPage {
  const part = partName(desk.part, words);
  return {
    kind: 'plain',
    key: `${which}/${desk.part.id}`,
    heading: words.say(`exercise.${which}.heading`, { part }),
    name: part.toUpperCase(),
    about: plan.fitting.title,
    right: words.say(`exercise.${which}`),
    sections,
    cautions: [cautionSaid(words, `exercise.${which}.foot`)],
  };
}

/** Digits in threes, with a blank that does not break. */
function countSaid({ puzzle }: Exercise, words: SheetWords): string {
  const count = countOrders(puzzle.ordering);
  if (count === undefined) return words.say('exercise.uncounted');
  return words.say('exercise.count', { one: count === 1n, count: String(count).replace(/\B(?=(\d\d\d)+$)/g, '\u00a0') });
}

function pairsTable({ puzzle, strips }: Exercise, words: SheetWords): Section {
  const byPlace = new Map(strips.map((strip) => [strip.place, strip]));
  const named = (place: number): string =>
    words.say('exercise.strip', { letter: byPlace.get(place)?.letter ?? '', title: byPlace.get(place)?.title ?? '' });
  const rows = toldPairs(puzzle, (all) => all).map(([a, b]) => {
    const { rule, grounds } = mustOf(puzzle, a, b).because;
    return [named(a), named(b), words.say(`rule.${rule}.why`, grounds)];
  });
  return {
    kind: 'table',
    title: words.say('exercise.pairs.title'),
    text: words.say('exercise.pairs.how'),
    columns: [
      { label: words.say('exercise.first'), share: 1, manner: 'text' },
      { label: words.say('exercise.then'), share: 1, manner: 'text' },
      { label: words.say('exercise.why'), share: 2, manner: 'small' },
    ],
    rows,
  };
}
