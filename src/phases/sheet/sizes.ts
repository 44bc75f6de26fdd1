/** What is read off caliper, micrometer or dial in a row: working dimensions with their limits and their zero, or what the tool says. */

import { type Len, len } from '../../base/units.ts';
import { thread as threadName } from '../../drawing/sheet/format.ts';
import type { End, SurfaceId } from '../../model/ids.ts';
import type { Feature, Limits, MadeTo } from '../../model/part.ts';
import type { Operation, SetUp, Way, Working } from '../../model/plan.ts';
import type { SizeShown } from '../../model/sheet.ts';
import { isOffLathe } from '../../model/work.ts';
import { type Desk, wayOf } from './lookup.ts';
import type { SheetWords } from './said.ts';

/** Diameters first, then lengths; how far the tool goes where no length says so. */
export function sizesOf(
  desk: Desk,
  setUp: SetUp,
  operation: Operation,
  words: SheetWords,
  letterOf: (working: Working) => string,
): readonly SizeShown[] {
  const workings = desk.workings(operation.id);
  const measured = [...workings.filter((w) => w.measures === 'diameter'), ...workings.filter((w) => w.measures === 'length')];
  const shown = measured.map((w) => byName(operation, w, sizeShown(desk, w, words, letterOf(w)), words));
  const sizes = isCentre(desk, operation) ? toolSize(operation, words) : [...sizeOfTool(desk, operation, measured, words), ...shown];
  const far = farShown(desk, setUp, operation);
  return far === undefined ? sizes : withFar(sizes, far, words);
}

/** A length that is measured says it with its limits. */
function farShown(desk: Desk, setUp: SetUp, operation: Operation): Far | undefined {
  const measured = desk.workings(operation.id).some((w) => w.measures === 'length');
  return measured && !isCentre(desk, operation) ? undefined : farOf(desk, setUp, operation);
}

/** Does its row count from the end in use, whatever its lengths are measured from? */
export function namesEnd(desk: Desk, setUp: SetUp, operation: Operation): boolean {
  const far = farShown(desk, setUp, operation);
  return (far !== undefined && 'along' in far) || bladeEnd(desk, setUp, operation) !== undefined;
}

/** The face from which the carriage counts for a blade; undefined where it does not. */
export function bladeEnd(desk: Desk, { grip }: SetUp, { id, verb }: Operation): SurfaceId | undefined {
  const parts = verb === 'part-off' || verb === 'cut-stub';
  return parts && desk.figures(id)?.along ? endFace(desk, grip.out)?.id : undefined;
}

/** A centre that stays goes by its drill and its depth: nobody measures its pilot. */
export function isCentre(desk: Desk, operation: Operation): boolean {
  const feature = desk.feature(operation.feature);
  return operation.verb === 'centre' && feature?.kind === 'hole' && feature.centre === true;
}

function sizeShown(desk: Desk, working: Working, words: SheetWords, letter: string): SizeShown {
  if (working.from === 'bar end') return firstFace(working, words);
  if (desk.surface(working.makes).shape === 'arc') return radiusShown(working, words, letter);
  const target = words.target(working.limits);
  const text = working.measures === 'diameter' ? words.say('size.across', { target }) : target;
  const to = working.measures === 'diameter' && working.stage === 'final' ? madeToOf(desk, working.makes) : undefined;
  if (to) return { dim: working.id, text, limits: '', after: words.say(fitWords(desk, working), clearSaid(to, words)), letter };
  return { dim: working.id, text, limits: words.limits(working.limits), after: afterOf(desk, working, words), letter };
}

/** Of what is made to its mate, a shaft or a hole. */
function madeToOf(desk: Desk, surface: string): MadeTo | undefined {
  const feature = desk.part.features.find((f) => (f.kind === 'outside' || f.kind === 'hole') && f.cylinder === surface);
  return feature?.kind === 'outside' || feature?.kind === 'hole' ? feature.madeTo : undefined;
}

const fitWords = (desk: Desk, { makes }: Working): string =>
  desk.surface(makes).side === 'inside' ? 'size.over-shaft' : 'size.under-hole';

const clearSaid = ({ clear }: MadeTo, words: SheetWords): Readonly<Record<string, string>> => ({
  least: words.atLeast(clear.lo),
  most: words.atMost(clear.hi),
});

