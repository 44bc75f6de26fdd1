/** Is there metal left between outside and inside, everywhere? */
import { add, type Len, len, minus, showMm } from '../../base/units.ts';
import { type End, other } from '../../model/ids.ts';
import { size } from '../limits.ts';
import type { Hole, Section } from '../outline.ts';
import type { TurnedPartAsked } from './asked.ts';
import { type Faults, fault } from './fault.ts';
import { roundedMouth } from './hole-radius.ts';

export function checkWalls(asked: TurnedPartAsked, sections: readonly Section[], holes: readonly Hole[], faults: Faults): void {
  const length = sections.reduce((sum, s) => add(sum, s.length), len(0));
  let from = len(0);
  sections.forEach((section, i) => {
    const to = add(from, section.length);
    for (const hole of holes.flatMap(withGrooves)) {
      if (hole.to <= from || hole.from >= to) continue;
      checkWall(asked, section, i, { hole, mouth: mouthOf(hole, from, to, length) }, faults);
      checkTip(section, i, hole, { from, to }, faults);
    }
    from = to;
  });
}

/** A groove inside thins the wall as a larger hole of its length would. */
function withGrooves(hole: Hole): readonly Hole[] {
  const bare = { role: hole.role, opens: [] };
  const grooves = (hole.recesses ?? []).map(({ name, size: own, from, to }) => ({ ...bare, name, size: own, from, to }));
  const { relief, name } = hole;
  return [hole, ...grooves, ...(relief ? [{ ...bare, name, size: relief.floor, from: relief.from, to: relief.to }] : [])];
}

/** The mouth of a cone or of a thread, in the piece at whose end it opens. */
function mouthOf(hole: Hole, from: Len, to: Len, length: Len): Len {
  const opens = (end: 'first' | 'second'): boolean =>
    end === 'first' ? hole.from === 0 && from === 0 : hole.to === length && to === length;
  const start = hole.opens[0] ?? 'first';
  return len(
    Math.max(
      hole.cone && (opens(hole.cone.at) || (hole.cone.twin && opens(other(hole.cone.at)))) ? hole.cone.mouth.hi : 0,
      hole.thread?.chamfer && opens(start) ? hole.thread.chamfer.hi : 0,
      hole.thread?.farChamfer && opens(other(start)) ? hole.thread.farChamfer.hi : 0,
      opens(start) ? roundedMouth(hole) : 0,
    ),
  );
}

function checkWall(
  asked: TurnedPartAsked,
  section: Section,
  i: number,
  inside: { readonly hole: Hole; readonly mouth: Len },
  faults: Faults,
): void {
  const { hole, mouth } = inside;
  const outer = thinnest(section);
  const inner = len(Math.max(hole.thread ? hole.thread.size.root : hole.size.hi, mouth));
  const least = size('part.wall.least');
  const wall = len(Math.floor(minus(outer, inner) / 2));
  if (wall >= least) return;
  const where = { feature: asked.outside[i]?.name ?? section.name, hole: hole.name, wants: least, least: add(inner, add(least, least)) };
  const most = minus(outer, add(least, least));
  fault(faults, ['outside', i], 'wall', {
    ...where,
    most,
    outer,
    inner,
    wall: showMm(len(Math.max(wall, 0))),
    gone: wall <= 0,
    relief: outer < section.size.lo,
  });
}

/** A cone on the outside comes down to its tip, and a hole that opens there must leave a rim. */
function checkTip(section: Section, i: number, hole: Hole, at: { readonly from: Len; readonly to: Len }, faults: Faults): void {
  const { cone } = section;
  const opens = (end: End): boolean => (end === 'first' ? hole.from <= at.from : hole.to >= at.to);
  const ends = cone ? [cone.at, ...(cone.twin ? [other(cone.at)] : [])].filter(opens) : [];
  const inner = len(Math.max(0, ...ends.map((end) => mouthAt(hole, end))));
  const least = add(inner, add(size('part.wall.least'), size('part.wall.least')));
  if (cone && ends.length > 0 && cone.mouth.lo < least)
    fault(faults, ['outside', i, 'cone', 'tip'], 'tip-in-hole', { feature: section.name, hole: hole.name, least, inner });
}

/** How wide a hole opens at that end. */
const mouthAt = (hole: Hole, end: End): number =>
  hole.cone && (hole.cone.at === end || hole.cone.twin)
    ? hole.cone.mouth.hi
    : Math.max((hole.thread?.chamfer ?? hole.thread?.farChamfer ?? hole.size).hi, roundedMouth(hole));

/** The least diameter anywhere along it: a thread's root, its relief. */
function thinnest(section: Section): Len {
  const { thread } = section;
  const below = thread ? [thread.size.root, ...(thread.relief ? [thread.relief.floor.lo] : [])] : [];
  return len(Math.min(section.size.lo, ...below));
}
