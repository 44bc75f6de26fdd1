/** The fitting put together, and beneath it what the picture is to tell: which way it flows, which way is up. */
import type { Picture } from '../../model/display.ts';
import type { ArrangementShown } from '../../model/sheet.ts';
import { moved } from '../display.ts';
import { type Block, paragraph, stack } from './blocks.ts';
import { rule } from './frame.ts';
import type { Frame } from './grip-page.ts';
import { unlinked } from './links.ts';
import { figure } from './meant.ts';
import { GAP, type Paper, STYLES } from './type.ts';

export type DrawArrangement = (shown: ArrangementShown, frame: Frame) => Picture;
/** mm: no higher than this, on a page of that height. */
const MOST = 118;

/** The picture over the whole width, what is told of it beneath. */
export function arrangementBlock(paper: Paper, shown: ArrangementShown, draw: DrawArrangement): Block {
  const { left, wide } = paper.page;
  const picture = draw(shown, { width: wide, height: MOST });
  const words = stack(
    GAP.row,
    GAP.row,
    shown.notes.map((note) => (top: number) => paragraph(paper, STYLES.note, note, { x: left, top, width: wide })),
  );
  const drawn = figure(moved(picture.items, left, GAP.row), unlinked(picture.alt));
  const under = picture.height + 2 * GAP.row;
  const height = under + words.height + 2 * GAP.row;
  return { height: height + GAP.row, items: [...drawn, ...moved(words.items, 0, under), rule(paper, height, 'thin')] };
}
