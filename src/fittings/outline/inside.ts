/** Holes with their floors, threads and cones. */
import { type Len, len, minus } from '../../base/units.ts';
import type { End, FeatureId, SurfaceId } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Limits, Role } from '../../model/part.ts';
import { ratio } from '../limits.ts';
import type { Hole, HoleArc, Recess } from './ask.ts';
import { type Bench, named, put } from './bench.ts';

export function addHole(made: Bench, hole: Hole): void {
  const id = named(made, hole.name);
  const pieces = stretchesBetween(hole);
  put(made, {
    ...{ shape: 'cylinder', id, feature: id, role: hole.role, side: 'inside', size: hole.size, from: hole.from, to: hole.to },
    ...(pieces.length > 0 ? { pieces } : {}),
  });
  const floor = hole.floor && named(made, hole.floor.letter);
  if (hole.floor && floor) {
    const air = hole.opens[0] ?? 'first';
    put(made, {
      shape: 'face',
      id: floor,
      feature: id,
      role: hole.floor.role,
      side: 'inside',
      air,
      z: air === 'first' ? hole.to : hole.from,
      letter: hole.floor.letter,
    });
  }
  made.features.push({
    kind: 'hole',
    id,
    role: hole.role,
    cylinder: id,
    opens: hole.opens,
    ...(floor ? { floor } : {}),
    ...(hole.edge ? { edge: named(made, hole.edge) } : {}),
    ...(hole.takes ? { takes: hole.takes } : {}),
    ...(hole.blind ? { blind: true as const } : {}),
    ...(hole.madeTo ? { madeTo: hole.madeTo } : {}),
  });
  for (const recess of recessesIn(hole)) addRecess(made, recess);
  for (const arc of hole.arcs ?? []) addInsideArc(made, hole, arc);
  if (hole.cone) addInsideCone(made, hole, { ...hole.cone, does: 'cone' });
  if (hole.cone?.twin) addInsideCone(made, hole, { ...hole.cone, name: hole.cone.twin, at: other(hole.cone.at), does: 'cone' });
  if (hole.thread) addInsideThread(made, hole, hole.thread);
}

/** Its tool comes from the end that the hole opens at. */
function addInsideArc(made: Bench, hole: Hole, { bends, across }: HoleArc): void {
  const from = hole.opens[0] ?? 'first';
  const letter = bends === 'fillet' ? hole.floor?.letter : (from === 'first' ? made.ask.first : made.ask.second)?.letter;
  const id = named(made, `${hole.name}.${bends}`);
  if (letter === undefined) throw new Error(`arc '${id}' needs a face to start from`);
  const into = bends === 'fillet' ? from : other(from);
  const until = named(made, hole.name);
  put(made, { shape: 'arc', id, feature: id, role: 'free', side: 'inside', bends, across, at: named(made, letter), into, until });
  made.features.push({ kind: 'arc', id, role: 'free', arc: id, from, does: bends });
}

type Cut = Omit<Recess, 'first' | 'second'> & { readonly first: string; readonly second: string; readonly serves?: string };

/** Grooves of its own, and the relief behind its thread, whose one wall is the floor. */
function recessesIn(hole: Hole): readonly Cut[] {
  const own = (hole.recesses ?? []).map((one): Cut => ({ ...one, first: one.first.letter, second: one.second.letter }));
  const { relief, floor, name } = hole;
  if (!relief || !floor) return own;
  const [wall, letter] = [`${name}.wall`, floor.letter];
  const [first, second] = hole.opens[0] === 'second' ? [letter, wall] : [wall, letter];
  const { from, to } = relief;
  return [...own, { name: `${name}.relief`, role: 'clearance', size: relief.floor, from, to, first, second, serves: name }];
}

/** What grooves leave of a hole; nothing where there is none. */
function stretchesBetween(hole: Hole): readonly { readonly from: Len; readonly to: Len }[] {
  const cuts = [...recessesIn(hole)].sort((a, b) => a.from - b.from);
  if (cuts.length === 0) return [];
  const starts = [hole.from, ...cuts.map((one) => one.to)];
  const ends = [...cuts.map((one) => one.from), hole.to];
  return starts.flatMap((from, i) => {
    const to = ends[i] ?? from;
    return to > from ? [{ from, to }] : [];
  });
}

