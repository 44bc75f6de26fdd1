/**
 * Least-cost assignment of rows to columns (the Hungarian method with potentials, shortest augmenting paths; Kuhn 1955, Munkres 1957).
 * Rows may not outnumber columns.
 */

/** For each row its column, all different, with the least sum of costs. Infinity marks a pair that is not possible. */
export function assign(costs: readonly (readonly number[])[]): readonly number[] {
  const rows = costs.length;
  const columns = costs[0]?.length ?? 0;
  if (rows > columns) throw new RangeError(`${rows} rows for ${columns} columns`);
  const ofRow = new Array<number>(rows + 1).fill(0);
  const ofColumn = new Array<number>(columns + 1).fill(0);
  const owner = new Array<number>(columns + 1).fill(0);
  for (let row = 1; row <= rows; row++) {
    const way = augment(row, costs, ofRow, ofColumn, owner);
    turnPath(way.end, way.from, owner);
  }
  const result = new Array<number>(rows).fill(0);
  owner.forEach((row, column) => {
    if (column > 0 && row > 0) result[row - 1] = column - 1;
  });
  return result;
}

/** Columns are counted from 1; column 0 stands for the row that seeks one. */
function augment(
  row: number,
  costs: readonly (readonly number[])[],
  ofRow: number[],
  ofColumn: number[],
  owner: number[],
): { readonly end: number; readonly from: readonly number[] } {
  const least = new Array<number>(owner.length).fill(Number.POSITIVE_INFINITY);
  const from = new Array<number>(owner.length).fill(0);
  const done = new Array<boolean>(owner.length).fill(false);
  owner[0] = row;
  let column = 0;
  while ((owner[column] ?? 0) !== 0) {
    done[column] = true;
    const current = owner[column] ?? 0;
    let [delta, next] = [Number.POSITIVE_INFINITY, 0];
    for (let j = 1; j < owner.length; j++) {
      if (done[j]) continue;
      const reduced = cost(costs, current - 1, j - 1) - (ofRow[current] ?? 0) - (ofColumn[j] ?? 0);
      if (reduced < (least[j] ?? 0)) {
        least[j] = reduced;
        from[j] = column;
      }
      if ((least[j] ?? 0) < delta) [delta, next] = [least[j] ?? 0, j];
    }
    shift(delta, done, least, ofRow, ofColumn, owner);
    column = next;
  }
  return { end: column, from };
}

/** Not possible counts as very dear, so that a whole assignment is always found. */
const DEAR = 1e6;
function cost(costs: readonly (readonly number[])[], row: number, column: number): number {
  return Math.min(costs[row]?.[column] ?? DEAR, DEAR);
}

function shift(
  delta: number,
  done: readonly boolean[],
  least: number[],
  ofRow: number[],
  ofColumn: number[],
  owner: readonly number[],
): void {
  for (let j = 0; j < owner.length; j++) {
    const row = owner[j] ?? 0;
    if (done[j]) {
      ofRow[row] = (ofRow[row] ?? 0) + delta;
      ofColumn[j] = (ofColumn[j] ?? 0) - delta;
    } else least[j] = (least[j] ?? 0) - delta;
  }
}

function turnPath(end: number, from: readonly number[], owner: number[]): void {
  for (let column = end; column !== 0; ) {
    const previous = from[column] ?? 0;
    owner[column] = owner[previous] ?? 0;
    column = previous;
  }
}
