/** The order of words in a list that people search, the same on every machine. */

/**
 * For sort: as dictionaries have it (DIN 5007-1): small and capital letters alike, letters with marks as those without (ä as a), ß as ss;
 * of equals the first by code unit.
 */
export function alphabetical(a: string, b: string): number {
  const [x, y] = [plainLetters(a), plainLetters(b)];
  return x < y ? -1 : x > y ? 1 : a < b ? -1 : a > b ? 1 : 0;
}

const MARKS = /\p{M}/gu;
const plainLetters = (word: string): string => word.toLowerCase().replaceAll('ß', 'ss').normalize('NFD').replace(MARKS, '');
