/** What bar it takes, and how it is cut up. Nothing here computes. */
import type { Len } from '../base/units.ts';
import type { PartId } from './ids.ts';

/** `uses`: of the bar for each piece, what is faced off and the kerf included; `hold`: what stays in the chuck at the last piece. */
export type Blank = { readonly part: PartId; readonly uses: Len; readonly hold: Len; readonly kerf: Len };
/** One bar of a kind: `length` as it lies on the shelf; pieces in the order in which they are cut; `left`: what is still there then, its hold included. */
export type BarCut = {
  readonly length: Len;
  readonly pieces: readonly { readonly part: PartId; readonly takes: Len }[];
  readonly left: Len;
};
export type StockKind = {
  readonly material: string;
  readonly section: 'round' | 'hexagon';
  readonly across: Len;
  /** Through the spindle, fed on piece by piece; or sawn into blanks first, each with its own hold. */
  readonly way: 'through' | 'sawn';
  /** How far it may stand out behind the spindle at the fastest speed at which it runs in the chuck; where it goes through. */
  readonly behind?: { readonly most: Len; readonly rpm: number };
  readonly bars: readonly BarCut[];
  /** What no bar on the shelf has room for: pieces, and how much bar they ask for in one length. */
  readonly short: readonly { readonly part: PartId; readonly takes: Len }[];
  readonly lacks: Len;
  /** All that is cut up or stays in the chuck. */
  readonly uses: Len;
  /** Grams of that; absent where the material's density is not known. */
  readonly grams?: number;
};
export type PackStock = {
  readonly packs: number;
  readonly blanks: readonly Blank[];
  readonly kinds: readonly StockKind[];
  /** Grams of each part when it is finished: threads as full, side work not done. */
  readonly finished: readonly { readonly part: PartId; readonly grams: number }[];
};
