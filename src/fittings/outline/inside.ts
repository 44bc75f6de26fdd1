/** Holes with their floors, threads and cones. */
import { len, minus } from '../../base/units.ts';
import type { End, FeatureId } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Limits, Role } from '../../model/part.ts';
import { ratio } from '../limits.ts';
import type { Hole } from './ask.ts';
import { type Bench, named, put } from './bench.ts';

export function addHole(made: Bench, hole: Hole): void {
  const id = named(made, hole.name);
  put(made, { shape: 'cylinder', id, feature: id, role: hole.role, side: 'inside', size: hole.size, from: hole.from, to: hole.to });
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
    ...(hole.blind ? { blind: true as const } : {}),
  });
  if (hole.cone) addInsideCone(made, hole, { ...hole.cone, does: 'cone' });
  if (hole.thread) addInsideThread(made, hole, hole.thread);
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
