/** The order of findings, and what is said when there are too many. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/base/diagnostics.ts';
import { report } from '../../src/base/report.ts';
import { words } from '../../src/base/words.ts';

const WORDS = words({ 'errors.hbs': readFileSync(join(import.meta.dirname, '..', '..', 'templates', 'en', 'errors.hbs'), 'utf8') });
const at = (file: string, line: number, col = 1): Diagnostic => ({
  code: 'read.merge-key',
  severity: 'error',
  place: { file, line, col },
  grounds: {},
});
const heads = (text: string) =>
  text
    .split('\n')
    .filter((l) => /^\S/.test(l))
    .map((l) => l.replace(/ Keys.*/, ''));

describe('report', () => {
  it('goes by file, line and column; warnings after errors, the placeless after the placed', () => {
    const { place: _, ...placeless } = at('a', 1);
    const found = [{ ...at('b', 1), severity: 'warning' as const }, placeless, at('b', 10), at('b', 9), at('a', 3, 7), at('a', 3, 2)];
    expect(heads(report(found, {}, WORDS))).toEqual([
      'b:9:1: error:',
      'b:10:1: error:',
      'a:3:2: error:',
      'a:3:7: error:',
      'error:',
      'b:1:1: warning:',
    ]);
  });
  it('says fifty and counts the rest', () => {
    const found = Array.from({ length: 53 }, (_, n) => at('a', n + 1));
    expect(heads(report(found, {}, WORDS)).length).toBe(50 + 1);
    expect(report(found, {}, WORDS)).toMatch(/\nand 3 more like these\n$/);
  });
  it('is silent when there is nothing', () => expect(report([], {}, WORDS)).toBe(''));
});
