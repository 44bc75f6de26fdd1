/** Tapping drills, depths to cut, run-outs and undercuts, against printed figures. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inch, len, mm, toMm } from '../../src/base/units.ts';
import { blindRunOut, insideUndercut, reliefWidth, runOut, undercut } from '../../src/handbook/din76-runout.ts';
import { findDrill } from '../../src/handbook/drills.ts';
import { metricThread, type ThreadLimits } from '../../src/handbook/iso965-metric.ts';
import {
  engagement,
  holeFor,
  profileDepth,
  rootRadius,
  tappingDrills,
  threadDepth,
  usualTappingDrill,
} from '../../src/handbook/metric-tapping.ts';

function nut(name: string): ThreadLimits {
  const thread = metricThread(name, '6H');
  if (!thread) throw new Error(`no ${name}`);
  return thread;
}

/** FED-STD-H28/2B table II.A.1, percent on the basis 3/4 H, for unified threads: size, threads an inch, drill. */
const UNIFIED: readonly (readonly [size: string, tpi: number, drill: string, percent: number])[] = [
  ['#0', 80, '3/64 in', 81],
  ['#2', 56, '#50', 69],
  ['#4', 40, '#43', 71],
  ['#5', 40, '#38', 72],
  ['#6', 32, '#36', 78],
  ['#6', 32, '#35', 69],
  ['#8', 32, '#29', 69],
  ['#10', 24, '#25', 75],
  ['#10', 32, '#21', 76],
  ['#10', 32, '#20', 71],
  ['#12', 24, '#16', 72],
  ['1/4', 20, '#7', 75],
  ['1/4', 28, '#3', 80],
  ['1/4', 28, '7/32 in', 67],
  ['1/4', 32, '7/32 in', 77],
  ['1/4', 32, '#2', 71],
  ['5/16', 18, 'F', 77],
  ['5/16', 18, 'G', 71],
  ['5/16', 24, 'I', 75],
  ['5/16', 32, '9/32 in', 77],
  ['3/8', 16, '5/16 in', 77],
  ['3/8', 24, 'Q', 79],
  ['3/8', 24, 'R', 67],
  ['3/8', 32, '11/32 in', 77],
  ['7/16', 14, 'T', 86],
  ['7/16', 14, '23/64 in', 84],
  ['7/16', 20, 'W', 79],
  ['7/16', 20, '25/64 in', 72],
  ['1/2', 13, '27/64 in', 78],
  ['1/2', 20, '29/64 in', 72],
];
/** Number sizes are 0.060 in and 0.013 for each number. */
function unified(size: string): number {
  if (size.startsWith('#')) return 0.06 + 0.013 * Number(size.slice(1));
  const [over = 0, under = 1] = size.split('/').map(Number);
  return over / under;
}

describe('share of thread', () => {
  it.each(UNIFIED)('%s-%d with %s is %d % on 3/4 H (FED-STD-H28/2B)', (size, tpi, name, percent) => {
    const drill = findDrill(name);
    const share = engagement({ nominal: inch(unified(size)), pitch: inch(1 / tpi) }, drill?.diameter ?? len(0), '3/4 H');
    expect(Math.abs(share - percent)).toBeLessThanOrEqual(0.51);
  });
  it('M6 with 5.0 is 92.4 % on 5/8 H and 77.0 on 3/4 H: the same hole', () => {
    expect(engagement(nut('M6'), mm(5), '5/8 H')).toBeCloseTo(92.4, 1);
    expect(engagement(nut('M6'), mm(5), '3/4 H')).toBeCloseTo(77, 1);
  });
  it('a hole for a share is the inverse', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('M6', 'M10x1', 'M12x1', 'M3'),
        fc.integer({ min: 30, max: 100 }),
        fc.constantFrom('5/8 H', '3/4 H'),
        (name, percent, basis) => {
          expect(engagement(nut(name), holeFor(nut(name), percent, basis), basis)).toBeCloseTo(percent, 1);
        },
      ),
      { numRuns: 100 },
    );
  });
});

