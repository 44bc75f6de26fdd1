/** The strip from bar to part on paper: what it is on the left, then little pictures in rows, each with its number beneath. */
import type { Item, Picture } from '../../model/display.ts';
import type { StripShown } from '../../model/sheet.ts';
import { moved } from '../display.ts';
import type { Frame } from '../tiny.ts';
import { type Block, EMPTY, paragraph, stack } from './blocks.ts';
import { rule } from './frame.ts';
import { as, figure } from './meant.ts';
import { GAP, type Paper, STYLES } from './type.ts';

/** mm; `high`: of a little picture, lower where what it shows is long and thin. Side by side stand so many at most, and no wider than of the least. */
const CELLS = { usual: { high: 9.5, most: 12, least: 7 }, slender: { high: 6, most: 6, least: 4 } } as const;
const BETWEEN = 2;
const TITLE = 13;
const ROWS = 2;
/** Cells that the strip of a bench sheet has room for. */
export const MOST_CELLS = CELLS.usual.most * ROWS;
/** So many diameters long, work is slender. */
const SLENDER = 4;
const NUMBER = { ...STYLES.second, size: 3.3, lead: 3.8 } as const;

export type StripPictures = (strip: StripShown, frame: Frame) => readonly Picture[];

/** What it will take, for the layout that comes before any drawing. */
export function stripHeight(strip: StripShown | undefined): number {
  return strip ? GAP.row + Math.ceil(strip.cells.length / acrossOf(strip)) * rowHeight(strip) + GAP.small : 0;
}

export const isSlender = (length: number, diameter: number): boolean => length > SLENDER * diameter;

const cellsOf = ({ slender }: StripShown): (typeof CELLS)['usual' | 'slender'] => CELLS[slender ? 'slender' : 'usual'];

/** Rows of about the same length. */
function acrossOf(strip: StripShown): number {
  const { most, least } = cellsOf(strip);
  const count = strip.cells.length;
  return Math.max(least, Math.ceil(count / Math.ceil(count / most)));
}

const rowHeight = (strip: StripShown): number => cellsOf(strip).high + NUMBER.lead + GAP.small;

export function stripBlock(paper: Paper, strip: StripShown | undefined, draw: StripPictures): Block {
  if (!strip) return EMPTY;
  const across = acrossOf(strip);
  const { high } = cellsOf(strip);
  const left = paper.page.left + TITLE + BETWEEN;
  const width = (paper.page.right - left - (across - 1) * BETWEEN) / across;
  const pictures = draw(strip, { width, height: high });
  const title = paragraph(paper, STYLES.label, strip.title.toUpperCase(), { x: paper.page.left, top: GAP.row, width: TITLE });
  const cells = strip.cells.flatMap((cell, i): readonly Item[] => {
    const x = left + (i % across) * (width + BETWEEN);
    const y = GAP.row + Math.floor(i / across) * rowHeight(strip);
    const label = stack(y + high, 0, [(top) => paragraph(paper, NUMBER, cell.label, { x, top, width }, 'middle')]);
    return figure([...moved(pictures[i]?.items ?? [], x, y), ...label.items], cell.alt);
  });
  const height = stripHeight(strip);
  return { height, items: [...as(title, { is: 'title' }).items, ...cells, rule(paper, height, 'thin')] };
}
