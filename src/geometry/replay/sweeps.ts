/** What each sweep takes, as regions of the half-section, at the places that surfaces have now. */
import { type End, other, type SurfaceId } from '../../model/ids.ts';
import type { Arc, Cone, Face } from '../../model/part.ts';
import type { Bound, Sweep } from '../../model/plan.ts';
import type { Point } from '../../model/stage.ts';
import { coneLine } from '../nominal.ts';
import { arcPoints, chordLine } from '../section/arc.ts';
import { type Line, level, reaches, steepness, TOUCH } from '../section/lines.ts';
import { isSolid, type Bound as LabelledLine, type Mark, type Paint, type Region, type Side } from '../section.ts';
import { type Here, type Lack, shiftOf, stands } from './places.ts';

/** Regions are painted in their order. `missing` ones cannot be swept at all. */
export type Swept = { readonly regions: readonly Region[]; readonly lacks: readonly Lack[] };

/** `here.places` is after this operation's cuts. Throws Error when a sweep names what the part has not: our fault. */
export function sweepRegions(here: Here, sweep: Sweep): Swept {
  switch (sweep.take) {
    case 'face':
      return sweepFace(here, sweep.face);
    case 'turn':
      return sweepTurn(here, sweep);
    case 'bore':
      return sweepBore(here, sweep);
    case 'groove':
      return sweepGroove(here, sweep);
    case 'cone':
      return sweepCone(here, sweep.cone);
    case 'arc':
      return sweepArc(here, here.bench.nominal.arc(sweep.arc));
    case 'thread':
      return sweepThread(here, sweep.feature);
    case 'part':
      return sweepPart(here, sweep);
    case 'side':
      return { regions: [], lacks: [] };
  }
}

const NOTHING: Swept = { regions: [], lacks: [] };
const lacking = (surface: SurfaceId): Swept => ({ regions: [], lacks: [{ what: 'bound', surface, dim: '' }] });
const taking =
  (here: Here) =>
  (old: Paint): Paint =>
    isSolid(old) ? { state: 'taken', by: here.op } : old;

// ---- places and names ---------------------------------------------------------------------------------------------------------
/** From the end in use up to `z`. */
function fromOut(out: End, z: number, side: Side): Pick<Region, 'from' | 'to' | 'first' | 'second'> {
  return out === 'first' ? { from: Number.NEGATIVE_INFINITY, to: z, second: side } : { from: z, to: Number.POSITIVE_INFINITY, first: side };
}

const awayFrom = (out: End): 1 | -1 => (out === 'first' ? 1 : -1);

/** Place of the face now, or as drawn from the set-up's datum if `beyond` it is asked for. */
function boundPlace(here: Here, bound: Bound): number | undefined {
  const past = awayFrom(here.out) * (bound.beyond ?? 0);
  const made = here.places.faces.get(bound.face);
  if (made && (here.makes.has(bound.face) || stands(here.section, bound.face, made))) return made.z + past;
  return bound.beyond === undefined ? undefined : here.bench.nominal.face(bound.face).z + shiftOf(here) + past;
}

const markOf = (here: Here, surface: SurfaceId | ''): Mark => ({ surface, stage: here.stages.get(surface) ?? 'rough', by: here.op });
const lined = (here: Here, line: Line, surface: SurfaceId): LabelledLine => ({ line, mark: markOf(here, surface) });

/** A face that this operation makes, or one that stands already and that the tool comes up to. */
function sideAt(here: Here, face: SurfaceId): Side {
  if (here.makes.has(face)) return { as: 'made', mark: markOf(here, face) };
  return { as: 'met', mark: { surface: face, stage: here.places.faces.get(face)?.stage ?? 'rough', by: here.op } };
}

const endOf = (here: Here, bound: Bound, otherwise: SurfaceId | ''): Side =>
  bound.beyond === undefined ? sideAt(here, bound.face) : { as: 'made', mark: markOf(here, otherwise) };

