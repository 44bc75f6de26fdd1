/**
 * Safety signs of ISO 7010 that the cautions of a sheet carry: number, meaning, source. Shapes and colours are those of ISO 3864-1 (warning:
 * yellow triangle with a black border; mandatory: blue disc with a white picture; prohibition: red ring with a bar). The pictures are our own.
 */
import type { Standing } from './fact.ts';
import { cite } from './sources.ts';

export type SignId = 'W001' | 'W017' | 'W022' | 'W023' | 'W024' | 'M004' | 'M011' | 'M013' | 'P028';
export type Sign = { readonly id: SignId; readonly means: string; readonly source: string; readonly standing: Standing };

const LIST = cite('iso-7010');
export const signs: readonly Sign[] = [
  { id: 'W001', means: 'general warning sign', source: LIST, standing: 'standard' },
  { id: 'W017', means: 'hot surface', source: LIST, standing: 'standard' },
  { id: 'W022', means: 'sharp element', source: LIST, standing: 'standard' },
  { id: 'W023', means: 'corrosive substance', source: LIST, standing: 'standard' },
  { id: 'W024', means: 'crushing of hands', source: LIST, standing: 'standard' },
  { id: 'M004', means: 'wear eye protection', source: LIST, standing: 'standard' },
  { id: 'M011', means: 'wash your hands', source: LIST, standing: 'standard' },
  { id: 'M013', means: 'wear a face shield', source: LIST, standing: 'standard' },
  { id: 'P028', means: 'do not wear gloves', source: LIST, standing: 'standard' },
];

/** Wherever the spindle turns: chips fly, and what a chuck or a drill takes hold of goes round with it. */
const SPINDLE = ['M004', 'P028'] as const;
/** What holds it may lose it. */
const FLUNG = [...SPINDLE, 'W001'] as const;
/** What stands out from the work and goes round with it meets a hand first. */
const SWUNG = [...SPINDLE, 'W024'] as const;

/** Which caution carries which: by what its sentence warns of or asks for. A caution that warns of no hazard to a body carries none. */
const CARRIED: Readonly<Record<string, readonly SignId[]>> = {
  'caution.lathe': SPINDLE,
  'caution.bar': ['W001'],
  'caution.parting': ['W022'],
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
  // at the foot of a page: its hold, what is done in it, what it is about
  'grip.bar.caution': SPINDLE,
  'grip.bar-and-centre.caution': SPINDLE,
  'grip.blank.caution': SPINDLE,
  'grip.jaws.caution': SPINDLE,
  'grip.bored-jaws.caution': SPINDLE,
  'grip.hexagon.caution': SPINDLE,
  'grip.collet.caution': SPINDLE,
  'grip.sleeve.caution': SPINDLE,
  'grip.threaded-sleeve.caution': SPINDLE,
  'grip.stub.caution': SPINDLE,
  'grip.threaded-mandrel.caution': FLUNG,
  'grip.stub-mandrel.caution': FLUNG,
  'grip.four-jaw.caution': SWUNG,
  'grip.between-centres.caution': SWUNG,
  'grip.branched.caution': ['W024'],
  'grip.vee-block.caution': FLUNG,
  'grip.and-centre.caution': [],
  'grip.and-plug.caution': [],
  'grip.and-seat.caution': ['W001'],
  'grip.bench.caution': [],
  'verb.part-off.caution': ['W022'],
  'verb.cut-stub.caution': ['W022'],
  'verb.screw-cut.caution': ['W001'],
  'verb.solder.caution': ['W017', 'W023'],
  'verb.harden.caution': ['W017', 'M013'],
  'verb.file-flats.caution': ['W022'],
  'verb.file-square.caution': ['W022'],
  'verb.file-hexagon.caution': ['W022'],
  'verb.file-square-hole.caution': ['W022'],
  'verb.saw-slot.caution': ['W022'],
  'verb.drill-bolt-holes.caution': FLUNG,
  'wheels.page.caution': ['W024'],
  'closing.caution': ['W001', 'M004'],
  'cover.caution': [],
  'proof.caution': [],
};
/** Where that choice comes from. */
export const SIGNS_CHOSEN = { source: 'rule of this project', standing: 'common practice' } as const;
/** Cautions that the choice was made for. */
export const signedCautions: readonly string[] = Object.keys(CARRIED);

/** None for a caution that nothing was chosen for. */
export function signsOf(caution: string): readonly SignId[] {
  return CARRIED[caution] ?? [];
}
