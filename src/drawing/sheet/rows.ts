/** The table of operations: number, what to do, size with limits, speed, cuts, dial, a box for what was measured, a box to tick. */
import type { DimId } from '../../model/ids.ts';
import type { Meaning } from '../../model/meaning.ts';
import type { GripPage, Row, SizeShown } from '../../model/sheet.ts';
import { tickBox } from '../display.ts';
import { textWidth } from '../measure.ts';
import { type Block, beside, EMPTY, heightOnly, paragraph, type Setter, stack } from './blocks.ts';
import { panel, rule, writeBox } from './frame.ts';
import { row as asRow, tick } from './meant.ts';
import { GAP, once, type Paper, STYLES, type Style } from './type.ts';

/**
 * Left edges and widths of the columns, mm from the text's left edge on a page whose text is `on` wide; `gives`: the share of a narrower
 * or wider page that each takes.
 */
const COLUMNS = [
  { name: 'number', x: 0, width: 10, gives: 0.03 },
  { name: 'do', x: 10, width: 51.3, gives: 0.51 },
  { name: 'letter', x: 61.6, width: 3, gives: 0 },
  { name: 'size', x: 64.7, width: 33, gives: 0.14 },
  { name: 'rpm', x: 99.5, width: 12, gives: 0 },
  { name: 'cuts', x: 112.6, width: 22.8, gives: 0.13 },
  { name: 'dial', x: 136.6, width: 26.2, gives: 0.12 },
  { name: 'measured', x: 163.9, width: 13.9, gives: 0.07 },
  { name: 'tick', x: 179.6, width: 4.4, gives: 0 },
] as const;
const ON = 184;
type Column = (typeof COLUMNS)[number]['name'];
type Columns = Readonly<Record<Column, { readonly x: number; readonly width: number }>>;

/** Of a page; worked out once. */
const known = new WeakMap<Paper['page'], Columns>();

function columnsOf({ page }: Paper): Columns {
  const columns = known.get(page) ?? spreadOver(page);
  known.set(page, columns);
  return columns;
}

function spreadOver(page: Paper['page']): Columns {
  const over = page.wide - ON;
  let before = 0;
  const places = COLUMNS.map(({ name, x, width, gives }) => {
    const place = { x: page.left + x + before * over, width: width + gives * over };
    before += gives;
    return [name, place] as const;
  });
  return Object.fromEntries(places) as Columns;
}

/** The text of a row begins this much lower than its rule; columns in smaller letters are let down to the common baseline. */
const DOWN = { row: 0.8, title: 0.8, figure: 1, speed: 0.5, box: 0.2 } as const;
const BOX_HEIGHT = 6;
/** Shares of the page's width for the reason, the usual one first. */
const WHY_SHARES = [0.543, 0.5, 0.457, 0.413, 0.587, 0.63, 0.674] as const;

/** What holds for all rows, over the table. */
export function onceBlock(paper: Paper, words: string, set: Setter = paragraph): Block {
  const said = set(paper, STYLES.rowNote, words, { x: paper.page.left, top: 0, width: paper.page.wide });
  return { height: said.height === 0 ? 0 : said.height + GAP.small, items: said.items };
}

export function headsHeight(paper: Paper, page: Pick<GripPage, 'once' | 'columns'>): number {
  return onceBlock(paper, page.once, heightOnly).height + columnHeads(paper, page.columns).height;
}

/** Heads of the columns over a heavy rule. */
export function columnHeads(paper: Paper, columns: GripPage['columns']): Block {
  return once(paper, columns, () => {
    const names = ['do', 'size', 'rpm', 'cuts', 'dial', 'measured'] as const;
    const labels = names.map((name) =>
      paragraph(paper, STYLES.label, columns[name], { x: columnsOf(paper)[name].x, top: 0, width: headWidth(paper, name) }),
    );
    const height = beside(labels).height + GAP.small / 2;
    const said = asRow(labels.map((block) => ({ block: bare(block), is: { is: 'column-head' } })));
    return { height, items: [...said.items, rule(paper, height, 'heavy')] };
  });
}

/** What stands across the table of a grip, as one cell of it. */
export function acrossTable(block: Block): Block {
  return { height: block.height, items: asRow([{ block, is: { is: 'cell', across: ACROSS } }]).items };
}
/** Columns that are read: number and title are one, box and tick another. */
const ACROSS = 6;

/** Its words without a paragraph around them: the cell says enough. */
function bare(block: Block): Block {
  return {
    height: block.height,
    items: block.items.map((item) =>
      item.kind === 'text' ? { ...item, within: (item.within ?? []).filter((meaning) => meaning.is !== 'text') } : item,
    ),
  };
}

