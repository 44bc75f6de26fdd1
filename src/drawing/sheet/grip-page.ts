/**
 * A grip on paper: head, hold, picture, rows, checkpoint. What does not fit goes on to a further sheet with head, hold and picture
 * repeated; type is never made smaller. Heights first, pictures after: a picture takes what the rows leave.
 */
import type { Item, Picture } from '../../model/display.ts';
import type { Meaning } from '../../model/meaning.ts';
import type { GripPage, Row, SheetView } from '../../model/sheet.ts';
import { moved, roundRect } from '../display.ts';
import { textWidth } from '../measure.ts';
import { type Block, beside, EMPTY, paragraph, placed, stack } from './blocks.ts';
import { foot, footTop } from './foot.ts';
import { draftMark, fitted, head, rule, writeBox } from './frame.ts';
import { unlinked } from './links.ts';
import { as, figure, within } from './meant.ts';
import { acrossTable, columnHeads, headsHeight, onceBlock, rowBlock, rowHeight } from './rows.ts';
import { stripBlock, stripHeight } from './strip.ts';
import { CORNER, GAP, once, type Paper, RULE, STYLES } from './type.ts';

export type Frame = { readonly width: number; readonly height: number };
export type GripPicture = Picture & { readonly lettered: readonly string[] };
/** A sheet whose place is settled; drawn when its number is known. */
/** `keys`: what texts may name it by: its page, and sections that begin on it. */
export type Sheet = { readonly keys: readonly string[]; readonly heading: string; draw(n: number, of: number): readonly Item[] };
export type GripMeans = Paper & {
  grip(page: GripPage, frame: Frame): GripPicture | undefined;
  strip(page: GripPage, frame: Frame): readonly Picture[];
};

/**
 * A picture is no lower than `least`, and no higher than makes it clearer, mm. A grip stands on one sheet if that leaves its picture `alone`
 * and a `tier` for each length that it shows, or `enough`: else its work would be drawn smaller than a person reads it.
 */
const PICTURE = { least: 50, alone: 42, tier: 7, enough: 60, most: 118 } as const;
/** Where so many lengths are shown, over each other, a picture on several sheets has room for them as well as for the work. */
const MANY = 6;
const BOX = { width: 34, height: 6.4 } as const;
const HOLD_SIZES = [STYLES.strong.size, 3.6, 3.4] as const;
const CHECK = { pad: 2, between: 0.8, across: 2, gap: 2.4 } as const;

/** One piece of the table: a row, or the title over bench work, which stays with the row that follows. */
type Piece = { readonly height: number; readonly row?: Row; readonly title?: Block };

export function gripSheets(means: GripMeans, view: SheetView, page: GripPage): readonly Sheet[] {
  const check = once(means, page.checkpoint, () => checkpoint(means, page.checkpoint));
  const pieces = page.blocks.flatMap((block) => piecesOf(means, block));
  const lead = stripHeight(page.strip);
  const tail = check.height + CHECK.gap;
  const most = roomOf(means, view, page, 'fits');
  const onOne = lead + heightOf(pieces) + tail + alone(page) + GAP.block <= most;
  const room = onOne ? most : Math.min(most, roomOf(means, view, page, 'goes on'));
  const sheets = onOne ? [pieces] : shareOut(pieces, room - leastOf(page) - GAP.block, { lead, tail });
  const ends = sheets.map((_, i) => (i === 0 ? lead : 0) + (i === sheets.length - 1 ? tail : 0));
  const left = sheets.map((own, i) => room - heightOf(own) - (ends[i] ?? 0) - GAP.block);
  const picture = drawnOnce(means, page, Math.min(PICTURE.most, ...left));
  return sheets.map((own, i) => ({
    keys: [page.key],
    heading: page.heading,
    draw: (n, of) => {
      const last = i === sheets.length - 1;
      return drawSheet({ means, view, page, own, picture, check: last ? check : EMPTY, carried: i === 0 ? 'fits' : 'goes on' }, n, of);
    },
  }));
}

/** For picture, rows and checkpoint, under the head of a sheet so carried. */
function roomOf(means: GripMeans, view: SheetView, page: GripPage, carried: Carried): number {
  const head = headBlock(means, view, page, carried, WIDEST, WIDEST).height;
  return footTop(means, view, page.cautions) - 2 * GAP.row - means.page.top - head - headsHeight(means, page);
}
/** No sheet has a wider number, for heads that are measured before sheets are counted. */
export const WIDEST = 888;

const alone = (page: GripPage): number => Math.min(PICTURE.enough, PICTURE.alone + PICTURE.tier * lengthsIn(page));

const leastOf = (page: GripPage): number =>
  lengthsIn(page) < MANY ? PICTURE.least : Math.min(PICTURE.most, PICTURE.alone + PICTURE.tier * lengthsIn(page));

