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

/** mm; `most`: what a sheet with room left gives it. */
const PICTURE = { height: 47, most: 95 } as const;
/** Of the page's width, for the picture. */
const PICTURE_SHARE = 0.674;
const NUMBER = 17;
const PAD = 1.8;
const BETWEEN = 2;

const pictureWidth = ({ page }: Paper): number => PICTURE_SHARE * page.wide;

/** `more`: how much higher its picture may be than usual, mm. */
export function lessonBlock(paper: Paper, lesson: LessonShown, draw: DrawLesson, more: number): Block {
  const head = headOf(paper, lesson);
  const right = factsOf(paper, lesson, GAP.small);
  const picture = draw(lesson, { width: pictureWidth(paper), height: Math.min(PICTURE.most, PICTURE.height + more) });
  const { height: high, items } = picture ? squeezed(picture) : EMPTY;
  const shown = figure(moved(items, paper.page.left, head.height + GAP.row), picture?.alt ?? '');
  const down = Math.max(head.height + GAP.row + high, right.height + GAP.small) + GAP.row;
  const boxes = boxesOf(paper, lesson, down);
  const height = down + boxes.height + 2 * GAP.row;
  return { height, items: [...head.items, ...shown, ...right.items, ...boxes.items, rule(paper, height - GAP.row, 'heavy')] };
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

function headOf(paper: Paper, { number, title, note, signs }: LessonShown): Block {
  const place = { x: paper.page.left + NUMBER, width: pictureWidth(paper) - NUMBER };
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
function factsOf(paper: Paper, { facts, dial }: LessonShown, top: number): Block {
  const x = paper.page.left + pictureWidth(paper) + GAP.column;
  const width = paper.page.right - x;
  const shown = facts.filter((fact) => !fact.read || !dial);
  return stack(top, GAP.small / 2, [
    ...shown.map(
      ({ label, text }) =>
        (y: number) =>
          factLine(paper, label, text, { x, top: y, width }),
    ),
    (y) => (dial ? dialWithWords(paper, dial, { x, top: y, width }) : EMPTY),
  ]);
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
