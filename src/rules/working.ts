/**
 * Walks a route and lists what each cut makes and from what it is measured: the edges of the chart, without their limits. Lengths hang on
 * faces that stand at that moment; the first face of a raw end hangs on that end.
 */

import { type Len, len, mm } from '../base/units.ts';
import { type Edge, growTree, type Tree, type Version } from '../geometry/chain.ts';
import { type Drawn, shortName } from '../geometry/places.ts';
import { practice } from '../handbook/practice.ts';
import type { DimId, SurfaceId } from '../model/ids.ts';
import type { Face, Part } from '../model/part.ts';
import type { Cut, Operation, Route, SetUp, Stage, Verb, Way } from '../model/plan.ts';
import { isOffLathe } from '../model/work.ts';
import type { Weigh } from './difficulty.ts';
import { rankDatums, type Standing } from './measure-from.ts';

/** What a process (an operation's verb) holds on this lathe, at that size: the whole band. */
export type Capability = (process: Verb, measures: Cut['measures'], stage: Stage, size: Len) => Len;
export type LengthCut = {
  readonly dim: DimId;
  readonly operation: Operation;
  readonly cut: Cut;
  readonly from: SurfaceId | 'bar end';
  readonly edge: Edge;
  /** What the edge is aimed at, in the drawing's middles; not negative. */
  readonly middle: Len;
  readonly holds: Len;
  /** How hard it is here, in hundredths of the easiest cut. */
  readonly weight: number;
  /** The version that this cut takes away: the surface as it was, or the raw end. */
  readonly takes?: Version;
  /** What else it might have been measured from, best first, the chosen one included. */
  readonly options: readonly Version[];
};
export type DiameterCut = { readonly dim: DimId; readonly operation: Operation; readonly cut: Cut; readonly way: Way; readonly holds: Len };
/** In the order of work. */
export type Walk = {
  readonly cuts: readonly (LengthCut | DiameterCut)[];
  readonly lengths: readonly LengthCut[];
  readonly tree: Tree;
  readonly now: ReadonlyMap<SurfaceId, Standing>;
};
export type WalkAsk = {
  readonly part: Part;
  readonly route: Route;
  readonly drawn: readonly Drawn[];
  readonly places: ReadonlyMap<SurfaceId, Len>;
  readonly capability: Capability;
  readonly weigh: Weigh;
  /** By working dimension of the last walk: the version to measure from instead of the best ranked. */
  readonly instead: ReadonlyMap<Version, Version>;
  /** Left besides what the cut says, by version: where processes need more than custom leaves. */
  readonly more: ReadonlyMap<Version, Len>;
};

type State = {
  readonly ask: WalkAsk;
  readonly now: Map<SurfaceId, Standing>;
  readonly places: Map<Version, Len>;
  readonly edges: Edge[];
  readonly cuts: (LengthCut | DiameterCut)[];
  readonly used: Set<DimId>;
};

/** Throws Error when the route names an operation, a way or a surface that is not there: our fault. */
export function walkRoute(ask: WalkAsk): Walk {
  const state: State = { ask, now: new Map(), places: new Map(), edges: [], cuts: [], used: new Set() };
  for (const setUp of ask.route.setUps) walkSetUp(state, setUp);
  const lengths = state.cuts.filter((cut) => 'edge' in cut);
  return { cuts: state.cuts, lengths, tree: growTree(state.edges), now: state.now };
}

function walkSetUp(state: State, setUp: SetUp): void {
  const here: SurfaceId[] = [];
  for (const id of setUp.operations) {
    const operation = operationOf(state.ask.route, id);
    const way = wayIn(operation, setUp);
    for (const cut of way.cuts) {
      if (cut.measures === 'diameter') addDiameter(state, operation, way, cut);
      else {
        addLength(state, setUp, operation, cut, here);
        if (!here.includes(cut.makes)) here.push(cut.makes);
      }
    }
  }
}

/** The chosen operation of that id. Throws Error when there is none. */
export function operationOf(route: Route, id: string): Operation {
  for (const method of route.chosen) {
    const found = method.operations.find((operation) => operation.id === id);
    if (found) return found;
  }
  throw new Error(`the route names '${id}', which no chosen method makes`);
}

/** How it is done in this set-up. Throws Error when it can't be. */
export function wayIn(operation: Operation, setUp: SetUp): Way {
  const way = isOffLathe(setUp.grip) ? operation.ways.bench : operation.ways[setUp.grip.out];
  if (!way) throw new Error(`'${operation.id}' has no way in set-up ${setUp.no}`);
  return way;
}

function addDiameter(state: State, operation: Operation, way: Way, cut: Cut): void {
  const { part, capability } = state.ask;
  const surface = part.surfaces.find((one) => one.id === cut.makes);
  if (!surface || surface.shape === 'face') throw new Error(`'${operation.id}' makes the diameter '${cut.makes}', which the part has not`);
  const size = surface.shape === 'cylinder' ? surface.size : surface.shape === 'arc' ? surface.across : surface.mouth;
  const dim = nameDimension(state, `${part.id}/${surface.shape === 'arc' ? 'R' : 'D'}.${shortName(part, cut.makes)}`, cut.stage);
  state.cuts.push({ dim, operation, cut, way, holds: capability(operation.verb, cut.measures, cut.stage, size.lo) });
}