/** Drill, percent on 5/8 H and on 3/4 H (arithmetic), and whether the hole was found inside 6H. ISO 2306, from memory or seen at anzugsmoment.de. */
const METRIC: readonly (readonly [name: string, drill: number, fine: number, handbook: number, checked: boolean])[] = [
  ['M1.6', 1.25, 92.4, 77.0, true],
  ['M2', 1.6, 92.4, 77.0, true],
  ['M2.5', 2.05, 92.4, 77.0, true],
  ['M3', 2.5, 92.4, 77.0, true],
  ['M3.5', 2.9, 92.4, 77.0, false],
  ['M4', 3.3, 92.4, 77.0, true],
  ['M5', 4.2, 92.4, 77.0, true],
  ['M6', 5, 92.4, 77.0, true],
  ['M7', 6, 92.4, 77.0, false],
  ['M8', 6.8, 88.7, 73.9, true],
  ['M10', 8.5, 92.4, 77.0, true],
  ['M12', 10.2, 95.0, 79.2, true],
  ['M14', 12, 92.4, 77.0, true],
  ['M16', 14, 92.4, 77.0, true],
  ['M18', 15.5, 92.4, 77.0, false],
  ['M20', 17.5, 92.4, 77.0, true],
  ['M24', 21, 92.4, 77.0, true],
  ['M2.5x0.35', 2.15, 92.4, 77.0, false],
  ['M3x0.35', 2.65, 92.4, 77.0, false],
  ['M4x0.5', 3.5, 92.4, 77.0, true],
  ['M5x0.5', 4.5, 92.4, 77.0, true],
  ['M6x0.75', 5.2, 98.5, 82.1, true],
  ['M8x0.75', 7.25, 92.4, 77.0, true],
  ['M8x1', 7, 92.4, 77.0, true],
  ['M10x0.75', 9.25, 92.4, 77.0, true],
  ['M10x1', 9, 92.4, 77.0, true],
  ['M10x1.25', 8.8, 88.7, 73.9, true],
  ['M12x1', 11, 92.4, 77.0, true],
  ['M12x1.25', 10.8, 88.7, 73.9, true],
  ['M12x1.5', 10.5, 92.4, 77.0, true],
  ['M14x1', 13, 92.4, 77.0, false],
  ['M14x1.5', 12.5, 92.4, 77.0, true],
  ['M16x1', 15, 92.4, 77.0, true],
  ['M16x1.5', 14.5, 92.4, 77.0, true],
  ['M20x1', 19, 92.4, 77.0, false],
  ['M20x1.5', 18.5, 92.4, 77.0, true],
];
describe('usual tapping drills', () => {
  it.each(METRIC)('%s takes %d', (name, drill, fine, handbook, checked) => {
    const thread = nut(name);
    expect(usualTappingDrill(thread.name)).toBe(mm(drill));
    expect(engagement(thread, mm(drill), '5/8 H')).toBeCloseTo(fine, 0);
    expect(engagement(thread, mm(drill), '3/4 H')).toBeCloseTo(handbook, 0);
    expect(tappingDrills(thread, [mm(drill)])[0]?.inside || !checked).toBe(true);
  });
  it('an unlisted thread has none', () => expect(usualTappingDrill('M29x1.25')).toBeUndefined());
});

describe('drills of a rack', () => {
  const rack = [10.5, 10.8, 11, 11.1, 11.2, 11, 12, 13].map(mm);
  it('M12x1: 11.0 and 11.1 are inside 10.917-11.153, with the nearest either way', () => {
    expect(tappingDrills(nut('M12x1'), rack).map(({ drill, place, inside }) => [toMm(drill), place, inside])).toEqual([
      [10.8, 'under', false],
      [11, 'lower half', true],
      [11.1, 'upper half', true],
      [11.2, 'over', false],
    ]);
  });
  it('an empty rack gives none, and one of only large drills the nearest', () => {
    expect(tappingDrills(nut('M12x1'), [])).toEqual([]);
    expect(tappingDrills(nut('M12x1'), [mm(11.9), mm(13)]).map((t) => toMm(t.drill))).toEqual([11.9]);
  });
  it('the order of the rack does not matter', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(rack, { minLength: rack.length }), (shuffled) => {
        expect(tappingDrills(nut('M12x1'), shuffled)).toEqual(tappingDrills(nut('M12x1'), rack));
      }),
    );
  });
});

