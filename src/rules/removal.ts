/** What each operation takes away, in figures: walks the route on a plain profile of the work, at the sizes that the chart aims at. */

import { type Len, len, mm } from '../base/units.ts';
import {
  barProfile,
  boreProfile,
  insideOver,
  outsideOver,
  removeProfile,
  type Span,
  stretchesOver,
  turnProfile,
  widerOver,
  widestUnder,
} from '../geometry/profile.ts';
import { numbersTable } from '../handbook/numbers.ts';
import { practice } from '../handbook/practice.ts';
import type { End, SurfaceId } from '../model/ids.ts';
import { other } from '../model/ids.ts';
import type { Part } from '../model/part.ts';
import type { Bound, Chart, Operation, Route, SetUp, Sweep, Way } from '../model/plan.ts';
import { isOffLathe } from '../model/work.ts';
import type { Beam } from './give.ts';
import {
  between,
  beyond,
  bladeReach,
  comesOut,
  endPlace,
  faceOf,
  farEnd,
  kerfOf,
  madePlace,
  outward,
  placeOf,
  standsOn,
  targetOf,
  threadDiameter,
  toward,
  withPoint,
} from './removal-places.ts';
import type { Removal, State } from './removal-state.ts';
import { roomPast } from './room-past.ts';
import { standOut } from './stand-out.ts';
import { operationOf, wayIn } from './working.ts';

export type { Removal } from './removal-state.ts';

/** In the order of work. Throws Error when the route names what is not there. */
export function walkRemoval(part: Part, route: Route, chart: Chart): readonly Removal[] {
  const across = part.stock.from === 'bar' ? widest(part.stock) : len(0);
  const working = new Map(chart.working.map((one) => [`${one.op} ${one.makes}`, one]));
  const state: State = {
    part,
    working,
    outs: [],
    profile: barProfile(across),
    ends: new Map(),
    places: new Map(),
    drilled: new Map(),
    branched: false,
  };
  for (const setUp of route.setUps) {
    for (const id of setUp.operations) {
      const operation = operationOf(route, id);
      step(state, setUp, operation, wayIn(operation, setUp));
    }
  }
  return state.outs;
}

/** Round: its diameter; hexagon: across its corners, up to the next tenth. */
function widest(bar: Extract<Part['stock'], { from: 'bar' }>): Len {
  const tenth = mm(numbersTable.value('tidy.coarse'));
  return bar.section === 'round' ? bar.across : len(Math.ceil((bar.across * numbersTable.value('hexagon.corners')) / tenth) * tenth);
}

function step(state: State, setUp: SetUp, operation: Operation, way: Way): void {
  const out = setUp.grip.out;
  const found = isOffLathe(setUp.grip) ? {} : { ...look(state, out, operation, way), ...standsOn(state, out) };
  const pushed = isOffLathe(setUp.grip) ? undefined : pushedAt(state, out, operation, way);
  for (const cut of way.cuts) if (cut.measures === 'length') state.places.set(cut.makes, madePlace(state, operation, cut));
  const before = state.profile;
  for (const sweep of way.sweeps) apply(state, out, operation, sweep);
  const beam = pushed && standOut(state.profile, setUp.grip, pushed, endOf(state, out));
  const end = endOf(state, out);
  const beamAt = (across: Len): Beam | undefined => pushed && standOut(turnProfile(before, pushed, across), setUp.grip, pushed, end);
  state.outs.push({ operation, setUp, way, branched: state.branched, ...found, ...(beam ? { beam, beamAt } : {}) });
  if (operation.verb === 'solder') state.branched = true;
}

/** Where a tool that is fed along pushes the work aside: as far as there is metal to take. */
function pushedAt(state: State, out: End, operation: Operation, way: Way): Span | undefined {
  const [sweep] = way.sweeps;
  if (operation.verb === 'face-down') return undefined;
  if (sweep?.take === 'turn') return widerOver(state.profile, outward(state, out, sweep.to), targetOf(state, operation, sweep.cylinder));
  if (sweep?.take === 'arc') return arcSpan(state, sweep.arc);
  if (sweep?.take !== 'groove' || sweep.side === 'inside') return undefined;
  return between(placeOf(state, sweep.first), placeOf(state, sweep.second));
}

/** Along the work, from the face that an outside radius begins at. */
function arcSpan(state: State, id: SurfaceId): Span | undefined {
  const arc = state.part.surfaces.find((one) => one.id === id);
  if (arc?.shape !== 'arc' || arc.side === 'inside') return undefined;
  const at = placeOf(state, arc.at);
  return between(at, beyond(at, arc.into, len(arc.across.target / 2)));
}

/** Where the end in use is now; a raw end stands out by what is usual. */
function endOf(state: State, out: End): number {
  return state.ends.get(out) ?? beyond(endPlace(state.part, out), out, mm(practice.value('bar.allowance')));
}

