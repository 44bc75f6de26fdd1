/**
 * The materials, a record each. Percent by mass (lowest, highest); kg/m3; GPa; MPa. `source` and `standing` are those of the composition;
 * densities and moduli are from memory but for brass (8.47 g/cm3, Durbin Metals; 14 000 ksi, a data sheet of C36000).
 */
import type { Standing } from './fact.ts';
import type { SourceId } from './sources.ts';

export type MaterialKind = 'bronze' | 'gunmetal' | 'brass' | 'copper' | 'stainless' | 'tool steel' | 'free-cutting steel' | 'aluminium';
/** Materials that are cut alike share a row of speeds. */
export type CuttingGroup = 'brass' | 'gunmetal' | 'bronze' | 'copper' | '303' | '316' | 'silver steel' | 'mild steel' | 'aluminium';
export type StrengthRow = readonly [condition: string, tensile: number, proof: number, source: SourceId, standing: Standing];
export type MaterialRow = {
  readonly id: string;
  readonly aliases: readonly string[];
  readonly kind: MaterialKind;
  readonly cutting: CuttingGroup;
  readonly density: number;
  readonly modulus: number;
  readonly zinc: readonly [lo: number, hi: number];
  readonly lead: readonly [lo: number, hi: number];
  readonly strength: readonly StrengthRow[];
  readonly annealed?: StrengthRow;
  /** Free-cutting brass is 100. */
  readonly machinability?: number;
  readonly cautions: readonly string[];
  /** Of the composition. */
  readonly source: SourceId;
  readonly standing: Standing;
};

