/** Small sets of whole numbers as words of 31 bits, so that a subset is one `&`. */

export type Bits = ArrayLike<number>;
const WORD = 31;

export const wordsFor = (count: number): number => Math.max(1, Math.ceil(count / WORD));

export function bitsOf(members: readonly number[], words: number): Bits {
  const set = new Array<number>(words).fill(0);
  for (const i of members) put(set, i);
  return set;
}

export function contains(set: Bits, part: Bits): boolean {
  for (let w = 0; w < part.length; w += 1) if (((part[w] ?? 0) & ~(set[w] ?? 0)) !== 0) return false;
  return true;
}

/** As many words as `a` has are looked at. */
export function meets(a: Bits, b: Bits): boolean {
  for (let w = 0; w < a.length; w += 1) if (((a[w] ?? 0) & (b[w] ?? 0)) !== 0) return true;
  return false;
}

export const has = (set: Bits, i: number): boolean => (((set[Math.floor(i / WORD)] ?? 0) >> (i % WORD)) & 1) === 1;

export function put(set: { [word: number]: number }, i: number): void {
  const w = Math.floor(i / WORD);
  set[w] = (set[w] ?? 0) | (1 << (i % WORD));
}

/** How many of `wanted` are not in `set`. */
export function missing(wanted: Bits, set: Bits): number {
  let n = 0;
  for (let w = 0; w < wanted.length; w += 1) n += population((wanted[w] ?? 0) & ~(set[w] ?? 0));
  return n;
}

/** How many of `wanted` are in `set`. */
export function shared(wanted: Bits, set: Bits): number {
  let n = 0;
  for (let w = 0; w < wanted.length; w += 1) n += population((wanted[w] ?? 0) & (set[w] ?? 0));
  return n;
}

export function isEmpty(set: Bits): boolean {
  for (let w = 0; w < set.length; w += 1) if (set[w] !== 0) return false;
  return true;
}

/** Calls `tell` for each member of word `w`, least first. */
export function membersOf(word: number, w: number, tell: (member: number) => void): void {
  for (let left = word; left !== 0; left &= left - 1) tell(w * WORD + WORD - Math.clz32(left & -left));
}

function population(w: number): number {
  let n = 0;
  for (let left = w; left !== 0; left &= left - 1) n += 1;
  return n;
}
