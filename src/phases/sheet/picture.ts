/** What the picture of a set-up shows: hold, datum, the lengths made here, a balloon for each operation. Drawing decides where. */
import { type Len, len } from '../../base/units.ts';
import { pointedAt } from '../../drawing/sides.ts';
import type { Balloon, Hold, LengthShown, StageView } from '../../drawing/stage.ts';
import { toolingId } from '../../fittings/tooling/make.ts';
import type { Advances } from '../../model/display.ts';
import type { OpId, SurfaceId } from '../../model/ids.ts';
import type { SideFeature } from '../../model/part.ts';
import type { SetUp, Working } from '../../model/plan.ts';
import type { GripPage } from '../../model/sheet.ts';
import type { Point, SideShown, Stage } from '../../model/stage.ts';
import { isOffLathe } from '../../model/work.ts';
import { datumFace } from './grip.ts';
import { type Desk, wayOf } from './lookup.ts';
import type { SheetWords } from './said.ts';
import { sideOf, sidesShown } from './sides-shown.ts';
import { endFace, namesEnd } from './sizes.ts';
import { toolOf, weightiestTool } from './tool-shown.ts';

/** `made`: tooling of this plan as it stands when it is made, by its part's id. */
export type PictureMeans = { readonly words: SheetWords; readonly advances: Advances; readonly made: (part: string) => Made | undefined };
export type Made = { readonly desk: Desk; readonly setUp: SetUp; readonly stage: Stage };

/** All but the frame, which the layout gives when it knows what is left of the page. */
export function stageView(desk: Desk, page: GripPage, stage: Stage, means: PictureMeans): Omit<StageView, 'frame'> {
  const { words, advances } = means;
  const setUp = desk.setUp(page.setUp);
  const hold = holdOf(desk, setUp, stage, means);
  const lengths = [...lengthsOf(desk, setUp, stage, page, words), ...drilledAt(desk, setUp, stage, words)];
  const used = weightiestTool(desk, setUp, page);
  const told = words.say('picture.tool.alt', { number: (used.tool ?? used.toolIfFree)?.number ?? '' });
  const after = page.blocks.slice(1).flatMap((block) => block.rows.map((row) => row.op));
  return {
    stage: underDrill(setUp, { ...stage, sides: sidesDone(desk, page.setUp, after) }),
    hold,
    lengths,
    diameters: radiiOf(desk, setUp, stage, words),
    balloons: [...balloonsOf(desk, setUp), ...benchBalloons(desk, after)],
    ...used,
    origins: originsOf(desk, setUp, stage, hold),
    words: {
      alt: inWords(page, words, {
        lengths,
        letter: hold.datum?.letter ?? '',
        numbers: [...setUp.operations, ...after].map(desk.number),
        tool: used.tool ? told : '',
      }),
      ...(used.toolIfFree ? { tool: told } : {}),
      headstock: isOffLathe(setUp.grip) ? '' : words.say('picture.headstock'),
      scale: (scale) => words.say('picture.scale', { scale }),
      legend: { made: words.say('picture.made'), taken: words.say('picture.taken') },
    },
    advances,
    letters: lettersOf(desk),
  };
}

type Pictured = {
  readonly lengths: readonly LengthShown[];
  readonly letter: string;
  readonly numbers: readonly string[];
  readonly tool: string;
};
/** What the picture shows, for someone who does not see it. */
function inWords(page: GripPage, words: SheetWords, { lengths, letter, numbers, tool }: Pictured): string {
  return words.say('picture.alt', {
    part: page.name,
    grip: page.grip,
    hold: page.hold.map(({ label, title }) => `${label} ${title}`).join('; '),
    lengths: lengths.map((length) => length.text.join(' ')).join(', '),
    count: lengths.length,
    letter,
    operations: numbers.join(', '),
    marks: numbers.length,
    tool,
  });
}

