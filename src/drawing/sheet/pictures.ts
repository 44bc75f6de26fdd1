/** The cover's pictures: the fitting put together, where it is more than one part, and the finished parts beside and under it. */
import type { Picture } from '../../model/display.ts';
import type { PartId } from '../../model/ids.ts';
import type { Section, WholeShown } from '../../model/sheet.ts';
import { moved } from '../display.ts';
import type { ShownPart } from '../parts-row.ts';
import { type Block, beside, inRows, paragraph, placed, stack } from './blocks.ts';
import type { Frame } from './grip-page.ts';
import { figure } from './meant.ts';
import { GAP, type Paper, STYLES } from './type.ts';

/** Together, so that their sizes compare; in the order given. */
export type DrawParts = (asked: readonly { readonly part: PartId; readonly frame: Frame }[]) => readonly ShownPart[];
export type DrawWhole = (shown: WholeShown, frame: Frame) => Picture;
type Means = Paper & { readonly parts: DrawParts; readonly whole: DrawWhole };
type Shown = Section & { readonly kind: 'pictures' };
type PartPicture = Shown['pictures'][number];
/** A row of equal places, and what stands in each. */
type Row = { readonly left: number; readonly width: number; readonly height?: number; readonly pictures: readonly PartPicture[] };
/** Where on the page, mm. */
type Span = { readonly left: number; readonly wide: number };

/** Pictures in a row. */
const PICTURES = { least: 4, most: 6, height: 30, gap: 4 } as const;
/** A part by itself has so much of the page's width, and is so high at the most, mm. */
const ALONE = { share: 0.6, height: 42 } as const;
/** Of the whole: its share of the page at the most, and how wide a part beside it is at the least. mm */
const WHOLE = { share: 0.48, height: 76, part: 40, rows: 2 } as const;

/** A block a row; the first one holds the whole and as many parts as stand beside it. */
export function pictureBlocks(means: Means, { whole, pictures }: Shown): readonly Block[] {
  const page: Span = { left: means.page.left, wide: means.page.wide };
  if (!whole) return drawn(means, rowsOf(pictures, page));
  const picture = means.whole(whole, { width: WHOLE.share * page.wide, height: WHOLE.height });
  const left = page.left + picture.width + 2 * PICTURES.gap;
  const rest: Span = { left, wide: page.left + page.wide - left };
  const across = Math.max(2, Math.floor((rest.wide + PICTURES.gap) / (WHOLE.part + PICTURES.gap)));
  const near = inRows(pictures.slice(0, across * WHOLE.rows), across).map((row) => placesOf(row, rest, across));
  const rows = drawn(means, [...near, ...rowsOf(pictures.slice(across * WHOLE.rows), page)]);
  const grid = stack(
    0,
    GAP.small,
    rows.slice(0, near.length).map((row) => (top) => ({ height: row.height, items: placed(row, top) })),
  );
  return [beside([wholeBlock(means, whole.caption, picture), grid]), ...rows.slice(near.length)];
}

function wholeBlock(means: Means, caption: string, picture: Picture): Block {
  const place = { x: means.page.left, top: WHOLE.height + GAP.row, width: picture.width };
  const words = paragraph(means, STYLES.small, caption, place, 'middle');
  const items = figure(moved(picture.items, means.page.left, GAP.small + (WHOLE.height - picture.height) / 2), picture.alt);
  return { height: WHOLE.height + GAP.row + words.height, items: [...items, ...words.items] };
}

function rowsOf(pictures: readonly PartPicture[], page: Span): readonly Row[] {
  const { length } = pictures;
  if (length === 1) return [{ left: page.left, width: ALONE.share * page.wide, height: ALONE.height, pictures }];
  const across = Math.max(PICTURES.least, Math.ceil(length / Math.ceil(length / PICTURES.most)));
  return inRows(pictures, across).map((row) => placesOf(row, page, across));
}

function placesOf(pictures: readonly PartPicture[], { left, wide }: Span, across: number): Row {
  return { left, width: (wide - PICTURES.gap * (across - 1)) / across, pictures };
}

/** All rows at once: their parts have a scale in common, which stands after each one's name. */
function drawn(means: Means, rows: readonly Row[]): readonly Block[] {
  const asked = rows.flatMap(({ width, height = PICTURES.height, pictures }) =>
    pictures.map(({ part }) => ({ part, frame: { width, height } })),
  );
  const shown = [...means.parts(asked)];
  return rows.map(({ left, width, height = PICTURES.height, pictures }) =>
    beside(
      pictures.flatMap(({ caption }, i) => {
        const one = shown.shift();
        return one ? [pictureBlock(means, one, caption, { x: left + i * (width + PICTURES.gap), width, height })] : [];
      }),
    ),
  );
}

function pictureBlock(
  means: Means,
  { picture, scale }: ShownPart,
  caption: string,
  { x, width, height }: { readonly x: number; readonly width: number; readonly height: number },
): Block {
  const items = figure(moved(picture.items, x, GAP.small), picture.alt);
  const words = paragraph(means, STYLES.small, `${caption} · ${scale}`, { x, top: height + GAP.row, width }, 'middle');
  return { height: height + GAP.row + words.height, items: [...items, ...words.items] };
}
