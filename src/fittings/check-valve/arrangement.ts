/**
 * How the parts of a check valve stand together, on the body's lower face, each coupling with its union nut, its nipple and the pipe. The
 * seat piece's first end is its seat, the cap's the tip of its stem.
 */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { Arrangement, Part } from '../../model/part.ts';
import { jointRing, lengthOf, levelEnd, pipeRing, uprightEnd } from '../arranged.ts';
import { half, size, TENTH, tidy } from '../limits.ts';
import { pipeOverlap } from '../union.ts';
import { type BodyLayout, layOutBody } from './body.ts';
import { stemLength } from './cap.ts';
import type { CheckValveSizes } from './sizes.ts';

export function arrangementOf(sizes: CheckValveSizes, parts: readonly Part[]): Arrangement {
  const at = layOutBody(sizes);
  const stem = minus(add(at.length, size('joint.ring.tight')), stemLength(sizes));
  const common = {
    ...{ stand: 'upright' as const, ball: { at: add(at.seat, sizes.centre), across: sizes.ball } },
    grounds: { pattern: sizes.stop ? 'straight' : 'angle' },
  };
  const low = uprightEnd('down', unionOf(sizes), minus(at.seat, lengthOf(parts, 'seat-piece')), parts);
  const standing: Stands = [{ part: 'seat-piece', way: 'down', at: at.seat }, { part: 'cap', way: 'up', at: stem }, low.nipple];
  const placed = { low, standing, at };
  if (at.outlet === undefined) return { ...common, ...inLine(sizes, placed, add(stem, lengthOf(parts, 'cap')), parts) };
  return { ...common, ...atSide(sizes, placed, at.outlet, parts) };
}

type Stands = Arrangement['stands'];
type Shown = Pick<Arrangement, 'stands' | 'branches' | 'rings' | 'flow'>;
type Placed = { readonly low: ReturnType<typeof uprightEnd>; readonly standing: Stands; readonly at: BodyLayout };

const unionOf = ({ coupling, end }: CheckValveSizes) => ({ thread: coupling, pipe: end.pipe });

const ringsOf = (sizes: CheckValveSizes, { at, low }: Placed) => [
  jointRing(sizes.seat, minus(len(0), size('joint.ring.tight'))),
  jointRing(sizes.cap, at.length),
  ...low.rings,
];

/** The outlet goes out at the side by a branch. */
function atSide(sizes: CheckValveSizes, placed: Placed, outlet: Len, parts: readonly Part[]): Shown {
  const { barrel } = placed.at;
  const clear = half(sizes.chamber.target);
  const spigot = tidy(add(half(minus(barrel, sizes.chamber.target)), size('solder.proud')), TENTH, 'up');
  const where = { branch: 'branch', form: sizes.end.form, at: outlet, from: minus(half(barrel), spigot), clear };
  const side = levelEnd({ ...where, coupling: sizes.coupling, pipe: sizes.end.pipe }, parts);
  return {
    stands: [{ part: 'body', way: 'up', at: len(0) }, placed.low.nut, ...placed.standing],
    branches: side.branches,
    rings: [...ringsOf(sizes, placed), ...side.rings],
    flow: [
      { end: 'below', at: len(0), does: 'in' },
      { end: 'side', at: outlet, does: 'out' },
    ],
  };
}

/** The outlet goes out above, `top`: by a union, a pipe in a socket, or a flange round the cap's spigot. */
function inLine(sizes: CheckValveSizes, placed: Placed, top: Len, parts: readonly Part[]): Shown {
  const { form, pipe } = sizes.end;
  const high = form === 'union' ? uprightEnd('up', unionOf(sizes), top, parts) : undefined;
  const flange: Stands = form === 'flanged' ? [{ part: 'pipe-flange', way: 'down', at: add(top, size('flange.short')), round: true }] : [];
  const plain = form === 'plain' ? [pipeRing(pipe, minus(top, pipeOverlap(pipe)), add(top, pipe.outside))] : [];
  return {
    stands: [
      ...flange,
      { part: 'body', way: 'up', at: len(0) },
      placed.low.nut,
      ...(high ? [high.nut] : []),
      ...placed.standing,
      ...(high ? [high.nipple] : []),
    ],
    branches: [],
    rings: [...ringsOf(sizes, placed), ...(high?.rings ?? plain)],
    flow: [
      { end: 'below', at: len(0), does: 'in' },
      { end: 'above', at: top, does: 'out' },
    ],
  };
}
