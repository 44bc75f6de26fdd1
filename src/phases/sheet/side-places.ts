/** What is made at the bench from the side: where its middle is marked out from, which way round it stands, how a soldered part goes in. */
import { add, type Len, len } from '../../base/units.ts';
import { generalTolerance } from '../../handbook/iso2768.ts';
import type { OpId, SurfaceId } from '../../model/ids.ts';
import type { SideFeature } from '../../model/part.ts';
import type { Operation, SetUp } from '../../model/plan.ts';
import type { SizeShown } from '../../model/sheet.ts';
import type { Desk } from './lookup.ts';
import type { SheetWords } from './said.ts';

/** Filed along a stretch whose length the spindle or the part that goes on it asks for. */
const FILED: readonly Operation['verb'][] = ['file-flats', 'file-square', 'file-hexagon', 'file-half'];
const MARKED_OUT: readonly Operation['verb'][] = ['cross-drill'];

/** Along the axis, from a face as it stands when this is done: what is still to come off it counts. */
export function placeShown(desk: Desk, setUp: SetUp, operation: Operation, words: SheetWords): readonly SizeShown[] {
  const side = sideOf(desk, operation);
  if (side && FILED.includes(operation.verb)) return [filedStretch(desk, setUp, side, words)];
  if (side && operation.verb === 'saw-slot') return [deepShown(side, words)];
  const face = side && MARKED_OUT.includes(operation.verb) ? faceBefore(desk, setUp) : undefined;
  if (!side || !face) return [];
  const place = add(len(Math.abs(side.at - face.z)), leftOn(desk, setUp, face.id));
  const band = generalTolerance(place, 'm');
  const limits = { lo: len(place - band), hi: len(place + band), target: place, from: { kind: 'general' as const, as: 'ISO 2768-1 m' } };
  const after = words.say('size.middle-from', { letter: desk.letter(face.id) });
  return [{ dim: '', text: words.target(limits), limits: words.limits(limits), after, letter: '' }];
}

/** Of a slot: how far down from the end that it goes across. */
const deepShown = ({ half }: SideFeature, words: SheetWords): SizeShown => ({
  ...{ dim: '', limits: '', letter: '', after: '' },
  text: words.say('size.slot', { depth: words.short(add(half, half)) }),
});

/** From which face what is filed in a set-up is marked out; undefined where nothing is. */
export function filedFrom(desk: Desk, setUp: SetUp): SurfaceId | undefined {
  const filed = setUp.operations.map((op) => desk.operation(op)).find(({ verb }) => FILED.includes(verb));
  const side = filed && sideOf(desk, filed);
  return side && markedFrom(desk, setUp, side);
}

/** The nearer end where that is finished, else the end that is made. */
function markedFrom(desk: Desk, setUp: SetUp, { at }: SideFeature): SurfaceId {
  const near = at + at <= desk.part.length ? 'first' : 'second';
  const feature = desk.part.features.find((f) => f.kind === 'end' && f.end === near);
  const nearer = feature?.kind === 'end' ? feature.face : '';
  return isFinished(desk, setUp, nearer) ? nearer : (endMade(desk, setUp) ?? nearer);
}

/** What is still to come off the face that it is marked out from counts. */
function filedStretch(desk: Desk, setUp: SetUp, side: SideFeature, words: SheetWords): SizeShown {
  const { at, half } = side;
  const face = markedFrom(desk, setUp, side);
  const end = desk.surface(face);
  const letter = desk.letter(face);
  const from = Math.abs(at - (end.shape === 'face' ? end.z : 0)) - half + leftOn(desk, setUp, face);
  const long = add(half, half);
  const shown = { dim: '', limits: '', letter: '' };
  if (from === 0) return { ...shown, text: words.short(long), after: words.say('size.long', { letter }) };
  const text = words.say('size.range', { lo: words.short(len(from)), hi: words.short(add(len(from), long)) });
  return { ...shown, text, after: words.say('size.from', { letter }) };
}

