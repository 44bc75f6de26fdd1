/** What each sweep takes, as regions of the half-section, at the places that surfaces have now. */
import { other, type SurfaceId } from '../../model/ids.ts';
import type { Sweep } from '../../model/plan.ts';
import { type Line, level, reaches, steepness } from '../section/lines.ts';
import { isSolid, type Bound as LabelledLine, type Mark, type Paint, type Region, type Side } from '../section.ts';
import { blockOf, sparing, sweepArc } from './arc-sweeps.ts';
import { sweepCone } from './cone-sweeps.ts';
import { type Here, shiftOf } from './places.ts';
import {
  awayFrom,
  boundPlace,
  endOf,
  fromOut,
  lacking,
  lined,
  markOf,
  NOTHING,
  type Swept,
  sideAt,
  sizeOf,
  taking,
} from './sweep-places.ts';

export type { Swept } from './sweep-places.ts';

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

/** The band between root and crest, over as much of the cylinder as the drawing has full thread. */
function sweepThread(here: Here, id: string): Swept {
  const feature = here.bench.nominal.feature(id);
  if (feature.kind !== 'thread') throw new Error(`'${id}' is no thread`);
  const crest = level(sizeOf(here, feature.on));
  const root = level(feature.side === 'outside' ? feature.thread.minor.lo : feature.thread.major.lo);
  const mark: Mark = { surface: feature.on, stage: 'final', by: here.op };
  const [from, to] = [threadEnd(here, feature.from), threadEnd(here, feature.to)];
  const between = feature.side === 'outside' ? { lower: root, upper: crest } : { lower: crest, upper: root };
  const band: Paint = { state: 'partial', by: here.op, thread: id };
  const region: Region = {
    from,
    to,
    lower: { line: between.lower, mark },
    upper: { line: between.upper, mark },
    first: { as: 'met', mark },
    second: { as: 'met', mark },
    paint: (old) => (old.state === 'metal' ? band : old),
  };
  return from < to ? { regions: [region], lacks: [] } : NOTHING;
}

/** A thread that ends at a face goes with that face; else it lies as drawn from the datum. */
function threadEnd(here: Here, z: number): number {
  for (const face of here.bench.nominal.facesAt(z)) {
    const made = here.places.faces.get(face.id);
    if (made) return made.z;
  }
  return z + shiftOf(here);
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
  const dropped: Paint = { state: 'dropped', by: here.op };
  const beyond: Region = {
    ...fromOut(other(here.out), far, { as: 'met', mark: markOf(here, '') }),
    paint: (old) => (isSolid(old) ? dropped : old),
  };
  return { regions: [kerf, beyond], lacks: [] };
}

function stubEnd(here: Here, sweep: Extract<Sweep, { take: 'part' }>): number | undefined {
  if (sweep.stub === undefined) return undefined;
  return here.bench.nominal.face(sweep.face).z + shiftOf(here) + awayFrom(here.out) * sweep.stub;
}