/** A hole that the tool itself makes goes by the tool's name, where it has one; its size and limits stand beneath. */
function byName({ verb, tool }: Operation, working: Working, shown: SizeShown, words: SheetWords): SizeShown {
  const name =
    working.measures === 'diameter' && tool.size !== undefined && DRILLS.includes(verb) ? (tool.name ?? words.stamp(tool.size)) : undefined;
  if (name === undefined || tool.size === undefined) return shown;
  const limits = words.say('size.named', { size: words.diameter(tool.size), limits: words.limits(working.limits, tool.size) });
  return { ...shown, text: name, limits };
}

/** As a drawing has it (ISO 129-1): the radius, though the circle's diameter is what is reckoned with. */
function radiusShown(working: Working, words: SheetWords, letter: string): SizeShown {
  const { lo, hi, target, from } = working.limits;
  const radius = { lo: len(lo / 2), hi: len(hi / 2), target: len(target / 2), from };
  return {
    dim: working.id,
    text: words.say('size.radius', { size: words.target(radius) }),
    limits: words.limits(radius),
    after: '',
    letter,
  };
}

/** The first face of all only has to clean up: anything in its range will do. */
function firstFace(working: Working, words: SheetWords): SizeShown {
  const range = words.say('size.range', { lo: words.least(working.limits.lo), hi: words.most(working.limits.hi) });
  return { dim: working.id, text: words.target(working.limits), limits: range, after: words.say('size.from-bar-end'), letter: '' };
}

function afterOf(desk: Desk, working: Working, words: SheetWords): string {
  if (working.from === 'axis' || working.from === 'bar end') return '';
  return words.say(working.from === working.makes ? 'size.off' : 'size.from', { letter: desk.letter(working.from) });
}

const bare = (text: string, tolerance: string, after = ''): SizeShown => ({ dim: '', text, limits: tolerance, after, letter: '' });

/** What the tool or the feature itself says where no working dimension does: a thread, a drill, flats. */
function sizeOfTool(desk: Desk, operation: Operation, measured: readonly Working[], words: SheetWords): readonly SizeShown[] {
  const feature = desk.feature(operation.feature);
  if (feature?.kind === 'thread' && operation.verb !== 'gauge') return [bare(threadName(feature.thread.name), feature.thread.cls)];
  if (measured.some((w) => w.measures === 'diameter')) return [];
  if (feature?.kind === 'side' && feature.size && operation.verb !== 'deburr') {
    const drilled = drilledAcross(operation, feature.size, words);
    if (drilled) return [drilled];
    const across = ['flats', 'square', 'square-hole', 'hexagon', 'half-flat', 'slit', 'slot'].includes(feature.does);
    const target = words.target(feature.size);
    return [bare(across ? target : words.say('size.across', { target }), words.limits(feature.size))];
  }
  return toolSize(operation, words);
}

/** A cross hole by a drill that is not of its own size: under it, where a reamer follows; or another within its limits. */
function drilledAcross({ verb, tool }: Operation, size: Limits, words: SheetWords): SizeShown | undefined {
  if (verb !== 'cross-drill' || tool.size === undefined || tool.size === size.target) return undefined;
  const [text, measures] = stamped(tool.size, tool.name, words);
  const within = tool.size >= size.lo && tool.size <= size.hi;
  return bare(text, within ? words.limits(size, tool.size) : measures);
}

const toolSize = ({ tool, verb }: Operation, words: SheetWords): readonly SizeShown[] =>
  tool.size !== undefined && DRILLS.includes(verb) ? [bare(...stamped(tool.size, tool.name, words))] : [];

/** A size that goes by a name of its own, with what it measures beneath; else the diameter. */
function stamped(size: Len, own: string | undefined, words: SheetWords): readonly [text: string, limits: string] {
  const name = own ?? words.stamp(size);
  return name === undefined ? [words.diameter(size), ''] : [name, words.diameter(size)];
}

const DRILLS: readonly string[] = ['drill', 'centre', 'd-bit', 'counterbore', 'ream', 'cross-drill', 'cross-ream', 'drill-bolt-holes'];

// ---- how far -----------------------------------------------------------------------------------------------------------
/** `deep`: as the tailstock or a depth stop reads; `along`: to a place so far from a face; `stub`: of it, bar that is left to hold by. */
type Far = { readonly deep: Len } | { readonly along: Len; readonly letter: string; readonly stub?: Len };

