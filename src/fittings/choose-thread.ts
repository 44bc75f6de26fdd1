/** Threads as a person names them, or as the drawer offers them. */
import { type Len, toMm } from '../base/units.ts';
import type { Workshop } from '../model/workshop.ts';
import { type Book, refuse } from './book.ts';
import { MM, tidy } from './limits.ts';
import { type ThreadPair, threadPair } from './threads.ts';

/** The smallest fine thread of the drawer's taps that is not under `least`, else that size itself. */
export function fineThread(least: Len, workshop: Workshop): string {
  const fits = inDrawer(workshop.tools.taps).filter((t) => t.inside.pitch === MM && t.inside.major.lo >= least);
  return fits.sort((a, b) => a.inside.major.lo - b.inside.major.lo)[0]?.name ?? `M${toMm(tidy(least, MM, 'up'))}x1`;
}

/** The smallest thread of the drawer's taps from `least` up to under `below`, else a fine one of that size. */
export function threadBetween(least: Len, below: Len, workshop: Workshop): string {
  const fits = inDrawer(workshop.tools.taps).filter((t) => t.inside.major.lo >= least && t.inside.major.lo < below);
  return fits.sort((a, b) => a.inside.major.lo - b.inside.major.lo)[0]?.name ?? `M${toMm(tidy(least, MM, 'up'))}x1`;
}

/** The largest thread of the drawer's dies that goes through `through`. */
export function threadThrough(through: Len, workshop: Workshop): ThreadPair | undefined {
  const fits = inDrawer(workshop.tools.dies).filter((t) => t.outside.major.hi <= through);
  return fits.sort((a, b) => b.outside.major.hi - a.outside.major.hi)[0];
}

/** Adds 'design.thread-unknown' where the handbook has none of that name. */
export function threadNamed(which: string, name: string, book: Book): ThreadPair | undefined {
  const pair = threadPair(name);
  if (!pair) refuse(book, 'design.thread-unknown', { which, name });
  return pair;
}

const inDrawer = (names: readonly string[]): ThreadPair[] => names.flatMap((name) => threadPair(name) ?? []);
