/** How the parts of a check valve stand together, on the body's lower face. The seat piece's first end is its seat, the cap's the tip of its stem. */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { Arrangement, Part } from '../../model/part.ts';
import { jointRing, lengthOf } from '../arranged.ts';
import { half, size, TENTH, tidy } from '../limits.ts';
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
  const standing = [
    { part: 'seat-piece', way: 'down', at: at.seat },
    { part: 'cap', way: 'up', at: stem },
  ] as const;
  if (at.outlet === undefined) return { ...common, ...inLine(sizes, at, add(stem, lengthOf(parts, 'cap')), standing) };
  return {
    ...common,
    stands: [{ part: 'body', way: 'up', at: len(0) }, ...standing],
    branches: branchesOf(sizes, at, at.outlet, lengthOf(parts, 'branch')),
    flow: [
      { end: 'below', at: len(0), does: 'in' },
      { end: 'side', at: at.outlet, does: 'out' },
    ],
  };
}

type Stands = Arrangement['stands'];
type Placed = Pick<Arrangement, 'stands' | 'branches' | 'rings' | 'flow'>;

/** The outlet goes out above, `top`; a flange stands round the cap's spigot there. */
function inLine(sizes: CheckValveSizes, at: BodyLayout, top: Len, standing: Stands): Placed {
  const flange: Stands = [{ part: 'pipe-flange', way: 'down', at: add(top, size('flange.short')), round: true }];
  return {
    stands: [...(sizes.end.form === 'flanged' ? flange : []), { part: 'body', way: 'up', at: len(0) }, ...standing],
    branches: [],
    rings: [jointRing(sizes.seat, minus(len(0), size('joint.ring.tight'))), jointRing(sizes.cap, at.length)],
    flow: [
      { end: 'below', at: len(0), does: 'in' },
      { end: 'above', at: top, does: 'out' },
    ],
  };
}

function branchesOf(sizes: CheckValveSizes, { barrel }: BodyLayout, outlet: Len, long: Len): Arrangement['branches'] {
  const clear = half(sizes.chamber.target);
  const spigot = tidy(add(half(minus(barrel, sizes.chamber.target)), size('solder.proud')), TENTH, 'up');
  const from = minus(half(barrel), spigot);
  const joint = add(add(from, long), size('flange.short'));
  return [
    ...(sizes.end.form === 'flanged' ? [{ part: 'pipe-flange', way: 'in' as const, at: outlet, from: joint, clear }] : []),
    { part: 'branch', way: 'out', at: outlet, from, clear },
  ];
}
