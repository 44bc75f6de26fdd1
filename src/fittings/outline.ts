/**
 * A part described as a turner would say it over the bench: sections along the outside from one end to the other, holes from either
 * end, cones, and what is done from the side. Gives the Part with its surfaces, ring, features and dimensions.
 */
import { add, type Len, len, minus } from '../base/units.ts';
import type { End, FeatureId, SurfaceId } from '../model/ids.ts';
import type { Cylinder, Dimension, Face, Feature, Limits, Part, Role, SideFeature, Surface, ThreadSize } from '../model/part.ts';
import { ratio } from './limits.ts';

export type EndAsk = { readonly letter: string; readonly role: Role; readonly fitted?: true };
export type ThreadAsk = {
  readonly size: ThreadSize;
  readonly start: End;
  readonly chamfer: Limits;
  readonly relief?: { readonly width: Limits; readonly floor: Limits };
};
export type Section = {
  readonly name: string;
  readonly role: Role;
  readonly size: Limits;
  readonly length: Len;
  readonly section?: 'hexagon';
  readonly asStock?: true;
  readonly thread?: ThreadAsk;
  /** The face between this section and the next one. */
  readonly shoulder?: { readonly letter: string; readonly role: Role };
  /** An outside cone that ends this section at its end toward `at`, e.g. the cone of a nipple. */
  readonly cone?: { readonly at: End; readonly angle: number; readonly mouth: Limits; readonly role: Role };
};
export type Hole = {
  readonly name: string;
  readonly role: Role;
  readonly size: Limits;
  readonly from: Len;
  readonly to: Len;
  readonly opens: readonly End[];
  /** Letter of the end face whose meeting with this hole is a seat. */
  readonly edge?: string;
  /** Its flat bottom, named by a letter. */
  readonly floor?: { readonly letter: string; readonly role: Role };
  /** An inside thread from the open end to `to` (nominal z of the last full thread). */
  readonly thread?: { readonly size: ThreadSize; readonly to: Len; readonly chamfer: Limits };
  readonly cone?: { readonly at: End; readonly angle: number; readonly mouth: Limits; readonly role: Role; readonly name: string };
};
export type Side = Omit<SideFeature, 'kind' | 'id' | 'on' | 'spoils'> & {
  readonly name: string;
  readonly on: string;
  readonly spoils?: readonly string[];
};
export type OutlineAsk = Pick<Part, 'id' | 'kind' | 'quantity' | 'use' | 'stock'> & {
  readonly first: EndAsk;
  /** A part that stays in the chuck has no second end. */
  readonly second?: EndAsk;
  readonly sections: readonly Section[];
  readonly holes?: readonly Hole[];
  readonly sides?: readonly Side[];
  /** Faces by letter or, for a relief wall, by '<section>.wall'. */
  readonly lengths: readonly { readonly from: string; readonly to: string; readonly limits: Limits }[];
  readonly waitsFor?: readonly { readonly feature: string; readonly part: string; readonly why: 'measure-and-fit' | 'joined' | 'gauges' }[];
};

/** Throws Error when the description hangs together wrongly (two faces of one letter, a length to a face that is not there). */
export function partFrom(ask: OutlineAsk): Part {
  const made = newBench(ask);
  addEnds(made);
  ask.sections.forEach((section, i) => {
    addSection(made, section, i);
  });
  for (const hole of ask.holes ?? []) addHole(made, hole);
  for (const side of ask.sides ?? []) made.features.push(sideFeature(made, side));
  const part: Part = {
    id: ask.id,
    kind: ask.kind,
    quantity: ask.quantity,
    use: ask.use,
    stock: ask.stock,
    ring: ringOf(made),
    surfaces: [...made.surfaces.values()],
    features: made.features,
    dimensions: ask.lengths.map((l) => dimension(made, l)),
    length: made.length,
    ...(ask.second ? {} : { staysInChuck: true as const }),
    waitsFor: (ask.waitsFor ?? []).map((w) => ({ ...w, feature: `${ask.id}/${w.feature}` })),
  };
  return part;
}

