/** A figure with its page. Rules, fittings and phases write no numbers of their own: they ask for a fact by id. */

export type Standing = 'standard' | 'derived' | 'common practice' | 'from memory';
export type Fact = {
  readonly id: string;
  readonly value: number;
  /** 'mm', 'deg', 'ratio', 'm/min', 'count', 'bar' ... */
  readonly unit: string;
  /** Document and place, or 'common practice, no source'. */
  readonly source: string;
  readonly standing: Standing;
  /** What the figure is for, in a few words. */
  readonly what: string;
};
export type FactTable = { readonly rows: readonly Fact[]; value(id: string): number; row(id: string): Fact };

/** Throws Error on a doubled id, and on asking for one that is not there: our fault, never the user's. */
export function factTable(rows: readonly Fact[]): FactTable {
  const byId = new Map<string, Fact>();
  for (const row of rows) {
    if (byId.has(row.id)) throw new Error(`fact '${row.id}' stands twice`);
    byId.set(row.id, row);
  }
  const row = (id: string): Fact => {
    const found = byId.get(id);
    if (!found) throw new Error(`no fact '${id}'`);
    return found;
  };
  return { rows, row, value: (id) => row(id).value };
}
