/** A lesson on paper: one operation with its picture, its figures and its dial beside it, its reasons in boxes beneath. Never broken up. */
import type { Item, Picture } from '../../model/display.ts';
import type { DialShown, LessonLegend, LessonShown } from '../../model/sheet.ts';
import { line, moved, rect, roundRect } from '../display.ts';
import { textWidth } from '../measure.ts';
import { MADE } from '../paper.ts';
import type { Frame } from '../tiny.ts';
import { type Block, beside, EMPTY, type Place, paragraph, stack } from './blocks.ts';
import { DIAL, drawDial } from './dial.ts';
import { rule } from './frame.ts';
import { as, figure } from './meant.ts';
import { drawSign } from './signs.ts';
import { squeezed } from './squeeze.ts';
import { CORNER, GAP, type Paper, RULE, STYLES } from './type.ts';

export type DrawLesson = (lesson: LessonShown, frame: Frame) => Picture | undefined;

/** mm; `most`: what a sheet with room left gives it beside its figures; `wide`, and `least`: with the page's whole width. */
const PICTURE = { height: 47, most: 95, wide: 150, least: 30 } as const;
/** Of the page's width, for a picture with its figures beside it. */
const PICTURE_SHARE = 0.674;
const NUMBER = 17;
const PAD = 1.8;
const BETWEEN = 2;

const besideFacts = ({ page }: Paper): number => PICTURE_SHARE * page.wide;

/** How much higher its picture may be than usual, mm, and how high all of it. */
type Room = { readonly more: number; readonly all: number };

/** What has a sheet almost to itself, or is too long to be shown high, has its picture as wide as the page, its figures under it. */
export function lessonBlock(paper: Paper, lesson: LessonShown, draw: DrawLesson, room?: Room): Block {
  const boxes = boxesOf(paper, lesson, 0);
  const drawn: Drawn = (frame) => draw(lesson, frame);
  const upper =
    (room && wideOf(paper, lesson, drawn, room.all - boxes.height - 2 * GAP.row)) ??
    usualOf(paper, lesson, drawn, Math.min(PICTURE.most, PICTURE.height + (room?.more ?? 0)));
  const height = upper.height + boxes.height + 2 * GAP.row;
  const under = [...moved(boxes.items, 0, upper.height), rule(paper, height - GAP.row, 'heavy')];
  return { height, items: [...upper.items, ...under] };
}

type Drawn = (frame: Frame) => Picture | undefined;

/** Its picture on the left, its figures on the right of it and of its head. */
function usualOf(paper: Paper, lesson: LessonShown, draw: Drawn, most: number): Block {
  const head = headOf(paper, lesson, besideFacts(paper));
  const right = factsOf(paper, lesson, GAP.small);
  const shown = pictureOf(paper, draw, { width: besideFacts(paper), height: most }, head.height + GAP.row);
  const height = Math.max(head.height + GAP.row + shown.height, right.height + GAP.small) + GAP.row;
  return { height, items: [...head.items, ...shown.items, ...right.items] };
}

/**
 * Head, picture and figures one under the other, no higher than that in all; nothing where the picture would gain nothing by it: where it
 * might be higher beside its figures, and that height is of use.
 */
function wideOf(paper: Paper, lesson: LessonShown, draw: Drawn, height: number): Block | undefined {
  const { wide } = paper.page;
  const head = headOf(paper, lesson, wide);
  const facts = factsUnder(paper, lesson, 0);
  const left = Math.min(PICTURE.wide, height - head.height - facts.height - 3 * GAP.row);
  if (left < PICTURE.most && (left < PICTURE.least || !isLong(draw, { width: besideFacts(paper), height: left }))) return undefined;
  const upper = stack(0, GAP.row, [
    () => head,
    (y) => pictureOf(paper, draw, { width: wide, height: left }, y),
    (y) => ({ height: facts.height, items: moved(facts.items, 0, y) }),
  ]);
  return { height: upper.height + GAP.row, items: upper.items };
}

