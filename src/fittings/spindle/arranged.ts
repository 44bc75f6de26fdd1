/** The spindle where it works, shut: on the seat that it is for, under the bonnet of that valve where the room is known, its wheel on the square. */
import { add, len, minus } from '../../base/units.ts';
import type { ArrangedRing, Arrangement } from '../../model/part.ts';
import { wheelNut } from '../arranged.ts';
import { ratio, size, times } from '../limits.ts';
import type { SpindleAsk } from '../spindle.ts';
import type { SpindleAsked } from './asked.ts';
import { tipToCircle } from './chains.ts';

/** Heights over the edge of the seat. */
export function arrangementOf(asked: SpindleAsked, sizes: Omit<SpindleAsk, 'material' | 'rod'>): Arrangement {
  const tip = minus(len(0), tipToCircle(asked.bore, sizes.cone));
  const square = add(tip, add(sizes.plug.length, add(sizes.thread.length, sizes.stem.length)));
  const top = add(square, add(sizes.square.length, size('square.in-wheel')));
  const wide = times(sizes.plug.across, 2);
  const seat: ArrangedRing = {
    item: 'seat',
    from: minus(len(0), size('stop.web.least')),
    to: len(0),
    inside: asked.bore,
    outside: wide,
    shown: 'metal',
  };
  const wheel: ArrangedRing = {
    item: 'wheel',
    from: square,
    to: top,
    inside: sizes.square.across,
    outside: times(asked.bore, ratio('wheel.ratio')),
    shown: 'metal',
  };
  return {
    ...{ stand: 'any way', branches: [], flow: [{ end: 'below', at: len(0), does: 'in' }] },
    stands: [{ part: 'spindle', way: 'up', at: tip, whole: true }],
    rings: [seat, ...bonnetOf(asked, sizes), wheel, ...wheelNut(sizes.end.pair, top)],
    grounds: { room: asked.room !== undefined },
  };
}

/** As much of it as its thread holds; of two threads in each other the outer one is drawn (ISO 6410-1). */
function bonnetOf({ room }: SpindleAsked, { thread, plug }: Pick<SpindleAsk, 'thread' | 'plug'>): readonly ArrangedRing[] {
  if (room === undefined) return [];
  const across = thread.pair.outside.major.hi;
  const to = add(room, times(across, ratio('stop.engagement')));
  return [{ item: 'bonnet', from: room, to, inside: across, outside: times(plug.across, 2), shown: 'metal' }];
}
