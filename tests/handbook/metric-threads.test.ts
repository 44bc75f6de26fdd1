/** Metric threads against printed limits, and what must hold of every thread. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Len, mm } from '../../src/base/units.ts';
import { metricSizes } from '../../src/handbook/iso261-sizes.ts';
import { basicThread, metricName, metricNames, metricThread, type ThreadLimits } from '../../src/handbook/iso965-metric.ts';
import { crests, deviations, pitches } from '../../src/handbook/iso965-tables.ts';

function found(name: string, cls: string): ThreadLimits {
  const thread = metricThread(name, cls);
  if (!thread) throw new Error(`no ${name} ${cls}`);
  return thread;
}

/**
 * ISO 965-2 / ASME B1.13M, 6g: d max, min; d2 max, min; d1 max (flat); d3 min (round); 6H: D1 min, max; D2 min, max; D min. Third: the printed
 * lists that show the same (mastik.pt pp. 711-712; threadlib, metric_thread.csv).
 */
const PRINTED: readonly (readonly [name: string, mm: readonly number[], lists: string])[] = [
  ['M1.6x0.35', [1.581, 1.496, 1.354, 1.291, 1.202, 1.075, 1.221, 1.321, 1.373, 1.458, 1.6], 'mastik(ext), threadlib(int), threadlib(ext)'],
  ['M2x0.4', [1.981, 1.886, 1.721, 1.654, 1.548, 1.408, 1.567, 1.679, 1.74, 1.83, 2], 'mastik(ext), threadlib(int), threadlib(ext)'],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: 2.303 is D2 max as printed
  ['M2.5x0.45', [2.48, 2.38, 2.188, 2.117, 1.993, 1.84, 2.013, 2.138, 2.208, 2.303, 2.5], 'mastik(ext), threadlib(int), threadlib(ext)'],
  ['M3x0.5', [2.98, 2.874, 2.655, 2.58, 2.439, 2.272, 2.459, 2.599, 2.675, 2.775, 3], 'mastik(ext), threadlib(int), threadlib(ext)'],
  ['M4x0.5', [3.98, 3.874, 3.655, 3.58, 3.439, 3.272, 3.459, 3.599, 3.675, 3.775, 4], 'threadlib(int), threadlib(ext)'],
  ['M4x0.7', [3.978, 3.838, 3.523, 3.433, 3.22, 3.002, 3.242, 3.422, 3.545, 3.663, 4], 'mastik(ext), threadlib(int), threadlib(ext)'],
  ['M5x0.5', [4.98, 4.874, 4.655, 4.58, 4.439, 4.272, 4.459, 4.599, 4.675, 4.775, 5], 'threadlib(int), threadlib(ext)'],
  ['M5x0.8', [4.976, 4.826, 4.456, 4.361, 4.11, 3.869, 4.134, 4.334, 4.48, 4.605, 5], 'mastik(ext), threadlib(int), threadlib(ext)'],
  ['M6x0.75', [5.978, 5.838, 5.491, 5.391, 5.166, 4.929, 5.188, 5.378, 5.513, 5.645, 6], 'threadlib(int), threadlib(ext)'],
  ['M6x1', [5.974, 5.794, 5.324, 5.212, 4.891, 4.596, 4.917, 5.153, 5.35, 5.5, 6], 'mastik(ext), threadlib(int), threadlib(ext)'],
  ['M8x0.75', [7.978, 7.838, 7.491, 7.391, 7.166, 6.929, 7.188, 7.378, 7.513, 7.645, 8], 'threadlib(int), threadlib(ext)'],
  ['M8x1', [7.974, 7.794, 7.324, 7.212, 6.891, 6.596, 6.917, 7.153, 7.35, 7.5, 8], 'mastik(ext), threadlib(int), threadlib(ext)'],
  ['M8x1.25', [7.972, 7.76, 7.16, 7.042, 6.619, 6.272, 6.647, 6.912, 7.188, 7.348, 8], 'threadlib(int), threadlib(ext)'],
  ['M10x0.75', [9.978, 9.838, 9.491, 9.391, 9.166, 8.929, 9.188, 9.378, 9.513, 9.645, 10], 'threadlib(int), threadlib(ext)'],
  ['M10x1', [9.974, 9.794, 9.324, 9.212, 8.891, 8.596, 8.917, 9.153, 9.35, 9.5, 10], 'mastik(ext), threadlib(int), threadlib(ext)'],
  ['M10x1.25', [9.972, 9.76, 9.16, 9.042, 8.619, 8.272, 8.647, 8.912, 9.188, 9.348, 10], 'mastik(ext), threadlib(int), threadlib(ext)'],
  ['M10x1.5', [9.968, 9.732, 8.994, 8.862, 8.344, 7.938, 8.376, 8.676, 9.026, 9.206, 10], 'threadlib(int), threadlib(ext)'],
  ['M12x1', [11.974, 11.794, 11.324, 11.206, 10.891, 10.59, 10.917, 11.153, 11.35, 11.51, 12], 'threadlib(int), threadlib(ext)'],
  [
    'M12x1.25',
    [11.972, 11.76, 11.16, 11.028, 10.619, 10.258, 10.647, 10.912, 11.188, 11.368, 12],
    'mastik(ext), threadlib(int), threadlib(ext)',
  ],
  [
    'M12x1.5',
    [11.968, 11.732, 10.994, 10.854, 10.344, 9.93, 10.376, 10.676, 11.026, 11.216, 12],
    'mastik(ext), threadlib(int), threadlib(ext)',
  ],
  ['M12x1.75', [11.966, 11.701, 10.829, 10.679, 10.072, 9.601, 10.106, 10.441, 10.863, 11.063, 12], 'threadlib(int), threadlib(ext)'],
  [
    'M14x1.5',
    [13.968, 13.732, 12.994, 12.854, 12.344, 11.93, 12.376, 12.676, 13.026, 13.216, 14],
    'mastik(ext), threadlib(int), threadlib(ext)',
  ],
  ['M14x2', [13.962, 13.682, 12.663, 12.503, 11.797, 11.271, 11.835, 12.21, 12.701, 12.913, 14], 'threadlib(int), threadlib(ext)'],
  ['M16x1', [15.974, 15.794, 15.324, 15.206, 14.891, 14.59, 14.917, 15.153, 15.35, 15.51, 16], 'threadlib(int), threadlib(ext)'],
  [
    'M16x1.5',
    [15.968, 15.732, 14.994, 14.854, 14.344, 13.93, 14.376, 14.676, 15.026, 15.216, 16],
    'mastik(ext), threadlib(int), threadlib(ext)',
  ],
  ['M16x2', [15.962, 15.682, 14.663, 14.503, 13.797, 13.271, 13.835, 14.21, 14.701, 14.913, 16], 'threadlib(int), threadlib(ext)'],
  ['M20x1.5', [19.968, 19.732, 18.994, 18.854, 18.344, 17.93, 18.376, 18.676, 19.026, 19.216, 20], 'threadlib(int), threadlib(ext)'],
  ['M20x2.5', [19.958, 19.623, 18.334, 18.164, 17.252, 16.624, 17.294, 17.744, 18.376, 18.6, 20], 'threadlib(int), threadlib(ext)'],
  ['M24x3', [23.952, 23.577, 22.003, 21.803, 20.704, 19.955, 20.752, 21.252, 22.051, 22.316, 24], 'threadlib(int), threadlib(ext)'],
  ['M30x3.5', [29.947, 29.522, 27.674, 27.462, 26.158, 25.306, 26.211, 26.771, 27.727, 28.007, 30], 'threadlib(int), threadlib(ext)'],
];

