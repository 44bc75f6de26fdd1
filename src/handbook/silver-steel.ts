/** Silver steel (115CrV3, BS 1407): how it is hardened and tempered, and the figures of a D-bit made of it. */
import { type Len, mm, toMm } from '../base/units.ts';
import { type FactTable, factTable } from './fact.ts';
import { cite } from './sources.ts';

export type Quench = { readonly medium: 'water' | 'oil'; readonly from: number; readonly to: number };

/** Oil is gentler and does for thin rod only. Degrees Celsius. */
export function quench(diameter: Len, wish: Quench['medium']): Quench {
  const oil = wish === 'oil' && toMm(diameter) <= silverSteel.value('oil.most');
  const medium = oil ? 'oil' : 'water';
  return { medium, from: silverSteel.value(`${medium}.from`), to: silverSteel.value(`${medium}.to`) };
}

/** Minutes at heat: five for each quarter inch of thickness. */
export function soakMinutes(diameter: Len): number {
  return (toMm(diameter) / INCH_QUARTER) * silverSteel.value('soak.quarter-inch');
}

/** The colour whose temperature is nearest, of equals the cooler: a words' id. */
export function temperColour(celsius: number): string {
  const near = [...COLOURS].sort((a, b) => Math.abs(a[1] - celsius) - Math.abs(b[1] - celsius) || a[1] - b[1])[0];
  if (!near) throw new Error('no temper colours');
  return near[0];
}

/** Flat to back of a D-bit: half the diameter and up to a little over, never under (it would cut under size). */
export function dBitThickness(diameter: Len): { readonly lo: Len; readonly hi: Len } {
  const half = toMm(diameter) / 2;
  return { lo: mm(half), hi: mm(half + silverSteel.value('d-bit.over-half')) };
}

/** Temper colours, °C (glue-it). */
export const COLOURS: readonly (readonly [id: string, celsius: number])[] = [
  ['pale-yellow', 221],
  ['straw', 230],
  ['golden-yellow', 243],
  ['brown', 254],
  ['brown-purple', 266],
  ['purple', 277],
  ['bright-blue', 288],
  ['blue', 293],
  ['dark-blue', 316],
];
const INCH_QUARTER = 6.35;

export const silverSteel: FactTable = factTable([
  {
    id: 'water.from',
    value: 770,
    unit: 'degC',
    what: 'hardening heat, quenched in water, from',
    source: cite('glue-it'),
    standing: 'common practice',
  },
  {
    id: 'water.to',
    value: 780,
    unit: 'degC',
    what: 'hardening heat, quenched in water, to',
    source: cite('glue-it'),
    standing: 'common practice',
  },
  {
    id: 'oil.from',
    value: 800,
    unit: 'degC',
    what: 'hardening heat, quenched in oil, from',
    source: cite('glue-it'),
    standing: 'common practice',
  },
  {
    id: 'oil.to',
    value: 810,
    unit: 'degC',
    what: 'hardening heat, quenched in oil, to',
    source: cite('glue-it'),
    standing: 'common practice',
  },
  {
    id: 'oil.most',
    value: 8,
    unit: 'mm',
    what: 'thickest rod that oil hardens through; one of 30 mm stayed soft',
    source: cite('glue-it', cite('schmitz')),
    standing: 'common practice',
  },
  {
    id: 'soak.quarter-inch',
    value: 5,
    unit: 'min',
    what: 'soak for each quarter inch',
    source: cite('stubmandrel'),
    standing: 'common practice',
  },
  {
    id: 'd-bit.temper.from',
    value: 220,
    unit: 'degC',
    what: 'temper of a D-bit, from (light straw)',
    source: cite('collins'),
    standing: 'common practice',
  },
  { id: 'd-bit.temper.to', value: 230, unit: 'degC', what: 'temper of a D-bit, to', source: cite('collins'), standing: 'common practice' },
  {
    id: 'd-bit.over-half',
    value: 0.025,
    unit: 'mm',
    what: 'flat to back over half the diameter (0.001 in); less cuts under size. Another source says just under half',
    source: cite('collins'),
    standing: 'common practice',
  },
  {
    id: 'd-bit.neck',
    value: 0.38,
    unit: 'mm',
    what: 'neck of a D-bit under its size, on diameter (0.015 in)',
    source: cite('collins'),
    standing: 'common practice',
  },
  {
    id: 'hrc.quenched',
    value: 65,
    unit: 'HRC',
    what: 'hardness as quenched (64 to 66)',
    source: cite('steel-data'),
    standing: 'from memory',
  },
  {
    id: 'hrc.200',
    value: 61,
    unit: 'HRC',
    what: 'hardness tempered at 200 °C (61 to 62)',
    source: cite('steel-data'),
    standing: 'from memory',
  },
  {
    id: 'hrc.300',
    value: 56,
    unit: 'HRC',
    what: 'hardness tempered at 300 °C (56 to 57)',
    source: cite('steel-data'),
    standing: 'from memory',
  },
]);
