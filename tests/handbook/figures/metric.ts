/** Metric threads: limits, heights, holes, wires. */
import { inch, mm, toMm } from '../../../src/base/units.ts';
import { insideUndercut, runOut, undercut } from '../../../src/handbook/din76-runout.ts';
import { basicThread, metricThread } from '../../../src/handbook/iso965-metric.ts';
import { engagement, profileDepth, usualTappingDrill } from '../../../src/handbook/metric-tapping.ts';
import { thread } from '../../../src/handbook/threads.ts';
import { bestWire, overWires, wireFactors } from '../../../src/handbook/wires.ts';
import { type Figure, figures, type Given, there } from './figure.ts';

type Part = 'major' | 'pitchDiameter' | 'minor';
const limit = (name: string, cls: string, part: Part, end: 'lo' | 'hi') => (): number =>
  toMm(there(metricThread(name, cls), `${name} ${cls}`)[part][end]);
const row = (name: string, cls: string, part: Part, end: 'lo' | 'hi', printed: number): Given => [
  `${name} ${cls} ${part} ${end}`,
  limit(name, cls, part, end),
  printed,
];

const LIMITS: readonly Given[] = [
  row('M3', '6g', 'major', 'hi', 2.98),
  row('M3', '6g', 'major', 'lo', 2.874),
  row('M3', '6g', 'pitchDiameter', 'hi', 2.655),
  row('M3', '6g', 'pitchDiameter', 'lo', 2.58),
  row('M5', '6H', 'minor', 'lo', 4.134),
  row('M5', '6H', 'minor', 'hi', 4.334),
  row('M5', '6H', 'pitchDiameter', 'lo', 4.48),
  row('M8', '6H', 'pitchDiameter', 'hi', 7.348),
  row('M8x1', '6g', 'major', 'hi', 7.974),
  row('M8x1', '6g', 'major', 'lo', 7.794),
  row('M8x1', '6g', 'pitchDiameter', 'hi', 7.324),
  row('M8x1', '6g', 'pitchDiameter', 'lo', 7.212),
  row('M10', '6g', 'major', 'lo', 9.732),
  row('M10', '6g', 'pitchDiameter', 'hi', 8.994),
  row('M10', '6g', 'pitchDiameter', 'lo', 8.862),
  row('M10x1', '6H', 'minor', 'hi', 9.153),
  row('M12x1.5', '6g', 'pitchDiameter', 'hi', 10.994),
  row('M12x1.5', '6g', 'pitchDiameter', 'lo', 10.854),
  row('M12x1.5', '6H', 'minor', 'hi', 10.676),
  row('M12x1.5', '6H', 'pitchDiameter', 'hi', 11.216),
];
const EXAMPLES: readonly Given[] = [
  row('M27x1.5', '4e6g', 'major', 'hi', 26.968),
  row('M27x1.5', '4e6g', 'major', 'lo', 26.732),
  row('M27x1.5', '4e6g', 'pitchDiameter', 'hi', 25.959),
  row('M27x1.5', '4e6g', 'pitchDiameter', 'lo', 25.864),
  row('M27x1.5', '6H', 'pitchDiameter', 'lo', 26.026),
  row('M27x1.5', '6H', 'pitchDiameter', 'hi', 26.226),
  row('M27x1.5', '6H', 'minor', 'lo', 25.376),
  row('M29x1.25', '4g6h', 'pitchDiameter', 'hi', 28.16),
];

const share = (name: string, drill: number) => () => engagement(there(thread(name), name).thread, mm(drill), '5/8 H');
const wire = (angle: number, of: 'wire' | 'pitch' | 'best') => () => wireFactors(angle)[of];
const perInch = (angle: number, tpi: number) => () => wireFactors(angle).pitch / tpi;

