/**
 * What things on a page are to someone who does not see it: the words under which an item of a display list stands, outermost first. The
 * same object means the same thing: all items that name it are parts of one heading, one cell, one figure. An item that names none is
 * decoration. Read in the order of the items.
 */
export type Meaning =
  | { readonly is: Plain }
  /** Its cells in their order, also those that hold nothing. */
  | { readonly is: 'row'; readonly cells: readonly Meaning[] }
  /** `across`: how many columns it spans; one where absent. */
  | { readonly is: 'cell'; readonly across?: number }
  /** `alt`: what it shows, in words. */
  | { readonly is: 'figure'; readonly alt: string }
  /** A box to tick, drawn as a square path. `name`: its own, lasting through new plans; `says`: what is ticked there. */
  | { readonly is: 'tick'; readonly name: string; readonly says: string }
  /** Leads to that sheet, counted from 1. */
  | { readonly is: 'link'; readonly sheet: number; readonly says: string };

/**
 * 'sheet-title': name of the sheet; 'title': of a section in it; 'list' of 'entry's, 'steps' where they are numbered ('number', then 'said');
 * 'row-head': the cell that names its row; 'running-head', 'running-foot': what only says where one is, sheet after sheet.
 */
type Plain =
  | 'sheet-title'
  | 'title'
  | 'text'
  | 'list'
  | 'steps'
  | 'entry'
  | 'number'
  | 'said'
  | 'table'
  | 'column-head'
  | 'row-head'
  | 'running-head'
  | 'running-foot';
