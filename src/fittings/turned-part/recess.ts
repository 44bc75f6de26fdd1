/** Grooves inside a bore: asked for by name, or the relief in which an inside thread ends. */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import { size } from '../limits.ts';
import type { Hole, OutlineAsk, Recess } from '../outline.ts';
import { insideReliefOf } from '../threads.ts';
import type { AskedHole, TurnedPartAsked } from './asked.ts';
import { type Faults, fault, type Path } from './fault.ts';
import type { Letters } from './letters.ts';
import { limitsOf } from './limits.ts';

/** `lengths`: its width, and its far wall from the end that it is made from. */
export type LaidRecess = { readonly recess: Recess; readonly hole: string; readonly lengths: OutlineAsk['lengths'] };

/** The holes as they are without grooves, and the letters of the ends. */
type Bored = { readonly holes: readonly Hole[]; readonly length: Len; readonly ends: Readonly<Record<End, string>> };

/** Each hole with the grooves in it. */
export const withRecesses = (holes: readonly Hole[], recesses: readonly LaidRecess[]): readonly Hole[] =>
  holes.map((hole) => {
    const own = recesses.filter((one) => one.hole === hole.name).map((one) => one.recess);
    return own.length > 0 ? { ...hole, recesses: own } : hole;
  });

export function recessesOf(asked: TurnedPartAsked, bored: Bored, letters: Letters, faults: Faults): readonly LaidRecess[] {
  return asked.inside.flatMap((one, i) => (one.groove ? (recessOf(one, ['inside', i], bored, letters, faults) ?? []) : []));
}

function recessOf(asked: AskedHole, path: Path, { holes, length, ends }: Bored, letters: Letters, faults: Faults): LaidRecess | undefined {
  const { name, from: end, depth, groove, diameter } = asked;
  const other = (['thread', 'bottom', 'full', 'cone', 'relief'] as const).find((key) => asked[key] !== undefined);
  if (other) fault(faults, path, 'two-kinds', { feature: name, one: 'groove', two: other });
  if (!diameter && !other) fault(faults, path, 'one-size', { feature: name, none: true });
  if (depth === 'through') fault(faults, [...path, 'depth'], 'recess-through', { feature: name });
  if (!diameter || !groove || depth === 'through' || other) return undefined;
  const limits = limitsOf(diameter, 'hole', name, [...path, 'diameter'], faults);
  const width = limitsOf(groove, 'length', name, [...path, 'groove'], faults);
  const far = limitsOf(depth, 'length', name, [...path, 'depth'], faults);
  if (!limits || !width || !far) return undefined;
  const stretch = stretchOf(end, depth.nominal, groove.nominal, length);
  const hole = holes.find((one) => lies(stretch, one));
  if (!hole) {
    fault(faults, path, 'recess-nowhere', { feature: name, from: stretch.from, to: stretch.to });
    return undefined;
  }
  const least = hole.thread ? hole.thread.size.root : hole.size.hi;
  if (limits.lo <= least) fault(faults, [...path, 'diameter'], 'recess-shallow', { feature: name, hole: hole.name, least });
  if (hole.thread && cutsThread(stretch, hole)) fault(faults, path, 'recess-in-thread', { feature: name, hole: hole.name });
  const [near, deep] = [letters.take(undefined), letters.take(asked.letter)];
  const [first, second] = end === 'first' ? [near, deep] : [deep, near];
  return {
    recess: { name, role: asked.role ?? 'clearance', size: limits, ...stretch, first: { letter: first }, second: { letter: second } },
    hole: hole.name,
    lengths: [
      { from: first, to: second, limits: width },
      { from: ends[end], to: deep, limits: far },
    ],
  };
}

type Stretch = { readonly from: Len; readonly to: Len };
const stretchOf = (end: End, depth: Len, width: Len, length: Len): Stretch =>
  end === 'first' ? { from: minus(depth, width), to: depth } : { from: minus(length, depth), to: add(minus(length, depth), width) };

/** With some of the bore on either side of it: a groove at a floor is a relief. What its radii take at either end is not bore. */
function lies({ from, to }: Stretch, hole: Hole): boolean {
  const land = size('part.wall.least');
  const taken = (bends: 'round' | 'fillet'): number => (hole.arcs?.find((arc) => arc.bends === bends)?.across.hi ?? 0) / 2;
  const [first, second] = hole.opens[0] === 'second' ? [taken('fillet'), taken('round')] : [taken('round'), taken('fillet')];
  return minus(from, hole.from) >= land + first && minus(hole.to, to) >= land + second;
}

function cutsThread({ from, to }: Stretch, hole: Hole): boolean {
  const { thread } = hole;
  if (!thread) return false;
  return hole.opens[0] === 'second' ? to > thread.to : from < thread.to;
}

/** The relief behind an inside thread: at its flat floor, as wide as the tool needs to stop in. */
export function reliefIn(hole: Pick<Hole, 'name' | 'from' | 'to' | 'opens'>, thread: Parameters<typeof insideReliefOf>[0]) {
  const { width, floor } = insideReliefOf(thread);
  const first = hole.opens[0] !== 'second';
  const wall = len(first ? hole.to - width.target : hole.from + width.target);
  return { width, floor, from: first ? wall : hole.from, to: first ? hole.to : wall };
}
