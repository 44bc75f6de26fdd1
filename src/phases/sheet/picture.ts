/** What the picture of a set-up shows: hold, datum, the lengths made here, a balloon for each operation. Drawing decides where. */
import type { Words } from '../../base/words.ts';
import { limits, size } from '../../drawing/sheet/format.ts';
import { sideShown } from '../../drawing/sides.ts';
import type { Balloon, Hold, LengthShown, StageView } from '../../drawing/stage.ts';
import type { Advances } from '../../model/display.ts';
import type { SurfaceId } from '../../model/ids.ts';
import type { SetUp, Working } from '../../model/plan.ts';
import type { GripPage } from '../../model/sheet.ts';
import type { SideShown, Stage } from '../../model/stage.ts';
import { datumFace } from './grip.ts';
import { type Desk, wayOf } from './lookup.ts';

/** All but the frame, which the layout gives when it knows what is left of the page. */
export function stageView(desk: Desk, page: GripPage, stage: Stage, words: Words, advances: Advances): Omit<StageView, 'frame'> {
  const setUp = desk.setUp(page.setUp);
  return {
    stage: { ...stage, sides: sidesDone(desk, page.setUp) },
    hold: holdOf(desk, setUp, stage),
    lengths: lengthsOf(desk, setUp, stage, page),
    diameters: [],
    balloons: balloonsOf(desk, setUp),
    words: {
      alt: words.say('picture.alt', { part: page.name, grip: page.grip }),
      headstock: words.say('picture.headstock'),
      scale: (scale) => words.say('picture.scale', { scale }),
      legend: { made: words.say('picture.made'), taken: words.say('picture.taken') },
    },
    advances,
  };
}

/** Flats, holes, branches that this set-up or one before it made. */
function sidesDone(desk: Desk, place: number): readonly SideShown[] {
  const { setUps } = desk.planned.route;
  const doneIn = (last: number): ReadonlySet<string> =>
    new Set(setUps.slice(0, last).flatMap((s) => s.operations.map((op) => desk.operation(op).feature)));
  const [before, now] = [doneIn(place), doneIn(place + 1)];
  return desk.part.features.flatMap((f) => {
    if (f.kind !== 'side' || !now.has(f.id)) return [];
    const on = desk.surface(f.on);
    const side = on.shape === 'cylinder' ? sideShown(f, on.size.target, before.has(f.id) ? 'before' : 'here') : undefined;
    return side ? [side] : [];
  });
}

function holdOf(desk: Desk, setUp: SetUp, stage: Stage): Hold {
  const { kind, from, to, diameter } = setUp.grip;
  const face = datumFace(desk, setUp);
  const z = face === undefined ? undefined : placeOf(desk, stage, face);
  const hold = { kind, from, to, diameter };
  return face === undefined || z === undefined ? hold : { ...hold, datum: { z, letter: desk.letter(face) } };
}

function lengthsOf(desk: Desk, setUp: SetUp, stage: Stage, page: GripPage): readonly LengthShown[] {
  const workings = setUp.operations.flatMap((op) => desk.workings(op)).filter((w) => w.measures === 'length');
  const last = workings.filter((w, i) => !workings.slice(i + 1).some((later) => later.makes === w.makes));
  return last.flatMap((working) => {
    const from = working.from === 'axis' || working.from === 'bar end' ? undefined : placeOf(desk, stage, working.from);
    const to = placeOf(desk, stage, working.makes);
    if (from === undefined || to === undefined) return [];
    return [{ id: working.id, from, to, text: [size(working.limits.target), limits(working.limits)], letter: letterIn(page, working) }];
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
    return { text: desk.number(op), surface: made ?? surfaceOf(desk, operation.feature), by: op };
  });
}

function surfaceOf(desk: Desk, feature: string): SurfaceId {
  const f = desk.feature(feature);
  if (!f) return '';
  if (f.kind === 'end') return f.face;
  if (f.kind === 'outside' || f.kind === 'hole') return f.cylinder;
  if (f.kind === 'groove') return f.floor;
  return f.kind === 'cone' ? f.cone : f.on;
}
