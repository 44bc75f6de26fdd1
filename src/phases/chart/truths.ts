/**
 * How true one surface runs to another. What is turned in one grip runs true to itself; a grip adds its run-out to the axis of the grip in
 * which the held surface was made: a tree of axes, and the path between two of them is the chain of re-grips.
 */

import { type Len, len, mm } from '../../base/units.ts';
import { type Edge, findPath, growTree } from '../../geometry/chain.ts';
import { practice } from '../../handbook/practice.ts';
import type { SurfaceId } from '../../model/ids.ts';
import type { Part, Truth } from '../../model/part.ts';
import type { Route, SetUp, TruthPath } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';
import { operationOf, wayIn } from '../../rules/working.ts';

/** `runout` of a set-up's grip; by default what the grip has. Tried with others to find what would help. */
export type RunoutOf = (setUp: SetUp) => Len;

export function truthPaths(part: Part, route: Route, runout: RunoutOf = runoutOf): readonly TruthPath[] {
  const truths = part.truths ?? [];
  if (truths.length === 0) return [];
  const made = finishedIn(part, route);
  const tree = growTree(edgesOf(part, route));
  const holds = new Map(route.setUps.map((setUp) => [setUp.grip.id, runout(setUp)]));
  return truths.map((truth): TruthPath => {
    // what no cut makes is the bar's own skin
    const path = findPath(tree, made.get(truth.a) ?? SKIN, made.get(truth.b) ?? SKIN);
    if (!path) throw new Error(`no chain of grips joins '${truth.a}' and '${truth.b}'`);
    const links = path.map(({ dim }) => ({ grip: dim, runout: holds.get(dim) ?? len(0) }));
    const worst = len(links.reduce((sum, link) => sum + link.runout, 0));
    return { ...plain(truth), links, worst, met: worst <= truth.asks };
  });
}

const plain = ({ id, a, b, asks }: Truth): Pick<TruthPath, 'of' | 'a' | 'b' | 'asks'> => ({ of: id, a, b, asks });

/** A bar runs as true as the jaws that hold it; its skin matters only where a later grip holds by it. */
export function runoutOf({ grip }: SetUp): Len {
  const onBar = grip.kind === 'bar' || grip.kind === 'bar-and-centre';
  return onBar ? mm(practice.value('runout.three-jaw')) : grip.runout;
}

const SKIN = 'the bar as bought';
const axisOf = (setUp: SetUp): string => `axis ${setUp.no}`;

function edgesOf(part: Part, route: Route): readonly Edge[] {
  const made = new Map<SurfaceId, string>();
  const edges: Edge[] = [];
  for (const setUp of route.setUps) {
    if (setUp.grip.kind === 'between-centres') edges.push(...centredEdges(part, route, setUp, edges));
    else if (!isOffLathe(setUp.grip)) {
      const held = setUp.grip.on.flatMap((id) => made.get(id) ?? [])[0];
      edges.push({ dim: setUp.grip.id, from: held ?? SKIN, to: axisOf(setUp), toward: 1 });
    }
    for (const [id, axis] of madeIn(part, route, setUp)) made.set(id, axis);
  }
  return edges;
}

/** Both holes and so both settings share one axis; it runs true to the first set-ups as far as the later hole was centred in its own. */
function centredEdges(part: Part, route: Route, setUp: SetUp, edges: readonly Edge[]): readonly Edge[] {
  const own: Edge = { dim: setUp.grip.id, from: CENTRES, to: axisOf(setUp), toward: 1 };
  if (edges.some((edge) => edge.to === CENTRES)) return [own];
  const holes = part.features.flatMap((f) => (f.kind === 'hole' && f.centre ? [f.id] : []));
  const centred = route.setUps.filter((s) => s.operations.some((id) => holes.includes(operationOf(route, id).feature)));
  const [first, last] = [centred[0], centred.at(-1)];
  if (!first || !last) throw new Error(`'${setUp.grip.id}' has no centre holes to run in`);
  return [{ dim: last.grip.id, from: axisOf(first), to: CENTRES, toward: 1 }, own];
}
const CENTRES = 'the axis of the centres';

/** By surface of revolution, the axis of the grip in which it was cut last. */
function finishedIn(part: Part, route: Route): ReadonlyMap<SurfaceId, string> {
  return new Map(route.setUps.flatMap((setUp) => madeIn(part, route, setUp)));
}

function madeIn(part: Part, route: Route, setUp: SetUp): readonly (readonly [SurfaceId, string])[] {
  if (isOffLathe(setUp.grip)) return [];
  return setUp.operations.flatMap((id) => {
    const { cuts, sweeps } = wayIn(operationOf(route, id), setUp);
    const across = cuts.flatMap((cut) => (cut.measures === 'diameter' ? [cut.makes] : []));
    const threads = sweeps.flatMap((sweep) => (sweep.take === 'thread' ? threadedOn(part, sweep.feature) : []));
    return [...across, ...threads].map((surface) => [surface, axisOf(setUp)] as const);
  });
}

const threadedOn = (part: Part, id: string): readonly SurfaceId[] =>
  part.features.flatMap((feature) => (feature.kind === 'thread' && feature.id === id ? [feature.on] : []));
