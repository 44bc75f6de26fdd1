/** Where everything stands: a sheet's view on pages of paper. Words are the view's, places are decided here and nowhere later. */
import type { Document } from '../../model/display.ts';
import type { PlainPage, SheetPage, SheetView } from '../../model/sheet.ts';
import { at2, enlarged } from '../display.ts';
import { type GripMeans, gripSheets, type Sheet } from './grip-page.ts';
import { linked } from './links.ts';
import { isSlight, type PlainMeans, plainSheets } from './plain-page.ts';
import { once } from './type.ts';

export type LayoutMeans = GripMeans & PlainMeans;
/** On which sheet each page of the view begins, and each section that has a key, counted from 1, by that key. */
export type SheetNumbers = Readonly<Record<string, number>>;
export type Placed = { readonly document: Document; readonly sheets: SheetNumbers };

/** A sheet number that grows by a digit may push a line over: by then it has settled. */
const ROUNDS = 4;
const UNKNOWN = '00';

/** Pure: the same view and pictures give the same document. */
export function layOut(view: SheetView, asked: LayoutMeans): Placed {
  const means = { ...asked, laid: new WeakMap() };
  let sheets = settle(linkedView(view, {}), means);
  for (let round = 0; round < ROUNDS; round++) {
    const before = numbersOf(sheets);
    const headings = sheets.map((sheet) => sheet.heading);
    sheets = settle(linkedView(view, before), { ...means, toSheet: (n) => linkWords(view, n, headings[n - 1] ?? '') });
    if (same(before, numbersOf(sheets))) break;
  }
  const { page } = means;
  const pages = sheets.map((sheet, i) => ({
    width: at2(page.width * page.enlarged),
    height: at2(page.height * page.enlarged),
    label: String(i + 1),
    heading: sheet.heading,
    items: enlarged(sheet.draw(i + 1, sheets.length), page.enlarged),
  }));
  const { title, language, mark } = view;
  return { document: { title, language, mark, pages }, sheets: numbersOf(sheets) };
}

function settle(view: SheetView, means: LayoutMeans): readonly Sheet[] {
  return joined(view, means).flatMap((page) =>
    once(means, page, () => (page.kind === 'grip' ? gripSheets(means, view, page) : plainSheets(means, view, page))),
  );
}

/** A plain page and one that may follow it there, as one under both their names where either has but a few lines. */
function joined(view: SheetView, means: LayoutMeans): SheetView['pages'] {
  const pages: SheetPage[] = [];
  for (const page of view.pages) {
    const before = pages.at(-1);
    const may = before?.kind === 'plain' && page.kind === 'plain' && page.mayFollow === true;
    const follows = may && [before, page].some((each) => isSlight(means, view, each));
    if (follows) pages.pop();
    pages.push(follows ? under(before, page) : page);
  }
  return pages;
}

function under(before: PlainPage, page: PlainPage): PlainPage {
  const [first, ...others] = page.sections;
  const sections = first
    ? [...before.sections, { ...first, key: page.key, title: first.title === '' ? page.heading : first.title }, ...others]
    : before.sections;
  return {
    ...before,
    name: `${before.name}${BETWEEN}${page.name}`,
    sections,
    cautions: [...before.cautions, ...page.cautions.filter((one) => !before.cautions.some(({ text }) => text === one.text))],
  };
}
const BETWEEN = ' \u00b7 ';

/** What is made several times has a page each time: of the second time on by '<key>@2' and so on. A sheet that goes on begins no page. */
function numbersOf(sheets: readonly Sheet[]): SheetNumbers {
  const numbers: Record<string, number> = {};
  const times: Record<string, number> = {};
  for (const [i, sheet] of sheets.entries()) {
    for (const key of sheet.keys.filter((each) => !sheets[i - 1]?.keys.includes(each))) {
      times[key] = (times[key] ?? 0) + 1;
      numbers[times[key] === 1 ? key : `${key}${AGAIN}${times[key]}`] = i + 1;
    }
  }
  return numbers;
}

function same(a: SheetNumbers, b: SheetNumbers): boolean {
  return Object.keys(a).every((key) => a[key] === b[key]);
}

/** The view with every '{sheet:…}' in its texts made a figure. Throws Error for a page that the view does not have. */
export function numbered(view: SheetView, sheets: SheetNumbers): SheetView {
  return withFigures(view, sheets, (figure) => figure);
}

/** The same, each figure marked as a link to its sheet. */
function linkedView(view: SheetView, sheets: SheetNumbers): SheetView {
  return withFigures(view, sheets, (figure) => linked(figure, Number(figure)));
}

function linkWords(view: SheetView, n: number, heading: string): string {
  return view.toSheet.replace('{n}', String(n)).replace('{heading}', heading);
}

function withFigures(view: SheetView, sheets: SheetNumbers, change: (figure: string) => string): SheetView {
  const known = new Set(view.pages.flatMap(keysOf));
  const figure = (_: string, key: string): string => {
    if (!known.has(key.replace(TIME, ''))) throw new Error(`a text names the sheet of '${key}', which the view does not have`);
    return change(String(sheets[key] ?? UNKNOWN));
  };
  return eachText(view, (text) => (text.includes(SHEET) ? text.replace(/\{sheet:([^}]*)\}/g, figure) : text)) as SheetView;
}

const SHEET = '{sheet:';
const AGAIN = '@';
const TIME = /@\d+$/;

function keysOf(page: SheetView['pages'][number]): readonly string[] {
  return page.kind === 'grip' ? [page.key] : [page.key, ...page.sections.flatMap(({ key }) => (key === undefined ? [] : [key]))];
}

/** What was looked through and names no sheet; a view is looked through once a round. */
const NAMELESS = new WeakSet<object>();

/** Where no text is changed the value itself is given back: `change` leaves what names no sheet, and nothing else. */
function eachText(value: unknown, change: (text: string) => string): unknown {
  if (typeof value === 'string') return change(value);
  if (typeof value !== 'object' || value === null || NAMELESS.has(value)) return value;
  const changed = Array.isArray(value) ? eachItem(value, change) : eachField(value as Record<string, unknown>, change);
  if (changed === value) NAMELESS.add(value);
  return changed;
}

function eachItem(value: readonly unknown[], change: (text: string) => string): readonly unknown[] {
  const items = value.map((item) => eachText(item, change));
  return items.some((item, i) => item !== value[i]) ? items : value;
}

function eachField(value: Readonly<Record<string, unknown>>, change: (text: string) => string): Readonly<Record<string, unknown>> {
  let changed: Record<string, unknown> | undefined;
  for (const [key, item] of Object.entries(value)) {
    const other = eachText(item, change);
    if (other !== item) changed = { ...(changed ?? value), [key]: other };
  }
  return changed ?? value;
}
