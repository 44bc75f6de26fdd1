/** A page as paths and texts in millimetres on paper, y downward from the top left corner. Writers transcribe; they lay nothing out. */
import type { Meaning } from './meaning.ts';

export type Font = 'text' | 'text-bold' | 'narrow' | 'narrow-bold';
/** A fixed set, so that a grey printer is enough: names, not values. */
export type Ink = 'black' | 'dark' | 'mid' | 'light' | 'pale' | 'new' | 'taken' | 'metal' | 'tool' | 'panel' | 'white' | SignInk;
/** Of safety signs: yellow, blue, red (ISO 3864-1). */
export type SignInk = 'warned' | 'asked' | 'forbidden';

export type Segment =
  | { readonly to: 'move'; readonly x: number; readonly y: number }
  | { readonly to: 'line'; readonly x: number; readonly y: number }
  | {
      readonly to: 'curve';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly x: number;
      readonly y: number;
    }
  | { readonly to: 'close' };

export type PathItem = {
  readonly kind: 'path';
  readonly segments: readonly Segment[];
  readonly stroke?: { readonly ink: Ink; readonly width: number; readonly dash?: readonly number[] };
  readonly fill?: Ink;
  readonly hatch?: Lattice;
  readonly within?: readonly Meaning[];
};
/**
 * The path's strokes are what lies inside `ring`, a closed path of lines, of those lines on which y + lean * x is `at`, and every `step` on and
 * back from there, mm: shorter said so.
 */
export type Lattice = { readonly ring: readonly Segment[]; readonly lean: 1 | -1; readonly at: number; readonly step: number };
/** `x`, `y`: left end of the baseline. `width` as measured; `size` in mm (font size, not cap height). `turn`: degrees anticlockwise about (x, y). */
export type TextItem = {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly font: Font;
  readonly ink: Ink;
  readonly text: string;
  readonly width: number;
  readonly turn?: number;
  readonly within?: readonly Meaning[];
};
export type Item = PathItem | TextItem;
/** A picture drawn in its own frame, and the boxes that its texts and marks fill, for the look-out for collisions. */
export type Box = { readonly x: number; readonly y: number; readonly w: number; readonly h: number; readonly what: string };
export type Picture = {
  readonly width: number;
  readonly height: number;
  readonly items: readonly Item[];
  readonly boxes: readonly Box[];
  readonly alt: string;
};
export type Page = {
  readonly width: number;
  readonly height: number;
  readonly items: readonly Item[];
  readonly label: string;
  readonly heading: string;
};
export type Document = {
  readonly title: string;
  readonly language: string;
  readonly mark: string;
  readonly pages: readonly Page[];
  /** Files that travel inside the document. */
  readonly attached?: readonly Attached[];
};
/** `name`: a base name; `kind`: what it is to this document; `type`: MIME; `says`: what it is, to a reader. */
export type Attached = {
  readonly kind: 'fitting' | 'workshop' | 'plan';
  readonly name: string;
  readonly type: string;
  readonly says: string;
  readonly bytes: Uint8Array;
};

/** Advance widths in thousandths of the font size, by font and code point; the same table measures for every output. */
export type Advances = Readonly<
  Record<Font, { readonly advances: Readonly<Record<string, number>>; readonly ascent: number; readonly descent: number }>
>;
