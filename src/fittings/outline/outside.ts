/** Outside sections with their shoulders, threads, reliefs and cones. */
import { add, type Len, len, minus } from '../../base/units.ts';
import { type End, type FeatureId, other, type SurfaceId } from '../../model/ids.ts';
import type { Cylinder, Limits, SideFeature } from '../../model/part.ts';
import { ratio } from '../limits.ts';
import type { ArcAsk, Section, ThreadAsk } from './ask.ts';
import { type Bench, boundary, named, piecesOf, put, surfaceOf } from './bench.ts';

export function addSection(made: Bench, section: Section, i: number): void {
  const id = surfaceOf(made, section);
  const next = made.ask.sections[i + 1];
  const from = made.starts[i] ?? len(0);
  const to = made.starts[i + 1] ?? len(0);
  const rises = next !== undefined && next.size.target > section.size.target;
  if (next && section.shoulder) {
    const air: End = rises ? 'first' : 'second';
    put(made, {
      shape: 'face',
      id: named(made, section.shoulder.letter),
      feature: rises ? id : surfaceOf(made, next),
      role: section.shoulder.role,
      side: 'outside',
      air,
      z: to,
      letter: section.shoulder.letter,
    });
  }
  if (section.oneWith === undefined) addCylinder(made, section, i);
  if (section.knurl) made.features.push(knurlOn(named(made, section.name), id, from, to));
  if (section.thread && section.oneWith === undefined) addOutsideThread(made, section, section.thread);
  for (const cone of conesOf(section)) addOutsideCone(made, section, cone, i);
  for (const arc of section.arcs ?? []) addArc(made, section, arc, i);
}

/** The surface, and what makes it: a groove, or a section with the shoulders at either end of all that is one cut with it. */
function addCylinder(made: Bench, section: Section, i: number): void {
  const id = named(made, section.name);
  const pieces = piecesOf(made, section.name);
  const [start, end] = [pieces[0] ?? { i, from: len(0) }, pieces.at(-1) ?? { i, to: len(0) }];
  const whole = cylinderOf(id, section, start.from, end.to);
  // where it ends in a relief, its last piece ends there too
  const within = pieces.map(({ from, to }) => ({ from: len(Math.max(from, whole.from)), to: len(Math.min(to, whole.to)) }));
  put(made, pieces.length > 1 ? { ...whole, pieces: within } : whole);
  if (section.groove) {
    addGroove(made, id, section, i);
    return;
  }
  const higher = (beside: Section | undefined): boolean => beside !== undefined && beside.size.target > section.size.target;
  const first = higher(made.ask.sections[start.i - 1]) ? boundary(made, start.i - 1) : undefined;
  const second = higher(made.ask.sections[end.i + 1]) ? boundary(made, end.i) : undefined;
  made.features.push({
    kind: 'outside',
    id,
    role: section.role,
    cylinder: id,
    shoulder: { ...(first ? { first } : {}), ...(second ? { second } : {}) },
    section: section.section ?? 'round',
    ...(section.madeTo ? { madeTo: section.madeTo } : {}),
  });
}

type OutsideCone = NonNullable<Section['cone']> & { readonly name: string; readonly does: 'cone' | 'chamfer' };
const conesOf = (section: Section): readonly OutsideCone[] => [
  ...ownCones(section),
  ...(section.chamfers ?? []).map((one) => ({ ...one, name: `${one.at}-chamfer`, role: 'clearance' as const, does: 'chamfer' as const })),
];

/** The one that it ends in, or one at either end. */
function ownCones({ cone }: Section): readonly OutsideCone[] {
  if (!cone) return [];
  if (!cone.twin) return [{ ...cone, name: 'cone', does: 'cone' }];
  return [cone.at, other(cone.at)].map((at) => ({ ...cone, at, name: `${at}-cone`, does: 'cone' }));
}

/** Its walls are the shoulders on either side of it. */
function addGroove(made: Bench, id: FeatureId, section: Section, i: number): void {
  const first = boundary(made, i - 1);
  const second = boundary(made, i);
  if (!first || !second) throw new Error(`groove '${id}' needs a wall on either side`);
  made.features.push({ kind: 'groove', id, role: section.role, side: 'outside', floor: id, first, second });
}

const knurlOn = (own: string, on: SurfaceId, from: Len, to: Len): SideFeature => ({
  kind: 'side',
  id: `${own}.knurl`,
  role: 'free',
  does: 'knurl',
  on,
  at: len(from + Math.floor((to - from) / 2)),
  half: len(Math.floor((to - from) / 2)),
});

function cylinderOf(id: SurfaceId, section: Section, from: Len, to: Len): Cylinder {
  const reliefWidth = section.thread?.relief?.width.target ?? len(0);
  const toward = section.thread?.start;
  return {
    shape: 'cylinder',
    id,
    feature: id,
    role: section.blank ? 'free' : section.role,
    side: 'outside',
    size: section.blank ?? section.size,
    ...(section.blank ? { blank: true as const } : {}),
    from: toward === 'second' ? add(from, reliefWidth) : from,
    to: toward === 'first' ? minus(to, reliefWidth) : to,
    ...(section.asStock ? { asStock: true as const } : {}),
  };
}

