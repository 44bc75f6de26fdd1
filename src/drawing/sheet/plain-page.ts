/** Cover, assembly, tests, proof: sections one under the other, going on to a further sheet wherever a piece does not fit. */
import type { Meaning } from '../../model/meaning.ts';
import type { Column, PlainPage, Section, SheetView } from '../../model/sheet.ts';
import { tickBox } from '../display.ts';
import { textWidth } from '../measure.ts';
import { arrangementBlock, type DrawArrangement } from './arrangement.ts';
import { type Block, beside, EMPTY, inRows, paragraph, placed, stack } from './blocks.ts';
import { boxBlocks } from './boxes.ts';
import { cautionBlocks } from './cautions.ts';
import { columnSpans, MANNERS, type Span } from './columns.ts';
import { curveBlock } from './curve.ts';
import { evenly, fill, filledOut, heightOf, type Piece, SLIGHT } from './filling.ts';
import { foot, footTop } from './foot.ts';
import { draftMark, head, panel, rule } from './frame.ts';
import { type Sheet, WIDEST } from './grip-page.ts';
import { type DrawLesson, legendBlock, lessonBlock } from './lesson.ts';
import { unlinked } from './links.ts';
import { as, row as asRow, tick, within } from './meant.ts';
import { type DrawParts, type DrawWhole, pictureBlocks } from './pictures.ts';
import { stripPieces } from './sorting.ts';
import { stepBlock } from './steps.ts';
import { trainBlock } from './train.ts';
import { GAP, once, type Paper, STYLES } from './type.ts';

export type PlainMeans = Paper & {
  readonly parts: DrawParts;
  readonly whole: DrawWhole;
  readonly lesson: DrawLesson;
  readonly arrangement: DrawArrangement;
};

const CELL_PAD = 0.4;
const TICK = { size: 3.8, indent: 7 } as const;

export function plainSheets(means: PlainMeans, view: SheetView, page: PlainPage): readonly Sheet[] {
  const { top, room, pieces } = measured(means, view, page);
  return evenly(pieces, room).map(({ blocks, keys }, i) => ({
    keys: [page.key, ...keys],
    heading: page.heading,
    draw: (n, of) => {
      const headed = headBlock(means, view, page, i === 0 ? 'fits' : 'goes on', n, of);
      const body = stack(
        top,
        0,
        filledOut(blocks, room).map((block) => (y: number) => at(block, y)),
      );
      return [...placed(headed, means.page.top), ...body.items, ...foot(means, view, page.cautions)];
    },
  }));
}

/** Would it leave a sheet nearly empty? Then what follows may stand under it. */
export function isSlight(means: PlainMeans, view: SheetView, page: PlainPage): boolean {
  const { room, pieces } = measured(means, view, page);
  const [only, ...others] = fill(pieces, room);
  return others.length === 0 && heightOf(only?.blocks ?? []) < SLIGHT * room;
}

function measured(means: PlainMeans, view: SheetView, page: PlainPage) {
  const heads = (['fits', 'goes on'] as const).map((carried) => headBlock(means, view, page, carried, WIDEST, WIDEST).height);
  const top = means.page.top + Math.max(...heads) + GAP.row;
  const room = footTop(means, view, page.cautions) - GAP.row - top;
  const pieces = page.sections.flatMap((section, i) => keyed(piecesOnce(means, section, `${page.key}/${i + 1}`), section));
  return { top, room, pieces };
}

const at = (block: Block, y: number): Block => ({ height: block.height, items: placed(block, y) });

function headBlock(paper: Paper, view: SheetView, page: PlainPage, carried: 'fits' | 'goes on', n: number, of: number): Block {
  const sheetNo = view.sheetNo.replace('{n}', String(n)).replace('{of}', String(of));
  const where = carried === 'goes on' ? view.goesOn : '';
  return stack(0, GAP.small, [
    (y) => at(draftMark(paper, view.draft), y),
    (y) => at(head(paper, { name: page.name, about: page.about, right: page.right, of: where, sheetNo }), y),
  ]);
}

