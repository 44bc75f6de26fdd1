/** Is there metal left between outside and inside, everywhere? */
import { add, type Len, len, minus, showMm } from '../../base/units.ts';
import { size } from '../limits.ts';
import type { Hole, Section } from '../outline.ts';
import type { TurnedPartAsked } from './asked.ts';
import { type Faults, fault } from './fault.ts';

export function checkWalls(asked: TurnedPartAsked, sections: readonly Section[], holes: readonly Hole[], faults: Faults): void {
  let from = len(0);
  sections.forEach((section, i) => {
    const to = add(from, section.length);
    for (const hole of holes) {
      if (hole.to <= from || hole.from >= to) continue;
      checkWall(asked, section, i, hole, faults);
    }
    from = to;
  });
}

function checkWall(asked: TurnedPartAsked, section: Section, i: number, hole: Hole, faults: Faults): void {
  const outer = thinnest(section);
  const inner = hole.thread ? hole.thread.size.root : hole.size.hi;
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

/** The least diameter anywhere along it: a thread's root, its relief. */
function thinnest(section: Section): Len {
  const { thread } = section;
  const below = thread ? [thread.size.root, ...(thread.relief ? [thread.relief.floor.lo] : [])] : [];
  return len(Math.min(section.size.lo, ...below));
}
