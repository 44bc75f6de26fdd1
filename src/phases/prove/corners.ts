/**
 * Worst corners by trial: each working dimension is moved alone to a limit and the route replayed, to learn which ones matter to a
 * measure and which way; then the corner itself is replayed and measured. Nothing is summed.
 */

import { type Replay, replayer } from '../../geometry/replay.ts';
import { type Finished, finishedOf, sameRing } from '../../geometry/ring.ts';
import type { Section } from '../../geometry/section.ts';
import type { DimId, OpId } from '../../model/ids.ts';
import type { Working } from '../../model/plan.ts';
import type { Case } from './claims.ts';

/** A figure read off the finished work; undefined where there is nothing to read. In units. */
export type Measure = (finished: Finished, run: Replay) => number | undefined;
export type Corner = Readonly<Record<DimId, 'lo' | 'hi'>>;
export type Run = { readonly run: Replay; readonly finished: Finished };
export type Corners = {
  /** Every working dimension at its target. */
  readonly base: Run;
  least(measure: Measure): { readonly lo: number | undefined; readonly at: Corner; readonly run: Replay };
  most(measure: Measure): { readonly hi: number | undefined; readonly at: Corner };
  /** A corner replayed so far at which the ring is not this one. */
  changed(ring: readonly string[]): Corner | undefined;
  /** A corner replayed so far at which an operation lacks what it has at the targets. */
  lacking(): Lacking | undefined;
  replays(): number;
};
export type Lacking = { readonly at: OpId; readonly what: string; readonly surface: string; readonly corner: Corner };

export function cornersOf(asked: Case): Corners {
  const { chart } = asked;
  const done = new Map<string, Done>();
  const at = runsOf(asked, done);
  const base = at({});
  const moves = chart.working.filter((one) => one.limits.lo < one.limits.hi).map((one) => moveOf(one, at));
  const toward = (measure: Measure, way: 1 | -1): Toward => {
    const before = measure(base.finished, base.run);
    const corner: Record<DimId, 'lo' | 'hi'> = {};
    for (const move of moves) {
      const side = sideOf(move, measure, way, before);
      if (side) corner[move.dim] = side;
    }
    const there = at(corner);
    return { value: measure(there.finished, there.run), corner, run: there.run };
  };
  return {
    base,
    least: (measure) => {
      const { value, corner, run } = toward(measure, -1);
      return { lo: value, at: corner, run };
    },
    most: (measure) => {
      const { value, corner } = toward(measure, 1);
      return { hi: value, at: corner };
    },
    changed: (ring) => {
      for (const corner of mixedCorners(chart.working)) at(corner);
      return [...done.values()].find((one) => !sameRing(one.at.finished.ring, ring))?.corner;
    },
    lacking: () => (lackOf(base.run) ? undefined : firstLack([...done.values()])),
    replays: () => done.size,
  };
}

/** Each corner once, and kept in `done`. Corners that end as the same section have one finished work. */
function runsOf({ part, route, chart }: Case, done: Map<string, Done>): (corner: Corner) => Run {
  const again = replayer(part, route, chart);
  const finished = new Map<Section, Finished>();
  return (corner) => {
    const key = keyOf(chart.working, corner);
    const known = done.get(key);
    if (known) return known.at;
    const run = again(valuesAt(chart.working, corner));
    const found: Run = { run, finished: finished.get(run.end) ?? finishedOf(part, run.end) };
    finished.set(run.end, found.finished);
    done.set(key, { corner, at: found });
    return found;
  };
}

/**
 * Corners at which any three lengths stand at each of the eight ways that their limits can be put together: rows of a matrix of Hadamard and
 * their opposites (an orthogonal array of strength three: Rao, 1947). Where there are more lengths than columns, some share a column.
 */
function mixedCorners(working: readonly Working[]): readonly Corner[] {
  const free = working.filter(({ measures, limits }) => measures === 'length' && limits.lo < limits.hi);
  const rows = 1 << Math.ceil(Math.log2(free.length + 1));
  return Array.from({ length: rows }, (_, row) => row).flatMap((row) =>
    [false, true].map((turned): Corner => Object.fromEntries(free.map(({ id }, i) => [id, isOdd((i + 1) & row) === turned ? 'lo' : 'hi']))),
  );
}
/** Has it an odd number of ones? */
const isOdd = (bits: number): boolean => bits !== 0 && isOdd(bits & (bits - 1)) === false;

type Toward = { readonly value: number | undefined; readonly corner: Corner; readonly run: Replay };
type Done = { readonly corner: Corner; readonly at: Run };
function firstLack(all: readonly Done[]): Lacking | undefined {
  for (const { corner, at } of all) {
    const lack = lackOf(at.run);
    if (lack) return { ...lack, corner };
  }
  return undefined;
}

function lackOf(run: Replay): Omit<Lacking, 'corner'> | undefined {
  const step = run.steps.find((one) => one.lacks.length > 0);
  const lack = step?.lacks[0];
  return step && lack && { at: step.operation.id, what: lack.what, surface: lack.surface };
}

type Move = { readonly dim: DimId; readonly to: 'lo' | 'hi'; readonly moved: Run };
function moveOf({ id, limits }: Working, at: (corner: Corner) => Run): Move {
  const to = limits.hi > limits.target ? 'hi' : 'lo';
  return { dim: id, to, moved: at({ [id]: to }) };
}

/** Where this dimension goes to drive the measure that way; nothing when it does not matter. What can't be measured any more stays moved. */
function sideOf({ to, moved }: Move, measure: Measure, way: 1 | -1, before: number | undefined): 'lo' | 'hi' | undefined {
  const after = measure(moved.finished, moved.run);
  if (after === undefined) return before === undefined ? undefined : to;
  const change = after - (before ?? 0);
  if (Math.abs(change) < NOTHING) return undefined;
  return change > 0 === way > 0 ? to : OPPOSITE[to];
}
const OPPOSITE = { lo: 'hi', hi: 'lo' } as const;
/** A hundredth of a unit: what doubles may differ by without anything having moved. */
const NOTHING = 0.01;

function valuesAt(working: readonly Working[], corner: Corner): Readonly<Record<DimId, number>> {
  const values: Record<DimId, number> = {};
  for (const { id, limits } of working) {
    const side = corner[id];
    if (side) values[id] = limits[side];
  }
  return values;
}

function keyOf(working: readonly Working[], corner: Corner): string {
  let key = '';
  for (const { id } of working) key += `${corner[id] ?? ''},`;
  return key;
}
