/** Tooling asked for by itself is the tooling that a plan would have asked for: one design for both. */
import type { Outcome } from '../../base/diagnostics.ts';
import { add, len } from '../../base/units.ts';
import type { Fitting, Say } from '../../model/part.ts';
import type { ToolingAsk } from '../../model/plan.ts';
import type { Workshop } from '../../model/workshop.ts';
import { type Book, newBook, refuse, refused } from '../book.ts';
import { threadNamed } from '../choose-thread.ts';
import { ratio, size, TENTH, tidy, times } from '../limits.ts';
import { reliefOf } from '../threads.ts';
import type { DBitAsked, GaugeNutAsked, MandrelAsked } from './asked.ts';
import { makeTooling } from './make.ts';

export function designMandrel(asked: MandrelAsked, workshop: Workshop): Outcome<Fitting> {
  const book = newBook();
  const pair = threadNamed('mandrel', asked.thread, book);
  if (!pair) return { found: book.found };
  const inside = asked.takes === 'outside-thread';
  const thread = inside ? pair.outside : pair.inside;
  const least = add(reliefOf(pair.outside).width.hi, times(thread.pitch, ratio('mandrel.least')));
  if (asked.depth < least)
    refuse(book, 'design.mandrel-shallow', { thread: pair.name, depth: asked.depth, least: tidy(least, TENTH, 'up') });
  return made(
    'mandrel',
    asked.title,
    {
      ...{ kind: 'threaded-mandrel', side: inside ? 'inside' : 'outside', thread, depth: asked.depth },
      ...{ rim: asked.rim ?? pair.outside.major.hi, clears: len(0), serves: 'work' },
    },
    workshop,
    book,
  );
}

export function designDBit({ title, diameter, depth, end }: DBitAsked, workshop: Workshop): Outcome<Fitting> {
  const length = add(depth, size('d-bit.shank'));
  return made('d-bit', title, { kind: 'd-bit', diameter, length, ...(end === 'flat' ? { end } : {}) }, workshop, newBook());
}

export function designGaugeNut(asked: GaugeNutAsked, workshop: Workshop): Outcome<Fitting> {
  const book = newBook();
  const pair = threadNamed('gauge nut', asked.thread, book);
  if (!pair) return { found: book.found };
  const usual = tidy(times(pair.outside.major.hi, ratio('gauge-nut.length')), TENTH, 'up');
  const length = asked.length ?? usual;
  const least = times(pair.outside.pitch, ratio('gauge-nut.least'));
  if (length < least) refuse(book, 'design.gauge-nut-short', { thread: pair.name, length, least });
  return made('gauge-nut', asked.title, { kind: 'gauge-nut', thread: pair.inside, length }, workshop, book);
}

function made(kind: string, title: string, ask: ToolingAsk, workshop: Workshop, book: Book): Outcome<Fitting> {
  if (refused(book)) return { found: book.found };
  const part = makeTooling(ask, workshop, book.found);
  if (refused(book)) return { found: book.found };
  const all = (ids: readonly string[]): readonly Say[] => ids.map((id) => ({ id, grounds: {} }));
  const fitting: Fitting = {
    ...{ kind, title, parts: [part], bought: [], chains: [], derivations: book.derivations, assembly: [] },
    tests: all([`test.${kind}`]),
    cautions: all(['caution.lathe', 'caution.bar', ...(kind === 'd-bit' ? ['caution.hardening'] : ['caution.parting'])]),
  };
  return { value: fitting, found: book.found };
}
