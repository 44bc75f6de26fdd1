/** What is said of putting a check valve together and trying it, and what is bought for it. */
import { add, type Len, showMm, toMm } from '../../base/units.ts';
import type { BoughtItem, Say } from '../../model/part.ts';
import { boltsFor, type EndForm, flangeFor } from '../ends.ts';
import { MM, size, tidy } from '../limits.ts';
import type { ThreadPair } from '../threads.ts';
import { pipeOverlap } from '../union.ts';
import { ballDepth } from './cap.ts';
import type { CheckValveSizes } from './sizes.ts';

/** A ring under the seat piece and one under the cap. */
export function bought(sizes: CheckValveSizes): readonly BoughtItem[] {
  const alike = sizes.seat.name === sizes.cap.name;
  return [
    { id: 'ball', kind: 'ball', quantity: 1, grounds: { diameter: toMm(sizes.ball) } },
    ringFor('joint-ring', sizes.seat, alike ? 1 + 1 : 1),
    ...(alike ? [] : [ringFor('cap-ring', sizes.cap, 1)]),
    ...(sizes.end.form === 'flanged' ? boltsFor(flangeFor(sizes.outlet), 1) : []),
  ];
}

function ringFor(id: string, thread: ThreadPair, quantity: number): BoughtItem {
  const outside = showMm(tidy(add(thread.outside.major.hi, size('flange.over-thread')), MM, 'near'), 0);
  return { id, kind: 'joint-ring', quantity, grounds: { size: thread.name, outside, thick: showMm(size('joint.ring'), 1) } };
}

/** The measured sum, in the order in which it is measured; then the ends. */
export function assembly(sizes: CheckValveSizes): readonly Say[] {
  const { form } = sizes.end;
  const grounds = {
    lift: showMm(sizes.lift, 2),
    ring: showMm(size('joint.ring.tight'), 2),
    depth: showMm(ballDepth(sizes), 1),
    ball: wholeMm(sizes.ball),
    overlap: showMm(pipeOverlap(sizes.end.pipe), 1),
    pattern: sizes.stop ? 'straight' : 'angle',
    outlet: form,
  };
  return [
    'assembly.wash',
    'assembly.seat-piece',
    'assembly.ball',
    'assembly.measure-depth',
    'assembly.stem-sum',
    'assembly.cap',
    'assembly.prove-lift',
    ...(sizes.stop ? CAP_ENDS : BRANCH_ENDS)[form],
    'assembly.upright',
  ].map((id) => ({ id, grounds }));
}
type Steps = Readonly<Record<EndForm, readonly string[]>>;
const BRANCH_ENDS: Steps = { union: [], plain: ['assembly.plain-end'], flanged: ['assembly.flange'] };
/** What is soldered to a cap is soldered when its stem is cut and the lift is proved. */
const CAP_ENDS: Steps = {
  union: ['assembly.cap-union'],
  plain: ['assembly.cap-plain-end'],
  flanged: ['assembly.cap-flange', 'assembly.flange'],
};

/** The inlet has a union always; the outlet what it has. */
export function tests(sizes: CheckValveSizes): readonly Say[] {
  const { form } = sizes.end;
  const day = { unions: true, plain: form === 'plain', flanged: form === 'flanged', coupling: sizes.coupling.name };
  return [
    ...['test.ball-magnet', 'test.seat-syringe', 'test.solder', 'test.union-blue', 'test.lift'],
    ...['test.day-parts', 'test.cold-water', 'test.after'],
  ].map((id) => ({ id, grounds: { outlet: form, pattern: sizes.stop ? 'straight' : 'angle', ...day } }));
}

export function cautions(lead: boolean): readonly Say[] {
  const ids = [
    ...['caution.lathe', 'caution.bar', 'caution.parting', 'caution.soldering', 'caution.hardening'],
    ...(lead ? ['caution.lead'] : []),
    ...['caution.pressure', 'caution.inspector'],
  ];
  return ids.map((id) => ({ id, grounds: {} }));
}

/** Of a ball that is sold by the inch to the last figure, so that its fraction is known again. */
function wholeMm(length: Len): string {
  const shown = showMm(length, 1);
  return Number(shown) === toMm(length) ? shown : String(toMm(length));
}