const NONE = [0, 0] as const;
export const MATERIAL_ROWS: readonly MaterialRow[] = [
  {
    id: 'PB102',
    aliases: ['CW451K', 'CuSn5', 'C51000', 'phosphor bronze', 'drawn phosphor bronze'],
    kind: 'bronze',
    cutting: 'bronze',
    density: 8850,
    modulus: 110,
    zinc: [0, 0.2],
    lead: [0, 0.02],
    strength: [['drawn 18-40 mm', 460, 380, 'john-hood', 'common practice']],
    annealed: ['annealed', 325, 140, 'alloy-data', 'from memory'],
    machinability: 20,
    cautions: ['drill-grabs', 'tough'],
    source: 'john-hood',
    standing: 'common practice',
  },
  {
    id: 'PB1',
    aliases: ['CC481K', 'CuSn11P', 'cast phosphor bronze'],
    kind: 'bronze',
    cutting: 'bronze',
    density: 8800,
    modulus: 105,
    zinc: [0, 0.05],
    lead: [0, 0.25],
    strength: [['cast', 250, 130, 'alloy-data', 'from memory']],
    cautions: ['drill-grabs', 'tough'],
    source: 'alloy-data',
    standing: 'from memory',
  },
  {
    id: 'LG2',
    aliases: ['CC491K', 'CuSn5Zn5Pb5', 'C83600', 'gunmetal', 'leaded gunmetal', 'red brass'],
    kind: 'gunmetal',
    cutting: 'gunmetal',
    density: 8800,
    modulus: 95,
    zinc: [4, 6],
    lead: [4, 6],
    strength: [
      ['sand cast', 200, 90, 'kemper', 'common practice'],
      ['continuously cast', 250, 110, 'kemper', 'common practice'],
    ],
    annealed: ['sand cast: heat changes it little', 200, 90, 'kemper', 'common practice'],
    machinability: 84,
    cautions: ['drill-grabs', 'lead', 'skin-abrasive'],
    source: 'kemper',
    standing: 'common practice',
  },
  {
    id: 'CW614N',
    aliases: ['CZ121', 'CuZn39Pb3', 'brass', 'free-cutting brass', 'leaded brass'],
    kind: 'brass',
    cutting: 'brass',
    density: 8470,
    modulus: 97,
    zinc: [37, 41],
    lead: [2.5, 3.5],
    strength: [['drawn', 360, 150, 'alloy-data', 'from memory']],
    machinability: 100,
    cautions: ['drill-grabs', 'lead', 'loses-zinc'],
    source: 'durbin',
    standing: 'common practice',
  },
  {
    id: 'C101',
    aliases: ['C110', 'CW004A', 'CW024A', 'C106', 'copper'],
    kind: 'copper',
    cutting: 'copper',
    density: 8930,
    modulus: 117,
    zinc: NONE,
    lead: NONE,
    strength: [['annealed', 200, 55, 'alloy-data', 'from memory']],
    annealed: ['annealed', 200, 55, 'alloy-data', 'from memory'],
    machinability: 20,
    cautions: ['drill-grabs', 'stringy'],
    source: 'alloy-data',
    standing: 'from memory',
  },
  {
    id: '303',
    aliases: ['AISI 303', '1.4305', '303S31', 'stainless 303', 'X8CrNiS18-9'],
    kind: 'stainless',
    cutting: '303',
    density: 7900,
    modulus: 195,
    zinc: NONE,
    lead: NONE,
    strength: [['annealed', 500, 190, 'alloy-data', 'from memory']],
    cautions: ['galls', 'pits', 'not-for-pressure'],
    source: 'alloy-data',
    standing: 'from memory',
  },
  {
    id: '304',
    aliases: ['AISI 304', '1.4301', '304S15', 'stainless 304', 'X5CrNi18-10'],
    kind: 'stainless',
    cutting: '316',
    density: 7900,
    modulus: 195,
    zinc: NONE,
    lead: NONE,
    strength: [['bar', 515, 205, 'alloy-data', 'from memory']],
    cautions: ['galls', 'work-hardens'],
    source: 'alloy-data',
    standing: 'from memory',
  },
  {
    id: '316',
    aliases: ['AISI 316', '1.4401', '316S31', 'stainless 316', 'stainless', 'X5CrNiMo17-12-2'],
    kind: 'stainless',
    cutting: '316',
    density: 7950,
    modulus: 195,
    zinc: NONE,
    lead: NONE,
    strength: [['bar', 515, 205, 'alloy-data', 'from memory']],
    cautions: ['galls', 'work-hardens'],
    source: 'alloy-data',
    standing: 'from memory',
  },
  {
    id: 'silver steel',
    aliases: ['115CrV3', '1.2210', 'BS 1407'],
    kind: 'tool steel',
    cutting: 'silver steel',
    density: 7850,
    modulus: 206,
    zinc: NONE,
    lead: NONE,
    strength: [],
    cautions: ['rusts', 'quench'],
    source: 'alloy-data',
    standing: 'from memory',
  },
  {
    id: '230M07',
    aliases: ['EN1A', '11SMn30', '1.0715', 'free-cutting steel', 'mild steel', 'FCMS'],
    kind: 'free-cutting steel',
    cutting: 'mild steel',
    density: 7850,
    modulus: 206,
    zinc: NONE,
    lead: NONE,
    strength: [['drawn', 400, 250, 'alloy-data', 'from memory']],
    cautions: ['rusts'],
    source: 'alloy-data',
    standing: 'from memory',
  },
  {
    id: '230M07 leaded',
    aliases: ['EN1A Pb', '11SMnPb30', '1.0718', 'leaded mild steel'],
    kind: 'free-cutting steel',
    cutting: 'mild steel',
    density: 7850,
    modulus: 206,
    zinc: NONE,
    lead: [0.2, 0.35],
    strength: [['drawn', 400, 250, 'alloy-data', 'from memory']],
    cautions: ['rusts', 'lead'],
    source: 'alloy-data',
    standing: 'from memory',
  },
  {
    id: '6082',
    aliases: ['6082-T6', 'EN AW-6082', '6061', '6061-T6', 'HE30', 'aluminium'],
    kind: 'aluminium',
    cutting: 'aluminium',
    density: 2700,
    modulus: 69,
    zinc: [0, 0.25],
    lead: NONE,
    strength: [['T6', 295, 240, 'alloy-data', 'from memory']],
    cautions: ['not-for-steam'],
    source: 'alloy-data',
    standing: 'from memory',
  },
];