function sizeOf(here: Here, surface: SurfaceId): number {
  const made = here.places.sizes.get(surface);
  if (made !== undefined) return made;
  const drawn = here.bench.nominal.surface(surface);
  if (drawn.shape === 'face') throw new Error(`'${surface}' has no diameter`);
  if (drawn.shape === 'arc') return drawn.across.target;
  return drawn.shape === 'cone' ? drawn.mouth.target : drawn.size.target;
}

// ---- sweeps -------------------------------------------------------------------------------------------------------------------
function sweepFace(here: Here, id: SurfaceId): Swept {
  const place = here.places.faces.get(id);
  if (!place || !here.makes.has(id)) return lacking(id);
  const face = here.bench.nominal.face(id);
  return { regions: [{ ...fromOut(face.air, place.z, sideAt(here, id)), paint: taking(here) }], lacks: [] };
}

function sweepTurn(here: Here, sweep: Extract<Sweep, { take: 'turn' }>): Swept {
  const z = boundPlace(here, sweep.to);
  if (z === undefined) return lacking(sweep.to.face);
  const d = sizeOf(here, sweep.cylinder);
  const lower = lined(here, level(d), sweep.cylinder);
  const end = endOf(here, sweep.to, '');
  if (sweep.spares === undefined) return { regions: [{ ...fromOut(here.out, z, end), lower, paint: taking(here) }], lacks: [] };
  const block = blockOf(here.bench.nominal.arc(sweep.spares));
  const before = z - awayFrom(here.out) * block.long;
  const bare = markOf(here, '');
  const top: LabelledLine = { line: level(d + block.high), mark: bare };
  const over = { from: Math.min(before, z), to: Math.max(before, z), [here.out === 'first' ? 'second' : 'first']: end };
  return {
    regions: [
      { ...fromOut(here.out, before, { as: 'made', mark: bare }), lower, paint: taking(here) },
      { ...over, lower: top, paint: taking(here) },
    ],
    lacks: [],
  };
}

/** What a turned corner leaves for its fillet: as long and as high as the fillet may come out. */
const blockOf = (arc: Arc): { readonly long: number; readonly high: number } => ({
  long: Math.ceil(arc.across.hi / 2),
  high: arc.across.hi,
});

/** A bore that leaves the block of its fillet at the floor. */
function sparing(
  here: Here,
  spares: SurfaceId,
  z: number,
  bore: { readonly d: number; readonly upper: LabelledLine; readonly end: Side },
): readonly Region[] {
  const block = blockOf(here.bench.nominal.arc(spares));
  const before = z - awayFrom(here.out) * block.long;
  const bare = markOf(here, '');
  const over = { ...spanOf(before, z), [here.out === 'first' ? 'second' : 'first']: bore.end };
  return [
    { ...fromOut(here.out, before, { as: 'made', mark: bare }), upper: bore.upper, paint: taking(here) },
    { ...over, upper: { line: level(bore.d - block.high), mark: bare }, paint: taking(here) },
  ];
}

/** The sweep's own diameter, unless the operation has a working dimension for it. */
function sweepBore(here: Here, sweep: Extract<Sweep, { take: 'bore' }>): Swept {
  const z = boundPlace(here, sweep.to);
  if (z === undefined) return lacking(sweep.to.face);
  const d = here.stages.has(sweep.cylinder) ? sizeOf(here, sweep.cylinder) : sweep.diameter;
  const upper = lined(here, level(d), sweep.cylinder);
  if (sweep.spares !== undefined)
    return { regions: sparing(here, sweep.spares, z, { d, upper, end: endOf(here, sweep.to, '') }), lacks: [] };
  const straight: Region = { ...fromOut(here.out, z, endOf(here, sweep.to, sweep.cylinder)), upper, paint: taking(here) };
  if (sweep.point === undefined) return { regions: [straight], lacks: [] };
  const way = awayFrom(here.out);
  const line: Line = { z, d, slope: -way * steepness(sweep.point) };
  const tip = reaches(line, 0) ?? z;
  const point: Region = { from: Math.min(z, tip), to: Math.max(z, tip), upper: lined(here, line, sweep.cylinder), paint: taking(here) };
  return { regions: [straight, point], lacks: [] };
}

