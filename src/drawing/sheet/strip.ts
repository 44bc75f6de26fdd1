/** The strip from bar to part on paper: what it is on the left, then little pictures in rows, each with its number beneath. */
import type { Item, Picture } from '../../model/display.ts';
import type { StripShown } from '../../model/sheet.ts';
import { moved } from '../display.ts';
import type { Frame } from '../tiny.ts';
import { type Block, EMPTY, paragraph, stack } from './blocks.ts';
import { rule } from './frame.ts';
import { as, figure } from './meant.ts';
import { GAP, type Paper, STYLES } from './type.ts';

/** mm */
const CELL = { height: 9.5, gap: 2 } as const;
const TITLE = 13;
/** Pictures side by side, and rows of them. */
const ACROSS = 12;
const ROWS = 2;
/** Cells that the strip of a bench sheet has room for. */
export const MOST_CELLS = ACROSS * ROWS;
const NUMBER = { ...STYLES.second, size: 3.3, lead: 3.8 } as const;

export type StripPictures = (strip: StripShown, frame: Frame) => readonly Picture[];

/** What it will take, for the layout that comes before any drawing. */
export function stripHeight(strip: StripShown | undefined): number {
  return strip ? GAP.row + Math.ceil(strip.cells.length / acrossOf(strip)) * rowHeight + GAP.small : 0;
}

/** Rows of about the same length; of few cells none is wider than of so many. */
const acrossOf = ({ cells }: StripShown): number => Math.max(LEAST_ACROSS, Math.ceil(cells.length / Math.ceil(cells.length / ACROSS)));
const LEAST_ACROSS = 7;

const rowHeight = CELL.height + NUMBER.lead + GAP.small;

export function stripBlock(paper: Paper, strip: StripShown | undefined, draw: StripPictures): Block {
  if (!strip) return EMPTY;
  const across = acrossOf(strip);
  const left = paper.page.left + TITLE + CELL.gap;
  const width = (paper.page.right - left - (across - 1) * CELL.gap) / across;
  const pictures = draw(strip, { width, height: CELL.height });
  const title = paragraph(paper, STYLES.label, strip.title.toUpperCase(), { x: paper.page.left, top: GAP.row, width: TITLE });
  const cells = strip.cells.flatMap((cell, i): readonly Item[] => {
    const x = left + (i % across) * (width + CELL.gap);
    const y = GAP.row + Math.floor(i / across) * rowHeight;
    const label = stack(y + CELL.height, 0, [(top) => paragraph(paper, NUMBER, cell.label, { x, top, width }, 'middle')]);
    return figure([...moved(pictures[i]?.items ?? [], x, y), ...label.items], cell.alt);
  });
  const height = stripHeight(strip);
  return { height, items: [...as(title, { is: 'title' }).items, ...cells, rule(paper, height, 'thin')] };
}
