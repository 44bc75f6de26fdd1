/**
 * What the items of a page mean, as the tree of a tagged PDF (ISO 32000-1, 14.7 and 14.8): stretches of content that are marked with one
 * element or as an artifact, and the elements in reading order. It reads the meanings that the items carry and adds none.
 */
import type { Item, Page, PathItem, TextItem } from '../model/display.ts';
import type { Meaning } from '../model/meaning.ts';
import { merged } from './pdf-paths.ts';

export type Rect = { readonly x: number; readonly y: number; readonly w: number; readonly h: number };
/** `kids`: elements, numbers of marked stretches of its page, and places that annotations take. */
export type Element = { readonly role: string; readonly meaning: Meaning; readonly kids: Kid[]; box?: Rect };
export type Kid = Element | number | Spot;
export type Spot = Tick | Link;
/** mm, y downward. */
export type Tick = { readonly spot: 'tick'; readonly name: string; readonly says: string; readonly rect: Rect };
export type Link = { readonly spot: 'link'; readonly sheet: number; readonly says: string; readonly rect: Rect };
/** `open`: the operator that begins it. `whole`: all of a figure, or what of it stands together. */
export type Stretch = { readonly open: string; readonly items: readonly Item[]; readonly whole: boolean };
/** `marked`: element of each marked stretch, by its number. `spots` with the element each stands in, in reading order. */
export type TaggedPage = {
  readonly stretches: readonly Stretch[];
  readonly top: readonly Kid[];
  readonly marked: readonly Element[];
  readonly spots: readonly { readonly spot: Spot; readonly element: Element }[];
};

const ROLES: Readonly<Record<Exclude<Meaning['is'], 'running-head' | 'running-foot'>, string>> = {
  'sheet-title': 'H1',
  title: 'H2',
  text: 'P',
  list: 'L',
  steps: 'L',
  entry: 'LI',
  number: 'Lbl',
  said: 'LBody',
  table: 'Table',
  row: 'TR',
  'column-head': 'TH',
  'row-head': 'TH',
  cell: 'TD',
  figure: 'Figure',
  tick: 'Form',
  link: 'Link',
};
const ARTIFACTS: Readonly<Record<string, string>> = {
  '': '/Artifact BMC',
  'running-head': '/Artifact <</Type/Pagination/Attached[/Top]/Subtype/Header>> BDC',
  'running-foot': '/Artifact <</Type/Pagination/Attached[/Bottom]/Subtype/Footer>> BDC',
};
/** A link's place reaches this far beyond its figures, mm: a fingertip is wide. */
const AROUND = 1;
const UP = 0.75;
const DOWN = 0.25;

export function tagPage(page: Page): TaggedPage {
  const building: Building = { elements: new Map(), top: [], marked: [], spots: [] };
  const stretches: (Kind & { readonly items: Item[]; readonly number: number | undefined })[] = [];
  for (const item of page.items) {
    const kind = kindOf(item, building);
    const last = stretches.at(-1);
    if (last?.of === kind.of) last.items.push(item);
    else stretches.push({ ...kind, items: [item], number: kind.element && numbered(building, kind.element) });
  }
  const { top, marked, spots } = building;
  joinParagraphs(top, building);
  const opened = stretches.map(({ number, open, items, element }) => ({
    open: number === undefined ? open : markOf(marked, number),
    items: merged(items),
    whole: element?.meaning.is === 'figure',
  }));
  return { stretches: opened, top, marked, spots };
}

const markOf = (marked: readonly Element[], number: number): string => `/${marked[number]?.role} <</MCID ${number}>> BDC`;

/** What holds one paragraph and nothing else says it itself: half the elements of a table would be such paragraphs. */
function joinParagraphs(kids: readonly Kid[], building: Building): void {
  for (const kid of kids) {
    if (typeof kid !== 'object' || 'spot' in kid) continue;
    const [only, ...more] = kid.kids;
    if (HOLDERS.has(kid.role) && more.length === 0 && typeof only === 'object' && 'role' in only && only.role === 'P') {
      kid.kids.splice(0, 1, ...only.kids);
      for (const own of only.kids) if (typeof own === 'number') building.marked[own] = kid;
    }
    joinParagraphs(kid.kids, building);
  }
}
const HOLDERS: ReadonlySet<string> = new Set(['TD', 'TH', 'LBody', 'Lbl']);

