/** The table of operations: number, what to do, size with limits, speed, cuts, dial, a box for what was measured, a box to tick. */
import type { DimId } from '../../model/ids.ts';
import type { GripPage, Row, SizeShown } from '../../model/sheet.ts';
import { tickBox } from '../display.ts';
import { textWidth } from '../measure.ts';
import { type Block, beside, paragraph, stack } from './blocks.ts';
import { panel, rule, writeBox } from './frame.ts';
import { row as asRow, tick } from './meant.ts';
import { GAP, PAGE, type Paper, STYLES, type Style, WIDTH } from './type.ts';

/** Left edges and widths of the columns, mm from the page's left. */
const COLUMNS = {
  number: { x: PAGE.left, width: 10 },
  do: { x: 23, width: 54 },
  letter: { x: 77.4, width: 3 },
  size: { x: 80.5, width: 33 },
  rpm: { x: 114.5, width: 12 },
  cuts: { x: 127, width: 23.5 },
  dial: { x: 151.5, width: 24 },
  measured: { x: 176, width: 14.5 },
  tick: { x: 192.6, width: 4.4 },
} as const;
/** The text of a row begins this much lower than its rule; columns in smaller letters are let down to the common baseline. */
const DOWN = { row: 0.8, title: 0.8, figure: 1, speed: 0.5, box: 0.2 } as const;
const BOX_HEIGHT = 6;
const WHY_WIDTH = 100;

/** What holds for all rows, over the table. */
export function onceBlock(paper: Paper, once: string): Block {
  const said = paragraph(paper, STYLES.rowNote, once, { x: PAGE.left, top: 0, width: WIDTH });
  return { height: said.height === 0 ? 0 : said.height + GAP.small, items: said.items };
}

export function headsHeight(paper: Paper, { once, columns }: Pick<GripPage, 'once' | 'columns'>): number {
  return onceBlock(paper, once).height + columnHeads(paper, columns).height;
}

