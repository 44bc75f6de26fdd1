/** Holes, cones in their mouths, and the seat that comes last. */
import type { Hole } from '../context.ts';
import { goesAhead, wideAhead } from '../methods/drilling.ts';
import { holeOf } from '../methods/recess.ts';
import { wideBehind } from '../methods/seat.ts';
import { type BeforeRule, CUSTOM, type Work } from '../rule.ts';
import { all, ends, finishOf, isBench, isDrilling, isLeaving, lastFacing, of } from './select.ts';

/** A smaller hole is the way in for the tool that opens a larger one over it. */
export const smallBeforeLarge: BeforeRule = {
  id: 'small-hole-first',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.holes.flatMap((large) =>
      work.c.holes
        .filter((small) => goesOn(work, large, small) && !goesAhead(work.c, large, small))
        .flatMap((small) =>
          all(
            of(work, small.id).filter(isDrilling),
            of(work, large.id).filter((o) => o.verb !== 'stone'),
          ),
        ),
    ),
};

function goesOn(work: Work, large: Hole, small: Hole): boolean {
  const a = work.c.cylinder(large.cylinder);
  const b = work.c.cylinder(small.cylinder);
  return a.size.target > b.size.target && (a.to === b.from || a.from === b.to);
}

/** Where the larger drill's point is the step, and the smaller hole is deep: the point centres the smaller drill, which has less far to go. */
export const largeBeforeDeep: BeforeRule = {
  id: 'large-hole-first',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.holes.flatMap((small) => {
      const ahead = wideAhead(work.c, small);
      return ahead ? all(of(work, ahead.wide.id).filter(isDrilling), of(work, small.id)) : [];
    }),
};

export const holeBeforeThread: BeforeRule = {
  id: 'hole-before-thread',
  force: 'strict',
  source: 'common practice; drill or bore before tap in 15 of 15 published sequences',
  pairs: (work) => work.c.threads.filter((t) => t.side === 'inside').flatMap((t) => all(finishOfCylinder(work, t.on), of(work, t.id))),
};

export const holeBeforeChamfer: BeforeRule = {
  id: 'hole-before-chamfer',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.part.features.flatMap((f) =>
      f.kind === 'cone' && f.does === 'chamfer' && work.c.cone(f.cone).side === 'inside'
        ? all(finishOfCylinder(work, work.c.cone(f.cone).until), of(work, f.id))
        : [],
    ),
};

function finishOfCylinder(work: Work, cylinder: string) {
  const hole = work.c.holes.find((h) => h.cylinder === cylinder);
  return hole ? finishOf(work, hole) : [];
}

/** A groove in a bore starts from a wall that is finished: its depth and its mouth are read from that. */
export const boreBeforeRecess: BeforeRule = {
  id: 'bore-before-recess',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.part.features.flatMap((f) => {
      const hole = f.kind === 'groove' && f.side === 'inside' ? holeOf(work.c, f) : undefined;
      return hole ? all(finishOf(work, hole), of(work, f.id)) : [];
    }),
};

/** A drill's lip catches a cone, and a depth has no face to start from. */
export const drillBeforeCone: BeforeRule = {
  id: 'drill-before-cone',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    work.c.part.features.flatMap((f) => {
      if (f.kind !== 'cone' || f.does !== 'cone' || work.c.cone(f.cone).side !== 'inside') return [];
      const into = work.c.holes.filter((h) => h.cylinder === work.c.cone(f.cone).until);
      return into.flatMap((h) =>
        all(
          of(work, h.id).filter((o) => isDrilling(o) || o.verb === 'bore-start'),
          of(work, f.id),
        ),
      );
    }),
};

/** Whatever else makes chips, burr or heat in the bore of a seat is done before the seat's last cut. */
export const seatLastInBore: BeforeRule = {
  id: 'seat-last-in-bore',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    seats(work).flatMap((seat) => {
      const cones = work.c.part.features
        .filter((f) => f.kind === 'cone' && work.c.cone(f.cone).until === seat.cylinder)
        .flatMap((f) => of(work, f.id));
      const inBore = of(work, seat.id).filter((o) => o.verb !== 'stone' && !finishOf(work, seat).includes(o));
      return all([...cones, ...inBore], finishOf(work, seat));
    }),
};

/** The bore that the D-bit has cut steers it: what is wide behind the land is opened when the D-bit has gone through. */
export const dBitBeforeInlet: BeforeRule = {
  id: 'd-bit-before-inlet',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    seats(work).flatMap((seat) => {
      const wide = wideBehind(work.c, seat);
      if (!wide) return [];
      const cones = work.c.part.features.filter((f) => f.kind === 'cone' && work.c.cone(f.cone).until === wide.cylinder);
      const opening = [...of(work, wide.id), ...cones.flatMap((f) => of(work, f.id))];
      return all(of(work, seat.id, 'd-bit'), opening);
    }),
};

/** And better still, everything else on the part. */
export const seatLastOfAll: BeforeRule = {
  id: 'seat-last-of-all',
  force: 'preferred',
  source: CUSTOM,
  pairs: (work) =>
    seats(work).flatMap((seat) => {
      const others = work.operations.filter((o) => o.feature !== seat.id && !isLeaving(o) && !isBench(o));
      return all(others, finishOf(work, seat));
    }),
};

/** The edge is made where a finished face meets the bore: face it first, then come through. */
export const seatFaceBeforeSeat: BeforeRule = {
  id: 'seat-face-before-seat',
  force: 'preferred',
  source: CUSTOM,
  pairs: (work) =>
    seats(work).flatMap((seat) => {
      const end = ends(work).find((e) => e.face === seat.edge);
      return end ? all(lastFacing(work, end), finishOf(work, seat)) : [];
    }),
};

/** The burr is stoned when no tool goes through any more. */
export const stoneAfterFinish: BeforeRule = {
  id: 'stone-after-finish',
  force: 'strict',
  source: CUSTOM,
  pairs: (work) =>
    seats(work).flatMap((seat) =>
      all(
        work.operations.filter((o) => o.verb !== 'stone'),
        of(work, seat.id, 'stone'),
      ),
    ),
};

const seats = (work: Work): readonly Hole[] => work.c.holes.filter((h) => h.role === 'seat');
