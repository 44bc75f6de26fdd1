/** A part as its drawing has it: look-ups, places, and its finished outline for pictures. */
import { POINT_ANGLE } from '../handbook/drills.ts';
import type { End, FeatureId, SurfaceId } from '../model/ids.ts';
import type { Arc, Cone, Cylinder, Face, Feature, Part, Surface } from '../model/part.ts';
import type { Edge, Outline, Point } from '../model/stage.ts';
import { sharpRing, withArcs } from './section/arc.ts';
import { at, type Line, meeting, steepness } from './section/lines.ts';

export type Nominal = {
  readonly part: Part;
  /** Each throws Error when there is no such surface, or one of another shape: our fault. */
  surface(id: SurfaceId): Surface;
  face(id: SurfaceId): Face;
  cylinder(id: SurfaceId): Cylinder;
  cone(id: SurfaceId): Cone;
  arc(id: SurfaceId): Arc;
  feature(id: FeatureId): Feature;
  has(id: SurfaceId): boolean;
  /** The face at that end of the part, where it has one. */
  endFace(end: End): Face | undefined;
  /** Faces that are drawn at that place. */
  facesAt(z: number): readonly Face[];
  /** The cone's line as drawn. */
  coneLine(cone: Cone): Line;
};

export function nominalOf(part: Part): Nominal {
  const byId = new Map(part.surfaces.map((surface) => [surface.id, surface]));
  const surface = (id: SurfaceId): Surface => byId.get(id) ?? fail(`${part.id}: no surface '${id}'`);
  const face = (id: SurfaceId): Face => {
    const found = surface(id);
    return found.shape === 'face' ? found : fail(`'${id}' is no face`);
  };
  const ends = new Map(part.features.flatMap((one) => (one.kind === 'end' ? [[one.end, one.face] as const] : [])).reverse());
  const features = new Map(part.features.map((feature) => [feature.id, feature] as const).reverse());
  const faces = part.surfaces.filter((one) => one.shape === 'face');
  return {
    part,
    surface,
    face,
    endFace: (end) => {
      const id = ends.get(end);
      return id === undefined ? undefined : face(id);
    },
    facesAt: (z) => faces.filter((one) => one.z === z),
    cylinder: (id) => {
      const found = surface(id);
      return found.shape === 'cylinder' ? found : fail(`'${id}' is no cylinder`);
    },
    cone: (id) => {
      const found = surface(id);
      return found.shape === 'cone' ? found : fail(`'${id}' is no cone`);
    },
    arc: (id) => {
      const found = surface(id);
      return found.shape === 'arc' ? found : fail(`'${id}' is no arc`);
    },
    feature: (id) => features.get(id) ?? fail(`${part.id}: no feature '${id}'`),
    has: (id) => byId.has(id),
    coneLine: (cone) => coneLine(cone, face(cone.at).z, cone.mouth.target),
  };
}

/** From `mouth` at `z`, an outside cone grows and an inside one shrinks toward `into`. */
export function coneLine(cone: Cone, z: number, mouth: number): Line {
  const grows = cone.side === 'outside' ? 1 : -1;
  const way = cone.into === 'second' ? 1 : -1;
  return { z, d: mouth, slope: grows * way * steepness(cone.includedAngle) };
}

/** The finished part as one labelled loop, every surface at its target; a bar that stays in the chuck is closed by '' edges. */
export function finishedOutline(part: Part): Outline {
  const nominal = nominalOf(part);
  const ring = sharpRing(part).flatMap((id): readonly Sharp[] => {
    const surface = nominal.surface(id);
    return surface.shape === 'arc' ? [] : [surface];
  });
  const corners = ring.map((surface, i) => cornerOf(nominal, surface, ring[(i + 1) % ring.length] ?? surface));
  const sharp = ring.flatMap((surface, i): readonly Edge[] => {
    const a = corners[(i + corners.length - 1) % corners.length];
    const b = corners[i];
    if (!a || !b) return [];
    const mark = { surface: surface.id, stage: 'final', by: '' } as const;
    const gap = b.over ? [{ ...mark, a: b.leave, b: b.arrive, surface: b.over }] : closing(b.leave, b.arrive);
    return [{ a: a.arrive, b: b.leave, ...mark }, ...gap];
  });
  return withArcs(part, sharp);
}

/** What meets its neighbours in a corner; arcs are put into these afterwards. */
type Sharp = Face | Cylinder | Cone;

/** Where one surface ends and the next begins: one place, or two where the axis or a raw end lies between. */
/** `over`: the surface that leads from the one place to the other. */
type Corner = { readonly leave: Point; readonly arrive: Point; readonly over?: SurfaceId };
function cornerOf(nominal: Nominal, p: Sharp, q: Sharp): Corner {
  const step = pointedStep(nominal.part, p, q) ?? pointedStep(nominal.part, q, p);
  if (step)
    return { ...(step.wide === p ? { leave: step.deep, arrive: step.met } : { leave: step.met, arrive: step.deep }), over: step.wide.id };
  const apart = isRawEnd(nominal.part, p, q) || bottomOf(nominal.part, p, q) !== undefined || bottomOf(nominal.part, q, p) !== undefined;
  const met = apart ? undefined : meet(nominal, p, q);
  if (met) return { leave: met, arrive: met };
  return { leave: loose(nominal, p, q), arrive: loose(nominal, q, p) };
}

