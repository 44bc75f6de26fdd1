/** Holes from either end: which stretch each of them is, what it ends in, and from which ends it can be reached. */
import { add, type Len, len, minus } from '../../base/units.ts';
import { type End, other } from '../../model/ids.ts';
import type { Limits, ThreadSize } from '../../model/part.ts';
import { ratio, size, TENTH, tidy, times } from '../limits.ts';
import type { Hole } from '../outline.ts';
import { insideChamfer, threadOf } from '../threads.ts';
import type { AskedHole, TurnedPartAsked } from './asked.ts';
import { type Faults, fault, type Path } from './fault.ts';
import { holeArcs } from './hole-radius.ts';
import type { Letters } from './letters.ts';
import { limitsOf } from './limits.ts';
import { coneLength, unknownThread } from './outside.ts';
import { reliefIn } from './recess.ts';

/** `depth`: of its flat floor, from the end that it is made from. */
export type Laid = { readonly hole: Hole; readonly depth?: { readonly end: End; readonly letter: string; readonly limits: Limits } };

type Stretch = { readonly from: Len; readonly to: Len };
type Bored = Stretch & {
  readonly asked: AskedHole;
  readonly path: Path;
  readonly size: Limits;
  readonly thread?: ThreadSize;
};

export function holesOf(asked: TurnedPartAsked, length: Len, letters: Letters, faults: Faults): readonly Laid[] {
  const before = faults.length;
  const bored = asked.inside.flatMap((hole, i) => (hole.groove ? [] : (bore(hole, ['inside', i], length, faults) ?? [])));
  if (faults.length > before) return [];
  const cut = bored.map((hole) => ({ hole, left: whatIsLeft(hole, bored, faults) }));
  if (faults.length > before) return [];
  const stretches = cut.flatMap(({ hole, left }) => (left ? [{ ...hole, ...left }] : []));
  return stretches.map((hole, i) => lay(hole, i, stretches, bored, length, letters, faults));
}

function bore(hole: AskedHole, path: Path, length: Len, faults: Faults): Bored | undefined {
  const { name, diameter, thread } = hole;
  if ((diameter === undefined) === (thread === undefined)) {
    fault(faults, path, 'one-size', { feature: name, none: diameter === undefined });
    return undefined;
  }
  const threaded = thread?.thread === undefined ? undefined : threadOf(thread.thread, 'inside', thread.fit);
  if (thread && !threaded)
    fault(faults, [...path, 'thread'], 'thread-unknown', unknownThread(name, thread.thread ?? thread.text, thread.fit ?? ''));
  const limits = threaded?.minor ?? (diameter && limitsOf(diameter, 'hole', name, [...path, 'diameter'], faults));
  if (!limits) return undefined;
  const deep = hole.depth === 'through' ? length : hole.depth.nominal;
  if (hole.depth !== 'through' && deep >= length) fault(faults, [...path, 'depth'], 'hole-deep', { feature: name, depth: deep, length });
  const stretch = hole.from === 'first' ? { from: len(0), to: deep } : { from: minus(length, deep), to: length };
  return { asked: hole, path, size: limits, ...stretch, ...(threaded ? { thread: threaded } : {}) };
}

/** Larger holes take what they cover; what is left is one stretch, because every hole begins at an end. */
function whatIsLeft(hole: Bored, all: readonly Bored[], faults: Faults): Stretch | undefined {
  let { from, to } = hole;
  for (const other of all) {
    if (other === hole || other.to <= from || other.from >= to) continue;
    const grounds = { feature: hole.asked.name, other: other.asked.name };
    if (other.size.hi >= hole.size.lo && hole.size.hi >= other.size.lo) {
      if (all.indexOf(other) < all.indexOf(hole)) fault(faults, hole.path, 'holes-overlap', grounds);
      continue;
    }
    if (other.size.target < hole.size.target) continue;
    if (other.from <= from && other.to >= to) {
      fault(faults, hole.path, 'hole-swallowed', grounds);
      return undefined;
    }
    if (other.from <= from) from = other.to;
    else to = other.from;
  }
  return { from, to };
}

