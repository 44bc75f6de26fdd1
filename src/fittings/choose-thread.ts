/** Threads as a person names them, or as the drawer offers them. */
import { add, type Len, len, toMm } from '../base/units.ts';
import { threadNames } from '../handbook/threads.ts';
import type { Workshop } from '../model/workshop.ts';
import { type Book, refuse } from './book.ts';
import { half, MM, ratio, size, TENTH, tidy, times } from './limits.ts';
import { type ThreadPair, threadPair } from './threads.ts';

export type ThreadNeed = {
  /** Major diameter, at least. */
  readonly least: Len;
  /** The pipe that the fitting is for: of threads that would do as well one of its own system is taken. */
  readonly pipe: { readonly outside: Len };
  /** What else is asked of it: walls, a chamber that it stands clear of. */
  readonly suits?: (thread: ThreadPair) => boolean;
};

/**
 * The smallest fine thread of the drawer's taps that will do, of the pipe's own system before the other; else the smallest that is cut with
 * the leadscrew's own system. Where none suits, one of the size asked for: what does not suit is refused with its figures.
 */
export function fineThread({ least, pipe, suits = () => true }: ThreadNeed, workshop: Workshop): string {
  const fits = (t: ThreadPair): boolean => isFine(t) && t.inside.major.lo >= least && suits(t);
  const smallest = (found: readonly ThreadPair[]): readonly ThreadPair[] =>
    found.filter(fits).sort((a, b) => a.inside.major.lo - b.inside.major.lo);
  const drawer = smallest(inDrawer(workshop.tools.taps));
  const found = drawer.find((t) => isInch(t) === isInchPipe(pipe)) ?? drawer[0] ?? madeOf(least, workshop).flatMap(smallest)[0];
  return found?.name ?? metricFine(least);
}

/** Drawn in inches: of no whole tenth of a millimetre. */
export const isInchPipe = ({ outside }: ThreadNeed['pipe']): boolean => outside % TENTH !== 0;
const isInch = (t: ThreadPair): boolean => t.inside.perInch !== undefined;

/** Metric of one millimetre; of the others as fine as those for small boilers are. */
const isFine = (t: ThreadPair): boolean =>
  isInch(t) ? t.inside.pitch >= size('thread.fine.least') && t.inside.pitch <= MM : t.inside.pitch === MM;

const metricFine = (least: Len): string => `M${toMm(tidy(least, MM, 'up'))}x1`;

/** What the leadscrew cuts without strange wheels, before what it cuts with them. */
function madeOf(least: Len, { lathe }: Workshop): readonly (readonly ThreadPair[])[] {
  const metric = inDrawer(Array.from({ length: ratio('thread.fine.tries') }, (_, i) => metricFine(add(least, len(i * MM)))));
  return lathe.leadscrewPerInch === undefined ? [metric] : [inDrawer(threadNames).filter(isInch), metric];
}

/** A running thread: the smallest of the drawer's taps from `least` up to under `below` whose root clears the stem, else a fine one of that size. */
export function threadBetween({ stem, least, below }: Running, workshop: Workshop): string {
  const fits = inDrawer(workshop.tools.taps).filter(
    (t) => t.inside.major.lo >= least && t.inside.major.lo < below && t.outside.root > stem,
  );
  return fits.sort((a, b) => a.inside.major.lo - b.inside.major.lo)[0]?.name ?? `M${toMm(tidy(least, MM, 'up'))}x1`;
}

/** Diameters: of the stem that goes through its nut, and between which the thread lies. */
export type Running = { readonly stem: Len; readonly least: Len; readonly below: Len };

/** The largest thread of the drawer's dies that goes through `through`. */
export function threadThrough(through: Len, workshop: Workshop): ThreadPair | undefined {
  const fits = inDrawer(workshop.tools.dies).filter((t) => t.outside.major.hi <= through);
  return fits.sort((a, b) => b.outside.major.hi - a.outside.major.hi)[0];
}

/** A square whose corners stay round, on a stem. */
export const squareOn = (stem: Len): Len => tidy(times(stem, ratio('square.share')), size('square.step'), 'down');

/** A stem as usual, or as much thicker, up to `most`, as its square asks that a thread of the drawer goes through, for the nut of the wheel. */
export function stemFrom(usual: Len, most: Len, workshop: Workshop): Len {
  for (let stem = usual; stem <= most; stem = add(stem, half(MM))) if (threadThrough(squareOn(stem), workshop)) return stem;
  return usual;
}

/** Adds 'design.thread-unknown' where the handbook has none of that name. */
export function threadNamed(which: string, name: string, book: Book): ThreadPair | undefined {
  const pair = threadPair(name);
  if (!pair) refuse(book, 'design.thread-unknown', { which, name });
  return pair;
}

const inDrawer = (names: readonly string[]): ThreadPair[] => names.flatMap((name) => threadPair(name) ?? []);
