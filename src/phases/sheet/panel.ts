/** The operation that decides whether the part is good gets a panel: why here, and when to stop. One in a set-up at most. */

import type { OpId } from '../../model/ids.ts';
import type { Role } from '../../model/part.ts';
import type { Because, Before, SetUp } from '../../model/plan.ts';
import type { Paragraph, Row } from '../../model/sheet.ts';
import { isOffLathe } from '../../model/work.ts';
import { type Desk, wayOf } from './lookup.ts';
import { saidIn } from './operations.ts';
import type { SheetWords } from './said.ts';

/** Heaviest first: a seat that is spoilt spoils the fitting, a free surface spoils nothing. */
const BY_WEIGHT: readonly Role[] = ['seat', 'sealing', 'register', 'running', 'thread', 'clearance', 'free'];

/** From here on a surface is spoilt for this part only, not for the fitting: no panel. */
const NO_PANEL: readonly Role[] = ['clearance', 'free'];

/** The same rows, the weightiest with its panel; none where no reason of it has words. */
export function withPanel(desk: Desk, setUp: SetUp, rows: readonly Row[], words: SheetWords): readonly Row[] {
  const reasoned = setUp.operations.flatMap((op) => {
    const because = becauseOf(desk, op).filter((b) => words.has(`rule.${b.rule}.why`));
    const free = heldBack(desk, op).length === 0 && desk.role(op) !== 'seat';
    const slight = free || NO_PANEL.includes(desk.role(op)) || isRough(desk, setUp, op);
    return because.length === 0 || slight ? [] : [{ op, because, weight: weightOf(desk, op) }];
  });
  const [first, ...others] = reasoned;
  if (!first) return rows;
  const heaviest = others.reduce((best, next) => (compare(best.weight, next.weight) <= 0 ? next : best), first);
  const panel = {
    why: whyOf(heaviest.because, words),
    stop: stopOf(saidIn(desk, desk.operation(heaviest.op), setUp), heaviest.because, words),
  };
  return rows.map((row) =>
    row.op === heaviest.op ? { ...row, panel, says: row.says.filter((said) => said !== panel.stop.heading) } : row,
  );
}

/** Does it leave nothing finished: a roughing cut, a centre? */
function isRough(desk: Desk, setUp: SetUp, op: OpId): boolean {
  const operation = desk.operation(op);
  const ends = ['screw-cut', 'tap', 'die'].includes(operation.verb) || isOffLathe(setUp.grip);
  return !ends && !(wayOf(operation, setUp)?.cuts ?? []).some((cut) => cut.stage === 'final');
}

/** Its own reason, and the strict before that holds it back most often; of equal ones the more particular, which binds fewest in the part. */
function becauseOf(desk: Desk, op: OpId): readonly Because[] {
  const held = heldBack(desk, op).map((b) => b.because);
  const times = (because: Because): number => held.filter((b) => b.rule === because.rule).length;
  const spread = (because: Because): number => desk.planned.route.befores.filter((b) => b.because.rule === because.rule).length;
  const [most] = [...held].sort((a, b) => times(b) - times(a) || spread(a) - spread(b));
  return [...desk.operation(op).because.slice(0, 1), ...(most ? [most] : [])];
}

/** Strict befores that hold it back in its own set-up: what was done in an earlier one needs no reminding. */
function heldBack(desk: Desk, op: OpId): readonly Before[] {
  const { befores, setUps } = desk.planned.route;
  const setUp = setUps.find((s) => s.operations.includes(op));
  const bindsHere = (b: Before): boolean => !b.when || b.when.from === setUp?.grip.out;
  return befores.filter((b) => b.force === 'strict' && b.then === op && bindsHere(b) && setUp?.operations.includes(b.first));
}

type Weight = { readonly role: number; readonly befores: number };

function weightOf(desk: Desk, op: OpId): Weight {
  return { role: -BY_WEIGHT.indexOf(desk.role(op)), befores: heldBack(desk, op).length };
}

/** Negative when `a` is lighter. */
function compare(a: Weight, b: Weight): number {
  return a.role === b.role ? a.befores - b.befores : a.role - b.role;
}

function whyOf(because: readonly Because[], words: SheetWords): Paragraph {
  const sentences = because.map((b) => words.say(`rule.${b.rule}.why`, b.grounds));
  return { heading: words.say('label.why'), text: [...new Set(sentences)].join(' ') };
}

/** The operation's own caution where it has one: when to stop. Else what goes wrong in another order. */
function stopOf(says: readonly Because[], because: readonly Because[], words: SheetWords): Paragraph {
  const caution = says.find((said) => words.has(`rule.${said.rule}.why`));
  if (caution)
    return {
      heading: words.say(`rule.${caution.rule}.title`, caution.grounds),
      text: words.say(`rule.${caution.rule}.why`, caution.grounds),
    };
  const last = because.at(-1);
  const otherwise =
    last && words.has(`rule.${last.rule}.otherwise`)
      ? words.say(`rule.${last.rule}.otherwise`, last.grounds)
      : words.say('label.otherwise.none');
  return { heading: words.say('label.otherwise'), text: otherwise };
}