function addRecess(made: Bench, recess: Cut): void {
  const id = named(made, recess.name);
  const wall = (letter: string, air: End, z: Len): SurfaceId => {
    const face = named(made, letter);
    if (made.surfaces.has(face)) return face;
    const own = letter.includes('.') ? {} : { letter };
    return put(made, { shape: 'face', id: face, feature: id, role: 'clearance', side: 'inside', air, z, ...own });
  };
  const [first, second] = [wall(recess.first, 'second', recess.from), wall(recess.second, 'first', recess.to)];
  const { size, from, to, role, serves } = recess;
  put(made, { shape: 'cylinder', id, feature: id, role, side: 'inside', size, from, to });
  const forThread = serves === undefined ? {} : { serves: named(made, serves) };
  made.features.push({ kind: 'groove', id, role, side: 'inside', floor: id, first, second, ...forThread });
}

type InsideCone = {
  readonly name: string;
  readonly at: End;
  readonly angle: number;
  readonly mouth: Limits;
  readonly role: Role;
  readonly does: 'chamfer' | 'cone';
  readonly serves?: FeatureId;
};
function addInsideCone(made: Bench, hole: Hole, cone: InsideCone): void {
  const id = named(made, cone.name);
  const letter = cone.at === 'first' ? made.ask.first.letter : made.ask.second?.letter;
  if (!letter) throw new Error(`cone '${id}' opens where there is no end`);
  put(made, {
    shape: 'cone',
    id,
    feature: id,
    role: cone.role,
    side: 'inside',
    includedAngle: cone.angle,
    mouth: cone.mouth,
    at: named(made, letter),
    into: cone.at === 'first' ? 'second' : 'first',
    until: named(made, hole.name),
  });
  made.features.push({
    kind: 'cone',
    id,
    role: cone.role,
    cone: id,
    from: cone.at,
    does: cone.does,
    ...(cone.serves ? { serves: cone.serves } : {}),
  });
}

function addInsideThread(made: Bench, hole: Hole, thread: NonNullable<Hole['thread']>): void {
  const id = named(made, hole.name);
  const start = hole.opens[0] ?? 'first';
  if (thread.chamfer) {
    const chamfer = { name: `${hole.name}.chamfer`, at: start, angle: ratio('thread.chamfer'), mouth: thread.chamfer } as const;
    addInsideCone(made, hole, { ...chamfer, role: 'clearance', does: 'chamfer', serves: id });
  }
  if (thread.farChamfer) {
    const far = { name: `${hole.name}.far-chamfer`, at: other(start), angle: ratio('thread.chamfer'), mouth: thread.farChamfer } as const;
    addInsideCone(made, hole, { ...far, role: 'clearance', does: 'chamfer' });
  }
  made.features.push({
    kind: 'thread',
    id: `${id}.thread`,
    role: 'thread',
    side: 'inside',
    on: id,
    thread: thread.size,
    start,
    from: start === 'first' ? hole.from : thread.to,
    to: start === 'first' ? thread.to : hole.to,
  });
}

/** A centre hole: a short blind pilot and its 60 degree mouth, made by one tool. */
export function addCentre(made: Bench, which: End): void {
  const ask = which === 'first' ? made.ask.first : made.ask.second;
  if (!ask?.centre) return;
  const { pilot, depth, mouth } = ask.centre;
  const id = named(made, `${ask.letter}.centre`);
  const from = which === 'first' ? len(0) : minus(made.length, depth);
  put(made, {
    shape: 'cylinder',
    id,
    feature: id,
    role: 'clearance',
    side: 'inside',
    size: pilot,
    from,
    to: which === 'first' ? depth : made.length,
  });
  const cone = `${id}.mouth`;
  put(made, {
    shape: 'cone',
    id: cone,
    feature: id,
    role: 'clearance',
    side: 'inside',
    includedAngle: ratio('centre.angle'),
    mouth,
    at: named(made, ask.letter),
    into: which === 'first' ? 'second' : 'first',
    until: id,
  });
  made.features.push({ kind: 'hole', id, role: 'clearance', cylinder: id, opens: [which], blind: true, centre: true });
}
