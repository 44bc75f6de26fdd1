/** One figure against another as its formula gives it, for a small picture on the sheet. Words: `curve.<of>.title`, `.text`, `.alt`, `.x`, `.y`. */
import type { Say } from './say.ts';

export type Point = { readonly x: number; readonly y: number };
export type Curve = {
  readonly of: string;
  /** What the picture is told with: for its text and for those who do not see it. */
  readonly grounds: Say['grounds'];
  readonly curve: readonly Point[];
  /** What would be without the levels: thin. */
  readonly bare: readonly Point[];
  /** Heights that the curve does not pass; words `curve.<of>.level.<of>`. */
  readonly levels: readonly { readonly of: string; readonly at: number }[];
  /** Where it ends; words `curve.<of>.stop`. */
  readonly stop: number;
  /** Points worth telling, each in its words. */
  readonly marks: readonly { readonly at: Point; readonly say: Say }[];
  readonly source: string;
};