/** Heads of the columns over a heavy rule. */
export function columnHeads(paper: Paper, columns: GripPage['columns']): Block {
  const names = ['do', 'size', 'rpm', 'cuts', 'dial', 'measured'] as const;
  const labels = names.map((name) => paragraph(paper, STYLES.label, columns[name], { x: COLUMNS[name].x, top: 0, width: headWidth(name) }));
  const height = beside(labels).height + GAP.small / 2;
  const said = asRow(labels.map((block) => ({ block: bare(block), is: { is: 'column-head' } })));
  return { height, items: [...said.items, rule(height, 'heavy')] };
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

function headWidth(name: 'do' | 'size' | 'rpm' | 'cuts' | 'dial' | 'measured'): number {
  return name === 'measured' ? PAGE.right - COLUMNS.measured.x : COLUMNS[name].width;
}

/** `lettered`: lengths that the picture shows by letter; the row says which is which. */
export function rowBlock(paper: Paper, row: Row, lettered: ReadonlySet<DimId>): Block {
  const body = stack(0, 0, [
    (top) => cells(paper, row, top + DOWN.row, lettered),
    (top) => acrossTable(underText(paper, row, top)),
    (top) => acrossTable(panelText(paper, row, top + GAP.row)),
  ]);
  const height = body.height + GAP.small;
  if (row.panel) return { height: height + GAP.row, items: [panel(GAP.small / 2, height), ...body.items] };
  return { height, items: [...body.items, rule(height, 'thin')] };
}

function cells(paper: Paper, row: Row, top: number, lettered: ReadonlySet<DimId>): Block {
  const column = (style: Style, words: string, name: keyof typeof COLUMNS, down: number): Block => {
    const block = paragraph(paper, style, words, { ...COLUMNS[name], top: top + down });
    return { height: block.height + down, items: block.items };
  };
  const what = stack(top + DOWN.title, 0, [
    (y) => paragraph(paper, STYLES.strong, row.title, { ...COLUMNS.do, top: y }),
    (y) => paragraph(paper, STYLES.rowNote, row.note, { ...COLUMNS.do, top: y }),
    ...row.says.map((said) => (y: number) => paragraph(paper, STYLES.rowNote, said, { ...COLUMNS.do, top: y })),
  ]);
  const sizes = stack(
    top,
    0,
    row.sizes.map((shown, i) => (y: number) => sizeBlock(paper, shown, i === 0 ? 'first' : 'other', y, lettered)),
  );
  const read = [
    beside([column(STYLES.number, row.number, 'number', DOWN.speed), { ...what, height: what.height + DOWN.title }]),
    sizes,
    bare(column(STYLES.speed, row.rpm, 'rpm', DOWN.speed)),
    bare(column(STYLES.figure, row.cuts, 'cuts', DOWN.figure)),
    bare(column(STYLES.figure, row.dial, 'dial', DOWN.figure)),
    boxes(row, top),
  ];
  return {
    height: beside(read).height,
    items: asRow(read.map((block, i) => ({ block, is: { is: i === 0 ? 'row-head' : 'cell' } }))).items,
  };
}

/** Across the row, from its title to the box for what was measured. */
function underText(paper: Paper, row: Row, top: number): Block {
  if (row.under === '') return { height: 0, items: [] };
  const block = paragraph(paper, STYLES.rowNote, row.under, {
    x: COLUMNS.do.x,
    top: top + GAP.small / 2,
    width: PAGE.right - COLUMNS.do.x,
  });
  return { height: block.height + GAP.small / 2, items: block.items };
}

function boxes(row: Row, top: number): Block {
  const box = tick(tickBox(COLUMNS.tick.x, top + DOWN.figure, COLUMNS.tick.width, 'open'), row.op, joined([row.number, row.title]));
  const write = row.measure === 'box' ? [writeBox(COLUMNS.measured.x, top + DOWN.box, COLUMNS.measured.width, BOX_HEIGHT)] : [];
  return { height: BOX_HEIGHT + DOWN.box, items: [...write, ...box] };
}

/** The first size is the largest thing in the row, its limits beneath; further ones are a line each. The picture's letter stands before it. */
function sizeBlock(paper: Paper, shown: SizeShown, rank: 'first' | 'other', top: number, lettered: ReadonlySet<DimId>): Block {
  const mark =
    shown.dim !== '' && lettered.has(shown.dim) ? paragraph(paper, STYLES.second, shown.letter, { ...COLUMNS.letter, top }).items : [];
  const place = { x: COLUMNS.size.x, width: COLUMNS.size.width };
  if (rank === 'other' || shown.text === '') {
    const line = paragraph(paper, STYLES.second, joined([shown.text, shown.limits, shown.after]), { ...place, top });
    return { height: line.height, items: [...mark, ...line.items] };
  }
  const oneLine = besideSize(paper, shown, top);
  if (oneLine) return { height: oneLine.height, items: [...mark, ...oneLine.items] };
  const both = stack(top, 0, [
    (y) => paragraph(paper, STYLES.size, shown.text, { ...place, top: y }),
    (y) => paragraph(paper, STYLES.limits, joined([shown.limits, shown.after]), { ...place, top: y }),
  ]);
  return { height: both.height, items: [...mark, ...both.items] };
}

/** Size, limits and where from in one line, where the column has room for them. */
function besideSize(paper: Paper, { text, limits, after }: SizeShown, top: number): Block | undefined {
  const { x, width } = COLUMNS.size;
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

function panelText(paper: Paper, row: Row, top: number): Block {
  if (!row.panel) return { height: 0, items: [] };
  const { why, stop } = row.panel;
  const right = COLUMNS.do.x + WHY_WIDTH + GAP.column;
  const column = (x: number, width: number, said: typeof why): Block =>
    stack(top, 0, [
      (y) => paragraph(paper, { ...STYLES.body, font: 'text-bold' }, said.heading, { x, top: y, width }),
      (y) => paragraph(paper, STYLES.body, said.text, { x, top: y, width }),
    ]);
  const both = beside([column(COLUMNS.do.x, WHY_WIDTH, why), column(right, PAGE.right - right, stop)]);
  return { height: both.height + GAP.row, items: both.items };
}
