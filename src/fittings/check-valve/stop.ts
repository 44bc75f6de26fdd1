/**
 * The lift stop of the straight pattern. The outlet goes up through the cap, so the stem that stops the ball is hollow: with a solid nose, that
 * a ball may lie against without covering anything, and holes right across behind it, by which the water gets into the bore.
 */
import { add, type Len, len, mm, toMm } from '../../base/units.ts';
import { pointLength } from '../../handbook/drills.ts';
import type { Limits } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Book, CUSTOM, note, refuse } from '../book.ts';
import { between, half, ratio, size, TENTH, tidy } from '../limits.ts';

export type LiftStop = {
  /** Outside of the stem. */
  readonly across: Len;
  /** Each of the holes right across. */
  readonly hole: Limits;
};

/** A hole right across opens at both its ends. */
const mouths = (): number => 2 * ratio('lift-stop.across');

/** Stem and holes round an outlet of that bore: holes of the seat's area in all. */
export function chooseStop(bore: Len, outlet: Len, workshop: Workshop, book: Book): LiftStop {
  const wall = size('lift-stop.wall');
  const across = tidy(add(outlet, add(wall, wall)), TENTH, 'up');
  note(book, 'stop', [toMm(across), 'mm', 'o + 2 w', { o: toMm(outlet), w: toMm(wall) }, CUSTOM]);
  const least = mm(toMm(bore) / Math.sqrt(mouths()));
  const drill = [...workshop.tools.drills].sort((a, b) => a - b).find((d) => d >= least) ?? least;
  const inputs = { n: mouths(), h: toMm(drill), d: toMm(bore) };
  note(book, 'stop-holes', [(100 * inputs.n * inputs.h ** 2) / inputs.d ** 2, '%', 'n h^2 / d^2', inputs]);
  const has = webOf(drill, outlet);
  if (has < size('part.wall.least')) refuse(book, 'design.stop-webs', { hole: drill, outlet, has, wants: size('part.wall.least'), least });
  return { across, hole: between(drill, add(drill, size('band.drilled')), drill, 'drilled') };
}

/** What is left between two holes at the wall of the bore, round it; nothing where they meet. */
function webOf(hole: Len, outlet: Len): Len {
  const each = 2 * Math.asin(Math.min(1, hole / outlet));
  return mm(Math.max(0, (toMm(outlet) / 2) * ((2 * Math.PI) / mouths() - each)));
}

export type StopLayout = {
  /** Below the thread of the cap: middle of the holes, end of the bore at full diameter, and the least that nose and all take. */
  readonly hole: Len;
  readonly bored: Len;
  readonly length: Len;
};

export function layOutStop({ hole }: LiftStop, outlet: Len): StopLayout {
  const middle = add(size('lift-stop.clear'), half(hole.target));
  const bored = add(add(middle, half(hole.target)), size('lift-stop.past'));
  const point = tidy(pointLength(outlet), TENTH, 'up');
  return { hole: middle, bored, length: add(add(bored, point), size('lift-stop.nose')) };
}

/** Least bore of the socket round the stem: the ring passes what the seat does, and the chamber below has a rim. */
export function socketRound(stem: Len, bore: Len, chamber: Len): Len {
  const ring = mm(Math.hypot(toMm(add(stem, size('band.clearance'))), toMm(bore)));
  return tidy(len(Math.max(ring, add(chamber, size('wall.least')))), TENTH, 'up');
}
