/** Paper, and how much larger than it is laid out all of it is printed. A sheet is laid out on one page of these and knows no other. */
import type { SheetWish } from '../../model/wish.ts';

/**
 * mm, as laid out: what is printed is `enlarged` times as large, lines and letters alike. `left`, `right`: edges of the text, `wide` apart;
 * `top`: where it begins; `foot`: the rule over the foot.
 */
export type Page = {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly wide: number;
  readonly top: number;
  readonly foot: number;
  readonly enlarged: number;
};

/** mm: ISO 216; ASME Y14.1, size A (8.5 by 11 in). */
const PAPERS = { a4: { width: 210, height: 297 }, letter: { width: 215.9, height: 279.4 } } as const;
/**
 * Big: for poor light, or eyes that have seen much of it. White left at the edges, mm as laid out: frames stand out 1.6 at the sides, and
 * the last line lies 5.1 under the foot's rule, so that 10 mm stay white on paper in either.
 */
const TYPES = {
  usual: { enlarged: 1, side: 13, top: 12, foot: 16 },
  big: { enlarged: 1.25, side: 9.9, top: 9.6, foot: 13.2 },
} as const;

/** A4 in the usual type where nothing is said. */
export function pageOf({ paper = 'a4', type = 'usual' }: Pick<SheetWish, 'paper' | 'type'>): Page {
  const { enlarged, side, top, foot } = TYPES[type];
  const [width, height] = [PAPERS[paper].width / enlarged, PAPERS[paper].height / enlarged];
  return { width, height, left: side, right: width - side, wide: width - 2 * side, top, foot: height - foot, enlarged };
}
