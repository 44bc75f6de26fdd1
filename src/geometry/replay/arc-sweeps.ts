/** Rounded edges and fillets, and the blocks that are left for fillets. */
import type { SurfaceId } from '../../model/ids.ts';
import type { Arc } from '../../model/part.ts';
import type { Point } from '../../model/stage.ts';
import { arcPoints, chordLine } from '../section/arc.ts';
import { level, reaches } from '../section/lines.ts';
import type { Bound as LabelledLine, Mark, Region, Side } from '../section.ts';
import type { Here } from './places.ts';
import { awayFrom, boundPlace, fromOut, lacking, lined, markOf, type Swept, sizeOf, spanOf, taking } from './sweep-places.ts';

/** What a turned corner leaves for its fillet: as long and as high as the fillet may come out. */
export const blockOf = (arc: Arc): { readonly long: number; readonly high: number } => ({
  long: Math.ceil(arc.across.hi / 2),
  high: arc.across.hi,
});

/** A bore that leaves the block of its fillet at the floor. */
export function sparing(
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

/**
 * By a tool that is brought up to the face and the cylinder as they are: outside all that lies over the chain, inside all that lies under it;
 * in a corner, all of its block.
 */
export function sweepArc(here: Here, arc: Arc): Swept {
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
