/** What the faces at the ends must come before and after. */
import { comesOutAt, type EndFeature } from '../context.ts';
import { type BeforeRule, CUSTOM, type Pair, type Work } from '../rule.ts';
import { all, ends, firstFacings, fromEnd, isDrilling, isLeaving, lastFacing, of, withVerb } from './select.ts';

/** In any set-up, the end that points out is faced before anything else is done there. */
export const faceFirst: BeforeRule = {
  id: 'face-first',
  force: 'strict',
  source: 'rule of this project after common practice; 9 of 11 published sequences face before centring',
  pairs: (work) =>
    ends(work).flatMap((end) => {
      const others = fromEnd(work, end.end).filter((o) => o.feature !== end.id);
      return all(firstFacings(work, end), others, (_a, b) => ({ op: b.id, from: end.end }));
    }),
};

/** A shoulder's length is read from a face that will not be cut again. */
export const lengthsFromFinishedFace: BeforeRule = {
  id: 'lengths-from-finished-face',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    ends(work)
      .filter((end) => !end.fitted && !end.skimmed)
      .flatMap((end) => {
        const lengths = fromEnd(work, end.end).filter(
          (o) =>
            o.feature !== end.id &&
            !isLeaving(o) &&
            (o.ways[end.end]?.cuts ?? []).some((k) => k.measures === 'length' && k.stage === 'final'),
        );
        return all(lastFacing(work, end), lengths, (_a, b) => ({ op: b.id, from: end.end }));
      }),
};

/** A cone's size is its mouth, on that face: what faces it again makes the mouth larger. */
export const faceBeforeChamfer: BeforeRule = {
  id: 'face-before-chamfer',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    ends(work)
      .filter((end) => !end.fitted && !end.skimmed)
      .flatMap((end) => {
        const on = work.c.part.features.filter((f) => f.kind === 'cone' && work.c.cone(f.cone).at === end.face);
        return all(
          lastFacing(work, end),
          on.flatMap((f) => of(work, f.id)),
        );
      }),
};

/** Facing cuts through the last turn of a thread that comes out there, and turns its burr in; only a chamfer takes that away. */
export const faceBeforeThread: BeforeRule = {
  id: 'face-before-thread',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.threads.flatMap((t) => {
      const end = comesOutAt(work.c, t);
      return end ? all(lastFacing(work, end), of(work, t.id)) : [];
    }),
};

/** The drill's mouth is bell-shaped and burred: the face that is to be a seat's edge is cut after it. */
export const seatFaceAfterDrill: BeforeRule = {
  id: 'seat-face-after-drill',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.holes
      .filter((h) => h.edge !== undefined)
      .flatMap((hole) => {
        const end = ends(work).find((e) => e.face === hole.edge);
        if (!end) return [];
        return all(of(work, hole.id).filter(isDrilling), lastFacing(work, end), (a) => ({ op: a.id, from: end.end }));
      }),
};

/** The face whose place is measured on the other parts is cut when everything else at that end is done. */
export const fittedLast: BeforeRule = {
  id: 'fitted-last',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    ends(work)
      .filter((end) => end.fitted)
      .flatMap((end) => afterAllElse(work, end)),
};

/** A mandrel's face is skimmed when its thread is cut, so that nothing that follows can mark it or draw it out of true. */
export const skimmedLast: BeforeRule = {
  id: 'skimmed-last',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    ends(work)
      .filter((end) => end.skimmed)
      .flatMap((end) => afterAllElse(work, end)),
};

function afterAllElse(work: Work, end: EndFeature): readonly Pair[] {
  const others = fromEnd(work, end.end).filter((o) => o.feature !== end.id && !isLeaving(o));
  return all(others, lastFacing(work, end));
}

/** What can be reached in the bar is done in the bar. */
export const everythingBeforeParting: BeforeRule = {
  id: 'everything-before-parting',
  force: 'preferred',
  source: 'common practice; 13 of 13 published sequences turn the outside before parting off',
  pairs: (work) =>
    withVerb(work, 'part-off').flatMap((part) => {
      const out = part.ways.first ? 'first' : 'second';
      return all(
        fromEnd(work, out).filter((o) => !isLeaving(o)),
        [part],
      );
    }),
};

/** What cannot be reached while the bar is in the chuck waits until the part is off it. */
export const offTheBarFirst: BeforeRule = {
  id: 'off-the-bar-first',
  force: 'strict',
  source: 'follows from how the work is held',
  pairs: (work) =>
    withVerb(work, 'part-off', 'saw-off').flatMap((part) => {
      const out = part.ways.first ? 'first' : 'second';
      const with_ = work.methods.find((m) => m.operations.includes(part))?.operations ?? [];
      return all(
        [part],
        work.operations.filter((o) => !isLeaving(o) && !with_.includes(o) && o.ways[out] === undefined),
      );
    }),
};
