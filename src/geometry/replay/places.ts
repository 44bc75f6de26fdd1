/** Where surfaces are while the work goes on: each made surface at the place that its own working dimension gives it. */
import type { DimId, End, OpId, SurfaceId } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Face } from '../../model/part.ts';
import type { Chart, Cut, SetUp, Way, Working } from '../../model/plan.ts';
import type { Nominal } from '../nominal.ts';
import { faceStands } from '../section/ask.ts';
import type { Section } from '../section.ts';

/** `leaves`: what the cut that made it aimed to leave for a later one. */
export type FacePlace = { readonly z: number; readonly stage: 'rough' | 'final'; readonly leaves: number };
/** Faces by place, cylinders and cone mouths by diameter, as they were last made. */
export type Places = { readonly faces: ReadonlyMap<SurfaceId, FacePlace>; readonly sizes: ReadonlyMap<SurfaceId, number> };

/**
 * Something asked for that is not there: `working` has no dimension in the chart; `from` is measured from a face that does not stand;
 * `bound` ends a cut at a face that does not stand.
 */
export type Lack = {
  readonly what: 'working' | 'from' | 'bound';
  readonly surface: SurfaceId | 'bar end' | 'axis';
  readonly dim: DimId | '';
};

export type Bench = {
  readonly nominal: Nominal;
  /** Instead of the target, by dimension. */
  readonly values: Readonly<Record<DimId, number>>;
  readonly barEnd: number;
};
/** Where an operation stands: what there is before it, and what it makes. */
export type Here = {
  readonly bench: Bench;
  readonly op: OpId;
  readonly setUp: SetUp;
  readonly way: Way;
  readonly out: End;
  readonly section: Section;
  readonly places: Places;
  /** The working dimension of each of its cuts, in their order; undefined where the chart has none. */
  readonly working: readonly (Working | undefined)[];
  /** Faces that this operation makes. */
  readonly makes: ReadonlySet<SurfaceId>;
  /** What surfaces this operation cut, by surface. */
  readonly stages: ReadonlyMap<SurfaceId, Cut['stage']>;
};

export const workingKey = (op: OpId, surface: SurfaceId): string => `${op} ${surface}`;

/** Working dimensions by operation and surface. Throws Error when one stands twice, or two have one name: our fault. */
export function workingOf(chart: Chart): ReadonlyMap<string, Working> {
  const found = new Map<string, Working>();
  const names = new Set<DimId>();
  for (const one of chart.working) {
    const key = workingKey(one.op, one.makes);
    if (names.has(one.id)) throw new Error(`two working dimensions are called '${one.id}'`);
    names.add(one.id);
    if (found.has(key)) throw new Error(`two working dimensions make '${one.makes}' in '${one.op}'`);
    found.set(key, one);
  }
  return found;
}

/** The raw end, such that the first face cut from it comes out where it is aimed at. */
export function barEndOf(nominal: Nominal, chart: Chart, cuts: ReadonlyMap<string, Cut>, out: End, allowance: number): number {
  const first = chart.working.find((one) => one.from === 'bar end' && one.measures === 'length');
  if (!first) return out === 'first' ? -allowance : nominal.part.length + allowance;
  const leaves = cuts.get(workingKey(first.op, first.makes))?.leaves ?? 0;
  return aimedAt(nominal.face(first.makes), leaves) - first.toward * first.limits.target;
}

/** Where the drawing has the face, and what is left of metal on its side of the air. */
export const aimedAt = (face: Face, leaves: number): number => (face.air === 'first' ? face.z - leaves : face.z + leaves);

/** What this operation's cuts make of the places, or what they ask for in vain. */
export function placeCuts(here: Here): { readonly places: Places; readonly lacks: readonly Lack[] } {
  if (here.way.cuts.length === 0) return { places: here.places, lacks: [] };
  const before = here.places;
  // what comes before keeps its own: copied once, when the first cut writes
  let faces: Map<SurfaceId, FacePlace> | undefined;
  let sizes: Map<SurfaceId, number> | undefined;
  const own: SurfaceId[] = [];
  const lacks: Lack[] = [];
  for (let i = 0; i < here.way.cuts.length; i += 1) {
    const cut = here.way.cuts[i];
    const working = here.working[i];
    if (!cut) continue;
    if (!working) {
      lacks.push({ what: 'working', surface: cut.makes, dim: '' });
      continue;
    }
    const value = here.bench.values[working.id] ?? working.limits.target;
    if (cut.measures === 'diameter') {
      sizes ??= new Map(before.sizes);
      sizes.set(cut.makes, value);
      continue;
    }
    const from = zeroOf(here, working, faces ?? before.faces, own);
    if (from === undefined) {
      lacks.push({ what: 'from', surface: working.from, dim: working.id });
      continue;
    }
    faces ??= new Map(before.faces);
    faces.set(cut.makes, { z: from + working.toward * value, stage: cut.stage, leaves: cut.leaves });
    own.push(cut.makes);
  }
  return { places: { faces: faces ?? before.faces, sizes: sizes ?? before.sizes }, lacks };
}

/** Place of the face that is measured from; it must stand now, or be cut in the same operation. */
function zeroOf(here: Here, working: Working, faces: ReadonlyMap<SurfaceId, FacePlace>, own: readonly SurfaceId[]): number | undefined {
  if (working.from === 'bar end') return faceStands(here.section, here.bench.barEnd, '') ? here.bench.barEnd : undefined;
  const place = faces.get(working.from);
  if (!place || (own as readonly string[]).includes(working.from)) return place?.z;
  return stands(here.section, working.from, place) ? place.z : undefined;
}

export const stands = (section: Section, surface: SurfaceId, place: FacePlace): boolean => faceStands(section, place.z, surface);

/** How far the part lies from its drawing in this set-up, by the face that lengths are measured from. */
export function shiftOf(here: Pick<Here, 'bench' | 'setUp' | 'out' | 'places'>): number {
  const { nominal } = here.bench;
  return (
    shiftOfFace(here, here.setUp.grip.datum) ??
    shiftOfFace(here, nominal.endFace(here.out)?.id) ??
    shiftOfFace(here, nominal.endFace(other(here.out))?.id) ??
    0
  );
}

function shiftOfFace({ bench, places }: Pick<Here, 'bench' | 'places'>, id: SurfaceId | undefined): number | undefined {
  const place = id === undefined ? undefined : places.faces.get(id);
  return id === undefined || !place ? undefined : place.z - aimedAt(bench.nominal.face(id), place.leaves);
}
