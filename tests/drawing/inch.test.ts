import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inch, type Len, len, mm } from '../../src/base/units.ts';
import type { Manner } from '../../src/drawing/sheet/manner.ts';
import { mannerOf } from '../../src/drawing/sheet/metric.ts';
import type { Limits } from '../../src/model/part.ts';

const [METRIC, INCH] = [mannerOf('mm'), mannerOf('inch')];
const between = (lo: Len, target: Len, hi: Len): Limits => ({ lo, target, hi, from: { kind: 'stated', as: '' } });
const mms = (lo: number, target: number, hi: number): Limits => between(mm(lo), mm(target), mm(hi));
const ins = (lo: number, target: number, hi: number): Limits => between(inch(lo), inch(target), inch(hi));
const whole = (manner: Manner, asked: Limits): string => `${manner.target(asked)} ${manner.limits(asked)}`;

describe('inches as a turner reads them', () => {
  it.each([
    ['thousandths', mms(15.8, 16, 16.2), '0.630 ±0.007'],
    ['from what is printed, not from what it was', mms(11.8, 11.9, 11.97), '0.469 +0.002 −0.004'],
    ['a form turned to', mms(13.9, 14, 14), '0.551 +0 −0.003'],
    ['under two thousandths to tenths', mms(2.8, 2.85, 2.9), '0.112 +0.0020 −0.0017'],
    ['tenths, where the limits hold no whole thousandth', ins(0.1872, 0.1875, 0.1878), '0.1875 ±0.0003'],
    ['hundredths of a thousandth, where they hold no tenth', ins(0.18752, 0.18754, 0.18757), '0.18754 ±0'],
    ['stated in inches', ins(0.245, 0.25, 0.25), '0.250 +0 −0.005'],
  ])('%s: %j', (_, asked, shown) => {
    expect(whole(INCH, asked)).toBe(shown);
  });

  it.each<[string, string, string]>([
    ['fraction', INCH.named(inch(11 / 16)), '11/16 in'],
    ['over an inch', INCH.named(inch(1.25)), '1 1/4 in'],
    ['number drill', INCH.named(inch(0.2055)), 'No. 5'],
    ['letter drill', INCH.named(inch(0.413)), 'letter Z'],
    ['a quarter is a fraction, not E', INCH.named(inch(0.25)), '1/4 in'],
    ['metric drill', INCH.named(mm(4.2)), '4.2 mm'],
    ['of no rack', INCH.named(len(43_217)), '0.1701'],
    ['number drill beside millimetres', METRIC.named(inch(0.2055)), 'No. 5 (5.22)'],
    ['metric drill beside millimetres', METRIC.named(mm(4.2)), '4.2'],
    ['bar sawn off: a little over', INCH.bar(mm(59.5), 'over'), '2 3/8'],
    ['bar that there is: a little under', INCH.bar(mm(300), 'under'), '11 3/4'],
    ['bar in whole inches', INCH.bar(inch(12), 'under'), '12'],
    ['what is left adds up with what is printed', INCH.barLeft(mm(300), [mm(20), mm(20)]), '10 1/8'],
    ['depth in steps of five thousandths', INCH.depth(mm(7.36)), '0.29'],
    ['feed in steps of half a thousandth', INCH.feed(0.084), '0.0035'],
    ['the least feed is no nought', INCH.feed(0.004), '0.0005'],
    ['pitch of an inch thread', INCH.pitch(25.4 / 40), '40 to the inch'],
    ['pitch of a metric thread', INCH.pitch(1), '1 mm'],
    ['cuts', INCH.passes([mm(0.4826), mm(0.4826), mm(0.1702)]), '0.019 ×2, 0.0067'],
    ['a figure worked out', INCH.derived(1.8247, 'mm'), '0.07184 in'],
    ['speed, 1 m/s (196.85 ft/min)', INCH.derived(1, 'm/s'), '197 ft/min'],
    ['stress, 1 N/mm2 (145.04 psi)', INCH.derived(1, 'N/mm2'), '145 psi'],
    ['pressure, 7 bar (101.53 psi)', INCH.derived(7, 'bar'), '102 psi'],
    ['force, 100 N (22.481 lbf)', INCH.derived(100, 'N'), '22.5 lbf'],
    ['temperature', INCH.derived(170.5, 'degC'), '339 °F'],
    ['what has no inch unit', INCH.derived(282.7, 'ml/min'), '283 ml/min'],
    ['in a sentence', INCH.about(mm(0.03)), '0.001'],
  ])('%s', (_, shown, wanted) => {
    expect(shown).toBe(wanted);
  });

  /** Half a unit of 0.1 um: what was stated in inches was rounded by as much when it was read. */
  const HALF = 0.5001;
  it('never let a size out of its limits, whatever they are', () => {
    const band = fc.tuple(
      fc.integer({ min: -200_000, max: 2_000_000 }),
      fc.integer({ min: 0, max: 9_000 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(band, ([lo, wide, at]) => {
        const asked = between(len(lo), len(lo + Math.round(wide * at)), len(lo + wide));
        const [, size, even, up, down] =
          /^(-?[\d.]+) (?:±([\d.]+)|\+([\d.]+) -([\d.]+))$/.exec(whole(INCH, asked).replaceAll('\u2212', '-')) ?? [];
        const units = (text: string | undefined): number => Number(text) * 254_000;
        return units(size) - units(even ?? down) >= lo - HALF && units(size) + units(even ?? up) <= lo + wide + HALF;
      }),
      { numRuns: 2_000 },
    );
  });
  it('bar: what is printed is never under what is needed, nor over what there is', () => {
    const inches = (text: string): number =>
      text.split(' ').reduce(
        (sum, piece) =>
          sum +
          piece
            .split('/')
            .map(Number)
            .reduce((a, b) => a / b),
        0,
      );
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9_000_000 }), (units) => {
        const [over, under] = [inches(INCH.bar(len(units), 'over')), inches(INCH.bar(len(units), 'under'))];
        return over * 254_000 >= units - HALF && under * 254_000 <= units + HALF && over - under <= 1 / 16;
      }),
    );
  });
});
