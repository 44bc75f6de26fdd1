/** What the core is handed instead of reading a disk: texts and bytes by name. */
import type { Advances } from './display.ts';
import type { Workshop } from './workshop.ts';

export type Assets = {
  /** Of the words: a tag as in BCP 47 ('en', 'de'), which the PDF carries. */
  readonly language: string;
  /** templates/<language>/*.hbs, file name to text */
  readonly words: Readonly<Record<string, string>>;
  readonly advances: Advances;
  readonly workshop: StandardWorkshop;
};
/** The workshop used when none is named: its file name and YAML text; `says`: what it says, where that was read before. */
export type StandardWorkshop = { readonly name: string; readonly text: string; readonly says?: Workshop };
/** Fonts are needed by the PDF writer only. */
export type FontFiles = Readonly<Record<'text' | 'text-bold' | 'narrow' | 'narrow-bold', Uint8Array>>;
/** `bytes`: as it was read, where the text alone does not say (a mark at its beginning is no part of it). */
export type Input = { readonly name: string; readonly text: string; readonly bytes?: Uint8Array };
export type Inputs = {
  readonly fitting: Input;
  readonly workshop?: Input;
  /** How many of the fitting are made: for bar and time; one where it is not said. */
  readonly packs?: number;
};
