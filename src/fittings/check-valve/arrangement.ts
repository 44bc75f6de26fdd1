/** How the parts of a check valve stand together, on the body's lower face. The seat piece's first end is its seat, the cap's the tip of its stem. */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { Arrangement, Part } from '../../model/part.ts';
import { half, size, TENTH, tidy } from '../limits.ts';
import { type BodyLayout, layOutBody } from './body.ts';
import { stemLength } from './cap.ts';
import type { CheckValveSizes } from './sizes.ts';

/** Nothing where the outlet is in line. */
export function arrangementOf(sizes: CheckValveSizes, parts: readonly Part[]): Arrangement | undefined {
  const at = layOutBody(sizes);
  const long = (id: string): Len => parts.find((part) => part.id === id)?.length ?? len(0);
  if (at.outlet === undefined) return undefined;
  return {
    stand: 'upright',
    stands: [
      { part: 'body', way: 'up', at: len(0) },
      { part: 'seat-piece', way: 'down', at: at.seat },
      { part: 'cap', way: 'up', at: minus(add(at.length, size('joint.ring.tight')), stemLength(sizes)) },
    ],
    branches: branchesOf(sizes, at, at.outlet, long('branch')),
    ball: { at: add(at.seat, sizes.centre), across: sizes.ball },
    flow: [
      { end: 'below', at: len(0), does: 'in' },
      { end: 'side', at: at.outlet, does: 'out' },
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
