/** The learner's edition: the bench edition's pages, each grip followed by its lessons; then the words used, questions, and their answers. */

import { alphabetical } from '../../base/alphabet.ts';
import type { PartId } from '../../model/ids.ts';
import type { Plan } from '../../model/plan.ts';
import type { GripPage, PlainPage, Row, SheetPage } from '../../model/sheet.ts';
import { cautionSaid } from './caution.ts';
import { heldBackBy, lessonsPage } from './lessons.ts';
import type { Desk } from './lookup.ts';
import type { SheetWords } from './said.ts';

export function withLessons(
  plan: Plan,
  desks: ReadonlyMap<PartId, Desk>,
  pages: readonly SheetPage[],
  words: SheetWords,
): readonly SheetPage[] {
  const deskFor = (part: PartId): Desk => {
    const found = desks.get(part);
    if (!found) throw new Error(`no part '${part}'`);
    return found;
  };
  const taught = pages.flatMap((page) => (page.kind === 'grip' ? [page, lessonsPage(plan, deskFor(page.part), page, words)] : [page]));
  const asked = pages.flatMap((page) => (page.kind === 'grip' ? questionsOf(deskFor(page.part), page, words) : []));
  return [...taught, glossaryPage(plan, taught, words), ...askedPages(plan, asked, words)];
}

// ---- words used --------------------------------------------------------------------------------------------------------
/** Terms are words' ids 'term.<id>.name' and '.means'; those that no page uses are left out. By name. */
function glossaryPage(plan: Plan, pages: readonly SheetPage[], words: SheetWords): PlainPage {
  const said = JSON.stringify(pages).toLowerCase();
  const terms = words.ids().flatMap((id) => (id.startsWith('term.') && id.endsWith('.name') ? [id.slice(0, -'.name'.length)] : []));
  const rows = terms
    .map((id) => [words.say(`${id}.name`), words.say(`${id}.means`)] as const)
    .filter(([name]) => said.includes(name.toLowerCase()))
    .sort(([a], [b]) => alphabetical(a, b));
  return plainPage(plan, 'glossary', words, [
    {
      kind: 'table',
      title: '',
      text: words.say('glossary.how'),
      columns: [
        { label: words.say('glossary.term'), share: 1, manner: 'strong' },
        { label: words.say('glossary.means'), share: 10, manner: 'text' },
      ],
      rows,
    },
  ]);
}

// ---- questions ---------------------------------------------------------------------------------------------------------
type Question = { readonly ask: string; readonly answer: string };

/** Of each grip: what would come of another order, whether habit alone decides, and what a dial comes to. */
function questionsOf(desk: Desk, page: GripPage, words: SheetWords): readonly Question[] {
  const rows = page.blocks.flatMap((block) => block.rows);
  const part = page.name;
  return [...orderAsked(desk, part, rows, words), ...dayAsked(page, words), ...dialAsked(desk, part, rows, words)];
}

/** The operation that most befores of this page hold back, and the first of them that has words for what goes wrong. */
function orderAsked(desk: Desk, part: string, rows: readonly Row[], words: SheetWords): readonly Question[] {
  const here = rows.map((row) => row.op);
  const befores = rows.map((row) =>
    heldBackBy(desk, row.op).filter((b) => here.includes(b.first) && words.has(`rule.${b.because.rule}.otherwise`)),
  );
  const most = befores.reduce((best, all) => (all.length > best.length ? all : best), []);
  const [before] = most;
  const row = (op: string): Row | undefined => rows.find((r) => r.op === op);
  const [first, then] = [before && row(before.first), before && row(before.then)];
  if (!before || !first || !then) return [];
  const { rule, grounds } = before.because;
  const facts = { part, first: first.number, firstTitle: first.title, then: then.number, thenTitle: then.title };
  const reasons = { why: words.say(`rule.${rule}.why`, grounds), otherwise: words.say(`rule.${rule}.otherwise`, grounds) };
  return [{ ask: words.say('question.order', facts), answer: words.say('question.order.answer', { ...facts, ...reasons }) }];
}

/** Tooling that stays in the chuck for several holds: why it is made where it is. */
function dayAsked({ day }: GripPage, words: SheetWords): readonly Question[] {
  if (day?.ask === undefined) return [];
  return [{ ask: day.ask, answer: words.say('question.day.answer', { why: day.why, otherwise: day.otherwise }) }];
}

/** The first reading of whole turns and divisions. */
function dialAsked(desk: Desk, part: string, rows: readonly Row[], words: SheetWords): readonly Question[] {
  const read = rows.flatMap((row) => {
    const dial = desk.figures(row.op)?.dial;
    return dial && dial.turns > 0 && dial.divisions > 0 ? [{ row, dial }] : [];
  });
  const [first] = read;
  if (!first) return [];
  const { row, dial } = first;
  const facts = {
    part,
    number: row.number,
    title: row.title,
    slide: words.say(`slide.${dial.which}`),
    turns: dial.turns,
    divisions: Math.round(dial.divisions * 10) / 10,
  };
  return [
    { ask: words.say('question.dial', facts), answer: words.say('question.dial.answer', { ...facts, total: words.short(dial.total) }) },
  ];
}

function askedPages(plan: Plan, questions: readonly Question[], words: SheetWords): readonly PlainPage[] {
  if (questions.length === 0) return [];
  const items = (of: keyof Question): readonly string[] => questions.map((q, i) => words.say('question.no', { n: i + 1, text: q[of] }));
  return (['ask', 'answer'] as const).map((of) =>
    plainPage(plan, of === 'ask' ? 'questions' : 'answers', words, [{ kind: 'notes', title: '', items: items(of), manner: 'plain' }]),
  );
}

function plainPage(plan: Plan, which: 'glossary' | 'questions' | 'answers', words: SheetWords, sections: PlainPage['sections']): PlainPage {
  return {
    kind: 'plain',
    key: `learner/${which}`,
    heading: words.say(`learner.${which}`),
    name: words.say(`learner.${which}`),
    about: plan.fitting.title,
    right: words.say('learner.right'),
    sections,
    cautions: [cautionSaid(words, `learner.${which}.foot`)],
    ...(which === 'questions' ? { mayFollow: true } : {}),
  };
}