function lay(hole: Bored, i: number, all: readonly Bored[], raw: readonly Bored[], length: Len, letters: Letters, faults: Faults): Laid {
  const { asked, path } = hole;
  const bottom = bottomOf(hole, raw[i] ?? hole, all, length, faults);
  const floor = bottom === 'flat' ? { letter: letters.take(asked.letter), role: asked['floor-role'] ?? 'free' } : undefined;
  if (asked.letter !== undefined && !floor)
    fault(faults, [...path, 'letter'], 'letter-without-face', { feature: asked.name, letter: asked.letter });
  const stated = asked.depth !== 'through' && (asked.depth.upper !== undefined || asked.depth.fit !== undefined);
  if (stated && !floor) fault(faults, [...path, 'depth'], 'depth-without-face', { feature: asked.name });
  const depth = floor && asked.depth !== 'through' ? limitsOf(asked.depth, 'length', asked.name, [...path, 'depth'], faults) : undefined;
  const opens = opensOf(hole, all, length);
  const relief = reliefOfHole(hole, opens, bottom, faults);
  const thread = hole.thread && insideThread(hole, hole.thread, { bottom, relief: relief?.width.target ?? len(0) }, length, faults);
  const cone = asked.cone && coneIn(hole, length, faults);
  const arcs = holeArcs(hole, { all, length, flat: floor !== undefined }, faults);
  return {
    hole: {
      name: asked.name,
      role: hole.thread ? 'thread' : (asked.role ?? 'free'),
      size: hole.size,
      from: hole.from,
      to: hole.to,
      opens,
      ...(asked.role === 'seat' ? { edge: asked.from } : {}),
      ...(floor ? { floor } : {}),
      ...(bottom === 'point' ? { blind: true as const } : {}),
      ...(thread ? { thread } : {}),
      ...(relief ? { relief } : {}),
      ...(cone ? { cone } : {}),
      ...(arcs.length > 0 ? { arcs } : {}),
    },
    ...(floor && depth ? { depth: { end: asked.from, letter: floor.letter, limits: depth } } : {}),
  };
}

/** 'open': it goes through, or runs into a hole that is larger. */
function bottomOf(hole: Bored, raw: Bored, all: readonly Bored[], length: Len, faults: Faults): 'flat' | 'point' | 'open' {
  const { asked, path } = hole;
  const inner = asked.from === 'first' ? hole.to : hole.from;
  const wanted = asked.from === 'first' ? raw.to : raw.from;
  const goesOn = all.find((h) => h !== hole && (asked.from === 'first' ? h.from : h.to) === inner);
  if (asked.depth === 'through' || inner !== wanted || (goesOn && goesOn.size.target > hole.size.target)) {
    if (asked.bottom) fault(faults, [...path, 'bottom'], 'bottom-of-open-hole', { feature: asked.name });
    return 'open';
  }
  if (goesOn) {
    if (asked.bottom !== 'point') return 'flat';
    checkPoint(hole, goesOn, faults);
    return 'point';
  }
  if (asked.bottom === 'flat') return 'flat';
  const point = pointRun(hole.size.target);
  const tip = asked.from === 'first' ? add(inner, point) : minus(inner, point);
  const stop = solidUntil(hole, all, length);
  if (asked.from === 'first' ? tip >= stop : tip <= stop)
    fault(faults, [...path, 'depth'], 'point-breaks-through', {
      feature: asked.name,
      point: tidy(point, TENTH, 'up'),
      depth: minus(hole.to, hole.from),
    });
  return 'point';
}

/** How far a drill's point reaches past its full diameter, over which it narrows by so much. */
const pointRun = (narrows: Len): Len => times(narrows, 1 / (2 * Math.tan((ratio('drill.point') * Math.PI) / (2 * ratio('turn.half')))));

/** The point of the larger drill runs out in the smaller hole, and leaves some of it, at the limits at which that is least. */
function checkPoint({ asked, path, size: wide }: Bored, goesOn: Bored, faults: Faults): void {
  const point = pointRun(minus(wide.hi, goesOn.size.lo));
  const [has, wants] = [minus(goesOn.to, goesOn.from), add(point, size('length.least-surface'))];
  const grounds = {
    feature: asked.name,
    other: goesOn.asked.name,
    point: tidy(point, TENTH, 'up'),
    has,
    by: tidy(minus(wants, has), TENTH, 'up'),
  };
  if (has < wants) fault(faults, [...path, 'bottom'], 'point-into-hole', grounds);
}

/** Where the metal beyond a blind hole ends: at the other end, or at a hole from there. */
function solidUntil(hole: Bored, all: readonly Bored[], length: Len): Len {
  const beyond = all.filter((h) => h !== hole && (hole.asked.from === 'first' ? h.from >= hole.to : h.to <= hole.from));
  if (hole.asked.from === 'first') return len(Math.min(length, ...beyond.map((h) => h.from)));
  return len(Math.max(0, ...beyond.map((h) => h.to)));
}