function addLength(state: State, setUp: SetUp, operation: Operation, cut: Cut, here: readonly SurfaceId[]): void {
  const { part, drawn, capability, weigh, instead } = state.ask;
  const face = faceOf(part, cut.makes);
  const old = state.now.get(cut.makes);
  const version: Version = `${cut.makes}#${state.edges.filter((edge) => edge.to.startsWith(`${cut.makes}#`)).length + 1}`;
  state.places.set(version, placeOf(state, face, cut, version));
  const candidates = reached(state, operation, candidatesIn(state, setUp, cut.makes, here));
  const ranked = rankDatums({ makes: cut.makes, stage: cut.stage, candidates, now: state.now, drawn, tree: growTree(state.edges) });
  const wanted = instead.get(version);
  const chosen = ranked.find((one) => one.version === wanted) ?? ranked[0];
  const from = chosen?.version ?? rawEnd(state, face, version);
  const apart = len((state.places.get(version) ?? Number.NaN) - (state.places.get(from) ?? Number.NaN));
  const middle = len(Math.abs(apart));
  const name = `${part.id}/${chosen ? shortName(part, chosen.surface) : 'bar'}-${shortName(part, cut.makes)}`;
  const dim = nameDimension(state, name, cut.stage);
  const edge: Edge = { dim, from, to: version, toward: apart < 0 ? -1 : 1 };
  const takes = old?.version ?? (chosen ? undefined : from);
  state.edges.push(edge);
  state.now.set(cut.makes, { surface: cut.makes, version, stage: cut.stage });
  state.cuts.push({
    ...{ dim, operation, cut, edge, middle, from: chosen?.surface ?? 'bar end', options: ranked.map((one) => one.version) },
    ...{ holds: capability(operation.verb, cut.measures, cut.stage, middle), ...(takes === undefined ? {} : { takes }) },
    weight: weigh({ operation, stage: cut.stage, face, grip: setUp.grip, length: middle }),
  });
}

/** Faces of this grip that stand now: its datum, then those cut in it; failing these, the surface itself, then any other. */
function candidatesIn(state: State, setUp: SetUp, makes: SurfaceId, here: readonly SurfaceId[]): readonly Standing[] {
  const datum = datumOf(state, setUp);
  const own = here.includes(makes) ? state.now.get(makes) : undefined;
  const ids = [...(datum === undefined ? [] : [datum]), ...here].filter((id, i, all) => id !== makes && all.indexOf(id) === i);
  const others = ids.flatMap((id) => state.now.get(id) ?? []);
  // the end that serves as datum is skimmed by so much from itself
  const standing = own === undefined ? others : makes === datum ? [own, ...others] : [...others, own];
  if (standing.length > 0) return standing;
  const before = state.now.get(makes);
  if (before) return [before];
  const inBar = setUp.grip.kind === 'bar' || setUp.grip.kind === 'bar-and-centre';
  return inBar ? [] : [...state.now.values()];
}

/** Where a blade or saw goes in is set from a face that is seen outside; none but the floor of a hole is better than nothing. */
function reached({ ask }: State, { verb }: Operation, candidates: readonly Standing[]): readonly Standing[] {
  if (!SEVERING.includes(verb)) return candidates;
  const seen = candidates.filter(({ surface }) => faceOf(ask.part, surface).side === 'outside');
  return seen.length > 0 ? seen : candidates;
}
const SEVERING: readonly Verb[] = ['part-off', 'saw-off', 'cut-stub'];

/** The face that the work is seated by; on bar the end that points out, as last faced. */
function datumOf(state: State, setUp: SetUp): SurfaceId | undefined {
  const { datum, out } = setUp.grip;
  if (datum !== undefined) return datum;
  const end = state.ask.part.features.find((feature) => feature.kind === 'end' && feature.end === out);
  return end?.kind === 'end' ? end.face : undefined;
}

function rawEnd(state: State, face: Face, version: Version): Version {
  const raw: Version = `bar end, ${face.air}`;
  const beyond = mm(practice.value('bar.allowance'));
  const at = state.places.get(version) ?? Number.NaN;
  state.places.set(raw, len(face.air === 'first' ? at - beyond : at + beyond));
  return raw;
}

/** Where this version is aimed at: what it leaves stands out on the side of the air. */
function placeOf(state: State, face: Face, cut: Cut, version: Version): Len {
  const at = state.ask.places.get(face.id);
  if (at === undefined) throw new Error(`'${face.id}' has no place`);
  const leaves = cut.leaves + (state.ask.more.get(version) ?? 0);
  return len(face.air === 'first' ? at - leaves : at + leaves);
}

function faceOf(part: Part, id: SurfaceId): Face {
  const face = part.surfaces.find((surface) => surface.id === id);
  if (face?.shape !== 'face') throw new Error(`a length makes a face; '${id}' is none`);
  return face;
}

/** A surface that is cut again has its earlier dimensions marked; a second one of the same name is counted. */
function nameDimension(state: State, plain: string, stage: Stage): DimId {
  const name = stage === 'rough' ? `${plain}.rough` : plain;
  let id = name;
  for (let count = 2; state.used.has(id); count += 1) id = `${name}.${count}`;
  state.used.add(id);
  return id;
}
