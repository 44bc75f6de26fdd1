/** What each operation takes away, in figures: walks the route on a plain profile of the work, at the sizes that the chart aims at. */
import { type Len, len, mm } from '../base/units.ts';
import {
  barProfile,
  boreProfile,
  insideOver,
  outsideOver,
  type Profile,
  removeProfile,
  type Span,
  turnProfile,
} from '../geometry/profile.ts';
import { numbersTable } from '../handbook/numbers.ts';
import { practice } from '../handbook/practice.ts';
import type { End, SurfaceId } from '../model/ids.ts';
import { other } from '../model/ids.ts';
import type { Face, Part } from '../model/part.ts';
import type { Bound, Chart, Operation, Route, SetUp, Sweep, Way } from '../model/plan.ts';
import { operationOf, wayIn } from './working.ts';

export type Removal = {
  readonly operation: Operation;
  readonly setUp: SetUp;
  readonly way: Way;
  /** Taken off the diameter, or along z by a facing cut; absent where the operation takes nothing so measured. */
  readonly stock?: { readonly measures: 'diameter' | 'length'; readonly amount: Len };
  /** The largest diameter that is cut: the speed is reckoned on it. */
  readonly diameter?: Len;
  /** A hole's depth at full diameter, from the face of the end in use as it stands. */
  readonly depth?: Len;
  /** It comes out on the far side. */
  readonly through?: true;
  /** A branch stands on the work. */
  readonly branched: boolean;
};

type State = {
  readonly part: Part;
  readonly targets: ReadonlyMap<string, Len>;
  readonly outs: Removal[];
  profile: Profile;
  /** Where either end of the metal is now; a raw end is not known until it is faced. */
  readonly ends: Map<End, Len>;
  readonly left: Map<SurfaceId, Len>;
  branched: boolean;
};

/** In the order of work. Throws Error when the route names what is not there. */
export function walkRemoval(part: Part, route: Route, chart: Chart): readonly Removal[] {
  const bar = part.stock.from === 'bar' ? part.stock : undefined;
  const across = bar
    ? bar.section === 'hexagon'
      ? len(Math.round(bar.across * numbersTable.value('hexagon.corners')))
      : bar.across
    : len(0);
  const targets = new Map(chart.working.map((one) => [`${one.op} ${one.makes}`, one.limits.target]));
  const state: State = { part, targets, outs: [], profile: barProfile(across), ends: new Map(), left: new Map(), branched: false };
  for (const setUp of route.setUps) {
    for (const id of setUp.operations) {
      const operation = operationOf(route, id);
      step(state, setUp, operation, wayIn(operation, setUp));
    }
  }
  return state.outs;
}

function step(state: State, setUp: SetUp, operation: Operation, way: Way): void {
  const out = setUp.grip.out;
  const found = setUp.grip.kind === 'bench' ? {} : look(state, out, operation, way);
  state.outs.push({ operation, setUp, way, branched: state.branched, ...found });
  for (const cut of way.cuts) if (cut.measures === 'length') state.left.set(cut.makes, cut.leaves);
  for (const sweep of way.sweeps) apply(state, out, operation, sweep);
  if (operation.verb === 'solder') state.branched = true;
}

type Found = Partial<Pick<Removal, 'stock' | 'diameter' | 'depth' | 'through'>>;

function look(state: State, out: End, operation: Operation, way: Way): Found {
  const [sweep] = way.sweeps;
  switch (sweep?.take) {
    case 'face':
      return lookFace(state, sweep.face, way);
    case 'turn': {
      const from = outsideOver(state.profile, outward(state, out, sweep.to));
      return offDiameter(from, targetOf(state, operation, sweep.cylinder));
    }
    case 'groove':
      return lookGroove(state, operation, sweep);
    case 'bore':
      return lookBore(state, out, sweep);
    case 'part': {
      const span = kerfOf(state, sweep);
      const from = outsideOver(state.profile, span);
      return offDiameter(from, insideOver(state.profile, span) ?? len(0));
    }
    case 'cone':
      return { diameter: coneDiameter(state.part, sweep.cone) };
    case 'thread':
      return { diameter: threadDiameter(state.part, sweep.feature) };
    default:
      return {};
  }
}

function offDiameter(from: Len, to: Len): Found {
  return from > to ? { stock: { measures: 'diameter', amount: len(from - to) }, diameter: from } : { diameter: to };
}

/** What stands beyond the face: what an earlier cut left, or the raw end. */
function lookFace(state: State, face: SurfaceId, way: Way): Found {
  const { air } = faceOf(state.part, face);
  const now = placeWith(state.part, face, way.cuts.find((cut) => cut.makes === face)?.leaves ?? len(0));
  const raw = mm(practice.value('bar.allowance'));
  const old = state.ends.get(air) ?? beyond(now, air, raw);
  const amount = len(Math.abs(old - now));
  const diameter = outsideOver(state.profile, toward(air, now));
  return { ...(amount > 0 ? { stock: { measures: 'length', amount } } : {}), ...(diameter > 0 ? { diameter } : {}) };
}

