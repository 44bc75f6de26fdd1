/** Torque on a hand tap by a tap maker's formula, and how long its lead is. mm, N/mm2, N m. */
import { type FactTable, factTable, type Standing } from './fact.ts';
import type { CuttingGroup } from './materials.ts';

export type TapAsk = {
  readonly diameter: number;
  /** Hole bored for it. */
  readonly hole: number;
  /** Included angle of the thread, degrees. */
  readonly angle: number;
  /** Specific cutting force at the thin chips of a tap. */
  readonly kc: number;
  /** By kind of tap and work. */
  readonly coefficient: number;
};

/** tan(half angle) kc K (D − d)² (D + 2 d) / 24000. */
export function cuttingTapTorque({ diameter, hole, angle, kc, coefficient }: TapAsk): number {
  const slope = Math.tan((angle * Math.PI) / 360);
  return (slope * kc * coefficient * (diameter - hole) ** 2 * (diameter + 2 * hole)) / 24_000;
}

/** kc and K for a plug tap with straight flutes; `fine` for a fine pitch. */
export function tapFigures(group: CuttingGroup, series: 'coarse' | 'fine'): { readonly kc: number; readonly coefficient: number } {
  const [work, kind] = LIKE[group];
  return { kc: tapping.value(`tap.kc.${work}`), coefficient: tapping.value(`tap.k.${kind}.${series}`) };
}

/** Work of the table that a group is taken for. Bronze and gunmetal are not in it: bronze is taken for mild steel, gunmetal for brass. */
const LIKE: Readonly<Record<CuttingGroup, readonly [work: string, kind: string]>> = {
  brass: ['brass', 'brass'],
  gunmetal: ['brass', 'brass'],
  bronze: ['mild', 'steel'],
  copper: ['mild', 'steel'],
  'mild steel': ['mild', 'steel'],
  'silver steel': ['tool', 'steel'],
  303: ['stainless', 'steel'],
  316: ['stainless', 'steel'],
  aluminium: ['aluminium', 'iron'],
};

const MAKER = 'Yamawa, general catalogue 2016-17, p. 781: tapping torque';
type Row = readonly [id: string, value: number, unit: string, what: string, source?: string, standing?: Standing];
const ROWS: readonly Row[] = [
  ['tap.kc.mild', 3700, 'N/mm2', 'cutting force of a tap in St 44-2, 133 HB'],
  ['tap.kc.tool', 5300, 'N/mm2', 'cutting force of a tap in C105W2, 175 HB'],
  ['tap.kc.stainless', 4200, 'N/mm2', 'cutting force of a tap in X6CrNi18-10, 209 HB'],
  ['tap.kc.brass', 2300, 'N/mm2', 'cutting force of a tap in CuZn40'],
  ['tap.kc.aluminium', 1300, 'N/mm2', 'cutting force of a tap in AlSi8Cu3'],
  ['tap.k.steel.coarse', 1.35, 'ratio', 'plug hand tap in steel, coarse pitch'],
  ['tap.k.steel.fine', 1.15, 'ratio', 'plug hand tap in steel, fine pitch'],
  ['tap.k.iron.coarse', 1.25, 'ratio', 'plug hand tap in cast iron and aluminium, coarse pitch'],
  ['tap.k.iron.fine', 1.08, 'ratio', 'plug hand tap in cast iron and aluminium, fine pitch'],
  ['tap.k.brass.coarse', 1.6, 'ratio', 'plug hand tap in brass, coarse pitch'],
  ['tap.k.brass.fine', 1.12, 'ratio', 'plug hand tap in brass, fine pitch'],
  ['tap.lead.taper', 10, 'ratio', 'lead of a taper tap, in pitches, at most (7 to 10)', 'Grove Components, tap terminology, groveco.co.uk'],
  ['tap.lead.second', 5, 'ratio', 'lead of a second tap, in pitches, at most (3 to 5)', 'Grove Components, tap terminology, groveco.co.uk'],
  [
    'tap.lead.bottom',
    2,
    'ratio',
    'lead of a bottoming tap, in pitches, at most (1 to 2)',
    'Grove Components, tap terminology, groveco.co.uk',
  ],
];

export const tapping: FactTable = factTable(
  ROWS.map(([id, value, unit, what, source = MAKER, standing = 'common practice']) => ({ id, value, unit, what, source, standing })),
);

export const tappingRelations = [
  { id: 'cutting-tap', formula: 'M = tan(α/2) kc K (D − d)² (D + 2 d) / 24000', unit: 'N m', source: MAKER, standing: 'common practice' },
] as const;
