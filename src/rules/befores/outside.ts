/** Outside sections and threads. */
import type { Feature } from '../../model/part.ts';
import type { Operation } from '../../model/plan.ts';
import { stretchesOf } from '../context.ts';
import { type BeforeRule, CUSTOM } from '../rule.ts';
import { all, of } from './select.ts';

const threads = (work: Parameters<BeforeRule['pairs']>[0], side: 'outside' | 'inside') => work.c.threads.filter((t) => t.side === side);

export const turnBeforeRelief: BeforeRule = {
  id: 'turn-before-relief',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.part.features.flatMap((f) =>
      f.kind === 'groove' && f.side === 'outside' ? all(f.serves ? of(work, f.serves, 'turn') : turnsBeside(work, f), of(work, f.id)) : [],
    ),
};

/** The sections whose ends are this groove's walls. */
function turnsBeside(work: Parameters<BeforeRule['pairs']>[0], f: Extract<Feature, { kind: 'groove' }>): readonly Operation[] {
  const walls = [work.c.face(f.first).z, work.c.face(f.second).z];
  return work.c.outsides
    .filter((o) => stretchesOf(work.c.cylinder(o.cylinder)).some((one) => walls.includes(one.to) || walls.includes(one.from)))
    .flatMap((o) => of(work, o.id, 'turn'));
}

export const turnBeforeChamfer: BeforeRule = {
  id: 'turn-before-chamfer',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.part.features.flatMap((f) => {
      if (f.kind !== 'cone' || work.c.cone(f.cone).side !== 'outside') return [];
      return all(of(work, work.c.cone(f.cone).until, 'turn'), of(work, f.id));
    }),
};

/** The chamfer's mouth lies on a shoulder: that shoulder is there first. */
export const shoulderBeforeChamfer: BeforeRule = {
  id: 'shoulder-before-chamfer',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.part.features.flatMap((f) => {
      if (f.kind !== 'cone') return [];
      const makes = work.operations.filter(
        (o) =>
          o.feature !== f.id &&
          Object.values(o.ways).some((w) => w.cuts.some((k) => k.makes === work.c.cone(f.cone).at && k.stage === 'final')) &&
          (o.verb === 'turn' || o.verb === 'groove'),
      );
      return all(makes, of(work, f.id));
    }),
};

export const turnBeforeThread: BeforeRule = {
  id: 'turn-before-thread',
  force: 'strict',
  source: 'common practice; 10 of 10 published sequences',
  pairs: (work) => threads(work, 'outside').flatMap((t) => all(of(work, t.on, 'turn'), of(work, t.id))),
};

export const reliefBeforeThread: BeforeRule = {
  id: 'relief-before-thread',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.part.features.flatMap((f) => (f.kind === 'groove' && f.serves ? all(of(work, f.id), of(work, `${f.serves}.thread`)) : [])),
};

/** It crosses the thread: cut afterwards it would drag a burr into the turns on either side. */
export const grooveBeforeThread: BeforeRule = {
  id: 'groove-before-thread',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    threads(work, 'outside').flatMap((t) =>
      work.c.part.features.flatMap((f) => {
        if (f.kind !== 'groove' || f.side !== 'outside' || f.serves) return [];
        const { from, to } = work.c.cylinder(f.floor);
        return from > t.from && to < t.to ? all(of(work, f.id), of(work, t.id)) : [];
      }),
    ),
};

export const startBeforeThread: BeforeRule = {
  id: 'thread-start-before-thread',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.part.features.flatMap((f) => (f.kind === 'cone' && f.serves ? all(of(work, f.id), of(work, `${f.serves}.thread`)) : [])),
};

/** A plain nose before a thread: the tool starts in air and the start is cut on a shoulder that stands. */
export const noseBeforeThread: BeforeRule = {
  id: 'nose-before-thread',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    threads(work, 'outside').flatMap((t) => {
      const on = work.c.outsides.findIndex((o) => o.cylinder === t.on);
      const nose = work.c.outsides[t.start === 'first' ? on - 1 : on + 1];
      return nose ? all(of(work, nose.id, 'turn'), of(work, t.id)) : [];
    }),
};
