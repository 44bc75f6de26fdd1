/**
 * Between centres: both ends faced and centred, the work driven by a dog, and turned end for end without a change of axis. Offered where
 * slender work or the truth of one end to the other asks for it. The second end is faced and centred on the raw blank, through the spindle.
 */
import { add, type Len, len, minus } from '../../base/units.ts';
import type { End } from '../../model/ids.ts';
import { other } from '../../model/ids.ts';
import type { Grip, Operation, Refusal } from '../../model/plan.ts';
import { type Context, depthFrom, diameterOf, ENDS, type EndFeature, type Hole, length, type Outside, scaled } from '../context.ts';
import { CUSTOM, type GripRule, type Work } from '../rule.ts';
import { hiddenBehind, makes, outsideStretch, sorted } from './stretch.ts';
import { twoEnded } from './truth.ts';

export const betweenCentres: GripRule = {
  id: 'between-centres',
  source: CUSTOM,
  offer: (work) => sorted(isAskedFor(work) ? offers(work) : []),
};

function isAskedFor({ c, operations }: Work): boolean {
  if (c.part.staysInChuck || c.part.stock.from !== 'bar' || c.part.use !== 'fitting') return false;
  return c.part.length > scaled(thinnest(c), 'grip.stick-out.most') || twoEnded(c, operations).length > 0;
}

const thinnest = (c: Context): Len => len(Math.min(...c.outsides.map((o) => diameterOf(c, o))));

function offers(work: Work): readonly (Grip | Refusal)[] {
  const { c } = work;
  const what = `${c.part.id}/between-centres`;
  const centred = ENDS.filter((end) => centreIn(c, end));
  // an end that is centred for a hold of its own
  if (centred.length < ENDS.length)
    return [{ what, because: { rule: 'no-two-centres', grounds: {} } }, ...centred.flatMap((out) => blank(work, out))];
  const wants = add(c.part.length, length('centres.room'));
  const has = c.workshop.lathe.betweenCentres;
  if (has < wants) return [{ what, because: { rule: 'centres-too-near', grounds: {} }, has, wants }];
  const most = scaled(thinnest(c), 'centre.ratio');
  if (c.part.length > most) return [{ what, because: { rule: 'centres-slender', grounds: {} }, has: c.part.length, most }];
  return ENDS.flatMap((out) => [...blank(work, out), ...driven(work, out)]);
}

const centreIn = (c: Context, end: End): Hole | undefined => c.holes.find((h) => h.centre && h.opens.includes(end));

// ---- the raw blank -------------------------------------------------------------------------------------------------------
/** Its end a little out of the jaws, the rest in the spindle: faced, and centred. Nothing that is held has been turned. */
function blank(work: Work, out: End): readonly (Grip | Refusal)[] {
  const { c } = work;
  const far = c.end(other(out));
  const across = c.part.stock.from === 'bar' ? c.part.stock.across : len(0);
  const [from, to] = stretch(c, out, length('blank.front'), add(length('blank.front'), scaled(across, 'grip.bar.ratio')));
  if (!far) return [];
  const id = `${c.part.id}/blank.${out}`;
  const bore = c.workshop.lathe.spindleBore;
  if (bore < across) return [{ what: id, because: { rule: 'blank-too-thick', grounds: {} }, has: bore, wants: across }];
  const ours = [c.end(out)?.id, centreIn(c, out)?.id];
  const grip: Grip = {
    ...{ id, kind: 'blank', out, on: [], datum: far.face, from, to, diameter: across, lightOnly: true, runout: length('runout.three-jaw') },
    ready: work.operations.filter((k) => makes(k, far.face)).map((k) => k.id),
    gone: turnedIn(work, from, to).map((k) => k.id),
    hides: work.operations.filter((k) => !ours.includes(k.feature)).map((k) => k.id),
    because: [{ rule: 'blank', grounds: {} }],
  };
  return [grip];
}

/** Depths from that end as places. */
function stretch(c: Context, end: End, near: Len, far: Len): readonly [from: Len, to: Len] {
  return end === 'first' ? [near, far] : [minus(c.part.length, far), minus(c.part.length, near)];
}

const turnedIn = (work: Work, from: Len, to: Len): readonly Operation[] =>
  work.operations.filter((k) => {
    const s = outsideStretch(work, k);
    return s !== undefined && s.from < to && s.to > from;
  });

// ---- between the centres ---------------------------------------------------------------------------------------------------
/** The dog on the blank as it is, or on what was turned last time, copper under its screw. */
function driven(work: Work, out: End): readonly (Grip | Refusal)[] {
  const { c } = work;
  const at = other(out);
  const section = at === 'first' ? c.outsides[0] : c.outsides.at(-1);
  const own = c.end(out);
  if (!section || !own) return [];
  const [from, to] = stretch(c, at, len(0), length('dog.length'));
  const shared = sharedBy(work, own, out, from, to);
  const raw: Grip = {
    ...{ ...shared, id: `${c.part.id}/between-centres.${out}.raw`, on: [] },
    diameter: c.part.stock.from === 'bar' ? c.part.stock.across : len(0),
    gone: turnedIn(work, from, to).map((k) => k.id),
  };
  const finished: Grip = {
    ...{ ...shared, id: `${c.part.id}/between-centres.${out}.finished`, on: [section.cylinder], diameter: diameterOf(c, section) },
    ready: [...shared.ready, ...work.operations.filter((k) => k.feature === section.id).map((k) => k.id)],
  };
  return [raw, dogRefused(c, section, finished) ?? finished];
}

function sharedBy(work: Work, own: EndFeature, out: End, from: Len, to: Len): Grip {
  const { c } = work;
  const atEnds = ENDS.flatMap((end) => [c.end(end)?.id, centreIn(c, end)?.id]);
  const front = other(out) === 'first' ? add(to, length('jaw.clearance')) : minus(from, length('jaw.clearance'));
  const inside = work.operations.filter((k) => c.part.surfaces.some((s) => s.feature === k.feature && s.side === 'inside'));
  const ends = work.operations.filter((k) => atEnds.includes(k.feature));
  return {
    ...{ id: '', kind: 'between-centres', out, on: [], datum: own.face, from, to, diameter: len(0), gone: [], lightOnly: false },
    ready: ends.map((k) => k.id),
    hides: [...hiddenBehind(work, out, front), ...inside.map((k) => k.id), ...ends.map((k) => k.id)],
    runout: length('runout.between-centres'),
    because: [{ rule: 'between-centres', grounds: {} }],
  };
}

function dogRefused(c: Context, section: Outside, grip: Grip): Refusal | undefined {
  const cylinder = c.cylinder(section.cylinder);
  if (c.threads.some((t) => t.on === section.cylinder)) return { what: grip.id, because: { rule: 'finished-thread', grounds: {} } };
  if (KEPT.includes(section.role)) return { what: grip.id, because: { rule: 'kept-surface', grounds: {} } };
  const has = len(Math.min(minus(cylinder.to, cylinder.from), depthFrom('first', minus(grip.to, grip.from), c.part)));
  const wants = length('dog.least');
  return has < wants ? { what: grip.id, because: { rule: 'dog-short', grounds: {} }, has, wants } : undefined;
}
const KEPT: readonly string[] = ['seat', 'sealing'];