/** The same for one operation alone: the picture of a lesson. `stage` shows as new what it made. */
export function operationView(
  desk: Desk,
  setUp: SetUp,
  op: string,
  stage: Stage,
  page: GripPage,
  means: PictureMeans,
): Omit<StageView, 'frame'> {
  const alone = { ...setUp, operations: [op] };
  const tool = toolOf(desk, setUp, op);
  const { words, advances } = means;
  const hold = holdOf(desk, setUp, stage, means);
  return {
    stage: underDrill(setUp, stage),
    hold,
    lengths: lengthsOf(desk, alone, stage, page, words),
    diameters: radiiOf(desk, alone, stage, words),
    balloons: balloonsOf(desk, alone),
    ...(tool ? { tool } : {}),
    origins: originsOf(desk, alone, stage, hold),
    words: {
      alt: words.say('lesson.alt', { part: page.name, number: desk.number(op), tool: tool ? 'shown' : '' }),
      headstock: isOffLathe(setUp.grip) ? '' : words.say('picture.headstock'),
    },
    advances,
    letters: lettersOf(desk),
  };
}

const lettersOf = ({ part, letter }: Desk): readonly string[] => part.surfaces.flatMap((s) => (s.shape === 'face' ? [letter(s.id)] : []));

/** What is being drilled in the vee is seen from the side, under its drill: it has no circle besides. */
const underDrill = ({ grip }: SetUp, stage: Stage): Stage =>
  grip.kind === 'vee-block' && stage.sides ? { ...stage, sides: stage.sides.filter(({ made }) => made !== 'here') } : stage;

/** Flats, holes, branches that this set-up or one before it made, and bench work told on the same page. */
function sidesDone(desk: Desk, place: number, after: readonly OpId[]): readonly SideShown[] {
  const { setUps } = desk.planned.route;
  const doneIn = (last: number): ReadonlySet<string> =>
    new Set(setUps.slice(0, last).flatMap((s) => s.operations.map((op) => desk.operation(op).feature)));
  const [before, now] = [doneIn(place), new Set([...doneIn(place + 1), ...after.map((op) => desk.operation(op).feature)])];
  return sidesShown(desk, (id) => (before.has(id) ? 'before' : now.has(id) ? 'here' : undefined));
}

/** As it is drawn; `stage` shows where its datum stands. */
export function holdOf(desk: Desk, setUp: SetUp, stage: Stage, means: PictureMeans): Hold {
  const { kind, from, to, diameter, centre, tooling, plug } = setUp.grip;
  const face = datumFace(desk, setUp);
  const z = face === undefined ? undefined : datumPlace(desk, setUp, stage, face);
  const filled = plug && plugOf(plug, means.made(toolingId(plug.tooling)));
  const drills = kind === 'vee-block' ? drilled(desk, setUp).map(({ at, size }) => ({ z: at, size: size?.target ?? len(0) })) : [];
  const hold = {
    ...{ kind, from, to, diameter },
    ...(centre === undefined ? {} : { centre: true as const }),
    ...(filled ? { plug: filled } : {}),
    ...(drills.length > 0 ? { drills } : {}),
  };
  if (face === undefined || z === undefined) return hold;
  const made = tooling ? means.made(toolingId(tooling)) : undefined;
  const real = made ? toolingOf(made, stage, z) : undefined;
  return { ...hold, datum: { z, letter: desk.letter(face) }, ...(real ? { tooling: real } : {}) };
}

/** What is drilled from the side in this set-up. */
const drilled = (desk: Desk, setUp: SetUp): readonly SideFeature[] =>
  setUp.operations.flatMap((op) => {
    const feature = desk.operation(op).lies ? desk.feature(desk.operation(op).feature) : undefined;
    return feature?.kind === 'side' ? [feature] : [];
  });

/** Where its middle lies from the face that is there to measure from, as that stands. */
function drilledAt(desk: Desk, setUp: SetUp, stage: Stage, words: SheetWords): readonly LengthShown[] {
  const face = setUp.grip.kind === 'vee-block' ? datumFace(desk, setUp) : undefined;
  const from = face === undefined ? undefined : placeOf(desk, stage, face);
  if (from === undefined) return [];
  return drilled(desk, setUp).map(({ id, at }) => ({ id, from, to: at, text: [words.nominal(len(Math.abs(at - from)))], letter: '' }));
}