type Building = {
  readonly elements: Map<Meaning, Element>;
  readonly top: Kid[];
  readonly marked: Element[];
  readonly spots: { readonly spot: Spot; readonly element: Element }[];
};

/** `of`: what keeps items in one stretch; `element`: whose they are; an artifact has the operator that opens it instead. */
type Kind = { readonly of: Meaning | string; readonly element?: Element; readonly open: string };
function kindOf(item: Item, building: Building): Kind {
  const path = item.within && inCell(item.within);
  const leaf = path?.at(-1);
  if (!path || !leaf) return artifact('');
  if (leaf.is === 'running-head' || leaf.is === 'running-foot') return artifact(leaf.is);
  const element = elementFor(path, building);
  if (leaf.is === 'tick') {
    if (item.kind === 'path') place(building, element, { spot: 'tick', name: leaf.name, says: leaf.says, rect: boxOf(item) });
    return artifact('');
  }
  if (leaf.is === 'figure') element.box = joined(element.box, boxOf(item));
  if (leaf.is === 'link' && item.kind === 'text')
    place(building, element, { spot: 'link', sheet: leaf.sheet, says: leaf.says, rect: wider(boxOf(item)) });
  return { of: leaf, element, open: '' };
}

const artifact = (of: string): Kind => ({ of, open: ARTIFACTS[of] ?? '' });

/** Figures in a cell of one column are what it says, one after the other, and no paragraphs. */
function inCell(path: readonly Meaning[]): readonly Meaning[] {
  const at = path.findIndex(isRow) + 1;
  const cell = at > 0 ? path[at] : undefined;
  const narrow = cell !== undefined && !(cell.is === 'cell' && cell.across !== undefined);
  return narrow ? path.filter((meaning, i) => i <= at || meaning.is !== 'text') : path;
}

const isRow = ({ is }: Meaning): boolean => is === 'row';

function numbered({ marked }: Building, element: Element): number {
  element.kids.push(marked.length);
  return marked.push(element) - 1;
}

/** A tick box is one square, a link one stretch of text: the first item of an element makes its place. */
function place({ spots }: Building, element: Element, spot: Spot): void {
  if (element.kids.some((kid) => typeof kid === 'object' && 'spot' in kid)) return;
  element.kids.push(spot);
  spots.push({ spot, element });
}

function elementFor(path: readonly Meaning[], { elements, top }: Building): Element {
  let kids: Kid[] = top;
  let element: Element | undefined;
  for (const meaning of path) {
    element = elements.get(meaning) ?? made(meaning, kids, elements);
    kids = element.kids;
  }
  if (!element) throw new Error('an item stands within nothing');
  return element;
}

function made(meaning: Meaning, kids: Kid[], elements: Map<Meaning, Element>): Element {
  const role = (ROLES as Readonly<Record<string, string>>)[meaning.is];
  if (role === undefined) throw new Error(`'${meaning.is}' cannot stand around anything`);
  const element: Element = { role, meaning, kids: [] };
  elements.set(meaning, element);
  kids.push(element);
  if (meaning.is === 'row') for (const cell of meaning.cells) made(cell, element.kids, elements);
  return element;
}

// ---- how far things reach ------------------------------------------------------------------------------------------------
function boxOf(item: Item): Rect {
  return item.kind === 'text' ? textRect(item) : pathRect(item);
}

function textRect({ x, y, size, width, turn }: TextItem): Rect {
  if (turn) return { x: x - size * UP, y: y - width, w: size, h: width };
  return { x, y: y - size * UP, w: width, h: size * (UP + DOWN) };
}

function pathRect(item: PathItem): Rect {
  let left = Number.POSITIVE_INFINITY;
  let top = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let low = Number.NEGATIVE_INFINITY;
  for (const s of item.segments) {
    if (s.to === 'close') continue;
    if (s.x < left) left = s.x;
    if (s.x > right) right = s.x;
    if (s.y < top) top = s.y;
    if (s.y > low) low = s.y;
  }
  return { x: left, y: top, w: right - left, h: low - top };
}

function joined(a: Rect | undefined, b: Rect): Rect {
  if (!a) return b;
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
}

function wider(rect: Rect): Rect {
  return { x: rect.x - AROUND, y: rect.y - AROUND, w: rect.w + 2 * AROUND, h: rect.h + 2 * AROUND };
}