/** From the end face to where a shoulder stops the tool; a hole or turning that goes right through has none. */
function alongOf(state: State, out: End, operation: Operation, to: Bound, way: Way): { readonly along?: Len } {
  const end = state.ends.get(out);
  if (end === undefined || (to.beyond ?? 0) > 0 || farEnd(state.part, out) === to.face) return {};
  const cut = way.cuts.find((one) => one.makes === to.face);
  const stop = cut ? madePlace(state, operation, cut) : placeOf(state, to.face);
  const along = Math.abs(beyond(stop, other(out), to.beyond ?? len(0)) - end);
  return along > 0 ? { along: len(along) } : {};
}

type Found = Partial<
  Pick<Removal, 'stock' | 'diameter' | 'inward' | 'touch' | 'along' | 'depth' | 'open' | 'through' | 'comesOut' | 'narrow' | 'room'>
>;

function look(state: State, out: End, operation: Operation, way: Way): Found {
  const [sweep] = way.sweeps;
  switch (sweep?.take) {
    case 'face':
      return lookFace(state, operation, sweep.face, way);
    case 'turn': {
      if (operation.verb === 'face-down') return lookDown(state, out, operation, sweep, way);
      const from = outsideOver(state.profile, outward(state, out, sweep.to));
      return { ...offDiameter(from, targetOf(state, operation, sweep.cylinder)), ...alongOf(state, out, operation, sweep.to, way) };
    }
    case 'groove':
      return lookGroove(state, operation, sweep);
    case 'bore':
      return lookBore(state, out, operation, sweep, way);
    case 'part': {
      const span = kerfOf(state, sweep);
      const off = offDiameter(outsideOver(state.profile, span), insideOver(state.profile, span) ?? len(0));
      return { ...off, ...bladeReach(state, { out, operation, way }, sweep) };
    }
    case 'cone':
      return lookCone(state, sweep.cone);
    case 'arc':
      return lookArc(state, sweep.arc);
    case 'thread':
      return { diameter: threadDiameter(state.part, sweep.feature), ...roomPast(state.part, state.profile, sweep.feature) };
    default:
      return {};
  }
}

/** From the end face down to the shoulder, inward to the diameter. */
function lookDown(state: State, out: End, operation: Operation, sweep: Extract<Sweep, { take: 'turn' }>, way: Way): Found {
  const from = outsideOver(state.profile, outward(state, out, sweep.to));
  const { along } = alongOf(state, out, operation, sweep.to, way);
  const inward = len(Math.max(0, from - targetOf(state, operation, sweep.cylinder)));
  return { diameter: from, touch: from, ...(along && inward > 0 ? { stock: { measures: 'length', amount: along }, inward } : {}) };
}

function offDiameter(from: Len, to: Len): Found {
  return from > to ? { stock: { measures: 'diameter', amount: len(from - to) }, diameter: from, touch: from } : { diameter: to };
}

/** What stands beyond the face: what an earlier cut left, or the raw end. */
function lookFace(state: State, operation: Operation, face: SurfaceId, way: Way): Found {
  const { air } = faceOf(state.part, face);
  const cut = way.cuts.find((one) => one.makes === face);
  const now = cut ? madePlace(state, operation, cut) : placeOf(state, face);
  const old = state.ends.get(air) ?? beyond(now, air, rawStock(state, operation, face));
  const amount = len(Math.abs(old - now));
  const diameter = outsideOver(state.profile, toward(air, now));
  return { ...(amount > 0 ? { stock: { measures: 'length', amount } } : {}), ...(diameter > 0 ? { diameter } : {}) };
}

/** What a raw end gives up: as the chart has it, else as is usual. */
function rawStock(state: State, operation: Operation, face: SurfaceId): Len {
  const working = state.working.get(`${operation.id} ${face}`);
  return working?.from === 'bar end' ? working.limits.target : mm(practice.value('bar.allowance'));
}

function lookGroove(state: State, operation: Operation, sweep: Extract<Sweep, { take: 'groove' }>): Found {
  const floor = targetOf(state, operation, sweep.floor);
  const span = between(placeOf(state, sweep.first), placeOf(state, sweep.second));
  if (sweep.side === 'outside') return offDiameter(outsideOver(state.profile, span), floor);
  const inside = insideOver(state.profile, span) ?? len(0);
  return { diameter: floor, ...(floor > inside ? { stock: { measures: 'diameter', amount: len(floor - inside) }, touch: inside } : {}) };
}

