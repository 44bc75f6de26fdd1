/** The union coupling that seat pieces and branches carry: thread, relief at the shoulder, a 60 degree cone in the mouth. */
import { add, type Len, minus } from '../base/units.ts';
import type { End } from '../model/ids.ts';
import type { Workshop } from '../model/workshop.ts';
import { fineThread } from './choose-thread.ts';
import { about, ratio, size, TENTH, tidy, times } from './limits.ts';
import type { Hole, Section } from './outline.ts';
import { outsideThread, type ThreadPair } from './threads.ts';
import { nutHasFloor, type UnionAsk } from './union.ts';

/** Length of the coupling from its shoulder to its end: full thread and the relief behind it, to half a millimetre. */
export function couplingLength(thread: ThreadPair): Len {
  const relief = outsideThread(thread.outside, 'second').relief;
  return tidy(
    add(times(thread.outside.major.hi, ratio('coupling.engagement')), relief?.width.target ?? size('part.past')),
    add(TENTH, minus(size('face.allowance'), TENTH)),
    'up',
  );
}

export function couplingSection(thread: ThreadPair, start: End, name = 'coupling'): Section {
  return { name, role: 'thread', size: thread.outside.major, length: couplingLength(thread), thread: outsideThread(thread.outside, start) };
}

/** Mouth of the cone: under the root of the thread, so that the rim stays. */
export function couplingCone(thread: ThreadPair, at: End): NonNullable<Hole['cone']> {
  const mouth = tidy(minus(thread.outside.root, size('coupling.cone.under-root')), TENTH, 'near');
  return { name: 'cone', at, angle: ratio('coupling.cone'), mouth: about(mouth, size('band.cone.mouth'), 'union cone'), role: 'sealing' };
}

/** Of a union on that pipe, where none is named: its nut keeps a floor, and what else is asked of it. */
export function couplingThread(pipe: UnionAsk['pipe'], workshop: Workshop, suits: (thread: ThreadPair) => boolean = () => true): string {
  const least = add(pipe.outside, size('coupling.over-pipe'));
  return fineThread({ least, pipe, suits: (thread) => nutHasFloor({ thread, pipe }) && suits(thread) }, workshop);
}