/** What a text may name the sheet of stands with the first of its pieces. */
function keyed(pieces: readonly Piece[], { key }: Section): readonly Piece[] {
  return pieces.map((piece, i) => (i === 0 ? { ...piece, key } : piece));
}

/** Asked for to learn how much there is, and again to be set. */
function piecesOnce(means: PlainMeans, section: Section, name: string): readonly Piece[] {
  const pieces = once(means, section, () => new Map<string, readonly Piece[]>());
  const known = pieces.get(name) ?? piecesOf(means, section, name);
  pieces.set(name, known);
  return known;
}

/** `name`: what the names of its boxes to tick begin with. */
function piecesOf(means: PlainMeans, section: Section, name: string): readonly Piece[] {
  switch (section.kind) {
    case 'table':
      return tablePieces(means, section);
    case 'notes':
      return notePieces(means, section, name);
    case 'steps':
      return stepPieces(means, section, name);
    case 'boxes':
      return under(titleBlock(means, section.title, section.text), boxBlocks(means, section));
    case 'trains':
      return under(
        titleBlock(means, section.title, ''),
        section.trains.map((train) => trainBlock(means, train)),
      );
    case 'arrangement':
      return under(titleBlock(means, section.title, ''), [arrangementBlock(means, section.shown, means.arrangement)]);
    case 'curve':
      return under(titleBlock(means, section.title, ''), [curveBlock(means, section.curve)]);
    case 'lessons':
      return lessonPieces(means, section);
    case 'cautions':
      return under(titleBlock(means, section.title, ''), cautionBlocks(means, section.cautions));
    case 'strips':
      return stripPieces(means, section, titleBlock(means, section.title, section.text));
    case 'pictures':
      return under(titleBlock(means, section.title, ''), pictureBlocks(means, section));
  }
}

function lessonPieces(means: PlainMeans, { legend, lessons }: Section & { readonly kind: 'lessons' }): readonly Piece[] {
  const above = legendBlock(means, legend);
  return lessons.map((lesson) => {
    const block = lessonBlock(means, lesson, means.lesson);
    return { above, block, fuller: (more) => lessonBlock(means, lesson, means.lesson, { more, all: block.height + more }) };
  });
}

const under = (above: Block, blocks: readonly Block[]): readonly Piece[] => blocks.map((block) => ({ above, block }));

function titleBlock(paper: Paper, title: string, text: string): Block {
  if (title === '' && text === '') return EMPTY;
  const words = stack(GAP.block, 0, [
    (y) => as(paragraph(paper, STYLES.section, title, { x: paper.page.left, top: y, width: paper.page.wide }), { is: 'title' }),
    (y) => paragraph(paper, STYLES.note, text, { x: paper.page.left, top: y, width: paper.page.wide }),
  ]);
  return { height: words.height + GAP.block + GAP.small, items: words.items };
}

// ---- tables ------------------------------------------------------------------------------------------------------------
function tablePieces(paper: Paper, section: Section & { readonly kind: 'table' }): readonly Piece[] {
  const places = columnSpans(paper, section.columns, section.rows, { x: paper.page.left, width: paper.page.wide });
  const table: Meaning = { is: 'table' };
  const labels = section.columns.map((column, i) => paragraph(paper, STYLES.label, column.label, { ...placeAt(places, i), top: 0 }));
  const said = asRow(labels.map((block) => ({ block, is: { is: 'column-head' } })));
  const heads = within({ height: beside(labels).height, items: said.items }, table);
  const title = titleBlock(paper, section.title, section.text);
  const headHeight = heads.height + GAP.small / 2;
  const above: Block = {
    height: title.height + headHeight,
    items: [...title.items, ...placed({ height: 0, items: [...heads.items, rule(paper, headHeight, 'heavy')] }, title.height)],
  };
  const row = (cells: readonly string[]): Block => within(tableRow(paper, section.columns, places, cells), table);
  return section.rows.map((cells, i) => {
    const named = cells[0] === '' ? section.rows.slice(0, i).findLast(([name]) => name !== '') : undefined;
    return { above, block: row(cells), ...(named ? { again: onceMade(() => row([named[0] ?? '', ...cells.slice(1)])) } : {}) };
  });
}

