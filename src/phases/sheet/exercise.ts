/** An exercise from a plan: its operations shuffled, to be put in order; and an order marked against the rules, not against one key. */
import type { Words } from '../../base/words.ts';
import { layOut, numbered } from '../../drawing/sheet/layout.ts';
import { pageOf } from '../../drawing/sheet/page.ts';
import type { Advances, Document } from '../../model/display.ts';
import type { PartId } from '../../model/ids.ts';
import type { Plan } from '../../model/plan.ts';
import type { SheetView } from '../../model/sheet.ts';
import type { SheetWish } from '../../model/wish.ts';
import { puzzleOf } from './exercise/musts.ts';
import { answersPage, type Exercise, stripsPage } from './exercise/pages.ts';
import { stripsOf } from './exercise/strips.ts';
import { deskOf } from './lookup.ts';
import { wordsIn } from './said.ts';

export { markOrder } from './exercise/marking.ts';
export type { Exercise } from './exercise/pages.ts';
export { readOrder } from './exercise/read-order.ts';

export type ExerciseMeans = SheetWish & {
  readonly words: Words;
  readonly advances: Advances;
  readonly language: string;
};

/** Throws Error for a part that the plan does not make. */
export function exerciseOf(plan: Plan, part: PartId, plain: Words, units: SheetWish['units'] = 'mm'): Exercise {
  const planned = plan.parts.find((p) => p.part.id === part);
  if (!planned) throw new Error(`the plan makes no '${part}'`);
  const desk = deskOf(planned);
  const puzzle = puzzleOf(desk);
  return { desk, puzzle, strips: stripsOf(desk, puzzle, plan.mark, wordsIn(plain, units)) };
}

/** Strips of all the parts first, then the answers, so that these can be put away. */
export function exercisePages(
  plan: Plan,
  parts: readonly PartId[],
  means: ExerciseMeans,
): { readonly view: SheetView; readonly document: Document } {
  const words = wordsIn(means.words, means.units ?? 'mm');
  const exercises = parts.map((part) => exerciseOf(plan, part, means.words, means.units));
  const view: SheetView = {
    title: words.say('exercise.title', { fitting: plan.fitting.title }),
    language: means.language,
    mark: plan.mark,
    foot: words.say('foot', { mark: `${plan.mark.slice(0, plan.mark.length / 2)} ${plan.mark.slice(plan.mark.length / 2)}` }),
    sheetNo: words.say('sheet-no', { n: '{n}', of: '{of}' }),
    goesOn: words.say('goes-on'),
    toSheet: words.say('to-sheet', { n: '{n}', heading: '{heading}' }),
    pages: [
      stripsPage(plan, exercises, words),
      ...exercises.map((e, i) => answersPage(plan, e, i === 0 ? 'after strips' : 'after answers', words)),
    ],
  };
  const placed = layOut(view, {
    advances: means.advances,
    page: pageOf(means),
    grip: () => undefined,
    strip: () => [],
    lesson: () => undefined,
    arrangement: () => {
      throw new Error('an exercise shows no fitting');
    },
    whole: () => {
      throw new Error('an exercise shows no fitting');
    },
    parts: () => {
      throw new Error('an exercise shows no part');
    },
  });
  return { view: numbered(view, placed.sheets), document: placed.document };
}
