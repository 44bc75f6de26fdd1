/** Threads as a design uses them: both halves of a pair, their reliefs and starts. */
import { present } from '../base/asking.ts';
import { add, type Len, len, minus } from '../base/units.ts';
import type { ThreadLimits } from '../handbook/iso965-metric.ts';
import { reliefWidth } from '../handbook/practice.ts';
import { thread as threadCalled } from '../handbook/threads.ts';
import type { Limits, ThreadSize } from '../model/part.ts';
import { about, between, half, ratio, size, TENTH, tidy, times } from './limits.ts';
import type { ThreadAsk } from './outline.ts';

export type ThreadPair = { readonly name: string; readonly outside: ThreadSize; readonly inside: ThreadSize };

/** In the usual class of its family on either side. Nothing when the handbook has no such thread. */
export function threadPair(name: string): ThreadPair | undefined {
  if (!PAIRS.has(name)) PAIRS.set(name, pairOf(name));
  return PAIRS.get(name);
}
/** As they were asked for: a choice of sizes asks for the same ones over and over. */
const PAIRS = new Map<string, ThreadPair | undefined>();

function pairOf(name: string): ThreadPair | undefined {
  const [outside, inside] = [threadOf(name, 'outside'), threadOf(name, 'inside')];
  return outside && inside && { name: outside.name, outside, inside };
}

/** One half of a pair; `cls` '6g', '6H', 'close' …, the family's usual one when absent. Nothing when the handbook has no such thread or class. */
export function threadOf(name: string, side: 'outside' | 'inside', cls?: string): ThreadSize | undefined {
  const { thread: found, left = false } = threadCalled(name) ?? {};
  const limits = found?.limits(side, cls ?? found[side][0] ?? '');
  return found && limits && threadSize(limits, found.perInch, left);
}

function threadSize(t: ThreadLimits, perInch: number | undefined, left: boolean): ThreadSize {
  const name = left ? `${t.name} LH` : t.name;
  const as = `${name}-${t.cls}`;
  const limits = (pair: { readonly lo: Len; readonly hi: Len }): Limits => between(pair.lo, pair.hi, aim(pair.lo, pair.hi), as, 'thread');
  return {
    name,
    cls: t.cls,
    major: limits(t.major),
    pitchDiameter: limits(t.pitchDiameter),
    minor: limits(t.minor),
    root: t.root,
    pitch: t.pitch,
    ...present({ perInch }),
    hand: left ? 'left' : t.hand,
    flankAngle: t.flankAngle,
  };
}

/** A tenth of a millimetre between the limits if there is one, else their middle to a hundredth. */
function aim(lo: Len, hi: Len): Len {
  const middle = len(lo + Math.floor((hi - lo) / 2));
  const tenth = tidy(middle, TENTH, 'near');
  return lo <= tenth && tenth <= hi ? tenth : len(Math.floor(middle / 100) * 100);
}

/** Relief wide enough for the tool to stop in, its floor under the least root. Width may be over, never under. */
export function reliefOf(thread: ThreadSize): { readonly width: Limits; readonly floor: Limits } {
  const width = tidy(reliefWidth(thread.pitch), TENTH, 'up');
  const floor = tidy(minus(thread.root, size('relief.under-root')), TENTH, 'down');
  return {
    width: between(width, add(width, size('band.chamfer')), width, 'relief'),
    floor: about(floor, size('relief.band'), 'under the root'),
  };
}

/** Under the shoulder: full thread and relief, as a bonnet, a plug or a cap enters a body. */
export function screwedLength(thread: ThreadPair): Len {
  const relief = reliefOf(thread.outside).width.target;
  return add(tidy(times(thread.outside.major.hi, ratio('seat-piece.engagement')), TENTH, 'near'), relief);
}

/** Of the part that carries the thread, between its bore and the floor of the relief. */
export const wallIn = (thread: ThreadPair, bore: Len): Len => half(minus(reliefOf(thread.outside).floor.lo, bore));
/** A socket of that thread leaves a ledge round a chamber that goes on from it. */
export const isClearOf = (thread: ThreadPair, chamber: Len): boolean => thread.inside.minor.lo > add(chamber, size('wall.least'));

/** The same in a bore: its floor beyond the greatest root. */
export function insideReliefOf(thread: ThreadSize): { readonly width: Limits; readonly floor: Limits } {
  const floor = tidy(add(thread.root, size('relief.under-root')), TENTH, 'up');
  return { width: reliefOf(thread).width, floor: about(floor, size('relief.band'), 'over the root') };
}

/**
 * An outside thread with its start and relief; `nose` is the greatest diameter of a plain nose before it, if there is one. The start goes down
 * to just under the root, and no farther where the nose is thinner than that.
 */
export function outsideThread(thread: ThreadSize, start: ThreadAsk['start'], nose?: Len): ThreadAsk {
  const clear = size('thread.chamfer.clear');
  const band = size('band.chamfer');
  const free = tidy(minus(thread.root, clear), TENTH, 'down');
  const mouth = nose === undefined ? free : len(Math.max(free, tidy(add(add(nose, clear), band), TENTH, 'up')));
  return { size: thread, start, chamfer: about(mouth, band, 'thread start'), relief: reliefOf(thread) };
}

/** Mouth of an inside thread: a little over its major diameter. */
export function insideChamfer(thread: ThreadSize): Limits {
  const band = size('band.chamfer');
  return about(tidy(add(thread.major.lo, add(size('thread.chamfer.clear'), band)), TENTH, 'up'), band, 'thread start');
}
