/** What every sweep asks: where its bounds are now, how its lines are named, what it makes of metal. */
import type { End, SurfaceId } from '../../model/ids.ts';
import type { Bound } from '../../model/plan.ts';
import type { Line } from '../section/lines.ts';
import { isSolid, type Bound as LabelledLine, type Mark, type Paint, type Region, type Side } from '../section.ts';
import { type Here, type Lack, shiftOf, stands } from './places.ts';

/** Regions are painted in their order. `missing` ones cannot be swept at all. */
export type Swept = { readonly regions: readonly Region[]; readonly lacks: readonly Lack[] };

export const NOTHING: Swept = { regions: [], lacks: [] };
export const lacking = (surface: SurfaceId): Swept => ({ regions: [], lacks: [{ what: 'bound', surface, dim: '' }] });
export function taking({ op }: Here): Region['paint'] {
  const taken: Paint = { state: 'taken', by: op };
  return (old) => (isSolid(old) ? taken : old);
}

// ---- places and names ---------------------------------------------------------------------------------------------------------
/** From the end in use up to `z`. */
export function fromOut(out: End, z: number, side: Side): Pick<Region, 'from' | 'to' | 'first' | 'second'> {
  return out === 'first' ? { from: Number.NEGATIVE_INFINITY, to: z, second: side } : { from: z, to: Number.POSITIVE_INFINITY, first: side };
}

export const awayFrom = (out: End): 1 | -1 => (out === 'first' ? 1 : -1);

/** Place of the face now, or as drawn from the set-up's datum if `beyond` it is asked for. */
export function boundPlace(here: Here, bound: Bound): number | undefined {
  const past = awayFrom(here.out) * (bound.beyond ?? 0);
  const made = here.places.faces.get(bound.face);
  if (made && (here.makes.has(bound.face) || stands(here.section, bound.face, made))) return made.z + past;
  return bound.beyond === undefined ? undefined : here.bench.nominal.face(bound.face).z + shiftOf(here) + past;
}

export const markOf = (here: Here, surface: SurfaceId | ''): Mark => ({ surface, stage: here.stages.get(surface) ?? 'rough', by: here.op });
export const lined = (here: Here, line: Line, surface: SurfaceId): LabelledLine => ({ line, mark: markOf(here, surface) });

/** A face that this operation makes, or one that stands already and that the tool comes up to. */
export function sideAt(here: Here, face: SurfaceId): Side {
  if (here.makes.has(face)) return { as: 'made', mark: markOf(here, face) };
  return { as: 'met', mark: { surface: face, stage: here.places.faces.get(face)?.stage ?? 'rough', by: here.op } };
}

export const endOf = (here: Here, bound: Bound, otherwise: SurfaceId | ''): Side =>
  bound.beyond === undefined ? sideAt(here, bound.face) : { as: 'made', mark: markOf(here, otherwise) };

export function sizeOf(here: Here, surface: SurfaceId): number {
  const made = here.places.sizes.get(surface);
  if (made !== undefined) return made;
  const drawn = here.bench.nominal.surface(surface);
  if (drawn.shape === 'face') throw new Error(`'${surface}' has no diameter`);
  if (drawn.shape === 'arc') return drawn.across.target;
  return drawn.shape === 'cone' ? drawn.mouth.target : drawn.size.target;
}

export const spanOf = (a: number, b: number): Pick<Region, 'from' | 'to'> => ({ from: Math.min(a, b), to: Math.max(a, b) });