export const metricFigures: readonly Figure[] = [
  ...figures('ISO 965-2 / ASME B1.13M limits, mastik.pt pp. 711-712, threadlib', 0.0005, LIMITS),
  ...figures('FED-STD-H28/21B (1984), 5.1.3', 0.0006, EXAMPLES),
  ...figures('ISO 724', 0.0005, [['M6 pitch diameter', () => toMm(basicThread(6, 1).pitchDiameter), 5.35]]),
  ...figures('ISCAR, Reamers and taps 2022, p. 56', 0.001, [
    ['M10x1.5 h3', () => toMm(profileDepth(mm(1.5)).outside), 0.92],
    ['M10x1.5 H1', () => toMm(profileDepth(mm(1.5)).inside), 0.812],
    ['M10x1.5 d2', () => toMm(basicThread(10, 1.5).pitchDiameter), 9.026],
    ['M10x1.5 d3', () => toMm(basicThread(10, 1.5).root), 8.16],
    ['M10x1.5 D1', () => toMm(basicThread(10, 1.5).minor), 8.376],
  ]),
  ...figures('ISO 68-1: 100 (D − h) / 1.082532 P', 0.05, [['M6 with 5.0, share of 5/8 H', share('M6', 5), 92.4]]),
  ...figures('ISO 2306, list of anzugsmoment.de', 0.0001, [
    ['M8 drill', () => toMm(there(usualTappingDrill('M8'), 'M8')), 6.8],
    ['M5 drill', () => toMm(there(usualTappingDrill('M5'), 'M5')), 4.2],
    ['M10x1 drill', () => toMm(there(usualTappingDrill('M10x1'), 'M10x1')), 9],
    ['M12x1.5 drill', () => toMm(there(usualTappingDrill('M12x1.5'), 'M12x1.5')), 10.5],
  ]),
  ...figures("Machinery's Handbook 31 p. 2129", 0.000011, [
    ['0.866025 P, 18 an inch', perInch(60, 18), 0.04811],
    ['0.866025 P, 20 an inch', perInch(60, 20), 0.0433],
    ['0.866025 P, 26 an inch', perInch(60, 26), 0.03331],
    ['0.866025 P, 28 an inch', perInch(60, 28), 0.03093],
    ['0.866025 P, 32 an inch', perInch(60, 32), 0.02706],
    ['0.866025 P, 40 an inch', perInch(60, 40), 0.02165],
    ['0.9605 P, 18 an inch', perInch(55, 18), 0.05336],
    ['0.9605 P, 20 an inch', perInch(55, 20), 0.04803],
    ['0.9605 P, 26 an inch', perInch(55, 26), 0.03694],
    ['0.9605 P, 32 an inch', perInch(55, 32), 0.03002],
    ['0.9605 P, 40 an inch', perInch(55, 40), 0.02401],
  ]),
  ...figures('Thread Check, catalogue p. 130', 0.00006, [
    ['55 degrees, wires', wire(55, 'wire'), 3.16568],
    ['47.5 degrees, wires', wire(47.5, 'wire'), 3.4829],
    ['47.5 degrees, best wire', wire(47.5, 'best'), 0.54626],
    ['47.5 degrees, pitch', wire(47.5, 'pitch'), 1.13634],
    ['55 degrees, best wire', wire(55, 'best'), 0.563692],
  ]),
  ...figures('US Army OD1645', 0.0005, [['best wire of 8 an inch, in', () => bestWire(inch(1 / 8), 60) / inch(1), 0.072]]),
  ...figures('formula of US Army OD1645', 0.00005, [
    ['1/2 in 12, best wire', () => overWires(inch(0.44587), inch(1 / 12), inch(0.04811), 60) / inch(1), 0.518],
  ]),
  ...figures('F. D. Jones, Turning and Boring, ch. 88', 0.00006, [
    ['1 1/2 in 6 over wires of 0.140', () => overWires(inch(1.39175), inch(1 / 6), inch(0.14), 60) / inch(1), 1.6674],
  ]),
  ...figures('neme-s.org', 0.0005, [
    ['7/16 in 14 over wires of 0.045', () => overWires(inch(0.39111), inch(1 / 14), inch(0.045), 60) / inch(1), 0.464],
  ]),
  ...figures('DIN 76-1, offsets of the undercut as seen for eight pitches', 0.0001, [
    ...(
      [
        [0.5, 0.8],
        [0.7, 1.1],
        [0.8, 1.3],
        [1, 1.6],
        [1.25, 2],
        [1.5, 2.3],
        [1.75, 2.6],
        [2, 3],
      ] as const
    ).map(([p, offset]): Given => [`pitch ${p}`, () => toMm(there(undercut(mm(p), 'normal'), `pitch ${p}`).offset), offset]),
  ]),
  ...figures('DIN 76 part 1:1983, row of pitch 0.6', 0.0001, [
    ['form A, whole width', () => toMm(there(undercut(mm(0.6), 'normal'), '0.6').most), 2.1],
    ['form B, whole width', () => toMm(there(undercut(mm(0.6), 'short'), '0.6').most), 1.5],
    ['inside, offset', () => toMm(there(insideUndercut(mm(0.6), 'normal'), '0.6').offset), 0.3],
    ['form D, whole width', () => toMm(there(insideUndercut(mm(0.6), 'short'), '0.6').most), 2.4],
  ]),
  ...figures('DIN 76-1 (from memory)', 0.0001, [
    ['pitch 1, run-out', () => toMm(there(runOut(mm(1), 'normal'), '1').thread), 2.5],
    ['pitch 1, full width', () => toMm(there(undercut(mm(1), 'normal'), '1').least), 2.1],
    ['pitch 1, whole width', () => toMm(there(undercut(mm(1), 'normal'), '1').most), 3.5],
    ['pitch 1, radius', () => toMm(there(there(undercut(mm(1), 'normal'), '1').radius, 'radius')), 0.6],
  ]),
];
