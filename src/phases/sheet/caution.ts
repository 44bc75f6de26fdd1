/** The danger at the foot of a page: of its hold, of what stands out from the work, of what is done in it; and the safety signs of each. */
import { signsOf } from '../../handbook/signs.ts';
import type { OpId } from '../../model/ids.ts';

import type { SetUp } from '../../model/plan.ts';
import type { CautionSaid, SignShown } from '../../model/sheet.ts';
import { type Grounds, isOffLathe } from '../../model/work.ts';
import type { Desk } from './lookup.ts';
import type { SheetWords } from './said.ts';

/** That sentence and the signs that were chosen for it. */
export function cautionSaid(words: SheetWords, id: string, grounds: Grounds = {}): CautionSaid {
  return { text: words.say(id, grounds), signs: signsShown(words, id) };
}

/** The signs of an operation's own danger. */
export function signsIn(desk: Desk, op: OpId, words: SheetWords): readonly SignShown[] {
  return signsShown(words, ofVerb(desk, op));
}

function signsShown(words: SheetWords, caution: string): readonly SignShown[] {
  return signsOf(caution).map((id) => ({ id, name: words.say('sign', { id, means: words.say(`sign.${id}`) }) }));
}

const ofVerb = (desk: Desk, op: OpId): string => `verb.${desk.operation(op).verb}.caution`;

/** `besides`: what helps the first hold; the bench that follows says itself that the lathe is off. Each sentence once. */
export function cautionsOf(desk: Desk, setUps: readonly SetUp[], besides: readonly string[], words: SheetWords): readonly CautionSaid[] {
  const [first] = setUps;
  const grips = first
    ? [first.grip.kind, ...besides, ...(swings(desk, first) ? ['branched'] : [])].map((one) => `grip.${one}.caution`)
    : [];
  const verbs = setUps.flatMap((setUp) =>
    setUp.operations.map((op) => ({ id: ofVerb(desk, op), facts: { bored: isBored(desk, setUp) ? 'yes' : 'no' } })),
  );
  const all = [...grips.map((id) => ({ id, facts: {} })), ...verbs].filter(({ id }) => words.has(id));
  const said = all.map(({ id, facts }) => cautionSaid(words, id, facts));
  return [...new Map(said.map((one) => [one.text, one])).values()];
}
const before = (desk: Desk, setUp: SetUp): readonly SetUp[] => desk.planned.route.setUps.slice(0, desk.planned.route.setUps.indexOf(setUp));

/** Something soldered into its side goes round with the work. */
function swings(desk: Desk, setUp: SetUp): boolean {
  return !isOffLathe(setUp.grip) && before(desk, setUp).some((one) => one.operations.some((op) => desk.operation(op).verb === 'solder'));
}

/** There is a hole in the end that stands out: a rod goes up it. */
function isBored(desk: Desk, setUp: SetUp): boolean {
  const made = new Set([...before(desk, setUp), setUp].flatMap((one) => one.operations.map((op) => desk.operation(op).feature)));
  return desk.part.features.some((f) => f.kind === 'hole' && !f.centre && f.opens.includes(setUp.grip.out) && made.has(f.id));
}
