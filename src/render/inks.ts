/**
 * What the inks and fonts are called and look like in every output. Grey-safe: a name's lightness tells it apart without its hue
 * (new surface: also twice as wide; taken metal: also dashed round). Own palette.
 */
import type { Font, Ink } from '../model/display.ts';

export const INKS: Readonly<Record<Ink, string>> = {
  black: '#1a1a1a',
  dark: '#404040',
  mid: '#6b6b6b',
  light: '#b4b4b4',
  pale: '#e6e6e4',
  new: '#c23b10',
  taken: '#fbe3d6',
  metal: '#dcd9d2',
  tool: '#dbe3ea',
  panel: '#f5f2ec',
  white: '#ffffff',
  // safety colours: print as a pale, a dark and a dark grey, and every sign is told by its shape besides
  warned: '#f9a900',
  asked: '#005387',
  forbidden: '#9b2423',
};

export type Face = { readonly family: string; readonly weight: number; readonly file: string };
/** `family` is what an SVG or HTML page asks for; `file` stands under templates/fonts. */
export const FACES: Readonly<Record<Font, Face>> = {
  text: { family: 'IBM Plex Sans', weight: 400, file: 'IBMPlexSans-Regular.ttf' },
  'text-bold': { family: 'IBM Plex Sans', weight: 600, file: 'IBMPlexSans-SemiBold.ttf' },
  narrow: { family: 'IBM Plex Sans Condensed', weight: 500, file: 'IBMPlexSansCondensed-Medium.ttf' },
  'narrow-bold': { family: 'IBM Plex Sans Condensed', weight: 600, file: 'IBMPlexSansCondensed-SemiBold.ttf' },
};
