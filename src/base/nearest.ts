/** What a person may have meant: the nearest of the words that there are. */

/**
 * The word of `known` that is fewest slips away from `written` (a letter more, less, other, or two swapped), or nothing when all are
 * too far to be a slip: more than a third of the longer word, or no letter the same. Of equals the one that begins alike, then the first
 * by code unit. Case counts for nothing.
 */
export function nearest(written: string, known: readonly string[]): string | undefined {
  const asked = written.toLowerCase();
  const far = known.map((word) => ({ word, slips: slips(asked, word.toLowerCase()), other: Number(word[0]?.toLowerCase() !== asked[0]) }));
  const near = far.filter(({ word, slips: n }) => {
    const longer = Math.max(word.length, written.length);
    return n < longer && n <= Math.max(1, Math.floor(longer / 3));
  });
  near.sort((a, b) => a.slips - b.slips || a.other - b.other || (a.word < b.word ? -1 : a.word > b.word ? 1 : 0));
  return near[0]?.word;
}

/** The `most` nearest words, however far; nearest first, of equals the first by code unit. */
export function nearestFew(written: string, known: readonly string[], most: number): readonly string[] {
  const far = known.map((word) => ({ word, slips: slips(written.toLowerCase(), word.toLowerCase()) }));
  far.sort((a, b) => a.slips - b.slips || (a.word < b.word ? -1 : a.word > b.word ? 1 : 0));
  return far.slice(0, most).map(({ word }) => word);
}

/** Optimal string alignment distance. */
function slips(a: string, b: string): number {
  let before: readonly number[] = [];
  let last: readonly number[] = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const least = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      row.push(swapped ? Math.min(least, (before[j - 2] ?? 0) + 1) : least);
    }
    before = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