function headWidth(paper: Paper, name: 'do' | 'size' | 'rpm' | 'cuts' | 'dial' | 'measured'): number {
  const own = columnsOf(paper)[name];
  return name === 'measured' ? paper.page.right - own.x : own.width;
}

/** Letters of a row's lengths, each by what it means to a reader: its own, as long as the row is there. */
type Marks = Map<Meaning, DimId>;
type Laid = { readonly block: Block; readonly marks: ReadonlyMap<Meaning, DimId> };

function laidRow(paper: Paper, row: Row): Laid {
  return once(paper, row, () => {
    const marks: Marks = new Map();
    return { block: made(paper, row, marks), marks };
  });
}

/** However many letters it will have. */
export const rowHeight = (paper: Paper, row: Row): number => laidRow(paper, row).block.height;

/** `lettered`: lengths that the picture shows by letter; the row says which is which. */
export function rowBlock(paper: Paper, row: Row, lettered: ReadonlySet<DimId>): Block {
  const { block, marks } = laidRow(paper, row);
  const isLeft = (meaning: Meaning): boolean => {
    const dim = marks.get(meaning);
    return dim !== undefined && !lettered.has(dim);
  };
  if (![...marks.keys()].some(isLeft)) return block;
  return { height: block.height, items: block.items.filter(({ within = [] }) => !within.some(isLeft)) };
}

function made(paper: Paper, row: Row, marks: Marks): Block {
  const figures = figureCells(paper, row, marks);
  const { what, under } = shortest(paper, row, beside(figures).height);
  const number = paragraph(paper, STYLES.number, row.number, { ...columnsOf(paper).number, top: DOWN.row + DOWN.speed });
  const read = [beside([number, what]), ...figures];
  const said = asRow(read.map((block, i) => ({ block, is: { is: i === 0 ? 'row-head' : 'cell' } })));
  const body = stack(0, 0, [
    () => ({ height: beside(read).height, items: said.items }),
    (top) => acrossTable(underText(paper, under, top, paragraph)),
    (top) => acrossTable(panelText(paper, row, top + GAP.row)),
  ]);
  const height = body.height + GAP.small;
  if (row.panel) return { height: height + GAP.row, items: [panel(paper, GAP.small / 2, height), ...body.items] };
  return { height, items: [...body.items, rule(paper, height, 'thin')] };
}

function figureCells(paper: Paper, row: Row, marks: Marks): readonly Block[] {
  const top = DOWN.row;
  const columns = columnsOf(paper);
  const column = (style: Style, words: string, name: Column, down: number): Block => {
    const block = paragraph(paper, style, words, { ...columns[name], top: top + down });
    return { height: block.height + down, items: block.items };
  };
  const sizes = row.sizes.map((shown, i) => (y: number) => sizeBlock(paper, shown, i === 0 ? 'first' : 'other', y, marks));
  return [
    stack(top, 0, sizes),
    bare(column(STYLES.speed, row.rpm, 'rpm', DOWN.speed)),
    bare(column(STYLES.figure, row.cuts, 'cuts', DOWN.figure)),
    bare(column(STYLES.figure, row.dial, 'dial', DOWN.figure)),
    boxes(paper, row, top),
  ];
}

/**
 * Title, and beneath it the note and the lines that are said; as many of these as makes the row lowest, the others across the row, before
 * what stands there. `figures`: the height of what stands beside.
 */
function shortest(paper: Paper, row: Row, figures: number): { readonly what: Block; readonly under: string } {
  const lines = [row.note, ...row.says].filter((said) => said !== '');
  const way = (kept: number, set: Setter) => {
    const what = whatBlock(paper, row.title, lines.slice(0, kept), set);
    const under = [...lines.slice(kept), row.under].filter((said) => said !== '').join(BETWEEN);
    return { kept, what, under, height: Math.max(figures, what.height) + underText(paper, under, 0, heightOnly).height };
  };
  const all = way(lines.length, paragraph);
  // a row whose figures are as high as all its lines is no lower without them
  if (all.what.height <= figures + SAVED) return all;
  const tried = [...lines.keys()].reverse().map((kept) => way(kept, heightOnly));
  const best = tried.reduce((least, one) => (one.height < least.height - SAVED ? one : least), all);
  return best === all ? all : way(best.kept, paragraph);
}
const BETWEEN = ' · ';
/** Less than this is not worth breaking up what belongs together, mm. */
const SAVED = 2;

function whatBlock(paper: Paper, title: string, lines: readonly string[], set: Setter): Block {
  const block = stack(DOWN.row + DOWN.title, 0, [
    (y) => set(paper, STYLES.strong, title, { ...columnsOf(paper).do, top: y }),
    ...lines.map((said) => (y: number) => set(paper, STYLES.rowNote, said, { ...columnsOf(paper).do, top: y })),
  ]);
  return { ...block, height: block.height + DOWN.title };
}