function lookBore(state: State, out: End, operation: Operation, sweep: Extract<Sweep, { take: 'bore' }>, way: Way): Found {
  const span = outward(state, out, sweep.to);
  const { diameter } = sweep;
  // a drill that stopped short of the floor leaves a narrow end: the passes are counted where most of the way is
  const inside = widestUnder(state.profile, span, diameter) ?? insideOver(state.profile, span) ?? len(0);
  const face = state.ends.get(out) ?? endPlace(state.part, out);
  const bottom = out === 'first' ? span.to : span.from;
  const depth = len(Math.max(0, out === 'first' ? bottom - face : face - bottom));
  const through = farEnd(state.part, out) === sweep.to.face && (sweep.to.beyond ?? 0) >= 0;
  return {
    diameter,
    depth,
    ...openTo(state, out, span, sweep, depth),
    ...(diameter > inside ? { stock: { measures: 'diameter', amount: len(diameter - inside) }, touch: inside } : {}),
    ...alongOf(state, out, operation, sweep.to, way),
    ...(through ? { through: true } : {}),
    ...(through && comesOut(state, out, sweep) ? { comesOut: true } : {}),
    ...narrowEnd(state, sweep, bottom, { span, inside }),
  };
}

/** How far in a hole as wide as the tool, or wider, stands before its own; a centre drill's mouth is none. */
function openTo(state: State, out: End, span: Span, sweep: Extract<Sweep, { take: 'bore' }>, depth: Len): Found {
  const { diameter, cylinder } = sweep;
  const own = state.part.surfaces.find((one) => one.id === cylinder);
  if (own?.shape !== 'cylinder') return {};
  const begins = Math.abs((out === 'first' ? own.from : own.to) - endPlace(state.part, out));
  const metal = stretchesOver(state.profile, span);
  const ordered = out === 'first' ? metal : [...metal].reverse();
  const first = ordered.findIndex((one) => one.inside < diameter);
  const open = ordered.slice(0, Math.max(first, 0)).reduce((sum, one) => sum + one.to - one.from, 0);
  return begins > 0 && open >= begins && open < depth ? { open: len(open) } : {};
}

/** A drill with a point stops short of a flat floor: what it left narrow is opened before the bore is taken to size. */
function narrowEnd(
  state: State,
  sweep: Extract<Sweep, { take: 'bore' }>,
  bottom: number,
  { span, inside }: { readonly span: Span; readonly inside: Len },
): Found {
  const stopped = state.drilled.get(sweep.cylinder);
  const least = insideOver(state.profile, span);
  if (sweep.point !== undefined || stopped === undefined || least === undefined || least >= inside) return {};
  return { narrow: { long: len(Math.abs(bottom - stopped)), amount: len(inside - least) } };
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
    const { from, to } = outward(state, out, sweep.to);
    if (sweep.point !== undefined) state.drilled.set(sweep.cylinder, out === 'first' ? to : from);
    state.profile = boreProfile(state.profile, withPoint(state, out, sweep), sweep.diameter);
  } else if (sweep.take === 'part') {
    const { air } = faceOf(state.part, sweep.face);
    const end = beyond(placeOf(state, sweep.face), air, sweep.stub ?? len(0));
    state.ends.set(air, end);
    state.profile = removeProfile(state.profile, toward(air, end));
  }
}

/** A chamfer is plunged; a cone is put on by the cross slide, at its mouth, and fed by the top slide. */
function lookCone(state: State, id: SurfaceId): Found {
  const cone = state.part.surfaces.find((one) => one.id === id);
  if (cone?.shape !== 'cone') throw new Error(`'${id}' is no cone`);
  const mouth = placeOf(state, cone.at);
  const span = between(mouth, beyond(mouth, cone.into, len(1)));
  const [outside, inside] = [outsideOver(state.profile, span), insideOver(state.profile, span) ?? cone.mouth.target];
  const stock = cone.side === 'outside' ? outside - cone.mouth.target : cone.mouth.target - inside;
  const diameter = cone.side === 'outside' ? len(Math.max(outside, cone.mouth.target)) : cone.mouth.target;
  const touch = cone.side === 'outside' ? outside : inside;
  return { diameter, ...(stock > 0 ? { stock: { measures: 'diameter', amount: len(stock) }, touch } : {}) };
}

/** The speed is reckoned on the largest diameter that the form tool meets. */
function lookArc(state: State, id: SurfaceId): Found {
  const arc = state.part.surfaces.find((one) => one.id === id);
  if (arc?.shape !== 'arc') throw new Error(`'${id}' is no arc`);
  const at = placeOf(state, arc.at);
  const span = between(at, beyond(at, arc.into, len(arc.across.target / 2)));
  const on = state.part.surfaces.find((one) => one.id === arc.until);
  if (on?.shape === 'cylinder' && arc.side === 'inside')
    return { diameter: arc.bends === 'fillet' ? on.size.target : len(on.size.target + arc.across.target) };
  const high = on?.shape === 'cylinder' && arc.bends === 'fillet' ? on.size.target + arc.across.target : 0;
  return { diameter: len(Math.max(outsideOver(state.profile, span), high)) };
}
