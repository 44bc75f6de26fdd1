/** The strip from bar to part on paper: little pictures in rows, each with its number beneath. */
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
/** Pictures side by side: few large ones, or more smaller ones. */
const ACROSS = { few: 7, many: 8 } as const;
const ROWS = { few: 2, many: 3 } as const;
/** Cells that the strip of a bench sheet has room for. */
export const MOST_CELLS = ACROSS.many * ROWS.many;
const NUMBER = { ...STYLES.second, size: 3.3, lead: 3.8 } as const;

export type StripPictures = (strip: StripShown, frame: Frame) => readonly Picture[];

/** What it will take, for the layout that comes before any drawing. */
export function stripHeight(strip: StripShown | undefined): number {
  return strip ? HEAD + Math.ceil(strip.cells.length / acrossOf(strip)) * rowHeight + GAP.small : 0;
}

const HEAD = STYLES.label.lead + GAP.small;
const acrossOf = ({ cells }: StripShown): number => (cells.length <= ACROSS.few * ROWS.few ? ACROSS.few : ACROSS.many);

const rowHeight = CELL.height + NUMBER.lead + GAP.small;

export function stripBlock(paper: Paper, strip: StripShown | undefined, draw: StripPictures): Block {
  if (!strip) return EMPTY;
  const across = acrossOf(strip);
  const width = (paper.page.wide - (across - 1) * CELL.gap) / across;
  const pictures = draw(strip, { width, height: CELL.height });
  const title = paragraph(paper, STYLES.label, strip.title.toUpperCase(), { x: paper.page.left, top: GAP.small, width: paper.page.wide });
  const cells = strip.cells.flatMap((cell, i): readonly Item[] => {
    const x = paper.page.left + (i % across) * (width + CELL.gap);
    const y = HEAD + Math.floor(i / across) * rowHeight;
    const label = stack(y + CELL.height, 0, [(top) => paragraph(paper, NUMBER, cell.label, { x, top, width }, 'middle')]);
    return figure([...moved(pictures[i]?.items ?? [], x, y), ...label.items], cell.alt);
  });
  const height = stripHeight(strip);
  return { height, items: [...as(title, { is: 'title' }).items, ...cells, rule(paper, height, 'thin')] };
}
