/**
 * The last phase: a plan becomes pages. Three steps: what is said (`viewOf`: strings, no places), where it stands (`layOut`: places, no
 * words), and the sheet numbers that only the layout knows put back into the words, so that text and paper agree.
 */

import { len } from '../base/units.ts';
import type { Words } from '../base/words.ts';
import { drawArrangement } from '../drawing/arrangement.ts';
import { drawCutaway } from '../drawing/cutaway.ts';
import { drawParts } from '../drawing/parts-row.ts';
import { type LayoutMeans, layOut, numbered } from '../drawing/sheet/layout.ts';
import { pageOf } from '../drawing/sheet/page.ts';
import { drawStage, type StagePicture, type StageView } from '../drawing/stage.ts';
import type { Advances, Document } from '../model/display.ts';
import type { PartId } from '../model/ids.ts';
import type { Part } from '../model/part.ts';
import type { Plan, SetUp } from '../model/plan.ts';
import type { GripPage, LessonShown, SheetPage, SheetView } from '../model/sheet.ts';
import type { Stage } from '../model/stage.ts';
import type { SheetWish } from '../model/wish.ts';
import { isOffLathe } from '../model/work.ts';
import { closingPage } from './sheet/closing.ts';
import { coverPage } from './sheet/cover.ts';
import { gripPage } from './sheet/grip.ts';
import { withLessons } from './sheet/learner.ts';
import { type Desk, deskOf } from './sheet/lookup.ts';
import { keyOf, partName } from './sheet/names.ts';
import { holdOf, type Made, operationView, type PictureMeans, stageView } from './sheet/picture.ts';
import { holds, proofPage } from './sheet/proof.ts';
import { type SheetWords, wordsIn } from './sheet/said.ts';
import { type Steps, stepsOf } from './sheet/steps.ts';
import { drawCells, stripOf } from './sheet/strip.ts';

/** The half-section when a set-up is done, for its picture. `setUp`: its place in the part's route, from 0. */
export type StageAt = { readonly part: PartId; readonly setUp: number; readonly stage: Stage };
/** Bench where not said: a grip a page. Learner: besides, a picture an operation, its reasons, a glossary and questions. */
export type Edition = 'bench' | 'learner';
export type SheetMeans = SheetWish & {
  readonly words: Words;
  readonly advances: Advances;
  readonly language: string;
  readonly edition?: Edition;
};
/** A set-up's picture as it was asked for and as it came out, in the order of the pages. */
export type Drawn = { readonly key: string; readonly asked: StageView; readonly picture: StagePicture };
export type Sheet = { readonly view: SheetView; readonly document: Document; readonly drawn: readonly Drawn[] };

/** `view` is what text and HTML are written from, `document` what goes on paper. A plan whose proof fails is marked as a draft on every page. */
export function sheet(plan: Plan, stages: readonly StageAt[], means: SheetMeans): Sheet {
  const { advances } = means;
  const page = pageOf(means);
  const { enlarged } = page;
  const words = wordsIn(means.words, means.units ?? 'mm');
  const view = viewOf(plan, means);
  const desks = desksOf(plan);
  const stageOf = new Map(stages.map((s) => [keyOf(s.part, s.setUp), s.stage]));
  const drawn: Drawn[] = [];
  const made = (part: PartId): Made | undefined => madeLast(desks.get(part), stageOf);
  const stepsFor = stepsOfParts(desks);
  const placed = layOut(view, {
    advances,
    page,
    grip: (page, frame) => {
      const stage = stageOf.get(page.key);
      if (!stage) return undefined;
      const asked = { ...stageView(deskFor(desks, page.part), page, stage, { words, advances, made }), frame, enlarged };
      const picture = drawStage(asked);
      drawn.push({ key: page.key, asked, picture });
      return picture;
    },
    strip: (page, frame) => {
      const desk = deskFor(desks, page.part);
      const hold = (setUp: SetUp, stage: Stage) => holdOf(desk, setUp, stage, { words, advances, made });
      return page.strip ? drawCells(page.strip, stepsFor(page.part), frame, hold) : [];
    },
    lesson: (lesson, frame) => {
      const asked = lessonView(lesson, stepsFor(lesson.part), view, { words, advances, made });
      return asked && drawStage({ ...asked, frame, enlarged });
    },
    ...ofParts((id) => deskFor(desks, id).part, { words, advances, enlarged }),
  });
  return { view: numbered(view, placed.sheets), document: placed.document, drawn };
}

type OfParts = Pick<LayoutMeans, 'arrangement' | 'whole' | 'parts'>;
/** Pictures of finished parts, alone and put together. */
function ofParts(
  part: (id: PartId) => Part,
  { words, advances, enlarged }: Omit<PictureMeans, 'made'> & { readonly enlarged: number },
): OfParts {
  return {
    arrangement: ({ arrangement, ...said }, frame) => drawArrangement({ arrangement, part, frame, words: said, advances }),
    whole: ({ arrangement, alt }, frame) => drawCutaway({ arrangement, part, frame, alt }),
    parts: (asked) =>
      drawParts(
        asked.map(({ part: id, frame }) => {
          const one = part(id);
          return { part: one, frame, words: { alt: partInWords(one, words) }, advances, dims: 'none' };
        }),
        enlarged,
      ),
  };
}

