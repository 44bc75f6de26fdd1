/** What every page has: the head with name and sheet number, the foot with its caution, and the boxes to fill in. */
import type { Item } from '../../model/display.ts';
import type { SheetView } from '../../model/sheet.ts';
import { line, rect, roundRect } from '../display.ts';
import { fitSize, textWidth } from '../measure.ts';
import { type Block, beside, paragraph, placed } from './blocks.ts';
import { as } from './meant.ts';
import { GAP, PAGE, type Paper, RULE, STYLES, type Style, WIDTH } from './type.ts';

/** `of`: where in its part, on the line of `about`; `sheetNo` after it, said on every sheet. */
export type Head = { readonly name: string; readonly about: string; readonly right: string; readonly of: string; readonly sheetNo: string };

/** Sizes at which a long name is tried before it is broken, mm. */
const TITLE_SIZES = [STYLES.title.size, 7.2, 6.2, 5.4] as const;
const FOOT_SHARE = 0.66;

/** Name and what it belongs to on the left, grip and sheet on the right, a heavy rule beneath. */
export function head(paper: Paper, shown: Head): Block {
  const right = titleStyle(paper, shown.right, WIDTH / 2);
  const rightWidth = textWidth(paper.advances, right.font, right.size, shown.right);
  const noWidth = aboutWidth(paper, shown.sheetNo);
  const ofWidth = noWidth + aboutWidth(paper, shown.of === '' ? '' : `${shown.of}${BETWEEN}`);
  const nameWidth = WIDTH - rightWidth - GAP.column;
  const name = paragraph(paper, titleStyle(paper, shown.name, nameWidth), shown.name, { x: PAGE.left, top: 0, width: nameWidth });
  const grip = paragraph(paper, right, shown.right, { x: PAGE.left, top: 0, width: WIDTH }, 'right');
  const under = Math.max(name.height, grip.height) + GAP.small / 2;
  const about = paragraph(paper, STYLES.about, shown.about, { x: PAGE.left, top: under, width: WIDTH - ofWidth - GAP.column });
  const no = paragraph(paper, STYLES.about, shown.sheetNo, { x: PAGE.left, top: under, width: WIDTH }, 'right');
  const of = paragraph(
    paper,
    STYLES.about,
    shown.of === '' ? '' : `${shown.of}${BETWEEN}`,
    { x: PAGE.left, top: under, width: WIDTH - noWidth },
    'right',
  );
  const y = under + Math.max(about.height, of.height, no.height) + GAP.small;
  const title = as(beside([name, grip]), { is: 'sheet-title' });
  return { height: y, items: [...title.items, ...about.items, ...of.items, ...as(no, { is: 'running-head' }).items, rule(y, 'heavy')] };
}

/** Wide blanks hold at the end of a line. */
const BETWEEN = '\u00a0\u00a0·\u00a0\u00a0';

function aboutWidth(paper: Paper, words: string): number {
  return textWidth(paper.advances, STYLES.about.font, STYLES.about.size, words);
}

function titleStyle(paper: Paper, words: string, width: number): Style {
  const size = fitSize(paper.advances, STYLES.title.font, TITLE_SIZES, words, width) ?? STYLES.title.size;
  return { ...STYLES.title, size };
}

/** Dangers on the left, units and mark on the right; stands at the foot of the page, whatever is above. */
export function foot(paper: Paper, view: SheetView, caution: string): readonly Item[] {
  const width = WIDTH * FOOT_SHARE;
  const left = paragraph(paper, STYLES.caution, caution, { x: PAGE.left, top: GAP.small, width });
  const right = paragraph(paper, STYLES.foot, view.foot, { x: PAGE.left + width, top: GAP.small, width: WIDTH - width }, 'right');
  return placed(
    { height: 0, items: [rule(0, 'thin'), ...left.items, ...as(right, { is: 'running-foot' }).items] },
    footTop(paper, caution),
  );
}

/** Long cautions make the foot higher, never smaller. */
export function footTop(paper: Paper, caution: string): number {
  const left = paragraph(paper, STYLES.caution, caution, { x: PAGE.left, top: 0, width: WIDTH * FOOT_SHARE });
  return PAGE.foot - Math.max(0, left.height - STYLES.caution.lead);
}

export function draftMark(paper: Paper, words: string | undefined): Block {
  if (words === undefined) return { height: 0, items: [] };
  const text = paragraph(paper, STYLES.caution, words, { x: PAGE.left, top: GAP.small, width: WIDTH }, 'middle');
  const height = text.height + GAP.small * 2;
  return { height, items: [rect(PAGE.left, 0, WIDTH, height, { stroke: { ink: 'black', width: RULE.heavy } }), ...text.items] };
}

export function rule(y: number, weight: 'thin' | 'heavy'): Item {
  return line(PAGE.left, y, PAGE.right, y, { ink: weight === 'thin' ? 'light' : 'black', width: RULE[weight] });
}

/** A box to write in. */
export function writeBox(x: number, y: number, width: number, height: number): Item {
  return rect(x, y, width, height, { stroke: { ink: 'black', width: RULE.box }, fill: 'white' });
}

export function panel(y: number, height: number): Item {
  return roundRect(PAGE.left - GAP.row, y, WIDTH + 2 * GAP.row, height, GAP.small, { fill: 'panel' });
}
