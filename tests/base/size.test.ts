/** Sizes as they stand on drawings, in the forms of ISO 129-1 and ISO 286-1 and as people type them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSize, statedLimits } from '../../src/base/size.ts';
import { inch, mm } from '../../src/base/units.ts';

describe('a size', () => {
  it.each([
    [12, { nominal: mm(12) }],
    ['12 mm', { nominal: mm(12) }],
    ['1/2 in', { nominal: inch(0.5) }],
    ['12 f7', { nominal: mm(12), fit: 'f7' }],
    ['12f7', { nominal: mm(12), fit: 'f7' }],
    ['6 H7', { nominal: mm(6), fit: 'H7' }],
    ['6 mm js6', { nominal: mm(6), fit: 'js6' }],
    ['1/2 in h9', { nominal: inch(0.5), fit: 'h9' }],
    ['1/2 in f7', { nominal: inch(0.5), fit: 'f7' }],
    ['1/2" f7', { nominal: inch(0.5), fit: 'f7' }],
    ['11.00 +0 -0.05', { nominal: mm(11), upper: mm(0), lower: mm(-0.05) }],
    ['10 -0.02 -0.05', { nominal: mm(10), upper: mm(-0.02), lower: mm(-0.05) }],
    ['10 +0.05 0', { nominal: mm(10), upper: mm(0.05), lower: mm(0) }],
    ['10 +0.05/-0.01', { nominal: mm(10), upper: mm(0.05), lower: mm(-0.01) }],
    ['10 mm 0 -0.05 mm', { nominal: mm(10), upper: mm(0), lower: mm(-0.05) }],
    ['8 ±0.1', { nominal: mm(8), upper: mm(0.1), lower: mm(-0.1) }],
    ['8±0.1', { nominal: mm(8), upper: mm(0.1), lower: mm(-0.1) }],
    ['8 +/- 0.1', { nominal: mm(8), upper: mm(0.1), lower: mm(-0.1) }],
    ['8 mm +/- 0.1 mm', { nominal: mm(8), upper: mm(0.1), lower: mm(-0.1) }],
    ['0.5 in ±0.002', { nominal: inch(0.5), upper: inch(0.002), lower: inch(-0.002) }],
    ['1/2 in +0 −2 thou', { nominal: inch(0.5), upper: mm(0), lower: inch(-0.002) }],
    ['M10x1', { nominal: mm(10), thread: 'M10x1' }],
    ['M10×1-6g', { nominal: mm(10), thread: 'M10x1', fit: '6g' }],
    ['m6 - 6H', { nominal: mm(6), thread: 'M6', fit: '6H' }],
  ])('%s', (written, expected) => expect(readSize(written)).toEqual({ ...expected, text: String(written) }));

  it.each([
    ['twelve', 'read.not-a-size'],
    ['', 'read.not-a-size'],
    ['12 furlong', 'read.unknown-unit'],
    ['12 bar', 'read.wrong-unit'],
    ['12,5', 'read.decimal-comma'],
    ['10 -0.05 -0.02', 'read.size-limits-backwards'],
    ['10 -0.05 +0.02', 'read.size-limits-backwards'],
    ['10 +0.02 +0.02', 'read.size-no-band'],
    ['10 ±0', 'read.size-no-band'],
    ['10 +0.1', 'read.size-one-limit'],
    ['M10by1', 'read.not-a-thread'],
    [true, 'read.wrong-type'],
    [1e300, 'read.huge-number'],
  ])('%s is refused: %s', (written, problem) => expect(readSize(written)).toMatchObject({ problem }));

  it('never throws, and never gives limits the wrong way round', () => {
    const piece = fc.constantFrom('12', ' ', '+', '-', '0', '0.05', '±', 'mm', 'in', 'f7', 'H', 'M', 'x', '/', '1/2', '.', '"', '−');
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(piece).map((p) => p.join('')),
        ),
        (text) => {
          const size = readSize(text);
          const limits = 'problem' in size ? undefined : statedLimits(size);
          return limits === undefined || limits.lo < limits.hi;
        },
      ),
    );
  });
});
