/** One planned part, opened flat on the desk: what the pages ask for again and again, by id. */
import type { Words } from '../../base/words.ts';
import type { FeatureId, OpId, SurfaceId } from '../../model/ids.ts';
import type { Face, Feature, Part, Role, Surface, ThreadSize } from '../../model/part.ts';
import type { Figures, Operation, PlannedPart, SetUp, Way, Working } from '../../model/plan.ts';
import { isOffLathe } from '../../model/work.ts';

export type Desk = {
  readonly planned: PlannedPart;
  readonly part: Part;
  /** Set-ups that are not bench work: the grips that are counted. */
  readonly grips: readonly SetUp[];
  operation(id: OpId): Operation;
  /** Undefined for what is no feature of the drawing, as the parting from the bar. */
  feature(id: FeatureId): Feature | undefined;
  role(op: OpId): Role;
  surface(id: SurfaceId): Surface;
  /** By its place in the route, from 0: bench set-ups have no number of their own. */
  setUp(place: number): SetUp;
  workings(op: OpId): readonly Working[];
  figures(op: OpId): Figures | undefined;
  /** In tens, counted through the part. */
  number(op: OpId): string;
  /** Datum letter of a face. */
  letter(face: SurfaceId): string;
  /** The thread that a feature is, or carries; undefined when there is none. */
  thread(feature: FeatureId): ThreadSize | undefined;
};

/** Every page opens its parts: once is enough for all. */
const OPEN = new WeakMap<PlannedPart, Desk>();

/** Throws Error on an id that the part does not have: the plan is broken, which is our fault. */
export function deskOf(planned: PlannedPart): Desk {
  const desk = OPEN.get(planned) ?? opened(planned);
  OPEN.set(planned, desk);
  return desk;
}

function opened(planned: PlannedPart): Desk {
  const { part, route } = planned;
  const operations = byId(route.chosen.flatMap((method) => method.operations));
  const features = byId(part.features);
  const surfaces = byId(part.surfaces);
  const figures = new Map(planned.figures.map((f) => [f.op, f]));
  const order = route.setUps.flatMap((setUp) => setUp.operations);
  const letters = lettersOf(part);
  const setUps = new Map(route.setUps.map((s, i) => [String(i), s]));
  const workings = workingsOf(planned);
  return {
    planned,
    part,
    grips: route.setUps.filter((setUp) => !isOffLathe(setUp.grip)),
    operation: (id) => found(operations, id, 'operation'),
    feature: (id) => features.get(id),
    role: (op) => features.get(found(operations, op, 'operation').feature)?.role ?? 'free',
    surface: (id) => found(surfaces, id, 'surface'),
    setUp: (place) => found(setUps, String(place), 'set-up'),
    workings: (op) => workings.get(op) ?? [],
    figures: (op) => figures.get(op),
    number: (op) => String((order.indexOf(op) + 1) * 10),
    letter: (face) => found(letters, face, 'face'),
    thread: (feature) => threadOf(part, features.get(feature)),
  };
}

/** In the order of the chart, by operation. */
function workingsOf({ chart }: PlannedPart): ReadonlyMap<OpId, readonly Working[]> {
  const all = new Map<OpId, Working[]>();
  for (const working of chart.working) {
    const own = all.get(working.op);
    if (own) own.push(working);
    else all.set(working.op, [working]);
  }
  return all;
}

/** The way in which an operation is done in this grip. */
export function wayOf(operation: Operation, setUp: SetUp): Way | undefined {
  return isOffLathe(setUp.grip) ? operation.ways.bench : operation.ways[setUp.grip.out];
}

/** Last piece of an id: 'seat-piece/coupling.thread' to 'coupling.thread'. */
export function lastOf(id: string): string {
  return id.slice(id.indexOf('/') + 1);
}

/** Letters that the drawing gives; other faces take the letters that are left, in the order of the ring. */
function lettersOf(part: Part): ReadonlyMap<SurfaceId, string> {
  const faces = part.surfaces.filter((s): s is Face => s.shape === 'face');
  const given = new Map(faces.flatMap((f) => (f.letter ? [[f.id, f.letter] as const] : [])));
  const taken = new Set(given.values());
  const left = [...'ABCDEFGHJKLMNPQRSTUVWXYZ'].filter((letter) => !taken.has(letter));
  const ordered = part.ring.filter((id) => faces.some((f) => f.id === id && !f.letter));
  return new Map([...given, ...ordered.map((id, i) => [id, left[i] ?? `F${i}`] as const)]);
}

function threadOf(part: Part, feature: Feature | undefined): ThreadSize | undefined {
  if (!feature) return undefined;
  if (feature.kind === 'thread') return feature.thread;
  const carries = feature.kind === 'outside' || feature.kind === 'hole' ? feature.cylinder : undefined;
  for (const other of part.features) if (other.kind === 'thread' && other.on === carries) return other.thread;
  return undefined;
}

function byId<T extends { readonly id: string }>(records: readonly T[]): ReadonlyMap<string, T> {
  return new Map(records.map((record) => [record.id, record]));
}

function found<T>(map: ReadonlyMap<string, T>, id: string, what: string): T {
  const record = map.get(id);
  if (record === undefined) throw new Error(`the plan names ${what} '${id}', which is not there`);
  return record;
}

/**
 * An id as a reader sees it: 'seat-piece/coupling.relief' by the words of its name, or of each piece of it; a user's own name, which has
 * none, with its hyphens as blanks.
 */
export function namedIn(id: string, words: Words): string {
  const name = lastOf(id);
  const own = (one: string): string => (words.has(`feature.${one}`) ? words.say(`feature.${one}`) : one.replaceAll('-', ' '));
  if (words.has(`feature.${name}`)) return own(name);
  const [whole = '', ...pieces] = name.split('.').map(own);
  return pieces.reduce((of, piece) => words.say('feature-of', { of, piece }), whole);
}
