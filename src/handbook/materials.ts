/**
 * What parts and tools are made of: names as people write them, what is in it, how heavy, how strong, what to mind. Figures without a
 * page are marked from memory. A name that is not known gives nothing; `nearestMaterial` says what may have been meant.
 */
import { nearest, nearestFew } from '../base/nearest.ts';
import { type FactTable, factTable, type Standing } from './fact.ts';
import { type CuttingGroup, MATERIAL_ROWS, type MaterialKind, type MaterialRow, type StrengthRow } from './materials-table.ts';
import { cite } from './sources.ts';

export type { CuttingGroup, MaterialKind } from './materials-table.ts';
export type Share = { readonly lo: number; readonly hi: number };
export type Strength = {
  readonly condition: string;
  /** MPa; least of the figures found. */
  readonly tensile: number;
  readonly proof: number;
  readonly source: string;
  readonly standing: Standing;
};
export type Material = {
  readonly id: string;
  readonly aliases: readonly string[];
  readonly kind: MaterialKind;
  readonly cutting: CuttingGroup;
  /** kg/m3 */
  readonly density: number;
  /** GPa */
  readonly modulus: number;
  /** Percent by mass. */
  readonly zincPercent: Share;
  readonly leadPercent: Share;
  /** Enough lead to ask for washed hands. */
  readonly lead: boolean;
  /** Enough zinc to lose it in hot water: over the fifteen parts in a hundred that is commonly printed. */
  readonly losesZinc: boolean;
  readonly strength: readonly Strength[];
  /** After silver soldering, MPa; absent where none was found. */
  readonly annealed?: Strength;
  /** Free-cutting brass is 100; absent where no figure is known. */
  readonly machinability?: { readonly value: number; readonly source: string; readonly standing: Standing };
  /** Words' ids. */
  readonly cautions: readonly string[];
  /** Of the composition. */
  readonly source: string;
  readonly standing: Standing;
  /** Of density and modulus. */
  readonly physical: { readonly source: string; readonly standing: Standing };
};

/** The yardstick of the scale of machinability. It stands above the rows, which are made as the file is read. */
const FREE_CUTTING = 100;

/** By any of its names: case, spaces and hyphens count for nothing. */
export function findMaterial(name: string): Material | undefined {
  return BY_NAME.get(plain(name));
}

/** What may have been meant by a name that is not known. */
export function nearestMaterial(name: string): string | undefined {
  return nearest(
    name,
    materials.flatMap((m) => [m.id, ...m.aliases]),
  );
}

/** The few names that are nearest, of as many materials. */
export function nearestMaterials(name: string): readonly string[] {
  const names = materials.flatMap((m) => [m.id, ...m.aliases]);
  const near = nearestFew(name, names, names.length).flatMap((n) => findMaterial(n)?.id ?? []);
  return [...new Set(near)].slice(0, 3);
}

export const materialLimits: FactTable = factTable([
  {
    id: 'zinc.most',
    value: 15,
    unit: 'percent',
    what: 'zinc over which a wetted part is warned of; guidance, not law',
    source: cite('dezincification'),
    standing: 'common practice',
  },
  {
    id: 'lead.least',
    value: 0.1,
    unit: 'percent',
    what: 'lead from which hands are to be washed',
    source: cite('alloy-data'),
    standing: 'from memory',
  },
]);

export const materials: readonly Material[] = MATERIAL_ROWS.map(toMaterial);

const BY_NAME: ReadonlyMap<string, Material> = new Map(
  materials.flatMap((m) => [m.id, ...m.aliases].map((name) => [plain(name), m] as const)),
);

function toMaterial({ zinc, lead, strength, annealed, machinability, source, ...row }: MaterialRow): Material {
  return {
    ...row,
    zincPercent: { lo: zinc[0], hi: zinc[1] },
    leadPercent: { lo: lead[0], hi: lead[1] },
    // what is put in, not what may be left in
    lead: lead[0] > materialLimits.value('lead.least'),
    losesZinc: zinc[1] > materialLimits.value('zinc.most'),
    strength: strength.map(toStrength),
    ...(annealed === undefined ? {} : { annealed: toStrength(annealed) }),
    ...(machinability === undefined ? {} : { machinability: toMachinability(machinability) }),
    source: cite(source),
    physical:
      row.kind === 'brass'
        ? { source: cite('durbin'), standing: 'common practice' }
        : { source: cite('alloy-data'), standing: 'from memory' },
  };
}

function toStrength([condition, tensile, proof, source, standing]: StrengthRow): Strength {
  return { condition, tensile, proof, source: cite(source), standing };
}

function toMachinability(value: number): NonNullable<Material['machinability']> {
  return value === FREE_CUTTING
    ? { value, source: cite('c36000', 'the yardstick of the scale'), standing: 'common practice' }
    : { value, source: cite('alloy-data'), standing: 'from memory' };
}

function plain(name: string): string {
  return name.toLowerCase().replace(/[\s-]+/g, '');
}
