/** What stands near a curve, told once for all of it: what may take a place of it, and what may hide one. Never less than does. */
import type { Curve } from './lines.ts';
import { type Box, type Hiders, onPicture, type Sight } from './sight.ts';
import { isLeft, isLeftWhole, isThere, mayTake, type Solid, takes } from './solids.ts';
import type { Place } from './space.ts';

/** `isThere`: of places on the curve. `alone`: all of it is there, and nothing can hide any of it. */
export type Near = { readonly isThere: (p: Place) => boolean; readonly hiders: Hiders; readonly alone: boolean };

export function nearTo({ of, hull, onCut }: Curve, sight: Sight): Near {
  const { scene, eye, boxes } = sight;
  const own = scene.solids[of];
  const box = hull && onPicture(eye, hull);
  const mayHide = (solid: Solid, i: number): boolean => (!onCut || solid.whole) && meet(box, boxes[i]?.all);
  const hiders = {
    solids: scene.solids.flatMap((solid, i) => (mayHide(solid, i) ? [i] : [])),
    ball: sight.ball !== undefined && meet(box, sight.ball),
  };
  if (!own || !hull) return { isThere: own ? (p) => isThere(scene, of, p) : () => true, hiders, alone: false };
  const takers = scene.solids.slice(of + 1).filter((other) => mayTake(other, hull));
  return {
    isThere: (p) => isLeft(own, p) && !isTaken(takers, p),
    hiders,
    alone: takers.length === 0 && hiders.solids.length === 0 && !hiders.ball && isLeftWhole(own, hull),
  };
}

function isTaken(takers: readonly Solid[], p: Place): boolean {
  for (const other of takers) if (takes(other, p)) return true;
  return false;
}

/** A hair wider than they are: places are told with binary dust. What has no box may be anywhere. */
function meet(one: Box | undefined, other: Box | undefined): boolean {
  if (!one || !other) return true;
  return one.west - HAIR <= other.east && other.west - HAIR <= one.east && one.top - HAIR <= other.foot && other.top - HAIR <= one.foot;
}
/** Units of length. */
const HAIR = 1;
