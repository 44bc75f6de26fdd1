/** Leak rates, overlaps of soldered joints, squares: as printed. */
import { mm, toMm } from '../../../src/base/units.ts';
import { leakAt, leakFacts, leakOfCheck } from '../../../src/handbook/leak-rates.ts';
import { practice } from '../../../src/handbook/practice.ts';
import { squareOn, wheelSquare } from '../../../src/handbook/squares.ts';
import type { Figure } from './figure.ts';

const ISO_5208 = 'ISO 5208, liquid, mm3/s for each mm of DN (valvespecifications.com)';
const API_598 = 'API 598, metal-seated check valve (piping-world.com): 6 cm3/min at NPS 2';
const DIN_79 = 'DIN 79:2004';

const row = (what: string, printed: number, within: number, source: string, got: () => number): Figure => ({
  what,
  printed,
  within,
  source,
  got,
});

export const jointFigures: readonly Figure[] = [
  ...(
    [
      ['AA', 0.006],
      ['B', 0.01],
      ['C', 0.03],
      ['CC', 0.08],
      ['D', 0.1],
      ['E', 0.3],
      ['EE', 0.39],
      ['F', 1],
      ['G', 2],
    ] as const
  ).map(([rate, printed]) => row(`leak of rate ${rate}`, printed, 1e-9, ISO_5208, () => leakFacts.value(`leak.${rate}`))),
  row('rate A, visible leak', 0, 1e-9, ISO_5208, () => leakAt('A', 50)),
  row('check valve of 2 in, ml/min', 6, 1e-9, API_598, () => leakOfCheck(50.8)),
  row('check valve of 4 mm, ml/min', 0.472, 5e-4, 'derived: 3 cm3/min an inch', () => leakOfCheck(4)),
  row('rate B at 4 mm, ml/min', 0.0024, 5e-5, 'derived from ISO 5208', () => leakAt('B', 4)),
  row('rate D at 4 mm, ml/min', 0.024, 5e-5, 'derived from ISO 5208', () => leakAt('D', 4)),
  row('drops in a ml', 16, 1e-9, 'ISO 5208', () => 1 / leakFacts.value('leak.drop')),
  row('overlap of a soldered joint, of the thinner part', 3, 1e-9, 'AWS C3.1:1963 (vacaero.com)', () =>
    practice.value('solder.overlap.thin'),
  ),
  row('overlap of a tube, diameters', 1, 1e-9, 'alpha-braze.com, tubes up to 25 mm', () => practice.value('solder.overlap.tube')),
  row('square 4: least diagonal of its hole', 5.3, 1e-9, DIN_79, () => toMm(wheelSquare(mm(4))?.holeLeast ?? mm(0))),
  row('square 4: greatest diagonal of the shaft', 5, 1e-9, DIN_79, () => toMm(wheelSquare(mm(4))?.diagonal.hi ?? mm(0))),
  row('square 6: least diagonal of the shaft', 7.1, 1e-9, DIN_79, () => toMm(wheelSquare(mm(6))?.diagonal.lo ?? mm(0))),
  row('4 mm square on 5 mm: off each flat', 0.5, 1e-4, 'geometry: (D - s) / 2', () => toMm(squareOn(mm(5), mm(4)).flat)),
];