function isFinished(desk: Desk, setUp: SetUp, face: SurfaceId): boolean {
  const { setUps } = desk.planned.route;
  const before = setUps.slice(0, setUps.indexOf(setUp)).flatMap((s) => s.operations);
  return before.flatMap((op) => desk.workings(op)).some((cut) => cut.makes === face && cut.stage === 'final');
}

/** Of the ends that are cut before this set-up, the first that is finished, else the first that is faced at all. */
export function endMade(desk: Desk, setUp: SetUp): string | undefined {
  const { setUps } = desk.planned.route;
  const before = setUps.slice(0, setUps.indexOf(setUp)).flatMap((s) => s.operations);
  const cuts = before.flatMap((op) => desk.workings(op));
  const faces = desk.part.features.flatMap((f) => (f.kind === 'end' ? [f.face] : []));
  const made = (stages: readonly string[]) => faces.find((face) => cuts.some((cut) => cut.makes === face && stages.includes(cut.stage)));
  return made(['final']) ?? made(['rough']);
}

function faceBefore(desk: Desk, setUp: SetUp): { readonly id: SurfaceId; readonly z: Len } | undefined {
  const id = endMade(desk, setUp);
  const face = id === undefined ? undefined : desk.surface(id);
  return face?.shape === 'face' ? { id: face.id, z: face.z } : undefined;
}

/** What later cuts take off a face, measured from itself. */
function leftOn(desk: Desk, setUp: SetUp, face: SurfaceId): Len {
  const { setUps } = desk.planned.route;
  const later: ReadonlySet<OpId> = new Set(setUps.slice(setUps.indexOf(setUp) + 1).flatMap((one) => one.operations));
  const cuts = desk.planned.chart.working.filter((w) => w.makes === face && w.from === face && later.has(w.op));
  return len(cuts.reduce((sum, w) => sum + w.limits.target, 0));
}

/** How far round from one that stands already; '' where it is the first, or it does not matter. */
export function facingFacts(
  desk: Desk,
  operation: Operation,
  name: (feature: string) => string,
): Readonly<Record<string, string | number>> {
  const side = sideOf(desk, operation);
  const order = desk.planned.route.setUps.flatMap((one) => one.operations);
  const before = (other: SideFeature): boolean =>
    order.findIndex((op) => desk.operation(op).feature === other.id) < order.indexOf(operation.id);
  const pair = desk.part.features.find(
    (f): f is SideFeature => f.kind === 'side' && (side?.facing?.other === f.id || f.facing?.other === side?.id) && before(f),
  );
  if (!side || !pair) return { round: 0, roundFrom: '' };
  return { round: (side.facing ?? pair.facing)?.degrees ?? 0, roundFrom: name(pair.id) };
}

/** 'bore' where a cross hole opens into a hole along the axis; not where it goes right across. */
export function meetsOf(desk: Desk, operation: Operation): 'bore' | '' {
  const side = sideOf(desk, operation);
  if (side?.does !== 'cross-hole' || side.count !== undefined) return '';
  const meets = desk.part.features.some((f) => {
    const on = f.kind === 'hole' ? desk.surface(f.cylinder) : undefined;
    return on?.shape === 'cylinder' && on.from < side.at && side.at < on.to;
  });
  return meets ? 'bore' : '';
}

/** Of a part that is soldered in: its fit, its overlap, and whether others go in with it. */
export function solderFacts(desk: Desk, setUp: SetUp, operation: Operation, words: SheetWords): Readonly<Record<string, string>> {
  const joins = sideOf(desk, operation)?.joins;
  const soldered = setUp.operations.filter((op) => desk.operation(op).verb === 'solder');
  return {
    fitLeast: joins?.fit ? words.atLeast(joins.fit.lo) : '',
    fitMost: joins?.fit ? words.atMost(joins.fit.hi) : '',
    overlap: joins?.overlap === undefined ? '' : words.short(joins.overlap),
    heat: soldered.length > 1 && soldered.includes(operation.id) ? (soldered[0] === operation.id ? 'first' : 'same') : '',
  };
}

function sideOf(desk: Desk, operation: Operation): SideFeature | undefined {
  const feature = desk.feature(operation.feature);
  return feature?.kind === 'side' ? feature : undefined;
}