/** Lengths have letters. */
const lengthsIn = ({ blocks }: GripPage): number =>
  blocks.flatMap((block) => block.rows.flatMap((row) => row.sizes.filter((size) => size.letter !== ''))).length;

/** The same picture on every sheet of the grip, as high as the fullest of them leaves; not drawn before a sheet is. */
function drawnOnce(means: GripMeans, page: GripPage, height: number): () => GripPicture | undefined {
  let drawn: { readonly picture: GripPicture | undefined } | undefined;
  return () => {
    drawn ??= {
      picture: means.grip({ ...page, name: unlinked(page.name), grip: unlinked(page.grip) }, { width: means.page.wide, height }),
    };
    return drawn.picture;
  };
}

function piecesOf(paper: Paper, block: GripPage['blocks'][number]): readonly Piece[] {
  const rows = block.rows.map((row) => ({ row, height: rowHeight(paper, row) }));
  if (block.title === '') return rows;
  const title = blockTitle(paper, block.title, block.text);
  return [{ title, height: title.height }, ...rows];
}

/** Title and, on its line, how and where. */
function blockTitle(paper: Paper, title: string, text: string): Block {
  const words = paragraph(paper, STYLES.section, title, { x: paper.page.left, top: GAP.block, width: paper.page.wide });
  const after = paper.page.left + textWidth(paper.advances, STYLES.section.font, STYLES.section.size, title) + GAP.column;
  const down = STYLES.section.size - STYLES.note.size;
  const how = paragraph(paper, STYLES.note, text, { x: after, top: GAP.block + down, width: paper.page.right - after });
  const height = GAP.block + Math.max(words.height, how.height + down) + GAP.small / 2;
  const said = acrossTable({ height, items: [...as(words, { is: 'title' }).items, ...how.items] });
  return { height, items: [...said.items, rule(paper, height, 'heavy')] };
}

const heightOf = (pieces: readonly Piece[]): number => pieces.reduce((sum, piece) => sum + piece.height, 0);

/**
 * Pieces on as few sheets, two at least, as will hold them, each about as full as the others. `room`: for pieces on a sheet whose picture is at its
 * least; `lead`, `tail`: what the first and the last one need besides.
 */
function shareOut(
  pieces: readonly Piece[],
  room: number,
  { lead, tail }: { readonly lead: number; readonly tail: number },
): readonly (readonly Piece[])[] {
  const total = lead + heightOf(pieces) + tail;
  const count = Math.max(2, Math.ceil(total / room));
  for (let sheets = count; ; sheets++) {
    const shared = fill(pieces, Math.max(total / sheets, room / 2), room, lead);
    const last = heightOf(shared.at(-1) ?? []) + (shared.length === 1 ? lead : 0);
    if (last + tail <= room) return shared;
    // the checkpoint found no place: one sheet more, and if that can't help, one for it and the last of the rows
    if (sheets > count + pieces.length) return withLast(shared);
  }
}

/** The last row, and a title over it, on a sheet of their own. */
function withLast(sheets: readonly (readonly Piece[])[]): readonly (readonly Piece[])[] {
  const last = sheets.at(-1) ?? [];
  const from = last.at(-2)?.title ? last.length - 2 : last.length - 1;
  return from > 0 ? [...sheets.slice(0, -1), last.slice(0, from), last.slice(from)] : [...sheets, []];
}

/** A sheet is closed when it has had its share, or when the next piece does not fit; a title is not parted from its row. */
function fill(pieces: readonly Piece[], share: number, room: number, lead: number): readonly (readonly Piece[])[] {
  const sheets: Piece[][] = [[]];
  let used = lead;
  for (const [i, piece] of pieces.entries()) {
    const needs = piece.title ? piece.height + (pieces[i + 1]?.height ?? 0) : piece.height;
    const full = used + needs > room || used + needs / 2 > share;
    const titled = pieces[i - 1]?.title !== undefined;
    if (full && !titled && sheets.at(-1)?.length !== 0) {
      sheets.push([]);
      used = 0;
    }
    sheets.at(-1)?.push(piece);
    used += piece.height;
  }
  return sheets;
}

// ---- drawing -----------------------------------------------------------------------------------------------------------
type Settled = {
  readonly means: GripMeans;
  readonly view: SheetView;
  readonly page: GripPage;
  readonly own: readonly Piece[];
  readonly picture: () => GripPicture | undefined;
  readonly check: Block;
  readonly carried: Carried;
};
type Carried = 'fits' | 'goes on';