/** Does it leave much of that height, for want of width? */
function isLong(draw: Drawn, frame: Frame): boolean {
  const picture = draw(frame);
  return picture !== undefined && squeezed(picture).height < LONG * frame.height;
}
const LONG = 0.6;

function pictureOf(paper: Paper, draw: Drawn, frame: Frame, top: number): Block {
  const picture = draw(frame);
  const { height, items } = picture ? squeezed(picture) : EMPTY;
  return { height, items: figure(moved(items, paper.page.left, top), picture?.alt ?? '') };
}

/** What the pictures of a sheet show new surfaces and taken metal by: said once, over them. */
export function legendBlock(paper: Paper, { made, taken }: LessonLegend): Block {
  const words = (text: string, right: number): Block =>
    paragraph(paper, STYLES.label, text, { x: paper.page.left, top: GAP.small, width: right - paper.page.left }, 'right');
  const wide = (text: string): number => textWidth(paper.advances, STYLES.label.font, STYLES.label.size, text);
  const takenAt = paper.page.right - wide(taken) - SWATCH.gap;
  const madeAt = takenAt - SWATCH.width / 2 - GAP.block - wide(made) - SWATCH.gap;
  const middle = GAP.small + STYLES.label.size / 2 + SWATCH.down;
  return {
    height: GAP.small + STYLES.label.lead,
    items: [
      ...words(taken, paper.page.right).items,
      rect(takenAt - SWATCH.width / 2, middle - SWATCH.height / 2, SWATCH.width / 2, SWATCH.height, { fill: 'taken' }),
      ...words(made, takenAt - SWATCH.width / 2 - GAP.block).items,
      line(madeAt - SWATCH.width, middle, madeAt, middle, MADE),
    ],
  };
}
const SWATCH = { width: 7, height: 3, gap: 1.5, down: 0.3 } as const;

function headOf(paper: Paper, { number, title, note, signs }: LessonShown, wide: number): Block {
  const place = { x: paper.page.left + NUMBER, width: wide - NUMBER };
  const room = place.width - signs.length * (SIGN.size + SIGN.gap);
  const drawn = signs.flatMap(({ id, name }, i) =>
    figure(drawSign(id, place.x + room + SIGN.gap + i * (SIGN.size + SIGN.gap), GAP.small, SIGN.size), name),
  );
  const words = stack(GAP.small, 0, [
    (top) => as(paragraph(paper, STYLES.section, title, { ...place, width: room, top }), { is: 'title' }),
    (top) => paragraph(paper, STYLES.note, note, { ...place, top }),
  ]);
  const mark = paragraph(paper, STYLES.title, number, { x: paper.page.left, top: GAP.small, width: NUMBER });
  return { height: Math.max(words.height, mark.height) + GAP.small, items: [...mark.items, ...words.items, ...drawn] };
}
/** mm: as high as the title's line. */
const SIGN = { size: STYLES.section.lead, gap: 1 } as const;

/** Figures one under the other; the dial beneath them, what it says beside it. */
function factsOf(paper: Paper, lesson: LessonShown, top: number): Block {
  const x = paper.page.left + besideFacts(paper) + GAP.column;
  const width = paper.page.right - x;
  const { dial } = lesson;
  return stack(top, GAP.small / 2, [
    (y) => figuresOf(paper, lesson, { x, top: y, width }),
    (y) => (dial ? dialWithWords(paper, dial, { x, top: y, width }) : EMPTY),
  ]);
}

/** Figures on the left, the dial beside them. */
function factsUnder(paper: Paper, lesson: LessonShown, top: number): Block {
  const { left, right } = paper.page;
  const width = besideFacts(paper) - GAP.column;
  const x = left + besideFacts(paper) + GAP.column;
  const { dial } = lesson;
  return beside([
    figuresOf(paper, lesson, { x: left, top, width }),
    dial ? dialWithWords(paper, dial, { x, top, width: right - x }) : EMPTY,
  ]);
}

function figuresOf(paper: Paper, { facts, dial }: LessonShown, { x, top, width }: Place): Block {
  const shown = facts.filter((fact) => !fact.read || !dial);
  return stack(
    top,
    GAP.small / 2,
    shown.map(
      ({ label, text }) =>
        (y) =>
          factLine(paper, label, text, { x, top: y, width }),
    ),
  );
}

