/** A published figure as a row: what it is, what the handbook gives, what is printed, how far printing rounds, and where it stands. */
export type Figure = {
  readonly what: string;
  readonly got: () => number;
  readonly printed: number;
  readonly within: number;
  readonly source: string;
};
export type Given = readonly [what: string, got: () => number, printed: number];

/** Rows of one source. `within`: half the last place as printed, or what the source itself allows. */
export function figures(source: string, within: number, rows: readonly Given[]): readonly Figure[] {
  return rows.map(([what, got, printed]) => ({ what, got, printed, within, source }));
}

/** The same where what is printed has so many figures: within a share of itself. */
export function relative(source: string, share: number, rows: readonly Given[]): readonly Figure[] {
  return rows.map(([what, got, printed]) => ({ what, got, printed, within: Math.abs(printed) * share, source }));
}

export function there<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`the handbook has no ${what}`);
  return value;
}
