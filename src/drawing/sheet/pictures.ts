/** The cover's pictures: the fitting put together, where it is more than one part, and the finished parts beside and under it. */
import type { Picture } from '../../model/display.ts';
import type { PartId } from '../../model/ids.ts';
import type { Section, WholeShown } from '../../model/sheet.ts';
import { moved } from '../display.ts';
import { type Block, beside, inRows, paragraph, placed, stack } from './blocks.ts';
import type { Frame } from './grip-page.ts';
import { figure } from './meant.ts';
import { GAP, type Paper, STYLES } from './type.ts';

export type DrawPart = (part: PartId, frame: Frame) => Picture;
export type DrawWhole = (shown: WholeShown, frame: Frame) => Picture;
type Means = Paper & { readonly part: DrawPart; readonly whole: DrawWhole };
type Shown = Section & { readonly kind: 'pictures' };
type PartPicture = Shown['pictures'][number];
/** Where on the page, mm. */
type Span = { readonly left: number; readonly wide: number };

/** Pictures in a row. */
const PICTURES = { least: 4, most: 6, height: 30, gap: 4 } as const;
/** Of the whole: its share of the page at the most, and how wide a part beside it is at the least. mm */
const WHOLE = { share: 0.48, height: 76, part: 40, rows: 2 } as const;

/** A block a row; the first one holds the whole and as many parts as stand beside it. */
export function pictureBlocks(means: Means, { whole, pictures }: Shown): readonly Block[] {
  const page: Span = { left: means.page.left, wide: means.page.wide };
  if (!whole) return rowsOf(means, pictures, page);
  const picture = means.whole(whole, { width: WHOLE.share * page.wide, height: WHOLE.height });
  const left = page.left + picture.width + 2 * PICTURES.gap;
  const rest: Span = { left, wide: page.left + page.wide - left };
  const across = Math.max(2, Math.floor((rest.wide + PICTURES.gap) / (WHOLE.part + PICTURES.gap)));
  const near = pictures.slice(0, across * WHOLE.rows);
  const words = paragraph(
    means,
    STYLES.small,
    whole.caption,
    { x: page.left, top: WHOLE.height + GAP.row, width: picture.width },
    'middle',
  );
  const drawn = figure(moved(picture.items, page.left, GAP.small + (WHOLE.height - picture.height) / 2), picture.alt);
  const first = { height: WHOLE.height + GAP.row + words.height, items: [...drawn, ...words.items] };
  const rows = inRows(near, across).map((row) => pictureRow(means, row, { ...rest, across }));
  const grid = stack(
    0,
    GAP.small,
    rows.map((row) => (top) => ({ height: row.height, items: placed(row, top) })),
  );
  return [beside([first, grid]), ...rowsOf(means, pictures.slice(near.length), page)];
}

function rowsOf(means: Means, pictures: readonly PartPicture[], page: Span): readonly Block[] {
  const { length } = pictures;
  const across = Math.max(PICTURES.least, Math.ceil(length / Math.ceil(length / PICTURES.most)));
  return inRows(pictures, across).map((row) => pictureRow(means, row, { ...page, across }));
}

function pictureRow(means: Means, pictures: readonly PartPicture[], { left, wide, across }: Span & { readonly across: number }): Block {
  const width = (wide - PICTURES.gap * (across - 1)) / across;
  const blocks = pictures.map(({ part, caption }, i) => {
    const x = left + i * (width + PICTURES.gap);
    const picture = means.part(part, { width, height: PICTURES.height });
    const drawn = figure(moved(picture.items, x, GAP.small), picture.alt);
    const words = paragraph(means, STYLES.small, caption, { x, top: PICTURES.height + GAP.row, width }, 'middle');
    return { height: PICTURES.height + GAP.row + words.height, items: [...drawn, ...words.items] };
  });
  return beside(blocks);
}
