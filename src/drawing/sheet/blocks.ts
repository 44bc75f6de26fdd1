/** Blocks: pieces of a page that know their height and are drawn from y = 0; paragraphs, and stacking one under the other. */
import type { Item, TextItem } from '../../model/display.ts';
import type { Meaning } from '../../model/meaning.ts';
import { at2, moved, text as textItem } from '../display.ts';
import { textWidth, wrap } from '../measure.ts';
import { type Span, spansOf } from './links.ts';
import { GAP, type Paper, type Style } from './type.ts';

/** `x` is absolute, y counts from the block's own top. */
export type Block = { readonly height: number; readonly items: readonly Item[] };
export type Place = { readonly x: number; readonly top: number; readonly width: number };
export type Align = 'left' | 'middle' | 'right';

/** The first baseline stands this share of the size under the top: capitals clear the line above. */
export const FIRST_BASELINE = 0.92;

/** Lines no wider than the place; an empty text is no line. `x` is the left edge of the place for every `align`. */
export function paragraph(paper: Paper, style: Style, words: string, place: Place, align: Align = 'left'): Block {
  if (words === '') return { height: 0, items: [] };
  const lines = wrap(paper.advances, style.font, style.size, words, place.width);
  const how = { advances: paper.advances, font: style.font, size: style.size, ink: style.ink };
  const x = align === 'left' ? place.x : align === 'middle' ? place.x + place.width / 2 : place.x + place.width;
  const meaning: Meaning = { is: 'text' };
  const items: TextItem[] = [];
  let open: number | undefined;
  for (const [i, line] of lines.filter((each) => each !== '').entries()) {
    const { spans, open: still } = spansOf(line, open);
    open = still;
    const whole = textItem(
      how,
      spans.map((span) => span.text).join(''),
      x,
      place.top + style.size * FIRST_BASELINE + i * style.lead,
      align,
    );
    items.push(
      ...(spans.length === 1 && spans[0]?.sheet === undefined
        ? [{ ...whole, within: [meaning] }]
        : stretches(paper, whole, spans, meaning)),
    );
  }
  return { height: lines.length * style.lead, items };
}

/** As high as that paragraph, and not set: for trying places. */
export function heightOnly(paper: Paper, style: Style, words: string, place: Place): Block {
  if (words === '') return EMPTY;
  return { height: wrap(paper.advances, style.font, style.size, words, place.width).length * style.lead, items: [] };
}

/** Sets a paragraph, or only tells its height. */
export type Setter = (paper: Paper, style: Style, words: string, place: Place) => Block;

/** A line with links in it, stretch by stretch where it stands as a whole. */
function stretches(paper: Paper, whole: TextItem, spans: readonly Span[], meaning: Meaning): readonly TextItem[] {
  let x = whole.x;
  return spans.map(({ text, sheet }) => {
    const width = textWidth(paper.advances, whole.font, whole.size, text);
    const link: readonly Meaning[] = sheet === undefined ? [] : [{ is: 'link', sheet, says: paper.toSheet?.(sheet) ?? '' }];
    const item = { ...whole, text, x: at2(x), width: at2(width), within: [meaning, ...link] };
    x += width;
    return item;
  });
}

/** One under the other from `top`, `gap` between those that have any height. */
export function stack(top: number, gap: number, makers: readonly ((top: number) => Block)[]): Block {
  let y = top;
  const items: Item[] = [];
  for (const maker of makers) {
    const block = maker(y);
    items.push(...block.items);
    if (block.height > 0) y += block.height + gap;
  }
  return { height: Math.max(0, y - top - (y > top ? gap : 0)), items };
}

/** Side by side: the height of the highest. */
export function beside(blocks: readonly Block[]): Block {
  return { height: Math.max(0, ...blocks.map((block) => block.height)), items: blocks.flatMap((block) => block.items) };
}

export function inRows<T>(items: readonly T[], across: number): readonly (readonly T[])[] {
  const rows: (readonly T[])[] = [];
  for (let i = 0; i < items.length; i += across) rows.push(items.slice(i, i + across));
  return rows;
}

/** Set on the page at `y`. */
export function placed(block: Block, y: number): readonly Item[] {
  return moved(block.items, 0, y);
}

export const EMPTY: Block = { height: 0, items: [] };
/** White space. */
export const space = (height: number = GAP.block): Block => ({ height, items: [] });