function drawSheet(settled: Settled, n: number, of: number): readonly Item[] {
  const { means, view, page, own, check } = settled;
  const picture = settled.picture();
  const lettered = new Set(picture?.lettered);
  const table: Meaning = { is: 'table' };
  const body = stack(means.page.top, 0, [
    (y) => at(headBlock(means, view, page, settled.carried, n, of), y),
    (y) =>
      settled.carried === 'fits'
        ? at(
            stripBlock(means, page.strip, (_, frame) => means.strip(page, frame)),
            y,
          )
        : EMPTY,
    (y) => (picture ? { height: picture.height + GAP.block, items: drawnAt(means, picture, y + GAP.block / 2) } : EMPTY),
    (y) => at(onceBlock(means, page.once), y),
    (y) => within(at(columnHeads(means, page.columns), y), table),
    ...own.map((piece) => (y: number) => within(at(piece.row ? rowBlock(means, piece.row, lettered) : (piece.title ?? EMPTY), y), table)),
    (y) => at(check, y + CHECK.gap),
  ]);
  return [...body.items, ...foot(means, view, page.cautions)];
}

const at = (block: Block, y: number): Block => ({ height: block.height, items: placed(block, y) });
const drawnAt = ({ page }: Paper, picture: Picture, y: number): readonly Item[] => figure(moved(picture.items, page.left, y), picture.alt);

function headBlock(paper: Paper, view: SheetView, page: GripPage, carried: Carried, n: number, of: number): Block {
  const sheetNo = view.sheetNo.replace('{n}', String(n)).replace('{of}', String(of));
  const where = [page.of, carried === 'goes on' ? view.goesOn : ''].filter((piece) => piece !== '').join('  ·  ');
  return stack(0, GAP.small, [
    (y) => at(draftMark(paper, view.draft), y),
    (y) => at(head(paper, { name: page.name, about: page.about, right: page.grip, of: where, sheetNo }), y),
    (y) =>
      at(
        once(paper, page.hold, () => holdBlock(paper, page.hold)),
        y,
      ),
  ]);
}

function holdBlock(paper: Paper, columns: GripPage['hold']): Block {
  const width = (paper.page.wide - 2 * GAP.column) / Math.max(columns.length, 1);
  const list: Meaning = { is: 'list' };
  const blocks = columns.map((column, i) => {
    const x = paper.page.left + i * (width + GAP.column);
    const held = stack(GAP.small, 0, [
      (top) => paragraph(paper, STYLES.label, column.label.toUpperCase(), { x, top, width }),
      (top) => paragraph(paper, fitted(paper, STYLES.strong, HOLD_SIZES, column.title, width), column.title, { x, top, width }),
      (top) => paragraph(paper, STYLES.note, column.text, { x, top, width }),
    ]);
    return within(within(within(held, { is: 'said' }), { is: 'entry' }), list);
  });
  const all = beside(blocks);
  const height = all.height + 2 * GAP.small;
  return { height, items: [...all.items, rule(paper, height, 'thin')] };
}

/** What to look at before going on, framed, with boxes for what was found. */
function checkpoint(paper: Paper, { title, text, boxes }: GripPage['checkpoint']): Block {
  const x = paper.page.left + CHECK.pad;
  const width = paper.page.wide - 2 * CHECK.pad - CHECK.between - CHECK.across * (BOX.width + GAP.small);
  const words = stack(CHECK.pad, GAP.small / 2, [
    (top) => as(paragraph(paper, { ...STYLES.second, size: STYLES.speed.size }, title.toUpperCase(), { x, top, width }), TITLE),
    ...text.map((said) => (top: number) => paragraph(paper, STYLES.body, said, { x, top, width })),
  ]);
  const fields = boxes.map((label, i) =>
    field(
      paper,
      label,
      paper.page.right - CHECK.pad - (CHECK.across - (i % CHECK.across)) * (BOX.width + GAP.small) + GAP.small,
      CHECK.pad + Math.floor(i / CHECK.across) * fieldHeight,
    ),
  );
  const height = Math.max(words.height, Math.ceil(boxes.length / CHECK.across) * fieldHeight) + 2 * CHECK.pad;
  const frame = roundRect(paper.page.left - GAP.row, 0, paper.page.wide + 2 * GAP.row, height, CORNER, {
    stroke: { ink: 'black', width: RULE.heavy },
  });
  return { height, items: [frame, ...words.items, ...fields.flatMap((block) => block.items)] };
}

const TITLE: Meaning = { is: 'title' };
const fieldHeight = STYLES.label.lead + BOX.height + GAP.row;

function field(paper: Paper, label: string, x: number, top: number): Block {
  const words = paragraph(paper, STYLES.label, label, { x, top, width: BOX.width });
  return { height: fieldHeight, items: [...words.items, writeBox(x, top + STYLES.label.lead, BOX.width, BOX.height)] };
}
