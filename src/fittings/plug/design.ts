/** A blanking plug for a threaded hole, or what the day of the test asks for: a blank nipple, an adaptor for the pump. */
import type { Outcome } from '../../base/diagnostics.ts';
import { add, type Len, len, minus, showMm, toMm } from '../../base/units.ts';
import { findMaterial } from '../../handbook/materials.ts';
import type { Arrangement, Fitting, Part, Say } from '../../model/part.ts';
import type { Workshop } from '../../model/workshop.ts';
import { jointRing } from '../arranged.ts';
import { type Book, CUSTOM, newBook, note, refuse, refused } from '../book.ts';
import { threadNamed } from '../choose-thread.ts';
import { dayParts } from '../day-parts.ts';
import { half, MM, size, tidy, times } from '../limits.ts';
import { plugPart } from '../plug.ts';
import { reliefOf, screwedLength, type ThreadPair } from '../threads.ts';
import { noFloor, nutHasFloor, pipeBore, tailOf } from '../union.ts';
import type { Closes, PlugAsked } from './asked.ts';
import { blankNipple, pumpAdaptor } from './nipples.ts';

export function designPlug(asked: PlugAsked, workshop: Workshop): Outcome<Fitting> {
  const book = newBook();
  const material = findMaterial(asked.material);
  if (!material) refuse(book, 'design.material-unknown', { material: asked.material });
  const thread = threadNamed('plug', asked.thread, book);
  if (!material || !thread) return { found: book.found };
  const part = MAKES[asked.closes]({ asked, thread, material: material.id, book, workshop });
  if (!part || refused(book)) return { found: book.found };
  const fitting: Fitting = {
    ...{ kind: 'plug', title: asked.title, parts: [part], chains: [], derivations: book.derivations },
    bought: asked.closes === 'hole' ? [ringFor(thread, asked.quantity)] : [],
    ...said(asked.closes, thread.name, material.lead),
    ...(asked.closes === 'hole' ? { arrangement: arrangementOf(thread, part) } : {}),
  };
  return { value: fitting, found: book.found };
}

type Making = {
  readonly asked: PlugAsked;
  readonly thread: ThreadPair;
  readonly material: string;
  readonly book: Book;
  readonly workshop: Workshop;
};

const MAKES: Readonly<Record<Closes, (making: Making) => Part | undefined>> = {
  hole: ({ asked, thread, material, book, workshop }) => {
    const least = minus(screwedLength(thread), half(thread.outside.pitch));
    const screwed = asked.screwed ?? screwedLength(thread);
    if (screwed < least) refuse(book, 'design.plug-shallow', { screwed, thread: thread.name, least: screwedLength(thread) });
    return refused(book) ? undefined : plugPart({ thread, screwed, quantity: asked.quantity, material }, workshop, book.found);
  },
  coupling: (making) => {
    const ask = heldBy(making);
    return ask && blankNipple({ ...ask, quantity: making.asked.quantity, material: making.material }, making.workshop, making.book.found);
  },
  pump: (making) => {
    const { asked, material, book, workshop } = making;
    const ask = heldBy(making);
    if (asked.pump === undefined) refuse(book, 'design.pump-thread-needed', { thread: asked.thread });
    const pump = asked.pump === undefined ? undefined : threadNamed('pump', asked.pump, book);
    if (!ask || !pump) return undefined;
    const bore = asked.bore ?? size('adaptor.bore');
    checkAdaptor(ask, pump, bore, book);
    note(book, 'adaptor-bore', [toMm(bore), 'mm', 'as wide as its thread leaves', {}, CUSTOM], asked.bore);
    if (refused(book)) return undefined;
    return pumpAdaptor({ ...ask, pump, bore, quantity: asked.quantity, material }, workshop, book.found);
  },
};

type Held = { readonly thread: ThreadPair; readonly pipe: NonNullable<PlugAsked['pipe']> };

/** The union nut of the pipe holds it: so its tail is that of the pipe's own nipple. */
function heldBy({ asked, thread, book }: Making): Held | undefined {
  const { pipe } = asked;
  if (!pipe) {
    refuse(book, 'design.pipe-needed', { closes: asked.closes });
    return undefined;
  }
  if (pipeBore(pipe) <= 0) refuse(book, 'design.pipe-wall', { outside: pipe.outside, wall: pipe.wall });
  if (!nutHasFloor({ thread, pipe })) refuse(book, 'design.nut-has-no-floor', noFloor({ thread, pipe }));
  return refused(book) ? undefined : { thread, pipe };
}

/** The nut goes on over the pump's end; the bore leaves a wall under its thread. */
function checkAdaptor({ pipe }: Held, pump: ThreadPair, bore: Len, book: Book): void {
  const tail = tailOf({ pipe });
  if (pump.outside.major.hi > tail) refuse(book, 'design.pump-over-tail', { thread: pump.name, tail });
  const has = half(minus(reliefOf(pump.outside).floor.lo, bore));
  if (has < size('wall.least')) refuse(book, 'design.adaptor-thin', { thread: pump.name, bore, has, wants: size('wall.least') });
}

/** Screwed down into its bush, head on top; heights over the bush. */
function arrangementOf(thread: ThreadPair, { length }: Part): Arrangement {
  const tight = size('joint.ring.tight');
  const screwed = minus(length, size('plug.head'));
  const deep = add(screwed, thread.outside.pitch);
  // of two threads in each other the outer one is drawn (ISO 6410-1)
  const inside = thread.outside.major.hi;
  return {
    ...{ stand: 'any way', branches: [], flow: [] },
    stands: [{ part: 'plug', way: 'up', at: minus(tight, screwed) }],
    rings: [
      { item: 'bush', from: minus(len(0), deep), to: len(0), inside, outside: times(inside, 2), shown: 'metal' },
      jointRing(thread, len(0)),
    ],
  };
}

const ringFor = (thread: ThreadPair, quantity: number): Fitting['bought'][number] => ({
  ...{ id: 'joint-ring', kind: 'joint-ring', quantity },
  grounds: {
    size: thread.name,
    outside: showMm(tidy(add(thread.outside.major.hi, size('flange.over-thread')), MM, 'near'), 0),
    thick: showMm(size('joint.ring'), 1),
  },
});

function said(closes: Closes, thread: string, lead: boolean): Pick<Fitting, 'assembly' | 'tests' | 'cautions'> {
  const all = (ids: readonly string[]): readonly Say[] =>
    ids.map((id) => ({ id, grounds: { thread, ...dayParts({ coupling: thread, union: 'no' }) } }));
  return {
    assembly: all([`assembly.closes-${closes}`]),
    tests: all(closes === 'hole' ? ['test.day-parts', 'test.plug-water'] : ['test.union-blue', 'test.day-parts', 'test.closes-water']),
    cautions: all([
      ...['caution.lathe', 'caution.bar', 'caution.parting'],
      ...(lead ? ['caution.lead'] : []),
      ...['caution.closed-end', 'caution.inspector'],
    ]),
  };
}