describe('limits 6g and 6H are those printed', () => {
  it.each(PRINTED)('%s', (name, values) => {
    const bolt = found(name, '6g');
    const nut = found(name, '6H');
    const ours = [
      bolt.major.hi,
      bolt.major.lo,
      bolt.pitchDiameter.hi,
      bolt.pitchDiameter.lo,
      bolt.minor.hi,
      bolt.root,
      nut.minor.lo,
      nut.minor.hi,
      nut.pitchDiameter.lo,
      nut.pitchDiameter.hi,
      nut.major.lo,
    ];
    expect(ours).toEqual(values.map(mm));
    expect([bolt.standing, nut.standing]).toEqual(['standard', 'standard']);
  });
});

/** One figure a row, with where it is printed. */
const FIGURES: readonly (readonly [
  name: string,
  cls: string,
  what: 'major' | 'pitchDiameter' | 'minor',
  end: 'lo' | 'hi',
  mm: number,
  source: string,
])[] = [
  ['M3', '6g', 'major', 'hi', 2.98, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M3', '6g', 'major', 'lo', 2.874, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M3', '6g', 'pitchDiameter', 'hi', 2.655, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M3', '6g', 'pitchDiameter', 'lo', 2.58, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M5', '6H', 'minor', 'lo', 4.134, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M5', '6H', 'minor', 'hi', 4.334, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M5', '6H', 'pitchDiameter', 'lo', 4.48, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M8', '6H', 'pitchDiameter', 'hi', 7.348, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M8x1', '6g', 'major', 'hi', 7.974, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M8x1', '6g', 'major', 'lo', 7.794, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M8x1', '6g', 'pitchDiameter', 'hi', 7.324, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M8x1', '6g', 'pitchDiameter', 'lo', 7.212, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M10', '6g', 'major', 'lo', 9.732, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M10', '6g', 'pitchDiameter', 'hi', 8.994, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M10', '6g', 'pitchDiameter', 'lo', 8.862, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M10x1', '6H', 'minor', 'hi', 9.153, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M12x1.5', '6g', 'pitchDiameter', 'hi', 10.994, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M12x1.5', '6g', 'pitchDiameter', 'lo', 10.854, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M12x1.5', '6H', 'minor', 'hi', 10.676, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M12x1.5', '6H', 'pitchDiameter', 'hi', 11.216, 'ISO 965-2 / ASME B1.13M: mastik.pt pp. 711-712, threadlib'],
  ['M27x1.5', '4e6g', 'major', 'hi', 26.968, 'FED-STD-H28/21B (1984) 5.1.3'],
  ['M27x1.5', '4e6g', 'major', 'lo', 26.732, 'FED-STD-H28/21B (1984) 5.1.3'],
  ['M27x1.5', '4e6g', 'pitchDiameter', 'hi', 25.959, 'FED-STD-H28/21B (1984) 5.1.3'],
  ['M27x1.5', '4e6g', 'pitchDiameter', 'lo', 25.864, 'FED-STD-H28/21B (1984) 5.1.3'],
  ['M27x1.5', '6H', 'pitchDiameter', 'lo', 26.026, 'FED-STD-H28/21B (1984) 5.1.3'],
  ['M27x1.5', '6H', 'pitchDiameter', 'hi', 26.226, 'FED-STD-H28/21B (1984) 5.1.3'],
  ['M27x1.5', '6H', 'minor', 'lo', 25.376, 'FED-STD-H28/21B (1984) 5.1.3'],
  ['M29x1.25', '4g6h', 'pitchDiameter', 'hi', 28.16, 'FED-STD-H28/21B (1984) 5.1.3'],
];

describe('figures as printed', () => {
  it.each(FIGURES)('%s %s %s %s %d (%s)', (name, cls, what, end, value) => {
    expect(found(name, cls)[what][end]).toBe(mm(value));
  });
  it.each([
    ['M10 d2', basicThread(10, 1.5).pitchDiameter, 9.026],
    ['M10 d3', basicThread(10, 1.5).root, 8.16],
    ['M10 D1', basicThread(10, 1.5).minor, 8.376],
    ['M6 d2', basicThread(6, 1).pitchDiameter, 5.35],
  ])('%s of the basic profile (ISO 724; ISCAR, Taps 2022, p. 56)', (_, ours, printed) => {
    expect(ours).toBe(mm(printed));
  });
  it('M29x1.25-4g6h stands in no table: by formula, and said so (FED-STD-H28/21B 5.1.3 example 3: flat minor 27.619)', () => {
    const thread = found('M29x1.25', '4g6h');
    expect([thread.minor.hi, thread.standing, thread.listed]).toEqual([mm(27.619), 'derived', 'nowhere']);
  });
});

describe('names', () => {
  it.each([
    ['M10', 'M10'],
    ['M10x1.5', 'M10'],
    ['M10×1', 'M10x1'],
    ['m10 x 1', 'M10x1'],
    ['M10*1.0', 'M10x1'],
    ['M1.6', 'M1.6'],
    ['M12x1 LH', 'M12x1 LH'],
    ['M12x1-6H', 'M12x1'],
    ['M5.5x0.5', 'M5.5x0.5'],
  ])('%s is %s', (written, name) => expect(metricName(written)).toBe(name));
  it.each(['', 'M', 'M10x', 'M10x1x1', 'M0', 'M1.4', 'M31', 'M10x0.9', 'M5x3', 'M15', '10x1', 'M10x1-', 'M1e1', 'Mx1', 'M10x-1', 'M١٠'])(
    '%s is no thread of this table',
    (written) => expect(metricThread(written)).toBeUndefined(),
  );
  it.each(['6', 'g', '6k', '6g6H', '6H6g', '10g', '2g', '9H', '3H', '5g', '6g5g', '', '6G6', 'Hg'])('class %s is refused', (cls) =>
    expect(metricThread('M10', cls)).toBeUndefined(),
  );
  it('a class behind the name is read, one beside it rules', () => {
    expect(metricThread('M10-6H')?.cls).toBe('6H');
    expect(metricThread('M10-6H', '6g')?.cls).toBe('6g');
    expect(metricThread('M10')?.cls).toBe('6g');
  });
  it('grade 6 of so fine an inside pitch is blank in the standard', () => expect(metricThread('M1.6x0.2', '6H')).toBeUndefined());
  it('left hand is kept', () => expect([found('M10 LH', '6g').hand, found('M10', '6g').hand]).toEqual(['left', 'right']));
});

describe('of every listed thread', () => {
  const both = metricNames.flatMap((name) => {
    const [bolt, nut] = [metricThread(name, '6g'), metricThread(name, '6H')];
    return bolt && nut ? [{ name, bolt, nut }] : [];
  });
  const rising = (...values: readonly Len[]): boolean => values.every((v, i) => i === 0 || v > (values[i - 1] ?? v));
  it('there are two classes, but of pitches under 0.3', () => {
    const missing = metricNames.filter((name) => !both.some((b) => b.name === name));
    expect(missing).toEqual(['M1.6x0.2', 'M1.8x0.2', 'M2x0.25', 'M2.2x0.25']);
    expect(both.length).toBe(metricNames.length - missing.length);
  });
  it.each(both)('$name: minor under pitch under major; the bolt inside the nut', ({ bolt, nut }) => {
    expect(rising(bolt.root, bolt.minor.hi, bolt.pitchDiameter.lo, bolt.pitchDiameter.hi, bolt.major.lo, bolt.major.hi)).toBe(true);
    expect(rising(nut.minor.lo, nut.minor.hi, nut.pitchDiameter.lo, nut.pitchDiameter.hi, nut.major.lo, nut.major.hi)).toBe(true);
    expect(bolt.pitchDiameter.hi).toBeLessThanOrEqual(nut.pitchDiameter.lo);
    expect(bolt.major.hi).toBeLessThanOrEqual(nut.major.lo);
    expect(bolt.minor.hi).toBeLessThan(nut.minor.lo);
  });
  it('a finer grade has a narrower band', () => {
    const grades = ['4g6g', '5g6g', '6g', '7g6g'];
    const threads = both.filter(({ bolt }) => bolt.pitch >= mm(0.5) && bolt.standing === 'standard').map(({ name }) => name);
    fc.assert(
      fc.property(fc.constantFrom(...threads), (name) => {
        const bands = grades.map((cls) => found(name, cls).pitchDiameter).map(({ lo, hi }) => hi - lo);
        expect(bands).toEqual([...bands].sort((a, b) => a - b));
        expect(new Set(bands).size).toBe(bands.length);
      }),
      { numRuns: 50 },
    );
  });
});

describe('tables are tables', () => {
  const strictly = (values: readonly number[]): boolean => values.every((v, i) => i === 0 || v > (values[i - 1] ?? v));
  it('diameters rise and none stands twice; pitches fall and are finer than coarse', () => {
    expect(strictly(metricSizes.map((s) => s.diameter))).toBe(true);
    for (const { coarse = Number.POSITIVE_INFINITY, fine, trade } of metricSizes) {
      expect(strictly([coarse, ...fine, ...trade].toReversed())).toBe(true);
    }
    expect(new Set(metricNames).size).toBe(metricNames.length);
  });
  it('pitches of the deviations and the crests are the same, and rise', () => {
    expect(deviations.map((r) => r.pitch)).toEqual(crests.map((r) => r.pitch));
    expect(strictly(deviations.map((r) => r.pitch))).toBe(true);
  });
  it('deviations never shrink with the pitch; e is farther than f, f than g', () => {
    for (const side of ['e', 'f', 'g'] as const) {
      const column = deviations.map((r) => -r[side]).filter((v) => !Number.isNaN(v));
      expect(column).toEqual([...column].sort((a, b) => a - b));
    }
    for (const { e, f, g } of deviations.filter((r) => !Number.isNaN(r.e))) expect(e < f && f < g).toBe(true);
    expect(deviations.map((r) => r.G)).toEqual(deviations.map((r) => -r.g));
  });
  it.each([...crests, ...pitches])('tolerances grow with the grade (pitch $pitch)', ({ outside, inside }) => {
    for (const column of [outside, inside]) {
      expect(strictly(Object.values(column).filter((v) => !Number.isNaN(v)))).toBe(true);
    }
  });
  it('tolerances of the pitch diameter never shrink with the pitch or the range', () => {
    for (const row of pitches) {
      for (const other of pitches.filter((r) => r.over >= row.over && r.pitch >= row.pitch && r !== row)) {
        expect(Number(other.outside[6])).toBeGreaterThanOrEqual(Number(row.outside[6]));
      }
    }
  });
});
