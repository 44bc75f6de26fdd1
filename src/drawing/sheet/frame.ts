/** What every page has: the head with name and sheet number, and the boxes to fill in (its foot: foot.ts). */
import type { Item } from '../../model/display.ts';
import { line, rect, roundRect } from '../display.ts';
import { fitSize, textWidth } from '../measure.ts';
import { type Block, beside, paragraph } from './blocks.ts';
import { as } from './meant.ts';
import { GAP, type Paper, RULE, STYLES, type Style } from './type.ts';

/** `of`: where in its part, on the line of `about`; `sheetNo` after it, said on every sheet. */
export type Head = { readonly name: string; readonly about: string; readonly right: string; readonly of: string; readonly sheetNo: string };

const LEAST_TITLE = 5.4;
/** Sizes at which a long name, and what it belongs to, are tried before they are broken, mm. */
const TITLE_SIZES = [STYLES.title.size, 7.2, 6.2, LEAST_TITLE] as const;
/** Of the page's width, for the title on the right: the rest is for the name. */
const MOST_RIGHT = 0.6;
const ABOUT_SIZES = [STYLES.about.size, 3] as const;

/** Name and what it belongs to on the left, grip and sheet on the right, a heavy rule beneath. */
export function head(paper: Paper, shown: Head): Block {
  const { wide } = paper.page;
  const right = { ...STYLES.title, size: titleSize(paper, shown.right, wide / 2) ?? LEAST_TITLE };
  const rightWidth = Math.min(textWidth(paper.advances, right.font, right.size, shown.right), MOST_RIGHT * wide);
  const noWidth = aboutWidth(paper, shown.sheetNo);
  const ofWidth = noWidth + aboutWidth(paper, shown.of === '' ? '' : `${shown.of}${BETWEEN}`);
  const nameWidth = wide - rightWidth - GAP.column;
  const name = paragraph(paper, nameStyle(paper, shown.name, nameWidth), shown.name, { x: paper.page.left, top: 0, width: nameWidth });
  const grip = paragraph(paper, right, shown.right, { x: paper.page.right - rightWidth, top: 0, width: rightWidth }, 'right');
  const under = Math.max(name.height, grip.height) + GAP.small / 2;
  const aboutWide = paper.page.wide - ofWidth - GAP.column;
  const aboutStyle = fitted(paper, STYLES.about, ABOUT_SIZES, shown.about, aboutWide);
  const about = paragraph(paper, aboutStyle, shown.about, { x: paper.page.left, top: under, width: aboutWide });
  const no = paragraph(paper, STYLES.about, shown.sheetNo, { x: paper.page.left, top: under, width: paper.page.wide }, 'right');
  const of = paragraph(
    paper,
    STYLES.about,
    shown.of === '' ? '' : `${shown.of}${BETWEEN}`,
    { x: paper.page.left, top: under, width: paper.page.wide - noWidth },
    'right',
  );
  const y = under + Math.max(about.height, of.height, no.height) + GAP.small;
  const title = as(beside([name, grip]), { is: 'sheet-title' });
  return {
    height: y,
    items: [...title.items, ...about.items, ...of.items, ...as(no, { is: 'running-head' }).items, rule(paper, y, 'heavy')],
  };
}

/** Wide blanks hold at the end of a line. */
const BETWEEN = '\u00a0\u00a0·\u00a0\u00a0';

function aboutWidth(paper: Paper, words: string): number {
  return textWidth(paper.advances, STYLES.about.font, STYLES.about.size, words);
}

/** A name that is broken is broken between its words. */
function nameStyle(paper: Paper, name: string, width: number): Style {
  const whole = titleSize(paper, name, width);
  const ofWords = name.split(' ').map((word) => titleSize(paper, word, width) ?? LEAST_TITLE);
  return { ...STYLES.title, size: whole ?? Math.min(...ofWords) };
}
const titleSize = (paper: Paper, words: string, width: number): number | undefined =>
  fitSize(paper.advances, STYLES.title.font, TITLE_SIZES, words, width);

/** What is a little too long for its line is set a little smaller rather than broken; at its usual size where that does not help. */
export function fitted(paper: Paper, style: Style, sizes: readonly number[], words: string, width: number): Style {
  return { ...style, size: fitSize(paper.advances, style.font, sizes, words, width) ?? style.size };
}

export function draftMark(paper: Paper, words: string | undefined): Block {
  if (words === undefined) return { height: 0, items: [] };
  const text = paragraph(paper, STYLES.caution, words, { x: paper.page.left, top: GAP.small, width: paper.page.wide }, 'middle');
  const height = text.height + GAP.small * 2;
  return {
    height,
    items: [rect(paper.page.left, 0, paper.page.wide, height, { stroke: { ink: 'black', width: RULE.heavy } }), ...text.items],
  };
}

export function rule({ page }: Paper, y: number, weight: 'thin' | 'heavy'): Item {
  return line(page.left, y, page.right, y, { ink: weight === 'thin' ? 'light' : 'black', width: RULE[weight] });
}

/** A box to write in. */
export function writeBox(x: number, y: number, width: number, height: number): Item {
  return rect(x, y, width, height, { stroke: { ink: 'black', width: RULE.box }, fill: 'white' });
}

export function panel({ page }: Paper, y: number, height: number): Item {
  return roundRect(page.left - GAP.row, y, page.wide + 2 * GAP.row, height, GAP.small, { fill: 'panel' });
}
