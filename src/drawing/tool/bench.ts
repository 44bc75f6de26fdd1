/**
 * Files and saws, seen from above as the work is, their handles toward the turner. A file lies on the flat that it has made, which faces the
 * eye; a saw stands in its cut, or along the slit.
 */
import { placed, type UR } from '../sketch.ts';
import type { ToolShown } from '../view.ts';
import { BODY, CLEAR, type Outline, type Place } from './place.ts';
import { blade } from './post.ts';

/** Of a flat's length: where the file's middle lies, to the right, so that the number in the flat's middle stays free; and its most. */
const ON = 0.75;
const MOST = 0.4;
/** Of half a flat's width: so near to its middle the file's point reaches; and of the file's own width: its point. */
const REACH = 0.35;
const POINT = 0.6;
/** Of how far a saw stands out: its blade, before the handle. */
const BLADE = 0.4;

/** Over the edge of the flat that is nearer to the turner. */
export function file({ rolls }: ToolShown, place: Place): readonly Outline[] {
  if (!rolls) return [];
  const { left, right, r } = along(rolls, place);
  const half = Math.min(place.mm(BODY.wide), MOST * (right - left)) / 2;
  const middle = left + ON * (right - left);
  const past = Math.max(place.shown.rim, r) + place.mm(place.out.side);
  const ring = [
    { u: middle - half, r: past },
    { u: middle - POINT * half, r: REACH * r },
    { u: middle + POINT * half, r: REACH * r },
    { u: middle + half, r: past },
  ];
  return [{ half: 'below', ring, knurled: true }];
}

export function saw(tool: ToolShown, place: Place): readonly Outline[] {
  return tool.rolls ? alongSlit(tool.rolls, place) : across(tool, place);
}

/** In the cut as a parting blade would stand there, then the handle. */
function across(tool: ToolShown, place: Place): readonly Outline[] {
  const [cut] = blade(tool, place);
  if (!cut) return [];
  const [us, past] = [cut.ring.map(({ u }) => u), Math.max(...cut.ring.map(({ r }) => r))];
  const [middle, half] = [(Math.min(...us) + Math.max(...us)) / 2, place.mm(BODY.wide) / 2];
  const begins = place.shown.rim + BLADE * (past - place.shown.rim);
  const handle = [
    { u: middle - half, r: past },
    { u: middle - half, r: begins },
    { u: middle + half, r: begins },
    { u: middle + half, r: past },
  ];
  const steel = cut.ring.map(({ u, r }) => ({ u, r: Math.min(r, begins) }));
  return [
    { half: 'below', ring: handle },
    { half: 'below', ring: steel },
  ];
}

/** Its back is seen, in the half of the slit that is drawn; its handle past the work's end. */
function alongSlit(rolls: NonNullable<ToolShown['rolls']>, place: Place): readonly Outline[] {
  const { left, right, r } = along(rolls, place);
  const thick = r - Math.min(place.mm(CLEAR), r / 4);
  const begins = Math.max(right, place.shown.right) + place.mm(BLADE * place.out.end);
  const end = Math.max(right, place.shown.right) + place.mm(place.out.end);
  const steel = [
    { u: begins, r: thick },
    { u: left, r: thick },
    { u: left, r: 0 },
    { u: begins, r: 0 },
  ];
  const half = place.mm(BODY.wide) / 2;
  const handle: readonly UR[] = [
    { u: end, r: half },
    { u: begins, r: half },
    { u: begins, r: 0 },
    { u: end, r: 0 },
  ];
  return [
    { half: 'below', ring: handle, edge: handle.slice(0, -1) },
    { half: 'below', ring: steel, edge: steel.slice(0, -1) },
    { half: 'above', ring: handle, edge: handle.slice(0, -1) },
  ];
}

function along({ from, to, diameter }: NonNullable<ToolShown['rolls']>, { sketch }: Place) {
  const ends = [from, to].map((z) => placed({ z, d: diameter }, sketch.out));
  return { left: Math.min(...ends.map(({ u }) => u)), right: Math.max(...ends.map(({ u }) => u)), r: ends[0]?.r ?? 0 };
}
