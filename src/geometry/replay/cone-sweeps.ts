/** Cones and tapers: from their face to where they run out. */
import { mm } from '../../base/units.ts';
import { practice } from '../../handbook/practice.ts';
import { other, type SurfaceId } from '../../model/ids.ts';
import type { Cone, Face } from '../../model/part.ts';
import { coneLine } from '../nominal.ts';
import { type Line, reaches, TOUCH } from '../section/lines.ts';
import { type Here, shiftOf } from './places.ts';
import { boundPlace, lacking, lined, NOTHING, type Swept, sideAt, sizeOf, taking } from './sweep-places.ts';

/** From its face to where it runs out at `until`: outside all that lies over the line, inside all that lies under it. */
export function sweepCone(here: Here, id: SurfaceId): Swept {
  const cone = here.bench.nominal.cone(id);
  const z = boundPlace(here, { face: cone.at });
  if (z === undefined) return lacking(cone.at);
  const line = coneLine(cone, z, sizeOf(here, id));
  const end = runsOut(here, cone, line, z);
  const [from, to] = [Math.min(z, end), Math.max(z, end)];
  if ((end - z) * (cone.into === 'second' ? 1 : -1) <= TOUCH) return NOTHING;
  const own = lined(here, line, id);
  const stop = collarOf(here, cone);
  const side = stop && { [cone.into === 'second' ? 'second' : 'first']: sideAt(here, stop.id) };
  return {
    regions: [{ from, to, ...side, ...(cone.side === 'outside' ? { lower: own } : { upper: own }), paint: taking(here) }],
    lacks: [],
  };
}

function runsOut(here: Here, cone: Cone, line: Line, z: number): number {
  const until = here.bench.nominal.surface(cone.until);
  if (until.shape === 'face') return faceNow(here, until);
  const end = reaches(line, sizeOf(here, until.id)) ?? z;
  const last = cone.ends && lastOf(here, cone, cone.ends.at);
  return last === undefined ? end : cone.into === 'second' ? Math.min(end, last) : Math.max(end, last);
}

const faceNow = (here: Here, face: Face): number => here.places.faces.get(face.id)?.z ?? face.z + shiftOf(here);

/** The shoulder that rises at a taper's large end: the tool stops there. */
function collarOf(here: Here, cone: Cone): Face | undefined {
  const end = cone.ends && here.bench.nominal.surface(cone.ends.at);
  return end?.shape === 'face' && end.air === other(cone.into) ? end : undefined;
}

/** How far a taper's tool goes at most: to the shoulder, a little past any other face, or to where the taper that leans against it begins. */
function lastOf(here: Here, cone: Cone, at_: SurfaceId): number | undefined {
  const { nominal } = here.bench;
  const end = nominal.surface(at_);
  const past = cone.into === 'second' ? PAST : -PAST;
  if (end.shape === 'face') return faceNow(here, end) + (collarOf(here, cone) ? 0 : past);
  return end.shape === 'cone' ? faceNow(here, nominal.face(end.at)) : undefined;
}
const PAST = mm(practice.value('part.past'));
