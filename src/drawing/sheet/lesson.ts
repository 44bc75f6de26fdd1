/** A lesson on paper: one operation with its picture, its figures and its dial beside it, its reasons in boxes beneath. Never broken up. */
import type { Item, Picture } from '../../model/display.ts';
import type { DialShown, LessonShown } from '../../model/sheet.ts';
import { moved, roundRect } from '../display.ts';
import type { Frame } from '../tiny.ts';
import { type Block, beside, EMPTY, paragraph, stack } from './blocks.ts';
import { DIAL, drawDial } from './dial.ts';
import { rule } from './frame.ts';
import { as, figure } from './meant.ts';
import { CORNER, GAP, type Paper, RULE, STYLES } from './type.ts';

export type DrawLesson = (lesson: LessonShown, frame: Frame) => Picture | undefined;

/** mm */
const PICTURE_HEIGHT = 47;
/** Of the page's width, for the picture. */
const PICTURE_SHARE = 0.674;
const NUMBER = 17;
const PAD = 1.8;
const BETWEEN = 2;

const pictureWidth = ({ page }: Paper): number => PICTURE_SHARE * page.wide;

export function lessonBlock(paper: Paper, lesson: LessonShown, draw: DrawLesson): Block {
  const head = headOf(paper, lesson);
  const right = factsOf(paper, lesson, head.height + GAP.row);
  const picture = draw(lesson, { width: pictureWidth(paper), height: PICTURE_HEIGHT });
  const shown = picture ? figure(moved(picture.items, paper.page.left, head.height + GAP.row), picture.alt) : [];
  const down = head.height + GAP.row + Math.max(picture ? PICTURE_HEIGHT : 0, right.height) + GAP.row;
  const boxes = boxesOf(paper, lesson, down);
  const height = down + boxes.height + GAP.block + GAP.row;
  return { height, items: [...head.items, ...shown, ...right.items, ...boxes.items, rule(paper, height - GAP.row, 'heavy')] };
}

function headOf(paper: Paper, { number, title, note }: LessonShown): Block {
  const place = { x: paper.page.left + NUMBER, width: paper.page.wide - NUMBER };
  const words = stack(GAP.small, 0, [
    (top) => as(paragraph(paper, STYLES.section, title, { ...place, top }), { is: 'title' }),
    (top) => paragraph(paper, STYLES.note, note, { ...place, top }),
  ]);
  const mark = paragraph(paper, STYLES.title, number, { x: paper.page.left, top: GAP.small, width: NUMBER });
  return { height: Math.max(words.height, mark.height) + GAP.small, items: [...mark.items, ...words.items] };
}

/** Figures one under the other; the dial beneath them, what it says beside it. */
function factsOf(paper: Paper, { facts, dial }: LessonShown, top: number): Block {
  const x = paper.page.left + pictureWidth(paper) + GAP.column;
  const width = paper.page.right - x;
  const shown = facts.filter((fact) => !fact.read || !dial);
  return stack(top, GAP.small / 2, [
    ...shown.map(
      ({ label, text }) =>
        (y: number): Block =>
          beside([
            paragraph(paper, STYLES.label, label, { x, top: y + LET_DOWN, width: LABEL }),
            paragraph(paper, STYLES.second, text, { x: x + LABEL, top: y, width: width - LABEL }),
          ]),
    ),
    (y) =>
      dial ? beside([dialBlock(paper, dial, x, y), dialSaid(paper, dial, x + DIAL + GAP.small, y, width - DIAL - GAP.small)]) : EMPTY,
  ]);
}
const LABEL = 19;
const LET_DOWN = 0.8;

function dialBlock(paper: Paper, dial: DialShown, x: number, y: number): Block {
  return { height: DIAL, items: figure(moved(drawDial(paper, dial), x, y), dial.says) };
}

function dialSaid(paper: Paper, dial: DialShown, x: number, y: number, width: number): Block {
  return stack(y + DIAL / 5, 0, [(top) => paragraph(paper, STYLES.figure, dial.says, { x, top, width })]);
}

/** Two and two beside each other, the same height in a row. */
function boxesOf(paper: Paper, { boxes }: LessonShown, top: number): Block {
  const width = (paper.page.wide - BETWEEN) / 2;
  const faces = boxes.map(({ heading, text }, i) => {
    const x = paper.page.left + (i % 2) * (width + BETWEEN);
    const place = { x: x + PAD, width: width - 2 * PAD };
    const words = stack(PAD, 0, [
      (y) => paragraph(paper, { ...STYLES.body, font: 'text-bold' }, heading, { ...place, top: y }),
      (y) => paragraph(paper, STYLES.body, text, { ...place, top: y }),
    ]);
    return { x, height: words.height + 2 * PAD, items: words.items };
  });
  let y = top;
  const items: Item[] = [];
  for (let i = 0; i < faces.length; i += 2) {
    const row = faces.slice(i, i + 2);
    const height = Math.max(...row.map((face) => face.height));
    for (const face of row)
      items.push(roundRect(face.x, y, width, height, CORNER, { stroke: { ink: 'mid', width: RULE.box } }), ...moved(face.items, 0, y));
    y += height + BETWEEN;
  }
  return { height: y - top, items };
}
