/** Where the parts of an end stand when it is coupled up, and what is bought for it: for the picture of a fitting put together. */
import { add, type Len, len, minus } from '../base/units.ts';
import type { ArrangedRing, Arrangement, Part } from '../model/part.ts';
import { couplingCone } from './coupling.ts';
import type { EndForm } from './ends.ts';
import { ratio, size, times } from './limits.ts';
import type { ThreadPair } from './threads.ts';
import { coneLength, headOf, nutLength, pipeBore, pipeOverlap, tipOf, type UnionAsk } from './union.ts';

type Stand = Arrangement['stands'][number];
type Branch = Arrangement['branches'][number];

/** Of a part that is there. Throws Error where it is not: our fault. */
export function lengthOf(parts: readonly Part[], id: string): Len {
  const part = parts.find((one) => one.id === id);
  if (!part) throw new Error(`no part '${id}' to be arranged`);
  return part.length;
}

/** Along the axis of a coupling, outward from its end face: first ends of nipple and nut (theirs lie inward), and the pipe. */
export type Coupled = { readonly nipple: Len; readonly nut: Len; readonly pipe: { readonly from: Len; readonly to: Len } };

/** Cone in cone, the nut's floor on the nipple's head. */
export function coupledUp(ask: Pick<UnionAsk, 'thread' | 'pipe'>, nippleLength: Len): Coupled {
  const tip = tipOf(pipeBore(ask.pipe));
  const nipple = minus(len(0), coneLength(couplingCone(ask.thread, 'first').mouth.target, tip));
  const head = add(coneLength(headOf(ask), tip), size('nipple.head'));
  const nut = minus(add(nipple, head), minus(nutLength(), size('nut.floor')));
  const from = minus(add(nipple, nippleLength), pipeOverlap(ask.pipe));
  return { nipple, nut, pipe: { from, to: add(add(nipple, nippleLength), stub(ask.pipe)) } };
}

/** As much of a pipe as is shown: as long as it is thick. */
const stub = ({ outside }: UnionAsk['pipe']): Len => outside;

export type LevelEnd = {
  readonly branch: string;
  readonly form: EndForm;
  readonly side?: 'left';
  readonly at: Len;
  /** Of the branch's first end. */
  readonly from: Len;
  readonly clear: Len;
  readonly coupling: ThreadPair;
  readonly pipe: UnionAsk['pipe'];
};

/** A branch with what meets it: union nut and nipple, flange, and the pipe. */
export function levelEnd(
  end: LevelEnd,
  parts: readonly Part[],
): { readonly branches: readonly Branch[]; readonly rings: readonly ArrangedRing[] } {
  const { form, side, at, from, clear, pipe } = end;
  const where = { at, clear, ...(side ? { side } : {}) };
  const face = add(from, lengthOf(parts, end.branch));
  const branch: Branch = { ...where, part: end.branch, way: 'out', from };
  const piped = (start: Len, stop: Len): readonly ArrangedRing[] => [pipeRing(pipe, start, stop, { at, ...(side ? { side } : {}) })];
  if (form === 'flanged')
    return { branches: [{ ...where, part: 'pipe-flange', way: 'in', from: add(face, size('flange.short')) }, branch], rings: [] };
  if (form === 'plain') return { branches: [branch], rings: piped(minus(face, pipeOverlap(pipe)), add(face, stub(pipe))) };
  const up = coupledUp({ thread: end.coupling, pipe }, lengthOf(parts, 'nipple'));
  return {
    branches: [
      { ...where, part: 'union-nut', way: 'out', from: add(face, up.nut) },
      branch,
      { ...where, part: 'nipple', way: 'out', from: add(face, up.nipple) },
    ],
    rings: piped(add(face, up.pipe.from), add(face, up.pipe.to)),
  };
}

/** A coupling that looks up or down, its end at height `at`. */
export function uprightEnd(
  way: 'up' | 'down',
  ask: Pick<UnionAsk, 'thread' | 'pipe'>,
  at: Len,
  parts: readonly Part[],
): { readonly nut: Stand; readonly nipple: Stand; readonly rings: readonly ArrangedRing[] } {
  const off = coupledUp(ask, lengthOf(parts, 'nipple'));
  const away = (by: Len): Len => (way === 'up' ? add(at, by) : minus(at, by));
  const [near, far] = [away(off.pipe.from), away(off.pipe.to)];
  return {
    nut: { part: 'union-nut', way, at: away(off.nut), round: true },
    nipple: { part: 'nipple', way, at: away(off.nipple) },
    rings: [near < far ? pipeRing(ask.pipe, near, far) : pipeRing(ask.pipe, far, near)],
  };
}

export function pipeRing(pipe: UnionAsk['pipe'], from: Len, to: Len, level?: ArrangedRing['level']): ArrangedRing {
  return { item: 'pipe', from, to, inside: pipeBore(pipe), outside: pipe.outside, shown: 'metal', ...(level ? { level } : {}) };
}

/** A joint ring as tightened, over the thread that it seals; its lower side at `from`. */
export function jointRing(thread: ThreadPair, from: Len): ArrangedRing {
  const inside = thread.outside.major.hi;
  return {
    ...{ item: 'joint-ring', from, to: add(from, size('joint.ring.tight')), shown: 'thin' },
    ...{ inside, outside: add(inside, size('flange.over-thread')) },
  };
}

/** A washer and a hexagon nut on a thread, up from `from`. */
export function wheelNut(thread: ThreadPair, from: Len): readonly ArrangedRing[] {
  const across = thread.outside.major.hi;
  const washer = add(from, size('washer.thick'));
  const ring = (start: Len, stop: Len, share: string): ArrangedRing => ({
    ...{ item: 'wheel-nut', from: start, to: stop, shown: 'whole' },
    ...{ inside: across, outside: times(across, ratio(share)) },
  });
  return [ring(from, washer, 'washer.across'), ring(washer, add(washer, times(across, ratio('hexagon-nut.height'))), 'hexagon-nut.across')];
}
