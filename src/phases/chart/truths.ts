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
    if (setUp.grip.kind !== 'bench') {
      const held = setUp.grip.on.flatMap((id) => made.get(id) ?? [])[0];
      edges.push({ dim: setUp.grip.id, from: held ?? SKIN, to: axisOf(setUp), toward: 1 });
    }
    for (const [id, axis] of madeIn(part, route, setUp)) made.set(id, axis);
  }
  return edges;
}

/** By surface of revolution, the axis of the grip in which it was cut last. */
function finishedIn(part: Part, route: Route): ReadonlyMap<SurfaceId, string> {
  return new Map(route.setUps.flatMap((setUp) => madeIn(part, route, setUp)));
}

function madeIn(part: Part, route: Route, setUp: SetUp): readonly (readonly [SurfaceId, string])[] {
  if (setUp.grip.kind === 'bench') return [];
  return setUp.operations.flatMap((id) => {
    const { cuts, sweeps } = wayIn(operationOf(route, id), setUp);
    const across = cuts.flatMap((cut) => (cut.measures === 'diameter' ? [cut.makes] : []));
    const threads = sweeps.flatMap((sweep) => (sweep.take === 'thread' ? threadedOn(part, sweep.feature) : []));
    return [...across, ...threads].map((surface) => [surface, axisOf(setUp)] as const);
  });
}

const threadedOn = (part: Part, id: string): readonly SurfaceId[] =>
  part.features.flatMap((feature) => (feature.kind === 'thread' && feature.id === id ? [feature.on] : []));
