/** A union coupled up, lying: the coupling end in its wall where it has one, the nut over the nipple, the pipe. */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { ArrangedRing, Arrangement, Part } from '../../model/part.ts';
import { coupledUp, lengthOf, levelEnd, pipeRing } from '../arranged.ts';
import { size, times } from '../limits.ts';
import type { UnionAsk } from '../union.ts';

const LEVEL = { at: len(0) } as const;

/** `wall`: what the coupling end is soldered into, and its hole. */
export function arrangementOf(
  ask: UnionAsk,
  wall: { readonly thick: Len; readonly hole: Len } | undefined,
  parts: readonly Part[],
): Arrangement {
  const shown = wall ? inWall(ask, wall, parts) : alone(ask, parts);
  return { stand: 'any way', stands: [], flow: [], grounds: { into: wall !== undefined }, ...shown };
}

type Shown = Pick<Arrangement, 'branches' | 'rings'>;

function inWall(ask: UnionAsk, { thick, hole }: { readonly thick: Len; readonly hole: Len }, parts: readonly Part[]): Shown {
  const end = { branch: 'coupling-end', form: 'union', at: len(0), from: len(0), clear: len(0) } as const;
  const { branches, rings } = levelEnd({ ...end, coupling: ask.thread, pipe: ask.pipe }, parts);
  // the spigot stands a little proud of the wall's far side
  const from = size('solder.proud');
  const around: ArrangedRing = {
    item: 'wall',
    from,
    to: add(from, thick),
    inside: hole,
    outside: times(hole, 2),
    level: LEVEL,
    shown: 'metal',
  };
  return { branches, rings: [around, ...rings] };
}

/** From the nut's open end on. */
function alone(ask: UnionAsk, parts: readonly Part[]): Shown {
  const up = coupledUp(ask, lengthOf(parts, 'nipple'));
  const face = minus(len(0), len(Math.min(up.nut, up.nipple)));
  const where = { ...LEVEL, clear: len(0), way: 'out' } as const;
  return {
    branches: [
      { ...where, part: 'union-nut', from: add(face, up.nut) },
      { ...where, part: 'nipple', from: add(face, up.nipple) },
    ],
    rings: [pipeRing(ask.pipe, add(face, up.pipe.from), add(face, up.pipe.to), LEVEL)],
  };
}
