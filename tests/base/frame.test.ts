/** Lines with a mark under the place. */
import { describe, expect, it } from 'vitest';
import { frame } from '../../src/base/frame.ts';

const text = 'fitting: check-valve\r\ntitle: T\r\n\tball: 6 mm\r\n';

describe('frame', () => {
  it.each([
    ['the first line', { line: 1, col: 1, endCol: 8 }, '  1 | fitting: check-valve\n    | ^^^^^^^\n'],
    ['a later line, with the one before', { line: 2, col: 8 }, '  1 | fitting: check-valve\n  2 | title: T\n    |        ^\n'],
    ['a tab counts as one column', { line: 3, col: 2, endCol: 6 }, '  2 | title: T\n  3 |  ball: 6 mm\n    |  ^^^^\n'],
    ['past the end of a line', { line: 2, col: 9, endCol: 40 }, '  1 | fitting: check-valve\n  2 | title: T\n    |         ^\n'],
    ['past the end of the text', { line: 9, col: 1 }, ''],
  ])('%s', (_, place, expected) => expect(frame(text, { file: 'a', ...place })).toBe(expected));

  it.each([1, 40, 120, 300, 399])('keeps the mark under column %i of a long line', (col) => {
    const long = Array.from({ length: 400 }, (_, n) => String.fromCharCode(97 + (n % 26))).join('');
    const [line = '', mark = ''] = frame(long, { file: 'a', line: 1, col }).split('\n');
    expect(line[mark.indexOf('^')]).toBe(long[col - 1]);
    expect(line.length).toBeLessThan(120);
  });

  it('lets nothing through that steers a screen', () => {
    expect(frame('a: \u001b[31m\u202eb', { file: 'a', line: 1, col: 1 })).toBe('  1 | a: ·[31m·b\n    | ^\n');
  });
});