/** Over all its pieces, where grooves divide it. */
function addOutsideThread(made: Bench, section: Section, thread: ThreadAsk): void {
  const id = named(made, section.name);
  const pieces = piecesOf(made, section.name);
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (!first || !last) throw new Error(`thread '${id}' has no piece`);
  const { from } = first;
  const { to } = last;
  const startsFirst = thread.start === 'first';
  const startFace = boundary(made, startsFirst ? first.i - 1 : last.i);
  const farFace = boundary(made, startsFirst ? last.i : first.i - 1);
  if (!startFace || !farFace) throw new Error(`thread '${id}' needs a face at both ends`);
  const relief = thread.relief;
  if (relief) addRelief(made, id, relief, farFace, startsFirst ? to : from, thread.start);
  addThreadChamfer(made, id, { name: 'chamfer', at: startFace, from: thread.start, mouth: thread.chamfer });
  const farEnd = other(thread.start);
  if (thread.farChamfer) addThreadChamfer(made, id, { name: 'far-chamfer', at: farFace, from: farEnd, mouth: thread.farChamfer });
  const width = relief?.width.target ?? len(0);
  made.features.push({
    kind: 'thread',
    id: `${id}.thread`,
    role: 'thread',
    side: 'outside',
    on: id,
    thread: thread.size,
    start: thread.start,
    from: startsFirst ? from : add(from, width),
    to: startsFirst ? minus(to, width) : to,
  });
}

type ThreadChamfer = {
  readonly name: 'chamfer' | 'far-chamfer';
  readonly at: SurfaceId;
  readonly from: End;
  readonly mouth: Limits;
};
/** At the end where the thread starts it serves the thread; where it comes out it takes the burr with it. */
function addThreadChamfer(made: Bench, on: FeatureId, { name, at, from, mouth }: ThreadChamfer): void {
  const id = `${on}.${name}`;
  put(made, {
    ...{ shape: 'cone', id, feature: id, role: 'clearance', side: 'outside' },
    ...{ includedAngle: ratio('thread.chamfer'), mouth, at, into: other(from), until: on },
  });
  const serves = name === 'chamfer' ? { serves: on } : {};
  made.features.push({ kind: 'cone', id, role: 'clearance', cone: id, from, ...serves, does: 'chamfer' });
}

function addRelief(
  made: Bench,
  id: FeatureId,
  relief: { readonly width: Limits; readonly floor: Limits },
  shoulder: SurfaceId,
  at: Len,
  start: End,
): void {
  const wall = `${id}.wall`;
  const groove = `${id}.relief`;
  const wallZ = start === 'first' ? minus(at, relief.width.target) : add(at, relief.width.target);
  put(made, {
    shape: 'face',
    id: wall,
    feature: groove,
    role: 'clearance',
    side: 'outside',
    air: start === 'first' ? 'second' : 'first',
    z: wallZ,
  });
  put(made, {
    shape: 'cylinder',
    id: groove,
    feature: groove,
    role: 'clearance',
    side: 'outside',
    size: relief.floor,
    from: start === 'first' ? wallZ : at,
    to: start === 'first' ? at : wallZ,
  });
  made.features.push({
    kind: 'groove',
    id: groove,
    role: 'clearance',
    side: 'outside',
    floor: groove,
    first: start === 'first' ? wall : shoulder,
    second: start === 'first' ? shoulder : wall,
    serves: id,
  });
}

function addOutsideCone(made: Bench, section: Section, cone: OutsideCone, i: number): void {
  const at = boundary(made, cone.at === 'first' ? i - 1 : i);
  const id = `${named(made, section.name)}.${cone.name}`;
  if (!at) throw new Error(`cone '${id}' needs a face to start from`);
  put(made, {
    shape: 'cone',
    id,
    feature: id,
    role: cone.role,
    side: 'outside',
    includedAngle: cone.angle,
    mouth: cone.mouth,
    at,
    into: cone.at === 'first' ? 'second' : 'first',
    until: surfaceOf(made, section),
    ...(section.cone?.whole ? { ends: { at: endOfTaper(made, section.cone.at, i), size: section.size } } : {}),
  });
  made.features.push({ kind: 'cone', id, role: cone.role, cone: id, from: cone.at, does: cone.does });
}

/** The face at the large end of section `i`; where there is none, the cone of the section beyond, which leans against it. */
function endOfTaper(made: Bench, small: End, i: number): SurfaceId {
  const face = boundary(made, small === 'first' ? i : i - 1);
  const mate = made.ask.sections[small === 'first' ? i + 1 : i - 1];
  if (!face && !mate) throw new Error(`${made.ask.id}: a taper runs out nowhere`);
  return face ?? `${named(made, mate?.name ?? '')}.cone`;
}

/** The tool of a rounded edge comes from the side of the air, that of a fillet from the side of its cylinder. */
function addArc(made: Bench, section: Section, { at: end, bends, across }: ArcAsk, i: number): void {
  const at = boundary(made, end === 'first' ? i - 1 : i);
  const until = surfaceOf(made, section);
  const id = `${named(made, section.name)}.${end}-${bends}`;
  if (!at) throw new Error(`arc '${id}' needs a face to start from`);
  const into: End = end === 'first' ? 'second' : 'first';
  put(made, { shape: 'arc', id, feature: id, role: 'free', side: 'outside', bends, across, at, into, until });
  made.features.push({ kind: 'arc', id, role: 'free', arc: id, from: bends === 'round' ? end : into, does: bends });
}