/** A plug where it stands in the work, with the hole through it as it was made. */
function plugOf({ from, to }: NonNullable<SetUp['grip']['plug']>, made: Made | undefined): Hold['plug'] {
  const size = (side: 'outside' | 'inside'): Len =>
    made?.desk.part.surfaces.flatMap((s) => (s.shape === 'cylinder' && s.side === side ? [s.size.target] : []))[0] ?? len(0);
  return made && { from, to, diameter: size('outside'), vent: size('inside') };
}

/** The mandrel in the work's own z: its register against the datum, its headstock end toward the work's. */
function toolingOf({ desk, setUp, stage }: Made, work: Stage, datum: number): NonNullable<Hold['tooling']> | undefined {
  const register = desk.part.surfaces.find((s) => s.shape === 'face' && s.role === 'register');
  const outline = stage.outlines[0];
  const at = register && placeOf(desk, stage, register.id);
  if (at === undefined || !outline) return undefined;
  const way = work.out === stage.out ? 1 : -1;
  const moved = (z: number): Len => len(Math.round(datum + way * (z - at)));
  const across = (p: Point): Point => ({ z: moved(p.z), d: p.d });
  const { from, to, diameter } = setUp.grip;
  return {
    outline: outline.flatMap((edge) => [across(edge.a), across(edge.b)]),
    threads: stage.threads.map((band) => band.polygon.map(across)),
    held: { from: moved(from), to: moved(to), diameter },
  };
}

function lengthsOf(desk: Desk, setUp: SetUp, stage: Stage, page: GripPage, words: SheetWords): readonly LengthShown[] {
  return countedIn(desk, setUp, stage).map(({ working, from, to }) => ({
    id: working.id,
    from,
    to,
    text: [words.target(working.limits), words.limits(working.limits)],
    letter: letterIn(page, working),
  }));
}

type Counted = { readonly working: Working; readonly face: SurfaceId; readonly from: Len; readonly to: Len };

/** Each face's last length of the set-up, from where its origin stood: what is cut again after it served lay further out. */
function countedIn(desk: Desk, setUp: SetUp, stage: Stage): readonly Counted[] {
  const workings = setUp.operations.flatMap((op) => desk.workings(op)).filter((w) => w.measures === 'length');
  const last = workings.filter((w, i) => !workings.slice(i + 1).some((later) => later.makes === w.makes));
  return last.flatMap((working) => {
    const { from: face, makes, toward, limits } = working;
    const to = placeOf(desk, stage, makes);
    if (face === 'axis' || face === 'bar end' || to === undefined) return [];
    const later = workings.slice(workings.indexOf(working) + 1).some((one) => one.makes === face);
    const from = later ? len(to - toward * limits.target) : placeOf(desk, stage, face);
    return from === undefined ? [] : [{ working, face, from, to }];
  });
}

/** Where the lengths that count from it count from; as it stands at last where any does. */
function datumPlace(desk: Desk, setUp: SetUp, stage: Stage, face: SurfaceId): Len | undefined {
  const at = placeOf(desk, stage, face);
  const from = countedIn(desk, setUp, stage).flatMap((one) => (one.face === face ? [one.from] : []));
  return setUp.grip.datum === undefined && from[0] !== undefined && !from.some((z) => z === at) ? from[0] : at;
}

/** Faces besides the datum that rows count from: their lengths', those that the carriage counts to by what was measured, the end in use. */
function originsOf(desk: Desk, setUp: SetUp, stage: Stage, { datum }: Hold): NonNullable<StageView['origins']> {
  const counted = countedIn(desk, setUp, stage).map(({ face, from }) => ({ letter: desk.letter(face), z: from }));
  const by = setUp.operations.flatMap((op) => desk.figures(op)?.alongBy ?? []).flatMap(({ from, end }) => [from, end]);
  const reckoned = by.flatMap((face) => {
    const z = placeOf(desk, stage, face);
    return z === undefined ? [] : [{ letter: desk.letter(face), z }];
  });
  const end = setUp.operations.some((op) => namesEnd(desk, setUp, desk.operation(op))) ? endFace(desk, setUp.grip.out)?.id : undefined;
  const z = end === undefined ? undefined : placeOf(desk, stage, end);
  const zero = end === undefined || z === undefined ? [] : [{ letter: desk.letter(end), z }];
  const all = [...counted, ...reckoned, ...zero].filter(({ letter }) => letter !== datum?.letter);
  return all.filter((one, i) => all.findIndex(({ letter }) => letter === one.letter) === i);
}

