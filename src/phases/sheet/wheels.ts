/** The change wheels, among what is to be had ready: each train that the day asks for, what stands on which shaft, half-nuts, and where it is used. */
import { thread as threadName } from '../../drawing/sheet/format.ts';
import type { Figures, Plan } from '../../model/plan.ts';
import type { Section, ShaftShown, TrainShown } from '../../model/sheet.ts';
import { type Desk, deskOf } from './lookup.ts';
import { keyOf } from './names.ts';
import type { SheetWords } from './said.ts';
import { errorFacts, nutsOf, WHEELS } from './thread-words.ts';

type Use = { readonly figures: Figures; readonly wheels: NonNullable<Figures['wheels']>; readonly thread: string; readonly page: string };

/** None where no thread is cut with wheels. */
export function wheelSections(plan: Plan, words: SheetWords): readonly Section[] {
  const groups = grouped(usesOf(plan));
  if (groups.length === 0) return [];
  const trains = groups.map((uses) => trainOf(uses, words));
  return [
    { kind: 'trains', key: WHEELS, title: words.say('wheels.page.heading'), text: words.say('wheels.page.about'), trains },
    { kind: 'notes', title: words.say('wheels.page.how'), items: HOW.map((id) => words.say(`wheels.page.${id}`)), manner: 'plain' },
  ];
}
const HOW = ['caution', 'mesh', 'oil', 'scratch'] as const;

/** In the order of the day. */
function usesOf(plan: Plan): readonly Use[] {
  const desks = new Map<string, Desk>(plan.parts.map((planned) => [planned.part.id, deskOf(planned)]));
  return plan.sequence.flatMap((entry) => {
    const desk = desks.get(entry.part);
    return (desk?.setUp(entry.setUp).operations ?? []).flatMap((op): readonly Use[] => {
      const figures = desk?.figures(op);
      const thread = desk?.thread(desk.operation(op).feature);
      if (!figures?.wheels || !thread) return [];
      return [{ figures, wheels: figures.wheels, thread: threadName(thread.name), page: keyOf(entry.part, entry.setUp) }];
    });
  });
}

/** Uses of one train together. */
function grouped(uses: readonly Use[]): readonly (readonly Use[])[] {
  const groups = new Map<string, Use[]>();
  for (const use of uses) {
    const { drivers, driven, idler, halfNuts, leftBy } = use.wheels;
    const key = JSON.stringify([drivers, driven, idler, halfNuts, leftBy]);
    groups.set(key, [...(groups.get(key) ?? []), use]);
  }
  return [...groups.values()];
}

function trainOf(uses: readonly Use[], words: SheetWords): TrainShown {
  const [first] = uses;
  if (!first) throw new Error('a train that nothing uses');
  const { wheels, figures } = first;
  const threads = [...new Set(uses.map((use) => use.thread))];
  const pages = [...new Set(uses.map((use) => use.page))];
  const [a = 0, c = 0] = wheels.drivers;
  const [b = 0, d = 0] = wheels.driven;
  const set = wheels.idler === undefined ? { a, b, c, d } : { a, idler: wheels.idler, d: b };
  const how = words.say(wheels.idler === undefined ? 'wheels.set.compound' : 'wheels.set.simple', set);
  return {
    title: words.say('wheels.for', { threads: threads.join(' · '), pitch: figures.feed === undefined ? '' : words.pitch(figures.feed) }),
    lines: [
      how,
      words.say(`wheels.coming.${wheels.halfNuts}`, { nuts: nutsOf(figures, words) }),
      ...(wheels.over ? [words.say('wheels.error', errorFacts(wheels, words))] : [words.say('wheels.exact')]),
      ...(wheels.leftBy === undefined ? [] : [words.say('wheels.left', { by: wheels.leftBy })]),
      words.say('wheels.used', { sheets: pages.map((page) => `{sheet:${page}}`).join(', '), count: pages.length }),
    ],
    shafts: shaftsOf(wheels, words),
    alt: words.say('wheels.alt', { threads: threads.join(', '), set: how }),
  };
}

function shaftsOf({ drivers, driven, idler }: Use['wheels'], words: SheetWords): readonly ShaftShown[] {
  const [a = 0, c = 0] = drivers;
  const [b = 0, d = 0] = driven;
  const stud = idler === undefined ? [b, c] : [idler];
  return [
    { label: words.say('shaft.spindle'), wheels: [a] },
    { label: words.say('shaft.stud'), wheels: stud },
    { label: words.say('shaft.leadscrew'), wheels: [idler === undefined ? d : b] },
  ];
}
