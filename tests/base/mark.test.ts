/** Marks. */
import { describe, expect, it } from 'vitest';
import { markOf } from '../../src/base/mark.ts';

describe('a mark', () => {
  /** FNV-1a of 32 bits: the algorithm's published test vectors (draft-eastlake-fnv, test values); written from memory. */
  it.each([
    ['', '811c9dc5'],
    ['a', 'e40c292c'],
    ['foobar', 'bf9cf968'],
  ])('of %j', (text, mark) => expect(markOf(text)).toBe(mark));

  it.each([999, 1000, 1001, 2500])('of a text of %i letters is the same, letter by letter', (length) => {
    const text = Array.from({ length }, (_, i) => String.fromCharCode(32 + (i % 90))).join('');
    const plain = [...text].reduce((hash, letter) => Math.imul(hash ^ letter.charCodeAt(0), 0x01000193), 0x811c9dc5);
    expect(Number.parseInt(markOf(text), 16)).toBe(plain >>> 0);
  });
});