/** Rounded edges and fillets made here, by the middle of their curve: 'R 2.00' (ISO 129-1). */
function radiiOf(desk: Desk, setUp: SetUp, stage: Stage, words: SheetWords): StageView['diameters'] {
  return setUp.operations.flatMap((op) => {
    const [working] = desk.workings(op);
    const arc = working && desk.surface(working.makes);
    const chords = stage.outlines.flat().filter((edge) => edge.surface === arc?.id);
    const middle = chords[Math.floor(chords.length / 2)];
    if (!working || arc?.shape !== 'arc' || !middle) return [];
    const text = [words.say('size.radius', { size: words.size(len(working.limits.target / 2)) })];
    const at = { z: len(Math.round(middle.a.z)), d: len(Math.round(middle.a.d)) };
    return [{ id: working.id, as: 'radius', side: arc.side, text, ...at } as const];
  });
}

function letterIn(page: GripPage, working: Working): string {
  const rows = page.blocks.flatMap((block) => block.rows);
  return rows.flatMap((row) => row.sizes).find((s) => s.dim === working.id)?.letter ?? '';
}

/** Where a face stands in this picture: as cut, which may be short of the drawing while something is left on it. */
function placeOf(desk: Desk, stage: Stage, face: SurfaceId): LengthShown['from'] | undefined {
  const edge = stage.outlines.flat().find((e) => e.surface === face && e.a.z === e.b.z);
  const surface = desk.surface(face);
  return (edge?.a.z as LengthShown['from'] | undefined) ?? (surface.shape === 'face' ? surface.z : undefined);
}

function balloonsOf(desk: Desk, setUp: SetUp): readonly Balloon[] {
  return setUp.operations.map((op) => {
    const operation = desk.operation(op);
    const made = wayOf(operation, setUp)?.cuts[0]?.makes;
    const mouth = mouthOf(desk, setUp, op);
    if (mouth) return { text: desk.number(op), surface: '', at: mouth, half: 'above' };
    const side = sideOf(desk, operation.feature, 'here');
    // knurling is all round: its surface is pointed at
    if (side && side.does !== 'knurl') return { text: desk.number(op), surface: '', ...pointedAt(side) };
    return { text: desk.number(op), surface: made ?? surfaceOf(desk, operation.feature), by: op };
  });
}

/** Bench work told under the grip's: where it is seen on the work as it stands there. */
function benchBalloons(desk: Desk, after: readonly OpId[]): readonly Balloon[] {
  return after.flatMap((op) => {
    const side = sideOf(desk, desk.operation(op).feature, 'here');
    return side ? [{ text: desk.number(op), surface: '', ...pointedAt(side) }] : [];
  });
}

/** The edge of what is drilled from the side, where the drill goes in. */
function mouthOf(desk: Desk, setUp: SetUp, op: string): Point | undefined {
  const [feature] = drilled(desk, { ...setUp, operations: [op] });
  return feature && { z: len(feature.at - (feature.size?.target ?? 0) / 2), d: setUp.grip.diameter };
}

function surfaceOf(desk: Desk, feature: string): SurfaceId {
  const f = desk.feature(feature);
  if (!f) return '';
  if (f.kind === 'end') return f.face;
  if (f.kind === 'outside' || f.kind === 'hole') return f.cylinder;
  if (f.kind === 'groove') return f.floor;
  if (f.kind === 'arc') return f.arc;
  return f.kind === 'cone' ? f.cone : f.on;
}
