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

/** All the parts' strips one after the other, so that no paper is wasted: each strip says of which part it is. */
export function stripsPage(plan: Plan, exercises: readonly Exercise[], words: SheetWords): PlainPage {
  const how: Section = { kind: 'notes', title: '', items: [words.say('exercise.how')], manner: 'plain' };
  const sections = exercises.map(({ desk, strips }): Section => {
    const title = exercises.length > 1 ? partName(desk.part, words) : '';
    return { kind: 'strips', title, text: words.say('exercise.marked', { part: desk.part.id }), strips };
  });
  const [first, ...others] = exercises;
  const of = first && others.length === 0 ? { part: partName(first.desk.part, words), id: first.desk.part.id } : undefined;
  return {
    kind: 'plain',
    key: of ? `strips/${of.id}` : 'strips',
    heading: of ? words.say('exercise.strips.heading', { part: of.part }) : words.say('exercise.strips.all'),
    name: of ? of.part.toUpperCase() : plan.fitting.title,
    about: of ? plan.fitting.title : words.say('exercise.strips.about', { n: exercises.length }),
    right: words.say('exercise.strips'),
    sections: [how, ...sections],
    cautions: [cautionSaid(words, 'exercise.strips.foot')],
  };
}

/** `place`: after the strips, which are put away by themselves, or after other answers, with which these may share a sheet. */
export function answersPage(plan: Plan, exercise: Exercise, place: 'after strips' | 'after answers', words: SheetWords): PlainPage {
  const { desk, strips } = exercise;
  const inOrder = [...strips].sort((a, b) => a.place - b.place);
  const orders: Section = {
    kind: 'notes',
    title: words.say('exercise.orders.title', { part: partName(desk.part, words) }),
    items: [
      countSaid(exercise, words),
      words.say('exercise.one', { letters: inOrder.map((strip) => strip.letter).join(' ') }),
      words.say('exercise.together'),
      ...sharedBy(plan, desk.part.id, words).map((facts) => words.say('exercise.day', facts)),
    ],
    manner: 'plain',
  };
  const part = partName(desk.part, words);
  return {
    kind: 'plain',
    key: `answers/${desk.part.id}`,
    heading: words.say('exercise.answers.heading', { part }),
    name: part.toUpperCase(),
    about: plan.fitting.title,
    right: words.say('exercise.answers'),
    sections: [orders, pairsTable(exercise, words)],
    cautions: [cautionSaid(words, 'exercise.answers.foot')],
    ...(place === 'after answers' ? { mayFollow: true } : {}),
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
