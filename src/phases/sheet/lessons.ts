/** Lessons: each operation by itself, with why it stands here, what goes wrong otherwise, how to tell that it is right, and its dial. */

import type { OpId } from '../../model/ids.ts';
import type { Because, Before, Figures, Plan } from '../../model/plan.ts';
import type { DialShown, GripPage, LessonShown, Paragraph, PlainPage, Row } from '../../model/sheet.ts';
import type { Workshop } from '../../model/workshop.ts';
import { signsIn } from './caution.ts';
import type { Desk } from './lookup.ts';
import { saidIn } from './operations.ts';
import type { SheetWords } from './said.ts';

/** The lessons of a grip's page, on pages that follow it. */
export function lessonsPage(plan: Plan, desk: Desk, page: GripPage, words: SheetWords): PlainPage {
  const rows = page.blocks.flatMap((block) => block.rows);
  const told = new Set<string>();
  const legend = { made: words.say('picture.made'), taken: words.say('lesson.taken') };
  return {
    kind: 'plain',
    key: `lessons/${page.key}`,
    heading: words.say('lesson.heading', { page: page.heading }),
    name: page.name,
    about: page.about,
    right: words.say('lesson.right', { grip: page.grip }),
    sections: [{ kind: 'lessons', title: '', legend, lessons: rows.map((row) => lessonOf(plan, desk, page, row, told, words)) }],
    cautions: page.cautions,
  };
}

/** `told`: reasons that lessons before it on the page gave. */
function lessonOf(plan: Plan, desk: Desk, page: GripPage, row: Row, told: Set<string>, words: SheetWords): LessonShown {
  const figures = desk.figures(row.op);
  const dial = figures && dialOf(figures, plan.workshop, words);
  return {
    part: desk.part.id,
    step: desk.planned.route.setUps.flatMap((s) => s.operations).indexOf(row.op),
    number: row.number,
    title: row.title,
    note: row.note,
    signs: signsIn(desk, row.op, words),
    facts: factsOf(page, row, dial ? 'drawn' : 'read'),
    ...(dial ? { dial } : {}),
    boxes: boxesOf(desk, row, reasonsOf(desk, row.op, told, words), page.blocks[0]?.rows[0] === row ? page.day : undefined, words),
  };
}

/** A dial that is drawn needs no words; how far the carriage goes besides does. */
function factsOf({ columns }: GripPage, row: Row, dial: 'drawn' | 'read'): LessonShown['facts'] {
  const sizes = row.sizes.map((s) => [s.text, apart(s.limits), s.after].filter((piece) => piece !== '').join(' '));
  const facts = [
    { label: columns.size, text: sizes.join('\n') },
    { label: columns.rpm, text: row.rpm },
    { label: columns.cuts, text: row.cuts },
    { label: columns.dial, text: row.dial, read: true as const },
    { label: columns.dial, text: dial === 'drawn' ? row.dial.split('\n').slice(1).join('\n') : '' },
  ];
  return facts.filter(({ text }) => text !== '');
}

/** A figure beside a figure reads as one. */
const apart = (limits: string): string => (/^\d/.test(limits) ? `\u00b7 ${limits}` : limits);

/** Where the hand stands when the whole movement is done, and from what it counts where that is not the first touch. */
function dialOf({ dial, zero }: Figures, { lathe }: Workshop, words: SheetWords): DialShown | undefined {
  const has = dial && lathe.dials[dial.which];
  if (!dial || !has) return undefined;
  const divisions = Math.round(dial.divisions * 10) / 10;
  const from = zero && words.has(`zero.${zero.at}`) ? words.say(`zero.${zero.at}`) : '';
  const says = words.say('lesson.dial', { slide: words.say(`slide.${dial.which}`), turns: dial.turns, divisions, from });
  return { round: Math.round(has.turn / has.division), turns: dial.turns, divisions, says };
}

/** `day`: with the first operation of a page, why that page stands here. */
function boxesOf(desk: Desk, row: Row, reasons: readonly Reason[], day: GripPage['day'], words: SheetWords): readonly Paragraph[] {
  // a reason a line
  const box = (id: string, texts: readonly string[]): Paragraph => ({
    heading: words.say(`lesson.${id}`),
    text: [...new Set(texts)].join('\n'),
  });
  return [
    box('why', [...reasons.map(({ why }) => why), ...(day ? [day.why] : [])]),
    box('otherwise', [...reasons.flatMap(({ otherwise }) => otherwise), ...(day ? [day.otherwise] : [])]),
    box('tell', tellOf(desk, row, words)),
    box('set', row.under === '' ? [] : row.under.split(` ${words.say('under.between')} `).map(sentence)),
  ].filter(({ text }) => text !== '');
}

/** Strict befores that hold it back at the end from which it is done. */
export function heldBackBy(desk: Desk, op: OpId): readonly Before[] {
  const { befores, setUps } = desk.planned.route;
  const out = setUps.find((s) => s.operations.includes(op))?.grip.out;
  const done = setUps.flatMap((s) => s.operations);
  return befores.filter((b) => b.force === 'strict' && b.then === op && done.includes(b.first) && (!b.when || b.when.from === out));
}

/** Why it stands here, and what becomes of it elsewhere. */
type Reason = { readonly why: string; readonly otherwise: readonly string[] };

/** Its own reasons, and those of the rules that hold it back; what an earlier lesson taught, only where there is nothing else to teach. */
function reasonsOf(desk: Desk, op: OpId, told: Set<string>, words: SheetWords): readonly Reason[] {
  const own = desk.operation(op).because.map((b) => ({
    why: words.say(`rule.${b.rule}.why`, b.grounds),
    otherwise: otherwiseOf(b, words).map(sentence),
  }));
  const held = heldReasons(desk, op, words);
  const fresh = held.filter(({ why }) => !told.has(why));
  for (const { why } of held) told.add(why);
  return [...own, ...(own.length + fresh.length > 0 ? fresh : held)];
}

/** One a rule: after which operations it stands, and what becomes of it before them. */
function heldReasons(desk: Desk, op: OpId, words: SheetWords): readonly Reason[] {
  const befores = heldBackBy(desk, op);
  return [...new Set(befores.map((b) => b.because.rule))].flatMap((rule) => {
    const all = befores.filter((b) => b.because.rule === rule);
    const numbers = [...new Set(all.map((b) => desk.number(b.first)))].sort((a, b) => Number(a) - Number(b)).join(', ');
    const [first] = all;
    if (!first) return [];
    const why = words.say('lesson.after', { numbers, why: words.say(`rule.${rule}.why`, first.because.grounds) });
    return [{ why, otherwise: otherwiseOf(first.because, words).map((otherwise) => words.say('lesson.before', { numbers, otherwise })) }];
  });
}

const otherwiseOf = ({ rule, grounds }: Because, words: SheetWords): readonly string[] =>
  words.has(`rule.${rule}.otherwise`) ? [words.say(`rule.${rule}.otherwise`, grounds)] : [];

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function tellOf(desk: Desk, row: Row, words: SheetWords): readonly string[] {
  const operation = desk.operation(row.op);
  const setUp = desk.planned.route.setUps.find((s) => s.operations.includes(row.op));
  const checks = setUp ? saidIn(desk, operation, setUp) : [];
  const verb = `lesson.tell.${operation.verb}`;
  return [
    ...(words.has(verb) ? [words.say(verb)] : []),
    ...checks.map((b) =>
      words.say('lesson.check', { title: words.say(`rule.${b.rule}.title`, b.grounds), why: words.say(`rule.${b.rule}.why`, b.grounds) }),
    ),
  ];
}
