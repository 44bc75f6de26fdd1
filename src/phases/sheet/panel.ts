/** The operation that decides whether the part is good gets a panel: why here, and when to stop. One in a set-up at most. */
import type { Words } from '../../base/words.ts';
import type { OpId } from '../../model/ids.ts';
import type { Role } from '../../model/part.ts';
import type { Because, SetUp } from '../../model/plan.ts';
import type { Paragraph, Row } from '../../model/sheet.ts';
import type { Desk } from './lookup.ts';

/** Heaviest first: a seat that is spoilt spoils the fitting, a free surface spoils nothing. */
const BY_WEIGHT: readonly Role[] = ['seat', 'sealing', 'register', 'running', 'thread', 'clearance', 'free'];

/** The same rows, the weightiest with its panel; none where no reason of it has words. */
export function withPanel(desk: Desk, setUp: SetUp, rows: readonly Row[], words: Words): readonly Row[] {
  const reasoned = setUp.operations.flatMap((op) => {
    const because = becauseOf(desk, op).find((b) => words.has(`rule.${b.rule}.why`));
    return because ? [{ op, because, weight: weightOf(desk, op) }] : [];
  });
  const [first, ...others] = reasoned;
  if (!first) return rows;
  const heaviest = others.reduce((best, next) => (compare(best.weight, next.weight) <= 0 ? next : best), first);
  const panel = { why: whyOf(heaviest.because, words), stop: stopOf(desk, heaviest.op, heaviest.because, words) };
  return rows.map((row) =>
    row.op === heaviest.op ? { ...row, panel, says: row.says.filter((said) => said !== panel.stop.heading) } : row,
  );
}

/** Its own reasons first, then the strict befores that hold it back. */
function becauseOf(desk: Desk, op: OpId): readonly Because[] {
  const befores = desk.planned.route.befores.filter((b) => b.force === 'strict' && b.then === op);
  return [...befores.map((b) => b.because), ...desk.operation(op).because];
}

type Weight = { readonly role: number; readonly befores: number };

function weightOf(desk: Desk, op: OpId): Weight {
  const role = desk.role(op);
  const befores = desk.planned.route.befores.filter((b) => b.force === 'strict' && (b.first === op || b.then === op));
  return { role: -BY_WEIGHT.indexOf(role), befores: befores.length };
}

/** Negative when `a` is lighter. */
function compare(a: Weight, b: Weight): number {
  return a.role === b.role ? a.befores - b.befores : a.role - b.role;
}

function whyOf(because: Because, words: Words): Paragraph {
  return { heading: words.say('label.why'), text: words.say(`rule.${because.rule}.why`, because.grounds) };
}

/** The operation's own caution where it has one: when to stop. Else what goes wrong in another order. */
function stopOf(desk: Desk, op: OpId, because: Because, words: Words): Paragraph {
  const caution = desk.operation(op).says.find((said) => words.has(`rule.${said.rule}.why`));
  if (caution)
    return {
      heading: words.say(`rule.${caution.rule}.title`, caution.grounds),
      text: words.say(`rule.${caution.rule}.why`, caution.grounds),
    };
  const otherwise = `rule.${because.rule}.otherwise`;
  return {
    heading: words.say('label.otherwise'),
    text: words.has(otherwise) ? words.say(otherwise, because.grounds) : words.say('label.otherwise.none'),
  };
}
