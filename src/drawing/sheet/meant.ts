/** Says of items what they mean (model/meaning.ts). */
import type { Item, PathItem, TextItem } from '../../model/display.ts';
import type { Meaning } from '../../model/meaning.ts';
import type { Block } from './blocks.ts';

/** Its items stand within `meaning`, around what they already stand in. Lines and panels stay decoration, but for those of a figure. */
export function within(block: Block, meaning: Meaning): Block {
  return { height: block.height, items: block.items.map((item) => (isSaid(item, meaning) ? around(item, meaning) : item)) };
}

/** Its items are this and nothing else: a heading, not a paragraph in a heading. Links stay. */
export function as(block: Block, meaning: Meaning): Block {
  return { height: block.height, items: block.items.map((item) => (item.kind === 'text' ? only(item, meaning) : item)) };
}

/** Every item of a picture, words and lines, as one figure. */
export function figure(items: readonly Item[], alt: string): readonly Item[] {
  const path: readonly Meaning[] = [{ is: 'figure', alt }];
  return items.map((item) => ({ ...item, within: path }));
}

/** The frame of a box to tick. */
export function tick(items: readonly PathItem[], name: string, says: string): readonly PathItem[] {
  const meaning: Meaning = { is: 'tick', name, says };
  return items.map((item) => ({ ...item, within: [meaning] }));
}

/** A row of a table from its cells, in order; what `extra` holds (its rule) is decoration. */
export function row(cells: readonly { readonly block: Block; readonly is: Meaning }[]): { readonly items: readonly Item[] } {
  const meaning: Meaning = { is: 'row', cells: cells.map((cell) => cell.is) };
  return { items: cells.flatMap(({ block, is }) => within(within(block, is), meaning).items) };
}

function isSaid(item: Item, meaning: Meaning): boolean {
  return item.kind === 'text' || item.within !== undefined || meaning.is === 'figure';
}

function around(item: Item, meaning: Meaning): Item {
  return { ...item, within: [meaning, ...(item.within ?? [])] };
}

function only(item: TextItem, meaning: Meaning): TextItem {
  return { ...item, within: [meaning, ...(item.within ?? []).filter((each) => each.is === 'link')] };
}
