/** What a turner does first where nothing else decides: faces, holes through, outside before inside, larger before smaller, along the part. */
import type { Grip, Operation, Verb } from '../model/plan.ts';
import { type Context, contextOf, depthFrom } from './context.ts';

const VERBS: readonly Verb[] = [
  'face',
  'centre',
  'drill',
  'face-down',
  'turn',
  'groove',
  'chamfer',
  'form',
  'steps',
  'screw-cut',
  'die',
  'bore',
  'bore-start',
  'ream',
  'cone',
  'tap',
  'd-bit',
  'counterbore',
  'cut-stub',
  'part-off',
  'saw-off',
  'file-flats',
  'file-half',
  'slit',
  'saw-slot',
  'cross-drill',
  'cross-ream',
  'drill-bolt-holes',
  'solder',
  'harden',
  'deburr',
  'stone',
  'gauge',
];
const HOLDS: readonly Grip['kind'][] = [
  'bar',
  'bar-and-centre',
  'stub',
  'blank',
  'between-centres',
  'collet',
  'bored-jaws',
  'four-jaw',
  'sleeve',
  'hexagon',
  'jaws',
  'threaded-mandrel',
  'threaded-sleeve',
  'stub-mandrel',
  'vee-block',
  'bench',
];

/** Compared field by field, least first. */
export function operationKey(c: Context, o: Operation): readonly number[] {
  const inside = c.part.surfaces.find((s) => s.feature === o.feature)?.side === 'inside' ? 1 : 0;
  const size = c.part.surfaces.flatMap((s) => (s.feature === o.feature && s.shape === 'cylinder' ? [s] : []))[0];
  const face = c.part.surfaces.flatMap((s) => (s.feature === o.feature && s.shape === 'face' ? [s.z] : []))[0];
  const hole = HOLES.includes(o.verb) ? 0 : inside;
  return [o.verb === 'face' ? 0 : 1, hole, VERBS.indexOf(o.verb), -(size?.size.target ?? 0), size?.from ?? face ?? 0, inside];
}
const HOLES: readonly Verb[] = ['centre', 'drill'];

export function gripKey(c: Context, grip: Grip | undefined): readonly number[] {
  return grip
    ? [HOLDS.indexOf(grip.kind), grip.runout, grip.out === 'first' ? 0 : 1, neckGive(c, grip), -(grip.to - grip.from), grip.from]
    : [HOLDS.indexOf('bench')];
}

/**
 * On a mandrel all that stands out is carried by its neck, as thick as what is held, at the face that is against it: how far a tool at the free
 * end pushes it aside, by the third power of the length and the fourth of the diameter, as a share. Jaws are stiff beside the work: 0.
 */
function neckGive({ part, face }: Context, { kind, out, datum, diameter }: Grip): number {
  if (kind !== 'threaded-mandrel' || datum === undefined) return 0;
  const long = depthFrom(out, face(datum).z, part) / diameter;
  return (long * long * long) / diameter;
}

export function compareKeys(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.max(a.length, b.length); i += 1) {
    const d = (a[i] ?? 0) - (b[i] ?? 0);
    if (d !== 0) return d;
  }
  return 0;
}
export { contextOf };
