/** Pieces of sections shared out over sheets: as few as will hold them, few sections parted, each about as full as the others. */
import { type Block, EMPTY } from './blocks.ts';

/** `above`: the block that stays with this one (a section's title, a table's heads); it is repeated where the section goes on. */
export type Piece = {
  readonly block: Block;
  readonly above: Block;
  readonly key?: string | undefined;
  readonly fuller?: Fuller;
  /** The block in place of it where its section goes on with it on a new sheet: a row that names again what it is about. */
  readonly again?: () => Block;
};
/** The block again with a picture that may be that much higher, mm, where a sheet has room left; it is at most that much higher itself. */
type Fuller = (more: number) => Block;
/** `keys`: of the sections that begin on it. `parts`: it begins in the midst of one. */
type Filled = { readonly blocks: readonly Filler[]; readonly keys: readonly string[]; readonly parts: boolean };
type Filler = Pick<Piece, 'block' | 'fuller'>;

/**
 * On as few sheets as will hold them, each about as full as the others: the least room a sheet that needs no sheet more, or so much of what there is
 * besides that fewer sections are parted and no sheet is left nearly empty by it.
 */
export function evenly(pieces: readonly Piece[], room: number): readonly Filled[] {
  const count = fill(pieces, room).length;
  const keep = fill(pieces, room, KEPT * room).length > count ? 0 : KEPT * room;
  let [short, enough] = [0, room];
  for (let halving = 0; count > 1 && halving < HALVINGS; halving++) {
    const middle = (short + enough) / 2;
    if (fill(pieces, middle, keep).length > count) short = middle;
    else enough = middle;
  }
  const rooms = Array.from({ length: count > 1 ? TRIES : 1 }, (_, i) => enough + ((room - enough) * i) / (TRIES - 1));
  const ways = rooms.map((each) => fill(pieces, each, keep));
  const slight = Math.min(lowest(ways[0] ?? []), SLIGHT * room);
  return ways.reduce((best, way) => (partings(way) < partings(best) && lowest(way) >= slight ? way : best));
}
const TRIES = 9;
/** Of a sheet's room: under it the sheet is nearly empty. */
export const SLIGHT = 0.3;

const partings = (way: readonly Filled[]): number => way.filter((sheet) => sheet.parts).length;
const lowest = (way: readonly Filled[]): number => Math.min(...way.map(({ blocks }) => heightOf(blocks)));

/** A section under this share of a page is not parted where that costs no sheet more. */
const KEPT = 0.4;
/** A page's room to a tenth of a millimetre. */
const HALVINGS = 12;

/** A piece brings its title or heads along when it is the first of its section or the first on a sheet. No higher section than `keep` is parted. */
export function fill(pieces: readonly Piece[], room: number, keep = 0): readonly Filled[] {
  const sheets: { readonly blocks: Filler[]; readonly keys: string[]; readonly parts: boolean }[] = [
    { blocks: [], keys: [], parts: false },
  ];
  let used = 0;
  let above: Block | undefined;
  for (const [i, piece] of pieces.entries()) {
    const brings = piece.above === above ? EMPTY : piece.above;
    const whole = piece.above === above ? 0 : sectionFrom(pieces, i);
    const needs = whole <= keep && whole <= room ? Math.max(whole, brings.height + piece.block.height) : brings.height + piece.block.height;
    const fits = used + needs <= room || used === 0;
    if (!fits) sheets.push({ blocks: [], keys: [], parts: piece.above === above });
    const lead = fits ? brings : piece.above;
    const own: Filler = !fits && piece.above === above && piece.again ? { block: piece.again() } : piece;
    used = (fits ? used : 0) + lead.height + own.block.height;
    sheets.at(-1)?.blocks.push({ block: lead }, own);
    if (piece.key !== undefined) sheets.at(-1)?.keys.push(piece.key);
    above = piece.above;
  }
  return sheets;
}

/** Its height with its title, of the section that begins with that piece. */
function sectionFrom(pieces: readonly Piece[], from: number): number {
  const above = pieces[from]?.above;
  let height = above?.height ?? 0;
  for (let i = from; pieces[i]?.above === above && i < pieces.length; i++) height += pieces[i]?.block.height ?? 0;
  return height;
}

export const heightOf = (blocks: readonly Filler[]): number => blocks.reduce((sum, { block }) => sum + block.height, 0);

/** What a sheet has left goes to its pictures, the same to each. */
export function filledOut(blocks: readonly Filler[], room: number): readonly Block[] {
  const grow = blocks.filter(({ fuller }) => fuller !== undefined).length;
  const more = Math.max(0, room - heightOf(blocks)) / Math.max(1, grow);
  return blocks.map(({ block, fuller }) => fuller?.(more) ?? block);
}