/** Its own end first. An end is open if everything between is bored, and larger. */
function opensOf(hole: Bored, all: readonly Bored[], length: Len): readonly End[] {
  const open = (end: End): boolean => {
    let at = end === 'first' ? hole.from : hole.to;
    const goal = end === 'first' ? 0 : length;
    while (at !== goal) {
      const next = all.find((h) => h !== hole && (end === 'first' ? h.to : h.from) === at && h.size.target > hole.size.target);
      if (!next) return false;
      at = end === 'first' ? next.from : next.to;
    }
    return true;
  };
  const { from } = hole.asked;
  const far: End = from === 'first' ? 'second' : 'first';
  return [from, far].filter((end): end is End => open(end as End));
}

/** It stands at a flat floor: nowhere else does an inside thread end against a wall. */
function reliefOfHole({ asked, path, thread, from, to }: Bored, opens: readonly End[], bottom: string, faults: Faults): Hole['relief'] {
  if (!asked.relief) return undefined;
  if (!thread || bottom !== 'flat') {
    fault(faults, [...path, 'relief'], 'recess-relief', { feature: asked.name, thread: thread !== undefined });
    return undefined;
  }
  return reliefIn({ name: asked.name, from, to, opens }, thread);
}

function insideThread(
  hole: Bored,
  thread: ThreadSize,
  { bottom, relief }: { readonly bottom: 'flat' | 'point' | 'open'; readonly relief: Len },
  length: Len,
  faults: Faults,
): NonNullable<Hole['thread']> {
  const { asked, path } = hole;
  const first = asked.from === 'first';
  const inner = first ? hole.to : minus(length, hole.from);
  const mouth = first ? hole.from : minus(length, hole.to);
  const dead = bottom === 'open' ? len(0) : times(thread.pitch, ratio('thread.dead'));
  const full = asked.full ?? minus(inner, relief > 0 ? relief : dead);
  const least = bottom === 'open' ? inner : minus(inner, relief > 0 ? relief : len(thread.pitch * 2));
  if (full > least)
    fault(faults, [...path, asked.full ? 'full' : 'depth'], 'thread-bottoms', {
      feature: asked.name,
      full,
      most: least,
      open: bottom === 'open',
    });
  if (full <= mouth) fault(faults, [...path, asked.full ? 'full' : 'depth'], 'thread-lost', { feature: asked.name, full, mouth });
  // right through: where it comes out its mouth is opened as well, from there
  const through = inner === length && full === length;
  const far = through ? { farChamfer: insideChamfer(thread) } : {};
  return { size: thread, to: first ? full : minus(length, full), ...(mouth === 0 ? { chamfer: insideChamfer(thread) } : {}), ...far };
}

function coneIn(hole: Bored, length: Len, faults: Faults): Hole['cone'] {
  const { asked } = hole;
  if (!asked.cone) return undefined;
  const path: Path = [...hole.path, 'cone'];
  const mouth = limitsOf(asked.cone.mouth, 'hole', asked.name, [...path, 'mouth'], faults);
  const both = asked.cone.at === 'both';
  const [opensFirst, opensSecond] = [hole.from === 0, hole.to === length];
  const atEnd = both ? opensFirst && opensSecond : asked.from === 'first' ? opensFirst : opensSecond;
  if (!atEnd) fault(faults, path, 'cone-within', { feature: asked.name, both });
  if (hole.thread) fault(faults, path, 'two-kinds', { feature: asked.name, one: 'thread', two: 'cone' });
  if (!mouth || !atEnd) return undefined;
  if (mouth.lo <= hole.size.hi) fault(faults, [...path, 'mouth'], 'cone-mouth', { feature: asked.name, least: hole.size.hi });
  const times = (run: Len): Len => (both ? add(run, run) : run);
  const long = times(coneLength(hole.size.lo, mouth.hi, asked.cone.angle));
  const has = minus(hole.to, hole.from);
  const room = minus(has, size('length.least-surface'));
  const limits = times(coneLength(hole.size.target, mouth.target, asked.cone.angle)) <= room;
  if (long > room) fault(faults, path, 'cone-long', { feature: asked.name, has, wants: tidy(long, TENTH, 'up'), outside: false, limits });
  const cone = { at: asked.from, angle: asked.cone.angle, mouth, role: asked.cone.role ?? asked.role ?? 'free' };
  return both
    ? { ...cone, name: `${asked.name}.${asked.from}-cone`, twin: `${asked.name}.${other(asked.from)}-cone` }
    : { ...cone, name: `${asked.name}.cone` };
}
