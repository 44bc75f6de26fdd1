/** What `size` answers with, as plain records: the reasoning of a fitting before anything is drawn, and what another size would change. */
import type { Derivation } from './part.ts';

export type SizeView = {
  readonly title: string;
  readonly kind: string;
  readonly figures: readonly SizeFigure[];
  /** What can be varied. */
  readonly vary: readonly string[];
};
export type SizeFigure = Derivation & { readonly next: readonly NextSize[] };

/** The next size down or up of what was chosen. */
export type NextSize = {
  readonly way: 'down' | 'up';
  readonly value: number;
  readonly unit: string;
  readonly changes: readonly Change[];
  /** Codes of what would stand in its way, or be warned of, that is not now. */
  readonly refused: readonly string[];
  readonly warned: readonly string[];
};
export type Change = { readonly of: string; readonly from: number; readonly to: number; readonly unit: string };

export type VaryView = {
  readonly title: string;
  readonly key: string;
  /** The figure that it is. */
  readonly of: string;
  readonly unit: string;
  /** Figures by what they are of, in columns. */
  readonly columns: readonly { readonly of: string; readonly unit: string }[];
  readonly rows: readonly VaryRow[];
};
export type VaryRow = {
  readonly value: number;
  /** As it is asked for, or chosen, in the file. */
  readonly now: boolean;
  /** One a column; absent where the size is refused before it comes to that. */
  readonly figures: readonly (number | undefined)[];
  readonly refused: readonly string[];
  readonly warned: readonly string[];
};