describe('depth to cut', () => {
  it('heights of M10x1.5 are h3 0.920 and H1 0.812 (ISCAR, Taps 2022, p. 56)', () => {
    const { outside, inside } = profileDepth(mm(1.5));
    expect([toMm(outside).toFixed(3), toMm(inside).toFixed(3)]).toEqual(['0.920', '0.812']);
  });
  it.each([
    [1, 0.65, 0.65],
    [1.25, 0.84, 0.84],
    [1.5, 1.03, 1.03],
    [1.75, 1.22, 1.22],
    [2, 1.41, 1.41],
  ])('pitch %d with a nose of 0.13: near the %d that Sumitomo 2019-20 p. 415 gives', (pitch, printed) => {
    // Their depth counts from the nominal diameter, and their tables keep a little in hand: within 0.04.
    const name = { 1: 'M10x1', 1.25: 'M8', 1.5: 'M10', 1.75: 'M12', 2: 'M16' }[String(pitch)] ?? '';
    const bolt = metricThread(name, '6g');
    const { lo, hi } = bolt ? threadDepth(bolt, bolt.nominal, mm(0.13)) : { lo: len(0), hi: len(0) };
    expect(toMm(lo)).toBeGreaterThan(printed - 0.04);
    expect(toMm(hi)).toBeLessThan(printed + 0.09);
  });
  it('a profile nose on a basic crest cuts h3 to the basic pitch diameter', () => {
    const bolt = metricThread('M10x1', '6h');
    const { hi } = rootRadius(mm(1));
    // the pitch diameter is a whole micrometre, so the depth is right to half of one
    expect(Math.abs(Number(bolt && threadDepth(bolt, bolt.nominal, hi).lo) - mm(0.6134))).toBeLessThanOrEqual(5);
  });
  it('a sharper point goes deeper, and the band is half that of the pitch diameter', () => {
    const bolt = metricThread('M12x1', '6g');
    if (!bolt) throw new Error('no M12x1');
    const [sharp, round] = [threadDepth(bolt, bolt.major.hi, len(0)), threadDepth(bolt, bolt.major.hi, mm(0.1))];
    expect(sharp.lo - round.lo).toBe(mm(0.1));
    expect(sharp.hi - sharp.lo).toBe((bolt.pitchDiameter.hi - bolt.pitchDiameter.lo) / 2);
  });
});

/** DIN 76-1: what was seen (low-trust page, or DIN 76-1:1983 row of P 0.6), then from memory. */
describe('run-outs and undercuts (DIN 76-1)', () => {
  it.each([
    [0.5, 0.8],
    [0.7, 1.1],
    [0.8, 1.3],
    [1, 1.6],
    [1.25, 2],
    [1.5, 2.3],
    [1.75, 2.6],
    [2, 3],
  ])('pitch %d: undercut d - %d (seen)', (pitch, offset) => expect(undercut(mm(pitch), 'normal')?.offset).toBe(mm(offset)));
  it('row of pitch 0.6 (DIN 76-1:1983, seen)', () => {
    const pitch = mm(0.6);
    expect([undercut(pitch, 'normal')?.most, undercut(pitch, 'short')?.most]).toEqual([mm(2.1), mm(1.5)]);
    expect([insideUndercut(pitch, 'normal')?.offset, insideUndercut(pitch, 'short')?.most]).toEqual([mm(0.3), mm(2.4)]);
  });
  it('row of pitch 1 (from memory)', () => {
    const pitch = mm(1);
    expect([
      runOut(pitch, 'normal')?.thread,
      undercut(pitch, 'normal')?.least,
      undercut(pitch, 'normal')?.most,
      undercut(pitch, 'normal')?.radius,
    ]).toEqual([2.5, 2.1, 3.5, 0.6].map(mm));
    expect(undercut(pitch, 'normal')?.standing).toBe('from memory');
  });
  it.each([0.2, 0.34, 0.9, 2.5, 3])('nothing for pitch %d', (pitch) => {
    expect([
      undercut(mm(pitch), 'normal'),
      insideUndercut(mm(pitch), 'short'),
      runOut(mm(pitch), 'short'),
      blindRunOut(mm(pitch), 'normal'),
    ]).toEqual([undefined, undefined, undefined, undefined]);
  });
  it.each([0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2])(
    'pitch %d: short under normal, the whole over the full depth',
    (pitch) => {
      const [long, short] = [undercut(mm(pitch), 'normal'), undercut(mm(pitch), 'short')];
      const [run, close] = [runOut(mm(pitch), 'normal'), runOut(mm(pitch), 'short')];
      expect(long && short && short.most < long.most && short.least < long.least && long.least < long.most).toBe(true);
      expect(run && close && close.thread < run.thread && close.shoulder < run.shoulder && run.thread < run.shoulder).toBe(true);
      // the undercut's floor clears the rounded root at either class limit: 1.2269 P under nominal is the basic root
      expect(long && toMm(long.offset) > 1.2269 * pitch).toBe(true);
    },
  );
  it('own rule: two pitches and half the tool', () => expect(reliefWidth(mm(1), mm(1.5))).toBe(mm(2.75)));
});
