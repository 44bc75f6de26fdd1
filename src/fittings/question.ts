/** What `new` may ask. */
export type Question = {
  /** As in the file: 'duty.pressure'; in a list's entry the key alone. */
  readonly key: string;
  /** What Enter gives, as it is written in the file; without it Enter leaves the key out. */
  readonly usual?: string;
  /** Asked only where another key was answered so. */
  readonly when?: { readonly key: string; readonly is: readonly string[] };
  /** Asked only where another key of the same entry was left out. */
  readonly unless?: string;
  /** Asked only where another key was answered at all. */
  readonly beside?: string;
};
/** The same questions again for each entry of a list. */
export type Entries = { readonly list: string; readonly least: number; readonly each: readonly Question[] };
export type Step = Question | Entries;