type Bench = {
  readonly ask: OutlineAsk;
  readonly surfaces: Map<SurfaceId, Surface>;
  readonly features: Feature[];
  readonly starts: readonly Len[];
  readonly length: Len;
};

function newBench(ask: OutlineAsk): Bench {
  const starts: Len[] = [len(0)];
  for (const section of ask.sections) starts.push(add(starts.at(-1) ?? len(0), section.length));
  return { ask, surfaces: new Map(), features: [], starts, length: starts.at(-1) ?? len(0) };
}

function put(made: Bench, surface: Surface): SurfaceId {
  if (made.surfaces.has(surface.id)) throw new Error(`surface '${surface.id}' stands twice`);
  made.surfaces.set(surface.id, surface);
  return surface.id;
}

const named = (made: Bench, name: string): string => `${made.ask.id}/${name}`;

function addEnds(made: Bench): void {
  addEnd(made, made.ask.first, 'first', len(0));
  if (made.ask.second) addEnd(made, made.ask.second, 'second', made.length);
}

function addEnd(made: Bench, end: EndAsk, which: End, z: Len): void {
  const id = named(made, end.letter);
  put(made, { shape: 'face', id, feature: id, role: end.role, side: 'outside', air: which, z, letter: end.letter });
  made.features.push({ kind: 'end', id, role: end.role, end: which, face: id, ...(end.fitted ? { fitted: true as const } : {}) });
}

/** The face at the boundary after section `i`, or the end face. */
function boundary(made: Bench, i: number): SurfaceId | undefined {
  if (i < 0) return named(made, made.ask.first.letter);
  const section = made.ask.sections[i];
  if (i === made.ask.sections.length - 1) return made.ask.second && named(made, made.ask.second.letter);
  return section?.shoulder && named(made, section.shoulder.letter);
}

function addSection(made: Bench, section: Section, i: number): void {
  const id = named(made, section.name);
  const next = made.ask.sections[i + 1];
  const before = made.ask.sections[i - 1];
  const from = made.starts[i] ?? len(0);
  const to = made.starts[i + 1] ?? len(0);
  const rises = next !== undefined && next.size.target > section.size.target;
  const rose = before !== undefined && before.size.target > section.size.target;
  if (next && section.shoulder) {
    const air: End = rises ? 'first' : 'second';
    put(made, {
      shape: 'face',
      id: named(made, section.shoulder.letter),
      feature: rises ? id : named(made, next.name),
      role: section.shoulder.role,
      side: 'outside',
      air,
      z: to,
      letter: section.shoulder.letter,
    });
  }
  put(made, cylinderOf(id, section, from, to));
  const second = rises ? boundary(made, i) : undefined;
  const first = rose ? boundary(made, i - 1) : undefined;
  made.features.push({
    kind: 'outside',
    id,
    role: section.role,
    cylinder: id,
    shoulder: { ...(first ? { first } : {}), ...(second ? { second } : {}) },
    section: section.section ?? 'round',
  });
  if (section.thread) addOutsideThread(made, section, section.thread, i);
  if (section.cone) addOutsideCone(made, section, section.cone, i);
}

function cylinderOf(id: SurfaceId, section: Section, from: Len, to: Len): Cylinder {
  const reliefWidth = section.thread?.relief?.width.target ?? len(0);
  const toward = section.thread?.start;
  return {
    shape: 'cylinder',
    id,
    feature: id,
    role: section.role,
    side: 'outside',
    size: section.size,
    from: toward === 'second' ? add(from, reliefWidth) : from,
    to: toward === 'first' ? minus(to, reliefWidth) : to,
    ...(section.asStock ? { asStock: true as const } : {}),
  };
}