/** A hole that ends in the drill's point over a smaller one that goes on: its full depth, and where the point meets the smaller. */
type Step = { readonly wide: Sharp; readonly deep: Point; readonly met: Point };
function pointedStep(part: Part, wide: Sharp, narrow: Sharp): Step | undefined {
  if (wide.shape !== 'cylinder' || narrow.shape !== 'cylinder' || narrow.side !== 'inside') return undefined;
  const deep = bottomOf(part, wide, narrow);
  const [d, less] = [wide.size.target, narrow.size.target];
  if (deep === undefined || less >= d || (narrow.from !== deep && narrow.to !== deep)) return undefined;
  const way = narrow.to === deep ? -1 : 1;
  return { wide, deep: { z: deep, d }, met: { z: deep + (way * (d - less)) / steepness(POINT_ANGLE), d: less } };
}

/** The hole whose drill's point stays as a cone over a smaller hole that goes on, that smaller one, and where the larger has its full diameter last. */
export function pointedOver(
  part: Part,
  feature: Feature,
): { readonly wide: Cylinder; readonly narrow: Cylinder; readonly deep: number } | undefined {
  if (feature.kind !== 'hole' || !feature.blind || feature.centre) return undefined;
  const inside = part.surfaces.filter((one): one is Cylinder => one.shape === 'cylinder' && one.side === 'inside');
  const wide = inside.find((one) => one.id === feature.cylinder);
  if (!wide) return undefined;
  const deep = feature.opens[0] === 'first' ? wide.to : wide.from;
  const narrow = inside.find((one) => one.size.target < wide.size.target && (one.from === deep || one.to === deep));
  return narrow && { wide, narrow, deep };
}

/** The bar goes on into the chuck: what comes next in the ring begins at the axis. */
const isRawEnd = (part: Part, p: Sharp, q: Sharp): boolean =>
  part.staysInChuck === true && p.shape === 'cylinder' && p.side === 'outside' && (q.side === 'inside' || q.id === part.ring[0]);

/** Where a hole that ends blind, without a floor of its own, ends towards what comes next in the ring and is not in it; its point is not drawn. */
function bottomOf(part: Part, p: Sharp, q: Sharp): number | undefined {
  const hole = part.features.find((feature) => feature.kind === 'hole' && feature.cylinder === p.id);
  if (hole?.kind !== 'hole' || p.shape !== 'cylinder' || hole.floor !== undefined || (!hole.blind && !hole.centre)) return undefined;
  const [opens] = hole.opens;
  const deep = opens === 'first' ? p.to : p.from;
  const mouth = opens === 'first' ? p.from : p.to;
  const z = q.shape === 'face' ? q.z : q.shape === 'cylinder' ? (q.from + q.to) / 2 : nominalPlace(part, q);
  return Math.abs(z - deep) <= Math.abs(z - mouth) ? deep : undefined;
}

const nominalPlace = (part: Part, cone: Cone): number => {
  const face = part.surfaces.find((one) => one.id === cone.at);
  return face?.shape === 'face' ? face.z : 0;
};

function meet(nominal: Nominal, p: Sharp, q: Sharp): Point | undefined {
  if (p.shape === 'face' && q.shape === 'face') return undefined;
  if (p.shape === 'face') return q.shape === 'face' ? undefined : { z: p.z, d: at(lineOf(nominal, q), p.z) };
  if (q.shape === 'face') return meet(nominal, q, p);
  const z = meeting(lineOf(nominal, p), lineOf(nominal, q));
  return z === undefined ? undefined : { z, d: at(lineOf(nominal, p), z) };
}

const lineOf = (nominal: Nominal, surface: Cylinder | Cone): Line =>
  surface.shape === 'cone' ? nominal.coneLine(surface) : { z: 0, d: surface.size.target, slope: 0 };

/** A face runs on to the axis; a cylinder to its drawn end nearer the other. */
function loose(nominal: Nominal, surface: Sharp, toward: Sharp): Point {
  if (surface.shape === 'face') return { z: surface.z, d: 0 };
  const bottom = bottomOf(nominal.part, surface, toward);
  if (bottom !== undefined) return { z: bottom, d: at(lineOf(nominal, surface), bottom) };
  const line = lineOf(nominal, surface);
  const goal =
    toward.shape === 'face' ? toward.z : toward.shape === 'cylinder' ? (toward.from + toward.to) / 2 : nominal.coneLine(toward).z;
  const near = surface.shape === 'cone' ? line.z : Math.abs(surface.from - goal) < Math.abs(surface.to - goal) ? surface.from : surface.to;
  const z = surface.shape === 'cylinder' && (surface.side !== toward.side || isRawEnd(nominal.part, surface, toward)) ? surface.to : near;
  return { z, d: at(line, z) };
}

/** By way of the axis where there is one between. */
function closing(a: Point, b: Point): readonly Edge[] {
  if (a.z === b.z && a.d === b.d) return [];
  const mark = { surface: '', stage: 'bar', by: '' } as const;
  const stops = [a, { z: a.z, d: 0 }, { z: b.z, d: 0 }, b].filter((p, i, all) => i === 0 || p.z !== all[i - 1]?.z || p.d !== all[i - 1]?.d);
  return stops.slice(1).flatMap((to, i) => {
    const from = stops[i];
    return from ? [{ a: from, b: to, ...mark }] : [];
  });
}

const fail = (message: string): never => {
  throw new Error(message);
};
