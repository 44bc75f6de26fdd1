/**
 * Safety signs of ISO 7010 that the cautions of a sheet carry: number, meaning, source. Shapes and colours are those of ISO 3864-1 (warning:
 * yellow triangle with a black border; mandatory: blue disc with a white picture; prohibition: red ring with a bar). The pictures are our own.
 */
import type { Standing } from './fact.ts';
import { cite } from './sources.ts';

export type SignId = 'W001' | 'W017' | 'W023' | 'M004' | 'M011' | 'M013' | 'P028';
export type Sign = { readonly id: SignId; readonly means: string; readonly source: string; readonly standing: Standing };

const LIST = cite('iso-7010');
export const signs: readonly Sign[] = [
  { id: 'W001', means: 'general warning sign', source: LIST, standing: 'standard' },
  { id: 'W017', means: 'hot surface', source: LIST, standing: 'standard' },
  { id: 'W023', means: 'corrosive substance', source: LIST, standing: 'standard' },
  { id: 'M004', means: 'wear eye protection', source: LIST, standing: 'standard' },
  { id: 'M011', means: 'wash your hands', source: LIST, standing: 'standard' },
  { id: 'M013', means: 'wear a face shield', source: LIST, standing: 'standard' },
  { id: 'P028', means: 'do not wear gloves', source: cite('iso-7010-rest'), standing: 'from memory' },
];

/** Which caution carries which: by what its sentence warns of or asks for. A caution that warns of no hazard to a body carries none. */
const CARRIED: Readonly<Record<string, readonly SignId[]>> = {
  'caution.lathe': ['M004', 'P028'],
  'caution.bar': ['W001'],
  'caution.parting': ['W001'],
  'caution.slender': ['W001'],
  'caution.soldering': ['W017', 'W023'],
  'caution.annealed': [],
  'caution.hardening': ['W017', 'M013'],
  'caution.lead': ['M011'],
  'caution.pressure': ['W001', 'W017'],
  'caution.pressure-joint': ['W001'],
  'caution.pressure-stop': ['W001', 'W017'],
  'caution.closed-end': ['W001'],
  'caution.gland': ['W001', 'W017'],
  'caution.inspector': [],
};
/** Where that choice comes from. */
export const SIGNS_CHOSEN = { source: 'rule of this project', standing: 'common practice' } as const;
/** Cautions that the choice was made for. */
export const signedCautions: readonly string[] = Object.keys(CARRIED);

/** None for a caution that nothing was chosen for. */
export function signsOf(caution: string): readonly SignId[] {
  return CARRIED[caution] ?? [];
}