/** Across the row, from its title to the box for what was measured. */
function underText(paper: Paper, words: string, top: number, set: Setter): Block {
  if (words === '') return EMPTY;
  const { x } = columnsOf(paper).do;
  const block = set(paper, STYLES.rowNote, words, {
    x,
    top: top + GAP.small / 2,
    width: paper.page.right - x,
  });
  return { height: block.height + GAP.small / 2, items: block.items };
}

function boxes(paper: Paper, row: Row, top: number): Block {
  const { tick: ticked, measured } = columnsOf(paper);
  const box = tick(tickBox(ticked.x, top + DOWN.figure, ticked.width, 'open'), row.op, joined([row.number, row.title]));
  const write = row.measure === 'box' ? [writeBox(measured.x, top + DOWN.box, measured.width, BOX_HEIGHT)] : [];
  // what stands across the row begins clear of it
  return { height: top + DOWN.box + BOX_HEIGHT, items: [...write, ...box] };
}

/** The first size is the largest thing in the row, its limits beneath; further ones are a line each. The picture's letter stands before it. */
function sizeBlock(paper: Paper, shown: SizeShown, rank: 'first' | 'other', top: number, marks: Marks): Block {
  const mark = shown.dim === '' ? [] : paragraph(paper, STYLES.second, shown.letter, { ...columnsOf(paper).letter, top }).items;
  for (const meaning of mark.flatMap((item) => item.within ?? [])) marks.set(meaning, shown.dim);
  const place = columnsOf(paper).size;
  if (rank === 'other' || shown.text === '') {
    const line = paragraph(paper, STYLES.second, joined([shown.text, shown.limits, shown.after]), { ...place, top });
    return { height: line.height, items: [...mark, ...line.items] };
  }
  const oneLine = besideSize(paper, shown, top);
  if (oneLine) return { height: oneLine.height, items: [...mark, ...oneLine.items] };
  const both = stack(top, 0, [
    (y) => paragraph(paper, STYLES.size, shown.text, { ...place, top: y }),
    ...limitLines(paper, shown).map((words) => (y: number) => paragraph(paper, STYLES.limits, words, { ...place, top: y })),
  ]);
  return { height: both.height, items: [...mark, ...both.items] };
}

/** Limits and what stands behind them in one line, or in two that each say a whole thing: no line is a last word alone. */
function limitLines(paper: Paper, { limits, after }: SizeShown): readonly string[] {
  const both = joined([limits, after]);
  const fits = textWidth(paper.advances, STYLES.limits.font, STYLES.limits.size, both) <= columnsOf(paper).size.width;
  return fits || limits === '' || after === '' ? [both] : [limits, after.replace(DOT, '')];
}
/** It stands between two things on one line. */
const DOT = /^· */;

/** Size, limits and where from in one line, where the column has room for them. */
function besideSize(paper: Paper, { text, limits, after }: SizeShown, top: number): Block | undefined {
  const { x, width } = columnsOf(paper).size;
  const from = x + textWidth(paper.advances, STYLES.size.font, STYLES.size.size, text) + GAP.row;
  const rest = joined([limits, after]);
  if (from + textWidth(paper.advances, STYLES.limits.font, STYLES.limits.size, rest) > x + width) return undefined;
  const down = STYLES.size.size - STYLES.limits.size;
  const blocks = [
    paragraph(paper, STYLES.size, text, { x, top, width }),
    paragraph(paper, STYLES.limits, rest, { x: from, top: top + down, width }),
  ];
  return beside(blocks);
}

const joined = (pieces: readonly string[]): string => pieces.filter((piece) => piece !== '').join(' ');

/** Why on the left, what to look out for on the right; as wide each as makes both lowest. */
function panelText(paper: Paper, row: Row, top: number): Block {
  if (!row.panel) return EMPTY;
  const { why, stop } = row.panel;
  const left = columnsOf(paper).do.x;
  const column = (x: number, width: number, said: typeof why, set: Setter): Block =>
    stack(top, 0, [
      (y) => set(paper, { ...STYLES.body, font: 'text-bold' }, said.heading, { x, top: y, width }),
      (y) => set(paper, STYLES.body, said.text, { x, top: y, width }),
    ]);
  const way = (share: number, set: Setter): Block => {
    const width = share * paper.page.wide;
    const right = left + width + GAP.column;
    return beside([column(left, width, why, set), column(right, paper.page.right - right, stop, set)]);
  };
  const tried = WHY_SHARES.map((share) => ({ share, height: way(share, heightOnly).height }));
  const lowest = way(tried.reduce((best, one) => (one.height < best.height ? one : best)).share, paragraph);
  return { height: lowest.height + GAP.row, items: lowest.items };
}
