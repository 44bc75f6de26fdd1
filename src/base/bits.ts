/** Small sets of whole numbers as words of 31 bits, so that a subset is one `&`. */

export type Bits = readonly number[];
const WORD = 31;

export const wordsFor = (count: number): number => Math.max(1, Math.ceil(count / WORD));

export function bitsOf(members: readonly number[], words: number): Bits {
  const set = new Array<number>(words).fill(0);
  for (const i of members) set[Math.floor(i / WORD)] = (set[Math.floor(i / WORD)] ?? 0) | (1 << (i % WORD));
  return set;
}

export const contains = (set: Bits, part: Bits): boolean => part.every((w, i) => ((set[i] ?? 0) & w) === w);
export const meets = (a: Bits, b: Bits): boolean => a.some((w, i) => (w & (b[i] ?? 0)) !== 0);
export const has = (set: Bits, i: number): boolean => (((set[Math.floor(i / WORD)] ?? 0) >> (i % WORD)) & 1) === 1;
export const withMember = (set: Bits, i: number): Bits => set.map((w, k) => (k === Math.floor(i / WORD) ? w | (1 << (i % WORD)) : w));

/** How many of `wanted` are not in `set`. */
export const missing = (wanted: Bits, set: Bits): number => wanted.reduce((n, w, i) => n + population(w & ~(set[i] ?? 0)), 0);

function population(w: number): number {
  let n = 0;
  for (let left = w; left !== 0; left &= left - 1) n += 1;
  return n;
}
