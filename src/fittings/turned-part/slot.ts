/** A slot sawn across an end, for a screwdriver: where it lies, and whether it leaves something on either side of it and below. */
import { type Len, len, minus } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import { size } from '../limits.ts';
import type { Section, Side } from '../outline.ts';
import { ENDS, type TurnedPartAsked } from './asked.ts';
import { type Faults, fault, type Path } from './fault.ts';
import { limitsOf } from './limits.ts';

/** `letters`: of the two end faces. A slot has no name of its own: it is called after its face. */
export function slotsOf(
  asked: TurnedPartAsked,
  sections: readonly Section[],
  letters: Readonly<Record<End, string>>,
  faults: Faults,
): readonly Side[] {
  return ENDS.flatMap((end) => slotAt(asked, sections, { end, letter: letters[end] }, faults) ?? []);
}

function slotAt(
  asked: TurnedPartAsked,
  sections: readonly Section[],
  { end, letter }: { readonly end: End; readonly letter: string },
  faults: Faults,
): Side | undefined {
  const { slot, role } = asked[end];
  const section = end === 'first' ? sections[0] : sections.at(-1);
  if (!slot || !section) return undefined;
  const path: Path = [end, 'slot'];
  if (role === 'seat' || role === 'sealing') fault(faults, path, 'slot-leaks', { letter });
  if (section.blank) fault(faults, path, 'taper-bare', { feature: section.name, key: 'slot' });
  const width = limitsOf(slot.width, 'hole', letter, [...path, 'width'], faults);
  if (!width) return undefined;
  const wall = size('part.wall.least');
  const most = minus(acrossAt(section, end), len(2 * wall));
  if (width.hi > most) fault(faults, [...path, 'width'], 'slot-wide', { letter, on: section.name, most: len(Math.max(most, 0)) });
  const deepest = minus(section.length, wall);
  if (slot.depth > deepest) fault(faults, [...path, 'depth'], 'slot-deep', { letter, on: section.name, most: len(Math.max(deepest, 0)) });
  const half = len(Math.floor(slot.depth / 2));
  const length = sections.reduce((sum, one) => sum + one.length, 0);
  const at = end === 'first' ? half : len(length - half);
  return { name: `${letter}.slot`, does: 'slot', on: section.name, role: 'free', at, half, size: width, count: 1 };
}

/** Least diameter of the face itself: within a cone, a chamfer, a rounded edge, the start of a thread. */
function acrossAt({ size: own, cone, chamfers = [], arcs = [], thread }: Section, end: End): Len {
  const taken = [
    ...(cone && (cone.at === end || cone.twin) ? [cone.mouth.lo] : []),
    ...chamfers.filter((one) => one.at === end).map((one) => one.mouth.lo),
    ...arcs.filter((one) => one.at === end && one.bends === 'round').map((one) => minus(own.lo, one.across.hi)),
    ...(thread ? [thread.chamfer.lo] : []),
  ];
  return len(Math.min(own.lo, ...taken));
}
