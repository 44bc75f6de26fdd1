/** The sheet's measures and its letters, millimetres as laid out. To be read from half a metre: nothing that is followed is under 9 pt (3.18 mm). */
import type { Advances, Font, Ink } from '../../model/display.ts';
import type { Page } from './page.ts';

/** mm between things of one kind, and between kinds. */
export const GAP = { small: 1, row: 1.6, block: 4, column: 4 } as const;
export const RULE = { thin: 0.18, box: 0.3, heavy: 0.6 } as const;
export const CORNER = 1.2;

/** `size`: font size, mm; `lead`: from baseline to baseline. */
export type Style = { readonly font: Font; readonly size: number; readonly lead: number; readonly ink: Ink };
export const STYLES = {
  title: { font: 'narrow-bold', size: 8.2, lead: 8.8, ink: 'black' },
  about: { font: 'text', size: 3.3, lead: 4.3, ink: 'mid' },
  label: { font: 'narrow', size: 3.0, lead: 3.8, ink: 'mid' },
  strong: { font: 'text-bold', size: 3.8, lead: 4.7, ink: 'black' },
  section: { font: 'narrow-bold', size: 4.9, lead: 6, ink: 'black' },
  body: { font: 'text', size: 3.35, lead: 4.5, ink: 'black' },
  note: { font: 'text', size: 3.18, lead: 4.2, ink: 'dark' },
  rowNote: { font: 'narrow', size: 3.3, lead: 4, ink: 'dark' },
  number: { font: 'narrow-bold', size: 4.6, lead: 5.4, ink: 'black' },
  size: { font: 'narrow-bold', size: 5.2, lead: 5.5, ink: 'black' },
  limits: { font: 'narrow', size: 3.7, lead: 4.1, ink: 'black' },
  second: { font: 'narrow-bold', size: 3.8, lead: 4.4, ink: 'black' },
  speed: { font: 'narrow-bold', size: 4.4, lead: 5.2, ink: 'black' },
  figure: { font: 'narrow', size: 3.7, lead: 4.4, ink: 'black' },
  small: { font: 'narrow', size: 3.18, lead: 4, ink: 'dark' },
  caution: { font: 'narrow-bold', size: 3.4, lead: 4.1, ink: 'black' },
  foot: { font: 'narrow', size: 3.18, lead: 4.1, ink: 'mid' },
} as const satisfies Record<string, Style>;

/**
 * What every measuring needs. `toSheet`: what a link to that sheet says. `laid`: what came of things so far that name no sheet, by the thing;
 * they are laid out once.
 */
export type Paper = {
  readonly advances: Advances;
  readonly page: Page;
  readonly toSheet?: (sheet: number) => string;
  readonly laid?: WeakMap<object, unknown>;
};

/** The same thing, where it has been laid out on this paper. */
export function once<T>({ laid }: Paper, thing: object, make: () => T): T {
  const before = laid?.get(thing);
  if (before !== undefined) return before as T;
  const made = make();
  laid?.set(thing, made);
  return made;
}