function lookGroove(state: State, operation: Operation, sweep: Extract<Sweep, { take: 'groove' }>): Found {
  const floor = targetOf(state, operation, sweep.floor);
  const span = between(placeOf(state, sweep.first), placeOf(state, sweep.second));
  if (sweep.side === 'outside') return offDiameter(outsideOver(state.profile, span), floor);
  const inside = insideOver(state.profile, span) ?? len(0);
  return { diameter: floor, ...(floor > inside ? { stock: { measures: 'diameter', amount: len(floor - inside) } } : {}) };
}

function lookBore(state: State, out: End, sweep: Extract<Sweep, { take: 'bore' }>): Found {
  const span = outward(state, out, sweep.to);
  const inside = insideOver(state.profile, span) ?? len(0);
  const { diameter } = sweep;
  const face = state.ends.get(out) ?? endPlace(state.part, out);
  const bottom = out === 'first' ? span.to : span.from;
  const depth = len(Math.max(0, out === 'first' ? bottom - face : face - bottom));
  const through = farEnd(state.part, out) === sweep.to.face && (sweep.to.beyond ?? 0) >= 0;
  return {
    diameter,
    depth,
    ...(diameter > inside ? { stock: { measures: 'diameter', amount: len(diameter - inside) } } : {}),
    ...(through ? { through: true } : {}),
  };
}

// ---- the profile after it -----------------------------------------------------------------------------------------------------
function apply(state: State, out: End, operation: Operation, sweep: Sweep): void {
  if (sweep.take === 'face') {
    const { air } = faceOf(state.part, sweep.face);
    state.ends.set(air, placeOf(state, sweep.face));
    state.profile = removeProfile(state.profile, toward(air, placeOf(state, sweep.face)));
  } else if (sweep.take === 'turn') {
    state.profile = turnProfile(state.profile, outward(state, out, sweep.to), targetOf(state, operation, sweep.cylinder));
  } else if (sweep.take === 'groove') {
    const cut = sweep.side === 'outside' ? turnProfile : boreProfile;
    const span = between(placeOf(state, sweep.first), placeOf(state, sweep.second));
    state.profile = cut(state.profile, span, targetOf(state, operation, sweep.floor));
  } else if (sweep.take === 'bore') {
    state.profile = boreProfile(state.profile, outward(state, out, sweep.to), sweep.diameter);
  } else if (sweep.take === 'part') {
    const { air } = faceOf(state.part, sweep.face);
    const end = beyond(placeOf(state, sweep.face), air, sweep.stub ?? len(0));
    state.ends.set(air, end);
    state.profile = removeProfile(state.profile, toward(air, end));
  }
}

// ---- places -------------------------------------------------------------------------------------------------------------------
const beyond = (z: Len, way: End, by: Len): Len => len(way === 'first' ? z - by : z + by);
const toward = (way: End, z: Len): Span =>
  way === 'first' ? { from: Number.NEGATIVE_INFINITY, to: z } : { from: z, to: Number.POSITIVE_INFINITY };
const between = (a: Len, b: Len): Span => ({ from: Math.min(a, b), to: Math.max(a, b) });

/** From the bound out to the end in use. */
function outward(state: State, out: End, to: Bound): Span {
  return toward(out, beyond(placeOf(state, to.face), other(out), to.beyond ?? len(0)));
}

function kerfOf(state: State, sweep: Extract<Sweep, { take: 'part' }>): Span {
  const { air } = faceOf(state.part, sweep.face);
  const face = beyond(placeOf(state, sweep.face), air, sweep.stub ?? len(0));
  return between(face, beyond(face, air, sweep.kerf));
}

/** Of a face as it is now; of one not cut yet, the drawing's place. */
const placeOf = (state: State, face: SurfaceId): Len => placeWith(state.part, face, state.left.get(face) ?? len(0));

function placeWith(part: Part, id: SurfaceId, leaves: Len): Len {
  const face = faceOf(part, id);
  return beyond(face.z, face.air, leaves);
}

function faceOf(part: Part, id: SurfaceId): Face {
  const face = part.surfaces.find((one) => one.id === id);
  if (face?.shape !== 'face') throw new Error(`'${id}' is no face`);
  return face;
}

function farEnd(part: Part, out: End): SurfaceId | undefined {
  const end = part.features.find((feature) => feature.kind === 'end' && feature.end === other(out));
  return end?.kind === 'end' ? end.face : undefined;
}

const endPlace = (part: Part, end: End): Len => (end === 'first' ? len(0) : part.length);

/** What the chart aims at for this cut, else the drawing's. */
function targetOf(state: State, operation: Operation, id: SurfaceId): Len {
  const surface = state.part.surfaces.find((one) => one.id === id);
  if (surface?.shape !== 'cylinder') throw new Error(`'${id}' is no cylinder`);
  return state.targets.get(`${operation.id} ${id}`) ?? surface.size.target;
}

/** The large end of a cone. */
function coneDiameter(part: Part, id: SurfaceId): Len {
  const cone = part.surfaces.find((one) => one.id === id);
  if (cone?.shape !== 'cone') throw new Error(`'${id}' is no cone`);
  const until = part.surfaces.find((one) => one.id === cone.until);
  return len(Math.max(cone.mouth.target, until?.shape === 'cylinder' ? until.size.target : 0));
}

function threadDiameter(part: Part, id: string): Len {
  const thread = part.features.find((one) => one.id === id);
  if (thread?.kind !== 'thread') throw new Error(`'${id}' is no thread`);
  return thread.thread.major.target;
}
