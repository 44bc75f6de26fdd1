/** What chamfers, cones, radii and reliefs leave of a piece, a hole, a thread and a face, at the limits at which that is least. */
import { add, type Len, len, minus } from '../../base/units.ts';
import { type Apart, apartIn } from '../../geometry/apart.ts';
import { unstated } from '../../handbook/unstated.ts';
import type { SurfaceId } from '../../model/ids.ts';
import type { Arc, Cone, Cylinder, Face, Feature, Part, Surface } from '../../model/part.ts';
import { size, TENTH, tidy } from '../limits.ts';
import { partFrom } from '../outline.ts';
import type { TurnedPartAsked } from './asked.ts';
import { type Faults, fault, type Path } from './fault.ts';
import type { Meant } from './meant.ts';
import { coneLength } from './outside.ts';

type Room = { readonly part: Part; readonly apart: Apart; readonly least: Len; readonly faults: Faults };

/** `outline`: without a fault so far. A fault for whatever need not stay, though the drawing is kept to. */
export function checkRemains(asked: TurnedPartAsked, { outline, name }: Pick<Meant, 'outline' | 'name'>, faults: Faults): void {
  const part = partFrom({ id: name, kind: name, quantity: 1, use: 'fitting', stock: { from: 'bought', what: '' }, ...outline });
  const room: Room = { part, apart: apartIn(part, unstated), least: size('length.least-surface'), faults };
  const keys = (['outside', 'inside'] as const).flatMap((key) =>
    asked[key].map((one, i) => ({ path: [key, i, key === 'outside' ? 'length' : 'depth'], feature: one.name })),
  );
  for (const { path, feature } of keys) {
    const id = `${name}/${feature}`;
    const thread = part.features.find((one): one is Thread => one.kind === 'thread' && one.on === id);
    const cylinder = part.surfaces.find((one): one is Cylinder => one.shape === 'cylinder' && one.id === id);
    if (!cylinder || cylinder.blank) continue;
    if (checkLength(room, cylinder, { path, feature }) && thread) checkThread(room, cylinder, thread, { path, feature });
  }
  if (faults.length === 0) for (const face of part.surfaces) if (face.shape === 'face') checkFace(room, face, keys);
}
type Thread = Extract<Feature, { kind: 'thread' }>;
type Key = { readonly path: Path; readonly feature: string };
type Stretch = { readonly from: Len; readonly to: Len };

// ---- along the axis -------------------------------------------------------------------------------------------------------------
function checkLength(room: Room, cylinder: Cylinder, { path, feature }: Key): boolean {
  const left = Math.min(...(cylinder.pieces ?? [cylinder]).map((stretch) => leftOf(room, cylinder, stretch)));
  const by = tidy(len(Math.ceil(room.least - left)), TENTH, 'up');
  if (left < room.least) fault(room.faults, path, 'vanishes', { feature, by });
  return left >= room.least;
}

/** As short as the drawing lets it be, less what is cut off it at either end, all that at its most. */
function leftOf({ part, apart }: Room, cylinder: Cylinder, stretch: Stretch): number {
  const face = (z: Len): Face | undefined =>
    part.surfaces.find((one): one is Face => one.shape === 'face' && one.side === cylinder.side && one.z === z) ??
    part.surfaces.find((one): one is Face => one.shape === 'face' && one.z === z);
  const [from, to] = [face(stretch.from), face(stretch.to)];
  const long = from && to ? apart(from.id, to.id).lo : minus(stretch.to, stretch.from);
  return long - [from, to].reduce((sum, one) => sum + (one ? cutAt(part, cylinder, one.id) : 0), 0);
}

const edgesOf = (part: Part, cylinder: SurfaceId, face: SurfaceId): readonly (Cone | Arc)[] =>
  part.surfaces.filter((one): one is Cone | Arc => isEdge(one) && one.until === cylinder && one.at === face);
const isEdge = (one: Surface): one is Cone | Arc => one.shape === 'cone' || one.shape === 'arc';

function cutAt(part: Part, cylinder: Cylinder, face: SurfaceId): number {
  const reach = (one: Cone | Arc): number => {
    if (one.shape === 'arc') return one.across.hi / 2;
    return cylinder.side === 'outside'
      ? coneLength(one.mouth.lo, cylinder.size.hi, one.includedAngle)
      : coneLength(cylinder.size.lo, one.mouth.hi, one.includedAngle);
  };
  return Math.max(0, ...edgesOf(part, cylinder.id, face).map(reach));
}

/** One whole turn at least is left between its start and where it ends. */
function checkThread(room: Room, cylinder: Cylinder, thread: Thread, { path, feature }: Key): void {
  const stretch = { from: len(Math.max(cylinder.from, thread.from)), to: len(Math.min(cylinder.to, thread.to)) };
  const has = Math.floor(Math.max(0, leftOf(room, cylinder, stretch)));
  const wants = thread.thread.pitch;
  if (has < wants)
    fault(room.faults, path, 'thread-short', { feature, thread: thread.thread.name, has: tidy(len(has), TENTH, 'down'), wants });
}

// ---- across ---------------------------------------------------------------------------------------------------------------------
/** On the outside a face runs from a lower piece, or a hole, to a higher one: what the edges on both sides leave of it. */
function checkFace({ part, least, faults }: Room, face: Face, keys: readonly Key[]): void {
  if (face.side !== 'outside') return;
  const beside = part.surfaces.filter((one): one is Cylinder => one.shape === 'cylinder' && touches(one, face));
  const [high, ...lower] = beside.filter((one) => one.side === 'outside').sort((a, b) => b.size.target - a.size.target);
  // of a taper that leaves nothing of its blank, the large end is on no cylinder
  if (!high || beside.some((one) => one.blank)) return;
  const outer = Math.min(high.size.lo, ...edgesOf(part, high.id, face.id).map((one) => outerEdge(one, high)));
  const inside = beside.filter((one) => one.side === 'inside');
  const inner = Math.max(
    0,
    ...[...lower, ...(lower.length > 0 ? [] : inside)].flatMap((one) => [
      one.size.hi,
      ...edgesOf(part, one.id, face.id).map((edge) => innerEdge(edge, one)),
    ]),
  );
  if (outer - inner >= least) return;
  const key = keys.find((one) => `${part.id}/${one.feature}` === high.id);
  const by = tidy(len(Math.ceil((least - (outer - inner)) / 2)), TENTH, 'up');
  fault(faults, key?.path ?? ['outside'], 'face-vanishes', { feature: key?.feature ?? '', by });
}

const touches = ({ from, to, pieces }: Cylinder, { z }: Face): boolean =>
  (pieces ?? [{ from, to }]).some((one) => one.from === z || one.to === z);
const outerEdge = (one: Cone | Arc, high: Cylinder): number => (one.shape === 'arc' ? minus(high.size.lo, one.across.hi) : one.mouth.lo);
const innerEdge = (one: Cone | Arc, low: Cylinder): number => (one.shape === 'arc' ? add(low.size.hi, one.across.hi) : one.mouth.hi);
