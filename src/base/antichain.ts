/** The largest set of things of which no two stand in a relation that is an order (Dilworth's theorem; a matching found by augmenting ways). */

/** `related[a][b]`: transitive, and never both ways. Gives the things by number, rising. */
export function antichain(related: readonly (readonly boolean[])[]): readonly number[] {
  const next = related.map((row) => row.flatMap((is, b) => (is ? [b] : [])));
  const { byLeft, byRight } = matching(next);
  // Koenig: from the free left ends along ways that alternate; what is then met on the left and not on the right is in no cover
  const left = new Set<number>();
  const right = new Set<number>();
  const queue = byLeft.flatMap((to, a) => (to === undefined ? [a] : []));
  for (let a = queue.pop(); a !== undefined; a = queue.pop()) {
    if (left.has(a)) continue;
    left.add(a);
    for (const b of next[a] ?? []) {
      if (right.has(b)) continue;
      right.add(b);
      const back = byRight[b];
      if (back !== undefined) queue.push(back);
    }
  }
  return related.flatMap((_, i) => (left.has(i) && !right.has(i) ? [i] : []));
}

type Matching = { readonly byLeft: readonly (number | undefined)[]; readonly byRight: readonly (number | undefined)[] };

function matching(next: readonly (readonly number[])[]): Matching {
  const byLeft = new Array<number | undefined>(next.length).fill(undefined);
  const byRight = new Array<number | undefined>(next.length).fill(undefined);
  const augment = (a: number, seen: Set<number>): boolean => {
    for (const b of next[a] ?? []) {
      if (seen.has(b)) continue;
      seen.add(b);
      const other = byRight[b];
      if (other !== undefined && !augment(other, seen)) continue;
      byLeft[a] = b;
      byRight[b] = a;
      return true;
    }
    return false;
  };
  for (const a of next.keys()) augment(a, new Set());
  return { byLeft, byRight };
}