function sweepGroove(here: Here, sweep: Extract<Sweep, { take: 'groove' }>): Swept {
  const [a, b] = [boundPlace(here, { face: sweep.first }), boundPlace(here, { face: sweep.second })];
  if (a === undefined) return lacking(sweep.first);
  if (b === undefined) return lacking(sweep.second);
  if (b <= a) return NOTHING;
  const floor = lined(here, level(sizeOf(here, sweep.floor)), sweep.floor);
  const sides = { from: a, to: b, first: sideAt(here, sweep.first), second: sideAt(here, sweep.second) };
  return { regions: [{ ...sides, ...(sweep.side === 'outside' ? { lower: floor } : { upper: floor }), paint: taking(here) }], lacks: [] };
}

/** From its face to where it runs out at `until`: outside all that lies over the line, inside all that lies under it. */
function sweepCone(here: Here, id: SurfaceId): Swept {
  const cone = here.bench.nominal.cone(id);
  const z = boundPlace(here, { face: cone.at });
  if (z === undefined) return lacking(cone.at);
  const line = coneLine(cone, z, sizeOf(here, id));
  const end = runsOut(here, cone, line, z);
  const [from, to] = [Math.min(z, end), Math.max(z, end)];
  if ((end - z) * (cone.into === 'second' ? 1 : -1) <= TOUCH) return NOTHING;
  const own = lined(here, line, id);
  return { regions: [{ from, to, ...(cone.side === 'outside' ? { lower: own } : { upper: own }), paint: taking(here) }], lacks: [] };
}

function runsOut(here: Here, cone: Cone, line: Line, z: number): number {
  const until = here.bench.nominal.surface(cone.until);
  if (until.shape === 'face') return here.places.faces.get(until.id)?.z ?? until.z + shiftOf(here);
  return reaches(line, sizeOf(here, until.id)) ?? z;
}

/**
 * By a tool that is brought up to the face and the cylinder as they are: outside all that lies over the chain, inside all that lies under it;
 * in a corner, all of its block.
 */
function sweepArc(here: Here, arc: Arc): Swept {
  const z = boundPlace(here, { face: arc.at });
  if (z === undefined) return lacking(arc.at);
  const d = sizeOf(here, arc.until);
  const points = arcPoints(arc, z, d, sizeOf(here, arc.id));
  const chords = points.slice(1).flatMap((b, i): readonly Region[] => {
    const a = points[i];
    return a ? overChord(here, arc, a, b) : [];
  });
  return { regions: arc.bends === 'round' ? chords : inCorner(here, arc, { z, d, chords }), lacks: [] };
}

/** Where a radius is too large for its cylinder the chord comes from beyond the axis: there nothing is left, or in a bore nothing taken. */
function overChord(here: Here, arc: Arc, a: Point, b: Point): readonly Region[] {
  const line = chordLine(a, b);
  const paint = taking(here);
  const inside = arc.side === 'inside';
  if (a.d <= 0 && b.d <= 0) return inside ? [] : [{ ...spanOf(a.z, b.z), paint }];
  const axis = a.d < 0 ? reaches(line, 0) : undefined;
  const own = lined(here, line, arc.id);
  if (inside) return [{ ...spanOf(axis ?? a.z, b.z), upper: own, paint }];
  const whole: Region = { ...spanOf(axis ?? a.z, b.z), lower: own, paint };
  return axis === undefined ? [whole] : [{ ...spanOf(a.z, axis), paint }, whole];
}

const spanOf = (a: number, b: number): Pick<Region, 'from' | 'to'> => ({ from: Math.min(a, b), to: Math.max(a, b) });

