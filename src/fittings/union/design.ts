/** A union: nut and nipple for a pipe, and where it is asked for the coupling end on a spigot that is silver-soldered into a wall. */
import type { Outcome } from '../../base/diagnostics.ts';
import { add, type Len, len, minus, showMm, toMm } from '../../base/units.ts';
import { findMaterial } from '../../handbook/materials.ts';
import type { Fitting, Part, Say } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Book, CUSTOM, newBook, note, refuse, refused } from '../book.ts';
import { branchPart } from '../branch.ts';
import { threadNamed } from '../choose-thread.ts';
import { couplingThread } from '../coupling.ts';
import { dayParts } from '../day-parts.ts';
import { half, size, TENTH, tidy } from '../limits.ts';
import { notePipeSolder, noteSolder, spigotFit } from '../solder.ts';
import { reliefOf, type ThreadPair } from '../threads.ts';
import { nipple, pipeBore, pipeOverlap, type UnionAsk, unionNut } from '../union.ts';
import { arrangementOf } from './arranged.ts';
import type { UnionAsked } from './asked.ts';

export function designUnion(asked: UnionAsked, workshop: Workshop): Outcome<Fitting> {
  const book = newBook();
  const material = findMaterial(asked.material);
  if (!material) refuse(book, 'design.material-unknown', { material: asked.material });
  const { outside, wall } = asked.pipe;
  const bore = pipeBore(asked.pipe);
  if (bore <= 0) refuse(book, 'design.pipe-wall', { outside, wall });
  const thread = threadNamed('coupling', asked.thread ?? couplingThread(asked.pipe, workshop), book);
  if (!material || !thread || refused(book)) return { found: book.found };
  noteJoint(asked, thread, book);
  const ask: UnionAsk = { thread, pipe: asked.pipe, quantity: asked.quantity, material: material.id };
  const borePart = asked.bore ?? tidy(bore, TENTH, 'near');
  const end = asked.into && couplingEnd(asked, asked.into, { bore: borePart, ask }, workshop, book);
  const parts = [...(end ? [end] : []), unionNut(ask, workshop, book.found), nipple(ask, workshop, book.found)];
  if (refused(book)) return { found: book.found };
  const fitting: Fitting = {
    ...{ kind: 'union', title: asked.title, parts, bought: [], chains: [], derivations: book.derivations },
    ...said(asked, thread, material.lead),
    arrangement: arrangementOf(ask, asked.into && { thick: asked.into.wall, hole: holeFor(asked.into, borePart) }, parts),
  };
  return { value: fitting, found: book.found };
}

function noteJoint(asked: UnionAsked, thread: ThreadPair, book: Book): void {
  const { outside, wall } = asked.pipe;
  const inputs = { D: toMm(outside), t: toMm(wall) };
  note(book, 'pipe-overlap', [toMm(pipeOverlap(asked.pipe)), 'mm', 'l >= D, and 3 t at least', inputs, 'alpha-braze.com; AWS C3.1']);
  notePipeSolder(asked.pipe, undefined, book);
  const major = toMm(thread.inside.major.lo);
  note(book, 'coupling', [major, 'mm', 'pipe + 4, from the drawer first', { D: toMm(outside) }, CUSTOM], asked.thread);
}

/** In the wall: as stated, else a wall round the bore, and room for the solder. */
function holeFor(into: NonNullable<UnionAsked['into']>, bore: Len): Len {
  const walls = add(size('branch.wall'), size('branch.wall'));
  return into.hole ?? add(tidy(add(bore, walls), TENTH, 'near'), TENTH);
}

type End = { readonly bore: Len; readonly ask: UnionAsk };
function couplingEnd(
  asked: UnionAsked,
  into: NonNullable<UnionAsked['into']>,
  { bore, ask }: End,
  workshop: Workshop,
  book: Book,
): Part | undefined {
  const hole = holeFor(into, bore);
  const spigot = minus(hole, TENTH);
  checkEnd(asked, { hole, spigot, bore, wall: into.wall }, ask.thread, book);
  if (refused(book)) return undefined;
  const { quantity, material } = ask;
  const end = { id: 'coupling-end', coupling: ask.thread, outlet: bore, spigot, hole, wall: into.wall, quantity, material };
  return branchPart(end, workshop, book.found);
}

type Joint = { readonly hole: Len; readonly spigot: Len; readonly bore: Len; readonly wall: Len };
function checkEnd(asked: UnionAsked, { hole, spigot, bore, wall }: Joint, thread: ThreadPair, book: Book): void {
  const stands = half(minus(spigot, bore));
  const wants = size('wall.least');
  const least = add(add(bore, add(wants, wants)), TENTH);
  if (stands < wants) refuse(book, 'design.spigot-thin', { hole, bore, has: stands, wants, least });
  const behind = half(minus(reliefOf(thread.outside).floor.lo, bore));
  if (behind < wants) refuse(book, 'design.coupling-thin', { thread: thread.name, bore, has: behind, wants });
  const thin = len(Math.max(0, Math.min(stands, wall)));
  note(book, 'overlap', [toMm(wall), 'mm', 'l >= 3 t', { t: toMm(thin) }, 'AWS C3.1:1963'], asked.into);
  noteSolder({ which: 'branch', outside: spigot, bore, overlap: wall, fit: spigotFit() }, book);
}

function said(asked: UnionAsked, thread: ThreadPair, lead: boolean): Pick<Fitting, 'assembly' | 'tests' | 'cautions'> {
  const grounds = {
    thread: thread.name,
    overlap: showMm(pipeOverlap(asked.pipe), 1),
    ...dayParts({ coupling: thread.name, union: 'yes' }),
  };
  const all = (ids: readonly string[]): readonly Say[] => ids.map((id) => ({ id, grounds }));
  return {
    assembly: all([
      ...(asked.into ? ['assembly.coupling-end'] : []),
      'assembly.nut-on-pipe',
      'assembly.nipple-solder',
      'assembly.union-up',
    ]),
    tests: all(['test.union-blue', 'test.solder', 'test.day-parts', 'test.union-water', 'test.after']),
    cautions: all([
      ...['caution.lathe', 'caution.bar', 'caution.parting', 'caution.soldering', 'caution.annealed'],
      ...(lead ? ['caution.lead'] : []),
      ...['caution.pressure-joint', 'caution.inspector'],
    ]),
  };
}
