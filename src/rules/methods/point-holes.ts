/** A hole that ends in a drill's point stays as a drill leaves it: refused where none on the rack leaves it so, or none at all. */
import { type Len, len, minus, mm } from '../../base/units.ts';
import { held } from '../../handbook/capability.ts';
import type { Limits } from '../../model/part.ts';
import type { Refusal } from '../../model/plan.ts';
import type { Context, Hole } from '../context.ts';
import { CUSTOM, type MethodRule, methodRule } from '../rule.ts';
import { drill } from '../tools.ts';
import { drilling, TO_SIZE } from './drilling.ts';
import { sizeOfDrill } from './holes.ts';
import { isHole } from './seat.ts';

export const pointedRefused: MethodRule = methodRule({
  id: 'no-drill-of-size',
  source: CUSTOM,
  when: (c, f) => (isHole(f) && f.blind && !f.centre && sizeOfDrill(c, f) === undefined ? { f } : undefined),
  then: ({ f }, c) => ({ refused: [refused(c, f)] }),
});

function refused(c: Context, f: Hole): Refusal {
  const { size } = c.cylinder(f.cylinder);
  const wants = wanted(size);
  const band = minus(size.hi, size.lo);
  const coarse: Refusal = { what: f.id, because: { rule: 'drill-too-coarse', grounds: {} } };
  if (wants === undefined) return { ...coarse, has: band, wants: holds(size.target) };
  if (f.role === 'seat' || f.role === 'running' || f.madeTo) return coarse;
  const because = { rule: 'no-drill-of-size', grounds: {} };
  const method = { feature: f.id, name: 'drill', because, operations: drilling(c, f, wants, TO_SIZE), rank: 0 };
  return { what: f.id, because, wants, lacks: drill(wants).key, would: { method } };
}

const holds = (size: Len): Len => held('drill', 'diameter', 'final', size);

/** As near to the size aimed at as leaves room for what a drill cuts over its own; in tenths of a millimetre where there is one. */
function wanted({ lo, hi, target }: Limits): Len | undefined {
  const most = len(Math.min(target, hi - holds(target)));
  const tenth = mm(1 / 10);
  const round = len(Math.floor(most / tenth) * tenth);
  return most < lo ? undefined : round >= lo ? round : most;
}
