/** The fitting put together, and beside it what the picture is to tell: which way it flows, which way is up. */
import type { Picture } from '../../model/display.ts';
import type { ArrangementShown } from '../../model/sheet.ts';
import { moved } from '../display.ts';
import { type Block, paragraph, stack } from './blocks.ts';
import { rule } from './frame.ts';
import type { Frame } from './grip-page.ts';
import { figure, unlinked } from './meant.ts';
import { GAP, type Paper, STYLES } from './type.ts';

export type DrawArrangement = (shown: ArrangementShown, frame: Frame) => Picture;
/** mm; `share`: of the page, for the picture. */
const SIZE = { share: 0.48, height: 84, gap: 5 } as const;

/** The picture at the left, what is told of it beside it. */
export function arrangementBlock(paper: Paper, shown: ArrangementShown, draw: DrawArrangement): Block {
  const { left, right, wide } = paper.page;
  const frame = { width: SIZE.share * wide, height: SIZE.height };
  const x = left + frame.width + SIZE.gap;
  const words = stack(
    GAP.row,
    GAP.row,
    shown.notes.map((note) => (top: number) => paragraph(paper, STYLES.note, note, { x, top, width: right - x })),
  );
  const height = Math.max(SIZE.height, words.height) + 2 * GAP.row;
  const picture = draw(shown, frame);
  const drawn = figure(moved(picture.items, left, GAP.row), unlinked(picture.alt));
  return { height: height + GAP.row, items: [...drawn, ...words.items, rule(paper, height, 'thin')] };
}