/** A part as its last grip at the lathe leaves it. */
function madeLast(desk: Desk | undefined, stageOf: ReadonlyMap<string, Stage>): Made | undefined {
  const last = desk?.planned.route.setUps.findLastIndex((s) => !isOffLathe(s.grip)) ?? -1;
  const stage = desk && stageOf.get(keyOf(desk.part.id, last));
  return stage ? { desk, setUp: desk.setUp(last), stage } : undefined;
}

/** Each part's steps, opened once. */
function stepsOfParts(desks: ReadonlyMap<PartId, Desk>): (part: PartId) => Steps {
  const known = new Map<PartId, Steps>();
  return (part) => {
    const found = known.get(part) ?? stepsOf(deskFor(desks, part));
    known.set(part, found);
    return found;
  };
}

function lessonView({ part, step }: LessonShown, steps: Steps, view: SheetView, means: PictureMeans): Omit<StageView, 'frame'> | undefined {
  const op = steps.op(step);
  const pages = view.pages.filter((page): page is GripPage => page.kind === 'grip' && page.part === part);
  const page = pages.find((p) => p.blocks.some((b) => b.rows.some((row) => row.op === op)));
  return page && operationView(steps.desk, steps.setUp(step), op, steps.over(step, step), page, means);
}

function partInWords(part: Part, words: SheetWords): string {
  const widths = part.surfaces.flatMap((s) => (s.shape === 'cylinder' && s.side === 'outside' ? [s.size.target] : []));
  const across = len(Math.max(0, ...widths));
  return words.say('picture.part.alt', { part: partName(part, words), long: words.short(part.length), across: words.short(across) });
}

/** All that is printed, in the order of the day at the lathe. */
export function viewOf(plan: Plan, { words: plain, language, edition = 'bench', units = 'mm' }: Omit<SheetMeans, 'advances'>): SheetView {
  const words = wordsIn(plain, units);
  const closing = [closingPage(plan, words), proofPage(plan, words)];
  const pages = [coverPage(plan, words), ...workPages(plan, words), ...closing].filter((page) => page !== undefined);
  return {
    title: plan.fitting.title,
    language,
    mark: plan.mark,
    foot: words.say('foot', { mark: `${plan.mark.slice(0, plan.mark.length / 2)} ${plan.mark.slice(plan.mark.length / 2)}` }),
    sheetNo: words.say('sheet-no', { n: '{n}', of: '{of}' }),
    goesOn: words.say('goes-on'),
    toSheet: words.say('to-sheet', { n: '{n}', heading: '{heading}' }),
    ...(holds(plan) ? {} : { draft: words.say('draft') }),
    pages: edition === 'learner' ? withLessons(plan, desksOf(plan), pages, words) : pages,
  };
}

/** A page a grip; bench work that follows its own part's grip stands on that grip's page. */
function workPages(plan: Plan, words: SheetWords): readonly SheetPage[] {
  const desks = desksOf(plan);
  return plan.sequence.flatMap((entry, i) => {
    const desk = deskFor(desks, entry.part);
    const setUp = desk.setUp(entry.setUp);
    if (setUp.grip.kind === 'bench' && follows(plan, desks, i)) return [];
    const bench = benchAfter(plan, desks, i).map((no) => desk.setUp(no));
    const page = gripPage(plan, desk, i, bench, words);
    return [entry.setUp === 0 ? { ...page, strip: stripOf(stepsOf(desk), words, () => '') } : page];
  });
}

/** Is this bench entry printed on the page before it? */
function follows(plan: Plan, desks: ReadonlyMap<PartId, Desk>, i: number): boolean {
  const before = plan.sequence[i - 1];
  const here = plan.sequence[i];
  return before !== undefined && here !== undefined && before.part === here.part && isBench(desks, here);
}

function benchAfter(plan: Plan, desks: ReadonlyMap<PartId, Desk>, i: number): readonly number[] {
  const here = plan.sequence[i];
  const later = plan.sequence.slice(i + 1);
  const stop = later.findIndex((entry) => entry.part !== here?.part || !isBench(desks, entry));
  return (stop === -1 ? later : later.slice(0, stop)).map((entry) => entry.setUp);
}

function isBench(desks: ReadonlyMap<PartId, Desk>, entry: Plan['sequence'][number]): boolean {
  return deskFor(desks, entry.part).setUp(entry.setUp).grip.kind === 'bench';
}

function desksOf(plan: Plan): ReadonlyMap<PartId, Desk> {
  return new Map(plan.parts.map((planned) => [planned.part.id, deskOf(planned)]));
}

function deskFor(desks: ReadonlyMap<PartId, Desk>, part: PartId): Desk {
  const desk = desks.get(part);
  if (!desk) throw new Error(`the sequence names part '${part}', which the plan does not make`);
  return desk;
}