/** What stands of the block beyond the arc goes as well: along the cylinder, and up the face. */
function inCorner(
  here: Here,
  arc: Arc,
  corner: { readonly z: number; readonly d: number; readonly chords: readonly Region[] },
): readonly Region[] {
  const { z, d, chords } = corner;
  const block = blockOf(arc);
  const along = arc.into === 'second' ? 1 : -1;
  const mark = (surface: SurfaceId): Mark => ({ surface, stage: 'final', by: here.op });
  const inside = arc.side === 'inside';
  const top: LabelledLine = { line: level(inside ? d - block.high : d + block.high), mark: markOf(here, '') };
  const over = inside ? { lower: top } : { upper: top };
  const cylinder: LabelledLine = { line: level(d), mark: mark(arc.until) };
  const [first] = chords;
  const wall = first && { ...first, [along > 0 ? 'first' : 'second']: { as: 'made', mark: mark(arc.at) } as const };
  const strip: Region = {
    ...spanOf(
      chords.reduce((far, one) => (along > 0 ? Math.max(far, one.to) : Math.min(far, one.from)), z),
      z + along * block.long,
    ),
    ...(inside ? { upper: cylinder } : { lower: cylinder }),
    ...over,
    paint: taking(here),
  };
  return [...(wall ? [wall] : []), ...chords.slice(1)]
    .map((one): Region => ({ ...one, ...over }))
    .concat(strip.from < strip.to ? [strip] : []);
}

/** The band between root and crest, over as much of the cylinder as the drawing has full thread. */
function sweepThread(here: Here, id: string): Swept {
  const feature = here.bench.nominal.feature(id);
  if (feature.kind !== 'thread') throw new Error(`'${id}' is no thread`);
  const crest = level(sizeOf(here, feature.on));
  const root = level(feature.side === 'outside' ? feature.thread.minor.lo : feature.thread.major.lo);
  const mark: Mark = { surface: feature.on, stage: 'final', by: here.op };
  const [from, to] = [threadEnd(here, feature.from), threadEnd(here, feature.to)];
  const between = feature.side === 'outside' ? { lower: root, upper: crest } : { lower: crest, upper: root };
  const region: Region = {
    from,
    to,
    lower: { line: between.lower, mark },
    upper: { line: between.upper, mark },
    first: { as: 'met', mark },
    second: { as: 'met', mark },
    paint: (old) => (old.state === 'metal' ? { state: 'partial', by: here.op, thread: id } : old),
  };
  return from < to ? { regions: [region], lacks: [] } : NOTHING;
}

/** A thread that ends at a face goes with that face; else it lies as drawn from the datum. */
function threadEnd(here: Here, z: number): number {
  const faces = here.bench.nominal.part.surfaces.filter((surface): surface is Face => surface.shape === 'face' && surface.z === z);
  const made = faces.flatMap((face) => here.places.faces.get(face.id) ?? [])[0];
  return made?.z ?? z + shiftOf(here);
}

/** The kerf is chips; what lies beyond it stays in the chuck, or is the stub, and is gone from this part. */
function sweepPart(here: Here, sweep: Extract<Sweep, { take: 'part' }>): Swept {
  const way = awayFrom(here.out);
  const place = sweep.stub === undefined ? here.places.faces.get(sweep.face) : undefined;
  const z = place && here.makes.has(sweep.face) ? place.z : stubEnd(here, sweep);
  if (z === undefined) return lacking(sweep.face);
  const far = z + way * sweep.kerf;
  const side: Side = { as: 'made', mark: sweep.stub === undefined ? markOf(here, sweep.face) : markOf(here, '') };
  const kerf: Region = { from: Math.min(z, far), to: Math.max(z, far), [way > 0 ? 'first' : 'second']: side, paint: taking(here) };
  const drop = (old: Paint): Paint => (isSolid(old) ? { state: 'dropped', by: here.op } : old);
  const beyond: Region = { ...fromOut(other(here.out), far, { as: 'met', mark: markOf(here, '') }), paint: drop };
  return { regions: [kerf, beyond], lacks: [] };
}

function stubEnd(here: Here, sweep: Extract<Sweep, { take: 'part' }>): number | undefined {
  if (sweep.stub === undefined) return undefined;
  return here.bench.nominal.face(sweep.face).z + shiftOf(here) + awayFrom(here.out) * sweep.stub;
}
