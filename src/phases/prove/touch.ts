/** Whether a later operation touches a surface that is finished and kept: a seat, a sealing surface, a thread. */
import type { Step } from '../../geometry/replay.ts';
import { areaOf } from '../../geometry/section/ask.ts';
import { TOUCH } from '../../geometry/section/lines.ts';
import { outlinesOf } from '../../geometry/section/outline.ts';
import { isSolid, type Section } from '../../geometry/section.ts';
import type { FeatureId, OpId, SurfaceId } from '../../model/ids.ts';
import type { Feature, Surface } from '../../model/part.ts';
import type { Claim } from '../../model/plan.ts';
import type { Edge } from '../../model/stage.ts';
import { type Case, claim, short } from './claims.ts';

type Thread = Extract<Feature, { kind: 'thread' }>;

export function keptClaims(asked: Case, steps: readonly Step[]): readonly Claim[] {
  const { part } = asked;
  const edgesOf = edgesOnce();
  const surfaces = part.surfaces
    .filter((surface) => surface.role === 'seat' || surface.role === 'sealing')
    .map((surface) => keptClaim(asked, surface.id, steps, (step) => touches(asked, surface, step, edgesOf), finishOf(steps, surface.id)));
  const threads = part.features.flatMap((feature): readonly Claim[] => {
    if (feature.kind !== 'thread') return [];
    const bandOf = bandsOnce(feature.id);
    const isCut = (step: Step, i: number): boolean =>
      step.after !== step.before &&
      (bandOf(step.after) < bandOf(step.before) || cutsOffEnd(asked, feature, step)) &&
      !opensMouth(asked, feature.on, step) &&
      !facesMouth(asked, feature.on, steps, i);
    return [keptClaim(asked, feature.id, steps, isCut, threadedAt(steps, feature.id))];
  });
  return [...surfaces, ...threads];
}

type EdgesOf = (section: Section) => readonly Edge[];
/** Edges of a section's outlines; worked out once for all surfaces, and for what one step leaves and the next one finds. */
function edgesOnce(): EdgesOf {
  const known = new Map<Section, readonly Edge[]>();
  return (section) => {
    const edges = known.get(section) ?? outlinesOf(section, isSolid).flat();
    known.set(section, edges);
    return edges;
  };
}

function keptClaim(
  asked: Case,
  about: string,
  steps: readonly Step[],
  isTouched: (step: Step, i: number) => boolean,
  finished: number,
): Claim {
  const touching = steps.find((step, i) => finished >= 0 && i > finished && isTouched(step, i))?.operation;
  const grounds = {
    surface: short(asked.part.id, about),
    finished: short(asked.part.id, steps[finished]?.operation.id ?? ''),
    operation: short(asked.part.id, touching?.id ?? ''),
  };
  return claim('kept untouched', about, touching === undefined, grounds, touching?.id);
}

/** The far mouth of a thread that goes right through, opened when it is met from there: it takes the end of the last turn, and its burr. */
const opensMouth = (asked: Case, on: SurfaceId, { operation }: Step): boolean =>
  asked.part.features.some(
    (f) => f.kind === 'cone' && f.id === operation.feature && f.does === 'chamfer' && !f.serves && runsInto(asked, f.cone, on),
  );

/** A thread that goes right through is cut off with the face where it comes out; its mouth there is opened afterwards. */
const facesMouth = (asked: Case, on: SurfaceId, steps: readonly Step[], i: number): boolean => {
  const faced = steps[i]?.way.cuts.map((cut) => cut.makes) ?? [];
  const cones = asked.part.surfaces.flatMap((one) =>
    one.shape === 'cone' && one.until === on && faced.includes(one.at) ? [one.feature] : [],
  );
  return steps.slice(i + 1).some((step) => cones.includes(step.operation.feature) && opensMouth(asked, on, step));
};

/** The facing of the end that a thread comes out through: what stood beyond the end went with the last turn, and its burr is in the thread. */
const cutsOffEnd = ({ part }: Case, { start, from, to }: Thread, { way, operation }: Step): boolean => {
  const far = start === 'first' ? to : from;
  const isEnd = (face: Surface | undefined): boolean =>
    face?.shape === 'face' && face.air !== start && face.z === far && (face.z === 0 || face.z === part.length);
  return operation.verb === 'face' && way.cuts.some((cut) => isEnd(part.surfaces.find((one) => one.id === cut.makes)));
};

