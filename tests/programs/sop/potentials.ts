/**
 * Least-cost assignment with its potentials (the Hungarian method, shortest augmenting paths; Kuhn 1955, Munkres 1957): for every pair
 * row[i] + column[j] <= cost, and the sum of all potentials is the least cost. Whole costs give whole potentials.
 */

export type Potentials = { readonly row: readonly number[]; readonly column: readonly number[]; readonly sum: number };

/** Square; Infinity marks a pair that is not possible. Nothing when there is no assignment. */
export function potentials(costs: readonly (readonly number[])[]): Potentials | undefined {
  const size = costs.length;
  const row = new Array<number>(size + 1).fill(0);
  const column = new Array<number>(size + 1).fill(0);
  const owner = new Array<number>(size + 1).fill(0);
  for (let i = 1; i <= size; i += 1) {
    const path = shortest(costs, i, { row, column, owner });
    if (!path) return undefined;
    for (let j = path.end; j !== 0; j = path.from[j] ?? 0) owner[j] = owner[path.from[j] ?? 0] ?? 0;
  }
  const sum = [...row.slice(1), ...column.slice(1)].reduce((a, b) => a + b, 0);
  return { row: row.slice(1), column: column.slice(1), sum };
}

/** Counted from 1; column 0 stands for the row that seeks one. */
type State = { readonly row: number[]; readonly column: number[]; readonly owner: number[] };

function shortest(
  costs: readonly (readonly number[])[],
  seeker: number,
  s: State,
): { readonly end: number; readonly from: readonly number[] } | undefined {
  const size = costs.length;
  const least = new Array<number>(size + 1).fill(Number.POSITIVE_INFINITY);
  const from = new Array<number>(size + 1).fill(0);
  const done = new Array<boolean>(size + 1).fill(false);
  s.owner[0] = seeker;
  let at = 0;
  while (s.owner[at] !== 0) {
    done[at] = true;
    const i = s.owner[at] ?? 0;
    let next = 0;
    for (let j = 1; j <= size; j += 1) {
      if (done[j]) continue;
      const reduced = (costs[i - 1]?.[j - 1] ?? Number.POSITIVE_INFINITY) - (s.row[i] ?? 0) - (s.column[j] ?? 0);
      if (reduced < (least[j] ?? 0)) {
        least[j] = reduced;
        from[j] = at;
      }
      if (next === 0 || (least[j] ?? 0) < (least[next] ?? 0)) next = j;
    }
    const step = least[next] ?? Number.POSITIVE_INFINITY;
    if (next === 0 || step === Number.POSITIVE_INFINITY) return undefined;
    shift(s, least, done, step);
    at = next;
  }
  return { end: at, from };
}

function shift(s: State, least: number[], done: readonly boolean[], step: number): void {
  done.forEach((seen, j) => {
    const i = s.owner[j] ?? 0;
    if (seen) {
      s.row[i] = (s.row[i] ?? 0) + step;
      s.column[j] = (s.column[j] ?? 0) - step;
    } else least[j] = (least[j] ?? 0) - step;
  });
}