/** On the drawing's own places: where it ends is not critical, or a length would say so with its limits. */
function farOf(desk: Desk, setUp: SetUp, operation: Operation): Far | undefined {
  const deep = desk.figures(operation.id)?.depth;
  if (deep !== undefined) return { deep };
  const way = wayOf(operation, setUp);
  const zero = endFace(desk, setUp.grip.out);
  if (!way || !zero || isOffLathe(setUp.grip)) return undefined;
  return farFrom(desk.figures(operation.id)?.stands, farOfSweep(desk, setUp.grip.out, zero, way) ?? farOfThread(desk, operation, zero));
}

/** Counted from the face as it stands: what a later cut takes off it is still to come. */
function farFrom(stands: Len | undefined, far: Far | undefined): Far | undefined {
  if (stands === undefined || !far) return far;
  return 'deep' in far ? { deep: len(far.deep + stands) } : { ...far, along: len(far.along + stands) };
}

type Zero = { readonly id: SurfaceId; readonly z: Len; readonly letter: string };

export function endFace(desk: Desk, end: End): Zero | undefined {
  const feature = desk.part.features.find((f) => f.kind === 'end' && f.end === end);
  const face = feature?.kind === 'end' ? desk.surface(feature.face) : undefined;
  return face?.shape === 'face' ? { id: face.id, z: face.z, letter: desk.letter(face.id) } : undefined;
}

function farOfSweep(desk: Desk, out: End, zero: Zero, way: Way): Far | undefined {
  for (const sweep of way.sweeps) {
    if (sweep.take === 'part' && sweep.stub !== undefined)
      return { along: len(desk.part.length + sweep.stub), letter: zero.letter, stub: sweep.stub };
    if (sweep.take !== 'turn' && sweep.take !== 'bore') continue;
    const face = desk.surface(sweep.to.face);
    if (face.shape !== 'face') continue;
    const along = len(Math.abs(face.z - zero.z) + (sweep.to.beyond ?? 0));
    // a centre's mouth reaches no depth worth saying
    if (along > 0) return sweep.take === 'bore' && face.air === out && face.z === zero.z ? { deep: along } : { along, letter: zero.letter };
  }
  return undefined;
}

/** A thread in a hole says how far its full turns go; outside it says so too, but where it ends at a relief or a shoulder that is seen. */
function farOfThread(desk: Desk, operation: Operation, zero: Zero): Far | undefined {
  const feature = desk.feature(operation.feature);
  if (feature?.kind !== 'thread') return undefined;
  const end = feature.start === 'second' ? feature.from : feature.to;
  if (feature.side === 'outside' && isSeen(desk, feature, end)) return undefined;
  return { along: len(Math.abs(end - zero.z)), letter: zero.letter };
}

type Thread = Extract<Feature, { readonly kind: 'thread' }>;

/** Does an outside thread end where the part itself does, in a groove, or at a face that rises from it? */
function isSeen(desk: Desk, { on, start }: Thread, end: Len): boolean {
  const far = start === 'first' ? 'second' : 'first';
  const at = (face: SurfaceId | undefined): Len | undefined => {
    const one = face === undefined ? undefined : desk.surface(face);
    return one?.shape === 'face' ? one.z : undefined;
  };
  return desk.part.features.some((f) => {
    if (f.kind === 'end') return f.end === far && at(f.face) === end;
    if (f.kind === 'outside') return f.cylinder === on && at(f.shoulder[far]) === end;
    const [first, second] = f.kind === 'groove' && f.side === 'outside' ? [at(f.first), at(f.second)] : [];
    return first !== undefined && second !== undefined && first <= end && end <= second;
  });
}

/** Beside a single size, else on a line of its own. */
function withFar(sizes: readonly SizeShown[], far: Far, words: SheetWords): readonly SizeShown[] {
  const [only, ...others] = sizes;
  if ('along' in far && far.stub !== undefined) {
    return [bare(words.depth(far.along), '', words.say('size.stub', { letter: far.letter, stub: words.short(far.stub) }))];
  }
  const says = (manner: '' | 'and-'): string =>
    'deep' in far
      ? words.say(`size.${manner}deep`, { depth: words.depth(far.deep) })
      : words.say(`size.${manner}along`, { length: words.depth(far.along), letter: far.letter });
  if (!only || others.length > 0 || only.after !== '') return [...sizes, bare('', '', says(''))];
  return [{ ...only, after: says(only.limits === '' ? '' : 'and-') }];
}