/** What it says stands beside it, or under it where one of its words is too long for that. */
function dialWithWords(paper: Paper, dial: DialShown, { x, top, width }: Place): Block {
  const left = width - DIAL - GAP.small;
  const { font, size } = STYLES.figure;
  const isNarrow = dial.says.split(' ').some((word) => textWidth(paper.advances, font, size, word) > left);
  if (isNarrow) return stack(top, GAP.small, [(y) => dialBlock(paper, dial, x, y), (y) => dialSaid(paper, dial, { x, top: y, width })]);
  const said = dialSaid(paper, dial, { x: x + DIAL + GAP.small, top: top + BESIDE, width: left });
  return beside([dialBlock(paper, dial, x, top), { height: BESIDE + said.height, items: said.items }]);
}
/** Words beside a dial begin so far down it, mm. */
const BESIDE = DIAL / 5;

const LABEL = 19;
const LET_DOWN = 0.8;

/** What it is and how much, read as one. */
function factLine(paper: Paper, label: string, text: string, { x, top, width }: Place): Block {
  const words = beside([
    paragraph(paper, STYLES.label, label, { x, top: top + LET_DOWN, width: LABEL }),
    paragraph(paper, STYLES.second, text, { x: x + LABEL, top, width: width - LABEL }),
  ]);
  return as(words, { is: 'text' });
}

function dialBlock(paper: Paper, dial: DialShown, x: number, y: number): Block {
  return { height: DIAL, items: figure(moved(drawDial(paper, dial), x, y), dial.says) };
}

const dialSaid = (paper: Paper, dial: DialShown, place: Place): Block => paragraph(paper, STYLES.figure, dial.says, place);

/** Side by side, the same height in a row; in whatever rows take the least room on the page, and few of them where it is all one. */
function boxesOf(paper: Paper, { boxes }: LessonShown, top: number): Block {
  const ways = sharedOut(boxes.length).map((rows) => rowsOfBoxes(paper, boxes, rows, top));
  return ways.reduce((best, way) => (way.height < best.height ? way : best), ways[0] ?? EMPTY);
}

const MOST_ACROSS = 3;

/** How many stand in each row, in every way that keeps their order; those with few rows first. */
function sharedOut(count: number): readonly (readonly number[])[] {
  if (count === 0) return [[]];
  return Array.from({ length: Math.min(count, MOST_ACROSS) }, (_, i) => Math.min(count, MOST_ACROSS) - i).flatMap((first) =>
    sharedOut(count - first).map((others) => [first, ...others]),
  );
}

function rowsOfBoxes(paper: Paper, boxes: LessonShown['boxes'], rows: readonly number[], top: number): Block {
  let [y, from] = [top, 0];
  const items: Item[] = [];
  for (const across of rows) {
    const row = boxRow(paper, boxes.slice(from, from + across));
    items.push(...moved(row.items, 0, y));
    y += row.height + BETWEEN;
    from += across;
  }
  return { height: y - top, items };
}

function boxRow(paper: Paper, boxes: LessonShown['boxes']): Block {
  const width = (paper.page.wide - BETWEEN * (boxes.length - 1)) / boxes.length;
  const words = boxes.map(({ heading, text }, i) => {
    const place = { x: paper.page.left + i * (width + BETWEEN) + PAD, width: width - 2 * PAD };
    return stack(PAD, 0, [
      (y) => paragraph(paper, { ...STYLES.body, font: 'text-bold' }, heading, { ...place, top: y }),
      (y) => paragraph(paper, STYLES.body, text, { ...place, top: y }),
    ]);
  });
  const height = Math.max(...words.map((each) => each.height)) + 2 * PAD;
  const stroke = { ink: 'mid', width: RULE.box } as const;
  const items = words.flatMap((each, i) => [
    roundRect(paper.page.left + i * (width + BETWEEN), 0, width, height, CORNER, { stroke }),
    ...each.items,
  ]);
  return { height, items };
}
