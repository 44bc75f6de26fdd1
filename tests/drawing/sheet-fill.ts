/** How the pages of a sheet are filled: how far down, headings with nothing under them, tables without their heads. */
import type { Item, Page } from '../../src/model/display.ts';
import type { Meaning } from '../../src/model/meaning.ts';

const isIn = (item: Item, is: Meaning['is']): boolean => (item.within ?? []).some((meaning) => meaning.is === is);
const downs = (item: Item): readonly number[] =>
  item.kind === 'text' ? [item.y] : item.segments.flatMap((s) => (s.to === 'close' ? [] : [s.y]));

/** Letters of the foot stand this far under its rule, mm, with all that is above it. */
const UNDER = 4.5;

/** Between head and foot. */
function bodyOf(page: Page): { readonly items: readonly Item[]; readonly top: number; readonly foot: number } {
  const top = Math.max(...page.items.filter((item) => isIn(item, 'running-head')).flatMap(downs));
  const foot = Math.min(...page.items.filter((item) => isIn(item, 'running-foot')).flatMap(downs)) - UNDER;
  const items = page.items.filter((item) => !isIn(item, 'running-head') && downs(item).every((y) => y > top && y < foot));
  return { items, top, foot };
}

/** Share of the room between head and foot down to the lowest thing in it. */
export function filled(page: Page): number {
  const { items, top, foot } = bodyOf(page);
  return (Math.max(top, ...items.flatMap(downs)) - top) / (foot - top);
}

/** Titles and heads of columns that nothing follows before the foot. */
export function orphans(page: Page): readonly string[] {
  const said = bodyOf(page).items.filter((item) => (item.within ?? []).length > 0);
  const kinds = said.map((item) => (isIn(item, 'title') ? 'title' : isIn(item, 'column-head') ? 'heads' : 'other'));
  return said.flatMap((item, i) => {
    if (kinds[i] === 'other' || item.kind !== 'text') return [];
    const next = kinds.slice(i + 1).find((kind) => kind !== kinds[i]);
    return next === undefined ? [item.text] : [];
  });
}

/** First words of rows whose table has no heads on this page. */
export function headless(page: Page): readonly string[] {
  const tableOf = (item: Item): Meaning | undefined => (item.within ?? []).find((meaning) => meaning.is === 'table');
  const headed = new Set(page.items.filter((item) => isIn(item, 'column-head')).map(tableOf));
  return page.items.flatMap((item) => {
    const table = tableOf(item);
    return item.kind === 'text' && table && !headed.has(table) ? [item.text] : [];
  });
}