const runsInto = (asked: Case, cone: SurfaceId, on: SurfaceId): boolean =>
  asked.part.surfaces.some((one) => one.id === cone && one.shape === 'cone' && one.until === on);

/** The first cut that was to be its last. */
const finishOf = (steps: readonly Step[], surface: SurfaceId): number =>
  steps.findIndex((step) => step.way.cuts.some((cut) => cut.makes === surface && cut.stage === 'final'));

const threadedAt = (steps: readonly Step[], thread: FeatureId): number =>
  steps.findIndex((step) => step.way.sweeps.some((sweep) => sweep.take === 'thread' && sweep.feature === thread));

/** What there is of a thread's band; what one step leaves the next one finds. */
function bandsOnce(thread: FeatureId): (section: Section) => number {
  const known = new Map<Section, number>();
  return (section) => {
    const band = known.get(section) ?? Math.round(areaOf(section, (paint) => paint.state === 'partial' && paint.thread === thread));
    known.set(section, band);
    return band;
  };
}

/** It is cut again; a tool passes along it; or, on a seat, metal beside it goes (but for the facing cut that makes the seat's edge). */
function touches(asked: Case, surface: Surface, step: Step, edgesOf: EdgesOf): boolean {
  if (step.way.cuts.some((cut) => cut.makes === surface.id)) return true;
  const own = (section: Section): readonly Edge[] => edgesOf(section).filter((edge) => edge.surface === surface.id);
  if (isMarked(step.after, surface.id, step.operation.id)) {
    const passed = own(step.after).filter((edge) => edge.by === step.operation.id);
    if (passed.some((edge) => own(step.before).some((old) => overlap(edge, old)))) return true;
  }
  if (surface.role !== 'seat' || surface.shape === 'face' || makesEdge(asked, surface, step)) return false;
  const [before, after] = [own(step.before), own(step.after)];
  return lengthOf(after) < lengthOf(before) - 1 && !opensBehind(asked, surface, step, before, after);
}

/** Whether anything at all was named as that surface by that operation. */
const isMarked = ({ slabs, walls }: Section, surface: SurfaceId, by: OpId): boolean =>
  walls.some(({ mark }) => mark.surface === surface && mark.by === by) ||
  slabs.some(({ bounds }) => bounds.some(({ mark }) => mark.surface === surface && mark.by === by));

/** The wider hole behind a seat's land, opened from the far side: the end of the bore at the seat's edge stays where it was. */
function opensBehind(asked: Case, surface: Surface, step: Step, before: readonly Edge[], after: readonly Edge[]): boolean {
  const { features, surfaces } = asked.part;
  const hole = features.find((feature) => feature.kind === 'hole' && feature.cylinder === surface.id);
  const wide = features.find((feature) => feature.id === step.operation.feature && feature.kind === 'hole' && feature.blind);
  const edge = hole?.kind === 'hole' ? surfaces.find((one) => one.id === hole.edge) : undefined;
  if (!wide || edge?.shape !== 'face' || after.length === 0) return false;
  const nearest = (edges: readonly Edge[]): number => {
    const places = edges.flatMap(({ a, b }) => [a.z, b.z]);
    return edge.air === 'first' ? Math.min(...places) : Math.max(...places);
  };
  return Math.abs(nearest(before) - nearest(after)) <= TOUCH;
}

function makesEdge(asked: Case, surface: Surface, step: Step): boolean {
  const hole = asked.part.features.find((feature) => feature.kind === 'hole' && feature.cylinder === surface.id);
  return hole?.kind === 'hole' && step.way.cuts.some((cut) => cut.makes === hole.edge);
}

const lengthOf = (edges: readonly Edge[]): number => edges.reduce((sum, edge) => sum + Math.abs(edge.b.z - edge.a.z), 0);

/** One lies along the other for more than a unit. */
function overlap(p: Edge, q: Edge): boolean {
  const [dz, dd] = [q.b.z - q.a.z, q.b.d - q.a.d];
  const long = Math.hypot(dz, dd);
  const off = (z: number, d: number): number => Math.abs(dz * (d - q.a.d) - dd * (z - q.a.z)) / long;
  const along = (z: number, d: number): number => (dz * (z - q.a.z) + dd * (d - q.a.d)) / long;
  if (off(p.a.z, p.a.d) > 2 * TOUCH || off(p.b.z, p.b.d) > 2 * TOUCH) return false;
  const ends = [along(p.a.z, p.a.d), along(p.b.z, p.b.d)];
  return Math.min(long, Math.max(...ends)) - Math.max(0, Math.min(...ends)) > 1;
}