/** Sheets are shared out many times over, a table's row is laid once. */
function onceMade(make: () => Block): () => Block {
  let made: Block | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

function stepPieces(paper: Paper, section: Section & { readonly kind: 'steps' }, name: string): readonly Piece[] {
  const steps: Meaning = { is: 'steps' };
  const above = titleBlock(paper, section.title, '');
  return section.steps.map((step, i) => ({ above, block: stepBlock(paper, step, i + 1, steps, `${name}/${i + 1}`) }));
}

const placeAt = (places: readonly Span[], i: number): Span => places[i] ?? { x: 0, width: 0 };

function tableRow(paper: Paper, columns: readonly Column[], places: readonly Span[], cells: readonly string[]): Block {
  const blocks = columns.map((column, i) =>
    paragraph(paper, MANNERS[column.manner], cells[i] ?? '', { ...placeAt(places, i), top: CELL_PAD }),
  );
  const height = beside(blocks).height + 2 * CELL_PAD;
  const said = asRow(blocks.map((block, i) => ({ block, is: { is: i === 0 ? 'row-head' : 'cell' } })));
  return { height, items: [...said.items, rule(paper, height, 'thin')] };
}

// ---- notes -------------------------------------------------------------------------------------------------------------
function notePieces(paper: Paper, section: Section & { readonly kind: 'notes' }, name: string): readonly Piece[] {
  const above = titleBlock(paper, section.title, '');
  const { manner } = section;
  if (manner !== 'ticked') return section.items.map((item) => ({ above, block: noteBlock(paper, item, manner) }));
  const long = section.items.filter((item) => !fitsAcross(paper, item, ACROSS));
  const short = section.items.filter((item) => fitsAcross(paper, item, ACROSS));
  const rows = [...inRows(short, ACROSS).map((row) => ({ row, across: ACROSS })), ...long.map((item) => ({ row: [item], across: 1 }))];
  const list: Meaning = { is: 'list' };
  const named = (item: string): string => `${name}/${section.items.indexOf(item) + 1}`;
  return rows.map(({ row, across }) => ({
    above,
    block: within(beside(row.map((item, i) => tickedBlock(paper, item, i, across, named(item)))), list),
  }));
}

/** Short things to tick stand side by side, long ones have a line each. */
const ACROSS = 3;

function fitsAcross(paper: Paper, item: string, count: number): boolean {
  return textWidth(paper.advances, STYLES.body.font, STYLES.body.size, item) <= tickedWidth(paper, count);
}

const tickedWidth = ({ page }: Paper, across: number): number => page.wide / across - TICK.indent - GAP.small;

function tickedBlock(paper: Paper, item: string, column: number, across: number, name: string): Block {
  const x = paper.page.left + (column * paper.page.wide) / across;
  const words = paragraph(paper, STYLES.body, item, { x: x + TICK.indent, top: GAP.small / 2, width: tickedWidth(paper, across) });
  const box = tick(tickBox(x, GAP.small / 2, TICK.size, 'open'), name, unlinked(item));
  const said = within({ height: words.height + GAP.small, items: [...box, ...words.items] }, { is: 'said' });
  return within(said, { is: 'entry' });
}

function noteBlock(paper: Paper, item: string, manner: 'plain' | 'panel'): Block {
  const words = paragraph(paper, STYLES.body, item, { x: paper.page.left, top: GAP.small / 2, width: paper.page.wide });
  const height = words.height + GAP.small;
  return manner === 'plain'
    ? { height, items: words.items }
    : { height: height + GAP.small, items: [panel(paper, 0, height), ...words.items] };
}
