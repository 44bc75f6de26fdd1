/**
 * Files and saws, seen from above as the work is, their handles toward the turner. A file lies on the flat that it has made, which faces the
 * eye; a saw stands in its cut, or along the slit.
 */
import { placed, type UR } from '../sketch.ts';
import type { ToolShown } from '../view.ts';
import { BODY, CLEAR, NEAR, type Outline, type Place } from './place.ts';
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
  return tool.rolls ? alongSlit(tool, tool.rolls, place) : across(tool, place);
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

/**
 * Its back is seen, in the half of a slit that is drawn; in a slot (it is `wide`) its end, on both sides of the axis. Its handle stands past the
 * end of the work at which that is open.
 */
function alongSlit({ wide }: ToolShown, rolls: NonNullable<ToolShown['rolls']>, place: Place): readonly Outline[] {
  const { left, right, r } = along(rolls, place);
  const { from, right: last } = place.shown;
  const way = right < last - NEAR ? -1 : 1;
  const [floor, open] = way === 1 ? [left, Math.max(right, last)] : [right, Math.min(left, from)];
  const thick = r - Math.min(place.mm(CLEAR), r / 4);
  const [begins, end] = [BLADE, LEFT].map((share) => open + way * place.mm(share * place.out.end));
  const half = Math.max(place.mm(BODY.wide) / 2, THICKER * r);
  const bar = (near: number, far: number, high: number): readonly UR[] => [
    { u: far, r: high },
    { u: near, r: high },
    { u: near, r: 0 },
    { u: far, r: 0 },
  ];
  const shown = (ring: readonly UR[], where: Outline['half']): Outline => ({ half: where, ring, edge: ring.slice(0, -1) });
  const [handle, steel] = [bar(begins ?? open, end ?? open, half), bar(floor, begins ?? open, thick)];
  const halves = wide === undefined ? (['below'] as const) : (['below', 'above'] as const);
  return [shown(handle, 'below'), ...halves.map((where) => shown(steel, where)), shown(handle, 'above')];
}
/** Than the slot, its handle. */
const THICKER = 1.3;
/** Of the room past the end of the work: on the left there is a little less. */
const LEFT = 0.8;

function along({ from, to, diameter }: NonNullable<ToolShown['rolls']>, { sketch }: Place) {
  const ends = [from, to].map((z) => placed({ z, d: diameter }, sketch.out));
  return { left: Math.min(...ends.map(({ u }) => u)), right: Math.max(...ends.map(({ u }) => u)), r: ends[0]?.r ?? 0 };
}