function addOutsideThread(made: Bench, section: Section, thread: ThreadAsk, i: number): void {
  const id = named(made, section.name);
  const from = made.starts[i] ?? len(0);
  const to = made.starts[i + 1] ?? len(0);
  const startsFirst = thread.start === 'first';
  const startFace = boundary(made, startsFirst ? i - 1 : i);
  const farFace = boundary(made, startsFirst ? i : i - 1);
  if (!startFace || !farFace) throw new Error(`thread '${id}' needs a face at both ends`);
  const relief = thread.relief;
  if (relief) addRelief(made, id, relief, farFace, startsFirst ? to : from, thread.start);
  const chamfer = `${id}.chamfer`;
  put(made, {
    shape: 'cone',
    id: chamfer,
    feature: chamfer,
    role: 'clearance',
    side: 'outside',
    includedAngle: ratio('thread.chamfer'),
    mouth: thread.chamfer,
    at: startFace,
    into: startsFirst ? 'second' : 'first',
    until: id,
  });
  made.features.push({ kind: 'cone', id: chamfer, role: 'clearance', cone: chamfer, from: thread.start, serves: id, does: 'chamfer' });
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

function addOutsideCone(made: Bench, section: Section, cone: NonNullable<Section['cone']>, i: number): void {
  const at = boundary(made, cone.at === 'first' ? i - 1 : i);
  const id = `${named(made, section.name)}.cone`;
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
    until: named(made, section.name),
  });
  made.features.push({ kind: 'cone', id, role: cone.role, cone: id, from: cone.at, does: 'cone' });
}

function addHole(made: Bench, hole: Hole): void {
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
  addInsideCone(made, hole, {
    name: `${hole.name}.chamfer`,
    at: start,
    angle: ratio('thread.chamfer'),
    mouth: thread.chamfer,
    role: 'clearance',
    does: 'chamfer',
    serves: id,
  });
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

function sideFeature(made: Bench, side: Side): SideFeature {
  const { name, on, spoils, ...rest } = side;
  return {
    ...rest,
    kind: 'side',
    id: named(made, name),
    on: named(made, on),
    ...(spoils ? { spoils: spoils.map((s) => named(made, s)) } : {}),
  };
}

function dimension(made: Bench, ask: { readonly from: string; readonly to: string; readonly limits: Limits }): Dimension {
  const face = (letter: string): Face => {
    const found = made.surfaces.get(named(made, letter));
    if (found?.shape !== 'face') throw new Error(`${made.ask.id}: a length to '${letter}', which is no face`);
    return found;
  };
  const [a, b] = [face(ask.from), face(ask.to)].sort((p, q) => p.z - q.z);
  if (!a || !b) throw new Error('two faces are needed');
  return { id: `${a.id}-${b.letter ?? b.id.slice(made.ask.id.length + 1)}`, a: a.id, b: b.id, limits: ask.limits };
}

/** Along the outside from the first end to the second, then back along the inside. */
function ringOf(made: Bench): readonly SurfaceId[] {
  const outside = [...made.surfaces.values()]
    .filter((s) => s.side === 'outside')
    .map((s) => ({ s, z: middle(made, s), d: height(made, s) }));
  const inside = [...made.surfaces.values()].filter((s) => s.side === 'inside').map((s) => ({ s, z: middle(made, s), d: height(made, s) }));
  outside.sort((p, q) => p.z - q.z);
  inside.sort((p, q) => q.z - p.z);
  return [...outside, ...inside].map(({ s }) => s.id);
}

const height = (made: Bench, s: Surface): number =>
  s.shape === 'cylinder' ? s.size.target : s.shape === 'cone' ? s.mouth.target : made.length;

/** A place along z that orders surfaces round the ring: cones a hair inside the face that they start from. */
function middle(made: Bench, s: Surface): number {
  if (s.shape === 'face') return s.z;
  if (s.shape === 'cylinder') return (s.from + s.to) / 2;
  return (made.surfaces.get(s.at) as Face).z + (s.into === 'second' ? 1 : -1);
}
